// SPDX-License-Identifier: MIT
#pragma once
#include <cstdint>

/// The room thermostat: a slow sensor, a differential, a heat bias that ends the call early, and two
/// contacts (R-W heat, R-G fan).
///
///     sensor     dT_s/dt = (T_room - T_s)/tau_s                    exact exponential over a tick
///     bias       dB/dt = (B_call - B)/tau_b, B_call = bias * (I/I_set)^2 while calling, else 0
///     contact W  closes at T_s + B + offset <= set - differential/2, opens at >= set + differential/2
///
/// With an anticipator (a small heater in the W circuit) the bias goes with the heater's power, hence
/// the square of the current; a pointer set too low makes short calls, too high long ones. An
/// electronic one has a fixed bias. Teaching values, no source. Left out: radiation and drafts at the
/// wall, the volts that the heater takes from the circuit, programmes, cooling.
namespace lightoff::control {

/// What the logic runs on.
enum class ThermostatPower : std::uint32_t { none, battery, common };
enum class ThermostatMode : std::uint8_t { off, heat };
enum class FanSwitch : std::uint8_t { automatic, on };
enum class Contact : std::uint32_t { free, stuck_open, stuck_closed };

/// As the profile says it: keys of the JSON file are these names.
struct ThermostatDescription {
    double sensor_lag_s = 0.0;    ///< > 0
    double differential_k = 0.0;  ///< > 0, between closing and opening
    double heat_bias_k = 0.0;     ///< >= 0, settled, while calling, properly set
    double heat_bias_lag_s = 0.0; ///< > 0
    double anticipator_a = 0.0;   ///< proper setting of an anticipator; 0: electronic, fixed bias
    ThermostatPower power = ThermostatPower::none; ///< "none", "battery" or "common" in the file
    double works_above_v = 0.0; ///< battery volts, or R-C volts at the thermostat; 0 if power is none
};

struct ThermostatParams {
    double sensor_keep = 0.0; ///< exp(-tick/lag)
    double bias_keep = 0.0;
    double half_differential_k = 0.0;
    double heat_bias_k = 0.0;
    double anticipator_a = 0.0;
    double works_above_v = 0.0;
    ThermostatPower power = ThermostatPower::none;
};

/// Precomputes for ticks of `tick_s`. Throws std::invalid_argument naming the key that is out of range.
ThermostatParams make_thermostat(const ThermostatDescription& description, double tick_s = 0.05);

/// How it IS; healthy by default.
struct ThermostatCondition {
    double sensor_offset_k = 0.0;    ///< reads high (+) or low (-)
    double battery_v = 3.0;          ///< two fresh cells
    double anticipator_factor = 1.0; ///< the pointer stands at this multiple of the proper amps, > 0
    Contact heat_contact = Contact::free;
    Contact fan_contact = Contact::free;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("sensor_offset", "K", self.sensor_offset_k);
        visit("battery", "V", self.battery_v);
        visit("anticipator_factor", "", self.anticipator_factor);
        visit("heat_contact", "", self.heat_contact);
        visit("fan_contact", "", self.fan_contact);
    }
};

struct ThermostatState {
    double sensor_k = 0.0;
    double bias_k = 0.0;
    std::uint64_t calling = 0; ///< the logic wants heat

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("sensor", "K", self.sensor_k);
        visit("bias", "K", self.bias_k);
        visit("calling", "", self.calling);
    }
};

/// A thermostat that has long hung in a room at `room_k`, not calling.
ThermostatState rested_thermostat(double room_k);

struct ThermostatInputs {
    double room_k = 293.15;
    double set_point_k = 293.15;
    double supply_v = 0.0;       ///< R-C at the thermostat, rms; used where power is common
    double call_current_a = 0.0; ///< in the W circuit, rms; used with an anticipator
    ThermostatMode mode = ThermostatMode::heat;
    FanSwitch fan = FanSwitch::automatic;
};

struct ThermostatOutputs {
    bool heat_closed = false; ///< R-W
    bool fan_closed = false;  ///< R-G
    bool awake = false;       ///< the display shows something
    double shown_k = 0.0;     ///< what it takes the room to be (without the bias)
};

/// One tick, of the length given to make_thermostat.
ThermostatOutputs step(const ThermostatParams& params, const ThermostatCondition& condition,
                       ThermostatState& state, const ThermostatInputs& inputs);

} // namespace lightoff::control
