// SPDX-License-Identifier: MIT
#pragma once
#include "furnace/condition.hpp"
#include "furnace/model.hpp"

#include <cstdint>
#include <string>
#include <vector>

/// Names for the numbers of the Condition, so that data can say what a fault, a repair or a scenario changes.
namespace lightoff::furnace {

/// A number of the Condition by the name that files call it by.
struct ConditionPath {
    std::string path;
    std::string unit;   ///< "" for a pure number
    bool in_use = true; ///< false: room for a wire, relay or board input that this furnace does not have
};

/// All of them, in the order of the Condition's field list. What this furnace has by name goes by it:
/// "wiring/harness.limit_out/series_resistance", "relay/board.coil_inducer/lowest_position",
/// "board/pressure_switch/sense_gain".
std::vector<ConditionPath> condition_paths(const Model& model);

/// Place in the Condition's field list. Throws std::invalid_argument for a path that this furnace does not
/// have.
std::uint64_t condition_field(const Model& model, const std::string& path);

/// One number of the Condition by its place in the list; std::invalid_argument past the end of it.
void set_condition_field(Condition& condition, std::uint64_t field, double value);
double condition_value(const Condition& condition, std::uint64_t field);

} // namespace lightoff::furnace
