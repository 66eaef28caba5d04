// SPDX-License-Identifier: MIT
#include "files/json_text.hpp"
#include "files/error.hpp"
#include "files/utf8.hpp"
#include <charconv>
#include <nlohmann/json.hpp>
#include <optional>
#include <vector>

namespace lightoff::files {
namespace {

/// "digit" of "... expected digit; last read: '1.x'": the rest may hold half a character.
std::string expectation(const std::string& what) {
    constexpr std::string_view mark = "expected ";
    const auto at = what.find(mark);
    if (at == std::string::npos)
        return "valid JSON";
    const std::string text = what.substr(at + mark.size());
    return text.substr(0, text.find("; last read"));
}

/// Builds the value from the parser's events and refuses what the library would let pass.
class Builder {
public:
    Builder(std::string_view text, const std::string& file) : text_(text), file_(file) {}

    Json root;

    bool null() { return add(nullptr); }
    bool boolean(bool value) { return add(value); }
    bool number_integer(Json::number_integer_t value) { return add(value); }
    bool number_unsigned(Json::number_unsigned_t value) { return add(value); }
    bool string(std::string& value) { return add(std::move(value)); }
    bool binary(Json::binary_t&) { return false; } // no such thing in text

    bool number_float(double, const std::string& token) {
        // The library reads by strtod and has put the locale's decimal point into the token.
        std::string digits = token;
        for (char& c : digits)
            if ((c < '0' || c > '9') && c != '-' && c != '+' && c != 'e' && c != 'E')
                c = '.';
        double value = 0.0;
        const auto result = std::from_chars(digits.data(), digits.data() + digits.size(), value);
        if (result.ec != std::errc{})
            refuse(next_pointer(), digits, "a number that a double can hold");
        return add(value);
    }

    bool start_object(std::size_t) { return open(Json::object()); }
    bool start_array(std::size_t) { return open(Json::array()); }
    bool end_object() { return close(); }
    bool end_array() { return close(); }

    bool key(std::string& name) {
        if (open_.back().value->contains(name))
            refuse(pointer_to(pointer(), name), "this key twice", "each key once in an object");
        open_.back().key = name;
        return true;
    }

    bool parse_error(std::size_t position, const std::string& token, const Json::exception& error) {
        const std::string what = error.what();
        const std::string where = line_and_column(text_, position > 0 ? position - 1 : 0);
        if (what.find("out_of_range") != std::string::npos)
            refuse(next_pointer(), token, "a number that a double can hold");
        if (position > text_.size())
            refuse(where, "the end of the file", "the rest of the JSON text", "the file looks cut off");
        refuse(where, in_quotes(token), expectation(what));
    }

private:
    struct Level {
        Json* value;
        std::string key; ///< of the member being read, if an object
    };

    [[nodiscard]] std::string pointer() const {
        std::string path;
        for (std::size_t i = 0; i + 1 < open_.size(); ++i)
            path = step(path, open_[i], 1);
        return path;
    }
    /// Pointer of the value that comes next.
    [[nodiscard]] std::string next_pointer() const {
        return open_.empty() ? std::string{} : step(pointer(), open_.back(), 0);
    }
    static std::string step(const std::string& path, const Level& level, std::size_t back) {
        return level.value->is_array() ? pointer_to(path, level.value->size() - back)
                                       : pointer_to(path, level.key);
    }

    [[noreturn]] void refuse(std::string where, std::string found, std::string allowed,
                             std::string advice = "") const {
        throw Error({file_, std::move(where), std::move(found), std::move(allowed), std::move(advice)});
    }

    Json* place(Json&& value) {
        if (open_.empty())
            return &(root = std::move(value));
        Level& level = open_.back();
        if (!level.value->is_array())
            return &((*level.value)[level.key] = std::move(value));
        level.value->push_back(std::move(value));
        return &level.value->back();
    }
    template <class Value>
    bool add(Value&& value) {
        place(Json(std::forward<Value>(value)));
        return true;
    }
    bool open(Json&& value) {
        if (open_.size() == kDeepestNesting)
            refuse(next_pointer(), "objects and arrays nested deeper than that",
                   std::to_string(kDeepestNesting) + " levels");
        Json* const placed = place(std::move(value));
        open_.push_back({placed, {}});
        return true;
    }
    bool close() {
        open_.pop_back();
        return true;
    }

    std::string_view text_;
    const std::string& file_;
    std::vector<Level> open_;
};

} // namespace

void check_text(std::string_view text, const std::string& file) {
    const auto hex = [&](std::size_t at) {
        constexpr std::string_view digits = "0123456789ABCDEF";
        const auto value = static_cast<unsigned char>(text[at]);
        return std::string{digits[value >> 4U], digits[value & 15U]};
    };
    if (const std::size_t bad = find_bad_utf8(text); bad != std::string_view::npos)
        throw Error({file, line_and_column(text, bad),
                     "byte " + hex(bad) + " (hexadecimal), which is not UTF-8", "UTF-8 text",
                     "save the file as UTF-8"});
    if (const std::size_t bad = find_control_character(text); bad != std::string_view::npos)
        throw Error({file, line_and_column(text, bad), "control character " + hex(bad) + " (hexadecimal)",
                     "text, tabs and line ends"});
}

Json parse_json(std::string_view text, const std::string& file) {
    check_text(text, file);
    Builder builder(text, file);
    Json::sax_parse(text.begin(), text.end(), &builder);
    return std::move(builder.root);
}

std::string canonical_text(const Json& value) {
    return value.dump();
}

std::string describe(const Json& value) {
    switch (value.type()) {
    case Json::value_t::object:
        return "an object";
    case Json::value_t::array:
        return "an array of " + std::to_string(value.size());
    case Json::value_t::string:
        return in_quotes(value.get_ref<const std::string&>());
    case Json::value_t::number_float:
        return number_text(value.get<double>());
    default:
        return value.dump();
    }
}

} // namespace lightoff::files
