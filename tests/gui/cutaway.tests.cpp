// SPDX-License-Identifier: MIT
#include "gui/cutaway/cutaway.hpp"
#include "bench/percept.hpp"
#include "files/bundle_loader.hpp"
#include "furnace/condition_paths.hpp"
#include "gui/cutaway/fire.hpp"
#include "gui/cutaway/motion.hpp"
#include "gui/cutaway/places.hpp"
#include "gui/cutaway/wear.hpp"
#include "gui/drawn_corners.hpp"
#include "gui/explore/running_furnace.hpp"
#include "gui/headless.hpp"
#include "lesson/scenario.hpp"

#include <catch2/catch.hpp>
#include <cmath>

using namespace lightoff;
using namespace lightoff::cutaway;
using explore::RunningFurnace;

namespace {

const files::LoadedBundle& call_for_heat() {
    static const files::LoadedBundle kBundle = files::load_bundle("call-for-heat");
    return kBundle;
}

RunningFurnace new_furnace() {
    return RunningFurnace(call_for_heat().site, call_for_heat().scenario);
}

void run_until(RunningFurnace& f, double time_s) {
    while (f.now_s() < time_s) {
        f.tick();
    }
}

} // namespace

TEST_CASE("the scene of a cold furnace shows nothing that moves or burns") {
    RunningFurnace f = new_furnace();
    run_until(f, 3);
    const CutawayScene scene = f.scene();
    CHECK(scene.burner_count == 4); // as the profile says
    for (const Flame& flame : scene.burner) {
        CHECK(flame.strength == 0);
    }
    CHECK_FALSE(scene.pressure_switch_closed);
    CHECK(scene.limit_closed);
    CHECK(scene.gas_valve == 0);
    CHECK(scene.inducer.speed_rad_s == 0);
    CHECK(scene.inducer.angle_rad == static_cast<float>(f.world().state.draft.inducer.angle_rad));
    CHECK(scene.air == 0);
}

TEST_CASE(
    "burners light one after the other, the first where the igniter is, and show as the World has them") {
    RunningFurnace f = new_furnace();
    std::array<double, 4> lit_s{};
    float hottest_k = 0;
    while (f.now_s() < 60) {
        f.tick();
        const CutawayScene scene = f.scene();
        hottest_k = std::max(hottest_k, scene.igniter_k);
        for (std::size_t i = 0; i < 4; ++i) {
            if (lit_s[i] == 0 && scene.burner[i].strength > 0.5F) {
                lit_s[i] = f.now_s();
            }
        }
    }
    CHECK(lit_s[0] > 40);
    CHECK(lit_s[1] > lit_s[0]);
    CHECK(lit_s[2] > lit_s[1]);
    CHECK(lit_s[3] > lit_s[2]);
    CHECK(hottest_k > 1253); // lights gas: 980 C, common practice
    const CutawayScene scene = f.scene();
    const combustion::FlameLook& look = f.world().state.signals.combustion.burner[2];
    CHECK(scene.burner[2].length == static_cast<float>(look.length));
    CHECK(scene.burner[2].lift == static_cast<float>(look.lift));
    CHECK(scene.pressure_switch_closed);
    CHECK(scene.gas_valve == 1);
    CHECK(scene.suction > 1); // over that which makes the switch, or it could not be closed
}

TEST_CASE("the lamp of the scene is the lamp of the board, tick by tick") {
    RunningFurnace f = new_furnace();
    int changes = 0;
    bool before = false;
    while (f.now_s() < 20) {
        f.tick();
        const bool on = f.scene().lamp_on;
        REQUIRE(on == (f.world().state.board.lamp.on != 0));
        changes += on != before ? 1 : 0;
        before = on;
    }
    CHECK(changes > 6); // winks, then counts
}

TEST_CASE("a steady run moves about the rated flows") {
    RunningFurnace f = new_furnace();
    run_until(f, 400);
    const CutawayScene scene = f.scene();
    CHECK(scene.gas == Approx(1).margin(0.02)); // the profile is set to its rating
    CHECK(scene.air == Approx(1).margin(0.15)); // its rise lies within the plate's range
    CHECK(scene.flue == Approx(1).margin(0.3));
    CHECK(scene.warmth == Approx(1).margin(0.3));
    CHECK(scene.collector_k > 400);
    CHECK(scene.exchanger_k > scene.collector_k);
}

TEST_CASE("a wheel turns at its own speed while slow and never faster than can be followed") {
    CHECK(shown_speed(0) == 0);
    CHECK(shown_speed(0.2) == Approx(0.2).epsilon(0.02));
    double before = -1;
    for (double speed = 0; speed < 500; speed += 5) {
        const double shown = shown_speed(speed);
        CHECK(shown > before);
        CHECK(shown < 2 * 3.14159265 * 2.5); // five frames of a 12 Hz display a turn
        before = shown;
    }
}

TEST_CASE(
    "marks move by simulated time alone, however it is cut, and at most four times as fast when rushed") {
    RunningFurnace whole = new_furnace();
    RunningFurnace cut = new_furnace();
    for (int i = 0; i < 100; ++i) {
        whole.pass(0.25, 1);
    }
    for (int i = 0; i < 250; ++i) {
        cut.pass(0.1, 1);
    }
    while (cut.world().tick < whole.world().tick) { // the last tick may hang on a rounding
        cut.tick();
    }
    REQUIRE(cut.world().tick == whole.world().tick);
    CHECK(cut.scene().travel.flue_s == whole.scene().travel.flue_s);
    CHECK(cut.scene().inducer.angle_rad == whole.scene().inducer.angle_rad);

    RunningFurnace slow = new_furnace();
    RunningFurnace rushed = new_furnace();
    while (slow.now_s() < 120) {
        slow.tick(1);
        rushed.tick(20);
    }
    CHECK(rushed.scene().travel.air_s == Approx(slow.scene().travel.air_s * 4 / 20));
}

TEST_CASE(
    "labels keep clear of each other, stay in their column, and drop the less needed where they crowd") {
    std::vector<Label> labels;
    for (int i = 0; i < 8; ++i) {
        labels.push_back({"part", {100, 200 + static_cast<float>(i)}, Side::Left, i % 2 == 0});
    }
    const canvas::Rect column{{0, 100}, {80, 400}};
    const std::vector<PlacedLabel> placed = place_labels(labels, Side::Left, column, 20);
    CHECK(placed.size() < labels.size());
    CHECK(placed.size() >= 4); // those of first need
    for (std::size_t i = 0; i < placed.size(); ++i) {
        CHECK(placed[i].y >= 110);
        CHECK(placed[i].y <= 390);
        if (i > 0) {
            CHECK(placed[i].y - placed[i - 1].y >= 19.99F);
        }
    }
    CHECK(place_labels(labels, Side::Right, column, 20).empty());
    CHECK(place_labels(labels, Side::Left, {{0, 100}, {80, 145}}, 20).size() == 2);
}

TEST_CASE("no two leaders cross at any size of the drawing") {
    RunningFurnace f = new_furnace();
    for (const ImVec2 size : {ImVec2{560, 540}, ImVec2{700, 800}, ImVec2{1100, 1250}}) {
        test::Headless ui(size);
        ui.frame([&](const canvas::Canvas& canvas) {
            const CutawayLayout layout = lay_out(canvas, {{0, 0}, size}, f.scene());
            REQUIRE(layout.labels.size() > 10);
            for (std::size_t a = 0; a < layout.labels.size(); ++a) {
                for (std::size_t b = 0; b < a; ++b) {
                    if (layout.labels[a].label.side == layout.labels[b].label.side) {
                        CAPTURE(size.x, layout.labels[a].label.words, layout.labels[b].label.words);
                        CHECK_FALSE(leaders_cross(layout.labels[a], layout.labels[b]));
                    }
                }
            }
        });
    }
}

TEST_CASE("a door takes 350 ms to come off, and turns round wherever it is") {
    Motion motion;
    Standing now;
    now.burner_door_on = false;
    motion.go_on(now, 0.1, true);
    CutawayScene scene;
    motion.show_in(scene);
    const float part_way = scene.burner_door_away;
    CHECK(part_way > 0);
    CHECK(part_way < 1);
    CHECK(motion.moves());
    now.burner_door_on = true; // put back in mid-air
    motion.go_on(now, 0.05, true);
    motion.show_in(scene);
    CHECK(scene.burner_door_away > 0);
    CHECK(scene.burner_door_away < part_way);
    now.burner_door_on = false;
    motion.go_on(now, 0.29, true);
    CHECK(motion.moves());
    motion.go_on(now, 0.02, true);
    motion.show_in(scene);
    CHECK(scene.burner_door_away == 1);
    CHECK_FALSE(motion.moves());
    SECTION("where nothing is to move it is simply off") {
        Motion still;
        still.go_on(now, 0.001, false);
        CHECK_FALSE(still.moves());
        still.show_in(scene);
        CHECK(scene.burner_door_away == 1);
    }
}

TEST_CASE("no lamp flashes more than three times in a second of the wall (WCAG 2.2, 2.3.1)") {
    for (const double period_s : {0.02, 0.05, 0.11, 0.25, 0.5, 2.0}) {
        ShownLamp lamp;
        std::vector<double> flashes;
        bool was_on = false;
        for (int frame = 0; frame < 600; ++frame) { // 10 s
            const double now_s = frame / 60.0;
            lamp.go_on(std::fmod(now_s, period_s) >= period_s / 2, 1.0 / 60);
            if (lamp.on() && !was_on)
                flashes.push_back(now_s);
            was_on = lamp.on();
        }
        CAPTURE(period_s);
        for (std::size_t i = 3; i < flashes.size(); ++i)
            CHECK(flashes[i] - flashes[i - 3] >= 1.0 - 1e-9);
        CHECK(flashes.size() >= 4);
        if (period_s >= 0.5) // slow enough to be counted: none is lost
            CHECK(flashes.size() == static_cast<std::size_t>(10 / period_s));
    }
}

TEST_CASE("where nothing is to move nothing does, and heads show which way things flow") {
    RunningFurnace f = new_furnace();
    f.set_motion(false);
    run_until(f, 200);
    const CutawayScene one = f.shown();
    f.pass(0.5, 1.0);
    f.pass_wall(0.5);
    const CutawayScene other = f.shown();
    REQUIRE(one.burner[0].strength > 0.5F);
    CHECK(one.still);
    CHECK(other.time_s == one.time_s);
    CHECK(other.travel.air_s == one.travel.air_s);
    CHECK(other.blower.angle_rad == one.blower.angle_rad);
    CHECK(other.inducer.angle_rad == one.inducer.angle_rad);

    const auto corners_of = [](const CutawayScene& scene) {
        test::Headless ui({900, 700});
        ui.frame([&](const canvas::Canvas& canvas) { draw_cutaway(canvas, {{20, 20}, {880, 680}}, scene); });
        return ImGui::GetDrawData()->TotalVtxCount;
    };
    CutawayScene moving = one;
    moving.still = false;
    CHECK(corners_of(one) != corners_of(moving));
}

namespace {

/// Pixels that marks of wear ink, each triangle by itself, in a window of 1280x720: the furnace's part of a
/// call's page.
float ink_of(const std::vector<WearMark>& marks) {
    CutawayScene scene;
    scene.burner_count = 4;
    scene.wear = marks;
    test::Headless ui({1280, 720});
    ui.frame([&](const canvas::Canvas& canvas) {
        draw_wear(canvas, lay_out(canvas, {{204, 96}, {784, 590}}, scene, {}).place, scene);
    });
    float inked = 0;
    const ImDrawData& data = *ImGui::GetDrawData();
    for (int n = 0; n < data.CmdListsCount; ++n) {
        const ImDrawList& list = *data.CmdLists[n];
        for (int i = 0; i + 2 < list.IdxBuffer.Size; i += 3) {
            const ImVec2 a = list.VtxBuffer[list.IdxBuffer[i]].pos;
            const ImVec2 b = list.VtxBuffer[list.IdxBuffer[i + 1]].pos;
            const ImVec2 c = list.VtxBuffer[list.IdxBuffer[i + 2]].pos;
            if (list.VtxBuffer[list.IdxBuffer[i]].col !=
                canvas::packed(canvas::theme(canvas::ThemeId::Paper).ground))
                inked += std::abs((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)) / 2;
        }
    }
    return inked;
}

} // namespace

TEST_CASE("dirt and wear: the more there is the more is drawn, for every part that can show it") {
    const bench::Site& site = call_for_heat().site;
    int kinds = 0;
    for (const faults::Part& part : site.catalogue.parts)
        for (const faults::Sight& sight : part.look.sights) {
            if (sight.steps.empty())
                continue;
            REQUIRE(find_part_place(part.id) != nullptr);
            ++kinds;
            float before = ink_of({{part.id, sight.wear, 0}});
            for (int step = 1; step <= static_cast<int>(sight.steps.size()); ++step) {
                const float now = ink_of({{part.id, sight.wear, step}});
                INFO(part.id << ", " << faults::name_of(sight.wear) << ", step " << step);
                CHECK(now > before);
                before = now;
            }
        }
    CHECK(kinds >= 19);
}

TEST_CASE(
    "a clean part shows nothing; green terminals and a rusty inducer are plain to see, behind no door") {
    struct Worn {
        const char* part;
        const char* condition;
        double clean, slight, bad;
        faults::Wear wear;
    };
    const std::array<Worn, 2> all{
        {{"valve_wires", "wiring/harness.valve_out/series_resistance", 0, 40, 400, faults::Wear::corrosion},
         {"inducer_wheel", "draft.inducer.wheel_effectiveness", 1, 0.95, 0.45, faults::Wear::rust}}};
    const bench::Site& site = call_for_heat().site;
    for (const Worn& worn : all) {
        INFO(worn.part);
        bench::World world = new_furnace().world();
        const auto marks_at = [&](double value) {
            furnace::set_condition_field(world.condition,
                                         furnace::condition_field(site.model, worn.condition), value);
            std::vector<WearMark> marks = marks_of(site, bench::perceive_with_wear(site, world).worn);
            std::erase_if(marks, [&](const WearMark& mark) { return mark.part != worn.part; });
            return marks;
        };
        CHECK(marks_at(worn.bad).empty());
        world.inputs.burner_door_on = 0;
        CHECK(marks_at(worn.clean).empty());
        const std::vector<WearMark> slight = marks_at(worn.slight);
        const std::vector<WearMark> bad = marks_at(worn.bad);
        REQUIRE(slight.size() == 1);
        REQUIRE(bad.size() == 1);
        CHECK(bad[0].wear == worn.wear);
        CHECK(bad[0].step == faults::kWearSteps);
        CHECK(slight[0].step < 3);
        CHECK(ink_of(slight) > 4);
        CHECK(ink_of(bad) > 60); // a square of 8 pixels; common practice, no source
    }
    bench::World off = new_furnace().world();
    off.inputs.burner_door_on = 0;
    furnace::set_condition_field(
        off.condition, furnace::condition_field(site.model, "wiring/harness.valve_out/series_resistance"),
        static_cast<double>(electrical::kOpenOhm));
    CHECK(bench::perceive_with_wear(site, off).worn.step(site.catalogue.find_part("valve_wires"),
                                                         faults::Wear::corrosion) == 0);
}

namespace {

/// Every corner of what is drawn of a scene.
std::vector<std::uint32_t> corners_of(const CutawayScene& scene) {
    test::Headless ui({900, 700});
    ui.frame([&](const canvas::Canvas& canvas) { draw_cutaway(canvas, {{20, 20}, {880, 680}}, scene); });
    return test::drawn_corners();
}

CutawayScene burning_scene() {
    CutawayScene scene;
    scene.burner_count = 4;
    for (std::size_t i = 0; i < 4; ++i)
        scene.burner[i] = {1, 0.1F, 1, 0, 0.1F};
    scene.burner_door_away = 1;
    return scene;
}

/// How far the drawing of one flame reaches across its way, and how many corners it has.
struct FlameShape {
    float up = 0, down = 0;
    int corners = 0;
};
FlameShape shape_of(const Flame& flame) {
    test::Headless ui({400, 200});
    FlameShape shape;
    ui.frame([&](canvas::Canvas canvas) {
        ImDrawList list(ImGui::GetDrawListSharedData());
        list._ResetForNewFrame();
        list.PushTextureID(ImGui::GetIO().Fonts->TexID);
        list.PushClipRectFullScreen();
        canvas.list = &list;
        const std::array<ImVec2, 2> way{ImVec2{50, 100}, ImVec2{350, 100}};
        draw_flame(canvas, way, 200, 20, flame, 0, 0);
        for (const ImDrawVert& corner : list.VtxBuffer) {
            shape.up = std::max(shape.up, 100 - corner.pos.y);
            shape.down = std::max(shape.down, corner.pos.y - 100);
        }
        shape.corners = list.VtxBuffer.Size;
    });
    return shape;
}

} // namespace

TEST_CASE(
    "a flame that strikes metal leans to the wall in yellow tongues; a sound one stands in the middle") {
    const FlameShape sound = shape_of({1, 0.1F, 1, 0, 0});
    CHECK(sound.up == Approx(sound.down).margin(1.5));
    float before = sound.down;
    for (const float touch : {0.3F, 0.6F, 1.0F}) {
        const FlameShape struck = shape_of({1, 0.1F, 1, 0, 0, touch});
        INFO(touch);
        CHECK(struck.up > struck.down + 4);
        CHECK(struck.down < before);
        CHECK(struck.corners > sound.corners); // the tongues
        before = struck.down;
    }
    // Blue at its root, yellow from the tip down.
    CHECK(shape_of({1, 0, 1, 0, 0}).corners < shape_of({1, 0.5F, 1, 0, 0}).corners);
    CHECK(shape_of({0, 0, 0, 0, 0, 1}).corners == 0); // without a flame nothing strikes
}

TEST_CASE("a burner out of line is seen by its flame, and only while there is one") {
    RunningFurnace f = new_furnace();
    run_until(f, 200);
    bench::World world = f.world();
    const bench::Site& site = call_for_heat().site;
    world.inputs.burner_door_on = 0;
    const CutawayScene sound = scene_of(site, bench::perceive_with_wear(site, world), {});
    world.condition.combustion.misalignment[2] = 0.6;
    const CutawayScene struck = scene_of(site, bench::perceive_with_wear(site, world), {});
    CHECK(sound.burner[2].touch == 0);
    CHECK(struck.burner[2].touch == Approx(0.6));
    CHECK(struck.burner[1].touch == 0);
    CHECK(corners_of(sound) != corners_of(struck));
    world.condition.combustion.misalignment[2] = 0.62; // nobody could tell
    CHECK(corners_of(scene_of(site, bench::perceive_with_wear(site, world), {})) == corners_of(struck));
    world.inputs.burner_door_on = 1;
    CHECK(scene_of(site, bench::perceive_with_wear(site, world), {}).burner[2].touch == 0);
}

TEST_CASE("flame out of the burner openings: the more the more is drawn, in front of the burners") {
    CutawayScene scene = burning_scene();
    const auto quiet = corners_of(scene).size();
    scene.flame_outside_w = 2000;
    const auto some = corners_of(scene);
    CHECK(some.size() > quiet);
    scene.flame_outside_w = 8000;
    CHECK(corners_of(scene) != some);
    // One burner that misses its opening has all of it.
    for (Flame& flame : scene.burner)
        flame.softness = 0;
    scene.burner[2].touch = 1;
    const auto one = corners_of(scene);
    scene.flame_outside_w = 0;
    const auto none = corners_of(scene);
    CHECK(one.size() > none.size());
    CHECK(one.size() - none.size() < 2 * (some.size() - quiet) / 4);
}

TEST_CASE("what somebody left is seen with the door off, and names nothing") {
    const files::LoadedBundle bundle = files::load_bundle("back-again"); // at the limit
    furnace::Workspace workspace(bundle.site.model);
    bench::World world = lesson::arrive(bundle.site, bundle.scenario, 0, workspace);
    const int limit = bundle.site.catalogue.find_part("limit");
    const auto seen = [&] { return bench::perceive_with_wear(bundle.site, world); };
    REQUIRE(world.inputs.burner_door_on != 0);
    CHECK_FALSE(seen().worn.is_traced(limit));
    CHECK(bench::all_wear(bundle.site, world).is_traced(limit));
    world.inputs.burner_door_on = 0;
    CHECK(seen().worn.is_traced(limit));
    CHECK_FALSE(bench::perceive(bundle.site, world).worn.is_traced(limit)); // not for those who step

    CutawayScene scene = scene_of(bundle.site, seen(), {});
    REQUIRE(scene.traces == std::vector<std::string_view>{"limit"});
    const auto with = corners_of(scene);
    scene.traces = {};
    const auto without = corners_of(scene);
    CHECK(with.size() > without.size());
    scene.traces = {"thermostat"}; // hangs elsewhere
    CHECK(corners_of(scene) == without);
}

TEST_CASE("the disconnect beside the furnace shows how its lever was left") {
    CutawayScene scene = burning_scene();
    const auto on = corners_of(scene);
    scene.disconnect_on = false;
    CHECK(corners_of(scene) != on);
}
