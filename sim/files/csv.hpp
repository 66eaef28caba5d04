// SPDX-License-Identifier: MIT
#pragma once
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace lightoff::files {

/// A table on its way out to a spreadsheet: comma-separated values as in RFC 4180, numbers as the
/// shortest decimals with a point in every locale.
class Csv {
public:
    struct Column {
        std::string name;
        std::string unit = ""; ///< as shown, "in. w.c."; empty for text and pure numbers
    };
    using Cell = std::variant<std::string, double, std::int64_t>;

    /// The first line is the header: `name (unit)`.
    explicit Csv(const std::vector<Column>& columns);

    /// Throws std::invalid_argument if there are more or fewer cells than columns. A number that is not
    /// finite leaves its cell empty. Text that a spreadsheet would run as a formula (it begins with
    /// = + - @, a tab or a carriage return) gets an apostrophe before it.
    void row(const std::vector<Cell>& cells);

    [[nodiscard]] const std::string& text() const { return text_; }
    /// Hands out the text so far and goes on behind it: for tables that are written while they grow.
    std::string take_text() { return std::exchange(text_, {}); }
    /// Replaces the file at `path` in one step; throws Error.
    void save(const std::string& path) const;

private:
    std::size_t columns_;
    std::string text_;
};

} // namespace lightoff::files
