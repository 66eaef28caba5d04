// SPDX-License-Identifier: MIT
#pragma once
#include <fstream>
#include <map>
#include <stdexcept>
#include <string>
#include <vector>

/// Reader of the published tables in tests/reference.
namespace lightoff::test {

using CsvRow = std::map<std::string, std::string>;

/// Splits one line at commas outside double quotes; a doubled quote inside quotes is one quote.
inline std::vector<std::string> split_csv_line(const std::string& line) {
    std::vector<std::string> cells(1);
    bool quoted = false;
    for (std::size_t i = 0; i < line.size(); ++i) {
        const char c = line[i];
        if (c == '"' && quoted && i + 1 < line.size() && line[i + 1] == '"') {
            cells.back() += '"';
            ++i;
        } else if (c == '"') {
            quoted = !quoted;
        } else if (c == ',' && !quoted) {
            cells.emplace_back();
        } else if (c != '\r') {
            cells.back() += c;
        }
    }
    return cells;
}

/// Rows keyed by the header line. Throws std::runtime_error when the file can't be opened, has no rows, or a
/// row has another number of cells than the header.
inline std::vector<CsvRow> read_csv(const std::string& path) {
    std::ifstream file(path);
    if (!file)
        throw std::runtime_error("cannot open " + path);
    std::string line;
    std::getline(file, line);
    const auto header = split_csv_line(line);
    std::vector<CsvRow> rows;
    while (std::getline(file, line)) {
        if (line.empty())
            continue;
        const auto cells = split_csv_line(line);
        if (cells.size() != header.size())
            throw std::runtime_error("ragged row in " + path + ": " + line);
        CsvRow row;
        for (std::size_t i = 0; i < header.size(); ++i)
            row[header[i]] = cells[i];
        rows.push_back(row);
    }
    if (rows.empty())
        throw std::runtime_error("no rows in " + path);
    return rows;
}

/// A file of tests/reference by its name.
inline std::vector<CsvRow> reference_table(const std::string& name) {
    return read_csv(std::string(LIGHTOFF_SOURCE_DIR) + "/tests/reference/" + name);
}

/// The number in column `value` of the row whose column `quantity` is `quantity`.
/// Throws std::runtime_error when there is no such row.
inline double reference_value(const std::string& table, const std::string& quantity) {
    for (const auto& row : reference_table(table))
        if (row.at("quantity") == quantity)
            return std::stod(row.at("value"));
    throw std::runtime_error("no \"" + quantity + "\" in " + table);
}

} // namespace lightoff::test
