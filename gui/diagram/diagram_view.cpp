// SPDX-License-Identifier: MIT
#include "gui/diagram/diagram_view.hpp"

#include "gui/diagram/layout/sizes.hpp"

#include <algorithm>

namespace lightoff::diagram {
namespace {

using canvas::operator+;
using canvas::operator-;
using canvas::operator*;

constexpr float kLeastZoom = 0.25F, kMostZoom = 6.0F;
/// Height of a row in letters: the least, and with room for the letters of a wire and a name above them.
constexpr float kLeastRow = 1.25F, kEasyRow = 2.4F;

bool are_same(canvas::Rect a, canvas::Rect b) {
    return a.min.x == b.min.x && a.min.y == b.min.y && a.max.x == b.max.x && a.max.y == b.max.y;
}

/// Where a stretch of the sheet begins in a stretch of the area: as near to a wish as leaves nothing empty.
float begin_of(float wish, float sheet_from, float sheet_to, float from, float to, float zoom) {
    const float first = from - sheet_from * zoom, last = to - sheet_to * zoom;
    return last > first ? (first + last) / 2 : std::clamp(wish, last, first);
}

/// The offset that fills the area with the sheet as far as there is sheet.
ImVec2 within(canvas::Rect area, canvas::Rect sheet, const canvas::Transform& wish) {
    return {begin_of(wish.offset.x, sheet.min.x, sheet.max.x, area.min.x, area.max.x, wish.zoom),
            begin_of(wish.offset.y, sheet.min.y, sheet.max.y, area.min.y, area.max.y, wish.zoom)};
}

} // namespace

bool bears_letters(const canvas::Transform& place, float letters) {
    return kPitch * place.zoom >= kLeastRow * letters;
}

void DiagramView::fit_to(canvas::Rect area, const Ladder& ladder) {
    place = canvas::fit(ladder.bounds, area);
    fitted_to = area;
    held = Held::whole;
}

void DiagramView::open_in(canvas::Rect area, const Ladder& ladder, float letters,
                          std::optional<ImVec2> about) {
    fit_to(area, ladder);
    held = Held::opened;
    if (bears_letters(place, letters))
        return;
    const canvas::Rect& sheet = ladder.bounds;
    const float zoom = kEasyRow * letters / kPitch;
    const ImVec2 wish = about ? area.centre() - *about * zoom : area.min - sheet.min * zoom;
    place = {wish, zoom};
    place.offset = within(area, sheet, place);
}

void DiagramView::keep_fitted(canvas::Rect area, const Ladder& ladder, float letters,
                              std::optional<ImVec2> about) {
    if (are_same(area, fitted_to) || (held == Held::by_hand && fitted_to.width() > 0))
        return;
    if (held == Held::whole)
        return fit_to(area, ladder);
    const bool again = fitted_to.width() > 0;
    const canvas::Transform before = place;
    open_in(area, ladder, letters, about);
    if (again && before.zoom == place.zoom && !shows_whole(area, ladder)) { // no more moved than it must be
        place.offset = within(area, ladder.bounds, before);
        if (about)
            show(area, ladder, *about, 0);
    }
}

void DiagramView::toggle_whole(canvas::Rect area, const Ladder& ladder, float letters,
                               std::optional<ImVec2> about) {
    if (held == Held::whole)
        open_in(area, ladder, letters, about);
    else
        fit_to(area, ladder);
}

bool DiagramView::shows_whole(canvas::Rect area, const Ladder& ladder) const {
    const canvas::Rect sheet = place.to_screen(ladder.bounds);
    const canvas::Rect wide = area.shrunk(-1);
    return wide.holds(sheet.min) && wide.holds(sheet.max);
}

void DiagramView::show(canvas::Rect area, const Ladder& ladder, ImVec2 at, float within) {
    if (shows_whole(area, ladder))
        return;
    const canvas::Rect safe = area.shrunk(std::min({within, area.width() / 2, area.height() / 2}));
    const ImVec2 p = place.to_screen(at);
    place.pan(ImVec2{std::clamp(p.x, safe.min.x, safe.max.x), std::clamp(p.y, safe.min.y, safe.max.y)} - p);
}

void DiagramView::pan(ImVec2 by) {
    place.pan(by);
    held = Held::by_hand;
}

void DiagramView::zoom_by(canvas::Rect area, const Ladder& ladder, ImVec2 about, float factor) {
    const float whole = canvas::fit(ladder.bounds, area).zoom;
    place.zoom_about(about, factor, std::min(kLeastZoom, whole), std::max(kMostZoom, whole));
    held = Held::by_hand;
}

} // namespace lightoff::diagram
