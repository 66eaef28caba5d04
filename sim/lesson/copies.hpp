// SPDX-License-Identifier: MIT
#pragma once
#include "bench/world.hpp"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace lightoff::lesson {

/// Copies of a running World, one at least every so many ticks, for who wants to go back. There are never
/// more than `most`: then every second one goes, and those to come lie twice as far apart.
class Copies {
public:
    Copies(std::uint64_t every_ticks, std::size_t most) : every_ticks_(every_ticks), most_(most) {}

    /// A later moment of the World than any offered before; kept if it is time for one.
    void offer(const bench::World& world);
    void forget_after(std::uint64_t tick);

    [[nodiscard]] bool empty() const { return kept_.empty(); }
    [[nodiscard]] std::size_t size() const { return kept_.size(); }
    /// There is one.
    [[nodiscard]] const bench::World& first() const { return kept_.front(); }
    /// The last one not after the tick; the first if all are.
    [[nodiscard]] const bench::World& last_until(std::uint64_t tick) const;

private:
    std::uint64_t every_ticks_;
    std::size_t most_;
    std::vector<bench::World> kept_;
};

} // namespace lightoff::lesson
