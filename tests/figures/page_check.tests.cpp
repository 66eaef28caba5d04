// SPDX-License-Identifier: MIT
#include "figures/page_check.hpp"

#include <catch2/catch.hpp>

using namespace lightoff::figures;

namespace {

const std::filesystem::path kSource = LIGHTOFF_SOURCE_DIR;

std::size_t faults(const std::string& page, const std::vector<Drawing>& figures = {}) {
    return missing_from_page(kSource, page, figures).size();
}

} // namespace

TEST_CASE("a page that names what is there is accepted") {
    CHECK(faults("`sim/units/convert.hpp` and `docs/physics.md`, [link](physics.md), "
                 "[web](https://example.org)") == 0);
    CHECK(
        faults(
            "`tests/figures/page_check.tests.cpp`, *test: a page that names what is\n  there is accepted*") ==
        0);
    CHECK(faults("![x](figures/orifice-capacity.svg)",
                 {{"orifice-capacity.svg", "<desc>See docs/physics.md.</desc>"}}) == 0);
}

TEST_CASE("a page that names what is not there is refused") {
    CHECK(faults("") == 1);
    CHECK(faults("`sim/units/nowhere.hpp`") == 1);
    CHECK(faults("[link](nowhere.md)") == 1);
    CHECK(faults("`tests/figures/page_check.tests.cpp`, *test: a case of no such name*") == 1);
    CHECK(faults("nothing shown", {{"orifice-capacity.svg", ""}}) == 1);
    CHECK(faults("![x](figures/orifice-capacity.svg)",
                 {{"orifice-capacity.svg", "<desc>Held by (tests/nowhere.tests.cpp).</desc>"}}) == 1);
}

TEST_CASE("figures that differ, are missing or are left over are found") {
    const std::filesystem::path folder = kSource / "docs/figures";
    const std::string lamp = text_of(folder / "lamp.svg");
    REQUIRE_FALSE(lamp.empty());
    const std::size_t others = stale({{"lamp.svg", lamp}}, folder).size();
    CHECK(stale({{"lamp.svg", lamp + " "}}, folder).size() == others + 1);
    CHECK(stale({{"lamp.svg", lamp}, {"nowhere.svg", "x"}}, folder).size() == others + 1);
    CHECK(stale({}, folder).size() == others + 1);
}
