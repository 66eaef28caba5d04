// SPDX-License-Identifier: MIT
// Whole calls with a real pointer on a real window; no key is touched.
#include "gui/real/acts.hpp"

#include "visit/words.hpp"

#include <catch2/catch.hpp>

using namespace lightoff;
using test::In;
using test::Visitor;

namespace {

/// What a check of a mark that fails should say.
void tell_marks(const debrief::Model& model) {
    for (const lesson::Line& line : model.debrief.grade.lines)
        UNSCOPED_INFO(line.points << " of " << line.of << ": " << line.text);
    const auto& readings = model.story().readings;
    for (std::size_t i = 0; i < readings.size(); ++i)
        UNSCOPED_INFO(visit::clock_text(readings[i].tick - model.story().arrived_tick)
                      << " " << visit::reading_text(model.site(), readings[i], i + 1));
}

} // namespace

TEST_CASE("by mouse: the guided first call, from the first start to its end", "[real][first-call]") {
    const TemporaryFolder folder;
    Visitor visitor(test::at_first_start(folder));
    visitor.press("Lift the tag");
    visitor.press("A first call: no heat on Alder Steps");
    visitor.press("Take the call");
    const auto step = [&](int number) {
        INFO("guidance " << number);
        CHECK(visitor.shows(std::to_string(number) + " of 14"));
    };
    step(1);
    visitor.press("+5", In::strip);
    step(2);
    visitor.press("Bag", In::side); // time runs on once the work order is put aside
    for (int i = 0; i < 20 && !visitor.shows("3 of 14"); ++i)
        visitor.press("Wait");
    step(3);
    visitor.press_state_of("Blower door");
    step(4);
    visitor.press_state_of("Door switch");
    step(5);
    visitor.press("Diagram");
    test::measure_on_diagram(visitor, "board.R", "board.C");
    step(6);
    test::measure_on_diagram(visitor, "board.W", "board.C");
    step(7);
    test::measure_on_diagram(visitor, "thermostat.W", "thermostat.C");
    step(8);
    test::measure_on_diagram(visitor, "board.W.lug", "board.C");
    step(9);
    visitor.press("Suspects", In::side);
    test::stand_on_reading(visitor, "red on board.R, black on board.C");
    test::strike(visitor, "Power");
    visitor.scroll_and_press("0\u2007\u2007Before the first: nothing is passed", In::side);
    CHECK(visitor.last_done() == "stops-at 0");
    step(10);
    visitor.press_state_of("Door switch");
    visitor.press_state_of("Disconnect");
    step(11);
    visitor.press("Furnace");
    test::open_tag(visitor, "thermostat_cable");
    test::choose(visitor, "Adjust", "tighten");
    CHECK(visitor.last_done() == "tighten thermostat_cable");
    step(12);
    test::take_leads_off(visitor);
    visitor.press_state_of("Disconnect");
    visitor.press_state_of("Blower door");
    step(13);
    test::wait_for(visitor, "burners");
    step(14);
    test::run_for_minutes(visitor, 6);
    for (int i = 0; i < 5; ++i) // back to what it was
        visitor.press("−5", In::strip);
    test::wait_for(visitor, "quiet");
    for (int i = 0; i < 4; ++i)
        visitor.press("+5", In::strip);
    test::name_cause(visitor, "W terminal at the board corroded");
    test::tell_and_sign(visitor, "It is repaired and runs as it should.");
    const debrief::Model& model = test::wait_for_debrief(visitor);
    tell_marks(model);
    CHECK(model.debrief.grade.mark > 90.0); // nobody told it to measure as left
    CHECK(model.debrief.grade.safety == Approx(100.0));
    visitor.press("Leave");
    CHECK(visitor.program().at_the_desk());
}

TEST_CASE("by mouse: a plugged hose, from the front desk to a debrief with full marks", "[real][mouse]") {
    const TemporaryFolder folder;
    Visitor visitor(test::at_first_start(folder));
    visitor.press("Lift the tag");
    visitor.press("No heat at 14 Quarry Lane");
    visitor.press("Take the call");
    test::wait_for(visitor, "lamp");

    // prove, the time held while hands look for their places: what is begun goes on
    test::hold(visitor, true);
    visitor.press_state_of("Thermostat");
    visitor.press_state_of("Disconnect");
    visitor.press_state_of("Burner door");
    test::open_tag(visitor, "pressure_hose");
    test::choose(visitor, "Measure", "manometer-a: tee in the hose, pressure switch side");
    CHECK(visitor.last_done() == "manometer-a hose-tee-switch");
    visitor.press_state_of("Disconnect");
    visitor.press_state_of("Thermostat");
    test::wait_for(visitor, "inducer");
    test::wait_for(visitor, "inducer");
    test::keep(visitor, "pressure difference");
    test::choose(visitor, "Measure", "manometer-a: tee in the hose, inducer side");
    test::hold(visitor, false);
    test::wait_for_reading(visitor);
    visitor.press("Diagram");
    test::measure_on_diagram(visitor, "pressure_switch.in", "pressure_switch.out");
    visitor.press("Suspects", In::side);
    visitor.scroll_and_press("After: Call seen", In::side);
    CHECK(visitor.last_done() == "stops-at 1");
    test::strike(visitor, "Power");

    // mend
    visitor.press_state_of("Thermostat");
    visitor.press_state_of("Disconnect");
    test::take_leads_off(visitor);
    visitor.press("Furnace");
    test::open_tag(visitor, "pressure_hose");
    visitor.press("Undo", In::middle);
    CHECK(visitor.last_done() == "take-off pressure_hose");
    visitor.press("Clean", In::middle);
    CHECK(visitor.last_done() == "clean pressure_hose");
    test::choose(visitor, "Put back", "put-back");
    CHECK(visitor.last_done() == "put-back pressure_hose");
    test::take_off(visitor, "first hose at");

    // close
    visitor.press_state_of("Disconnect");
    visitor.press_state_of("Thermostat");
    test::wait_for(visitor, "burners");
    visitor.press_state_of("Burner door");
    test::wait_for(visitor, "blower");
    visitor.press("Taps and probes", In::middle);
    test::open_spot(visitor, "supply duct out of sight of the exchanger");
    test::choose(visitor, "Measure", "probe-1 here");
    test::open_spot(visitor, "return duct at the furnace");
    test::choose(visitor, "Measure", "probe-2 here");
    test::open_spot(visitor, "test hole in the vent connector");
    test::choose(visitor, "Measure", "analyser here");
    test::run_for_minutes(visitor, 5);
    test::take_off(visitor, "probe at test hole");
    for (int i = 0; i < 4; ++i)
        visitor.press("−5", In::strip);
    test::wait_for(visitor, "quiet");
    for (int i = 0; i < 4; ++i)
        visitor.press("+5", In::strip);
    test::name_cause(visitor, "Hose of the pressure switch plugged");
    test::tell_and_sign(visitor, "It is repaired and runs as it should.");

    // look back, page by page
    const debrief::Model& model = test::wait_for_debrief(visitor);
    tell_marks(model);
    CHECK(model.debrief.grade.mark == Approx(100.0));
    CHECK(model.debrief.grade.safety == Approx(100.0));
    CHECK_FALSE(visitor.shows("100.0")); // the score comes last
    visitor.press("I knew here");
    for (int i = 0; i < 6 && !visitor.shows("100.0"); ++i)
        visitor.press("On");
    CHECK(visitor.shows("100.0"));
    CHECK(visitor.shows("safety, stands apart"));
    visitor.press("On");
    visitor.press("Leave");
    REQUIRE(visitor.program().at_the_desk());
    CHECK(visitor.shows_part("mark 100.0, safety 100"));
}
