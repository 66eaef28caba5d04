// SPDX-License-Identifier: MIT
#include "gui/cutaway/cutaway.hpp"
#include "files/bundle_loader.hpp"
#include "gui/explore/running_furnace.hpp"
#include "gui/headless.hpp"

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
