// SPDX-License-Identifier: MIT
#pragma once
#include "report/document.hpp"

namespace lightoff::report {

/// One file that needs no other and runs nothing: pictures are inline SVG. Ink on paper or on a dark ground
/// as the reader's system has it; always ink on white when printed.
std::string to_html(const Document& document);

} // namespace lightoff::report
