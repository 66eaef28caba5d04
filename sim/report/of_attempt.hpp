// SPDX-License-Identifier: MIT
#pragma once
#include "report/document.hpp"

#include <string>

namespace lightoff::report {

/// The report of an attempt's file. Throws files::Error if the file can't be read.
Document document_of(const files::LoadedBundle& bundle, const std::string& file,
                     const lesson::Debrief& debrief);

} // namespace lightoff::report
