// SPDX-License-Identifier: MIT
#pragma once
#include <cstdint>
#include <imgui.h>

namespace lightoff::canvas {

/// An sRGB colour, eight bits a channel, alpha not premultiplied.
struct Colour {
    std::uint8_t r = 0, g = 0, b = 0, a = 255;
    bool operator==(const Colour&) const = default;
};

/// 0xRRGGBB as written in a design table.
constexpr Colour hex(std::uint32_t rgb) {
    return {static_cast<std::uint8_t>((rgb >> 16) & 255u), static_cast<std::uint8_t>((rgb >> 8) & 255u),
            static_cast<std::uint8_t>(rgb & 255u), 255};
}

/// The same colour at an opacity of 0..1 (clamped).
Colour faded(Colour colour, float opacity);
/// Straight mix in sRGB; share 0 is `a`, 1 is `b`.
Colour mix(Colour a, Colour b, float share);
ImU32 packed(Colour colour);
ImVec4 as_vec4(Colour colour);

/// Relative luminance 0..1 of an opaque colour. Source: WCAG 2.2, definition of "relative luminance".
double relative_luminance(Colour colour);
/// Contrast ratio 1..21 of two opaque colours. Source: WCAG 2.2, definition of "contrast ratio".
double contrast(Colour one, Colour other);

} // namespace lightoff::canvas
