// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "broken.hpp"
#include "support/csv.hpp"

// Where every fault stops the furnace. The table was written from the trade, apart from the catalogue and
// before it was run; its last column says where a row comes from.

using namespace lightoff::test;

namespace {

constexpr double kCall_s = 2700.0;

const std::vector<CsvRow>& expected() {
    static const std::vector<CsvRow> rows =
        read_csv(std::string(LIGHTOFF_SOURCE_DIR) + "/tests/faults/expected.csv");
    return rows;
}

/// "4|5" allows both, "*" everything.
bool allows(const std::string& cell, const std::string& found) {
    return cell == "*" || ("|" + cell + "|").find("|" + found + "|") != std::string::npos;
}

} // namespace

TEST_CASE("every fault of the reference furnace has a row that says where it stops") {
    std::set<std::string> rows;
    for (const CsvRow& row : expected()) {
        CHECK(catalogue().find_fault(row.at("fault")) >= 0);
        CHECK_FALSE(row.at("source").empty());
        rows.insert(row.at("fault"));
    }
    for (const auto& fault : catalogue().faults) {
        INFO(fault.id);
        CHECK(rows.count(fault.id) == 1);
    }
}

TEST_CASE("every fault stops the furnace where the trade says, and the lamp says how far it came") {
    for (const CsvRow& row : expected()) {
        Rig rig = broken(row.at("fault"), std::stod(row.at("severity")));
        const Outcome found = outcome_after(rig, kCall_s);
        INFO(row.at("fault") << " at " << row.at("severity") << ": " << found.stops_in << ", " << found.lamp
                             << ", " << found.count << "; expected " << row.at("stops_in") << ", "
                             << row.at("lamp") << ", " << row.at("count") << " (" << row.at("source") << ")");
        CHECK(allows(row.at("stops_in"), found.stops_in));
        CHECK(allows(row.at("lamp"), found.lamp));
        CHECK(allows(row.at("count"), std::to_string(found.count)));
    }
}
