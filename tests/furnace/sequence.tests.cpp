// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "support/rig.hpp"
#include "units/convert.hpp"

#include <array>
#include <string>

// The order of operation of a healthy furnace, with its times.

using lightoff::test::Rig;

namespace {

struct Expected {
    const char* milestone;
    double after_call_s;
    double tolerance_s;
};

/// Seconds after the thermostat closes R-W. Timers of the profile are exact to the tick; what physics decides
/// (draft, heating igniter, light-off, coasting wheels) may move by the tolerance.
constexpr std::array kStart{
    Expected{"board, burner: Call seen", 0.05, 0.01},
    Expected{"board, burner: Draft check: the pressure switch must be open", 0.10, 0.01},
    Expected{"board, burner: Prove draft", 0.30, 0.01},
    Expected{"inducer turns", 0.35, 0.06},
    Expected{"pressure switch closes", 3.95, 0.5},
    Expected{"board, burner: Prepurge", 4.00, 0.5},
    Expected{"board, burner: Igniter warm-up", 19.00, 0.5},
    Expected{"igniter glows bright enough to light gas", 27.95, 2.0},
    Expected{"board, burner: Trial for ignition, igniter on", 39.00, 0.5},
    Expected{"gas valve opens", 39.05, 0.5},
    Expected{"first burner lights", 39.60, 0.6},
    Expected{"all burners are lit", 40.45, 0.8},
    Expected{"board, burner: Flame stabilising", 40.65, 0.8},
    Expected{"board, blower: Blower on-delay", 40.70, 0.8},
    Expected{"igniter has cooled below lighting heat", 43.15, 1.5},
    Expected{"board, burner: Run", 50.65, 0.8},
    Expected{"board, blower: Blower on heating speed", 70.70, 0.8},
    Expected{"blower turns", 70.90, 0.8},
};

/// Seconds after the thermostat opens R-W.
constexpr std::array kStop{
    Expected{"board, burner: Post-purge", 0.10, 0.01},       Expected{"gas valve closes", 0.15, 0.06},
    Expected{"board, blower: Blower off-delay", 0.15, 0.01}, Expected{"last burner goes out", 0.30, 0.3},
    Expected{"not all burners are lit", 0.30, 0.3},          Expected{"board, burner: Standby", 15.10, 0.01},
    Expected{"pressure switch opens", 16.80, 1.0},           Expected{"inducer stands still", 36.65, 10.0},
    Expected{"board, blower: Blower off", 120.15, 0.06},     Expected{"blower stands still", 132.30, 5.0},
};

template <std::size_t N>
void compare(const Rig& rig, std::size_t& at, const std::array<Expected, N>& expected, double from_s) {
    for (const Expected& e : expected) {
        ++at;
        REQUIRE(at < rig.milestones.size());
        CHECK(rig.milestones[at].text == e.milestone);
        INFO(e.milestone);
        const double after_s = static_cast<double>(rig.milestones[at].tick) * rig.model.board.tick_s - from_s;
        CHECK(after_s == Approx(e.after_call_s).margin(e.tolerance_s + 1e-9));
    }
}

} // namespace

TEST_CASE("sequence: a whole cycle, step by step") {
    Rig rig;
    REQUIRE(rig.run_until(3600.0, [](const Rig& r) { return r.count_of("blower stands still") > 0; }));
    std::size_t at = 2;
    REQUIRE(rig.milestones.size() > at);
    CHECK(rig.milestones[0].text == "board has control power");
    CHECK(rig.milestones[1].text == "board, burner: Standby");
    CHECK(rig.milestones[2].text == "thermostat closes R-W");
    compare(rig, at, kStart, *rig.time_of("thermostat closes R-W"));
    ++at;
    CHECK(rig.milestones[at].text == "thermostat opens R-W");
    compare(rig, at, kStop, *rig.time_of("thermostat opens R-W"));
    CHECK(at + 1 == rig.milestones.size()); // and nothing else happened
}

TEST_CASE("sequence: the lamp counts the steps") {
    Rig rig;
    rig.run(3.0);
    CHECK(rig.lamp() == "wink");
    const auto count_in = [&](const std::string& state, const std::string& machine = "burner") {
        REQUIRE(rig.run_until(200.0, [&](const Rig& r) { return r.board_state(machine) == state; }));
        rig.run(0.2);
        CHECK(rig.lamp() == "count");
        return rig.lamp_count();
    };
    CHECK(count_in("prove_draft") == 1);
    CHECK(count_in("prepurge") == 2);
    CHECK(count_in("trial_lit") == 3);
    CHECK(count_in("stabilise") == 4);
    CHECK(count_in("heat", "blower") == 5);
    REQUIRE(rig.run_until(3600.0, [](const Rig& r) { return r.board_state() == "standby"; }));
    rig.run(0.5);
    CHECK(rig.lamp() == "wink");
}

TEST_CASE("sequence: later cycles go like the first") {
    Rig rig;
    rig.run(4.0 * 3600.0);
    CHECK(rig.count_of("thermostat closes R-W") >= 3);
    const int calls = rig.count_of("thermostat closes R-W");
    CHECK(rig.count_of("all burners are lit") >= calls - 1);
    CHECK(rig.count_of("board, burner: Trial for ignition, igniter on") <= calls);
    CHECK(rig.count_of("limit opens") == 0);
    CHECK(rig.count_of("rollout switch opens") == 0);
    CHECK(rig.count_of("blower motor's overload opens") == 0);
    CHECK(rig.count_of("control fuse melts") == 0);
    // The house follows the thermostat: 72 F within two degrees.
    CHECK(rig.read("return air") == Approx(72.0).margin(2.0));
}

// A healthy furnace is not needle-perfect: each seed varies its parts, yet every one is a furnace that a
// technician would pass. Ranges: CP, the "normal" column of what is measured on a call.
TEST_CASE("sequence: twenty furnaces with ordinary part values all run well") {
    bool differ = false;
    const double first_o2 = [] {
        Rig r;
        r.run(900.0);
        return r.read("oxygen");
    }();
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        INFO("seed " << seed);
        Rig rig(seed);
        REQUIRE(rig.run_until(60.0, [](const Rig& r) { return r.board_state() == "warm_up"; }));
        const double cold_inwc = rig.read("suction at the port");
        const double make_inwc = lightoff::units::pa_to_inwc(rig.model.draft.sense_line.make_pa) *
                                 rig.world.condition.draft.sense_line.make_factor;
        CHECK(cold_inwc > make_inwc + 0.2); // with margin
        rig.run(900.0);
        REQUIRE(rig.time_of("board, burner: Flame stabilising"));
        const double call_s = *rig.time_of("thermostat closes R-W");
        CHECK(*rig.time_of("board, burner: Flame stabilising") - call_s >= 38.0);
        CHECK(*rig.time_of("board, burner: Flame stabilising") - call_s <= 44.0);
        CHECK(*rig.time_of("pressure switch closes") - *rig.time_of("inducer turns") >= 2.0);
        CHECK(*rig.time_of("pressure switch closes") - *rig.time_of("inducer turns") <= 6.0);
        CHECK(rig.count_of("board, burner: Trial for ignition, igniter on") == 1);
        CHECK(rig.count_of("limit opens") == 0);
        CHECK(rig.count_of("pressure switch opens") == 0);
        CHECK(rig.counter("trials") == 0);
        CHECK(rig.board_state() == "run");

        CHECK(rig.read("control, R-C") >= 24.0);
        CHECK(rig.read("control, R-C") <= 28.0);
        CHECK(rig.read("manifold pressure") == Approx(3.5).margin(0.1));
        CHECK(rig.read("gas inlet pressure") >= 5.0);
        CHECK(rig.read("gas inlet pressure") <= 10.5);
        CHECK(rig.read("input rate") == Approx(80000.0).epsilon(0.03));
        CHECK(rig.read("oxygen") >= 6.0);
        CHECK(rig.read("oxygen") <= 9.0);
        CHECK(rig.read("carbon monoxide air-free") < 100.0);
        CHECK(rig.read("flame current") >= 2.0);
        CHECK(rig.read("flame current") <= 6.0);
        CHECK(rig.read("temperature rise") >= 45.0);
        CHECK(rig.read("temperature rise") <= 65.0);
        CHECK(rig.read("external static") >= 0.4);
        CHECK(rig.read("external static") <= 0.5);
        CHECK(rig.read("blower current") <= rig.model.rating.blower_full_load_a);
        CHECK(rig.read("limit element") <= 160.0);
        differ = differ || std::abs(rig.read("oxygen") - first_o2) > 0.01;
    }
    CHECK(differ);
}
