// SPDX-License-Identifier: MIT
#include "gui/explore/explore.hpp"
#include "files/bundle_loader.hpp"
#include "gui/headless.hpp"
#include "gui/platform/platform.hpp"
#include "units/convert.hpp"

#include <catch2/catch.hpp>
#include <string>

using namespace lightoff;
using explore::Explore;
using platform::Key;
using test::Headless;

namespace {

const files::LoadedBundle& call_for_heat() {
    static const files::LoadedBundle kBundle = files::load_bundle("call-for-heat");
    return kBundle;
}

/// The call's house and furnace, but nobody has touched the thermostat.
lesson::Scenario without_history() {
    lesson::Scenario scenario = call_for_heat().scenario;
    scenario.history.clear();
    return scenario;
}

const ImVec2 kSize{1600, 1000};

/// A page, its window and hands that use it.
struct Session {
    lesson::Scenario scenario = without_history();
    Headless ui{kSize};
    Explore window{call_for_heat().site, scenario};

    void frame() {
        ui.settle([this](const canvas::Canvas& canvas) { window.draw(canvas, {{0, 0}, kSize}); });
    }
    void tap(Key key) {
        ui.tap(key);
        frame();
    }
    /// Clicks the button that shows these words.
    void click(const std::string& words) {
        frame();
        for (const canvas::LayoutProbe::Text& text : ui.probe.texts()) {
            if (text.words == words) {
                ui.click(text.ink.centre());
                frame();
                return;
            }
        }
        FAIL("no button shows \"" << words << "\"");
    }
    double now_s() { return window.furnace().now_s(); }
    const bench::World& world() { return window.furnace().world(); }
    double set_point_f() { return units::k_to_fahrenheit(world().inputs.set_point_k); }
    void let_pass(double seconds) {
        for (double gone = 0; gone < seconds; gone += 0.25) {
            window.pass(0.25);
        }
    }
    bool shows(const std::string& words) {
        frame();
        for (const canvas::LayoutProbe::Text& text : ui.probe.texts()) {
            if (text.words.find(words) != std::string::npos) {
                return true;
            }
        }
        return false;
    }
};

} // namespace

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
        s.tap(Key::Down);
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
        explore::readings_of(call_for_heat().site.model, s.world(), s.window.furnace().workspace());
    std::size_t rows = 0;
    for (const explore::ReadingGroup& group : groups) {
        rows += group.rows.size();
    }
    CHECK(groups.size() == 5);
    CHECK(rows == 30); // the reference furnace has them all: no readout was renamed unnoticed
}

TEST_CASE("no text is cut off, shortened or written over at any size, theme, text scale, page and moment") {
    lesson::Scenario scenario = call_for_heat().scenario;
    Explore window(call_for_heat().site, scenario);
    window.set_paused(true);
    for (const double moment_s : {3.0, 46.8, 500.0}) {
        while (window.furnace().now_s() < moment_s) {
            window.furnace().tick();
        }
        for (const ImVec2 size :
             {ImVec2{1280, 720}, ImVec2{1600, 1000}, ImVec2{1920, 1080}, ImVec2{2560, 1440}}) {
            for (const canvas::ThemeId id : canvas::kThemes) {
                for (const float percent : {80.0F, 100.0F, 150.0F, 200.0F}) {
                    window.set_look(id, percent);
                    const canvas::Theme& theme = canvas::theme(id);
                    Headless ui(size, id,
                                platform::design_scale(size.y, window.text_percent_in(size), theme));
                    const auto page = [&](const canvas::Canvas& canvas) {
                        window.draw(canvas, {{0, 0}, size});
                    };
                    for (int view = 0; view < 4; ++view) {
                        ui.settle(page);
                        ui.tap(Key::M);
                        ui.settle(page);
                        CAPTURE(theme.name, size.x, percent, view, moment_s);
                        CHECK(ui.probe.texts().size() > 10);
                        for (const std::string& problem : ui.probe.problems()) {
                            FAIL_CHECK(problem);
                        }
                        ui.tap(Key::V);
                    }
                }
            }
        }
    }
}
