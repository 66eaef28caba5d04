// SPDX-License-Identifier: MIT
#pragma once
#include "control/thermostat.hpp"
#include "electrical/network_inputs.hpp"
#include "units/constants.hpp"

#include <array>
#include <cstdint>

namespace lightoff::furnace {

/// What stands outside the furnace, and what hands have done to it without changing a part.
struct Inputs {
    double line_voltage_v = 120.0; ///< at the panel, r.m.s.
    double outdoor_k = 270.0;
    double basement_k = 294.26; ///< air round the furnace; the combustion air
    double humidity_ratio =
        0.0065; ///< of the basement's air, kg/kg: 70 F and 40 % (psychrometric chart, from memory)
    double barometric_pa = units::standard_pressure_pa;
    double wind_pa = 0.0;        ///< dynamic pressure at the vent cap
    double other_gas_m3_s = 0.0; ///< drawn by other appliances behind the same meter
    double basement_air_changes_per_s = 0.5 / 3600.0;
    double set_point_k = 293.15;
    control::ThermostatMode thermostat_mode = control::ThermostatMode::heat;
    control::FanSwitch thermostat_fan = control::FanSwitch::automatic;
    std::uint8_t breaker_on = 1;
    std::uint8_t disconnect_on = 1;
    std::uint8_t burner_door_on = 1;
    std::uint8_t blower_door_on = 1;
    std::uint8_t door_switch_held = 0;
    std::uint8_t filter_in = 1;
    std::uint8_t gas_cock_open = 1;      ///< its handle; whether gas passes is the cock's condition, too
    std::array<std::uint8_t, 7> spare{}; ///< keeps the struct free of padding
    std::array<electrical::Attachment, electrical::kMaxAttachments>
        attachments{};                ///< leads of meters, jumpers
    electrical::ElementBits parted{}; ///< joints pulled apart: a wire lifted off its terminal, a plug pulled

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("line_voltage", "V", self.line_voltage_v);
        visit("outdoor", "K", self.outdoor_k);
        visit("basement", "K", self.basement_k);
        visit("humidity_ratio", "", self.humidity_ratio);
        visit("barometric", "Pa", self.barometric_pa);
        visit("wind", "Pa", self.wind_pa);
        visit("other_gas", "m3/s", self.other_gas_m3_s);
        visit("basement_air_changes", "1/s", self.basement_air_changes_per_s);
        visit("set_point", "K", self.set_point_k);
        visit("thermostat_mode", "", self.thermostat_mode);
        visit("thermostat_fan", "", self.thermostat_fan);
        visit("breaker_on", "", self.breaker_on);
        visit("disconnect_on", "", self.disconnect_on);
        visit("burner_door_on", "", self.burner_door_on);
        visit("blower_door_on", "", self.blower_door_on);
        visit("door_switch_held", "", self.door_switch_held);
        visit("filter_in", "", self.filter_in);
        visit("gas_cock_open", "", self.gas_cock_open);
        visit("spare", "", self.spare);
        visit("attachments", self.attachments);
        visit("parted", "", self.parted);
    }
};

} // namespace lightoff::furnace
