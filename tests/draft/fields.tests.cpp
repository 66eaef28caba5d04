// SPDX-License-Identifier: MIT
#include "draft/draft.hpp"
#include "rig.hpp"
#include "units/field_checks.hpp"

#include <catch2/catch.hpp>

#include <stdexcept>
#include <type_traits>

using namespace lightoff;

TEST_CASE("every byte of the draft's structs stands in their field lists") {
    STATIC_REQUIRE(std::is_trivially_copyable_v<draft::State>);
    STATIC_REQUIRE(std::is_trivially_copyable_v<draft::Condition>);
    CHECK(units::visited_bytes(draft::State{}) == sizeof(draft::State));
    CHECK(units::visited_bytes(draft::Condition{}) == sizeof(draft::Condition));
    CHECK(units::visited_bytes(draft::Outputs{}) == sizeof(draft::Outputs));
}

TEST_CASE("a draft profile that can't be stepped is refused by name") {
    CHECK_NOTHROW(draft::check(test::reference_draft()));
    draft::Params params = test::reference_draft();
    params.path.outlet_area_m2 = 0.0;
    CHECK_THROWS_WITH(draft::check(params), Catch::Contains("outlet_area_m2") && Catch::Contains("above 0"));
    params = test::reference_draft();
    params.sense_line.break_pa = params.sense_line.make_pa;
    CHECK_THROWS_AS(draft::check(params), std::invalid_argument);
    params = test::reference_draft();
    params.inducer.fan.slope_pa_s_m3 = 1.0;
    CHECK_THROWS_WITH(draft::check(params), Catch::Contains("slope"));
}
