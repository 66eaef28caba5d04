// SPDX-License-Identifier: MIT
#include "cli.hpp"
#include "electrical/ngspice.hpp"

#include <cmath>

using lightoff::test::cli_json;
using lightoff::test::cli_out;
using lightoff::test::printed_value;
using lightoff::test::run_ngspice;

namespace {

const double kPi = std::acos(-1.0);

/// Every node of the program's table against ngspice on the deck that it wrote: 0.1 % or 1 mV.
void compare(const std::string& at, bool dc) {
    const TemporaryFolder folder;
    const std::string deck = folder.file("deck.cir");
    std::vector<std::string> words{"circuit", "call-for-heat", "--at=" + at, "--json", "--spice=" + deck};
    if (dc)
        words.emplace_back("--dc");
    const auto json = cli_json(words);
    const std::string said = run_ngspice(bytes_of(deck));
    std::size_t nodes = 0;
    for (const auto& node : json["nodes"]) {
        if (node["spice"] == "0")
            continue;
        const double angle = dc ? 0.0 : node["angle_deg"].get<double>() * kPi / 180.0;
        const std::complex<double> ours = std::polar(1.0, angle) * node["voltage_V"].get<double>();
        const auto theirs = printed_value(said, "v(" + node["spice"].get<std::string>() + ")");
        INFO(at << " s, " << node["node"] << ": " << ours << " and " << theirs);
        CHECK(std::abs(ours - theirs) <= std::max(1e-3, 1e-3 * std::abs(theirs)));
        ++nodes;
    }
    CHECK(nodes > 50);
}

} // namespace

TEST_CASE("circuit and ngspice agree on every node: at rest, igniter on, burning") {
    for (const char* at : {"3", "40", "100"}) {
        compare(at, false);
        compare(at, true);
    }
}

TEST_CASE("circuit's page names nodes and elements") {
    const std::string page = cli_out({"circuit", "call-for-heat", "--at=40"});
    CHECK_THAT(page, Catch::Contains("40.00 s, 60 Hz") && Catch::Contains("cabinet.metal") &&
                         Catch::Contains("igniter") && Catch::Contains("angle"));
    CHECK_THAT(cli_out({"circuit", "call-for-heat", "--at=40", "--dc"}), !Catch::Contains("angle"));
}

TEST_CASE("current that flows into a node flows out of it (Kirchhoff), in the DC table") {
    const auto json = cli_json({"circuit", "call-for-heat", "--at=100", "--dc", "--json"});
    // The rod lead is a chain without branches but for strays: the flame current is the same all along it.
    double flame_a = 0.0;
    for (const auto& element : json["elements"])
        if (element["kind"] == "flame")
            flame_a = element["current_A"].get<double>();
    CHECK(flame_a > 2e-6); // 2 to 6 uA: common practice, no source
    CHECK(flame_a < 6e-6);
}
