// SPDX-License-Identifier: MIT
#pragma once
#include "bench/bench.hpp"
#include "evidence/record.hpp"

#include <array>
#include <cstddef>
#include <vector>

namespace lightoff::evidence {

/// Numbers that a window may show, SI; OL counts as infinite. None while low > high.
struct Numbers {
    double low = 1.0;
    double high = 0.0;
    double half_width = 0.0;
    [[nodiscard]] bool none() const { return low > high; }
};
/// What one window shows.
Numbers numbers_of(const instruments::Display& display);

/// What a hypothesis furnace gives where the real one gave an observation.
struct Prediction {
    bool possible = true; ///< false: something that was done could not have been done here
    Sensed sensed{};      ///< senses
    /// A window: what stood in it within kStretchTicks before the reading, SI; OL counts as infinite. Nothing
    /// stood in it while low > high.
    double low = 1.0;
    double high = 0.0;
    double half_width = 0.0;
    std::array<std::uint8_t, bench::kMaxSights> band{}; ///< a look
    std::uint8_t controls = 0;                          ///< a look: bits by faults::Control
    /// An old part on the bench: what the meter shows of it.
    std::array<Numbers, bench::kMaxBenchValues> bench{};
};

/// A hypothesis furnace: a World with one thing wrong that does what the student does.
class Furnace {
public:
    /// `first`: what it gives at the moment of arrival.
    Furnace(const bench::World& arrived, const Prediction& first) : world_(arrived), said_{first} {}

    /// Runs on until it has met `observations` of them; those it has met before cost nothing. What it says
    /// does not depend on how often it is asked.
    void follow(const bench::Site& site, const Record& record, furnace::Workspace& workspace,
                std::size_t observations);

    /// In the order of the observations.
    [[nodiscard]] const std::vector<Prediction>& said() const { return said_; }
    [[nodiscard]] const bench::World& world() const { return world_; }

private:
    static constexpr std::uint64_t kGlanceTicks = 4;
    /// All windows at one moment.
    struct Glance {
        std::uint64_t tick = 0;
        std::array<instruments::Display, instruments::kWindows> window{};
    };
    void glance();
    [[nodiscard]] Prediction predict(const bench::Site& site, const Record& record,
                                     const Observation& observation);
    static_assert(bench::kMaxSights == std::tuple_size_v<decltype(Prediction::band)>);
    void test_old(const bench::Site& site, int part, Prediction& into) const;
    void read_window(const Observation& observation, std::size_t window, Prediction& into) const;

    bench::World world_;
    std::vector<Prediction> said_;
    std::vector<Glance> glances_; ///< of the last stretch, in a ring
    Sensed stretch_{};
    std::size_t next_action_ = 0;
    bool possible_ = true;
};

} // namespace lightoff::evidence
