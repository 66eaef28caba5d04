// SPDX-License-Identifier: MIT
#pragma once
#include "gui/view/known.hpp"

#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace lightoff::view {

/// For people: "Pressure switch", "board.R", "manifold tap of the gas valve".
std::string title_of(const bench::Site& site, const Thing& thing);

/// What meets the eye of a part's dirt and wear, and of what was left on it, without looking closely: "dusty,
/// a little rust". Empty if nothing does, and for what is no part.
std::string worn_words(const bench::Percept& percept, const Thing& thing);

/// The eight slots of a thing's tag, in their fixed order.
enum class Slot : std::uint8_t { look, hear, measure, undo, put_back, clean, adjust, replace };
inline constexpr std::size_t kSlots = 8;
std::string_view name_of(Slot slot);

/// Something that a slot of a thing's tag offers.
struct SlotChoice {
    std::string line;                       ///< as it would be typed
    std::string words;                      ///< for people: "unplug"
    bool allowed = true;                    ///< now
    std::string why_not;                    ///< else; empty while allowed
    double seconds = 0.0;                   ///< that it takes; 0: none worth telling
    Wanted::Lead lead = Wanted::Lead::none; ///< instead of a line: a lead for this point
};
struct SlotFill {
    std::vector<SlotChoice> choices;
    std::string why_empty; ///< one sentence where there is nothing to choose
};

/// All eight, for one thing. What is offered depends on the furnace's profile and on access alone, never on
/// what is wrong.
std::array<SlotFill, kSlots> slots_of(const Known& known, const Thing& thing);

} // namespace lightoff::view
