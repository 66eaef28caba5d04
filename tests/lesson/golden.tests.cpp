// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "golden.hpp"

#include <fstream>

TEST_CASE("the golden run comes to the golden hash") {
    std::ifstream file(std::string(LIGHTOFF_SOURCE_DIR) + "/tests/reference/golden_hash.txt");
    std::string expected;
    REQUIRE(std::getline(file, expected));
    // Changed on purpose? Raise furnace::kPhysicsVersion and run
    //   build/bin/test_golden_run > tests/reference/golden_hash.txt
    CHECK(lightoff::test::golden_line() == expected);
}
