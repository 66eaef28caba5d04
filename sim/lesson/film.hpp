// SPDX-License-Identifier: MIT
#pragma once
#include "lesson/copies.hpp"
#include "lesson/log.hpp"

#include <cstdint>
#include <vector>

namespace lightoff::lesson {

/// An attempt that can be looked at in any moment: copies of the World now and then, and between two of them
/// the recorded actions run again.
class Film {
public:
    /// Copies kept at the most, some 14 kB each.
    static constexpr std::size_t kMostFrames = 512;

    Film() = default;
    explicit Film(std::vector<Log::Entry> entries) : entries_(std::move(entries)) {}

    /// The World of the moment of arrival, then that of each tick.
    void see(const bench::World& world);

    [[nodiscard]] bool empty() const { return frames_.empty(); }
    [[nodiscard]] std::uint64_t first_tick() const { return frames_.first().tick; }
    [[nodiscard]] std::uint64_t last_tick() const { return last_tick_; }
    [[nodiscard]] std::size_t frames() const { return frames_.size(); }
    /// What was done, in order.
    [[nodiscard]] const std::vector<Log::Entry>& entries() const { return entries_; }

    /// The World at a tick (the nearest that there is), before an action that begins in it. The same bits as
    /// in the attempt.
    [[nodiscard]] bench::World at(const bench::Site& site, std::uint64_t tick,
                                  furnace::Workspace& workspace) const;

private:
    std::vector<Log::Entry> entries_;
    Copies frames_{kMarkTicks, kMostFrames};
    std::uint64_t last_tick_ = 0;
};

} // namespace lightoff::lesson
