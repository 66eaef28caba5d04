// SPDX-License-Identifier: MIT
#include "gui/canvas/colour.hpp"

#include <algorithm>
#include <cmath>

namespace lightoff::canvas {
namespace {

std::uint8_t to_byte(float value) {
    return static_cast<std::uint8_t>(std::clamp(value, 0.0F, 255.0F) + 0.5F);
}

std::uint8_t mix_channel(std::uint8_t a, std::uint8_t b, float share) {
    return to_byte(static_cast<float>(a) + (static_cast<float>(b) - static_cast<float>(a)) * share);
}

double linear(std::uint8_t channel) {
    const double s = channel / 255.0;
    return s <= 0.04045 ? s / 12.92 : std::pow((s + 0.055) / 1.055, 2.4);
}

} // namespace

Colour faded(Colour colour, float opacity) {
    colour.a = to_byte(static_cast<float>(colour.a) * std::clamp(opacity, 0.0F, 1.0F));
    return colour;
}

Colour mix(Colour a, Colour b, float share) {
    const float s = std::clamp(share, 0.0F, 1.0F);
    return {mix_channel(a.r, b.r, s), mix_channel(a.g, b.g, s), mix_channel(a.b, b.b, s),
            mix_channel(a.a, b.a, s)};
}

ImU32 packed(Colour colour) {
    return IM_COL32(colour.r, colour.g, colour.b, colour.a);
}

ImVec4 as_vec4(Colour colour) {
    return ImGui::ColorConvertU32ToFloat4(packed(colour));
}

double relative_luminance(Colour colour) {
    return 0.2126 * linear(colour.r) + 0.7152 * linear(colour.g) + 0.0722 * linear(colour.b);
}

double contrast(Colour one, Colour other) {
    const double a = relative_luminance(one);
    const double b = relative_luminance(other);
    return (std::max(a, b) + 0.05) / (std::min(a, b) + 0.05);
}

} // namespace lightoff::canvas
