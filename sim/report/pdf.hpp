// SPDX-License-Identifier: MIT
#pragma once
#include "report/document.hpp"

namespace lightoff::report {

/// The same document on A4, as the bytes of a PDF file. Letters are those of Western European languages and
/// the trade's signs; another one becomes a question mark. The same document gives the same bytes. Throws
/// std::runtime_error if the library fails (out of memory).
std::string to_pdf(const Document& document);

/// UTF-8 text in the encoding of the PDF's own fonts (Windows-1252), signs without a place there by the
/// nearest that has one.
std::string in_western(std::string_view utf8);

} // namespace lightoff::report
