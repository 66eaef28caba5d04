// SPDX-License-Identifier: MIT
#pragma once
#include "bench/percept.hpp"

#include <optional>

namespace lightoff::bench {

/// The act that undoes `done`, physically: a door that came off goes on again. `before` is what was perceived
/// when it was begun. None for what can't be undone (cleaning, a new part) and for what changes nothing
/// (looking, waiting).
std::optional<Action> inverse_of(const Action& done, const Percept& before);

} // namespace lightoff::bench
