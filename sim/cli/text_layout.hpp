// SPDX-License-Identifier: MIT
#pragma once
#include "cli/output.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

/// Text in columns, for people, 80 wide.
namespace lightoff::cli {

inline constexpr std::size_t kPageWidth = 80;

/// Columns that UTF-8 text takes on a terminal: its characters, colour codes not counted. (Nothing here
/// prints characters of double width.)
std::size_t columns_of(std::string_view text);

/// `text` filled up with spaces to `width` columns on its right, or on its left.
std::string padded(std::string_view text, std::size_t width);
std::string padded_left(std::string_view text, std::size_t width);

/// The first `width` columns of plain text; a cut is marked by "…".
std::string clipped(std::string_view text, std::size_t width);

/// `text` broken at spaces into lines of at most `width` columns; a longer word stands alone.
std::vector<std::string> wrapped(std::string_view text, std::size_t width);

void write_wrapped(Output& out, std::string_view text, std::size_t indent = 0);

/// A label in a column of `width`, then `text` wrapped beside it; a label that is too long gets a line of its
/// own.
void write_labelled(Output& out, std::string_view label, std::size_t width, std::string_view text);

/// Rows in columns as wide as they need; numbers to the right, words to the left.
class Table {
public:
    struct Column {
        std::string head;
        bool right = false;
    };
    explicit Table(std::vector<Column> columns) : columns_(std::move(columns)) {}
    void row(std::vector<std::string> cells) { rows_.push_back(std::move(cells)); }
    /// Widths that several tables shall share.
    void at_least(const std::vector<std::size_t>& widths) { least_ = widths; }
    [[nodiscard]] std::vector<std::size_t> widths() const;
    /// The head only if one of its cells is not empty.
    void write(Output& out, std::size_t indent = 2) const;

private:
    std::vector<Column> columns_;
    std::vector<std::vector<std::string>> rows_;
    std::vector<std::size_t> least_;
};

/// A number with a fixed count of decimals and a comma between thousands; -0.00 is 0.00.
std::string fixed(double value, int decimals);

} // namespace lightoff::cli
