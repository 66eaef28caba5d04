// SPDX-License-Identifier: MIT
#pragma once
#include "files/reader.hpp"
#include "furnace/model.hpp"

#include <string_view>

namespace lightoff::files {

inline constexpr std::string_view kEquipmentFormat = "lightoff-equipment-1";

/// Builds the furnace that an equipment file describes. Throws Error, with the place in the file, for
/// whatever can't be built. bundle_hash is left 0.
furnace::Model read_equipment(const Document& document);

} // namespace lightoff::files
