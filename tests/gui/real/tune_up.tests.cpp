// SPDX-License-Identifier: MIT
#include "gui/real/acts.hpp"

#include <catch2/catch.hpp>

using namespace lightoff;
using test::In;
using test::Visitor;

TEST_CASE("by mouse: a tune-up with the blower out and back, and nobody hurt", "[real][tune-up]") {
    const TemporaryFolder folder;
    Visitor visitor(test::later(folder));
    visitor.press_in_list("Winter tune-up on Maple Rise");
    visitor.press("Take the call");

    // A value as found.
    test::open_tag(visitor, "filter");
    visitor.press("Look", In::middle);
    test::keep(visitor, "CO in the room");
    visitor.press("Close", In::side);
    visitor.scroll_to("Ambient carbon monoxide", In::side);
    visitor.scroll_until("write ", "Ambient carbon monoxide", In::side);
    visitor.press_near("write ", "Ambient carbon monoxide", In::side);
    CHECK(visitor.last_done() == "as-found ambient-carbon-monoxide " + std::to_string(visitor.readings()));

    // Power off, doors off, proved dead with a meter that is seen to work before and after.
    visitor.press_state_of("Thermostat");
    visitor.press("Close", In::middle); // the tag: the diagram has its room
    visitor.press("Diagram");
    test::measure_on_diagram(visitor, "disconnect.line_in", "disconnect.neutral");
    visitor.press_state_of("Disconnect");
    test::measure_on_diagram(visitor, "disconnect.line_out", "disconnect.neutral");
    test::measure_on_diagram(visitor, "disconnect.line_in", "disconnect.neutral");
    CHECK(visitor.find("Proved dead", In::strip));
    test::take_leads_off(visitor);
    visitor.press_state_of("Burner door");
    visitor.press_state_of("Blower door");

    // Out on its runners, looked at, and back.
    visitor.press("Furnace");
    test::open_tag(visitor, "blower_module");
    visitor.press("Undo", In::middle);
    CHECK(visitor.last_done() == "take-off blower_module");
    test::open_tag(visitor, "blower_wheel");
    visitor.press("Look", In::middle);
    CHECK(visitor.last_done() == "look blower_wheel");
    visitor.press("Notes", In::side);
    CHECK(visitor.shows_part("the cups of the blades are clean"));
    test::open_tag(visitor, "blower_motor");
    visitor.press("Look", In::middle);
    test::open_tag(visitor, "blower_module");
    visitor.press("Put back", In::middle);
    CHECK(visitor.last_done() == "put-back blower_module");

    // Closed, and run.
    visitor.press_state_of("Blower door");
    visitor.press_state_of("Burner door");
    visitor.press_state_of("Disconnect");
    for (int i = 0; i < 3; ++i)
        visitor.press("+5", In::strip);
    visitor.press_state_of("Thermostat");
    test::wait_for(visitor, "burners");
    test::wait_for(visitor, "blower");
    test::run_for_minutes(visitor, 4);
    CHECK(visitor.call().known().percept.heard.roar > 0);
    CHECK(visitor.call().known().percept.heard.blower_hz > 0);
    for (int i = 0; i < 3; ++i)
        visitor.press("−5", In::strip);
    test::wait_for(visitor, "quiet");
    CHECK(visitor.call().visit().hazards().empty());
    test::tell_and_sign(visitor, "I found nothing wrong with it.");
    const debrief::Model& model = test::wait_for_debrief(visitor);
    CHECK(model.debrief.grade.safety == Approx(100.0));
    CHECK_FALSE(model.debrief.grade.stopped);
}
