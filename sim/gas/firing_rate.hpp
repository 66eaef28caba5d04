// SPDX-License-Identifier: MIT
#pragma once

/// Sums a technician makes at the meter. Any volume unit serves as long as both sides use it.
namespace lightoff::gas {

/// Volume per hour from one turn of a test dial: 3600 x dial / seconds (NFPA 54-1996 Table XIII). seconds >
/// 0.
constexpr double clocked_flow_per_hour(double dial_volume, double seconds_per_turn) {
    return 3600.0 * dial_volume / seconds_per_turn;
}

/// Seconds for one turn of a dial at a flow per hour > 0.
constexpr double dial_seconds(double dial_volume, double flow_per_hour) {
    return 3600.0 * dial_volume / flow_per_hour;
}

/// Input rate, flow x heating value: ft3/h x Btu/ft3 = Btu/h, or m3/s x J/m3 = W.
constexpr double input_rate(double flow, double heating_value) {
    return flow * heating_value;
}

/// Share of the sea-level input that an appliance may be fired at: 4 % less for each 1000 ft, counted from
/// sea level, applied above 2000 ft (NFPA 54; the threshold from memory).
constexpr double altitude_derating(double altitude_ft) {
    return altitude_ft <= 2000.0 ? 1.0 : 1.0 - 0.04 * altitude_ft / 1000.0;
}

} // namespace lightoff::gas
