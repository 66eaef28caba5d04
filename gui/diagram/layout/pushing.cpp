// SPDX-License-Identifier: MIT
#include "gui/diagram/layout/pushing.hpp"

#include "gui/diagram/layout/sizes.hpp"

#include <algorithm>

namespace lightoff::diagram {
namespace {

constexpr float kLeastWidth = 820; ///< fills a pane that is wider than high

float asked_or(const Xs& asked, int vertex, float otherwise) {
    const auto it = asked.find(vertex);
    return it == asked.end() ? otherwise : it->second;
}

} // namespace

Xs Pushing::to_left(const Xs& least) const {
    Xs x;
    for (bool moved = true; moved;) {
        moved = false;
        for (const Run& run : circuit_.runs)
            for (std::size_t i = 0; i < run.vertices.size(); ++i) {
                const int v = run.vertices[i];
                if (circuits_.is_rail(v))
                    continue;
                const float floor = asked_or(least, v, 0);
                const float want = i > 0 ? std::max(floor, left_bound(run, i, x)) : floor;
                const auto [it, fresh] = x.try_emplace(v, want);
                moved = moved || fresh || it->second < want;
                it->second = std::max(it->second, want);
            }
    }
    return x;
}

float Pushing::left_bound(const Run& run, std::size_t i, const Xs& x) const {
    const int before = run.vertices[i - 1];
    const float rail = run.left == Rail::ground ? ground_start_ : 0;
    return (circuits_.is_rail(before) ? rail : x.at(before)) + lengths_.in(run, i - 1);
}

Xs Pushing::to_right(float width, const Xs& most) const {
    Xs x;
    for (bool moved = true; moved;) {
        moved = false;
        for (const Run& run : circuit_.runs)
            for (std::size_t i = run.vertices.size(); i-- > 0;) {
                const int v = run.vertices[i];
                if (circuits_.is_rail(v))
                    continue;
                const float ceiling = asked_or(most, v, width - kToRail);
                const bool last = i + 1 == run.vertices.size();
                const float want = last ? ceiling : std::min(ceiling, right_bound(run, i, x, width));
                const auto [it, fresh] = x.try_emplace(v, want);
                moved = moved || fresh || it->second > want;
                it->second = std::min(it->second, want);
            }
    }
    return x;
}

float Pushing::right_bound(const Run& run, std::size_t i, const Xs& x, float width) const {
    const int after = run.vertices[i + 1];
    const float rail = run.right == Rail::ground ? width - kGroundInset : width;
    return (circuits_.is_rail(after) ? rail : x.at(after)) - lengths_.in(run, i);
}

float Pushing::least_width() const {
    const Xs x = to_left({});
    float most = 0;
    for (const Run& run : circuit_.runs)
        for (std::size_t i = 0; i < run.links.size(); ++i) {
            const bool to_rail = circuits_.is_rail(run.vertices[i + 1]);
            const float beyond = run.right == Rail::ground ? kGroundInset : to_rail ? 0 : kToRail;
            most = std::max(most, left_bound(run, i + 1, x) + beyond);
        }
    return most;
}

float width_of_drawing(const Circuits& circuits, const Lengths& lengths) {
    float width = kLeastWidth;
    for (const Circuit& circuit : circuits.circuits)
        width = std::max(width, Pushing(circuits, lengths, circuit, 0).least_width());
    for (const Run* run : {&circuits.line, &circuits.neutral, &circuits.ground})
        width = std::max(width, lengths.of(*run) + 3 * kToRail);
    return width;
}

} // namespace lightoff::diagram
