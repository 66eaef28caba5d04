// SPDX-License-Identifier: MIT
#pragma once
#include "gui/paper/sheets.hpp"
#include "gui/sheet/column.hpp"

namespace lightoff::paper {

/// "reading 4: −0.991 in. w.c. – manometer, tee in the hose, …"; 0: "no reading".
std::string reading_words(const view::Known& known, int number);

/// The line that says what the next entry stands on, with the list of readings when it is open.
void draw_evidence(sheet::Column& column, const view::Known& known, Evidence& evidence);

/// All readings to choose from, or those that were kept and looked at, the newest first, under the field to
/// search by typing. The number picked; 0: none in this frame.
int pick_reading(sheet::Column& column, const view::Known& known, int chosen, ReadingList& list);

} // namespace lightoff::paper
