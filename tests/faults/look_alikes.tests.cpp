// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "broken.hpp"
#include "lesson/look_alikes.hpp"

#include <set>
#include <utility>

// Which faults no reading tells apart: found by running all of them, compared with what the catalogue lists.

using namespace lightoff;
using namespace lightoff::test;

TEST_CASE("each pair of faults differs beyond meter accuracy, or is listed as look-alikes with the reason") {
    std::set<std::pair<int, int>> found;
    for (const lesson::Imitation& pair : lesson::find_imitations(reference_site(), call_for_heat()))
        found.insert({pair.fault, pair.by});
    const auto& faults = catalogue().faults;
    for (int a = 0; a < static_cast<int>(faults.size()); ++a)
        for (int b = 0; b < static_cast<int>(faults.size()); ++b) {
            const faults::Fault& fault = faults[static_cast<std::size_t>(a)];
            const auto listed = std::count_if(fault.look_alikes.begin(), fault.look_alikes.end(),
                                              [&](const faults::LookAlike& l) { return l.fault == b; });
            INFO(fault.id << " and " << faults[static_cast<std::size_t>(b)].id);
            CHECK(listed == static_cast<std::ptrdiff_t>(found.count({a, b})));
        }
    for (const faults::Fault& fault : faults)
        for (const faults::LookAlike& other : fault.look_alikes)
            CHECK(other.because.size() > 20);
}

TEST_CASE("every fault can be told from a healthy furnace at its worst") {
    furnace::Workspace workspace(reference_model());
    const auto sheet = [&](const faults::Fault* fault) {
        return lesson::standard_sheet(reference_site(), call_for_heat(), fault, 1.0, workspace);
    };
    const auto healthy = sheet(nullptr);
    for (const faults::Fault& fault : catalogue().faults) {
        INFO(fault.id);
        CHECK(lesson::distance(healthy, sheet(&fault)) > 1.0);
    }
}
