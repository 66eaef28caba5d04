// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "support/rig.hpp"

#include <algorithm>
#include <cmath>

// The network is held while its ports stay within kPortBand and kIgniterBand of what it was solved with. Here
// it is solved in every tick with the ports as they are, and the two compared.

using namespace lightoff;
using lightoff::test::Rig;

namespace {

double apart(double held, double exact) {
    return std::abs(held - exact) / std::max(std::abs(exact), 1e-3);
}

struct Worst {
    double motor_a = 0.0; ///< as a share, of a milliamp at least
    double igniter_a = 0.0;
    double igniter_w = 0.0; ///< as a share, of a milliwatt at least
    double torque = 0.0;    ///< as a share, of a millinewton metre at least
    double sensed =
        0.0; ///< of all voltages and currents that a tick reads, as a share, of 1 mV or 1 mA at least
    double flame_a = 0.0;
    int held_ticks = 0;
    int ticks = 0;
};

double torque_now(const electrical::AcSolution& ac, int motor, double speed_rad_s, double held_rad_s) {
    const electrical::MotorTorque& torque = ac.torque[static_cast<std::size_t>(motor)];
    return torque.nm + torque.slope_nm_s_rad * (speed_rad_s - held_rad_s);
}

Worst over_the_golden_call() {
    Worst worst;
    Rig rig;
    const furnace::Wiring& wiring = rig.model.wiring;
    furnace::Workspace exact_workspace(rig.model);
    for (; rig.now_s() < 900.0; ++worst.ticks) {
        rig.run(rig.model.board.tick_s);
        const furnace::State& state = rig.world.state;
        const furnace::NetworkPorts ports = furnace::held_ports(rig.model, state);
        const electrical::AcSolution held =
            furnace::solve_ac(rig.model, state, rig.world.condition, rig.world.inputs, rig.workspace);
        furnace::State as_it_is = state;
        as_it_is.held_ports = {}; // out of every band
        const electrical::AcSolution exact =
            furnace::solve_ac(rig.model, as_it_is, rig.world.condition, rig.world.inputs, exact_workspace);
        const bool solved_anew = ports.blower_rad_s != state.held_ports.blower_rad_s ||
                                 ports.inducer_rad_s != state.held_ports.inducer_rad_s ||
                                 ports.igniter_ohm != state.held_ports.igniter_ohm ||
                                 ports.rod_flame != state.held_ports.rod_flame;
        worst.held_ticks += solved_anew ? 0 : 1;
        for (int p = 0; p < wiring.netlist.port_count(); ++p) {
            const auto i = static_cast<std::size_t>(p);
            const double off = apart(units::abs(held.port_a[i]), units::abs(exact.port_a[i]));
            if (p == wiring.igniter_port)
                worst.igniter_a = std::max(worst.igniter_a, off);
            else if (p != wiring.flame_port)
                worst.motor_a = std::max(worst.motor_a, off);
        }
        const double ohm = state.signals.heat.igniter_ohm;
        worst.igniter_w = std::max(worst.igniter_w,
                                   apart(rig.workspace.network.igniter_w(held, wiring.igniter_port, ohm),
                                         exact_workspace.network.igniter_w(exact, wiring.igniter_port, ohm)));
        const double blower = state.air.blower.speed_rad_s;
        const double inducer = state.draft.inducer.speed_rad_s;
        worst.torque = std::max({worst.torque,
                                 apart(torque_now(held, wiring.blower_motor, blower, ports.blower_rad_s),
                                       torque_now(exact, wiring.blower_motor, blower, blower)),
                                 apart(torque_now(held, wiring.inducer_motor, inducer, ports.inducer_rad_s),
                                       torque_now(exact, wiring.inducer_motor, inducer, inducer))});
        const auto& held_rms = rig.workspace.network.ac_sense_rms(wiring.tick_senses);
        const auto& exact_rms = exact_workspace.network.ac_sense_rms(wiring.tick_senses);
        for (int s = 0; s < wiring.tick_senses; ++s) {
            const auto i = static_cast<std::size_t>(s);
            worst.sensed = std::max(worst.sensed, apart(held_rms[i], exact_rms[i]));
        }
        if (state.signals.combustion.rod_flame_strength > 0.0)
            worst.flame_a = std::max(
                worst.flame_a,
                std::abs(rig.workspace.network.dc_sense(
                             rig.workspace.network.solve_dc(furnace::port_inputs(rig.model, state)),
                             wiring.flame_sense) -
                         exact_workspace.network.dc_sense(
                             exact_workspace.network.solve_dc(furnace::port_inputs(rig.model, as_it_is)),
                             wiring.flame_sense)));
    }
    return worst;
}

} // namespace

TEST_CASE("a held network is within its band of the exact one, all through a call") {
    const Worst worst = over_the_golden_call();
    INFO("held in " << worst.held_ticks << " of " << worst.ticks << " ticks; motor current " << worst.motor_a
                    << ", torque " << worst.torque << ", igniter current " << worst.igniter_a << ", its heat "
                    << worst.igniter_w << ", sensed " << worst.sensed << ", flame " << worst.flame_a);
    CHECK(worst.held_ticks > worst.ticks / 2);
    CHECK(worst.held_ticks < worst.ticks - 1000);
    CHECK(worst.motor_a < furnace::kPortBand);
    CHECK(worst.torque < furnace::kPortBand);
    CHECK(worst.igniter_a < furnace::kIgniterBand);
    CHECK(worst.igniter_w < 3e-5);
    CHECK(worst.sensed < 1e-5);
    CHECK(worst.flame_a < 1e-9);
}
