// SPDX-License-Identifier: MIT
//
// How fast the furnace runs: simulated seconds in a second on one core over the golden call, with one
// voltmeter attached and no idle tick skipped; what a tick is made of; full and port solves of the wiring
// against libngspice; loading a bundle. Times are user time of this process, which other programs hardly
// touch.
#include "bench/bench.hpp"
#include "electrical/spice_deck.hpp"
#include "files/bundle_loader.hpp"
#include "furnace/furnace.hpp"
#include "support/ngspice_circuit.hpp"
#include "units/atmosphere.hpp"

#include <algorithm>
#include <cstdio>
#include <functional>
#include <string>
#include <sys/resource.h>
#include <vector>

namespace {

using namespace lightoff;

constexpr double kDemand = 50000.0; ///< simulated seconds a second
constexpr double kStretch = 100000.0;
constexpr double kCall_s = 900.0;

double user_seconds() {
    rusage used{};
    getrusage(RUSAGE_SELF, &used);
    return static_cast<double>(used.ru_utime.tv_sec) + 1e-6 * static_cast<double>(used.ru_utime.tv_usec);
}

struct Spread {
    double least = 0.0;
    double median = 0.0;
};

/// Runs `work` `rounds` times; its user time in seconds.
template <class Work>
Spread time_of(int rounds, Work&& work) {
    std::vector<double> taken;
    for (int i = 0; i < rounds; ++i) {
        const double start = user_seconds();
        work();
        taken.push_back(user_seconds() - start);
    }
    std::sort(taken.begin(), taken.end());
    return {taken.front(), taken[taken.size() / 2]};
}

/// Microseconds of one call of `work(i)`, the quietest of five rounds.
template <class Work>
double microseconds(int times, Work&& work) {
    return 1e6 / times * time_of(5, [&] {
                             for (int i = 0; i < times; ++i)
                                 work(i);
                         }).least;
}

/// The golden call with a voltmeter on R and C.
bench::World start_of_call(const files::LoadedBundle& bundle) {
    bench::World world = lesson::begin_world(bundle.site, bundle.scenario, 0);
    instruments::MultimeterSetting& meter = world.bag.multimeter.setting;
    meter.red = bundle.site.model.find_test_point("board.R");
    meter.black = bundle.site.model.find_test_point("board.C");
    meter.function = instruments::Function::ac_volts;
    instruments::connect(world.bag, world.inputs);
    return world;
}

void run(const files::LoadedBundle& bundle, bench::World& world, furnace::Workspace& workspace,
         double until_s) {
    const auto until = static_cast<std::uint64_t>(until_s / bundle.site.model.board.tick_s + 0.5);
    bench::History(bundle.site, lesson::history_of(bundle.site, bundle.scenario))
        .run(world, workspace, until);
}

void whole_call(const files::LoadedBundle& bundle, int rounds) {
    furnace::Workspace workspace(bundle.site.model);
    double sink = 0.0;
    const Spread s = time_of(rounds, [&] {
        bench::World world = start_of_call(bundle);
        run(bundle, world, workspace, kCall_s);
        sink += world.state.heat.temperature.house;
    });
    const double ticks = kCall_s / bundle.site.model.board.tick_s;
    int fine = 0;
    bench::World world = start_of_call(bundle);
    for (int i = 1; i <= static_cast<int>(ticks); ++i) {
        fine += furnace::needs_substeps(bundle.site.model, world.state, world.inputs) ? 1 : 0;
        run(bundle, world, workspace, i * bundle.site.model.board.tick_s);
    }
    std::printf("golden call, %.0f s, one voltmeter, no tick skipped, %d rounds\n", kCall_s, rounds);
    std::printf("  best    %9.0f simulated s/s  %6.3f us a tick\n", kCall_s / s.least, 1e6 * s.least / ticks);
    std::printf("  median  %9.0f simulated s/s  %6.3f us a tick\n", kCall_s / s.median,
                1e6 * s.median / ticks);
    std::printf("  demand  %9.0f: %s; stretch %.0f: %s (by the median)\n", kDemand,
                kCall_s / s.median >= kDemand ? "met" : "MISSED", kStretch,
                kCall_s / s.median >= kStretch ? "met" : "missed");
    std::printf("  %d of %.0f ticks in five substeps%s\n", fine, ticks, sink == 0.123 ? "!" : "");
}

/// One tick while everything runs and its parts, each stepped alone on what it gets there.
class Parts {
public:
    explicit Parts(const files::LoadedBundle& bundle)
        : model_(bundle.site.model), workspace_(bundle.site.model), world_(start_of_call(bundle)) {
        run(bundle, world_, workspace_, 600.0);
        ac_ = furnace::solve_ac(model_, world_.state, world_.condition, world_.inputs, workspace_);
    }

    void print() {
        bench::World w = world_;
        const double tick_us = microseconds(
            kTimes, [&](int) { furnace::tick(model_, w.state, w.condition, w.inputs, workspace_); });
        std::printf("a tick while everything runs: %.3f us\n", tick_us);
        double sum_us = 0.0;
        const auto part = [&](const char* name, double us) {
            sum_us += us;
            std::printf("  %-32s %6.3f us  %4.0f %%\n", name, us, 100.0 * us / tick_us);
        };
        part("network, held", network_us(0.0));
        part("draft", draft_us());
        part("gas", gas_us());
        part("combustion", combustion_us());
        part("air", air_us());
        part("heat", heat_us());
        part("board", board_us());
        part("thermostat", thermostat_us());
        std::printf("  %-32s %6.3f us\n", "the rest: inputs, relays, fuses", tick_us - sum_us);
        std::printf("  %-32s %6.3f us, not in the tick above\n", "network, ports solved anew",
                    network_us(0.1));
    }

private:
    static constexpr int kTimes = 100000;
    [[nodiscard]] const furnace::Signals& last() const { return world_.state.signals; }

    /// What a tick asks of the network, the flame's current included, while the solution is held and while
    /// the blower's speed is just out of its band in each tick.
    double network_us(double rad_s_apart) {
        bench::World w = world_;
        return microseconds(kTimes, [&](int i) {
            w.state.air.blower.speed_rad_s = world_.state.air.blower.speed_rad_s + rad_s_apart * (i % 2);
            sink_ += furnace::solve_now(model_, w.state, w.condition, w.inputs, workspace_).rms[0];
            const electrical::DcSolution& dc = workspace_.network.solve_dc(workspace_.ports);
            sink_ += workspace_.network.dc_sense(dc, model_.wiring.flame_sense);
        });
    }
    double draft_us() {
        draft::Inputs in;
        in.room_k = world_.inputs.basement_k;
        in.outdoor_k = world_.inputs.outdoor_k;
        in.barometric_pa = world_.inputs.barometric_pa;
        in.exchanger_gas_k = last().heat.exchanger_gas_mean_k;
        in.collector_gas_k = last().heat.collector_gas_k;
        in.vent_gas_k = last().heat.vent_gas_mean_k;
        in.gas_kg_s = last().gas.burners_total_m3_s * model_.gas_kg_m3;
        const electrical::MotorTorque& torque =
            ac_.torque[static_cast<std::size_t>(model_.wiring.inducer_motor)];
        in.motor_torque_nm = torque.nm;
        in.motor_torque_slope_nm_s = torque.slope_nm_s_rad;
        draft::State state = world_.state.draft;
        return microseconds(kTimes, [&](int) {
            sink_ += draft::step(model_.draft, world_.condition.draft, state, in, tick_s()).flue_kg_s;
        });
    }
    double gas_us() {
        gas::Inputs in;
        in.barometric_pa = world_.inputs.barometric_pa;
        in.room_air_changes_per_s = world_.inputs.basement_air_changes_per_s;
        in.valve_energised = true;
        gas::State state = world_.state.gas;
        return microseconds(kTimes, [&](int) {
            sink_ += gas::step(model_.gas, world_.condition.gas, state, in, tick_s()).manifold_tap_pa;
        });
    }
    double combustion_us() {
        combustion::Inputs in;
        in.gas_flow_m3_s = last().gas.burner_flow_m3_s;
        in.combustion_air_kg_s = last().draft.combustion_air_kg_s;
        in.humidity_ratio = world_.inputs.humidity_ratio;
        in.igniter_surface_k = world_.state.heat.temperature.igniter;
        combustion::State state = world_.state.combustion;
        return microseconds(kTimes, [&](int) {
            sink_ +=
                combustion::step(model_.combustion, world_.condition.combustion, state, in, tick_s()).o2_dry;
        });
    }
    double air_us() {
        air::Inputs in;
        const electrical::MotorTorque& torque =
            ac_.torque[static_cast<std::size_t>(model_.wiring.blower_motor)];
        in.motor_torque_nm = torque.nm;
        in.motor_torque_slope_nm_s = torque.slope_nm_s_rad;
        in.return_density_kg_m3 = units::dry_air_density_kg_m3(world_.inputs.barometric_pa, 293.0);
        in.supply_density_kg_m3 = units::dry_air_density_kg_m3(world_.inputs.barometric_pa, 323.0);
        air::State state = world_.state.air;
        return microseconds(kTimes, [&](int) {
            sink_ += air::step(model_.air, world_.condition.air, state, in, tick_s()).flow_kg_s;
        });
    }
    double heat_us() {
        heat::Inputs in;
        in.heat_released_hhv_w = last().combustion.heat_released_hhv_w;
        in.latent_w = last().combustion.latent_w;
        in.flue_mass_flow_kg_s = last().combustion.flue_mass_flow_kg_s;
        in.supply_air_kg_s = last().air.flow_kg_s;
        in.blower_electrical_w = last().power.blower_electrical_w;
        in.blower_loss_w = last().power.blower_loss_w;
        in.inducer_electrical_w = last().power.inducer_electrical_w;
        in.inducer_loss_w = last().power.inducer_loss_w;
        in.basement_k = world_.inputs.basement_k;
        in.outdoor_k = world_.inputs.outdoor_k;
        heat::State state = world_.state.heat;
        return microseconds(kTimes, [&](int) {
            sink_ += heat::step(model_.heat, world_.condition.heat, state, in, tick_s()).supply_air_k;
        });
    }
    double board_us() {
        control::BoardInputs in;
        in.supply_v = 25.0;
        for (std::size_t i = 0; i < model_.board.inputs.size(); ++i)
            in.sensed[i] =
                (world_.state.board.sensed >> i & 1U) != 0 ? 2.0 * model_.board.inputs[i].on_above : 0.0;
        control::BoardState state = world_.state.board;
        return microseconds(kTimes, [&](int) {
            sink_ += control::step(model_.board, world_.condition.board, state, in).drivers;
        });
    }
    double thermostat_us() {
        control::ThermostatInputs in;
        in.set_point_k = world_.inputs.set_point_k;
        control::ThermostatState state = world_.state.thermostat;
        return microseconds(kTimes, [&](int) {
            sink_ += control::step(model_.thermostat, world_.condition.thermostat, state, in).shown_k;
        });
    }
    [[nodiscard]] double tick_s() const { return model_.board.tick_s; }

    const furnace::Model& model_;
    furnace::Workspace workspace_;
    bench::World world_;
    electrical::AcSolution ac_;
    double sink_ = 0.0;
};

void solves(const files::LoadedBundle& bundle) {
    furnace::Workspace workspace(bundle.site.model);
    bench::World world = start_of_call(bundle);
    run(bundle, world, workspace, 600.0);
    furnace::solve_ac(bundle.site.model, world.state, world.condition, world.inputs, workspace);
    const electrical::NetworkInputs inputs = workspace.inputs;
    electrical::PortInputs ports = furnace::port_inputs(bundle.site.model, world.state);
    electrical::Condition condition = world.condition.wiring;
    double sink = 0.0;
    const double full_us = microseconds(5000, [&](int i) {
        condition.series_ohm[0] = static_cast<float>(1e-6 * i);
        workspace.network.set(condition, inputs);
        sink += workspace.network.solve_ac(ports).port_v[0].re;
    });
    const double port_us = microseconds(100000, [&](int i) {
        ports.rotor_rad_s[0] += i % 2 == 0 ? 1e-3 : -1e-3;
        sink += workspace.network.solve_ac(ports).port_v[0].re;
    });
    const electrical::OperatingPoint point{world.condition.wiring, inputs, ports, {}, {}};
    test::NgspiceCircuit spice;
    spice.load(electrical::spice_deck(bundle.site.model.wiring.netlist, point, electrical::Analysis::ac));
    const double spice_us =
        microseconds(200, [&](int i) { spice.ac_with("Re0", std::to_string(0.05 + 1e-4 * (i % 7))); });
    std::printf("wiring, %d nodes, %d elements, one impedance changed each time\n",
                bundle.site.model.wiring.netlist.node_count(),
                bundle.site.model.wiring.netlist.element_count());
    std::printf("  full AC solve  %8.3f us\n", full_us);
    std::printf("  port AC solve  %8.3f us\n", port_us);
    std::printf("  libngspice     %8.1f us, %.0f full solves%s\n", spice_us, spice_us / full_us,
                sink == 0.123 ? "!" : "");
}

void loading() {
    const auto load = [](int rounds) { return time_of(rounds, [] { files::load_bundle("call-for-heat"); }); };
    const double first_s = load(1).least;
    const Spread again = load(11);
    std::printf("loading the bundle (parse, check, build): first %.1f ms, again %.1f ms median\n",
                1e3 * first_s, 1e3 * again.median);
}

} // namespace

int main(int count, char** arguments) {
    const int rounds = count > 1 ? std::max(1, std::stoi(arguments[1])) : 15;
    loading();
    const files::LoadedBundle bundle = files::load_bundle("call-for-heat");
    whole_call(bundle, rounds);
    Parts(bundle).print();
    solves(bundle);
    std::printf("World %zu bytes: State %zu, Condition %zu, Inputs %zu\n", sizeof(bench::World),
                sizeof(furnace::State), sizeof(furnace::Condition), sizeof(furnace::Inputs));
    return 0;
}
