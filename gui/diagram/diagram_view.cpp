// SPDX-License-Identifier: MIT
#include "gui/diagram/diagram_view.hpp"

#include <algorithm>

namespace lightoff::diagram {
namespace {

constexpr float kLeastZoom = 0.25F, kMostZoom = 6.0F;

bool are_same(canvas::Rect a, canvas::Rect b) {
    return a.min.x == b.min.x && a.min.y == b.min.y && a.max.x == b.max.x && a.max.y == b.max.y;
}

} // namespace

void DiagramView::fit_to(canvas::Rect area, const Ladder& ladder) {
    place = canvas::fit(ladder.bounds, area);
    fitted_to = area;
    moved = false;
}

void DiagramView::keep_fitted(canvas::Rect area, const Ladder& ladder) {
    if (!are_same(area, fitted_to) && (!moved || fitted_to.width() <= 0))
        fit_to(area, ladder);
}

void DiagramView::pan(ImVec2 by) {
    place.pan(by);
    moved = true;
}

void DiagramView::zoom_by(canvas::Rect area, const Ladder& ladder, ImVec2 about, float factor) {
    const float whole = canvas::fit(ladder.bounds, area).zoom;
    place.zoom_about(about, factor, std::min(kLeastZoom, whole), std::max(kMostZoom, whole));
    moved = true;
}

} // namespace lightoff::diagram
