// SPDX-License-Identifier: MIT
#include "gui/diagram/layout/supply.hpp"

#include "gui/diagram/layout/symbol_names.hpp"

#include <algorithm>
#include <cmath>

namespace lightoff::diagram {
namespace {

constexpr float kLeastGap = 36; ///< between columns

using Columns = std::vector<std::string>;

std::size_t column_of(const Columns& columns, const std::string& owner) {
    return static_cast<std::size_t>(std::find(columns.begin(), columns.end(), owner) - columns.begin());
}

// ---- placing ----

bool begins_with_bond(const Circuits& circuits, const Run& ground) {
    return !ground.links.empty() && circuits.link(ground.links.front()).kind == LinkKind::part;
}

/// The bond stands between the rows of neutral and ground, not in one.
Run without_bond(const Circuits& circuits, Run ground) {
    if (begins_with_bond(circuits, ground)) {
        ground.vertices.erase(ground.vertices.begin());
        ground.links.erase(ground.links.begin());
    }
    return ground;
}

void note_owners(const Circuits& circuits, const Run& run, Columns& columns) {
    for (const int v : run.vertices)
        if (const std::string& owner = circuits.vertex(v).owner;
            std::find(columns.begin(), columns.end(), owner) == columns.end())
            columns.push_back(owner);
}

/// In the order in which the line meets them, what only the others meet before the board, which comes last,
/// at its rails.
Columns columns_of(const Circuits& circuits) {
    Columns columns;
    note_owners(circuits, circuits.line, columns);
    const auto of_line = static_cast<std::ptrdiff_t>(columns.size());
    note_owners(circuits, circuits.neutral, columns);
    note_owners(circuits, circuits.ground, columns);
    if (of_line > 0)
        std::rotate(columns.begin() + of_line - 1, columns.begin() + of_line, columns.end());
    return columns;
}

/// How far the vertices of a run lie from the beginning of their columns.
std::vector<float> places_in_columns(const Circuits& circuits, const Lengths& lengths, const Run& run) {
    std::vector<float> places;
    for (std::size_t i = 0; i < run.vertices.size(); ++i) {
        const bool goes_on =
            i > 0 && circuits.vertex(run.vertices[i]).owner == circuits.vertex(run.vertices[i - 1]).owner;
        places.push_back(goes_on ? places.back() + lengths.of(run.links[i - 1]) : 0);
    }
    return places;
}

/// Where each column begins if they fill the drawing.
std::vector<float> starts_of(const std::vector<float>& widths, float room) {
    float sum = 0;
    for (const float w : widths)
        sum += w;
    const auto gaps = static_cast<float>(std::max<std::size_t>(1, widths.size() - 1));
    const float gap = std::max(kLeastGap, (room - sum) / gaps);
    std::vector<float> starts;
    float x = 0;
    for (const float w : widths) {
        starts.push_back(x);
        x += w + gap;
    }
    return starts;
}

void place_runs(const Circuits& circuits, const Lengths& lengths, float width, const Supply& supply,
                Positions& positions) {
    std::array<std::vector<float>, Supply::kRows> places;
    std::vector<float> widths(supply.columns.size(), 0);
    const auto column_at = [&](const Run& run, std::size_t i) {
        return column_of(supply.columns, circuits.vertex(run.vertices[i]).owner);
    };
    for (std::size_t r = 0; r < Supply::kRows; ++r) {
        const Run& run = supply.runs[r];
        places[r] = places_in_columns(circuits, lengths, run);
        for (std::size_t i = 0; i < run.vertices.size(); ++i)
            widths[column_at(run, i)] = std::max(widths[column_at(run, i)], places[r][i]);
    }
    const std::vector<float> starts = starts_of(widths, width - kToRail);
    for (std::size_t r = 0; r < Supply::kRows; ++r) {
        const Run& run = supply.runs[r];
        for (std::size_t i = 0; i < run.vertices.size(); ++i)
            positions[run.vertices[i]] = {{std::round(starts[column_at(run, i)] + places[r][i]), supply.y[r]},
                                          static_cast<int>(r),
                                          true};
    }
}

// ---- drawing ----

/// A run's own row; the rails have theirs from elsewhere, so that tracks to them and spots on them are left
/// out of all but the ground.
void draw_run(const Circuits& circuits, const Supply& supply, Supply::Row row, const Positions& positions,
              LadderBuilder& out) {
    const Run& run = supply.runs[row];
    std::vector<int> walk;
    for (std::size_t i = 0; i < run.vertices.size(); ++i) {
        const int v = run.vertices[i];
        const bool left_out = circuits.is_rail(v) && row != Supply::ground;
        if (i > 0) {
            const Link& link = circuits.link(run.links[i - 1]);
            const ImVec2 from = positions[run.vertices[i - 1]].at;
            const ImVec2 to{positions[v].at.x, supply.y[row]};
            if (link.kind == LinkKind::wire)
                out.add_wire(link, run.vertices[i - 1], {from, to}, {(from.x + to.x) / 2, supply.y[row]});
            else if (link.kind == LinkKind::part)
                out.add_symbol(link, from, to, false);
            else if (!left_out)
                out.add_track(link, {from, to});
        }
        if (!left_out)
            out.add_spot(v, positions[v]);
        if (const int spot = out.spot_of(v); spot >= 0)
            walk.push_back(spot);
    }
    if (row == Supply::ground && !run.vertices.empty())
        out.add_mark(Mark::Kind::ground, positions[run.vertices.back()].at);
    out.add_walk(std::move(walk));
}

/// The source stands between the beginnings of line and neutral.
void draw_source(const furnace::Model& model, const Circuits& circuits, float neutral_y,
                 const Positions& positions, LadderBuilder& out) {
    const ImVec2 hot = positions[circuits.line.vertices.front()].at;
    const ImVec2 low = positions[circuits.neutral.vertices.front()].at;
    const ImVec2 foot{hot.x, neutral_y};
    for (const Link& link : circuits.graph.links)
        if (link.kind == LinkKind::part && kind_of(model, link) == SymbolKind::source) {
            out.add_symbol(link, foot, hot, false);
            out.add_line(circuits.neutral.vertices.front(), foot, {low.x, neutral_y});
        }
}

/// The bond stands between neutral and ground.
void draw_bond(const Circuits& circuits, const Positions& positions, LadderBuilder& out) {
    const Run& ground = circuits.ground;
    if (ground.links.size() > 1 && begins_with_bond(circuits, ground))
        out.add_symbol(circuits.link(ground.links.front()), positions[ground.vertices[0]].at,
                       positions[ground.vertices[1]].at, false);
}

void mark_earth(const Circuits& circuits, const Positions& positions, LadderBuilder& out) {
    for (const int v : circuits.graph.earthed)
        if (!circuits.is_rail(v) && out.spot_of(v) >= 0) {
            const ImVec2 at = positions[v].at;
            const ImVec2 aside{at.x - kRowHalf, at.y};
            out.add_line(v, aside, at);
            out.add_mark(Mark::Kind::earth, aside);
        }
}

} // namespace

Supply place_supply(const Circuits& circuits, const Lengths& lengths, float width, Positions& positions) {
    Supply supply;
    if (circuits.line.links.empty())
        return supply;
    supply.runs = {without_bond(circuits, circuits.ground), circuits.neutral, circuits.line};
    for (std::size_t r = 0; r < Supply::kRows; ++r)
        supply.y[r] = kTop + kRowHalf + kPitch * static_cast<float>(r);
    supply.columns = columns_of(circuits);
    place_runs(circuits, lengths, width, supply, positions);
    return supply;
}

void draw_supply(const furnace::Model& model, const Circuits& circuits, const Supply& supply,
                 const Positions& positions, LadderBuilder& out) {
    if (supply.empty())
        return;
    for (const Supply::Row row : {Supply::ground, Supply::neutral, Supply::line})
        draw_run(circuits, supply, row, positions, out);
    if (circuits.neutral.vertices.empty())
        return;
    draw_source(model, circuits, supply.y[Supply::neutral], positions, out);
    draw_bond(circuits, positions, out);
    mark_earth(circuits, positions, out);
}

} // namespace lightoff::diagram
