// SPDX-License-Identifier: MIT
#pragma once
#include "bench/site.hpp"
#include "bench/world.hpp"
#include "furnace/furnace.hpp"
#include "instruments/bag.hpp"

#include <array>
#include <cstddef>
#include <cstdint>

/// What a person at the furnace perceives: all that an attempt's window, captions and notebook may show.
/// Senses are coarse: every quantity comes in whole steps, so that two Worlds that nobody could tell apart
/// give equal percepts.
namespace lightoff::bench {

/// One flame, burner door off. Tenths.
struct FlamePercept {
    std::uint8_t strength = 0;
    std::uint8_t yellow = 0; ///< 0 blue, 10 yellow
    std::uint8_t length = 0; ///< 10 as it should be
    std::uint8_t lift = 0;
    std::uint8_t softness = 0;
    std::uint8_t touch = 0; ///< of it that strikes metal
    friend bool operator==(const FlamePercept&, const FlamePercept&) = default;
};

/// Whether a wheel or shaft can be seen to turn.
enum class Turning : std::uint8_t { not_seen, still, slowly, fast };

struct Seen {
    bool lamp_on = false; ///< through the lamp's window, doors on or off
    std::array<FlamePercept, combustion::kMaxBurners> burner{};
    std::uint8_t flame_outside = 0;      ///< flame rolls out of the burner openings, kW
    std::uint16_t igniter_glow_k = 0;    ///< colour temperature in steps of 50 K; 0 dark or door on
    Turning inducer = Turning::not_seen; ///< its shaft; burner door off
    Turning blower = Turning::not_seen;  ///< its wheel; blower door off
    friend bool operator==(const Seen&, const Seen&) = default;
};

struct Heard {
    std::uint16_t inducer_hz = 0;      ///< blade-pass tone, steps of 5 Hz
    std::uint16_t blower_hz = 0;       ///< the same
    std::uint8_t inducer_loudness = 0; ///< twentieths of that at synchronous speed
    std::uint8_t blower_loudness = 0;  ///< the same
    std::uint8_t roar = 0;             ///< of the burners, tenths
    std::uint8_t ignition = 0;         ///< loudness of the light-off, tenths: 10 is a bang
    std::uint8_t relay_clicks = 0;     ///< armatures of relays that struck a stop in the last tick
    bool valve_click = false;          ///< the gas valve did
    bool inducer_hum = false;          ///< energised but stalled
    bool blower_hum = false;           ///< the same
    friend bool operator==(const Heard&, const Heard&) = default;
};

struct Felt {
    std::uint8_t register_air = 0;      ///< speed at the registers, tenths of the ordinary
    std::uint8_t register_warmth = 0;   ///< of that air over the room's, steps of 5 K
    std::uint8_t cabinet_vibration = 0; ///< steps of 1 mm/s, peak
    friend bool operator==(const Felt&, const Felt&) = default;
};

struct Smelt {
    std::uint8_t gas = 0; ///< 0 none, 1 plain, 2 strong
    bool hot_winding = false;
    friend bool operator==(const Smelt&, const Smelt&) = default;
};

/// Doors, switches and settings as they were found or left.
struct LeftAs {
    bool burner_door_on = true;
    bool blower_door_on = true;
    bool door_switch_held = false;
    bool filter_in = true;
    bool breaker_on = true;
    bool disconnect_on = true;
    bool gas_cock_open = true; ///< its handle
    control::ThermostatMode thermostat_mode = control::ThermostatMode::off;
    control::FanSwitch thermostat_fan = control::FanSwitch::automatic;
    double set_point_k = 0.0; ///< of the thermostat, as it was set
    friend bool operator==(const LeftAs&, const LeftAs&) = default;
};

/// What the hands have put or taken where.
struct Worked {
    std::array<std::uint64_t, kMaxParts / 64> parts_off{}; ///< by part of the catalogue
    std::array<std::int8_t, kMaxParts> eighths{};          ///< turns of screws since they were found
    electrical::ElementBits parted{};                      ///< wires and plugs off their terminals
    /// Wires landed elsewhere, jumper lead, lead with the small breaker: node to node.
    std::array<std::array<std::int32_t, 2>, electrical::kMaxAttachments> joined{};
    bool small_breaker_tripped = false;
    bool door_switch_taped = false;
    bool tagged = false;
    bool appliances_off = false;
    bool signed_off = false;
    std::uint8_t told = 0; ///< bits by Topic
    std::array<std::uint64_t, kMaxParts / 64>
        old_parts{}; ///< that lie on the bench, by part of the catalogue
    friend bool operator==(const Worked&, const Worked&) = default;
};

/// The instruments as they are set, and what stands in their windows.
struct Instruments {
    instruments::MultimeterSetting multimeter;
    instruments::ClampSetting clamp;
    instruments::WattmeterSetting wattmeter;
    instruments::TachometerSetting tachometer;
    instruments::ManometerSetting manometer;
    instruments::ThermometerSetting thermometer;
    instruments::AnalyserSetting analyser;
    instruments::GasDetectorSetting gas_detector;
    instruments::LeakSolutionSetting leak_solution;
    instruments::VoltageTesterSetting voltage_tester;
    instruments::DialWatchSetting dial_watch;
    std::array<instruments::Display, instruments::kWindows>
        window{}; ///< in the order of instruments::displays
    friend bool operator==(const Instruments&, const Instruments&) = default;
};

/// What a close look at a part, or the test of an old one, has just shown, until something else is done.
struct LookedAt {
    std::int32_t part = -1;                      ///< of the catalogue; -1: at nothing
    bool old = false;                            ///< one that lies on the bench
    std::array<std::uint8_t, kMaxSights> band{}; ///< of each sight of its look, and of the test of an old one
    std::array<instruments::Display, kMaxBenchValues> value{}; ///< of an old one
    friend bool operator==(const LookedAt&, const LookedAt&) = default;
};

/// Dirt, soot, rust, water and burnt places as they meet the eye of whoever stands there, by part and in
/// steps; and where somebody who worked here before has left something.
struct WornParts {
    std::array<std::array<std::uint8_t, faults::kWears>, kMaxParts> steps{}; ///< 0 none .. faults::kWearSteps
    std::array<std::uint64_t, kMaxParts / 64> traced{};                      ///< by part of the catalogue
    [[nodiscard]] int step(int part, faults::Wear wear) const {
        return steps[static_cast<std::size_t>(part)][static_cast<std::size_t>(wear)];
    }
    [[nodiscard]] bool is_traced(int part) const {
        const auto index = static_cast<std::size_t>(part);
        return (traced[index / 64] >> (index % 64) & 1U) != 0;
    }
    friend bool operator==(const WornParts&, const WornParts&) = default;
};

struct Percept {
    std::uint64_t tick = 0;
    Seen seen;
    Heard heard;
    Felt felt;
    Smelt smelt;
    LeftAs left_as;
    Hands hands;
    Worked worked;
    Instruments instruments;
    LookedAt looked_at;
    WornParts worn; ///< by perceive_with_wear alone
    friend bool operator==(const Percept&, const Percept&) = default;
};

/// Of a part's condition nothing enters but by what it does to light, sound, smell, touch and the windows of
/// the instruments, and what a close look shows of it.
Percept perceive(const Site& site, const World& world);
/// With what is seen of dirt and wear, which takes longer than a tick: for those who draw, not for those who
/// step.
Percept perceive_with_wear(const Site& site, const World& world);
/// Of all parts, doors or not: for those who may see through them.
WornParts all_wear(const Site& site, const World& world);

} // namespace lightoff::bench
