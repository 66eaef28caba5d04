// SPDX-License-Identifier: MIT
#include "gui/explore/parameter_words.hpp"

#include "gui/canvas/lettering.hpp"
#include "units/convert.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>
#include <string_view>

namespace lightoff::explore {
namespace {

/// Three digits that count.
std::string three_digits(double value) {
    const double size = std::abs(value);
    const int decimals = size >= 99.95 || size == 0 ? 0 : size >= 9.995 ? 1 : size >= 0.9995 ? 2 : 3;
    return canvas::figure(value, decimals);
}

struct Scaled {
    double from; ///< this many or more
    double factor;
    std::string_view unit;
};

std::string scaled(double value, std::span<const Scaled> rows) {
    for (const Scaled& row : rows) {
        if (std::abs(value) >= row.from) {
            return three_digits(value * row.factor) + " " + std::string(row.unit);
        }
    }
    return "0 " + std::string(rows.back().unit);
}

constexpr std::array kOhms{Scaled{1e12, 1e-12, "TΩ"}, Scaled{1e9, 1e-9, "GΩ"}, Scaled{1e6, 1e-6, "MΩ"},
                           Scaled{1e3, 1e-3, "kΩ"}, Scaled{1e-9, 1, "Ω"}};
constexpr std::array kAreas{Scaled{1e-4, 1e4, "cm²"}, Scaled{1e-8, 1e6, "mm²"}, Scaled{1e-30, 1e12, "µm²"}};
constexpr std::array kUnbalances{Scaled{1e-12, 1e6, "g mm"}};

std::string plain(const faults::Parameter& p, double value) {
    if (p.unit == "ohm") {
        return scaled(value, kOhms);
    }
    if (p.unit == "m2") {
        return scaled(value, kAreas);
    }
    if (p.unit == "kg m") {
        return scaled(value, kUnbalances);
    }
    if (p.unit == "Pa") {
        return canvas::figure(units::pa_to_inwc(value), 2) + " in. w.c.";
    }
    if (p.unit == "m") {
        return three_digits(units::m_to_inch(value)) + " in.";
    }
    if (p.unit == "K") {
        // A temperature that something happens at, or how far one is off.
        return p.healthy > 200 ? canvas::figure(units::k_to_fahrenheit(value), 0) + " °F"
                               : canvas::figure(units::k_difference_to_fahrenheit(value), 1) + " °F";
    }
    if (p.unit == "Pa s/m3") {
        return three_digits(value * 1e-9) + " kPa s/cm³";
    }
    return three_digits(value) + (p.unit.empty() || p.unit == "1" ? "" : " " + p.unit);
}

} // namespace

std::string parameter_text(const faults::Parameter& p, double value) {
    if (p.whole) {
        const auto index = static_cast<std::size_t>(std::max(0.0, value));
        return index < p.words.size() ? p.words[index] : canvas::figure(value, 0);
    }
    if (p.bridge >= 0 && value >= p.healthy) {
        return "none";
    }
    if (p.apart && p.healthy > 200 && value == p.healthy) {
        return "never";
    }
    return plain(p, value);
}

std::string range_text(const faults::Parameter& p) {
    return "healthy " + parameter_text(p, p.healthy) + "; " + parameter_text(p, p.low) + " to " +
           parameter_text(p, p.high);
}

std::vector<sheet::Entry> parameter_entries(const std::vector<faults::Parameter>& parameters) {
    std::vector<sheet::Entry> entries;
    for (std::size_t i = 0; i < parameters.size(); ++i) {
        const faults::Parameter& p = parameters[i];
        sheet::Entry entry;
        entry.words = p.name;
        entry.also = p.path;
        for (const std::string& fault : p.faults) {
            entry.also += " " + fault;
        }
        entry.note = range_text(p);
        entry.group = p.part;
        entry.value = static_cast<int>(i);
        entries.push_back(std::move(entry));
    }
    std::stable_sort(entries.begin(), entries.end(),
                     [](const sheet::Entry& a, const sheet::Entry& b) { return a.group < b.group; });
    return entries;
}

} // namespace lightoff::explore
