// SPDX-License-Identifier: MIT
#include "gui/canvas/controls.hpp"

#include "gui/headless.hpp"

#include <array>
#include <catch2/catch.hpp>

using namespace lightoff;
using namespace lightoff::canvas;
using platform::Key;
using test::Headless;

namespace {

constexpr std::array<std::string_view, 3> kSpeeds{"1×", "10×", "60×"};

} // namespace

TEST_CASE("a button is pressed by a click on it and by none beside it") {
    Headless ui;
    int pressed = 0;
    const auto page = [&](const Canvas& canvas) {
        pressed += button(canvas, {{100, 100}, {200, 134}}, "Pause") ? 1 : 0;
    };
    ui.frame(page);
    ui.click({150, 117});
    ui.settle(page);
    CHECK(pressed == 1);
    ui.click({250, 117});
    ui.settle(page);
    CHECK(pressed == 1);
    CHECK(ui.probe.problems().empty());
}

TEST_CASE("a button is reached and pressed by the keyboard alone") {
    Headless ui;
    int first = 0;
    int second = 0;
    const auto page = [&](const Canvas& canvas) {
        first += button(canvas, {{100, 100}, {200, 134}}, "Pause") ? 1 : 0;
        second += button(canvas, {{220, 100}, {320, 134}}, "Step") ? 1 : 0;
    };
    ui.settle(page);
    ui.tap(Key::Tab);
    ui.settle(page);
    ui.tap(Key::Right);
    ui.settle(page);
    ui.tap(Key::Space);
    ui.settle(page);
    CHECK(first + second == 1);
}

TEST_CASE("one of a row is chosen") {
    Headless ui;
    std::size_t speed = 0;
    Rect row{};
    const auto page = [&](const Canvas& canvas) {
        row = rect_at({50, 50}, {400, control_height(canvas)});
        speed = choice(canvas, row, kSpeeds, speed);
    };
    ui.frame(page);
    ui.frame(page);
    const auto& texts = ui.probe.texts();
    REQUIRE(texts.size() == 3);
    ui.click(texts[2].ink.centre());
    ui.settle(page);
    CHECK(speed == 2);
    CHECK(ui.probe.problems().empty());
}

TEST_CASE("controls are big enough to hit at the smallest text") {
    Headless ui({800, 600}, ThemeId::Paper, 0.8F);
    ui.frame([](const Canvas& canvas) {
        CHECK(control_height(canvas) >= 24);
        CHECK(button_width(canvas, "x") >= 24);
    });
}
