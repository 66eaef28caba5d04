// SPDX-License-Identifier: MIT
#include "gui/cutaway/scene.hpp"

#include "units/constants.hpp"
#include "units/convert.hpp"

#include <algorithm>

namespace lightoff::cutaway {
namespace {

constexpr double kFastestShown_rad_s = 2.0 * units::pi * 2.5;
constexpr double kFastestPace = 4.0;
constexpr double kAirHeat_J_m3K = 1.2 * 1006.0; ///< of ordinary room air
constexpr double kSteadyEfficiency = 0.8;
constexpr double kRatedFlue_kg_per_J =
    7.0e-7; ///< of input: natural gas at half again the air it needs, about

float as_float(double value) {
    return static_cast<float>(value);
}

double ratio(double value, double rated) {
    return rated > 0.0 ? std::max(0.0, value) / rated : 0.0;
}

double rated_rise_k(const furnace::Model& model) {
    return 0.5 * (model.rating.rise_low_k + model.rating.rise_high_k);
}

/// The flow that gives the middle of the plate's temperature rise.
double rated_air_m3_s(const furnace::Model& model) {
    return ratio(kSteadyEfficiency * model.rating.input_w, kAirHeat_J_m3K * rated_rise_k(model));
}

double rated_gas_m3_s(const furnace::Model& model) {
    return model.combustion.rated_burner_flow_m3_s * static_cast<double>(model.combustion.burner_count);
}

double air_share(const furnace::Model& model, const bench::World& world) {
    return ratio(world.state.signals.air.flow_m3_s, rated_air_m3_s(model));
}

double flue_share(const furnace::Model& model, const bench::World& world) {
    return ratio(world.state.signals.draft.flue_kg_s, model.rating.input_w * kRatedFlue_kg_per_J);
}

double gas_share(const furnace::Model& model, const bench::World& world) {
    return ratio(world.state.signals.gas.burners_total_m3_s, rated_gas_m3_s(model));
}

double wrapped(double angle_rad) {
    constexpr double turn = 2.0 * units::pi;
    return angle_rad >= turn ? angle_rad - turn : angle_rad;
}

Flame flame_of(const combustion::FlameLook& look, double touch) {
    return {as_float(look.strength), as_float(look.yellow),   as_float(look.length),
            as_float(look.lift),     as_float(look.softness), as_float(touch)};
}

void fill_switches(CutawayScene& scene, const bench::World& world) {
    const furnace::Signals& signals = world.state.signals;
    const furnace::Inputs& in = world.inputs;
    scene.pressure_switch_closed = signals.draft.switch_closed != 0;
    scene.limit_closed = signals.heat.limit_closed != 0;
    scene.rollout_closed = signals.heat.rollout_closed != 0;
    scene.burner_door_on = in.burner_door_on != 0;
    scene.blower_door_on = in.blower_door_on != 0;
    scene.door_switch_closed = scene.blower_door_on || in.door_switch_held != 0;
    scene.burner_door_away = scene.burner_door_on ? 0.0F : 1.0F;
    scene.blower_door_away = scene.blower_door_on ? 0.0F : 1.0F;
    scene.filter_in = in.filter_in != 0;
    scene.gas_cock_open = in.gas_cock_open != 0;
    scene.disconnect_on = in.disconnect_on != 0;
    scene.lamp_on = world.state.board.lamp.on != 0;
    scene.gas_valve = as_float(world.state.gas.valve_position);
}

/// What the eye makes of a wheel; how fast it truly runs nobody sees.
double seen_speed(bench::Turning turning) {
    constexpr double kSlowly_rad_s = 3.0;
    constexpr double kFast_rad_s = 120.0;
    return turning == bench::Turning::fast     ? kFast_rad_s
           : turning == bench::Turning::slowly ? kSlowly_rad_s
                                               : 0.0;
}

float tenths(std::uint8_t steps) {
    return static_cast<float>(steps) * 0.1F;
}

void fill_flows(CutawayScene& scene, const furnace::Model& model, const bench::World& world) {
    const furnace::Signals& signals = world.state.signals;
    scene.suction = as_float(ratio(signals.draft.switch_suction_pa, model.draft.sense_line.make_pa));
    scene.air = as_float(air_share(model, world));
    scene.flue = as_float(flue_share(model, world));
    scene.gas = as_float(gas_share(model, world));
    scene.warmth =
        as_float(ratio(signals.heat.supply_air_k - world.state.heat.temperature.house, rated_rise_k(model)));
    scene.flame_k = as_float(signals.heat.flame_k);
    scene.exchanger_k = as_float(signals.heat.exchanger_gas_mean_k);
    scene.collector_k = as_float(signals.heat.collector_gas_k);
}

} // namespace

double shown_speed(double speed_rad_s) {
    return speed_rad_s * kFastestShown_rad_s / (kFastestShown_rad_s + std::max(0.0, speed_rad_s));
}

Travel travel_at_rest(const bench::World& world) {
    Travel travel;
    travel.inducer_rad = world.state.draft.inducer.angle_rad;
    travel.blower_rad = world.state.air.blower.angle_rad;
    return travel;
}

void move(Travel& travel, const furnace::Model& model, const bench::World& world, double tick_s,
          double pace) {
    const double shown_s = tick_s * std::min(1.0, kFastestPace / std::max(1.0, pace));
    const furnace::Signals& signals = world.state.signals;
    travel.inducer_rad = wrapped(travel.inducer_rad + shown_speed(signals.draft.wheel_speed_rad_s) * shown_s);
    travel.blower_rad = wrapped(travel.blower_rad + shown_speed(signals.air.wheel_speed_rad_s) * shown_s);
    travel.air_s += air_share(model, world) * shown_s;
    travel.flue_s += flue_share(model, world) * shown_s;
    travel.gas_s += gas_share(model, world) * shown_s;
}

CutawayScene make_scene(const furnace::Model& model, const bench::World& world, const Travel& travel) {
    CutawayScene scene;
    scene.burner_count = static_cast<std::size_t>(model.combustion.burner_count);
    scene.has_inducer = model.wiring.inducer_motor >= 0;
    for (std::size_t i = 0; i < scene.burner_count; ++i) {
        scene.burner[i] =
            flame_of(world.state.signals.combustion.burner[i], world.condition.combustion.misalignment[i]);
    }
    scene.flame_outside_w = as_float(world.state.signals.combustion.rollout_heat_hhv_w);
    scene.igniter_k = as_float(world.state.heat.temperature.igniter);
    scene.inducer = {as_float(travel.inducer_rad), as_float(world.state.signals.draft.wheel_speed_rad_s)};
    scene.blower = {as_float(travel.blower_rad), as_float(world.state.signals.air.wheel_speed_rad_s)};
    fill_switches(scene, world);
    fill_flows(scene, model, world);
    scene.travel = travel;
    scene.time_s = as_float(static_cast<double>(world.tick) * model.board.tick_s);
    return scene;
}

std::vector<WearMark> marks_of(const bench::Site& site, const bench::WornParts& worn) {
    std::vector<WearMark> marks;
    for (std::size_t part = 0; part < site.catalogue.parts.size(); ++part)
        for (int wear = 0; wear < faults::kWears; ++wear)
            if (const int step = worn.step(static_cast<int>(part), static_cast<faults::Wear>(wear)); step > 0)
                marks.push_back({site.catalogue.parts[part].id, static_cast<faults::Wear>(wear), step});
    return marks;
}

std::vector<std::string_view> traces_of(const bench::Site& site, const bench::WornParts& worn) {
    std::vector<std::string_view> traces;
    for (std::size_t part = 0; part < site.catalogue.parts.size(); ++part)
        if (worn.is_traced(static_cast<int>(part)))
            traces.push_back(site.catalogue.parts[part].id);
    return traces;
}

void stand_still(CutawayScene& scene) {
    scene.still = true;
    scene.time_s = 0;
    scene.travel.air_s = scene.travel.flue_s = scene.travel.gas_s = 0;
}

CutawayScene scene_of(const bench::Site& site, const bench::Percept& percept, const Travel& travel) {
    const furnace::Model& model = site.model;
    CutawayScene scene;
    scene.wear = marks_of(site, percept.worn);
    scene.traces = traces_of(site, percept.worn);
    scene.burner_count = static_cast<std::size_t>(model.combustion.burner_count);
    for (std::size_t i = 0; i < scene.burner_count; ++i) {
        const bench::FlamePercept& flame = percept.seen.burner[i];
        scene.burner[i] = {tenths(flame.strength), tenths(flame.yellow),   tenths(flame.length),
                           tenths(flame.lift),     tenths(flame.softness), tenths(flame.touch)};
    }
    scene.flame_outside_w = 1000.0F * static_cast<float>(percept.seen.flame_outside);
    if (percept.seen.igniter_glow_k != 0) {
        scene.igniter_k = percept.seen.igniter_glow_k;
    }
    scene.inducer = {as_float(travel.inducer_rad), as_float(seen_speed(percept.seen.inducer))};
    scene.blower = {as_float(travel.blower_rad), as_float(seen_speed(percept.seen.blower))};
    scene.has_inducer = model.wiring.inducer_motor >= 0;
    scene.as_seen = true;
    scene.burner_door_on = percept.left_as.burner_door_on;
    scene.blower_door_on = percept.left_as.blower_door_on;
    scene.door_switch_closed =
        scene.blower_door_on || percept.left_as.door_switch_held || percept.worked.door_switch_taped;
    scene.burner_door_away = scene.burner_door_on ? 0.0F : 1.0F;
    scene.blower_door_away = scene.blower_door_on ? 0.0F : 1.0F;
    scene.filter_in = percept.left_as.filter_in;
    scene.gas_cock_open = percept.left_as.gas_cock_open;
    scene.disconnect_on = percept.left_as.disconnect_on;
    scene.lamp_on = percept.seen.lamp_on;
    scene.travel = travel;
    scene.time_s = as_float(static_cast<double>(percept.tick) * model.board.tick_s);
    return scene;
}

void move(Travel& travel, const bench::Percept& percept, double tick_s) {
    travel.inducer_rad = wrapped(travel.inducer_rad + shown_speed(seen_speed(percept.seen.inducer)) * tick_s);
    travel.blower_rad = wrapped(travel.blower_rad + shown_speed(seen_speed(percept.seen.blower)) * tick_s);
}

} // namespace lightoff::cutaway
