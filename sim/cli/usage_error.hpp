// SPDX-License-Identifier: MIT
#pragma once
#include <cstdint>
#include <stdexcept>
#include <string>
#include <string_view>

namespace lightoff::cli {

/// What was typed can't be used. what() is one line.
class UsageError : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

/// A finite decimal number, the whole of `text`; throws UsageError that begins with `what`. The same in every
/// locale.
double number_in(std::string_view what, std::string_view text);

/// Seconds, 0 to a week, as whole ticks of 50 ms.
std::uint64_t ticks_in(std::string_view what, std::string_view text);

/// A whole number from 0 to 2^64 - 1.
std::uint64_t whole_number_in(std::string_view what, std::string_view text);

} // namespace lightoff::cli
