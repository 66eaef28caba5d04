// SPDX-License-Identifier: MIT
//
// The tables of docs/instruments.md are made from the code's own: they can't go stale.
#include "instruments/bag.hpp"
#include "instruments/timing.hpp"

#include <catch2/catch.hpp>

#include <fstream>
#include <sstream>
#include <string>

using namespace lightoff::instruments;

namespace {

std::string page() {
    std::ifstream file(std::string(LIGHTOFF_SOURCE_DIR) + "/docs/instruments.md");
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

/// "600.0", "10.00".
std::string number(int counts, int exponent) {
    std::string digits = std::to_string(counts);
    if (exponent >= 0)
        return digits;
    const auto decimals = static_cast<std::size_t>(-exponent);
    if (digits.size() <= decimals)
        digits.insert(0, decimals + 1 - digits.size(), '0');
    return digits.insert(digits.size() - decimals, ".");
}

std::string short_number(double x) {
    std::ostringstream out;
    out << x;
    return out.str();
}

std::string unit_text(const Range& range) {
    const std::string_view text = unit_row(range.unit).written;
    return (text.empty() ? "" : " ") + std::string(text);
}

std::string accuracy_text(const Range& range) {
    std::string text;
    if (range.fraction > 0.0)
        text = short_number(100.0 * range.fraction) + " %";
    if (range.digits > 0.0)
        text += (text.empty() ? "" : " + ") + short_number(range.digits) +
                (range.digits == 1.0 ? " digit" : " digits");
    return text.empty() ? "exact" : text;
}

std::string windows_table() {
    std::string table = "| window | highest | last digit | accuracy |\n|---|---|---|---|\n";
    for (int q = 1; q < static_cast<int>(Quantity::count); ++q) {
        const QuantityRow& row = quantity_row(static_cast<Quantity>(q));
        for (int i = 0; i < row.range_count; ++i) {
            const Range& range = row.ranges[static_cast<std::size_t>(i)];
            table += "| " + (i == 0 ? std::string(row.title) : std::string()) + " | " +
                     number(range.counts, range.exponent) + unit_text(range) + " | " +
                     number(1, range.exponent) + unit_text(range) + " | " + accuracy_text(range) + " |\n";
        }
    }
    return table;
}

std::string ohm_text(double ohm) {
    if (ohm >= 1e6)
        return short_number(ohm / 1e6) + " MΩ";
    return ohm >= 1e3 ? short_number(ohm / 1e3) + " kΩ" : short_number(ohm) + " Ω";
}

std::string functions_table() {
    std::string table =
        "| function | for people | between the leads | test source | lag | new number every |\n"
        "|---|---|---|---|---|---|\n";
    for (const FunctionRow& row : functions()) {
        if (row.function == Function::off)
            continue;
        table += "| `" + std::string(row.id) + "` | " + std::string(row.title) + " | " + ohm_text(row.ohm) +
                 " | " + (row.dc_v > 0.0 ? short_number(row.dc_v) + " V DC" : std::string("none")) + " | " +
                 (row.lag_s > 0.0 ? short_number(row.lag_s) + " s" : std::string("none")) + " | " +
                 short_number(0.05 * row.update_ticks) + " s |\n";
    }
    return table;
}

std::string timings_table() {
    std::string table = "| what | lag | new number every |\n|---|---|---|\n";
    for (const Timing& timing : kTimings)
        table += "| " + std::string(timing.what) + " | " +
                 (timing.lag_s > 0.0 ? short_number(timing.lag_s) + " s" : std::string("none")) + " | " +
                 short_number(0.05 * timing.update_ticks) + " s |\n";
    return table;
}

std::string where_text(lightoff::furnace::Place::Where where) {
    using Where = lightoff::furnace::Place::Where;
    switch (where) {
    case Where::burner_compartment:
        return "burner compartment";
    case Where::blower_compartment:
        return "blower compartment";
    case Where::living_room:
        return "living room";
    case Where::outside:
        return "outside the cabinet";
    }
    return {};
}

std::string takes_text(std::uint8_t takes) {
    std::string text;
    const auto add = [&](std::uint8_t bit, const char* word) {
        if ((takes & bit) != 0)
            text += (text.empty() ? "" : ", ") + std::string(word);
    };
    add(kTakesPressure, "pressure");
    add(kTakesTemperature, "temperature");
    add(kTakesFlueGas, "flue gas");
    add(kTakesSniffing, "sniffing");
    add(kTakesSolution, "solution");
    add(kTakesTachometer, "speed");
    return text;
}

std::string spots_table() {
    std::string table = "| spot | for people | where | takes |\n|---|---|---|---|\n";
    for (const SpotRow& row : spots())
        table += "| `" + std::string(row.id) + "` | " + std::string(row.title) + " | " +
                 where_text(row.where) + " | " + takes_text(row.takes) + " |\n";
    return table;
}

void check_table(const std::string& name, const std::string& table) {
    INFO("docs/instruments.md should have between its markers:\n" << table);
    CHECK((page().find("<!-- " + name + ", kept by a test -->\n" + table + "<!-- end -->") !=
           std::string::npos));
}

} // namespace

TEST_CASE("docs/instruments.md has the windows' ranges, resolutions and accuracies") {
    check_table("windows", windows_table());
}

TEST_CASE("docs/instruments.md has the multimeter's functions") {
    check_table("functions", functions_table());
}

TEST_CASE("docs/instruments.md has the lags of the other instruments") {
    check_table("timings", timings_table());
}

TEST_CASE("docs/instruments.md has the spots") {
    check_table("spots", spots_table());
}
