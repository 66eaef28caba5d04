// SPDX-License-Identifier: MIT
#include "files/csv.hpp"
#include "files/disk.hpp"
#include "files/error.hpp"
#include <cmath>
#include <stdexcept>

namespace lightoff::files {
namespace {

std::string field(std::string_view text) {
    if (text.find_first_of(",\"\r\n") == std::string_view::npos)
        return std::string(text);
    std::string out = "\"";
    for (const char c : text)
        out.append(c == '"' ? 2 : 1, c);
    return out + '"';
}

std::string cell_text(const std::string& text) {
    const bool formula =
        !text.empty() && std::string_view("=+-@\t\r").find(text.front()) != std::string_view::npos;
    return formula ? "'" + text : text;
}
std::string cell_text(double number) {
    return std::isfinite(number) ? number_text(number) : std::string{};
}
std::string cell_text(std::int64_t number) {
    return std::to_string(number);
}

void add_line(std::string& text, const std::vector<std::string>& fields) {
    for (std::size_t i = 0; i < fields.size(); ++i) {
        if (i > 0)
            text += ',';
        text += field(fields[i]);
    }
    text += "\r\n";
}

} // namespace

Csv::Csv(const std::vector<Column>& columns) : columns_(columns.size()) {
    std::vector<std::string> names;
    for (const Column& column : columns)
        names.push_back(column.unit.empty() ? column.name : column.name + " (" + column.unit + ")");
    add_line(text_, names);
}

void Csv::row(const std::vector<Cell>& cells) {
    if (cells.size() != columns_)
        throw std::invalid_argument("a row of " + std::to_string(cells.size()) + " cells in a table of " +
                                    std::to_string(columns_) + " columns");
    std::vector<std::string> fields;
    for (const Cell& cell : cells)
        fields.push_back(std::visit([](const auto& value) { return cell_text(value); }, cell));
    add_line(text_, fields);
}

void Csv::save(const std::string& path) const {
    replace_file(path, text_);
}

} // namespace lightoff::files
