// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "broken.hpp"

#include <cmath>

// A fault gets worse in eleven steps: the readings that it names move one way only, for as long as the
// sequence of the call stays the same.

using namespace lightoff;
using namespace lightoff::test;

namespace {

constexpr int kSteps = 11;

double seconds_of(faults::Move::Moment moment) {
    switch (moment) {
    case faults::Move::Moment::standby:
        return 4.0;
    case faults::Move::Moment::purge:
        return 24.0;
    case faults::Move::Moment::warm_up:
        return 40.0;
    case faults::Move::Moment::hot:
        break;
    }
    return 600.0;
}

struct Step {
    double value = 0.0;
    std::vector<std::string> sequence;
};

Step step_of(const faults::Fault& fault, const faults::Move& move, double severity) {
    Rig rig = broken(fault.id, severity);
    rig.world.inputs.wind_pa = 20.0; // a sound vent cap does not feel it
    rig.run(seconds_of(move.moment));
    Step step;
    step.value = rig.read(move.reading);
    for (const bench::Milestone& m : rig.milestones)
        if (m.text.rfind("board", 0) == 0)
            step.sequence.push_back(m.text);
    return step;
}

} // namespace

TEST_CASE("from severity 0 to 1 in eleven steps the named readings move one way") {
    int compared = 0;
    for (const faults::Fault& fault : catalogue().faults)
        for (const faults::Move& move : fault.moves) {
            std::vector<Step> steps;
            for (int i = 0; i < kSteps; ++i)
                steps.push_back(step_of(fault, move, static_cast<double>(i) / (kSteps - 1)));
            int alike = 0;
            for (int i = 1; i < kSteps; ++i) {
                const Step& before = steps[static_cast<std::size_t>(i - 1)];
                const Step& now = steps[static_cast<std::size_t>(i)];
                INFO(fault.id << ", " << move.reading << ", step " << i << ": " << before.value << " to "
                              << now.value);
                if (before.sequence != now.sequence)
                    break;
                ++alike;
                CHECK((now.value - before.value) * (move.up ? 1.0 : -1.0) >= 0.0);
            }
            compared += alike;
            INFO(fault.id << ", " << move.reading << ": " << alike << " steps, from " << steps.front().value);
            CHECK(alike >= 2);
            // And they do move: from a sound furnace to the last step by more than nothing.
            const double last = steps[static_cast<std::size_t>(alike)].value;
            CHECK(std::abs(last - steps.front().value) > 0.0);
        }
    CHECK(compared > 300);
}

TEST_CASE("settings are exact at both ends and between them, linear and logarithmic") {
    faults::Fault fault;
    fault.changes = {{1, 2.0, 4.0, false}, {2, 1.0, 10000.0, true}, {3, -1.0, -100.0, true}};
    const auto at = [&](double severity, std::size_t i) {
        return faults::settings_at(fault, severity)[i].value;
    };
    CHECK(at(0.0, 0) == 2.0);
    CHECK(at(1.0, 0) == 4.0);
    CHECK(at(0.25, 0) == Approx(2.5));
    CHECK(at(0.0, 1) == 1.0);
    CHECK(at(1.0, 1) == 10000.0);
    CHECK(at(0.5, 1) == Approx(100.0));
    CHECK(at(0.5, 2) == Approx(-10.0));
    CHECK_THROWS_AS(faults::settings_at(fault, 1.01), std::invalid_argument);
    CHECK_THROWS_AS(faults::settings_at(fault, -0.01), std::invalid_argument);
    CHECK_THROWS_AS(faults::settings_at(fault, std::nan("")), std::invalid_argument);
}
