// SPDX-License-Identifier: MIT
#pragma once
#include "bench/readouts.hpp"
#include "cli/json_output.hpp"
#include "cli/output.hpp"

#include <string>
#include <vector>

/// Readouts for people and for programs.
namespace lightoff::cli {

/// The unit as it is printed ("°F"), as a key ends in it ("F"), and how many decimals people want of it.
struct ReadoutUnit {
    std::string_view printed;
    std::string_view suffix;
    int decimals = 2;
};

/// Throws std::invalid_argument for a unit that is not in the table.
const ReadoutUnit& readout_unit(const std::string& unit);

/// "flame_current_uA": letters and digits of the name, and the unit.
std::string readout_key(const bench::Readout& readout);

/// {"draft": {"suction_at_the_port_inwc": 0.71, ...}, ...}
OrderedJson readouts_json(const std::vector<bench::Readout>& readouts);

void write_readouts(Output& out, const std::vector<bench::Readout>& readouts);

} // namespace lightoff::cli
