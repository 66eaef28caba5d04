// SPDX-License-Identifier: MIT
#pragma once
#include "gui/platform/app.hpp"
#include "gui/platform/platform.hpp"

namespace lightoff::platform {

/// Says what the window misses: on standard error, and to the app. Once, before the first frame.
void greet(const Platform& platform, App& app);

/// One frame of an app in a window: wait, draw, act on its wishes. False when the app wishes to close.
bool run_frame(Platform& platform, App& app);

/// Opens a window and runs the app until it wishes to close. Returns a process exit code; what keeps the
/// window from opening, and typefaces not found, go to standard error as one line each.
int run(const WindowOptions& options, App& app);

} // namespace lightoff::platform
