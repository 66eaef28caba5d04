// SPDX-License-Identifier: MIT
#pragma once
#include <span>
#include <stdexcept>
#include <string>
#include <string_view>

namespace lightoff::files {

/// What is wrong with a file: where, what stands there, what may stand there.
struct Finding {
    std::string file;  ///< as the user named it
    std::string where; ///< a JSON pointer (RFC 6901), "line:column", "line 7", or empty for the whole file
    std::string found; ///< what stands there
    std::string allowed = {}; ///< what may stand there; may be empty
    std::string advice = {};  ///< what to do; may be empty
};

/// Thrown for every file that can't be used. what() is one line:
///     scenarios/equipment/x.json: /gas/orifices/0/diameter_in: found -0.08; allowed 0.01 to 0.3
class Error : public std::runtime_error {
public:
    explicit Error(Finding finding);
    Finding finding;
};

/// `text` in double quotes with control characters escaped, cut after 60 bytes (never inside a character).
/// Bytes that are not UTF-8 come out as \xNN, so that a message is always one line of valid text.
std::string in_quotes(std::string_view text);

/// One more step of a JSON pointer: "~" and "/" in `key` are escaped.
std::string pointer_to(std::string_view parent, std::string_view key);
std::string pointer_to(std::string_view parent, std::size_t index);

/// "a, b or c".
std::string listed(std::span<const std::string> names);

/// The name most like `name`, or empty if none is close: fewer edits (insert, drop, replace a letter)
/// than a third of its length, rounded up.
std::string nearest(std::string_view name, std::span<const std::string> names);

/// The shortest decimal that reads back as `value`; the same in every locale.
std::string number_text(double value);
/// `value` to six significant digits, for limits that were converted from another unit.
std::string rounded_text(double value);

} // namespace lightoff::files
