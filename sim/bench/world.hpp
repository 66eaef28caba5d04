// SPDX-License-Identifier: MIT
#pragma once
#include "bench/action.hpp"
#include "furnace/condition.hpp"
#include "furnace/inputs.hpp"
#include "furnace/state.hpp"

#include <array>
#include <cstdint>
#include <type_traits>

/// The World: everything that changes, in one plain value. A copy of it is a snapshot, a point to
/// go back to, and a hypothesis.
namespace lightoff::bench {

inline constexpr int kMaxOnsets = 32;

/// "From this tick on, this number of the Condition has this value": how a fault sets in.
struct Onset {
    std::uint64_t tick = 0;
    double value = 0.0;
    std::uint64_t field = 0; ///< place in the Condition's field list, counted from 0

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("tick", "", self.tick);
        visit("value", "", self.value);
        visit("field", "", self.field);
    }
};

/// The action in progress.
struct Hands {
    Action action;
    std::uint64_t done_tick = 0; ///< the action takes effect at the start of this tick
    std::uint64_t busy = 0;      ///< 1 while an action is in progress

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("action", self.action);
        visit("done_tick", "", self.done_tick);
        visit("busy", "", self.busy);
    }
    friend bool operator==(const Hands&, const Hands&) = default;
};

struct World {
    std::uint64_t tick = 0;
    std::uint64_t seed = 0;
    furnace::State state;
    furnace::Condition condition;
    furnace::Inputs inputs;
    std::array<Onset, kMaxOnsets> onsets{};
    std::uint64_t onset_count = 0; ///< the first of them that are in use, in order of their ticks
    std::uint64_t onset_next = 0;  ///< the first that has not set in yet
    Hands hands;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("tick", "", self.tick);
        visit("seed", "", self.seed);
        visit("state", self.state);
        visit("condition", self.condition);
        visit("inputs", self.inputs);
        visit("onsets", "", self.onsets);
        visit("onset_count", "", self.onset_count);
        visit("onset_next", "", self.onset_next);
        visit("hands", self.hands);
    }
};

static_assert(std::is_trivially_copyable_v<World>);
static_assert(sizeof(World) <= 16 * 1024, "a World must stay small: it is copied by the thousand");

} // namespace lightoff::bench
