// SPDX-License-Identifier: MIT
#include "evidence/on_all_cores.hpp"

#include "support/rig.hpp"

#include <catch2/catch.hpp>

#include <atomic>
#include <stdexcept>
#include <vector>

using namespace lightoff;

namespace {

constexpr std::size_t kMany = 200;

struct BrokenOff : std::runtime_error {
    BrokenOff() : std::runtime_error("broken off") {}
};

} // namespace

TEST_CASE("every number is done once, and the caller hears how many are begun") {
    std::vector<int> times(kMany, 0);
    std::size_t heard = 0;
    bool fell = false;
    evidence::on_all_cores(
        test::reference_model(), kMany, [&](std::size_t i, furnace::Workspace&) { ++times[i]; },
        [&](std::size_t begun) {
            fell = fell || begun < heard;
            heard = begun;
        });
    CHECK(times == std::vector<int>(kMany, 1));
    CHECK_FALSE(fell);
    CHECK(heard <= kMany);
}

TEST_CASE("what the work throws comes out, and the rest is not begun") {
    std::atomic<std::size_t> begun{0};
    CHECK_THROWS_AS(evidence::on_all_cores(
                        test::reference_model(), kMany,
                        [&](std::size_t, furnace::Workspace&) {
                            ++begun;
                            throw BrokenOff();
                        },
                        [](std::size_t) {}),
                    BrokenOff);
    CHECK(begun < kMany);
}

TEST_CASE("a listener that throws breaks the work off") {
    CHECK_THROWS_AS(evidence::on_all_cores(
                        test::reference_model(), kMany, [](std::size_t, furnace::Workspace&) {},
                        [](std::size_t) { throw BrokenOff(); }),
                    BrokenOff);
}

TEST_CASE("no work is no work") {
    evidence::on_all_cores(
        test::reference_model(), 0, [](std::size_t, furnace::Workspace&) { FAIL("nothing to do"); },
        [](std::size_t) { FAIL("nothing is done"); });
}
