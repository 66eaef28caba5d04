// SPDX-License-Identifier: MIT
#pragma once
#include "bench/percept.hpp"

#include <string>

namespace lightoff::bench {

/// What an act that has just taken effect looks like: "Burner door off; burners, igniter and inducer lie
/// open." For a look, what it showed. Empty for waiting, measuring and paper, whose outcome stands elsewhere.
std::string done_in_words(const Site& site, const Percept& percept);

/// The part of a catalogue that an action is about, by its title.
const std::string& part_title(const Site& site, int part);
/// A part's title as it stands within a sentence: "hot-surface igniter"; no title begins with a name.
std::string in_sentence(const faults::Part& part);

} // namespace lightoff::bench
