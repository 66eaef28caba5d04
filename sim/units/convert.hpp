// SPDX-License-Identifier: MIT
#pragma once

/// SI <-> trade units, exact definitions unless said otherwise. Everything inside the program is SI;
/// these are used where data is loaded and where numbers are shown.
namespace lightoff::units {

inline constexpr double metres_per_inch = 0.0254; // exact (NIST SP 811)
inline constexpr double metres_per_foot = 0.3048; // exact (NIST SP 811)
inline constexpr double cubic_metres_per_cubic_foot = metres_per_foot * metres_per_foot * metres_per_foot;
// Conventional inch of water: 1000 kg/m3 under standard gravity. NIST SP 811 gives 249.0889 (and 249.082
// at 39.2 F).
inline constexpr double pascals_per_inwc = metres_per_inch * 1000.0 * 9.80665;
inline constexpr double pascals_per_psi = 6894.757; // NIST SP 811
inline constexpr double joules_per_btu = 1055.056;  // Btu (IT) (NIST SP 811)
inline constexpr double watts_per_btu_per_hour = joules_per_btu / 3600.0;
inline constexpr double watts_per_horsepower = 745.6999;  // 550 ft lbf/s (NIST SP 811)
inline constexpr double kilograms_per_pound = 0.45359237; // exact
inline constexpr double kelvin_at_zero_celsius = 273.15;  // exact
inline constexpr double pi = 3.14159265358979323846;

constexpr double inwc_to_pa(double inwc) {
    return inwc * pascals_per_inwc;
}
constexpr double pa_to_inwc(double pa) {
    return pa / pascals_per_inwc;
}
constexpr double psi_to_pa(double psi) {
    return psi * pascals_per_psi;
}
constexpr double pa_to_psi(double pa) {
    return pa / pascals_per_psi;
}
constexpr double celsius_to_k(double c) {
    return c + kelvin_at_zero_celsius;
}
constexpr double k_to_celsius(double k) {
    return k - kelvin_at_zero_celsius;
}
constexpr double fahrenheit_to_k(double f) {
    return (f - 32.0) / 1.8 + kelvin_at_zero_celsius;
}
constexpr double k_to_fahrenheit(double k) {
    return (k - kelvin_at_zero_celsius) * 1.8 + 32.0;
}
/// A temperature difference, not a temperature.
constexpr double fahrenheit_difference_to_k(double f) {
    return f / 1.8;
}
constexpr double k_difference_to_fahrenheit(double k) {
    return k * 1.8;
}
constexpr double btuh_to_w(double btuh) {
    return btuh * watts_per_btu_per_hour;
}
constexpr double w_to_btuh(double w) {
    return w / watts_per_btu_per_hour;
}
constexpr double cfm_to_m3s(double cfm) {
    return cfm * cubic_metres_per_cubic_foot / 60.0;
}
constexpr double m3s_to_cfm(double m3s) {
    return m3s * 60.0 / cubic_metres_per_cubic_foot;
}
constexpr double cfh_to_m3s(double cfh) {
    return cfh * cubic_metres_per_cubic_foot / 3600.0;
}
constexpr double m3s_to_cfh(double m3s) {
    return m3s * 3600.0 / cubic_metres_per_cubic_foot;
}
constexpr double inch_to_m(double inch) {
    return inch * metres_per_inch;
}
constexpr double m_to_inch(double m) {
    return m / metres_per_inch;
}
constexpr double foot_to_m(double foot) {
    return foot * metres_per_foot;
}
constexpr double m_to_foot(double m) {
    return m / metres_per_foot;
}
constexpr double rpm_to_rad_s(double rpm) {
    return rpm * 2.0 * pi / 60.0;
}
constexpr double rad_s_to_rpm(double rad_s) {
    return rad_s * 60.0 / (2.0 * pi);
}
constexpr double btu_per_ft3_to_j_per_m3(double b) {
    return b * joules_per_btu / cubic_metres_per_cubic_foot;
}
constexpr double j_per_m3_to_btu_per_ft3(double j) {
    return j * cubic_metres_per_cubic_foot / joules_per_btu;
}

} // namespace lightoff::units
