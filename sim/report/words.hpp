// SPDX-License-Identifier: MIT
#pragma once
#include "files/bundle_loader.hpp"
#include "lesson/debrief.hpp"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

/// What window and files say of a debrief, alike.
namespace lightoff::report {

inline constexpr std::string_view kProof =
    "These actions earn this grade. Replay does not prove who did them.";

/// Minutes and seconds since arrival: "6:40".
std::string clock(const lesson::Story& story, std::uint64_t tick);

/// A number with so many decimals, a true minus sign.
std::string decimal(double value, int decimals);
/// A readout's unit as people write it: "°F".
std::string unit_text(std::string_view unit);
/// "+4.0", "−5.0", "0.0"
std::string points_text(double points);

/// "changed the pressure switch", "moved a wire"
std::string change_text(const bench::Site& site, const lesson::ChangeMade& change);
/// What was said or written down: "Cause named: Hose of the pressure switch plugged".
std::string statement_text(const bench::Site& site, const lesson::Story& story, const bench::Action& action);
/// Titles of causes, the first `most` of them: "Fuse blown; Limit open; and 3 more".
std::string causes_text(const bench::Site& site, const std::vector<evidence::Cause>& causes,
                        std::size_t most);

/// "You knew enough at 6:40 (reading 4). You changed the pressure switch at 5:10."
std::string knew_text(const bench::Site& site, const lesson::Debrief& debrief);
/// What the first poor choice was: "At 0:41 you changed the pressure switch. 21 causes still fitted."
std::string choice_text(const bench::Site& site, const lesson::Debrief& debrief);
/// A test on offer with its places in words: "ohms, cabinet ground screw to rod tip, as it stands".
std::string test_text(std::string_view test);
/// What would have told more: "1.2 min, 3 different answers: volts, board W to common, as it stands."
std::string offer_text(const lesson::BetterTest& better);
/// What each answer to the better test would show: that of most causes whole, of the others what differs from
/// it.
std::vector<std::string> answers_of(const evidence::Offer& offer);
/// Where there is no poor choice.
inline constexpr std::string_view kNoBetter =
    "None. At each of your choices no test on offer would have told much more.";

/// What a step of the staircase came by: a reading, or what was noticed just then.
std::string step_text(const bench::Site& site, const lesson::Debrief& debrief, const evidence::Step& step);

/// The stop-work hazard that ended the attempt; nullptr if none did.
const bench::HazardEvent* frozen_moment(const bench::Site& site, const lesson::Story& story);
/// "slip", "serious", "stop work"
std::string_view gravity_text(bench::Gravity gravity);

/// What reading (from 0) was worth: "splitter"; empty for those after the cause was known.
std::string worth_text(const lesson::Debrief& debrief, std::size_t reading);

} // namespace lightoff::report
