// SPDX-License-Identifier: MIT
// A whole call with real keys; the pointer lies outside of the window.
#include "gui/model_script.hpp"
#include "gui/real/acts.hpp"

#include <catch2/catch.hpp>

using namespace lightoff;
using test::Visitor;

namespace {

/// Tab to something, and Enter.
void enter(Visitor& visitor, std::string_view words) {
    visitor.tab_to(words);
    visitor.tap("Return");
}

} // namespace

TEST_CASE("by keyboard alone: a plugged hose, from the front desk to a debrief with full marks",
          "[real][keyboard]") {
    const TemporaryFolder folder;
    Visitor visitor(test::at_first_start(folder));
    visitor.tap("Return"); // lifts the tag
    enter(visitor, "No heat at 14 Quarry Lane");
    REQUIRE(visitor.program().call() != nullptr);
    for (const std::string& line : test::script("plugged-hose")) {
        if (line == "stops-at 1") {
            visitor.tap("F4");
            enter(visitor, "1\u2007\u2007After: Call seen");
            CHECK(visitor.last_done() == line);
            visitor.tap("F2");
        } else if (line == "cause hose_plugged") {
            visitor.tap("F5");
            enter(visitor, "name it");
            visitor.tab_to("Search by typing");
            visitor.type("switch plugged");
            enter(visitor, "Hose of the pressure switch plugged");
            CHECK(visitor.last_done() == line);
        } else if (line == "tell repaired") {
            enter(visitor, "Customer's copy");
            enter(visitor, "It is repaired and runs as it should.");
            CHECK(visitor.last_done() == line);
        } else if (line == "sign-off") {
            enter(visitor, "Sign the work order");
            enter(visitor, "Sign it and leave");
        } else {
            visitor.line(line);
        }
    }
    REQUIRE(visitor.program().is_debriefing());
    const debrief::Model& model = test::wait_for_debrief(visitor);
    CHECK(model.debrief.grade.mark == Approx(100.0));
    CHECK(model.debrief.grade.safety == Approx(100.0));
    visitor.tap("k"); // I knew here
    for (int i = 0; i < 6 && !visitor.shows("100.0"); ++i)
        visitor.tap("n");
    CHECK(visitor.shows("100.0"));
    visitor.tap("Escape");
    REQUIRE(visitor.program().at_the_desk());
    CHECK(visitor.shows_part("mark 100.0, safety 100"));
    visitor.tap("q", "Control_L");
    CHECK(visitor.is_closed());
}
