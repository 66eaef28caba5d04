// SPDX-License-Identifier: MIT
#include "bench/readouts.hpp"

#include "combustion/flue_gas.hpp"
#include "gas/firing_rate.hpp"
#include "units/convert.hpp"

#include <cmath>
#include <stdexcept>

namespace lightoff::bench {
namespace {

using furnace::Signals;
using namespace units;

/// Share of the heating value that did not leave by the vent connector, percent.
double steady_efficiency_pct(const Signals& s) {
    const double in_w = s.combustion.heat_released_hhv_w;
    if (in_w <= 0.0)
        return 0.0;
    return 100.0 * (in_w - s.combustion.latent_w - s.heat.flue_sensible_w) / in_w;
}

void add_fire(std::vector<Readout>& out, const furnace::Model& model, const World& world) {
    const Signals& s = world.state.signals;
    const double flow_cfh = m3s_to_cfh(s.gas.burners_total_m3_s);
    const double dial_ft3 = model.gas.meter_dial_m3 / cubic_metres_per_cubic_foot;
    out.push_back({"gas inlet pressure", "in. w.c.", pa_to_inwc(s.gas.inlet_tap_pa)});
    out.push_back({"manifold pressure", "in. w.c.", pa_to_inwc(s.gas.manifold_tap_pa)});
    out.push_back({"gas flow", "ft3/h", flow_cfh});
    out.push_back({"input rate", "Btu/h",
                   flow_cfh * j_per_m3_to_btu_per_ft3(combustion::hhv_j_m3(model.combustion.fuel))});
    out.push_back({"dial time", "s", flow_cfh > 0.1 ? gas::dial_seconds(dial_ft3, flow_cfh) : 0.0});
    out.push_back({"oxygen", "%", 100.0 * s.combustion.o2_dry});
    out.push_back({"carbon dioxide", "%", 100.0 * s.combustion.co2_dry});
    out.push_back({"carbon monoxide air-free", "ppm", 1e6 * s.combustion.co_air_free});
    out.push_back({"excess air", "%", 100.0 * s.combustion.excess_air});
    out.push_back({"flue gas over room", "F difference",
                   k_difference_to_fahrenheit(s.heat.vent_connector_gas_k - world.inputs.basement_k)});
    out.push_back({"steady efficiency", "%", steady_efficiency_pct(s)});
    out.push_back({"flame current", "uA", 1e6 * s.power.flame_current_a});
    out.push_back({"igniter surface", "F", k_to_fahrenheit(world.state.heat.temperature.igniter)});
}

void add_draft(std::vector<Readout>& out, const World& world) {
    const draft::Outputs& d = world.state.signals.draft;
    out.push_back({"suction at the port", "in. w.c.", pa_to_inwc(d.port_suction_pa)});
    out.push_back({"suction at the pressure switch", "in. w.c.", pa_to_inwc(d.switch_suction_pa)});
    out.push_back({"vent connector pressure", "in. w.c.", pa_to_inwc(d.vent_connector_pa)});
    out.push_back({"inducer speed", "rpm", rad_s_to_rpm(d.inducer_speed_rad_s)});
}

void add_air(std::vector<Readout>& out, const World& world) {
    const Signals& s = world.state.signals;
    const double house_k = world.state.heat.temperature.house;
    out.push_back({"airflow", "cfm", m3s_to_cfm(s.air.flow_m3_s)});
    out.push_back({"return static", "in. w.c.", pa_to_inwc(s.air.return_static_pa)});
    out.push_back({"supply static", "in. w.c.", pa_to_inwc(s.air.supply_static_pa)});
    out.push_back({"external static", "in. w.c.", pa_to_inwc(s.air.external_static_pa)});
    out.push_back({"return air", "F", k_to_fahrenheit(house_k)});
    out.push_back({"supply air", "F", k_to_fahrenheit(s.heat.supply_air_k)});
    out.push_back(
        {"temperature rise", "F difference", k_difference_to_fahrenheit(s.heat.supply_air_k - house_k)});
    out.push_back({"delivered heat", "Btu/h", w_to_btuh(s.heat.delivered_w)});
    out.push_back({"jacket loss", "Btu/h", w_to_btuh(s.heat.jacket_w)});
    out.push_back({"limit element", "F", k_to_fahrenheit(world.state.heat.temperature.limit)});
    out.push_back({"blower speed", "rpm", rad_s_to_rpm(s.air.blower_speed_rad_s)});
    out.push_back({"blower power", "W", s.power.blower_electrical_w});
    out.push_back({"inducer power", "W", s.power.inducer_electrical_w});
}

double value_of(const furnace::Reading& reading, const furnace::Workspace& workspace,
                const electrical::AcSolution& ac, const electrical::AcVoltages& volts) {
    if (reading.kind == furnace::Reading::Kind::amps)
        return units::abs(workspace.network.element_current(ac, volts, reading.a));
    return units::abs(volts[static_cast<std::size_t>(reading.a)] -
                      volts[static_cast<std::size_t>(reading.b)]);
}

void add_electrical(std::vector<Readout>& out, const furnace::Model& model, const World& world,
                    furnace::Workspace& workspace) {
    const electrical::AcSolution ac =
        furnace::solve_ac(model, world.state, world.condition, world.inputs, workspace);
    electrical::AcVoltages volts{};
    workspace.network.node_voltages(ac, volts);
    for (const furnace::Reading& reading : model.readings) {
        const bool amps = reading.kind == furnace::Reading::Kind::amps;
        out.push_back({reading.name, amps ? "A" : "V", value_of(reading, workspace, ac, volts)});
    }
}

} // namespace

std::vector<Readout> readouts(const furnace::Model& model, const World& world,
                              furnace::Workspace& workspace) {
    std::vector<Readout> out;
    const auto close_group = [&out](const char* name) {
        for (auto it = out.rbegin(); it != out.rend() && it->group.empty(); ++it)
            it->group = name;
    };
    add_electrical(out, model, world, workspace);
    close_group("electrical");
    add_draft(out, world);
    close_group("draft");
    add_fire(out, model, world);
    close_group("gas and flame");
    add_air(out, world);
    out.push_back({"outdoors", "F", k_to_fahrenheit(world.inputs.outdoor_k)});
    close_group("air and heat");
    return out;
}

double readout(const std::vector<Readout>& all, const std::string& name) {
    for (const Readout& r : all)
        if (r.name == name)
            return r.value;
    throw std::invalid_argument("there is no readout \"" + name + "\"");
}

} // namespace lightoff::bench
