// SPDX-License-Identifier: MIT
#pragma once
#include "files/reader.hpp"
#include "furnace/model.hpp"
#include "units/constants.hpp"

#include <string_view>

namespace lightoff::files {

inline constexpr std::string_view kEquipmentFormat = "lightoff-equipment-1";

/// Builds the furnace that an equipment file describes. Throws Error, with the place in the file, for
/// whatever can't be built. bundle_hash is left 0. Another tick length than the program's own is for the
/// check of the step size: all times and lags of the furnace stay what they are in seconds.
furnace::Model read_equipment(const Document& document, double tick_s = units::seconds_per_tick);

} // namespace lightoff::files
