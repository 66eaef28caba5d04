// SPDX-License-Identifier: MIT
// First law over a whole cycle: in = out + stored, each term from its own flow, within 0.1 %.
#include "heat/cycle.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

using namespace heat_test;

namespace {

void check_balance(const std::vector<Stretch>& cycle, const heat::Condition& condition) {
    const heat::Params params;
    heat::State state = heat::at_rest(kRoomK);
    const double stored_before = heat::stored_energy_j(params, state.temperature);
    double delivered_seen = 0.0;
    double fuel = 0.0;
    double electricity = 0.0;
    double greatest_stored = 0.0;
    for (const Stretch& stretch : cycle)
        for (int i = 0; i < static_cast<int>(stretch.seconds / kTick + 0.5); ++i) {
            const heat::Outputs out = heat::step(params, condition, state, stretch.in, kTick);
            delivered_seen += out.delivered_w * kTick;
            fuel += stretch.in.heat_released_hhv_w * kTick;
            electricity += (stretch.in.blower_electrical_w + stretch.in.inducer_electrical_w +
                            stretch.in.igniter_w + stretch.in.transformer_loss_w) *
                           kTick;
            greatest_stored =
                std::max(greatest_stored, heat::stored_energy_j(params, state.temperature) - stored_before);
        }
    const heat::Energy& e = state.energy;
    const double in = fuel + electricity;
    const double stored = heat::stored_energy_j(params, state.temperature) - stored_before;
    const double out =
        e.flue_sensible + e.flue_latent + e.vent_skin + e.cabinet_skin + e.vestibule + e.delivered;
    CAPTURE(in, out, stored, greatest_stored);
    CHECK(std::abs(in - out - stored) < 1e-3 * in); // what is demanded
    CHECK(std::abs(in - out - stored) < 1e-9 * in); // what equal weights for nodes and accounts give
    CHECK(e.fuel_hhv == Approx(fuel).epsilon(1e-6));
    CHECK(e.electrical == Approx(electricity).epsilon(1e-6));
    CHECK(delivered_seen == Approx(e.delivered).epsilon(2e-3));
    // The balance must mean something: the metal held far more at some time than the tolerance.
    CHECK(greatest_stored > 20.0 * 1e-3 * in);

    const double house_gain = params.capacity_j_k.house * (state.temperature.house - kRoomK);
    CHECK(e.house_gain ==
          Approx(params.jacket.to_house_fraction * (e.cabinet_skin + e.vestibule)).epsilon(1e-9));
    CHECK(std::abs(e.delivered + e.house_gain - e.house_loss - house_gain) < 1e-3 * e.delivered);
}

} // namespace

TEST_CASE("energy balances over a healthy cycle") {
    check_balance(whole_cycle(), {});
}
TEST_CASE("energy balances with leak, rollout, dirt and a bare jacket") {
    check_balance(troubled_cycle(), troubled_condition());
}
