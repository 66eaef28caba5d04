// SPDX-License-Identifier: MIT
#include "bench/percept.hpp"

#include "bench/access.hpp"
#include "units/constants.hpp"
#include "units/convert.hpp"

#include <algorithm>
#include <bit>
#include <cmath>

namespace lightoff::bench {
namespace {

// Wheels that a person hears. Numbers of blades: teaching values.
constexpr double kInducerBlades = 24.0;
constexpr double kBlowerBlades = 42.0;
constexpr double kToneStep_hz = 5.0;
constexpr double kHeardFrom = 0.03; ///< of synchronous speed: below it a wheel makes no sound
constexpr double kStalledBelow = 0.05;
constexpr double kInducerHum_w = 5.0;
constexpr double kBlowerHum_w = 20.0;

constexpr double kFirstGlow_k = 798.0; ///< Draper point: dull red just seen in the dark (textbook)
constexpr double kGlowStep_k = 50.0;
constexpr double kSlowly_rad_s = 12.0; ///< two turns a second: single turns can be told

/// Odorised gas must be plain to a normal nose at a fifth of its lower flammable limit at the latest (US 49
/// CFR 192.625, from memory): strong from there on. That it is noticed at a quarter of that is common
/// practice, no source.
constexpr double kNoticedGas = 0.05;
constexpr double kStrongGas = 0.2;
constexpr double kWindingSmells_k = 398.0; ///< varnish near the limit of its class, 130 C; teaching value

constexpr double kWarmthStep_k = 5.0;
constexpr double kVibrationStep_m_s = 1e-3;

/// x in whole steps, 0 or more.
template <class Integer>
Integer in_steps(double x, double step, Integer most) {
    const double steps = x / step + 0.5;
    if (!(steps >= 1.0))
        return 0;
    return steps >= static_cast<double>(most) ? most : static_cast<Integer>(steps);
}

std::uint8_t tenths(double x) {
    return in_steps<std::uint8_t>(x, 0.1, 50);
}

Turning turning(double rad_s) {
    if (rad_s < 0.05)
        return Turning::still;
    return rad_s < kSlowly_rad_s ? Turning::slowly : Turning::fast;
}

Seen see(const furnace::Model& model, const World& world) {
    const furnace::State& state = world.state;
    Seen seen;
    seen.lamp_on = state.board.lamp.on != 0;
    if (world.inputs.burner_door_on == 0) {
        for (std::size_t i = 0; i < static_cast<std::size_t>(model.combustion.burner_count); ++i) {
            const combustion::FlameLook& look = state.signals.combustion.burner[i];
            const std::uint8_t strength = tenths(look.strength);
            if (strength > 0)
                seen.burner[i] = {strength,
                                  tenths(look.yellow),
                                  tenths(look.length),
                                  tenths(look.lift),
                                  tenths(look.softness),
                                  tenths(world.condition.combustion.misalignment[i])};
        }
        seen.flame_outside = in_steps<std::uint8_t>(state.signals.combustion.rollout_heat_hhv_w, 1000.0, 100);
        const double igniter_k = state.heat.temperature.igniter;
        if (igniter_k >= kFirstGlow_k)
            seen.igniter_glow_k = static_cast<std::uint16_t>(
                kGlowStep_k * static_cast<double>(in_steps<std::uint16_t>(igniter_k, kGlowStep_k, 100)));
        seen.inducer = turning(state.draft.inducer.speed_rad_s);
    }
    if (world.inputs.blower_door_on == 0)
        seen.blower = turning(state.signals.air.wheel_speed_rad_s);
    return seen;
}

/// A fan's sound power grows with the fifth power of its speed (fan sound law, handbooks), and a sound seems
/// half as loud at 10 dB less: loudness goes with speed^1.5.
std::uint8_t wheel_loudness(double speed_ratio) {
    return speed_ratio < kHeardFrom ? std::uint8_t{0}
                                    : in_steps<std::uint8_t>(speed_ratio * std::sqrt(speed_ratio), 0.05, 40);
}

std::uint16_t blade_tone_hz(double wheel_rad_s, double speed_ratio, double blades) {
    if (speed_ratio < kHeardFrom)
        return 0;
    const double hz = blades * wheel_rad_s / (2.0 * units::pi);
    return static_cast<std::uint16_t>(kToneStep_hz *
                                      static_cast<double>(in_steps<std::uint16_t>(hz, kToneStep_hz, 2000)));
}

double synchronous_rad_s(const furnace::Model& model, int motor) {
    return motor < 0 ? 1.0 : model.wiring.netlist.motors[static_cast<std::size_t>(motor)].synchronous_rad_s;
}

Heard hear(const furnace::Model& model, const furnace::State& state) {
    const furnace::Wiring& w = model.wiring;
    const furnace::Signals& s = state.signals;
    const double inducer_full_rad_s = synchronous_rad_s(model, w.inducer_motor);
    const double blower_full_rad_s = synchronous_rad_s(model, w.blower_motor);
    const double inducer_ratio = s.draft.wheel_speed_rad_s / inducer_full_rad_s;
    const double blower_ratio = s.air.wheel_speed_rad_s / blower_full_rad_s;
    Heard heard;
    heard.inducer_hz = blade_tone_hz(s.draft.wheel_speed_rad_s, inducer_ratio, kInducerBlades);
    heard.inducer_loudness = wheel_loudness(inducer_ratio);
    heard.blower_hz = blade_tone_hz(s.air.wheel_speed_rad_s, blower_ratio, kBlowerBlades);
    heard.blower_loudness = wheel_loudness(blower_ratio);

    double roar = 0.0;
    for (const combustion::FlameLook& look : s.combustion.burner)
        roar += look.strength * look.length;
    heard.roar = tenths(roar / static_cast<double>(std::max<std::int64_t>(1, model.combustion.burner_count)));
    heard.ignition = tenths(s.combustion.ignition_loudness);

    const std::uint32_t valve = w.gas_valve < 0 ? 0 : std::uint32_t{1} << w.gas_valve;
    heard.valve_click = (state.armatures_struck & valve) != 0;
    heard.relay_clicks = static_cast<std::uint8_t>(std::popcount(state.armatures_struck & ~valve));

    heard.inducer_hum = s.power.inducer_electrical_w > kInducerHum_w &&
                        state.draft.inducer.speed_rad_s < kStalledBelow * inducer_full_rad_s;
    heard.blower_hum = s.power.blower_electrical_w > kBlowerHum_w &&
                       state.air.blower.speed_rad_s < kStalledBelow * blower_full_rad_s;
    return heard;
}

Felt feel(const furnace::Model& model, const furnace::State& state) {
    const furnace::Signals& s = state.signals;
    Felt felt;
    felt.register_air = tenths(s.air.register_flow_kg_s / model.heat.exchanger.air_reference_flow_kg_s);
    if (felt.register_air > 0)
        felt.register_warmth =
            in_steps<std::uint8_t>(s.heat.supply_air_k - state.heat.temperature.house, kWarmthStep_k, 60);
    felt.cabinet_vibration =
        in_steps<std::uint8_t>(std::max(s.draft.shake_m_s, s.air.shake_m_s), kVibrationStep_m_s, 100);
    return felt;
}

Smelt smell(const furnace::Model& model, const furnace::State& state) {
    const double of_limit = state.gas.room.raw_gas_fraction / model.combustion.fuel.lower_limit;
    Smelt smelt;
    smelt.gas = of_limit < kNoticedGas ? 0 : of_limit < kStrongGas ? 1 : 2;
    smelt.hot_winding = state.heat.temperature.blower_winding > kWindingSmells_k ||
                        state.heat.temperature.inducer_winding > kWindingSmells_k;
    return smelt;
}

LeftAs left_as(const furnace::Inputs& in) {
    LeftAs left;
    left.burner_door_on = in.burner_door_on != 0;
    left.blower_door_on = in.blower_door_on != 0;
    left.door_switch_held = in.door_switch_held != 0;
    left.filter_in = in.filter_in != 0;
    left.breaker_on = in.breaker_on != 0;
    left.disconnect_on = in.disconnect_on != 0;
    left.gas_cock_open = in.gas_cock_open != 0;
    left.thermostat_mode = in.thermostat_mode;
    left.thermostat_fan = in.thermostat_fan;
    left.set_point_k = in.set_point_k;
    return left;
}

Worked worked(const World& world) {
    const Handiwork& work = world.handiwork;
    Worked seen;
    seen.parts_off = work.parts_off;
    seen.eighths = work.eighths;
    seen.parted = world.inputs.parted;
    for (std::size_t slot = instruments::kJumperSlot; slot < seen.joined.size(); ++slot)
        seen.joined[slot] = {world.inputs.attachments[slot].a, world.inputs.attachments[slot].b};
    seen.small_breaker_tripped = work.small_breaker_tripped != 0;
    seen.door_switch_taped = work.door_switch_taped != 0;
    seen.tagged = work.tagged != 0;
    seen.appliances_off = work.appliances_off != 0;
    seen.signed_off = work.signed_off != 0;
    seen.told = work.told;
    for (std::size_t i = 0; i < world.old_parts.count; ++i) {
        const auto part = static_cast<std::size_t>(world.old_parts.part[i].part);
        seen.old_parts[part / 64] |= std::uint64_t{1} << (part % 64);
    }
    return seen;
}

Instruments read_windows(const instruments::Bag& bag) {
    Instruments tools;
    tools.multimeter = bag.multimeter.setting;
    tools.clamp = bag.clamp.setting;
    tools.wattmeter = bag.wattmeter.setting;
    tools.tachometer = bag.tachometer.setting;
    tools.manometer = bag.manometer.setting;
    tools.thermometer = bag.thermometer.setting;
    tools.analyser = bag.analyser.setting;
    tools.gas_detector = bag.gas_detector.setting;
    tools.leak_solution = bag.leak_solution.setting;
    tools.voltage_tester = bag.voltage_tester.setting;
    tools.dial_watch = bag.dial_watch.setting;
    const auto windows = instruments::displays(bag);
    for (std::size_t i = 0; i < windows.size(); ++i)
        tools.window[i] = *windows[i].display;
    return tools;
}

LookedAt looked_at(const Site& site, const World& world) {
    LookedAt looked;
    if (world.hands.last.verb == Verb::test_old) {
        const OldPart& old = *find_old(world.old_parts, world.hands.last.value);
        looked.part = old.part;
        looked.old = true;
        looked.band = old.band;
        const std::vector<instruments::Display> values = measured(site, old);
        std::copy(values.begin(), values.end(), looked.value.begin());
        return looked;
    }
    if (world.hands.last.verb != Verb::look)
        return looked;
    looked.part = world.hands.last.value;
    const faults::Look& look = site.catalogue.parts[static_cast<std::size_t>(looked.part)].look;
    const std::vector<int> bands = faults::describe(look, world.condition);
    for (std::size_t i = 0; i < bands.size() && i < kMaxSights; ++i)
        looked.band[i] = static_cast<std::uint8_t>(bands[i]);
    return looked;
}

/// Of the parts that `seen` says yes to.
template <class Seen>
WornParts wear_of(const Site& site, const World& world, Seen seen) {
    WornParts worn;
    const std::vector<faults::Part>& parts = site.catalogue.parts;
    for (std::size_t i = 0; i < parts.size() && i < kMaxParts; ++i) {
        const faults::Look& look = parts[i].look;
        const bool shows = std::any_of(look.sights.begin(), look.sights.end(),
                                       [](const faults::Sight& sight) { return !sight.steps.empty(); });
        if (!shows || !seen(parts[i]))
            continue;
        for (const faults::Sight& sight : look.sights) {
            std::uint8_t& step = worn.steps[i][static_cast<std::size_t>(sight.wear)];
            step = std::max(step, static_cast<std::uint8_t>(faults::step_of(sight, world.condition)));
        }
    }
    for (const Trace& trace : site.traces) {
        const auto part = static_cast<std::size_t>(trace.part);
        if (part < kMaxParts && seen(parts[part]))
            worn.traced[part / 64] |= std::uint64_t{1} << (part % 64);
    }
    return worn;
}

} // namespace

WornParts all_wear(const Site& site, const World& world) {
    return wear_of(site, world, [](const faults::Part&) { return true; });
}

Percept perceive_with_wear(const Site& site, const World& world) {
    Percept percept = perceive(site, world);
    percept.worn = wear_of(site, world, [&](const faults::Part& part) {
        return why_no_access(site, world, part, part.look.access).empty();
    });
    return percept;
}

Percept perceive(const Site& site, const World& world) {
    Percept percept;
    percept.tick = world.tick;
    percept.seen = see(site.model, world);
    percept.heard = hear(site.model, world.state);
    percept.felt = feel(site.model, world.state);
    percept.smelt = smell(site.model, world.state);
    percept.left_as = left_as(world.inputs);
    percept.hands = world.hands;
    percept.worked = worked(world);
    percept.instruments = read_windows(world.bag);
    percept.looked_at = looked_at(site, world);
    return percept;
}

} // namespace lightoff::bench
