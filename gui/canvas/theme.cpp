// SPDX-License-Identifier: MIT
#include "gui/canvas/theme.hpp"

namespace lightoff::canvas {
namespace {

constexpr Colour kChamber = hex(0x26282B);
constexpr Colour kIgniter = hex(0xFF8A2B);
constexpr Colour kBlueFlame = hex(0x6FA8FF);
constexpr std::array<Colour, kEnergyCount> kOnLight{hex(0x1332A7), hex(0x6F0E4F), hex(0xA57700),
                                                    hex(0x148D96), hex(0x8C2401)};
constexpr std::array<Colour, kEnergyCount> kOnDark{hex(0x5A60EC), hex(0xCE5171), hex(0xFCEC20), hex(0x66F7F6),
                                                   hex(0xE33701)};

constexpr Theme kPaper{"paper",       hex(0xF5F0E3), hex(0xEAE3D2), hex(0x1B2730), hex(0x4E5861),
                       hex(0x8A8778), hex(0x8C1D18), kOnLight,      kChamber,      kIgniter,
                       kBlueFlame,    1.0F,          1.0F};
// The chamber lies darker than the ground here, or the flame's box would not read as a hollow.
constexpr Theme kBasement{"basement",    hex(0x15191C), hex(0x1F2529), hex(0xECE6D8), hex(0xA3ABAF),
                          hex(0x6C757A), hex(0xFF9A8C), kOnDark,       hex(0x0A0C0E), kIgniter,
                          kBlueFlame,    1.0F,          1.0F};
// Washed-out projectors: white, black and nothing subtle between them.
constexpr Theme kProjector{"projector",   hex(0xFFFFFF), hex(0xEFEFEF), hex(0x000000), hex(0x333333),
                           hex(0x767676), hex(0x8C1D18), kOnLight,      kChamber,      kIgniter,
                           kBlueFlame,    1.5F,          1.4F};

} // namespace

const Theme& theme(ThemeId id) {
    switch (id) {
    case ThemeId::Basement:
        return kBasement;
    case ThemeId::Projector:
        return kProjector;
    case ThemeId::Paper:
        break;
    }
    return kPaper;
}

const char* name_of(Energy kind) {
    static constexpr std::array<const char*, kEnergyCount> kNames{"24 V", "120 V", "gas", "air", "heat"};
    return kNames[static_cast<std::size_t>(kind)];
}

} // namespace lightoff::canvas
