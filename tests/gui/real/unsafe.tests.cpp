// SPDX-License-Identifier: MIT
// What the window says to an unsafe act.
#include "gui/real/acts.hpp"

#include "files/attempt.hpp"
#include "furnace/model.hpp"

#include <catch2/catch.hpp>

using namespace lightoff;
using test::In;
using test::Visitor;

TEST_CASE(
    "an unsafe act is stopped: a door in the way is named, a gas joint is warned of, then the call ends",
    "[real][unsafe]") {
    const TemporaryFolder folder;
    Visitor visitor(test::later(folder));
    visitor.program().take_call("plugged-hose");
    visitor.settle();

    // Hands through a door: refused, with the way that there is.
    test::open_tag(visitor, "pressure_hose");
    visitor.press("Undo", In::middle);
    CHECK(visitor.last_done().empty());
    CHECK(visitor.shows_part("is in the burner compartment; take its door off first"));
    visitor.press("First: burner-door off", In::middle);
    CHECK(visitor.last_done() == "burner-door off");

    // A gas joint with the cock open: said once, and nothing is done.
    test::open_tag(visitor, "gas_valve");
    visitor.press("Replace", In::middle);
    CHECK(visitor.last_done() == "burner-door off");
    CHECK(visitor.shows_part("would end the call"));
    CHECK_FALSE(visitor.call().stopped());
    const std::string path = visitor.call().place().path;

    // Done all the same: the call is over.
    visitor.press("Replace", In::middle);
    REQUIRE(visitor.call().stopped());
    CHECK(visitor.shows_part("Stop work at "));
    CHECK(visitor.shows_part("Opened a gas joint with the cock open"));
    CHECK(visitor.shows_part("Raw gas comes out at once"));
    const std::uint64_t tick = visitor.call().visit().ticks_here();
    for (int i = 0; i < 10; ++i)
        visitor.frame();
    CHECK(visitor.call().visit().ticks_here() == tick);
    visitor.press("Talk it over");

    // The debrief begins with that moment, and the mark says so.
    const debrief::Model& model = test::wait_for_debrief(visitor);
    CHECK(files::read_attempt(path, furnace::kPhysicsVersion).end->reason == "stop work");
    CHECK(visitor.find("1  Stop work"));
    CHECK(visitor.shows_part("Opened a gas joint with the cock open."));
    CHECK(model.debrief.grade.stopped);
    CHECK(model.debrief.grade.mark <= 40.0);
    CHECK(model.debrief.grade.safety < 100.0);
    for (int i = 0; i < 6 && !visitor.shows("safety, stands apart"); ++i)
        visitor.press("On");
    CHECK(visitor.shows_part("Stop work: Opened a gas joint with the cock open."));
}
