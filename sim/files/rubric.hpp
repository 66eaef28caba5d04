// SPDX-License-Identifier: MIT
#pragma once
#include "files/reader.hpp"
#include "lesson/rubric.hpp"

namespace lightoff::files {

/// The file school/rubric.json of the data folder. Throws Error.
Document read_rubric_file();

/// Every weight and limit of it. Throws Error, with the place in the file.
lesson::Rubric read_rubric(const Document& document);

} // namespace lightoff::files
