// SPDX-License-Identifier: MIT
#pragma once
#include "bench/bench.hpp"
#include "evidence/begin.hpp"
#include "evidence/cause.hpp"
#include "evidence/furnace.hpp"
#include "evidence/profile.hpp"
#include "evidence/tests_on_offer.hpp"

#include <algorithm>
#include <array>
#include <compare>
#include <cstddef>
#include <functional>
#include <map>
#include <optional>
#include <utility>
#include <vector>

namespace lightoff::evidence {

/// Severities at which a graded fault is tried; between two neighbours anything counts as possible.
inline constexpr std::array<double, 5> kSeverities{0.0, 0.25, 0.5, 0.75, 1.0};

/// How a hypothesis has its fault.
enum class Way : std::uint8_t {
    always,        ///< from the start
    when_hot,      ///< while its part is hot
    gone_for_now,  ///< now and then: it was there until the visit, and has not come back yet
    not_yet,       ///< now and then: it has not shown yet
    comes_and_goes ///< now and then: each thing seen is what it gives with the fault or without
};

/// A span of severities that a cause may have; a fault that is there or not has both ends the same.
struct Variant {
    std::size_t low = 0; ///< places in Bank::furnaces
    std::size_t high = 0;
    Way way = Way::always;
    std::uint64_t lasts_ticks = ~std::uint64_t{0}; ///< of the visit; then it would have come back
};

/// A hypothesis furnace as the student finds it.
struct Found {
    bench::World world;
    Prediction first;      ///< what is perceived on arrival
    double severity = 0.0; ///< of its fault
};

/// A cause that still fits, by the furnaces that show it.
struct Suspect {
    Cause cause;
    std::size_t low = 0; ///< places in Bank::furnaces
    std::size_t high = 0;
    friend auto operator<=>(const Suspect&, const Suspect&) = default;
};

/// Where tests are weighed against each other none costs less, in work minutes: to choose it, go there and
/// write down what it says takes as long for a glance as for a reading. An assumption of teaching, no source.
inline constexpr double kLeastTestMinutes = 0.5;

/// What a test is worth for a set of suspects.
struct Rating {
    int test = -1; ///< -1: no test tells any two of them apart
    int pairs = 0;
    double minutes = 0.0;
    [[nodiscard]] double pairs_a_minute() const { return pairs / std::max(kLeastTestMinutes, minutes); }
};

/// Told now and then in long work how much of it is done, 0 to 1. It may throw to break the work off; what
/// was asked can then be asked again.
using Pulse = std::function<void(double)>;

/// Every hypothesis furnace of a call at the moment of arrival: each fault of the catalogue at a few
/// severities, and nothing wrong. They have the call's seed, so the same part tolerances and the same
/// instruments. Built once for a scenario and a seed; attempts share it. Its furnaces are run on all cores:
/// none depends on another, so it holds the same bits on any machine.
class Bank {
public:
    /// `real`: what is really wrong, if it is known. It stands in for a severity between two of the grid, so
    /// that the truth is never ruled out; without it the sets come from the grid alone.
    /// `pulse` hears of the building only.
    Bank(const bench::Site& site, const Begin& begin, std::optional<std::vector<RealFault>> real = {},
         const Pulse& pulse = {});

    /// From now on hears of the profiles made; questions need those of the furnaces that still fit, not all.
    void set_pulse(Pulse pulse) { pulse_ = std::move(pulse); }

    [[nodiscard]] const bench::Site& site() const { return *site_; }
    [[nodiscard]] const std::vector<Found>& furnaces() const { return furnaces_; }
    /// Of a single cause (or nothing wrong).
    [[nodiscard]] const std::vector<Variant>& variants_of(Cause cause) const;
    /// Of a fault that may come and go: the worst of it, and the same gone since the visit began. Empty else.
    [[nodiscard]] std::optional<Variant> comes_and_goes(Cause cause) const;
    /// Whether it is known to be what is really wrong.
    [[nodiscard]] bool is_real(Cause cause) const;
    /// Whether what is really wrong is known to come and go.
    [[nodiscard]] bool real_comes_and_goes() const;
    [[nodiscard]] const std::optional<std::vector<RealFault>>& real() const { return real_; }

    /// A furnace whose severity is halfway between those of two with the same fault; kept once worked out.
    std::size_t halfway(Cause cause, std::size_t low, std::size_t high);
    /// A furnace with two faults, as it is found. Not kept.
    [[nodiscard]] Found find_pair(Cause pair, double severity, double severity_with,
                                  furnace::Workspace& workspace) const;

    [[nodiscard]] const std::vector<Test>& tests() const { return tests_; }
    /// What each test would show on a furnace of the bank; worked out when first asked for, then kept.
    const Profile& profile(std::size_t furnace);

    /// Whether a test shows two suspects to be different.
    bool tells_apart(int test, const Suspect& a, const Suspect& b);
    Rating rate(int test, const std::vector<Suspect>& suspects, const Stance& stance);
    /// The test with the most pairs a minute, the first of equals; kept once worked out.
    Rating best_test(const std::vector<Suspect>& suspects, const Stance& stance);
    /// The same, of the pairs with one suspect in them.
    Rating best_test_about(const Suspect& suspect, const std::vector<Suspect>& others, const Stance& stance);

    [[nodiscard]] std::size_t bytes() const;

private:
    using Question = std::pair<std::vector<Suspect>, unsigned>;
    /// A fault that may have gone by itself, and its furnaces by severity.
    struct Gone {
        int fault = 0;
        std::vector<std::size_t> grid;
    };
    std::size_t lay(const std::vector<RealFault>& faults);
    void lay_fault(int fault, std::vector<Gone>& gone);
    void add_gone(const Gone& gone);
    void make_profiles(const std::vector<std::size_t>& furnaces);
    void make_profiles_of(const std::vector<Suspect>& suspects);

    const bench::Site* site_;
    Begin begin_;
    std::optional<std::vector<RealFault>> real_;
    std::vector<Found> furnaces_;
    std::vector<std::vector<Variant>> variants_; ///< by fault + 1
    std::vector<Test> tests_;
    std::vector<Profile> profiles_;
    std::map<Question, Rating> best_;
    std::map<std::pair<std::size_t, std::size_t>, std::size_t> halfway_;
    furnace::Workspace workspace_;
    Pulse pulse_;
    std::size_t profiles_made_ = 0;
};

} // namespace lightoff::evidence
