// SPDX-License-Identifier: MIT
// Keys where they are not alike everywhere: arrows over the drawing, and a slash that is a shifted key.
#include "gui/real/acts.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cstdlib>
#include <map>

using namespace lightoff;
using test::In;
using test::Visitor;
using namespace lightoff::canvas;

namespace {

/// The arrows, the one first that leads straightest from one box towards another.
std::vector<std::string> towards(Rect from, Rect to) {
    const ImVec2 way = to.centre() - from.centre();
    std::vector<std::pair<float, std::string>> arrows{
        {way.x, "Right"}, {-way.x, "Left"}, {way.y, "Down"}, {-way.y, "Up"}};
    std::stable_sort(arrows.begin(), arrows.end(),
                     [](const auto& a, const auto& b) { return a.first > b.first; });
    std::vector<std::string> names;
    for (const auto& arrow : arrows)
        names.push_back(arrow.second);
    return names;
}

Rect box_of(const Visitor& visitor, std::string_view words) {
    return visitor.place_of(words, In::middle);
}

} // namespace

TEST_CASE("a part on the drawing is walked to by arrow keys, named on the way, and Enter opens its tag",
          "[real][keys]") {
    const TemporaryFolder folder;
    Visitor visitor(test::later(folder));
    visitor.program().take_call("plugged-hose");
    visitor.settle();
    visitor.tab_to("Taps and probes");
    visitor.tap("Tab");
    for (const char* part : {"gas_valve", "igniter", "board"}) {
        const std::string title = visitor.title_of(part);
        INFO(title);
        std::string passed;
        std::string now = visitor.with_keyboard();
        std::map<std::string, std::size_t> tried; // who comes back to a thing goes another way from it
        for (int i = 0; i < 60 && now != title; ++i) {
            REQUIRE_FALSE(now.empty());
            visitor.tap(towards(box_of(visitor, now), box_of(visitor, title))[tried[now]++ % 4]);
            now = visitor.with_keyboard();
            passed += now + "\n";
        }
        INFO(passed);
        REQUIRE(now == title);
        CHECK(visitor.names(title));
        visitor.tap("Return");
        CHECK(visitor.find("Put back", In::middle));
        CHECK(visitor.call().focus());
        visitor.tap("Escape");
        CHECK_FALSE(visitor.call().focus());
    }
}

TEST_CASE("where the slash is a shifted key it opens the typed line, and is no part of it", "[real][keys]") {
    REQUIRE(std::system("setxkbmap de") == 0); // Shift and 7
    const TemporaryFolder folder;
    {
        Visitor visitor(test::later(folder));
        visitor.program().take_call("plugged-hose");
        visitor.settle();
        visitor.tap("7", "Shift_L");
        visitor.type("thermostat-mode off");
        visitor.tap("Return");
        CHECK(visitor.last_done() == "thermostat-mode off");
        CHECK(visitor.call().refusal().empty());
        // A digit alone opens nothing.
        visitor.tap("7");
        CHECK(visitor.shows("Type an action"));
    }
    CHECK(std::system("setxkbmap us") == 0);
}
