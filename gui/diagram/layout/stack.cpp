// SPDX-License-Identifier: MIT
#include "gui/diagram/layout/stack.hpp"

#include "bench/access.hpp"
#include "gui/diagram/layout/across.hpp"
#include "gui/diagram/layout/rows.hpp"
#include "gui/diagram/layout/sizes.hpp"
#include "gui/diagram/layout/symbol_names.hpp"

#include <algorithm>

namespace lightoff::diagram {
namespace {

constexpr float kTightPitch = 15; ///< where a row holds no test points
constexpr float kCoreGap = 34;    ///< between the windings of a transformer
constexpr float kSectionGap = 12; ///< between the voltages
constexpr float kHeadGap = 9;     ///< above a circuit with a name over it

/// Whether a motor or something in the living room is in it: its name stands over its outline.
bool has_name_above(const furnace::Model& model, const Circuits& circuits, const Circuit& circuit) {
    for (const Run& run : circuit.runs) {
        for (const int l : run.links)
            if (const Link& link = circuits.link(l);
                link.kind == LinkKind::part && kind_of(model, link) == SymbolKind::winding)
                return true;
        for (const int v : run.vertices)
            if (bench::where_is(model, circuits.vertex(v).owner) == furnace::Place::Where::living_room)
                return true;
    }
    return false;
}

/// To the row above: test points and their names need room.
float pitch_of(const Circuits& circuits, const Circuit& circuit, const std::vector<int>& row, int r) {
    for (std::size_t i = 0; i < circuit.runs.size(); ++i)
        if (row[i] == r)
            for (const int v : circuit.runs[i].vertices)
                if (circuits.vertex(v).terminal >= 0)
                    return kPitch;
    return kTightPitch;
}

/// Each run in its row; `depth` goes down by all of them.
std::vector<PlacedRun> place_down(const Circuits& circuits, const Circuit& circuit,
                                  const std::vector<int>& row, Depth& depth) {
    std::vector<float> y;
    const int last = *std::max_element(row.begin(), row.end());
    for (int r = 0; r <= last; ++r) {
        depth.y += pitch_of(circuits, circuit, row, r);
        y.push_back(depth.y);
    }
    std::vector<PlacedRun> runs;
    for (const int r : row)
        runs.push_back({y[static_cast<std::size_t>(r)], depth.row + r});
    depth.row += last + 1;
    return runs;
}

/// Vertices lie in the row of the run that brought them in.
void settle(const Circuits& circuits, const Circuit& circuit, const std::vector<PlacedRun>& runs, const Xs& x,
            Positions& positions) {
    for (const auto& [v, at] : x)
        positions[v].at.x = at;
    for (std::size_t i = 0; i < circuit.runs.size(); ++i)
        for (const int v : circuit.runs[i].vertices)
            if (Position& position = positions[v]; !circuits.is_rail(v) && !position.settled) {
                position.at.y = runs[i].y;
                position.row = runs[i].row;
                position.settled = true;
            }
}

/// The left end of a circuit's transformer winding; -1 if it has none.
int start_of_winding(const Circuit& circuit) {
    if (circuit.winding >= 0)
        for (const Run& run : circuit.runs)
            for (std::size_t i = 0; i < run.links.size(); ++i)
                if (run.links[i] == circuit.winding)
                    return run.vertices[i];
    return -1;
}

/// The windings of a transformer face each other: that of the circuit below lies where this one's does.
Xs pinned_below(const Circuit& circuit, const Circuit& below, const Positions& positions) {
    const int here = start_of_winding(circuit);
    const int there = start_of_winding(below);
    return here >= 0 && there >= 0 ? Xs{{there, positions[here].at.x}} : Xs{};
}

void begin_low_voltage(const Circuit& first, Stack& stack) {
    stack.has_low = true;
    stack.high_end = stack.depth.y;
    stack.depth.y += first.is_secondary ? kCoreGap - kPitch : kSectionGap;
    stack.low_start = stack.depth.y + kPitch;
}

} // namespace

Stack stack_circuits(const furnace::Model& model, const Circuits& circuits, const Lengths& lengths,
                     float width, Depth depth, Positions& positions) {
    const EdgeColumns high = find_columns(circuits, lengths, width, false);
    const EdgeColumns low = find_columns(circuits, lengths, width, true);
    Stack stack;
    stack.depth = depth;
    const Circuit* above = nullptr;
    for (const Circuit& circuit : circuits.circuits) {
        if (circuit.low_voltage && !stack.has_low)
            begin_low_voltage(circuit, stack);
        if (has_name_above(model, circuits, circuit))
            stack.depth.y += kHeadGap;
        // A run from the cabinet's metal to the right rail is kept short.
        const float ground_start = circuit.left == Rail::ground
                                       ? width - Pushing(circuits, lengths, circuit, 0).least_width() - kPitch
                                       : 0;
        const Xs x =
            place_across(circuits, lengths, circuit, {width, ground_start, circuit.low_voltage ? low : high},
                         above != nullptr ? pinned_below(*above, circuit, positions) : Xs{});
        std::vector<PlacedRun> runs =
            place_down(circuits, circuit, rows_of(circuits, circuit, x, width), stack.depth);
        settle(circuits, circuit, runs, x, positions);
        stack.circuits.push_back({ground_start, std::move(runs)});
        above = &circuit;
    }
    if (!stack.has_low)
        stack.high_end = stack.depth.y;
    return stack;
}

float lowest_on(const Circuits& circuits, const Stack& stack, Rail rail) {
    float lowest = stack.low_start;
    for (std::size_t c = 0; c < circuits.circuits.size(); ++c)
        for (std::size_t i = 0; i < circuits.circuits[c].runs.size(); ++i)
            if (const Run& run = circuits.circuits[c].runs[i]; run.left == rail || run.right == rail)
                lowest = std::max(lowest, stack.circuits[c].runs[i].y);
    return lowest;
}

} // namespace lightoff::diagram
