// SPDX-License-Identifier: MIT
#include "gui/canvas/fonts.hpp"

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <freetype/freetype.h>
#include <imgui_freetype.h>
#include <memory>
#include <utility>

namespace lightoff::canvas {
namespace {

enum class Face { Sans, SansStrong, Mono };

struct TypeSpec {
    float em_px;
    Face face;
};

constexpr std::array<TypeSpec, kTypeCount> kTypes{{{14, Face::Sans},
                                                   {15, Face::Sans},
                                                   {17, Face::Sans},
                                                   {22, Face::SansStrong},
                                                   {28, Face::SansStrong},
                                                   {15, Face::Mono},
                                                   {40, Face::Mono}}};

// Latin for names, Greek for units, and the punctuation and signs the trade writes with.
constexpr std::array<ImWchar, 15> kLetters{0x20,   0x17F,  0x391,  0x3C9,  0x2007, 0x2026, 0x2030, 0x2033,
                                           0x2070, 0x209C, 0x2122, 0x2126, 0x2212, 0x2212, 0};
constexpr std::array<ImWchar, 15> kSymbols{0x2190, 0x2199, 0x21BA, 0x21BB, 0x2220, 0x2265, 0x25A0, 0x25CF,
                                           0x26A0, 0x26A1, 0x2713, 0x2717, 0x2300, 0x2300, 0};
constexpr std::array<ImWchar, 9> kMeterLetters{0x20, 0x7E, 0xB0, 0xB5, 0x3A9, 0x3A9, 0x2212, 0x2212, 0};

bool exists(const std::string& path) {
    std::error_code ignored;
    return std::filesystem::is_regular_file(path, ignored);
}

const std::string& path_of(Face face, const FontPaths& paths) {
    return face == Face::Mono ? paths.mono : face == Face::SansStrong ? paths.sans_strong : paths.sans;
}

/// What a typeface's file says of itself.
class FaceMeasures {
public:
    explicit FaceMeasures(const std::string& path) {
        FT_Library library = nullptr;
        if (FT_Init_FreeType(&library) == 0) {
            library_.reset(library);
            FT_Face face = nullptr;
            if (FT_New_Face(library, path.c_str(), 0, &face) == 0) {
                face_.reset(face);
            }
        }
    }

    bool usable() const { return face_ != nullptr && face_->units_per_EM > 0; }
    /// Ascender minus descender: the library sizes a font by these, not by its em.
    float line_per_em() const {
        return static_cast<float>(face_->ascender - face_->descender) /
               static_cast<float>(face_->units_per_EM);
    }

private:
    struct Close {
        void operator()(FT_Library library) const { FT_Done_FreeType(library); }
        void operator()(FT_Face face) const { FT_Done_Face(face); }
    };

    std::unique_ptr<FT_LibraryRec_, Close> library_;
    std::unique_ptr<FT_FaceRec_, Close> face_;
};

/// The typeface itself if it is there, else one that can stand in: serifs apart, any letters are better than
/// the built-in ones, which have no signs of the trade. Empty: none is there.
std::string found_path(Face face, const FontPaths& paths) {
    for (const std::string* path :
         {&path_of(face, paths), &paths.sans, &paths.sans_strong, &paths.symbols, &paths.mono})
        if (FaceMeasures(*path).usable())
            return *path;
    return {};
}

/// Signs that the built-in letters lack, and what is nearest to them there.
constexpr std::array<std::pair<ImWchar, ImWchar>, 14> kNearest{{{0x2212, '-'},
                                                                {0x2013, '-'},
                                                                {0x2014, '-'},
                                                                {0x2007, ' '},
                                                                {0x2018, '\''},
                                                                {0x2019, '\''},
                                                                {0x201C, '"'},
                                                                {0x201D, '"'},
                                                                {0x2022, 0xB7},
                                                                {0x2026, '.'},
                                                                {0x2080, '0'},
                                                                {0x2082, '2'},
                                                                {0x2190, '<'},
                                                                {0x2192, '>'}}};

ImFont* add_fallback(ImFontAtlas& atlas, float em) {
    ImFontConfig config;
    config.SizePixels = std::max(13.0F, std::round(em));
    return atlas.AddFontDefault(&config);
}

void merge_symbols(ImFontAtlas& atlas, float em, const FontPaths& paths) {
    const FaceMeasures measures(paths.symbols);
    if (!measures.usable()) {
        return;
    }
    ImFontConfig config;
    config.MergeMode = true;
    atlas.AddFontFromFileTTF(paths.symbols.c_str(), std::round(em * measures.line_per_em()), &config,
                             kSymbols.data());
}

ImFont* add_type(ImFontAtlas& atlas, const TypeSpec& spec, float scale, const FontPaths& paths) {
    const float em = spec.em_px * scale;
    const std::string path = found_path(spec.face, paths);
    if (path.empty()) {
        return add_fallback(atlas, em);
    }
    const FaceMeasures measures(path);
    // Big meter figures are dear in texture space: they get the letters of a meter's face and no more.
    const bool meter = spec.face == Face::Mono && spec.em_px > 20;
    const ImWchar* letters = meter ? kMeterLetters.data() : kLetters.data();
    ImFont* font =
        atlas.AddFontFromFileTTF(path.c_str(), std::round(em * measures.line_per_em()), nullptr, letters);
    if (!meter) {
        merge_symbols(atlas, em, paths);
    }
    return font;
}

std::string package_of(const std::string& path, const FontPaths& paths) {
    return &path == &paths.mono      ? "fonts-jetbrains-mono"
           : &path == &paths.symbols ? "fonts-dejavu-core"
                                     : "fonts-inter";
}

bool is_figure(unsigned c) {
    return c >= '0' && c <= '9';
}

/// Gives 0..9, plus, minus and the figure space the width of the widest figure, each centred in it.
void make_figures_tabular(ImFont& font) {
    float widest = 0;
    for (const ImFontGlyph& glyph : font.Glyphs) {
        if (is_figure(glyph.Codepoint)) {
            widest = std::max(widest, glyph.AdvanceX);
        }
    }
    for (ImFontGlyph& glyph : font.Glyphs) {
        const unsigned c = glyph.Codepoint;
        if (is_figure(c) || c == '+' || c == 0x2212 || c == 0x2007) {
            const float shift = std::round((widest - glyph.AdvanceX) / 2);
            glyph.X0 += shift;
            glyph.X1 += shift;
            glyph.AdvanceX = widest;
        }
    }
    font.BuildLookupTable();
}

/// After the lookup table was made.
void stand_in_for_missing(ImFont& font) {
    for (const auto& [sign, nearest] : kNearest) {
        if (font.FindGlyphNoFallback(sign) == nullptr) {
            font.AddRemapChar(sign, nearest, true);
        }
    }
}

} // namespace

float em_px(Type type) {
    return kTypes[static_cast<std::size_t>(type)].em_px;
}

FontBuild build_fonts(ImFontAtlas& atlas, float scale, const FontPaths& paths) {
    FontBuild build;
    for (const std::string* path : {&paths.sans, &paths.sans_strong, &paths.symbols, &paths.mono}) {
        if (!exists(*path)) {
            build.missing.push_back("Typeface not found, another stands in: " + *path + " (package " +
                                    package_of(*path, paths) + ").");
        }
    }
    atlas.Clear();
    atlas.FontBuilderIO = ImGuiFreeType::GetBuilderForFreeType();
    atlas.FontBuilderFlags = ImGuiFreeTypeBuilderFlags_LightHinting;
    atlas.Flags |= ImFontAtlasFlags_NoPowerOfTwoHeight;
    for (std::size_t i = 0; i < kTypeCount; ++i) {
        build.fonts.face[i] = add_type(atlas, kTypes[i], std::clamp(scale, 0.5F, 6.0F), paths);
    }
    atlas.Build();
    for (std::size_t i = 0; i < kTypeCount; ++i) {
        make_figures_tabular(*build.fonts.face[i]);
        stand_in_for_missing(*build.fonts.face[i]);
    }
    return build;
}

} // namespace lightoff::canvas
