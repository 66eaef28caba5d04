// SPDX-License-Identifier: MIT
#include "gui/canvas/lettering.hpp"

#include "gui/headless.hpp"

#include <catch2/catch.hpp>

using namespace lightoff;
using namespace lightoff::canvas;
using test::Headless;

TEST_CASE("the typefaces are found and hold every sign we write") {
    const Headless ui;
    CHECK(ui.fonts().missing.empty());
    for (const Type type : {Type::Minimum, Type::Body, Type::Heading, Type::Table}) {
        const ImFont* font = ui.fonts().fonts.of(type);
        for (const char32_t sign : std::u32string(U"AzéΩµ°±−→↑∠⚠⚡≥●□✓…–—½²₂")) {
            CAPTURE(static_cast<unsigned>(sign));
            CHECK(font->FindGlyphNoFallback(static_cast<ImWchar>(sign)) != nullptr);
        }
    }
    for (const char32_t sign : std::u32string(U"0189.−ΩµAV°%")) {
        CAPTURE(static_cast<unsigned>(sign));
        CHECK(ui.fonts().fonts.of(Type::Display)->FindGlyphNoFallback(static_cast<ImWchar>(sign)) != nullptr);
    }
}

TEST_CASE("all figures are equally wide in every type") {
    Headless ui;
    ui.frame([](const Canvas& canvas) {
        for (std::size_t i = 0; i < kTypeCount; ++i) {
            const auto type = static_cast<Type>(i);
            CHECK(text_size(canvas, "111111", type).x == text_size(canvas, "000000", type).x);
            CHECK(text_size(canvas, "−1.7", type).x == text_size(canvas, "−9.0", type).x);
        }
    });
}

TEST_CASE("a missing typeface is named and stood in for") {
    ImFontAtlas atlas;
    FontPaths paths;
    paths.sans = "/nowhere/Sans.otf";
    const FontBuild build = build_fonts(atlas, 1, paths);
    REQUIRE(build.missing.size() == 1);
    CHECK(build.missing[0].find("/nowhere/Sans.otf") != std::string::npos);
    for (const ImFont* font : build.fonts.face) {
        REQUIRE(font != nullptr);
        CHECK(font->FindGlyphNoFallback('A') != nullptr);
    }
}

TEST_CASE("lettering grows with the scale") {
    ImFontAtlas atlas;
    const float small = build_fonts(atlas, 0.8F).fonts.of(Type::Body)->FontSize;
    const float big = build_fonts(atlas, 2).fonts.of(Type::Body)->FontSize;
    CHECK(big / small == Approx(2.5).epsilon(0.05));
}

TEST_CASE("words too long for a box are shortened, fit, and are reported") {
    Headless ui;
    ui.frame([](const Canvas& canvas) {
        const Rect box{{10, 10}, {90, 40}};
        const Rect filled = text_in(canvas, box, "Flame rollout switch Größe", Type::Body, canvas.theme->ink);
        CHECK(filled.width() <= box.width() + 0.5F);
        CHECK(text_in(canvas, {{10, 50}, {790, 80}}, "Fits", Type::Body, canvas.theme->ink).width() > 0);
    });
    REQUIRE(ui.probe.texts().size() == 2);
    CHECK(ui.probe.texts()[0].shortened);
    CHECK_FALSE(ui.probe.texts()[1].shortened);
}

TEST_CASE("figures carry a true minus sign and no minus zero") {
    CHECK(figure(-0.65, 2) == "−0.65");
    CHECK(figure(-0.001, 2) == "0.00");
    CHECK(figure(24.06, 1) == "24.1");
    CHECK(figure(std::nan(""), 1) == "–");
}
