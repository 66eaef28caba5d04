// SPDX-License-Identifier: MIT
#pragma once
#include "bench/hazard_table.hpp"
#include "files/reader.hpp"

namespace lightoff::files {

/// The file school/hazards.json of the data folder. Throws Error.
Document read_hazard_file();

/// The table that it holds: every hazard once. Throws Error, with the place in the file.
bench::HazardTable read_hazards(const Document& document);

} // namespace lightoff::files
