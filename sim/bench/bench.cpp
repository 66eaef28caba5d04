// SPDX-License-Identifier: MIT
#include "bench/bench.hpp"

#include "bench/access.hpp"
#include "instruments/voltmeter.hpp"
#include "units/fields.hpp"
#include "units/random.hpp"

#include <algorithm>
#include <stdexcept>
#include <vector>

namespace lightoff::bench {
namespace {

Verdict refuse(std::string reason) {
    return {false, 0, std::move(reason)};
}

Verdict allow(const VerbSpec& spec, const Action& action) {
    const std::int32_t ticks = spec.argument == Argument::seconds ? action.value * 20 : spec.duration_ticks;
    return {true, static_cast<std::uint64_t>(ticks), {}};
}

Verdict check_toggle(const VerbSpec& spec, const Action& action, bool is_on, const std::string& thing,
                     const std::string& on, const std::string& off) {
    if ((action.value != 0) == is_on)
        return refuse("The " + thing + " is already " + (is_on ? on : off) + ".");
    return allow(spec, action);
}

Verdict check_door_switch(const VerbSpec& spec, const Action& action, const furnace::Inputs& in) {
    if (in.blower_door_on != 0)
        return refuse("The door switch is behind the blower compartment door; take that off first.");
    if ((action.value != 0) == (in.door_switch_held != 0))
        return refuse(action.value != 0 ? "You are holding the door switch already."
                                        : "You are not holding the door switch.");
    return allow(spec, action);
}

Verdict check_leads(const furnace::Model& model, const VerbSpec& spec, const Action& action,
                    const furnace::Inputs& in) {
    for (const int node : {static_cast<int>(action.target), static_cast<int>(action.value)}) {
        const std::string reason = why_out_of_reach(model, in, node);
        if (!reason.empty())
            return refuse(reason);
    }
    return allow(spec, action);
}

void apply(World& world, const Action& action) {
    furnace::Inputs& in = world.inputs;
    const auto flag = static_cast<std::uint8_t>(action.value);
    switch (action.verb) {
    case Verb::none:
    case Verb::wait:
        break;
    case Verb::thermostat_set:
        in.set_point_k = 0.001 * static_cast<double>(action.value);
        break;
    case Verb::thermostat_mode:
        in.thermostat_mode = flag != 0 ? control::ThermostatMode::heat : control::ThermostatMode::off;
        break;
    case Verb::thermostat_fan:
        in.thermostat_fan = flag != 0 ? control::FanSwitch::on : control::FanSwitch::automatic;
        break;
    case Verb::breaker:
        in.breaker_on = flag;
        break;
    case Verb::disconnect:
        in.disconnect_on = flag;
        break;
    case Verb::gas_cock:
        in.gas_cock_open = flag;
        break;
    case Verb::burner_door:
        in.burner_door_on = flag;
        break;
    case Verb::blower_door:
        in.blower_door_on = flag;
        in.door_switch_held = 0;
        break;
    case Verb::door_switch:
        in.door_switch_held = flag;
        break;
    case Verb::filter:
        in.filter_in = flag;
        break;
    case Verb::leads:
        in.attachments[0] = {};
        in.attachments[0].a = action.target;
        in.attachments[0].b = action.value;
        in.attachments[0].ohm = instruments::kVoltmeterOhm;
        break;
    case Verb::leads_off:
        in.attachments[0] = {};
        break;
    }
}

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

void one_tick(const Site& site, World& world, furnace::Workspace& workspace) {
    if (world.hands.busy != 0 && world.tick >= world.hands.done_tick) {
        apply(world, world.hands.action);
        world.hands = {};
    }
    set_in(world);
    furnace::tick(site.model, world.state, world.condition, world.inputs, workspace);
    ++world.tick;
}

} // namespace

Verdict check(const Site& site, const World& world, const Action& action) {
    const VerbSpec& spec = spec_of(action.verb);
    const furnace::Inputs& in = world.inputs;
    if (world.hands.busy != 0)
        return refuse("Your hands are busy; wait until that is done.");
    switch (action.verb) {
    case Verb::breaker:
        return check_toggle(spec, action, in.breaker_on != 0, "breaker", "on", "off");
    case Verb::disconnect:
        return check_toggle(spec, action, in.disconnect_on != 0, "disconnect switch", "on", "off");
    case Verb::gas_cock:
        return check_toggle(spec, action, in.gas_cock_open != 0, "gas cock", "open", "shut");
    case Verb::burner_door:
        return check_toggle(spec, action, in.burner_door_on != 0, "burner compartment door", "on", "off");
    case Verb::blower_door:
        return check_toggle(spec, action, in.blower_door_on != 0, "blower compartment door", "on", "off");
    case Verb::filter:
        return check_toggle(spec, action, in.filter_in != 0, "filter", "in its rack", "out");
    case Verb::door_switch:
        return check_door_switch(spec, action, in);
    case Verb::leads:
        return check_leads(site.model, spec, action, in);
    case Verb::leads_off:
        return in.attachments[0].a == in.attachments[0].b
                   ? refuse("The voltmeter's leads are not on anything.")
                   : allow(spec, action);
    case Verb::none:
    case Verb::wait:
    case Verb::thermostat_set:
    case Verb::thermostat_mode:
    case Verb::thermostat_fan:
        break;
    }
    return allow(spec, action);
}

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
    return world;
}

} // namespace lightoff::bench
