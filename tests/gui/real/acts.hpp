// SPDX-License-Identifier: MIT
#pragma once
#include "gui/real/visitor.hpp"

#include <string>
#include <string_view>

/// What a technician does with a pointer, each act as a row of presses on what can be seen.
namespace lightoff::test {

void open_tag(Visitor& visitor, std::string_view part);   ///< on the drawing of the furnace
void open_spot(Visitor& visitor, std::string_view title); ///< a tap or a place for a probe
/// One of the ways of a slot of the open tag; the slot itself where it has one way only.
void choose(Visitor& visitor, std::string_view slot, std::string_view words);
/// Puts both leads on points of the diagram, and waits for a reading.
void measure_on_diagram(Visitor& visitor, std::string_view red, std::string_view black);
void take_leads_off(Visitor& visitor);
/// In the bag: a hose or probe, by the words on it, is taken off its place.
void take_off(Visitor& visitor, std::string_view words);
/// Writes down what stands in a window, by the words over it.
void keep(Visitor& visitor, std::string_view window);
void wait_for_reading(Visitor& visitor);
/// On the page of what was noticed.
void wait_for(Visitor& visitor, std::string_view what);
/// Time at the furnace stands, or runs.
void hold(Visitor& visitor, bool held);
/// At 20x, and back to 1x.
void run_for_minutes(Visitor& visitor, int minutes);
/// On the sheet of suspects: the reading taken at that place is the one to strike by.
void stand_on_reading(Visitor& visitor, std::string_view place);
void strike(Visitor& visitor, std::string_view block);
void name_cause(Visitor& visitor, std::string_view title);
void tell_and_sign(Visitor& visitor, std::string_view told);
const debrief::Model& wait_for_debrief(Visitor& visitor);

} // namespace lightoff::test
