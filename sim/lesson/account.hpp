// SPDX-License-Identifier: MIT
#pragma once
#include "bench/site.hpp"
#include "evidence/cause.hpp"

#include <string>

/// Words that accounts of an attempt are made of.
namespace lightoff::lesson {

/// A number without decimals.
inline std::string whole(double x) {
    return std::to_string(static_cast<long>(x + 0.5));
}

/// One with a single decimal; not negative.
inline std::string tenths(double x) {
    const auto n = static_cast<long>(10.0 * x + 0.5);
    return std::to_string(n / 10) + "." + std::to_string(n % 10);
}

/// "Hose of the pressure switch plugged"; two with "and" between; "nothing".
inline std::string title_of(const bench::Site& site, evidence::Cause cause) {
    if (cause.fault < 0)
        return "nothing";
    const auto title = [&](int fault) {
        return site.catalogue.faults[static_cast<std::size_t>(fault)].title;
    };
    return cause.with < 0 ? title(cause.fault) : title(cause.fault) + "; and " + title(cause.with);
}

} // namespace lightoff::lesson
