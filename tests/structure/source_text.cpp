// SPDX-License-Identifier: MIT
#include "structure/source_text.hpp"

#include <algorithm>
#include <cctype>
#include <sstream>

namespace structure {
namespace {

/// Index just behind the string or character literal that opens at `at`.
std::size_t literal_end(std::string_view text, std::size_t at) {
    const char quote = text[at];
    const bool raw = quote == '"' && at > 0 && text[at - 1] == 'R';
    if (raw) {
        const std::size_t open = text.find('(', at);
        const std::string close = ")" + std::string(text.substr(at + 1, open - at - 1)) + "\"";
        const std::size_t end = text.find(close, open);
        return end == std::string_view::npos ? text.size() : end + close.size();
    }
    std::size_t end = at + 1;
    while (end < text.size() && text[end] != quote && text[end] != '\n')
        end += text[end] == '\\' ? 2U : 1U;
    return end < text.size() ? end + 1 : text.size();
}

bool part_of_name(char c) {
    return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_' || c == ':';
}

bool opens_literal(std::string_view text, std::size_t at) {
    if (text[at] == '"')
        return true;
    // An apostrophe between digits only groups them: 65'536.
    return text[at] == '\'' && !(at > 0 && std::isalnum(static_cast<unsigned char>(text[at - 1])) != 0);
}

} // namespace

std::string without_comments(std::string_view text) {
    std::string out;
    for (std::size_t at = 0; at < text.size();) {
        std::size_t end = at + 1;
        if (text.substr(at, 2) == "//") {
            end = std::min(text.find('\n', at), text.size());
            out += ' ';
        } else if (text.substr(at, 2) == "/*") {
            end = std::min(text.find("*/", at + 2), text.size() - 2) + 2;
            out += ' ';
        } else {
            if (opens_literal(text, at))
                end = literal_end(text, at);
            out += text.substr(at, end - at);
        }
        at = end;
    }
    return out;
}

std::vector<std::string> includes_of(std::string_view text) {
    std::vector<std::string> found;
    std::istringstream lines(without_comments(text));
    for (std::string line; std::getline(lines, line);) {
        std::istringstream words(line);
        std::string directive;
        words >> directive;
        if (directive == "#") {
            std::string rest;
            words >> rest;
            directive += rest;
        }
        if (directive.rfind("#include", 0) != 0)
            continue;
        const std::size_t open = line.find_first_of("\"<");
        const std::size_t close = line.find_first_of("\">", open + 1);
        // Anything else after #include is a macro: kept whole, so that no rule can take it for a known
        // header.
        found.push_back(open == std::string::npos ? line : line.substr(open, close - open + 1));
    }
    return found;
}

std::vector<std::string> names_in(std::string_view text) {
    const std::string code = without_comments(text);
    std::vector<std::string> found;
    for (std::size_t at = 0; at < code.size();) {
        if (opens_literal(code, at)) {
            at = literal_end(code, at);
        } else if (part_of_name(code[at])) {
            std::size_t end = at;
            while (end < code.size() && part_of_name(code[end]))
                ++end;
            found.push_back(code.substr(at, end - at));
            at = end;
        } else {
            ++at;
        }
    }
    return found;
}

} // namespace structure
