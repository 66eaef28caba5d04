// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"

#include <memory>
#include <string>
#include <vector>

namespace lightoff::platform {

struct WindowOptions {
    std::string title = "Lightoff";
    unsigned width = 1280, height = 720; // pixels
    canvas::ThemeId theme = canvas::ThemeId::Paper;
    float text_percent = 100; // 80..200
    canvas::FontPaths fonts;
    double fixed_delta_s =
        0; // > 0: every frame is told this delta, not the clock's, so that pictures repeat exactly
    unsigned draw_every = 1; // frames; the others are laid out only: for tests, where drawing is dear
};

/// A window with OpenGL, input and Dear ImGui in it. One at a time. SFML stays behind this header.
class Platform {
public:
    /// Opens the window. Throws std::runtime_error with one sentence where that can't be: no display, no
    /// OpenGL.
    explicit Platform(const WindowOptions& options);
    ~Platform();
    Platform(const Platform&) = delete;
    Platform& operator=(const Platform&) = delete;

    /// Waits for input for as long as pacing says (never over four seconds), takes it in, and starts an
    /// ImGui frame. `wanted_in_s` is when the app wants a frame if nothing comes (0: at full rate).
    void begin_frame(double wanted_in_s);
    /// Draws the frame and shows it.
    void end_frame();

    double wall_delta_s() const; // since the last frame, at most 0.25
    ImVec2 size() const;
    bool focused() const;
    /// Whether the window's cross was pressed since the last call.
    bool take_close_request();

    /// A new theme or text size (80..200 %); rebuilds fonts and style where they differ. Between frames only.
    void set_look(canvas::ThemeId theme, float text_percent);
    /// What to draw with in this frame, `list` being the background's.
    canvas::Canvas canvas() const;
    /// One sentence for each typeface that was not found.
    const std::vector<std::string>& font_messages() const;

    /// As if the pointer had been moved there.
    void point(ImVec2 at_px);

    /// The next frame drawn is written to this file as PNG.
    void request_screenshot(const std::string& path);
    /// Whether the last screenshot asked for could be written.
    bool screenshot_written() const;

private:
    struct Window;
    std::unique_ptr<Window> window_;
};

/// Pixels for one design pixel: 1 up to 1080 lines, then growing with the window in steps of 5 %, times the
/// text percentage (80..200) and the theme's own factor.
float design_scale(float window_height, float text_percent, const canvas::Theme& theme);

/// Design pixels that every page is laid out for at the least: a window of 1280x720 has them with text of
/// 200 %, one of 640x360 with text of 100 %.
inline constexpr float kLeastPageWide = 570, kLeastPageHigh = 320;
/// The text percentage wanted, or the largest (never under 80) that leaves a window of this size so much.
float text_percent_in(ImVec2 window_px, float wanted, const canvas::Theme& theme);

} // namespace lightoff::platform
