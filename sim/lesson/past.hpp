// SPDX-License-Identifier: MIT
#pragma once
#include "bench/bench.hpp"
#include "lesson/copies.hpp"

#include <cstdint>
#include <functional>
#include <vector>

namespace lightoff::lesson {

/// The past of a World that still runs: copies of it now and then, and what was done in between, so that any
/// moment can be had again with the same bits and cheaply. Who goes back and does another thing there makes
/// the rest of it unsaid (`forget_after`).
///
/// A moment is a tick, and its World is that after what was done in it: an act belongs to the tick in which
/// it was begun.
class Past {
public:
    /// A copy every 10 s at first.
    static constexpr std::uint64_t kCopyTicks = 200;
    static constexpr std::size_t kMostCopies = 360;

    /// Something that was done to the World besides letting time pass.
    using Deed = std::function<void(bench::World&)>;

    /// `site` must outlive it. `begin` is its first moment, before anything is done.
    Past(const bench::Site& site, const bench::World& begin);

    /// Something is done now, in the newest moment: done to `world`, and remembered.
    void act(bench::World& world, Deed deed);
    /// One tick passes: a new one, or one that has been before, with all that was done in it.
    void pass(bench::World& world, furnace::Workspace& workspace);
    /// The World of a moment, the nearest that there is.
    [[nodiscard]] bench::World at(std::uint64_t tick, furnace::Workspace& workspace) const;
    /// Whatever came after that moment has never been.
    void forget_after(std::uint64_t tick);

    /// What was done in a moment, in order.
    [[nodiscard]] std::vector<Deed> deeds_at(std::uint64_t tick) const;

    [[nodiscard]] std::uint64_t first_tick() const { return copies_.first().tick; }
    [[nodiscard]] std::uint64_t newest_tick() const { return newest_; }

private:
    struct Done {
        std::uint64_t tick = 0;
        Deed deed;
    };

    void redo(bench::World& world) const;

    const bench::Site* site_;
    Copies copies_{kCopyTicks, kMostCopies}; ///< before what was done in their tick
    std::vector<Done> done_;
    std::uint64_t newest_ = 0;
};

} // namespace lightoff::lesson
