// SPDX-License-Identifier: MIT
#include "gui/cutaway/cutaway.hpp"
#include "gui/explore/energised.hpp"
#include "gui/explore_session.hpp"
#include "gui/platform/platform.hpp"
#include "visit/words.hpp"

using namespace lightoff;
using explore::Explore;
using platform::Key;
using test::call_for_heat;
using test::Headless;
using Session = test::ExploreSession;

TEST_CASE("the furnace has the width that its height has a use for, and leaves 1280x720 as it was") {
    const auto share_of = [](ImVec2 size, canvas::ThemeId theme) {
        explore::Explore window(test::call_for_heat().site, test::call_for_heat().scenario);
        test::Headless ui(size, theme, platform::design_scale(size.y, 100, canvas::theme(theme)));
        ui.settle([&](const canvas::Canvas& canvas) { window.draw(canvas, {{0, 0}, size}); });
        for (const canvas::LayoutProbe::Text& text : ui.probe.texts())
            if (text.words == "Steps")
                return text.ink.min.x / size.x;
        return 0.0F;
    };
    const float low = share_of({1280, 720}, canvas::ThemeId::Paper);
    CHECK(low == Approx(0.39F).margin(0.01));
    CHECK(share_of({1920, 1080}, canvas::ThemeId::Projector) > low + 0.03F);
    CHECK(share_of({1920, 1080}, canvas::ThemeId::Paper) > low + 0.03F);
}

TEST_CASE("an area as wide as the drawing asks for lets it fill the height") {
    const cutaway::CutawayScene scene = [] {
        explore::RunningFurnace furnace(test::call_for_heat().site, test::call_for_heat().scenario);
        return furnace.shown();
    }();
    test::Headless ui({1600, 1000});
    ui.settle([&](const canvas::Canvas& canvas) {
        for (const float height : {300.0F, 700.0F}) {
            const float width = cutaway::width_for(canvas, height, scene);
            const auto layout = cutaway::lay_out(canvas, {{0, 0}, {width, height}}, scene);
            CHECK(layout.drawing.height() == Approx(height).epsilon(0.01));
        }
    });
}

TEST_CASE("time runs in whole ticks, at the chosen speed, and not while paused") {
    Session s;
    s.frame();
    s.let_pass(1);
    CHECK(s.now_s() == Approx(1).margin(0.051));
    s.tap(Key::Space);
    CHECK(s.window.paused());
    CHECK(s.window.wishes().next_frame_in_s > 1000); // the window sleeps
    const double stopped_s = s.now_s();
    s.let_pass(5);
    CHECK(s.now_s() == stopped_s);
    s.click("Run");
    CHECK_FALSE(s.window.paused());
    CHECK(s.window.wishes().next_frame_in_s == 0);
    s.tap(Key::Digit4);
    CHECK(s.window.speed() == 20);
    s.let_pass(1);
    CHECK(s.now_s() == Approx(stopped_s + 20).margin(0.051));
    s.click("5×");
    CHECK(s.window.speed() == 5);
    s.click("Pause");
    CHECK(s.window.paused());
}

TEST_CASE("a machine that can't keep up falls behind instead of standing still") {
    Session s;
    s.tap(Key::Digit4);
    s.window.pass(1e6);
    CHECK(s.world().tick == explore::RunningFurnace::kMostTicks);
    s.window.pass(0.051);
    CHECK(s.world().tick == explore::RunningFurnace::kMostTicks + 20); // nothing was left over
}

TEST_CASE("the foot of the page says the cautions, in the words that a call has") {
    Session s;
    s.frame();
    CHECK(s.shows(std::string(visit::cautions_in_short())));
    CHECK(visit::cautions().find(visit::cautions_in_short()) != std::string_view::npos);
}

TEST_CASE("the thermostat turned up makes a call, and turned to off ends it") {
    Session s;
    s.frame();
    s.let_pass(2);
    CHECK(s.set_point_f() == Approx(60).margin(0.01));
    CHECK(s.world().state.thermostat_heat_closed == 0);
    for (int i = 0; i < 10; ++i) {
        s.tap(Key::U);
        CHECK(s.window.refusal().empty());
        s.let_pass(2.5);
    }
    CHECK(s.set_point_f() == Approx(70).margin(0.01)); // the house is at 66 F
    s.click("−1 °F");
    s.let_pass(2.5);
    CHECK(s.set_point_f() == Approx(69).margin(0.01));
    CHECK(s.world().state.thermostat_heat_closed == 1);
    CHECK(s.shows("Thermostat 69 °F"));
    s.tap(Key::H);
    s.let_pass(3);
    CHECK(s.world().state.thermostat_heat_closed == 0);
    CHECK(s.shows("Off"));
}

TEST_CASE("what is refused says why, and the reason goes with the next thing done") {
    Session s;
    s.tap(Key::B);
    CHECK(s.window.refusal().empty());
    CHECK(s.shows("Hands: taking the burner door off"));
    s.tap(Key::F); // the burner door is still in the hands
    CHECK(s.window.refusal() == "Your hands are busy; wait until that is done.");
    CHECK(s.shows("Not done. Your hands are busy"));
    s.let_pass(6);
    CHECK(s.world().inputs.burner_door_on == 0);
    CHECK(s.shows("Burner door off"));
    s.click("Blower door on");
    CHECK(s.window.refusal().empty());
    s.let_pass(6);
    CHECK(s.world().inputs.blower_door_on == 0);
    CHECK_FALSE(s.window.furnace().scene().door_switch_closed);
    CHECK(s.shows("No control power")); // the door switch has opened
}

TEST_CASE("the diagram colours what is energised at the moment looked at, and nothing else") {
    using diagram::Carried;
    Session s;
    s.window.set_paused(true);
    explore::RunningFurnace& furnace = s.window.furnace();
    const diagram::Ladder ladder = diagram::lay_out(furnace.model());
    const auto carried = [&](const char* point) {
        const auto all = explore::energised(ladder, furnace.model(), furnace.world(), furnace.workspace());
        return all[static_cast<std::size_t>(furnace.model().wiring.find_place(point))];
    };
    const auto run = [&](const char* action) {
        CHECK(furnace.act(action) == "");
        for (int i = 0; i < 60; ++i)
            furnace.tick();
    };
    run("thermostat-mode off");
    CHECK(carried("board.R") == Carried::volts_24);
    CHECK(carried("board.W") == Carried::nothing);
    CHECK(carried("board.C") == Carried::nothing);
    const std::uint64_t before = furnace.world().tick - 1; // at the tick itself hands are busy again
    run("thermostat-set 80F");
    run("thermostat-mode heat");
    CHECK(carried("board.W") == Carried::volts_24);
    furnace.go_to(before);
    CHECK(carried("board.W") == Carried::nothing);
    run("disconnect off");
    CHECK(carried("board.R") == Carried::nothing);
    const auto all = explore::energised(ladder, furnace.model(), furnace.world(), furnace.workspace());
    for (const diagram::Spot& spot : ladder.spots)
        if (ladder.low_voltage[static_cast<std::size_t>(spot.node)] != 0) {
            CAPTURE(spot.full_name);
            CHECK(all[static_cast<std::size_t>(spot.node)] == Carried::nothing);
        }
    CHECK(std::count(all.begin(), all.end(), Carried::volts_120) > 0); // up to the disconnect
}

TEST_CASE("the diagram is reached by mouse and by key, and its conductors have their colours") {
    Session s;
    s.window.set_paused(true);
    const auto drawn = [&](canvas::Energy energy) {
        const ImU32 colour = canvas::packed(canvas::theme(canvas::ThemeId::Paper).of(energy));
        std::size_t count = 0;
        const ImDrawData& data = *ImGui::GetDrawData();
        for (int i = 0; i < data.CmdListsCount; ++i)
            for (const ImDrawVert& vertex : data.CmdLists[i]->VtxBuffer)
                count += vertex.col == colour ? 1 : 0;
        return count;
    };
    s.window.show(explore::View::Readings);
    s.frame();
    s.tap(Key::V);
    CHECK(s.find("Fit") != nullptr);
    const std::size_t at_rest = drawn(canvas::Energy::Volts24);
    CHECK(at_rest > 0);
    CHECK(drawn(canvas::Energy::Volts120) > 0);
    s.click("Steps");
    CHECK(s.find("Fit") == nullptr);
    s.click("Diagram");
    CHECK(s.find("Fit") != nullptr);
    CHECK(s.window.furnace().act("disconnect off").empty());
    for (int i = 0; i < 60; ++i)
        s.window.furnace().tick();
    s.frame();
    CHECK(drawn(canvas::Energy::Volts24) < at_rest);
}

TEST_CASE("disconnect and gas cock answer to their keys") {
    Session s;
    s.tap(Key::X);
    s.let_pass(2);
    CHECK(s.world().inputs.disconnect_on == 0);
    s.tap(Key::G);
    s.let_pass(3);
    CHECK(s.world().inputs.gas_cock_open == 0);
    CHECK_FALSE(s.window.furnace().scene().gas_cock_open);
}

TEST_CASE("theme and text size change by key and keep to their limits") {
    Session s;
    s.frame();
    CHECK(s.window.wishes().theme == canvas::ThemeId::Paper);
    s.tap(Key::L);
    CHECK(s.window.wishes().theme == canvas::ThemeId::Basement);
    s.click("A+");
    CHECK(s.window.wishes().text_percent == 110);
    for (int i = 0; i < 20; ++i) {
        s.click("A−");
    }
    CHECK(s.window.wishes().text_percent == 80);
    s.ui.queue.push(platform::KeyEvent{Key::ControlLeft, true});
    s.tap(Key::Equal);
    CHECK(s.window.wishes().text_percent == 90);
    s.tap(Key::Q);
    CHECK(s.window.wishes().close);
}

TEST_CASE("where the keyboard's cursor shows, Space presses that button and does not pause as well") {
    Session s;
    s.frame();
    for (int i = 0; i < 3; ++i) {
        s.tap(Key::Tab);
    }
    REQUIRE(ImGui::GetIO().NavVisible);
    const bool paused = s.window.paused();
    s.tap(Key::P);
    CHECK(s.window.paused() != paused);
    const double speed = s.window.speed();
    const bool before = s.window.paused();
    s.tap(Key::Space); // whatever it pressed, it did one thing
    const int changes = (s.window.paused() != before ? 1 : 0) + (s.window.speed() != speed ? 1 : 0) +
                        (s.world().hands.busy != 0 ? 1 : 0) + (s.window.refusal().empty() ? 0 : 1);
    CHECK(changes <= 1);
}

TEST_CASE("readings are grouped by threes and left out where the furnace has none") {
    CHECK(explore::grouped(79968.2) == "79,968");
    CHECK(explore::grouped(1072) == "1,072");
    CHECK(explore::grouped(999.6) == "1,000");
    CHECK(explore::grouped(-1234) == "−1,234");
    CHECK(explore::grouped(0) == "0");
    CHECK(explore::grouped(-0.2) == "0");
    Session s;
    const std::vector<explore::ReadingGroup> groups =
        explore::readings_of(s.window.furnace().gauges(), s.window.furnace().timed().readings(), {});
    std::size_t rows = 0;
    for (const explore::ReadingGroup& group : groups) {
        rows += group.rows.size();
    }
    CHECK(groups.size() == 5);
    CHECK(rows == 30); // the reference furnace has them all: no readout was renamed unnoticed
}

namespace {

/// At every size, theme and text scale; each view in turn.
void look_over(Explore& window, const std::vector<float>& percents) {
    for (const ImVec2 size :
         {ImVec2{1280, 720}, ImVec2{1600, 1000}, ImVec2{1920, 1080}, ImVec2{2560, 1440}}) {
        for (const canvas::ThemeId id : canvas::kThemes) {
            for (const float percent : percents) {
                window.set_look(id, percent);
                const canvas::Theme& theme = canvas::theme(id);
                Headless ui(size, id, platform::design_scale(size.y, window.text_percent_in(size), theme));
                const auto page = [&](const canvas::Canvas& canvas) { window.draw(canvas, {{0, 0}, size}); };
                for (std::size_t view = 0; view < explore::kViews; ++view) {
                    window.show(static_cast<explore::View>(view));
                    ui.settle(page);
                    ui.settle(page);
                    CAPTURE(theme.name, size.x, percent, view, window.furnace().now_s());
                    CHECK(ui.probe.texts().size() > 10);
                    for (const std::string& problem : ui.probe.problems()) {
                        FAIL_CHECK(problem);
                    }
                    ui.tap(Key::M);
                }
            }
        }
    }
}

} // namespace

TEST_CASE("no text is cut off, shortened or written over at any size, theme, text scale, page and moment") {
    lesson::Scenario scenario = call_for_heat().scenario;
    Explore window(call_for_heat().site, scenario);
    window.set_paused(true);
    for (const double moment_s : {3.0, 46.8, 500.0}) {
        while (window.furnace().now_s() < moment_s) {
            window.furnace().tick();
        }
        look_over(window, {80.0F, 100.0F, 150.0F, 200.0F});
    }
}

TEST_CASE("nor while one looks back, a furnace runs beside and lanes are picked") {
    lesson::Scenario scenario = call_for_heat().scenario;
    Explore window(call_for_heat().site, scenario);
    window.set_paused(true);
    while (window.furnace().now_s() < 60) {
        window.furnace().tick();
    }
    explore::WhatIf& what_if = window.what_if();
    const auto set = [&](const std::string& path, double share) {
        for (std::size_t i = 0; i < what_if.parameters().size(); ++i) {
            if (what_if.parameters()[i].path == path) {
                CHECK(what_if.set(i, what_if.parameters()[i].at(share)).empty());
                return;
            }
        }
        FAIL("no parameter " << path);
    };
    set("gas.regulator_drift", 0.9);
    set("draft.sense_line.stuck", 0.5);
    set("wiring/limit.in.joint/series_resistance", 0.4);
    while (window.furnace().now_s() < 400) {
        window.furnace().tick();
        what_if.follow();
    }
    REQUIRE(what_if.is_there());
    CHECK(what_if.differing().size() > 5);
    window.look_at(window.furnace().tick_at(300));
    window.lanes().open = true;
    for (std::size_t i = 0; i < window.furnace().gauges().list().size(); i += 7) {
        window.lanes().chosen.push_back(i);
    }
    look_over(window, {100.0F, 150.0F});
}
