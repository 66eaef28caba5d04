// SPDX-License-Identifier: MIT
#include "gui/canvas/layout_probe.hpp"

#include <catch2/catch.hpp>

using lightoff::canvas::LayoutProbe;
using lightoff::canvas::Rect;

namespace {

constexpr float kBig = 1000;
const Rect kAll{{0, 0}, {kBig, kBig}};

} // namespace

TEST_CASE("text in its place is no problem") {
    LayoutProbe probe;
    probe.add_box({{0, 0}, {200, 100}}, "panel");
    probe.add_text({{10, 10}, {60, 30}}, kAll, "one", false);
    probe.add_text({{10, 30}, {60, 50}}, kAll, "two", false);
    probe.add_target({{300, 0}, {324, 24}}, "button");
    CHECK(probe.problems().empty());
}

TEST_CASE("text that is cut off, shortened, overlapping or crossing an edge is found") {
    LayoutProbe probe;
    SECTION("cut off") {
        probe.add_text({{980, 10}, {1020, 30}}, kAll, "late", false);
    }
    SECTION("shortened") {
        probe.add_text({{10, 10}, {60, 30}}, kAll, "long", true);
    }
    SECTION("crossing") {
        probe.add_box({{0, 0}, {50, 100}}, "panel");
        probe.add_text({{10, 10}, {60, 30}}, kAll, "wide", false);
    }
    SECTION("overlapping") {
        probe.add_text({{10, 10}, {60, 30}}, kAll, "one", false);
        probe.add_text({{50, 12}, {90, 32}}, kAll, "two", false);
    }
    SECTION("small target") {
        probe.add_target({{0, 0}, {20, 30}}, "button");
    }
    CHECK(probe.problems().size() == 1);
}

TEST_CASE("things on different layers may lie over each other, and a frame begins empty") {
    LayoutProbe probe;
    probe.add_text({{10, 10}, {60, 30}}, kAll, "page", false);
    probe.set_layer(1);
    probe.add_text({{10, 10}, {60, 30}}, kAll, "tag", false);
    CHECK(probe.problems().empty());
    probe.begin_frame();
    CHECK(probe.texts().empty());
}
