// SPDX-License-Identifier: MIT
#include "air/air.hpp"
#include "rig.hpp"
#include "units/field_checks.hpp"

#include <catch2/catch.hpp>

#include <stdexcept>
#include <type_traits>

using namespace lightoff;

TEST_CASE("every byte of the air side's structs stands in their field lists") {
    STATIC_REQUIRE(std::is_trivially_copyable_v<air::State>);
    STATIC_REQUIRE(std::is_trivially_copyable_v<air::Condition>);
    CHECK(units::visited_bytes(air::State{}) == sizeof(air::State));
    CHECK(units::visited_bytes(air::Condition{}) == sizeof(air::Condition));
    CHECK(units::visited_bytes(air::Outputs{}) == sizeof(air::Outputs));
}

TEST_CASE("an air profile that can't be stepped is refused by name") {
    CHECK_NOTHROW(air::check(test::reference_air()));
    air::Params params = test::reference_air();
    params.ducts.filter_area_m2 = 0.0;
    CHECK_THROWS_WITH(air::check(params), Catch::Contains("filter_area_m2") && Catch::Contains("above 0"));
    params = test::reference_air();
    params.blower.rotor_inertia_kg_m2 = -1.0;
    CHECK_THROWS_AS(air::check(params), std::invalid_argument);
}
