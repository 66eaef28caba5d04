// SPDX-License-Identifier: MIT
#pragma once
#include <string>
#include <vector>

namespace lightoff::test {

/// A statement of this program: the name of its case, and its two tags.
struct Statement {
    std::string text;
    std::string group;  ///< "[draft]"
    std::string source; ///< "[common practice, no source]", "[published: NFPA 54-1996 Table XIII]"
};
/// All of them in the order of files and lines.
std::vector<Statement> statements();

/// docs/expectations.md as it should be.
std::string page();

} // namespace lightoff::test
