// SPDX-License-Identifier: MIT
#include "gui/demo/demo.hpp"

#include "gui/headless.hpp"
#include "gui/platform/platform.hpp"

#include <catch2/catch.hpp>

using namespace lightoff;
using test::Headless;

TEST_CASE(
    "no text of the drawing sheet is cut off, shortened or written over at any size, theme and text scale") {
    for (const ImVec2 size : {ImVec2{1280, 720}, ImVec2{1920, 1080}, ImVec2{2560, 1440}}) {
        for (const canvas::ThemeId id : canvas::kThemes) {
            for (const float percent : {80.0F, 100.0F, 150.0F}) {
                const canvas::Theme& theme = canvas::theme(id);
                Headless ui(size, id, platform::design_scale(size.y, percent, theme));
                demo::Demo page;
                const canvas::Rect whole{{0, 0}, size};
                ui.frame([&](const canvas::Canvas& canvas) { page.draw(canvas, whole); });
                ui.frame([&](const canvas::Canvas& canvas) { page.draw(canvas, whole); });
                CAPTURE(theme.name, size.x, percent);
                CHECK(ui.probe.texts().size() > 20); // a narrow page holds the recorder alone
                for (const std::string& problem : ui.probe.problems()) {
                    FAIL_CHECK(problem);
                }
            }
        }
    }
}
