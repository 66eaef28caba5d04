// SPDX-License-Identifier: MIT
#pragma once
#include "bench/site.hpp"
#include "bench/world.hpp"
#include "furnace/condition_paths.hpp"
#include "furnace/furnace.hpp"

#include <cstdint>
#include <span>
#include <string>
#include <vector>

/// The one way in which anything is done: check, begin, advance. Window, scripts and tests share it.
namespace lightoff::bench {

/// May it be done, and how long does it take; if not, why not.
struct Verdict {
    bool allowed = false;
    std::uint64_t duration_ticks = 0;
    std::string reason; ///< for people; empty when allowed
};

/// Pure. Looks only at what the person doing it can know (doors, switches, what is in the hands), so two
/// Worlds that are perceived alike give the same verdict.
Verdict check(const Site& site, const World& world, const Action& action);

/// Checks, and if allowed sets the action going: it takes effect once its time has passed, while the
/// furnace runs on. Nothing changes otherwise.
Verdict begin(const Site& site, World& world, const Action& action);

/// Lets `ticks` of 50 ms pass. The same bits however it is cut.
void advance(const Site& site, World& world, furnace::Workspace& workspace, std::uint64_t ticks);

/// Lets time pass until the hands are free.
void finish_action(const Site& site, World& world, furnace::Workspace& workspace);

/// Puts the onsets into the World in the order of their ticks. Throws std::invalid_argument for too many
/// or for a field that the Condition does not have.
void set_onsets(World& world, std::span<const Onset> onsets);

/// A World at rest, as built: nothing has happened yet.
World fresh_world(const furnace::Model& model, const furnace::Inputs& inputs, double house_k,
                  std::uint64_t seed);

} // namespace lightoff::bench
