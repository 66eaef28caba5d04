// SPDX-License-Identifier: MIT
#include "gui/canvas/transform.hpp"

#include <catch2/catch.hpp>

using namespace lightoff::canvas;

TEST_CASE("to the screen and back is where one was") {
    const Transform t{{30, -12}, 2.5F};
    const ImVec2 p = t.to_drawing(t.to_screen(ImVec2{7, 9}));
    CHECK(p.x == Approx(7));
    CHECK(p.y == Approx(9));
}

TEST_CASE("zooming keeps the point under the pointer, within the limits too") {
    Transform t{{10, 20}, 1};
    const ImVec2 pointer{300, 200};
    const ImVec2 before = t.to_drawing(pointer);
    for (const float factor : {1.5F, 0.2F, 100.0F, 0.0001F}) {
        t.zoom_about(pointer, factor);
        CHECK(t.to_drawing(pointer).x == Approx(before.x).margin(0.01));
        CHECK(t.to_drawing(pointer).y == Approx(before.y).margin(0.01));
        CHECK(t.zoom >= 0.25F);
        CHECK(t.zoom <= 8.0F);
    }
}

TEST_CASE("a drawing is fitted whole and in the middle") {
    const Transform t = fit({{0, 0}, {100, 50}}, {{0, 0}, {400, 400}});
    CHECK(t.zoom == 4);
    CHECK(t.to_screen(ImVec2{50, 25}).x == Approx(200));
    CHECK(t.to_screen(ImVec2{50, 25}).y == Approx(200));
}

TEST_CASE("cutting a box loses nothing and never turns it inside out") {
    Rect rest{{0, 0}, {100, 50}};
    CHECK(rest.cut_left(30).width() == 30);
    CHECK(rest.width() == 70);
    CHECK(rest.cut_right(1000).width() == 70);
    CHECK(rest.width() == 0);
    CHECK(rest.cut_top(20).height() == 20);
    CHECK(rest.cut_bottom(99).height() == 30);
}
