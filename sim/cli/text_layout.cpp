// SPDX-License-Identifier: MIT
#include "cli/text_layout.hpp"

#include "files/utf8.hpp"

#include <algorithm>
#include <array>
#include <charconv>

namespace lightoff::cli {
namespace {

/// Bytes of a colour code ("\x1b[1m") at the start of `text`; 0 if none stands there.
std::size_t code_length(std::string_view text) {
    if (text.substr(0, 2) != "\x1b[")
        return 0;
    const std::size_t end = text.find('m');
    return end == std::string_view::npos ? text.size() : end + 1;
}

} // namespace

std::size_t columns_of(std::string_view text) {
    std::size_t columns = 0;
    for (std::size_t i = 0; i < text.size();) {
        const std::size_t code = code_length(text.substr(i));
        if (code == 0 && !files::is_utf8_continuation(text[i]))
            ++columns;
        i += std::max<std::size_t>(code, 1);
    }
    return columns;
}

std::string padded(std::string_view text, std::size_t width) {
    const std::size_t columns = columns_of(text);
    return std::string(text) + std::string(columns < width ? width - columns : 0, ' ');
}

std::string padded_left(std::string_view text, std::size_t width) {
    const std::size_t columns = columns_of(text);
    return std::string(columns < width ? width - columns : 0, ' ') + std::string(text);
}

std::string clipped(std::string_view text, std::size_t width) {
    if (columns_of(text) <= width)
        return std::string(text);
    std::string out;
    for (std::size_t i = 0, columns = 0; i < text.size(); ++i) {
        if (!files::is_utf8_continuation(text[i]) && ++columns >= width)
            break;
        out += text[i];
    }
    return width == 0 ? "" : out + "…";
}

std::vector<std::string> wrapped(std::string_view text, std::size_t width) {
    std::vector<std::string> lines(1);
    for (std::size_t i = 0; i < text.size();) {
        const std::size_t end = std::min(text.find_first_of(" \n", i), text.size());
        const std::string_view word = text.substr(i, end - i);
        std::string& line = lines.back();
        if (!word.empty()) {
            if (!line.empty() && columns_of(line) + 1 + columns_of(word) > width)
                lines.emplace_back(word);
            else
                line += (line.empty() ? "" : " ") + std::string(word);
        }
        if (end < text.size() && text[end] == '\n')
            lines.emplace_back();
        i = end + 1;
    }
    return lines;
}

void write_wrapped(Output& out, std::string_view text, std::size_t indent) {
    for (const std::string& line : wrapped(text, kPageWidth - indent))
        out.line(std::string(indent, ' ') + line);
}

void write_labelled(Output& out, std::string_view label, std::size_t width, std::string_view text) {
    std::string start(label);
    if (columns_of(label) + 1 > width) {
        out.line(label);
        start.clear();
    }
    for (const std::string& line : wrapped(text, kPageWidth - width)) {
        out.line(padded(start, width) + line);
        start.clear();
    }
}

std::vector<std::size_t> Table::widths() const {
    std::vector<std::size_t> widths = least_;
    widths.resize(columns_.size(), 0);
    for (std::size_t c = 0; c < columns_.size(); ++c) {
        widths[c] = std::max(widths[c], columns_of(columns_[c].head));
        for (const auto& row : rows_)
            widths[c] = std::max(widths[c], columns_of(row[c]));
    }
    return widths;
}

void Table::write(Output& out, std::size_t indent) const {
    const std::vector<std::size_t> width = widths();
    const auto line_of = [&](const auto& cell_of) {
        std::string line(indent, ' ');
        for (std::size_t c = 0; c < columns_.size(); ++c) {
            if (c > 0)
                line += "  ";
            line += columns_[c].right ? padded_left(cell_of(c), width[c]) : padded(cell_of(c), width[c]);
        }
        line.erase(line.find_last_not_of(' ') + 1);
        return line;
    };
    if (std::any_of(columns_.begin(), columns_.end(), [](const Column& c) { return !c.head.empty(); }))
        out.line(out.styled(Style::quiet, line_of([&](std::size_t c) { return columns_[c].head; })));
    for (const auto& row : rows_)
        out.line(line_of([&](std::size_t c) { return row[c]; }));
}

std::string fixed(double value, int decimals) {
    std::array<char, 400> buffer{};
    const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value,
                                   std::chars_format::fixed, decimals);
    std::string text(buffer.data(), end.ptr);
    const bool negative = text.front() == '-';
    if (negative)
        text.erase(0, 1);
    const bool zero = text.find_first_not_of("0.") == std::string::npos;
    const std::size_t point = std::min(text.find('.'), text.size());
    if (text.find_first_not_of("0123456789.") == std::string::npos) // not "inf" or "nan"
        for (std::size_t at = point; at > 3; at -= 3)
            text.insert(at - 3, ",");
    return (negative && !zero ? "−" : "") + text;
}

} // namespace lightoff::cli
