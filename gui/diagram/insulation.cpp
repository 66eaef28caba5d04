// SPDX-License-Identifier: MIT
#include "gui/diagram/insulation.hpp"

#include <algorithm>
#include <array>

namespace lightoff::diagram {
namespace {

using canvas::hex;

struct Insulation {
    std::string_view name;
    std::string_view letters; ///< common practice on wiring diagrams, no source
    canvas::Colour colour;
};

constexpr canvas::Colour kGrey = hex(0x8A8D90);
constexpr std::array<Insulation, 15> kInsulations{{{"black", "BK", hex(0x202224)},
                                                   {"white", "W", hex(0xFFFFFF)},
                                                   {"red", "R", hex(0xC0392B)},
                                                   {"yellow", "Y", hex(0xE9C62B)},
                                                   {"green", "G", hex(0x2E8B4F)},
                                                   {"blue", "BL", hex(0x2F6DB5)},
                                                   {"brown", "BR", hex(0x7A4A28)},
                                                   {"orange", "O", hex(0xE07A26)},
                                                   {"grey", "GY", kGrey},
                                                   {"gray", "GY", kGrey},
                                                   {"violet", "V", hex(0x6F4A9E)},
                                                   {"purple", "PR", hex(0x6F4A9E)},
                                                   {"pink", "PK", hex(0xE58FA8)},
                                                   {"bare", "bare", hex(0xB87333)},
                                                   {"screw", "", kGrey}}};

const Insulation* find(std::string_view name) {
    const auto* const found = std::find_if(kInsulations.begin(), kInsulations.end(),
                                           [&](const Insulation& one) { return one.name == name; });
    return found == kInsulations.end() ? nullptr : found;
}

} // namespace

std::string ferrule_letters(std::string_view name) {
    const Insulation* known = find(name);
    return std::string(known != nullptr ? known->letters : name);
}

canvas::Colour insulation_colour(std::string_view name) {
    const Insulation* known = find(name);
    return known != nullptr ? known->colour : kGrey;
}

} // namespace lightoff::diagram
