// SPDX-License-Identifier: MIT
#pragma once
#include "gui/view/known.hpp"

namespace lightoff::faces {

/// The tool bag as far as it is perceived: how everything is set and what stands in the windows. What is
/// inside the instruments stays as it is in a new one.
instruments::Bag bag_seen(const bench::Percept& percept);

inline constexpr std::size_t kInstruments = 12;
static_assert(static_cast<std::size_t>(instruments::Instrument::co_alarm) + 1 == kInstruments);

/// Whether it is put to something or shows something.
bool is_in_use(const bench::Percept& percept, instruments::Instrument instrument);

} // namespace lightoff::faces
