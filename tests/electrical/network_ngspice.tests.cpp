// SPDX-License-Identifier: MIT
#include "random_network.hpp"
#include <catch2/catch.hpp>

using namespace lightoff::test;

TEST_CASE("every node of random wiring agrees with ngspice, AC and DC") {
    // Source: ngspice 39 on the exported deck; 0.1 % or 1 mV on every node.
    double worst_of_all = 0.0;
    for (unsigned seed = 1; seed <= 40; ++seed) {
        const auto [ac, dc] = compare_with_ngspice(RandomNetwork(seed).make());
        INFO("seed " << seed << ": AC node " << ac.node << " ours " << ac.ours << " ngspice " << ac.ngspice
                     << "; DC node " << dc.node << " ours " << dc.ours << " ngspice " << dc.ngspice);
        CHECK(ac.units <= 1.0);
        CHECK(dc.units <= 1.0);
        worst_of_all = std::max({worst_of_all, ac.units, dc.units});
    }
    WARN("worst node: " << worst_of_all << " of the tolerance");
}
