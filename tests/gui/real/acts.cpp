// SPDX-License-Identifier: MIT
#include "gui/real/acts.hpp"

#include "bench/access.hpp"
#include "bench/action.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

namespace lightoff::test {
namespace {

using canvas::Rect;

/// Something large lies behind something small: points all over it are tried until its name is shown.
void open_on_drawing(Visitor& visitor, const std::string& title) {
    INFO("looking on the drawing for \"" << title << "\"");
    const Rect box = visitor.place_of(title, In::middle);
    for (const ImVec2 share : {ImVec2{0.5F, 0.5F}, ImVec2{0.5F, 0.15F}, ImVec2{0.5F, 0.85F},
                               ImVec2{0.15F, 0.5F}, ImVec2{0.85F, 0.5F}, ImVec2{0.1F, 0.1F},
                               ImVec2{0.9F, 0.9F}, ImVec2{0.1F, 0.9F}, ImVec2{0.9F, 0.1F}}) {
        const ImVec2 at{box.min.x + share.x * box.width(), box.min.y + share.y * box.height()};
        visitor.point(at);
        if (!visitor.names(title))
            continue;
        visitor.click(at);
        CHECK(visitor.find(title, In::middle));
        REQUIRE(visitor.call().focus());
        return;
    }
    FAIL("no point of it shows its name; the window says\n" << visitor.all_words());
}

void put_lead(Visitor& visitor, const std::string& colour, std::string_view point) {
    const std::string there = colour + " on " + std::string(point);
    if (visitor.find(there, In::side) && visitor.shows(there))
        return; // nobody moves it for that
    if (!visitor.find(colour + " ", In::side))
        visitor.scroll_to(colour + " ", In::side);
    visitor.press(colour + " ", In::side);
    CHECK(visitor.find(colour + " in your hand", In::side));
    visitor.press(point, In::middle);
    CHECK_FALSE(visitor.find(colour + " in your hand", In::side));
}

} // namespace

void open_tag(Visitor& visitor, std::string_view part) {
    open_on_drawing(visitor, visitor.title_of(part));
}

void open_spot(Visitor& visitor, std::string_view title) {
    open_on_drawing(visitor, std::string(title));
}

void choose(Visitor& visitor, std::string_view slot, std::string_view words) {
    const std::size_t before = visitor.call().visit().actions();
    visitor.press(slot, In::middle);
    if (visitor.call().visit().actions() == before)
        visitor.scroll_and_press(words, In::middle);
}

void measure_on_diagram(Visitor& visitor, std::string_view red, std::string_view black) {
    INFO("red on " << red << ", black on " << black);
    const std::size_t before = visitor.readings();
    hold(visitor, true);
    visitor.press("Bag", In::side);
    if (!visitor.find("red ", In::side))
        visitor.scroll_and_press("Take out: Multimeter", In::side);
    put_lead(visitor, "red", red);
    put_lead(visitor, "black", black);
    CHECK(visitor.last_done() == "leads " + std::string(red) + " " + std::string(black));
    hold(visitor, false);
    visitor.until("a reading of both", [&] {
        const auto& all = visitor.call().visit().notebook().readings();
        const furnace::Model& model = visitor.call().visit().site().model;
        return std::any_of(
            all.begin() + static_cast<std::ptrdiff_t>(before), all.end(), [&](const bench::Reading& reading) {
                return reading.window == 0 && bench::point_name(model, reading.place_a) == red &&
                       bench::point_name(model, reading.place_b) == black;
            });
    });
}

void take_leads_off(Visitor& visitor) {
    visitor.press("Bag", In::side);
    visitor.scroll_and_press("Leads off", In::side);
    CHECK(visitor.last_done() == "leads-off");
}

void take_off(Visitor& visitor, std::string_view words) {
    visitor.press("Bag", In::side);
    visitor.scroll_and_press(words, In::side);
    visitor.scroll_and_press("nowhere: take it off", In::side);
}

void keep(Visitor& visitor, std::string_view window) {
    const std::size_t before = visitor.readings();
    visitor.press("Bag", In::side);
    visitor.scroll_to(window, In::side);
    visitor.scroll_until("Keep the reading", window, In::side);
    visitor.press_near("Keep the reading", window, In::side);
    CHECK(visitor.readings() == before + 1);
}

void wait_for_reading(Visitor& visitor) {
    const std::size_t before = visitor.readings();
    visitor.until("a reading", [&] { return visitor.readings() > before; });
}

void wait_for(Visitor& visitor, std::string_view what) {
    visitor.press("Noticed", In::side);
    visitor.press(what, In::side);
}

void hold(Visitor& visitor, bool held) {
    if (visitor.shows(held ? "Runs" : "Held"))
        visitor.press(held ? "Runs" : "Held");
    CHECK(visitor.shows(held ? "Held" : "Runs"));
}

void run_for_minutes(Visitor& visitor, int minutes) {
    const std::uint64_t end =
        visitor.call().visit().ticks_here() + static_cast<std::uint64_t>(minutes) * 60 * 20;
    visitor.press("20×");
    visitor.until("time to pass", [&] { return visitor.call().visit().ticks_here() >= end; });
    visitor.press("1×");
}

void stand_on_reading(Visitor& visitor, std::string_view place) {
    visitor.scroll_and_press("By reading", In::side);
    visitor.scroll_and_press(place, In::side);
}

void strike(Visitor& visitor, std::string_view block) {
    const std::string heading = "\u2007\u2007" + std::string(block);
    visitor.scroll_to(heading, In::side);
    visitor.press_near("strike by", heading, In::side);
    CHECK(visitor.last_done().substr(0, 7) == "strike ");
}

void name_cause(Visitor& visitor, std::string_view title) {
    visitor.press("Close", In::side);
    visitor.press("name it", In::side);
    visitor.scroll_and_press(title, In::side);
    CHECK(visitor.last_done().substr(0, 6) == "cause ");
}

void tell_and_sign(Visitor& visitor, std::string_view told) {
    visitor.press("Close", In::side);
    visitor.press("Customer's copy", In::side);
    visitor.scroll_and_press(told, In::side);
    visitor.scroll_and_press("Sign the work order", In::side);
    visitor.scroll_and_press("Sign it and leave", In::side);
    REQUIRE(visitor.program().is_debriefing());
}

const debrief::Model& wait_for_debrief(Visitor& visitor) {
    visitor.until("the debrief", std::chrono::seconds(600), [&] {
        REQUIRE(visitor.program().is_debriefing());
        return visitor.program().debriefed() != nullptr;
    });
    visitor.settle();
    return *visitor.program().debriefed();
}

} // namespace lightoff::test
