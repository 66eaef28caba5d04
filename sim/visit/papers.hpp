// SPDX-License-Identifier: MIT
#pragma once
#include "bench/site.hpp"
#include "visit/visit.hpp"

#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <span>
#include <vector>

namespace lightoff::visit {

/// The sheets of the call as they are filled in now: what the statements made so far come to. Readings by
/// their number in the notebook, from 1; 0: none was given.
struct Papers {
    std::array<std::optional<int>, faults::kGroups>
        struck{};                                       ///< blocks of the suspects sheet: by which reading
    std::map<int, int> struck_parts;                    ///< part of the catalogue: reading
    std::map<int, int> tags;                            ///< part: reading that condemns it
    std::optional<int> stops_at;                        ///< steps passed, 0 to 5; 6: runs through
    std::optional<int> cause, cause_behind;             ///< faults of the catalogue
    std::map<bench::ReportLine, int> as_found, as_left; ///< reading
    std::vector<int> found;                             ///< faults reported at a tune-up, in order
};

Papers papers_of(std::span<const Visit::Done> done);

} // namespace lightoff::visit
