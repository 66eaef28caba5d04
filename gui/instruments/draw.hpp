// SPDX-License-Identifier: MIT
#pragma once
#include "gui/sheet/column.hpp"
#include "gui/sheet/figures.hpp"

/// The pieces that a face is drawn of.
namespace lightoff::faces {

using canvas::Canvas;
using canvas::Rect;
using sheet::Column;

/// A plate round all that was drawn since `top`: heavy line, one corner cut off.
void draw_plate(const Canvas& canvas, Rect plate);

/// One window.
struct Pane {
    std::string label;    ///< "T1"; empty where the instrument has one window only
    sheet::Figure figure; ///< empty number: the window is off
    std::string in_si;    ///< the same in the other units; empty: none
    std::string mode;     ///< words beside the number: "AC", "range 60.00 V"
    float settled = -1;   ///< 0..1 of the two seconds; below 0: it is read only when kept
    std::string state;    ///< "settling", "reading 4"
    std::string beep;     ///< "beeps", "jumps"
    bool alarm = false;
};
/// The big one, across the column.
void draw_window(Column& column, const Pane& pane);
/// Several smaller ones beside each other.
void draw_small_windows(Column& column, std::span<const Pane> panes);

/// A jack or port with what hangs on it and where that is put; it can be pressed to move it.
struct Connection {
    std::string id;
    std::string letter;    ///< in the ring: "R", "2", "T1"
    std::string words;     ///< "red on board.W"
    bool red = false;      ///< in the colour of a red lead
    bool placed = false;   ///< else its end hangs loose
    bool open = false;     ///< its list of places lies open
    std::string hand = {}; ///< what pressing it does: "pick up"
};
sheet::Touch draw_connection(Column& column, const Connection& connection);

/// A knob with its detents named at both sides, in their order clockwise from below at the left; as buttons
/// where the column is too narrow for that. The index of the detent that was pressed.
std::optional<std::size_t> draw_knob(Column& column, std::span<const std::string> detents, std::size_t at);

/// The gas meter's test dial. `turns` is the place of its hand.
void draw_dial(Column& column, float turns, bool looking);
/// A row of marks of which every one is a tick heard in this second.
void draw_ticks(Column& column, int a_second, float phase);
/// A bubble on a joint, to scale with the ruler beside it.
void draw_bubble(Column& column, float millimetres);
/// The tip of the non-contact tester.
void draw_tip(Column& column, bool glows);

} // namespace lightoff::faces
