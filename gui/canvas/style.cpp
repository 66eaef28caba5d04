// SPDX-License-Identifier: MIT
#include "gui/canvas/style.hpp"

#include <algorithm>

namespace lightoff::canvas {
namespace {

void set_shapes(ImGuiStyle& style) {
    style.WindowRounding = style.ChildRounding = style.FrameRounding = style.PopupRounding = 0;
    style.ScrollbarRounding = style.GrabRounding = style.TabRounding = 0;
    style.WindowBorderSize = style.ChildBorderSize = style.PopupBorderSize = 0;
    style.FrameBorderSize = 1;
    style.WindowPadding = {16, 16};
    style.FramePadding = {10, 6};
    style.ItemSpacing = {10, 8};
    style.ItemInnerSpacing = {8, 6};
    style.ScrollbarSize = 14;
    style.GrabMinSize = 24;
    style.CurveTessellationTol = 0.6F;
    style.CircleTessellationMaxError = 0.2F;
}

void set_colours(ImGuiStyle& style, const Theme& theme) {
    const auto set = [&style](ImGuiCol which, Colour colour) { style.Colors[which] = as_vec4(colour); };
    const Colour hover = mix(theme.panel, theme.ink, 0.10F);
    const Colour held = mix(theme.panel, theme.ink, 0.20F);
    const Colour clear = faded(theme.ground, 0);
    for (ImGuiCol i = 0; i < ImGuiCol_COUNT; ++i) {
        set(i, theme.ink); // a colour forgotten below shows as ink, not as the library's blue
    }
    set(ImGuiCol_TextDisabled, theme.pencil);
    set(ImGuiCol_TextSelectedBg, mix(theme.panel, theme.ink, 0.28F));
    for (const ImGuiCol i : {ImGuiCol_WindowBg, ImGuiCol_FrameBg, ImGuiCol_ScrollbarBg}) {
        set(i, theme.ground);
    }
    for (const ImGuiCol i : {ImGuiCol_PopupBg, ImGuiCol_MenuBarBg, ImGuiCol_Button, ImGuiCol_Header,
                             ImGuiCol_Tab, ImGuiCol_TabUnfocused, ImGuiCol_TitleBg, ImGuiCol_TitleBgActive,
                             ImGuiCol_TitleBgCollapsed, ImGuiCol_TableHeaderBg}) {
        set(i, theme.panel);
    }
    for (const ImGuiCol i : {ImGuiCol_FrameBgHovered, ImGuiCol_ButtonHovered, ImGuiCol_HeaderHovered,
                             ImGuiCol_TabHovered, ImGuiCol_TabActive, ImGuiCol_TabUnfocusedActive}) {
        set(i, hover);
    }
    for (const ImGuiCol i : {ImGuiCol_FrameBgActive, ImGuiCol_ButtonActive, ImGuiCol_HeaderActive}) {
        set(i, held);
    }
    for (const ImGuiCol i : {ImGuiCol_Border, ImGuiCol_Separator, ImGuiCol_ScrollbarGrab, ImGuiCol_SliderGrab,
                             ImGuiCol_TableBorderStrong, ImGuiCol_PlotLines, ImGuiCol_PlotHistogram}) {
        set(i, theme.pencil);
    }
    set(ImGuiCol_TableBorderLight, theme.rule);
    for (const ImGuiCol i :
         {ImGuiCol_ChildBg, ImGuiCol_BorderShadow, ImGuiCol_TableRowBg, ImGuiCol_ResizeGrip}) {
        set(i, clear);
    }
    set(ImGuiCol_TableRowBgAlt, faded(theme.panel, 0.6F));
    set(ImGuiCol_NavWindowingDimBg, faded(theme.ground, 0.6F));
    set(ImGuiCol_ModalWindowDimBg, faded(theme.ground, 0.6F));
}

} // namespace

void apply_style(ImGuiStyle& style, const Theme& theme, float scale) {
    style = ImGuiStyle();
    set_shapes(style);
    style.ScaleAllSizes(scale);
    style.FrameBorderSize = std::max(1.0F, theme.line_factor * scale);
    style.CurveTessellationTol = 0.6F / scale;
    set_colours(style, theme);
}

} // namespace lightoff::canvas
