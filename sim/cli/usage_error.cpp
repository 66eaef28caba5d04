// SPDX-License-Identifier: MIT
#include "cli/usage_error.hpp"

#include "files/error.hpp"
#include "units/constants.hpp"

#include <charconv>
#include <cmath>

namespace lightoff::cli {
namespace {

constexpr double kLongestRun_s = 7.0 * 86400.0;

[[noreturn]] void refuse(std::string_view what, std::string_view text, const std::string& allowed) {
    throw UsageError(std::string(what) + ": found " + files::in_quotes(text) + "; allowed " + allowed);
}

template <class Number>
bool parse_whole(std::string_view text, Number& number) {
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    return error == std::errc{} && end == text.data() + text.size();
}

} // namespace

double number_in(std::string_view what, std::string_view text) {
    double number = 0.0;
    if (!parse_whole(text, number) || !std::isfinite(number))
        refuse(what, text, "a number such as 3.5");
    return number;
}

std::uint64_t ticks_in(std::string_view what, std::string_view text) {
    const double seconds = number_in(what, text);
    if (seconds < 0.0 || seconds > kLongestRun_s)
        refuse(what, text, "0 to " + files::number_text(kLongestRun_s) + " s");
    const double ticks = std::round(seconds * units::ticks_per_second);
    if (std::abs(ticks - seconds * units::ticks_per_second) > 1e-6)
        refuse(what, text, "whole steps of 0.05 s");
    return static_cast<std::uint64_t>(ticks);
}

std::uint64_t whole_number_in(std::string_view what, std::string_view text) {
    std::uint64_t number = 0;
    if (!parse_whole(text, number))
        refuse(what, text, "a whole number from 0 to 18446744073709551615");
    return number;
}

} // namespace lightoff::cli
