// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "visit.hpp"

using namespace lightoff::test;

TEST_CASE("the fault of a call is among the causes on arrival") {
    Visit visit({{{"hose_plugged", 1.0, lightoff::faults::Trigger::from_start, 0}}});
    CHECK(visit.fitting().count("hose_plugged") == 1);
}
