// SPDX-License-Identifier: MIT
#include "furnace/condition_paths.hpp"

#include "units/fields.hpp"

#include <algorithm>
#include <stdexcept>
#include <string_view>
#include <type_traits>

namespace lightoff::furnace {
namespace {

/// Renames `count` consecutive numbers beginning at "list[0]member", `stride` apart; those without a name are
/// room to spare.
void name_entries(std::vector<ConditionPath>& paths, const std::string& first, std::size_t stride,
                  std::size_t count, const std::vector<std::string>& names, const std::string& before,
                  const std::string& after) {
    auto at =
        std::find_if(paths.begin(), paths.end(), [&](const ConditionPath& p) { return p.path == first; });
    for (std::size_t i = 0; i < count; ++i) {
        ConditionPath& entry = at[static_cast<std::ptrdiff_t>(i * stride)];
        entry.in_use = i < names.size();
        if (entry.in_use)
            (entry.path = before).append(names[i]).append(after);
    }
}

[[noreturn]] void refuse_field(std::uint64_t numbers) {
    throw std::invalid_argument("a furnace has only " + std::to_string(numbers) + " conditions");
}

} // namespace

std::vector<ConditionPath> condition_paths(const Model& model) {
    std::vector<ConditionPath> paths;
    const Condition condition;
    units::for_each_field(condition, [&](const std::string& path, std::string_view unit, const auto&) {
        paths.push_back({path, std::string(unit), true});
    });
    for (const std::string what : {"series_resistance", "factor"})
        name_entries(paths, "wiring." + what + "[0]", 1, electrical::kMaxElements,
                     model.wiring.netlist.element_names, "wiring/", "/" + what);
    std::vector<std::string> relays;
    for (const RelayBinding& relay : model.wiring.relays)
        relays.push_back(relay.name);
    for (const std::string what : {"pull_in_factor", "lowest_position", "highest_position"})
        name_entries(paths, "relays[0]." + what, 3, kMaxRelays, relays, "relay/", "/" + what);
    name_entries(paths, "board.sense_gain[0]", 1, control::kMaxInputs, model.board.input_names, "board/",
                 "/sense_gain");
    return paths;
}

std::uint64_t condition_field(const Model& model, const std::string& path) {
    const std::vector<ConditionPath> paths = condition_paths(model);
    const auto it =
        std::find_if(paths.begin(), paths.end(), [&](const ConditionPath& p) { return p.path == path; });
    if (it == paths.end())
        throw std::invalid_argument("a furnace has no condition \"" + path +
                                    "\"; they are listed by `lightoff-cli conditions`");
    return static_cast<std::uint64_t>(it - paths.begin());
}

void set_condition_field(Condition& condition, std::uint64_t field, double value) {
    std::uint64_t at = 0;
    units::for_each_value(condition, [&](auto& number) {
        if (at++ == field)
            number = static_cast<std::remove_reference_t<decltype(number)>>(value);
    });
    if (field >= at)
        refuse_field(at);
}

double condition_value(const Condition& condition, std::uint64_t field) {
    std::uint64_t at = 0;
    double value = 0.0;
    units::for_each_value(condition, [&](const auto& number) {
        if (at++ == field)
            value = static_cast<double>(number);
    });
    if (field >= at)
        refuse_field(at);
    return value;
}

} // namespace lightoff::furnace
