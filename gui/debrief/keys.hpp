// SPDX-License-Identifier: MIT
#pragma once
#include "gui/platform/input_queue.hpp"

namespace lightoff::debrief {

/// Keys mean nothing to the page while somebody types.
inline bool page_key(platform::Key key) {
    return !ImGui::GetIO().WantTextInput && platform::key_pressed(key);
}

} // namespace lightoff::debrief
