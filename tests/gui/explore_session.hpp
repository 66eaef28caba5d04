// SPDX-License-Identifier: MIT
#pragma once
#include "files/bundle_loader.hpp"
#include "gui/explore/explore.hpp"
#include "gui/headless.hpp"
#include "units/convert.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <string>

namespace lightoff::test {

inline const files::LoadedBundle& call_for_heat() {
    static const files::LoadedBundle kBundle = files::load_bundle("call-for-heat");
    return kBundle;
}

/// The call's house and furnace, but nobody has touched the thermostat.
inline lesson::Scenario without_history() {
    lesson::Scenario scenario = call_for_heat().scenario;
    scenario.history.clear();
    return scenario;
}

/// A page of explore, its window and hands that use it.
struct ExploreSession {
    explicit ExploreSession(lesson::Scenario of = without_history(), ImVec2 window_px = {1600, 1000})
        : scenario(std::move(of)), size(window_px), ui(size), window(call_for_heat().site, scenario) {}

    lesson::Scenario scenario;
    ImVec2 size;
    Headless ui;
    explore::Explore window;

    void frame() {
        ui.settle([this](const canvas::Canvas& canvas) { window.draw(canvas, {{0, 0}, size}); });
    }
    void tap(platform::Key key) {
        ui.tap(key);
        frame();
    }
    void type(const std::string& words) {
        for (const char c : words) {
            ui.queue.push(platform::TextEvent{static_cast<char32_t>(c)});
        }
        frame();
    }
    const canvas::LayoutProbe::Text* find(const std::string& words) const {
        for (const canvas::LayoutProbe::Text& text : ui.probe.texts()) {
            if (text.words == words) {
                return &text;
            }
        }
        return nullptr;
    }
    /// Clicks the button that shows these words.
    void click(const std::string& words) {
        frame();
        const canvas::LayoutProbe::Text* text = find(words);
        INFO("no button shows \"" << words << "\"");
        REQUIRE(text != nullptr);
        ui.click(text->ink.centre());
        frame();
    }
    bool shows(const std::string& words) {
        frame();
        return std::any_of(ui.probe.texts().begin(), ui.probe.texts().end(),
                           [&](const auto& text) { return text.words.find(words) != std::string::npos; });
    }
    double now_s() { return window.furnace().now_s(); }
    const bench::World& world() { return window.furnace().world(); }
    double set_point_f() { return units::k_to_fahrenheit(world().inputs.set_point_k); }
    void let_pass(double seconds) {
        for (double gone = 0; gone < seconds; gone += 0.25) {
            window.pass(0.25);
        }
    }
    /// Lets frames go by until a step that was asked for has ended.
    void finish_stepping() {
        for (int frames = 0; window.stepping() && frames < 1000; ++frames) {
            window.pass(1.0 / 60);
        }
        CHECK_FALSE(window.stepping());
    }
};

} // namespace lightoff::test
