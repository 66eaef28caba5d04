// SPDX-License-Identifier: MIT
#include "gui/cutaway/cabinet.hpp"

#include <cmath>

namespace lightoff::cutaway {
namespace {

constexpr float kInnermost = 31, kOutermost = 106;
constexpr float kHalfTurn = 3.14159265F;

} // namespace

float hairpin_radius(std::size_t burner, std::size_t count) {
    const float share = count > 1 ? static_cast<float>(burner) / static_cast<float>(count - 1) : 0;
    return kOutermost + (kInnermost - kOutermost) * share;
}

float burner_y(std::size_t burner, std::size_t count) {
    return kHairpin.y + hairpin_radius(burner, count);
}

float cell_half(std::size_t count) {
    constexpr float kWidest = 9;
    constexpr float kOfSpacing = 0.4F;
    const float gaps = static_cast<float>(count > 1 ? count - 1 : 1);
    return std::min(kWidest, kOfSpacing * (kOutermost - kInnermost) / gaps);
}

std::vector<ImVec2> cell_path(std::size_t burner, std::size_t count) {
    const float r = hairpin_radius(burner, count);
    std::vector<ImVec2> path{{kBurnerMouth, kHairpin.y + r}};
    constexpr int kSteps = 32;
    for (int i = 0; i <= kSteps; ++i) {
        const float angle = kHalfTurn * (0.5F - static_cast<float>(i) / kSteps);
        path.push_back({kHairpin.x + r * std::cos(angle), kHairpin.y + r * std::sin(angle)});
    }
    path.push_back({kCollector.max.x, kHairpin.y - r});
    return path;
}

} // namespace lightoff::cutaway
