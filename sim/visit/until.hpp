// SPDX-License-Identifier: MIT
#pragma once
#include "visit/play_line.hpp"
#include "visit/visit.hpp"

/// Waiting for something: stops on nothing but what can be perceived.
namespace lightoff::visit {

/// No sound from the furnace.
bool is_quiet(const bench::Percept& percept);

/// Whether what a line waits for has come about.
bool has_come_about(const PlayLine& line, const Visit::Ahead& ahead);

} // namespace lightoff::visit
