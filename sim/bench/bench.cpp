// SPDX-License-Identifier: MIT
#include "bench/bench.hpp"

#include "bench/effects.hpp"
#include "bench/wires_by_hand.hpp"
#include "electrical/fuse.hpp"
#include "units/fields.hpp"
#include "units/random.hpp"

#include <algorithm>
#include <stdexcept>
#include <vector>

namespace lightoff::bench {
namespace {

constexpr double kLetsGo_k = 8.0; ///< a thing that opens when hot closes again this much cooler
constexpr std::uint64_t kOnsetStream = 2;

double heat_node_k(const World& world, std::uint32_t node) {
    std::uint32_t at = 0;
    double kelvin = 0.0;
    units::for_each_value(world.state.heat.temperature, [&](const double& t) {
        if (at++ == node)
            kelvin = t;
    });
    return kelvin;
}

/// Of an onset whose first tick has come.
bool in_force(const World& world, const Onset& onset) {
    switch (onset.trigger) {
    case OnsetTrigger::from_tick:
        return true;
    case OnsetTrigger::while_hot:
        return heat_node_k(world, onset.node) > onset.level - (onset.in_force != 0 ? kLetsGo_k : 0.0);
    case OnsetTrigger::now_and_then: {
        const auto stretch = static_cast<std::uint64_t>(onset.level);
        return (units::random_bits(world.seed, kOnsetStream, (world.tick - onset.tick) / stretch) & 1U) != 0;
    }
    }
    return false;
}

void follow(World& world, Onset& onset) {
    if (onset.field == kNoField || in_force(world, onset) == (onset.in_force != 0))
        return;
    onset.in_force ^= 1U;
    furnace::set_condition_field(world.condition, onset.field,
                                 onset.in_force != 0 ? onset.value : onset.otherwise);
}

void set_in(World& world) {
    for (std::size_t i = 0; i < world.onset_next; ++i)
        if (world.onsets[i].trigger != OnsetTrigger::from_tick)
            follow(world, world.onsets[i]);
    while (world.onset_next < world.onset_count && world.onsets[world.onset_next].tick <= world.tick)
        follow(world, world.onsets[world.onset_next++]);
}

/// Trips like a 3 A thermal breaker: in half a minute at twice its rating (common practice, no source).
constexpr electrical::FuseParams kSmallBreaker{3.75, 60.0};

void step_small_breaker(const Site& site, World& world, furnace::Workspace& workspace) {
    electrical::Attachment& lead = world.inputs.attachments[instruments::kSmallBreakerSlot];
    if (!is_attached(world.inputs, instruments::kSmallBreakerSlot))
        return;
    const electrical::AcSolution ac =
        furnace::solve_ac(site.model, world.state, world.condition, world.inputs, workspace);
    const double amps =
        units::abs(workspace.network.ac_attachment_a(ac, static_cast<int>(instruments::kSmallBreakerSlot)));
    electrical::FuseState bimetal{world.handiwork.small_breaker_heat};
    const double share = electrical::fuse_step_share(kSmallBreaker, site.model.board.tick_s);
    if (electrical::step_fuse(kSmallBreaker, bimetal, amps, share)) {
        world.handiwork.small_breaker_tripped = 1;
        lead.ohm = static_cast<double>(electrical::kOpenOhm);
    }
    world.handiwork.small_breaker_heat = bimetal.heat;
}

void one_tick(const Site& site, World& world, furnace::Workspace& workspace) {
    if (world.hands.busy != 0 && world.tick >= world.hands.done_tick) {
        take_effect(site, world, workspace, world.hands.action);
        world.hands.last = world.hands.action;
        world.hands.last_tick = world.tick;
        world.hands.action = {};
        world.hands.busy = 0;
    }
    set_in(world);
    furnace::tick(site.model, world.state, world.condition, world.inputs, workspace);
    step_small_breaker(site, world, workspace);
    instruments::step(site.model, world.state, world.condition, world.inputs, world.seed, world.tick,
                      workspace, world.bag);
    instruments::connect(world.bag, world.inputs);
    ++world.tick;
}

} // namespace

Verdict begin(const Site& site, World& world, const Action& action) {
    Verdict verdict = check(site, world, action);
    if (verdict.allowed) {
        world.hands.action = action;
        world.hands.done_tick = world.tick + verdict.duration_ticks;
        world.hands.busy = 1;
    }
    return verdict;
}

void advance(const Site& site, World& world, furnace::Workspace& workspace, std::uint64_t ticks) {
    for (std::uint64_t i = 0; i < ticks; ++i)
        one_tick(site, world, workspace);
}

void finish_action(const Site& site, World& world, furnace::Workspace& workspace) {
    while (world.hands.busy != 0)
        one_tick(site, world, workspace);
}

void set_onsets(World& world, std::span<const Onset> onsets) {
    if (onsets.size() > world.onsets.size())
        throw std::invalid_argument("found " + std::to_string(onsets.size()) + " onsets; allowed: at most " +
                                    std::to_string(kMaxOnsets));
    for (const Onset& onset : onsets)
        if (onset.trigger == OnsetTrigger::now_and_then && !(onset.level >= 1.0 && onset.level <= 1e9))
            throw std::invalid_argument("an onset that comes and goes needs stretches of 1 to 1e9 ticks");
    std::copy(onsets.begin(), onsets.end(), world.onsets.begin());
    const auto end = world.onsets.begin() + static_cast<std::ptrdiff_t>(onsets.size());
    std::stable_sort(world.onsets.begin(), end,
                     [](const Onset& a, const Onset& b) { return a.tick < b.tick; });
    world.onset_count = onsets.size();
    world.onset_next = 0;
}

World fresh_world(const furnace::Model& model, const furnace::Inputs& inputs, double house_k,
                  std::uint64_t seed) {
    World world;
    world.seed = seed;
    world.inputs = inputs;
    world.state = furnace::rest_state(model, inputs, house_k);
    world.bag.co_alarm.setting.on = 1; // worn from the first step into the house
    return world;
}

} // namespace lightoff::bench
