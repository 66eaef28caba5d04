// SPDX-License-Identifier: MIT
#include "cli/readout_text.hpp"

#include "cli/text_layout.hpp"

#include <algorithm>
#include <array>
#include <stdexcept>
#include <utility>

namespace lightoff::cli {
namespace {

constexpr std::array<std::pair<std::string_view, ReadoutUnit>, 13> kUnits{{
    {"V", {"V", "V", 2}},
    {"A", {"A", "A", 2}},
    {"uA", {"µA", "uA", 2}},
    {"W", {"W", "W", 0}},
    {"in. w.c.", {"in. w.c.", "inwc", 3}},
    {"rpm", {"rpm", "rpm", 0}},
    {"ft3/h", {"ft³/h", "cfh", 1}},
    {"cfm", {"cfm", "cfm", 0}},
    {"Btu/h", {"Btu/h", "Btuh", 0}},
    {"s", {"s", "s", 1}},
    {"%", {"%", "pct", 1}},
    {"ppm", {"ppm", "ppm", 0}},
    {"F", {"°F", "F", 1}},
}};
constexpr ReadoutUnit kDifference{"°F", "F_difference", 1};

std::string slug(std::string_view name) {
    std::string out;
    for (const char c : name) {
        const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
        if (letter)
            out += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        else if (!out.empty() && out.back() != '_')
            out += '_';
    }
    if (!out.empty() && out.back() == '_')
        out.pop_back();
    return out;
}

std::string capitalised(std::string text) {
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z')
        text[0] = static_cast<char>(text[0] - 'a' + 'A');
    return text;
}

} // namespace

const ReadoutUnit& readout_unit(const std::string& unit) {
    if (unit == "F difference")
        return kDifference;
    for (const auto& [name, row] : kUnits)
        if (name == unit)
            return row;
    throw std::invalid_argument("no readout is known in the unit \"" + unit + "\"");
}

std::string readout_key(const bench::Readout& readout) {
    return slug(readout.name) + "_" + std::string(readout_unit(readout.unit).suffix);
}

OrderedJson readouts_json(const std::vector<bench::Readout>& readouts) {
    OrderedJson groups = OrderedJson::object();
    for (const bench::Readout& r : readouts)
        groups[slug(r.group)][readout_key(r)] = r.value;
    return groups;
}

void write_readouts(Output& out, const std::vector<bench::Readout>& readouts) {
    std::vector<std::pair<std::string, Table>> groups;
    std::vector<std::size_t> widths;
    for (const bench::Readout& r : readouts) {
        if (groups.empty() || groups.back().first != r.group)
            groups.emplace_back(r.group, Table({{"", false}, {"", true}, {"", false}}));
        const ReadoutUnit& unit = readout_unit(r.unit);
        groups.back().second.row({r.name, fixed(r.value, unit.decimals), std::string(unit.printed)});
        const std::vector<std::size_t> here = groups.back().second.widths();
        widths.resize(here.size(), 0);
        for (std::size_t c = 0; c < here.size(); ++c)
            widths[c] = std::max(widths[c], here[c]);
    }
    for (auto& [name, table] : groups) {
        out.line();
        out.line(out.heading(capitalised(name)));
        table.at_least(widths);
        table.write(out);
    }
}

} // namespace lightoff::cli
