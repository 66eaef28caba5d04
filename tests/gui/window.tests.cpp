// SPDX-License-Identifier: MIT
#include "gui/canvas/fills.hpp"
#include "gui/canvas/lettering.hpp"
#include "gui/platform/display.hpp"
#include "gui/platform/shell.hpp"

#include <GL/gl.h>
#include <catch2/catch.hpp>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <string>

using namespace lightoff;
using namespace lightoff::platform;

namespace {

/// Draws some frames, changing theme and text size on the way.
class Changing : public App {
public:
    void frame(const FrameInput& input) override {
        ++frames;
        size = input.size;
        longest_s = std::max(longest_s, input.wall_delta_s);
        canvas::fill(input.canvas, {{0, 0}, {100, 100}}, input.canvas.theme->ink);
        canvas::text(input.canvas, {10, 110}, "24 V", canvas::Type::Display, input.canvas.theme->ink);
        canvas::glow(input.canvas, {50, 50}, 40, input.canvas.theme->igniter, 1);
    }
    Wishes wishes() const override {
        Wishes wishes;
        wishes.theme = frames > 3 ? canvas::ThemeId::Basement : canvas::ThemeId::Paper;
        wishes.text_percent = frames > 5 ? 150 : 100;
        wishes.close = frames >= 8;
        return wishes;
    }
    void close_asked() override {}

    int frames = 0;
    ImVec2 size{0, 0};
    double longest_s = 0;
};

} // namespace

TEST_CASE("a real window opens, draws, changes its look, and writes a picture of what it shows", "[window]") {
    const DisplayProbe display; // kept: a server may restart when its only client leaves
    REQUIRE(display.refusal() == "");
    const std::string path = (std::filesystem::temp_directory_path() / "lightoff_window_test.png").string();
    std::filesystem::remove(path);
    WindowOptions options;
    options.width = 640;
    options.height = 480;
    options.fixed_delta_s = 0.02;
    Platform platform(options);
    Changing app;
    CHECK(platform.font_messages().empty());
    platform.request_screenshot(path);
    while (run_frame(platform, app)) {
    }
    CHECK(app.frames == 8);
    CHECK(app.size.x == 640);
    CHECK(app.longest_s == 0.02);
    CHECK(platform.screenshot_written());
    CHECK(platform.canvas().scale == 1.5F);
    CHECK(std::filesystem::file_size(path) > 500);
    std::ifstream file(path, std::ios::binary);
    std::string signature(8, '\0');
    file.read(signature.data(), 8);
    CHECK(signature == "\x89PNG\r\n\x1a\n"); // ISO/IEC 15948, 5.2
    std::filesystem::remove(path);
}

TEST_CASE("a hundred frames with glow leave OpenGL as they found it", "[window]") {
    const DisplayProbe display;
    Platform platform({});
    for (int i = 0; i < 100; ++i) {
        platform.begin_frame(0);
        const canvas::Canvas canvas = platform.canvas();
        canvas::glow(canvas, {50, 50}, 40, canvas.theme->igniter, 1);
        platform.end_frame();
    }
    GLint modelview = 0;
    GLint projection = 0;
    glGetIntegerv(GL_MODELVIEW_STACK_DEPTH, &modelview);
    glGetIntegerv(GL_PROJECTION_STACK_DEPTH, &projection);
    CHECK(modelview == 1);
    CHECK(projection == 1);
    CHECK(glGetError() == GL_NO_ERROR);
}

TEST_CASE("a window that has nothing to do sleeps", "[window]") {
    const DisplayProbe display;
    Platform platform({});
    Changing app;
    for (int i = 0; i < 6; ++i) { // lets the events of opening pass
        run_frame(platform, app);
    }
    platform.begin_frame(0.3);
    platform.end_frame();
    platform.begin_frame(0.3);
    const double slept_s = platform.wall_delta_s();
    platform.end_frame();
    CHECK(slept_s > 0.2);
}

TEST_CASE("without a display there is one sentence and no crash", "[no-display]") {
    const std::string refusal = DisplayProbe().refusal();
    CHECK(refusal.find("Cannot open a window") == 0);
    CHECK(refusal.find('\n') == std::string::npos);
    CHECK_THROWS_AS(Platform({}), std::runtime_error);
    Changing app;
    CHECK(run({}, app) == 1);
    CHECK(app.frames == 0);
}
