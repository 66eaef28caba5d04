// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/instruments/bag_seen.hpp"
#include "gui/view/known.hpp"

#include <array>
#include <functional>
#include <string>

/// Faces of the instruments: what stands in their windows, where they are put, and all that hands can do to
/// them.
namespace lightoff::faces {

/// What the rack of instruments remembers from frame to frame.
struct BagView {
    std::array<bool, kInstruments> out{};    ///< taken out of the bag, though it measures nothing yet
    std::array<bool, kInstruments> put_by{}; ///< in use, but its face is folded
    std::string open;   ///< whose list of places lies open: "red", "black", or the name of a verb
    std::string search; ///< typed into it
    // The page says these: the lead in the hand, and a lead that is put down while the other is still
    // missing.
    view::Wanted::Lead in_hand = view::Wanted::Lead::none;
    int red_waits = -1, black_waits = -1;                      ///< node; -1: it does not wait
    view::Wanted::Lead was_in_hand = view::Wanted::Lead::none; ///< in the last frame
};

/// The rack: the faces of the instruments in use one below the other, then those in the bag, to be taken
/// out.
void draw_bag(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known, BagView& view,
              view::Wanted& wanted);

/// What the instruments in use show, one after the other, as many as fit; the multimeter also while a lead
/// of it is in the hand: "Multimeter 27.11 V  ·  Manometer −0.991 in. w.c.". Empty: none is in use.
std::string numbers_in_short(const view::Known& known, view::Wanted::Lead in_hand,
                             const std::function<bool(const std::string&)>& fits);

/// "expect multimeter ": to be finished by typing. Of the instrument in use that was put there last, as far
/// as its number tells; of none if none is in use.
std::string expect_line(const view::Known& known);
/// The same of a window.
std::string expect_line(const view::Known& known, std::size_t window);

} // namespace lightoff::faces
