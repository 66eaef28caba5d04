// SPDX-License-Identifier: MIT
#pragma once
#include "bench/world.hpp"
#include "furnace/model.hpp"

#include <cstddef>
#include <string_view>
#include <vector>

/// Wires, plugs and capacitors as hands find them.
namespace lightoff::bench {

/// Whether something is connected in a slot of the attachments.
bool is_attached(const furnace::Inputs& inputs, std::size_t slot);

/// Slot of the attachment that holds a lifted wire on another terminal; 0 if it hangs free.
std::size_t landing_of(const World& world, int lug);
/// A slot for one more; 0 if there is none.
std::size_t free_landing(const World& world);

/// Whether every terminal of a plug is apart.
bool is_unplugged(const furnace::Model& model, const World& world, std::string_view plug);

/// Elements that are capacitors big enough to hurt: 1 uF or more. kMaxCapacitors at most.
std::vector<int> run_capacitors(const furnace::Model& model);
/// Which of them a part is ("blower_capacitor"); -1 if it is none.
int capacitor_of(const furnace::Model& model, std::string_view part);

/// Volts DC, red against black, that a capacitor taken out of circuit holds between two places; 0 if none
/// lies there.
double held_v(const furnace::Model& model, const World& world, int red, int black);

} // namespace lightoff::bench
