// SPDX-License-Identifier: MIT
#pragma once
#include "figures/chart.hpp"

#include <string>
#include <vector>

/// The figures of docs/physics.md, by subject. Every curve comes from the functions that the furnace itself
/// uses, every circle from a table of tests/reference or from what the caption names.
namespace lightoff::figures {

struct Drawing {
    std::string name; ///< file name without its folder
    std::string svg;
};

std::vector<Drawing> gas_and_flue_figures();
std::vector<Drawing> air_figures();
std::vector<Drawing> electrical_figures();
std::vector<Drawing> motor_figures();
std::vector<Drawing> igniter_figures();
std::vector<Drawing> call_figures();
std::vector<Drawing> lamp_figures();

} // namespace lightoff::figures
