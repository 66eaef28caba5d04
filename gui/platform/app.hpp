// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"

#include <string>
#include <vector>

namespace lightoff::platform {

/// What a frame is told. Wall time comes as a number, so that tests can make it up.
struct FrameInput {
    double wall_delta_s = 0; // since the last frame, at most 0.25
    ImVec2 size{0, 0};       // of the window, pixels
    bool focused = true;
    canvas::Canvas canvas; // to draw with; `list` is the background's
};

/// What the app would like of its window; the shell acts on it between frames.
struct Wishes {
    canvas::ThemeId theme = canvas::ThemeId::Paper;
    float text_percent = 100;   // 80..200
    double next_frame_in_s = 0; // if no input comes: 0 keeps running, a big number sleeps
    bool close = false;
};

/// A program in a window. The shell calls `frame` between ImGui::NewFrame and ImGui::Render.
class App {
public:
    virtual ~App() = default;
    virtual void frame(const FrameInput& input) = 0;
    virtual Wishes wishes() const = 0;
    /// The window's cross was pressed. Answer by wishing to close, now or after a question.
    virtual void close_asked() = 0;
    /// What the window misses, one sentence each; before the first frame, and only if there is something.
    virtual void told(const std::vector<std::string>& /*messages*/) {}
};

} // namespace lightoff::platform
