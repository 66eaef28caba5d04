// SPDX-License-Identifier: MIT
#pragma once
#include "files/reader.hpp"
#include "furnace/wiring_description.hpp"

namespace lightoff::files {

/// Reads the "wiring" of an equipment file. Names that refer to one another are judged later, by
/// furnace::build_wiring.
furnace::WiringDescription read_wiring(const Object& wiring);

} // namespace lightoff::files
