// SPDX-License-Identifier: MIT
#pragma once
#include "bench/action.hpp"
#include "bench/handiwork.hpp"
#include "bench/old_part.hpp"
#include "furnace/condition.hpp"
#include "furnace/inputs.hpp"
#include "furnace/state.hpp"
#include "instruments/bag.hpp"

#include <array>
#include <cstdint>
#include <type_traits>

/// The World: everything that changes, in one plain value. A copy of it is a snapshot, a point to
/// go back to, and a hypothesis.
namespace lightoff::bench {

inline constexpr int kMaxOnsets = 32;

/// When an onset is in force.
enum class OnsetTrigger : std::uint32_t {
    from_tick,   ///< from `tick` on
    while_hot,   ///< from `tick` on, while heat node `node` is above `level` K; lets go 8 K below it
    now_and_then ///< from `tick` on, comes and goes: each stretch of `level` ticks is drawn from the seed
};

/// A number of the Condition that changes by itself: how a fault sets in. While in force the number is
/// `value`, else `otherwise`. A repair of the number removes its onset (field kNoField).
struct Onset {
    std::uint64_t tick = 0;
    double value = 0.0;
    double otherwise = 0.0; ///< while_hot and now_and_then: the number while not in force
    double level = 0.0;
    std::uint32_t field = 0; ///< place in the Condition's field list, counted from 0
    OnsetTrigger trigger = OnsetTrigger::from_tick;
    std::uint32_t node = 0; ///< heat::Nodes in the order of its field list
    std::uint32_t in_force = 0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("tick", "", self.tick);
        visit("value", "", self.value);
        visit("otherwise", "", self.otherwise);
        visit("level", "", self.level);
        visit("field", "", self.field);
        visit("trigger", "", self.trigger);
        visit("node", "", self.node);
        visit("in_force", "", self.in_force);
    }
};

inline constexpr std::uint32_t kNoField = 0xFFFFFFFF;

/// The action in progress, and the one before it.
struct Hands {
    Action action;
    Action last;                 ///< that took effect last
    std::uint64_t done_tick = 0; ///< the action takes effect at the start of this tick
    std::uint64_t last_tick = 0; ///< in which `last` took effect
    std::uint64_t busy = 0;      ///< 1 while an action is in progress

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("action", self.action);
        visit("last", self.last);
        visit("done_tick", "", self.done_tick);
        visit("last_tick", "", self.last_tick);
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
    instruments::Bag bag;
    Handiwork handiwork;
    std::array<Onset, kMaxOnsets> onsets{};
    std::uint64_t onset_count = 0; ///< the first of them that are in use, in order of their ticks
    std::uint64_t onset_next = 0;  ///< all before it have set in for good
    Hands hands;
    OldParts old_parts;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        fields_at_work(self, visit);
        visit("old_parts", self.old_parts);
    }
    /// All but what lies on the bench and does nothing any more.
    template <class Self, class Visit>
    static void fields_at_work(Self& self, Visit& visit) {
        visit("tick", "", self.tick);
        visit("seed", "", self.seed);
        visit("state", self.state);
        visit("condition", self.condition);
        visit("inputs", self.inputs);
        visit("bag", self.bag);
        visit("handiwork", self.handiwork);
        visit("onsets", "", self.onsets);
        visit("onset_count", "", self.onset_count);
        visit("onset_next", "", self.onset_next);
        visit("hands", self.hands);
    }
};

static_assert(std::is_trivially_copyable_v<World>);
static_assert(sizeof(World) <= 16 * 1024, "a World must stay small: it is copied by the thousand");

} // namespace lightoff::bench
