// SPDX-License-Identifier: MIT
#pragma once
#include "lesson/review.hpp"
#include "lesson/rubric.hpp"

#include <cstdint>
#include <vector>

/// Whether a part may be changed on what is known. Computed like proof: from what the hypothesis furnaces
/// give, not from what is really wrong.
namespace lightoff::lesson {

/// What a change stands on.
enum class Ground : std::uint8_t {
    none,
    cheap,    ///< a listed consumable, and what would spoil the new one is cleared
    cornered, ///< every other cause is ruled out, or no test cheaper than the change separates them
    condemned ///< readings at the part itself that nothing but a fault of this part gives; so for a board
              ///< inputs right, output wrong
};

class Justification {
public:
    Justification(const bench::Site& site, const Rubric& rubric, Review& review)
        : site_(&site), rubric_(&rubric), review_(&review), evidence_(&*review.investigation) {}

    /// A safety device is never cornered alone: it must have failed a test of its own, too.
    Ground ground_of(const ChangeMade& change);
    /// Of a safety device: every cause that would have worn it out is found, ruled out or put right. True for
    /// every other part.
    bool asked_why(const ChangeMade& change);
    bool is_justified(const ChangeMade& change) {
        return ground_of(change) != Ground::none && asked_why(change);
    }

    /// One repair does for every cause that still fits.
    bool does_for_all(const ChangeMade& change);
    /// Whether a reading was taken at the part (for a hose, at its tee) and a furnace with nothing wrong does
    /// not give it.
    bool failed_at(const faults::Part& part, int reading);

private:
    [[nodiscard]] bool repairs(const ChangeMade& change, int fault) const;
    [[nodiscard]] bool is_inside(const ChangeMade& change, const evidence::Cause& cause) const;
    [[nodiscard]] bool was_repaired_before(int fault, std::uint64_t tick) const;
    [[nodiscard]] bool is_of(const faults::Part& part, const bench::Reading& reading) const;
    [[nodiscard]] std::vector<int> own_readings(const ChangeMade& change) const;
    [[nodiscard]] std::vector<int> spoilers(const ChangeMade& change) const;
    bool has_failed(const ChangeMade& change);
    bool is_condemned(const ChangeMade& change);
    bool no_cheaper_test(const ChangeMade& change);
    bool is_cheap(const ChangeMade& change);

    const bench::Site* site_;
    const Rubric* rubric_;
    Review* review_;
    evidence::Investigation* evidence_;
};

} // namespace lightoff::lesson
