// SPDX-License-Identifier: MIT
#pragma once
#include <array>
#include <cstddef>
#include <imgui.h>
#include <string>
#include <vector>

namespace lightoff::canvas {

/// The few sizes of lettering there are. Sizes are em heights at 1080 lines and text scale 1 (see fonts.cpp).
enum class Type { Minimum, Secondary, Body, Heading, Title, Table, Display };
inline constexpr std::size_t kTypeCount = 7;

/// Where the typefaces lie; the defaults are those of the packages fonts-inter, fonts-dejavu and
/// fonts-jetbrains-mono.
struct FontPaths {
    std::string sans = "/usr/share/fonts/opentype/inter/Inter-Regular.otf";
    std::string sans_strong = "/usr/share/fonts/opentype/inter/Inter-SemiBold.otf";
    std::string symbols = "/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf";
    std::string mono = "/usr/share/fonts/truetype/jetbrains-mono/JetBrainsMono-Medium.ttf";
};

/// One ImFont for each Type; owned by the atlas they were built in.
struct Fonts {
    std::array<ImFont*, kTypeCount> face{};
    ImFont* of(Type type) const { return face[static_cast<std::size_t>(type)]; }
};

struct FontBuild {
    Fonts fonts;
    std::vector<std::string> missing; // one sentence for each file not found
};

/// Em height in pixels of a type at text scale 1.
float em_px(Type type);

/// Clears the atlas and fills it at `scale` (0.5..6). In the place of a missing file stands another typeface,
/// in the last resort Dear ImGui's own; it is named in `missing`. All sans figures get one advance width
/// (tabular figures), so that numbers do not jitter as they change. The renderer's texture must be made anew
/// afterwards.
FontBuild build_fonts(ImFontAtlas& atlas, float scale, const FontPaths& paths = {});

} // namespace lightoff::canvas
