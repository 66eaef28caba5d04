// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/view/known.hpp"

namespace lightoff::work {

/// The last things that were seen, heard, smelt and felt, newest below: in ink for six seconds, then in
/// pencil.
void draw_last_noticed(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known);

/// All of them, as a list that scrolls, and what can be waited for.
void draw_noticed(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known,
                  view::Wanted& wanted);

} // namespace lightoff::work
