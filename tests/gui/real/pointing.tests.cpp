// SPDX-License-Identifier: MIT
// Catch zones, nearest wins, and the loupe, under a real pointer.
#include "gui/real/acts.hpp"

#include "gui/diagram/diagram.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <map>

using namespace lightoff;
using test::In;
using test::Visitor;
using namespace lightoff::canvas;

namespace {

struct Point {
    std::string name;
    ImVec2 at;
};

/// The diagram's points as they lie now.
std::vector<Point> points_of(const Visitor& visitor) {
    std::vector<Point> points;
    const canvas::Rect sheet = visitor.area(In::middle);
    for (const auto& target : visitor.probe().targets())
        if (sheet.holds(target.edge.centre()) && target.name.find('.') != std::string::npos)
            points.push_back({target.name, target.edge.centre()});
    return points;
}

float distance(ImVec2 a, ImVec2 b) {
    return std::hypot(a.x - b.x, a.y - b.y);
}

float to_next(const std::vector<Point>& points, std::size_t i) {
    float least = 1e9F;
    for (std::size_t k = 0; k < points.size(); ++k)
        if (k != i)
            least = std::min(least, distance(points[i].at, points[k].at));
    return least;
}

bool shows_loupe(const Visitor& visitor) {
    const auto& boxes = visitor.probe().boxes();
    return std::any_of(boxes.begin(), boxes.end(), [](const auto& box) { return box.name == "the loupe"; });
}

} // namespace

TEST_CASE("the pointer on a point of the diagram means that point; a loupe opens where another is close",
          "[real][pointing]") {
    const TemporaryFolder folder;
    Visitor visitor(test::later(folder));
    visitor.program().take_call("plugged-hose");
    visitor.settle();
    visitor.press("Diagram");
    int lone = 0;
    int close = 0;
    for (int zoomed = 0; zoomed < 2; ++zoomed) {
        const std::vector<Point> points = points_of(visitor);
        REQUIRE(points.size() > 20);
        for (std::size_t i = 0; i < points.size(); i += 5) {
            const float next = to_next(points, i);
            INFO(points[i].name << ", the next " << next << " pixels away");
            visitor.point(points[i].at);
            CHECK(visitor.names(points[i].name));
            const bool is_close = next < 13;
            if (is_close || next > 16) // between them the whole pixels of a pointer decide
                CHECK(shows_loupe(visitor) == is_close);
            (is_close ? close : lone) += 1;
        }
        for (int i = 0; i < 4 && zoomed == 0; ++i)
            visitor.press("+", In::middle);
    }
    CHECK(lone > 3);
    CHECK(close > 3);
}

TEST_CASE("a lead snaps to the nearest point within 40 pixels, and to none beyond", "[real][pointing]") {
    const TemporaryFolder folder;
    Visitor visitor(test::later(folder));
    visitor.program().take_call("plugged-hose");
    visitor.settle();
    visitor.press("Diagram");
    visitor.press("Bag", In::side);
    visitor.scroll_and_press("Take out: Multimeter", In::side);
    visitor.press("red ", In::side);
    // Sideways from a point, between 20 and 35 pixels, where it is still the nearest.
    const std::vector<Point> points = points_of(visitor);
    bool tried = false;
    for (std::size_t i = 0; i < points.size() && !tried; ++i)
        for (const ImVec2 off : {ImVec2{0, 30}, ImVec2{0, -30}, ImVec2{30, 0}, ImVec2{-30, 0}}) {
            const ImVec2 at = points[i].at + off;
            if (tried || !visitor.area(In::middle).shrunk(60).holds(at) || to_next(points, i) < 16)
                continue;
            const bool nearest = std::all_of(points.begin(), points.end(), [&](const Point& other) {
                return other.name == points[i].name || distance(other.at, at) > 34;
            });
            if (!nearest)
                continue;
            tried = true;
            visitor.click(at);
            INFO(points[i].name);
            CHECK(visitor.find("red on " + points[i].name, In::side));
        }
    CHECK(tried);
}

TEST_CASE("every part on the drawing can be pressed with a real pointer", "[real][pointing]") {
    const TemporaryFolder folder;
    Visitor visitor(test::later(folder));
    visitor.program().take_call("plugged-hose");
    visitor.settle();
    // Where it lies, by name; each of them is met by some point of its own box.
    std::map<std::string, canvas::Rect> parts;
    for (const auto& target : visitor.probe().targets())
        if (visitor.call().visit().site().catalogue.parts.end() !=
            std::find_if(visitor.call().visit().site().catalogue.parts.begin(),
                         visitor.call().visit().site().catalogue.parts.end(),
                         [&](const faults::Part& part) { return part.title == target.name; }))
            parts[target.name] = target.edge;
    REQUIRE(parts.size() > 30);
    for (const auto& [title, box] : parts) {
        if (!visitor.area(In::middle).holds(box.centre()))
            continue; // on the strip
        bool met = false;
        for (float y = 0.5F; y < 6 && !met; y += 1)
            for (float x = 0.5F; x < 6 && !met; x += 1) {
                // Middle first, then outwards.
                const float fx = std::fmod(x + 2.5F, 6.0F) / 6;
                const float fy = std::fmod(y + 2.5F, 6.0F) / 6;
                visitor.point({box.min.x + fx * box.width(), box.min.y + fy * box.height()});
                met = visitor.names(title);
            }
        INFO(title);
        CHECK(met);
    }
}
