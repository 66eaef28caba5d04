// SPDX-License-Identifier: MIT
#include "files/disk.hpp"
#include "files/error.hpp"
#include "files/unit_suffix.hpp"
#include <algorithm>
#include <catch2/catch.hpp>
#include <vector>

using namespace lightoff::files;

namespace {

/// The table of units as the documentation has it, a line for each quantity.
std::string units_in_markdown() {
    std::string text = "| quantity | endings of the key |\n|---|---|\n";
    std::vector<std::string_view> done;
    for (const Unit& unit : units_table()) {
        if (unit.suffix.empty() || std::find(done.begin(), done.end(), unit.quantity) != done.end())
            continue;
        done.push_back(unit.quantity);
        text += "| " + std::string(unit.quantity) + " | ";
        std::string separator;
        for (const Unit& like : units_like(unit)) {
            text += separator + "`_" + std::string(like.suffix) + "` " + std::string(like.name);
            separator = ", ";
        }
        text += " |\n";
    }
    return text;
}

} // namespace

TEST_CASE("docs/data-formats.md lists the units that keys may end in") {
    const std::string document = read_file(LIGHTOFF_SOURCE_DIR "/docs/data-formats.md");
    const std::string table = units_in_markdown();
    INFO("the table should be:\n" << table);
    CHECK((document.find("by a test -->\n" + table + "<!-- end of units -->") != std::string::npos));
}
