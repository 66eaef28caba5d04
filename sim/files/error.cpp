// SPDX-License-Identifier: MIT
#include "files/error.hpp"
#include "files/utf8.hpp"
#include <algorithm>
#include <array>
#include <charconv>
#include <vector>

namespace lightoff::files {
namespace {

constexpr std::size_t kLongestQuote = 60;
constexpr std::size_t kLongestNameCompared = 80;

std::string one_line(const Finding& f) {
    std::string line = f.file;
    if (!f.where.empty())
        line += ": " + f.where;
    line += ": found " + f.found;
    if (!f.allowed.empty())
        line += "; allowed " + f.allowed;
    if (!f.advice.empty())
        line += "; " + f.advice;
    return line;
}

std::string escaped(unsigned char byte) {
    constexpr std::string_view digits = "0123456789abcdef";
    return {'\\', 'x', digits[byte >> 4U], digits[byte & 15U]};
}

/// Control characters and bytes that are not UTF-8 made visible.
std::string printable(std::string_view text) {
    std::string out;
    for (std::size_t i = 0; i < text.size();) {
        const std::size_t length = utf8_length(text.substr(i));
        const auto byte = static_cast<unsigned char>(text[i]);
        if (length == 0 || byte < 0x20 || byte == 0x7F)
            out += escaped(byte);
        else
            out.append(text.substr(i, length));
        i += length == 0 ? 1 : length;
    }
    return out;
}

/// Number of single-letter edits between two names (Levenshtein), row by row.
std::size_t edits(std::string_view a, std::string_view b) {
    std::vector<std::size_t> row(b.size() + 1);
    for (std::size_t j = 0; j < row.size(); ++j)
        row[j] = j;
    for (std::size_t i = 0; i < a.size(); ++i) {
        std::size_t diagonal = row[0];
        row[0] = i + 1;
        for (std::size_t j = 0; j < b.size(); ++j) {
            const std::size_t replaced = diagonal + (a[i] == b[j] ? 0 : 1);
            diagonal = row[j + 1];
            row[j + 1] = std::min({replaced, row[j] + 1, diagonal + 1});
        }
    }
    return row.back();
}

template <class... Format>
std::string to_text(double value, Format... format) {
    std::array<char, 40> buffer{};
    const auto result = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, format...);
    return {buffer.data(), result.ptr};
}

} // namespace

Error::Error(Finding f) : std::runtime_error(one_line(f)), finding(std::move(f)) {}

std::string in_quotes(std::string_view text) {
    std::size_t end = std::min(text.size(), kLongestQuote);
    while (end > 0 && end < text.size() && is_utf8_continuation(text[end]))
        --end;
    return '"' + printable(text.substr(0, end)) + (end < text.size() ? "...\"" : "\"");
}

std::string pointer_to(std::string_view parent, std::string_view key) {
    std::string pointer{parent};
    pointer += '/';
    for (const char c : printable(key.substr(0, kLongestNameCompared))) {
        if (c == '~')
            pointer += "~0";
        else if (c == '/')
            pointer += "~1";
        else
            pointer += c;
    }
    return pointer;
}

std::string pointer_to(std::string_view parent, std::size_t index) {
    return std::string{parent} + '/' + std::to_string(index);
}

std::string listed(std::span<const std::string> names) {
    std::string text;
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (i > 0)
            text += i + 1 == names.size() ? " or " : ", ";
        text += names[i];
    }
    return text;
}

std::string nearest(std::string_view name, std::span<const std::string> names) {
    std::string best;
    if (name.size() > kLongestNameCompared)
        return best;
    std::size_t fewest = (name.size() + 2) / 3 + 1;
    for (const auto& candidate : names) {
        if (candidate.size() > kLongestNameCompared)
            continue;
        const std::size_t n = edits(name, candidate);
        if (n < fewest) {
            fewest = n;
            best = candidate;
        }
    }
    return best;
}

std::string number_text(double value) {
    return to_text(value);
}
std::string rounded_text(double value) {
    return to_text(value, std::chars_format::general, 6);
}

} // namespace lightoff::files
