// SPDX-License-Identifier: MIT
#pragma once
#include "furnace/tolerance.hpp"
#include "support/rig.hpp"
#include "units/fields.hpp"

#include <set>
#include <string>

/// The reference furnace with a fault of the catalogue, on its call for heat from cold.
namespace lightoff::test {

inline const faults::Catalogue& catalogue() {
    return reference_site().catalogue;
}

inline const faults::Fault& fault(const std::string& id) {
    const int index = catalogue().find_fault(id);
    if (index < 0)
        throw std::invalid_argument("there is no fault " + id);
    return catalogue().faults[static_cast<std::size_t>(index)];
}

/// The thermostat is turned so high that the call lasts for as long as anything here runs.
inline lesson::Scenario call_with(const std::vector<lesson::FaultUse>& faults) {
    lesson::Scenario scenario = call_for_heat();
    scenario.history = {{100, "thermostat-set 84F"}};
    scenario.faults = faults;
    return scenario;
}

inline Rig broken(const std::string& id, double severity = 1.0, std::uint64_t seed = 0) {
    return Rig(seed, call_with({{id, severity, faults::Trigger::from_start, 0}}));
}

inline void do_service(Rig& rig, const faults::ServiceRef& ref) {
    const furnace::Condition as_built = furnace::as_built(rig.model, rig.world.seed);
    faults::perform(catalogue(), *catalogue().find_service(ref), as_built, rig.world.condition);
    // What came off goes back on.
    const faults::ServiceRef back{ref.part, faults::ServiceKind::put_back};
    if (ref.kind == faults::ServiceKind::take_off && catalogue().find_service(back) != nullptr)
        faults::perform(catalogue(), *catalogue().find_service(back), as_built, rig.world.condition);
}

inline std::uint64_t hash_of(const furnace::Condition& condition) {
    return units::hash_fields(condition);
}

inline std::string name_of(const faults::ServiceRef& ref) {
    return std::string(faults::name_of(ref.kind)) + " " +
           catalogue().parts[static_cast<std::size_t>(ref.part)].id;
}

/// Where a call ends.
struct Outcome {
    std::string stops_in; ///< the first state of the board that is no step of a good call, or the last state
    std::string lamp;
    int count = 0;
};

/// Runs on for `seconds` and says where the furnace stopped. "dark": the board has, or lost, no power.
inline Outcome outcome_after(Rig& rig, double seconds) {
    static const std::set<std::string> kStops{"switch_closed",   "draft_rest",   "trial_failed",
                                              "flame_lost",      "draft_lost",   "limit_open",
                                              "limit_open_idle", "rollout_open", "unexpected_flame",
                                              "board_fault",     "hard_lockout", "held_with_flame"};
    Outcome outcome;
    bool was_powered = false;
    rig.run_until(seconds, [&](const Rig& r) {
        const bool powered = r.world.state.board.powered != 0;
        if (outcome.stops_in.empty() && was_powered && !powered)
            outcome.stops_in = "dark";
        if (outcome.stops_in.empty() && powered && kStops.count(r.board_state()) != 0)
            outcome.stops_in = r.board_state();
        was_powered = was_powered || powered;
        return false;
    });
    const bool powered = rig.world.state.board.powered != 0;
    if (outcome.stops_in.empty())
        outcome.stops_in = powered ? rig.board_state() : "dark";
    outcome.lamp = powered ? rig.lamp() : "dark";
    outcome.count = powered ? rig.lamp_count() : 0;
    return outcome;
}

} // namespace lightoff::test
