// SPDX-License-Identifier: MIT
#include "instruments/thermometer.hpp"

#include "instruments/timing.hpp"

namespace lightoff::instruments {
namespace {

bool is_metal(Spot spot) {
    return spot == Spot::blower_motor_shell || spot == Spot::inducer_motor_shell ||
           spot == Spot::transformer_case;
}

void follow(const Moment& now, Spot spot, double& probe_k) {
    if (probe_k <= 0.0)
        probe_k = now.inputs.basement_k;
    const Timing& timing = is_metal(spot) ? kProbeOnMetalTiming : kProbeInAirTiming;
    probe_k += (temperature_k(now, spot) - probe_k) * timing.share();
}

} // namespace

double temperature_k(const Moment& now, Spot spot) {
    const furnace::Signals& s = now.state.signals;
    const heat::Nodes& node = now.state.heat.temperature;
    switch (spot) {
    case Spot::vent_connector:
        return s.heat.vent_connector_gas_k;
    case Spot::return_duct:
    case Spot::living_room:
        return node.house;
    case Spot::supply_duct:
        return s.heat.supply_air_k;
    case Spot::supply_plenum:
        return s.heat.supply_air_in_sight_k;
    case Spot::outdoors:
        return now.inputs.outdoor_k;
    case Spot::burner_compartment:
        return s.heat.vestibule_k;
    case Spot::blower_motor_shell:
        return node.blower_winding;
    case Spot::inducer_motor_shell:
        return node.inducer_winding;
    case Spot::transformer_case:
        return node.transformer;
    default:
        return now.inputs.basement_k;
    }
}

void step(Moment& now, Thermometer& meter) {
    if (meter.setting.on == 0 && meter.state.seen.on == 0)
        return;
    for (Display* window : {&meter.t1, &meter.t2, &meter.difference})
        age(*window);
    if (has_changed(meter.state.seen, meter.setting))
        for (Display* window : {&meter.t1, &meter.t2, &meter.difference})
            window->ticks_settled = 0;
    if (meter.setting.on == 0) {
        for (Display* window : {&meter.t1, &meter.t2, &meter.difference})
            blank(*window);
        return;
    }
    if (!now.renews(kProbeInAirTiming.update_ticks))
        return;
    follow(now, meter.setting.probe_1, meter.state.probe_1_k);
    follow(now, meter.setting.probe_2, meter.state.probe_2_k);
    const double t1 = with_error(Quantity::temperature, meter.state.probe_1_k,
                                 calibration(now.seed, Quantity::temperature, 1));
    const double t2 = with_error(Quantity::temperature, meter.state.probe_2_k,
                                 calibration(now.seed, Quantity::temperature, 2));
    show(meter.t1, Quantity::temperature, t1);
    show(meter.t2, Quantity::temperature, t2);
    show(meter.difference, Quantity::temperature_difference, t1 - t2);
}

} // namespace lightoff::instruments
