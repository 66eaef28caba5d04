// SPDX-License-Identifier: MIT
#include "instruments/analyser.hpp"

#include "combustion/flue_gas.hpp"
#include "instruments/timing.hpp"

namespace lightoff::instruments {
namespace {

/// It can't measure the air's moisture and takes this, kg/kg: with it the sums meet the DOE's table of
/// combustion efficiency (tests/reference/combustion_efficiency.csv).
constexpr double kAssumedHumidity = 0.0095;

/// With less burnt than this an analyser shows dashes (common practice, no source).
constexpr double kNearlyAir = 0.185;

const combustion::Fuel& fuel_of(AnalyserFuel fuel) {
    static constexpr combustion::Fuel kNaturalGas = combustion::natural_gas();
    static constexpr combustion::Fuel kPropane = combustion::propane();
    return fuel == AnalyserFuel::propane ? kPropane : kNaturalGas;
}

/// One step of stirred cells in a row: a delay with a little mixing.
void draw(std::array<double, kHoseCells>& cell, double at_probe, double share) {
    for (std::size_t i = cell.size() - 1; i > 0; --i)
        cell[i] += (cell[i - 1] - cell[i]) * share;
    cell[0] += (at_probe - cell[0]) * share;
}

void follow(const Moment& now, const AnalyserSetting& setting, AnalyserState& s) {
    const FlueSample sample = flue_sample(now, setting.probe);
    const double cell_share = kHoseCellTiming.share();
    draw(s.hose_o2, sample.o2, cell_share);
    draw(s.hose_co, sample.co, cell_share);
    s.o2 += (s.hose_o2.back() - s.o2) * kOxygenTiming.share();
    s.co += (s.hose_co.back() - s.co) * kCoTiming.share();

    const double room_k = now.inputs.basement_k;
    if (s.stack_k <= 0.0)
        s.stack_k = room_k;
    if (s.inlet_air_k <= 0.0)
        s.inlet_air_k = room_k;
    const double stack_k =
        setting.probe == Spot::vent_connector ? now.state.signals.heat.vent_connector_gas_k : room_k;
    const double share = kStackTiming.share();
    s.stack_k += (stack_k - s.stack_k) * share;
    s.inlet_air_k += (room_k - s.inlet_air_k) * share;
}

template <class Action>
void for_each_window(Analyser& meter, Action action) {
    for (Display* window : {&meter.oxygen, &meter.carbon_monoxide, &meter.carbon_dioxide, &meter.co_air_free,
                            &meter.stack, &meter.inlet_air, &meter.net, &meter.excess_air, &meter.efficiency})
        action(*window);
}

void show_all(const Moment& now, Analyser& meter) {
    const AnalyserState& s = meter.state;
    const auto read = [&](Quantity quantity, double value) {
        return with_error(quantity, value, calibration(now.seed, quantity));
    };
    const double o2 = read(Quantity::oxygen, s.o2);
    const double co = read(Quantity::carbon_monoxide, s.co);
    const double stack_k = read(Quantity::stack_temperature, s.stack_k);
    const double air_k = read(Quantity::inlet_air_temperature, s.inlet_air_k);
    show(meter.oxygen, Quantity::oxygen, o2);
    show(meter.carbon_monoxide, Quantity::carbon_monoxide, co > 0.0 ? co : 0.0);
    show(meter.stack, Quantity::stack_temperature, stack_k);
    show(meter.inlet_air, Quantity::inlet_air_temperature, air_k);

    const WorkedOut worked = work_out(meter.setting.fuel, o2, co > 0.0 ? co : 0.0, stack_k, air_k);
    show(meter.net, Quantity::net_temperature, worked.net_k);
    if (!worked.burning) {
        for (Display* window :
             {&meter.carbon_dioxide, &meter.co_air_free, &meter.excess_air, &meter.efficiency})
            blank(*window);
        return;
    }
    show(meter.carbon_dioxide, Quantity::carbon_dioxide, worked.carbon_dioxide);
    show(meter.co_air_free, Quantity::co_air_free, worked.co_air_free);
    show(meter.excess_air, Quantity::excess_air, worked.excess_air);
    show(meter.efficiency, Quantity::efficiency, worked.efficiency);
}

} // namespace

WorkedOut work_out(AnalyserFuel which, double o2, double co, double stack_k, double inlet_air_k) {
    const combustion::Fuel& fuel = fuel_of(which);
    WorkedOut out;
    out.net_k = stack_k - inlet_air_k;
    out.burning = o2 < kNearlyAir;
    if (!out.burning)
        return out;
    out.carbon_dioxide = combustion::ultimate_co2(fuel) * (1.0 - o2 / combustion::oxygen_in_air);
    out.co_air_free = combustion::co_air_free(co, o2);
    out.excess_air = combustion::excess_air_from_o2(fuel, o2);
    out.efficiency =
        combustion::flue_loss(fuel, out.excess_air, stack_k, inlet_air_k, kAssumedHumidity).efficiency();
    return out;
}

FlueSample flue_sample(const Moment& now, Spot spot) {
    const furnace::Signals& s = now.state.signals;
    FlueSample sample{combustion::oxygen_in_air, now.state.gas.room.co_fraction};
    if (spot != Spot::vent_connector || s.draft.vent_kg_s <= 0.0)
        return sample;
    const double flue_mol_s = combustion::dry(s.combustion.flue);
    const double hood_air_mol_s =
        s.draft.dilution_kg_s > 0.0 ? s.draft.dilution_kg_s / units::molar_mass_air_kg_mol : 0.0;
    const double all_mol_s = flue_mol_s + hood_air_mol_s;
    if (flue_mol_s <= 0.0 || all_mol_s <= 0.0)
        return sample;
    const double flue_share = flue_mol_s / all_mol_s;
    sample.o2 += (s.combustion.o2_dry - sample.o2) * flue_share;
    sample.co += (s.combustion.co_dry - sample.co) * flue_share;
    return sample;
}

void step(Moment& now, Analyser& meter) {
    if (meter.setting.on == 0 && meter.state.seen.on == 0)
        return;
    for_each_window(meter, [](Display& window) { age(window); });
    if (has_changed(meter.state.seen, meter.setting))
        for_each_window(meter, [](Display& window) { window.ticks_settled = 0; });
    if (meter.setting.on == 0) {
        for_each_window(meter, [](Display& window) { blank(window); });
        return;
    }
    if (!now.renews(kOxygenTiming.update_ticks))
        return;
    follow(now, meter.setting, meter.state);
    show_all(now, meter);
}

} // namespace lightoff::instruments
