// SPDX-License-Identifier: MIT
#pragma once
#include "bench/action.hpp"

#include <string>
#include <string_view>
#include <vector>

/// Actions as somebody looks for them: verbs in groups, and the names that make sense for each word.
namespace lightoff::bench {

struct VerbGroup {
    std::string_view title; ///< "Doors and power"
    std::vector<Verb> verbs;
};
/// Every verb stands in one group.
std::vector<VerbGroup> verb_groups();

/// The names that word number `word` (from 0) of a verb may be and that are something to that verb here: only
/// parts that offer the service. What a furnace offers depends on its profile, never on what is wrong with
/// it.
std::vector<Choice> offered(const Site& site, Verb verb, std::size_t word);

/// Whether how long it takes, and how many hands, is each part's own.
bool takes_its_own_time(Verb verb);

/// What a word that is not out of a list may be: "1 s to 24 h, as 30s or 5min"; empty for the others.
std::string_view range_of(Word word);
/// What stands for a word in a pattern: "PART", "SECONDS".
std::string_view placeholder(Word word);
/// "leads POINT POINT"
std::string pattern_of(const VerbSpec& spec);

} // namespace lightoff::bench
