// SPDX-License-Identifier: MIT
#pragma once
#include "gui/desk/program.hpp"
#include "gui/platform/platform.hpp"

#include <string>
#include <vector>

namespace lightoff::desk {

/// Plays a script in a window and saves pictures of the moments that it names. Besides the lines of `play`:
///
///     picture NAME              FOLDER/NAME.png
///     show PAGE                 furnace, diagram, trace, switches, order, bag, notes, suspects, close,
///                               noticed; settings, keys, file, cautions (these last)
///     point X Y                 the pointer to a place of the window, in pixels
///     focus PART                a part's tag; `focus` alone closes it
///     debrief PAGE              of a call that is signed: moment, stairs, better, points, next
///
/// The attempt is kept in the same folder.
///
/// Returns one sentence for each thing that could not be done; stops at the first line that is refused.
std::vector<std::string> save_pictures(platform::WindowOptions options, Program& program,
                                       const std::string& script, const std::string& folder);

} // namespace lightoff::desk
