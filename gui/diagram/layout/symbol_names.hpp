// SPDX-License-Identifier: MIT
#pragma once
#include "gui/diagram/ladder.hpp"
#include "gui/diagram/layout/circuits.hpp"

#include <string>

namespace lightoff::diagram {

/// How the trade draws a part of the wiring.
SymbolKind kind_of(const furnace::Model& model, const Link& link);

/// What stands at its symbol: the name of a part that has one symbol only, else the symbol's own. Coil and
/// contacts of a relay have one name. Empty where the name would say nothing.
std::string name_of(const furnace::Model& model, const Circuits& circuits, const Link& link);

} // namespace lightoff::diagram
