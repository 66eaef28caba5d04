// SPDX-License-Identifier: MIT
#include "gui/diagram/sheet.hpp"

#include <algorithm>
#include <cmath>

namespace lightoff::diagram {
namespace {

using namespace canvas;

constexpr float kBend = 16; // drawing units before its end that a lifted wire bends

/// Leads one end of a path to another place, from a little before it.
void bend(std::vector<ImVec2>& path, bool front, ImVec2 to, float before) {
    if (path.size() < 2)
        return;
    if (!front)
        std::reverse(path.begin(), path.end());
    const ImVec2 along = path[1] - path[0];
    const float length = std::hypot(along.x, along.y);
    const ImVec2 knee = path[0] + along * (length > 0 ? std::min(0.5F, before / length) : 0.0F);
    path[0] = to;
    path.insert(path.begin() + 1, knee);
    if (!front)
        std::reverse(path.begin(), path.end());
}

} // namespace

Sheet::Sheet(const canvas::Canvas& on, canvas::Rect within, const Ladder& of, const view::Known& what,
             const canvas::Transform& where)
    : canvas(on), area(within), ladder(of), known(what), place(where), spots(spot_places(of, where, what)) {}

bool Sheet::is_parted(int joint) const {
    return electrical::has_element(known.percept.worked.parted, joint);
}

bool Sheet::is_off(const Spot& lug) const {
    return lug.lug &&
           is_parted(known.site->model.wiring.terminals[static_cast<std::size_t>(lug.terminal)].joint);
}

std::vector<ImVec2> Sheet::path_of(const Wire& wire) const {
    std::vector<ImVec2> path = pixels(wire.path);
    // A lug that is off its pin takes the wire's end along.
    if (wire.from >= 0 && is_off(ladder.spot(wire.from)))
        bend(path, true, spot(wire.from), kBend * place.zoom);
    if (wire.to >= 0 && is_off(ladder.spot(wire.to)))
        bend(path, false, spot(wire.to), kBend * place.zoom);
    return path;
}

std::vector<ImVec2> Sheet::pixels(const std::vector<ImVec2>& path) const {
    std::vector<ImVec2> out;
    for (const ImVec2 p : path)
        out.push_back(place.to_screen(p));
    return out;
}

std::vector<ImVec2> spot_places(const Ladder& ladder, const canvas::Transform& place,
                                const view::Known& known) {
    std::vector<ImVec2> places;
    places.reserve(ladder.spots.size());
    for (const Spot& spot : ladder.spots) {
        ImVec2 p = place.to_screen(spot.at);
        if (spot.lug) {
            const int joint =
                known.site->model.wiring.terminals[static_cast<std::size_t>(spot.terminal)].joint;
            if (electrical::has_element(known.percept.worked.parted, joint))
                p = p + ImVec2{spot.outward.x * 3 - spot.outward.y * 8,
                               -std::abs(spot.outward.x) * 8 + spot.outward.y * 3} *
                            place.zoom;
        }
        places.push_back(p);
    }
    return places;
}

} // namespace lightoff::diagram
