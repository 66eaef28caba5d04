// SPDX-License-Identifier: MIT
#include "gui/diagram/layout/across.hpp"

#include <algorithm>
#include <cmath>

namespace lightoff::diagram {
namespace {

using Counts = std::map<int, int>; ///< by vertex

bool is_wire(const Circuits& circuits, const Run& run, std::size_t i) {
    return circuits.link(run.links[i]).kind == LinkKind::wire;
}

// ---- wires on either side ----

/// Most wires on a way to `to`, if the way comes over link `i` of a run.
void count_wire(const Circuits& circuits, const Run& run, std::size_t i, int from, int to, Counts& count) {
    const int own = is_wire(circuits, run, i) ? 1 : 0;
    const int so_far = circuits.is_rail(from) ? 0 : count[from];
    count[to] = std::max(count[to], so_far + own);
}

/// How much of a vertex's play lies left of it: by the wires on either side, so that wires take up the room
/// and what is screwed together stays together. Never falls from left to right, so lengths are kept.
std::map<int, float> shares_of(const Circuits& circuits, const Circuit& circuit) {
    Counts before, after;
    for (std::size_t pass = 0; pass <= circuit.runs.size(); ++pass)
        for (const Run& run : circuit.runs)
            for (std::size_t i = 0; i < run.links.size(); ++i) {
                const std::size_t k = run.links.size() - 1 - i;
                count_wire(circuits, run, i, run.vertices[i], run.vertices[i + 1], before);
                count_wire(circuits, run, k, run.vertices[k + 1], run.vertices[k], after);
            }
    std::map<int, float> shares;
    for (const Run& run : circuit.runs)
        for (const int v : run.vertices) {
            const int sum = before[v] + after[v];
            shares[v] = sum > 0                      ? static_cast<float>(before[v]) / static_cast<float>(sum)
                        : circuit.left == Rail::none ? 1.0F
                                                     : 0.0F;
        }
    return shares;
}

// ---- parts at their own length ----

/// Links that come to each vertex from the left and leave it to the right.
struct Joins {
    Counts in, out;
    std::map<int, bool> wire_in; ///< whether the last that comes in is a wire
};

Joins joins_of(const Circuits& circuits, const Circuit& circuit) {
    Joins joins;
    for (const Run& run : circuit.runs)
        for (std::size_t i = 0; i < run.links.size(); ++i) {
            ++joins.out[run.vertices[i]];
            ++joins.in[run.vertices[i + 1]];
            joins.wire_in[run.vertices[i + 1]] = is_wire(circuits, run, i);
        }
    return joins;
}

/// Whether a link of a run has a length of its own, no rail at either end.
bool is_rigid(const Circuits& circuits, const Run& run, std::size_t i) {
    return !is_wire(circuits, run, i) && !circuits.is_rail(run.vertices[i]) &&
           !circuits.is_rail(run.vertices[i + 1]);
}

/// Parts keep their own length wherever a wire on one side can take up the rest.
void pull_together(const Circuits& circuits, const Lengths& lengths, const Circuit& circuit,
                   const std::map<int, float>& shares, const Xs& pinned, Xs& x) {
    const Joins joins = joins_of(circuits, circuit);
    const auto one_in = [&](int v) { return joins.in.count(v) != 0 && joins.in.at(v) == 1; };
    for (const Run& run : circuit.runs)
        for (std::size_t i = 0; i < run.links.size(); ++i) {
            const int a = run.vertices[i], b = run.vertices[i + 1];
            if (is_rigid(circuits, run, i) && one_in(b) && shares.at(b) < 1 && pinned.count(b) == 0)
                x.at(b) = x.at(a) + lengths.in(run, i);
        }
    for (const Run& run : circuit.runs)
        for (std::size_t i = run.links.size(); i-- > 0;) {
            const int a = run.vertices[i], b = run.vertices[i + 1];
            if (is_rigid(circuits, run, i) && joins.out.at(a) == 1 && one_in(a) && joins.wire_in.at(a) &&
                pinned.count(a) == 0)
                x.at(a) = x.at(b) - lengths.in(run, i);
        }
}

// ---- the edges of the board ----

/// Least and most x at which the vertices lie that are asked to lie somewhere.
struct Bounds {
    Xs least, most;
};

/// The pins at the board's edge in their columns, as far as the circuit has room for it.
Bounds bounds_of(const Circuits& circuits, const Pushing& pushing, const Circuit& circuit, const Frame& frame,
                 const Xs& pinned) {
    const float room = frame.width - pushing.least_width();
    const Xs close = pushing.to_left({});
    const Xs far = pushing.to_right(frame.width, {});
    Bounds bounds{pinned, pinned};
    for (const Run& run : circuit.runs) {
        if (const std::vector<int> edge = edge_of(circuits, run, Side::left); !edge.empty()) {
            const float x = std::min(frame.columns.left, close.at(edge.back()) + room / 2);
            const auto [it, fresh] = bounds.least.try_emplace(edge.back(), 0.0F);
            it->second = std::max(x, it->second);
        }
        if (const std::vector<int> edge = edge_of(circuits, run, Side::right); !edge.empty())
            bounds.most[edge.back()] =
                std::max(frame.width - frame.columns.right, far.at(edge.back()) - room / 2);
    }
    return bounds;
}

} // namespace

EdgeColumns find_columns(const Circuits& circuits, const Lengths& lengths, float width, bool low_voltage) {
    EdgeColumns columns;
    for (const Circuit& circuit : circuits.circuits) {
        if (circuit.low_voltage != low_voltage)
            continue;
        const Pushing pushing(circuits, lengths, circuit, 0);
        const Xs close = pushing.to_left({});
        const Xs far = pushing.to_right(width, {});
        for (const Run& run : circuit.runs) {
            if (const std::vector<int> edge = edge_of(circuits, run, Side::left); !edge.empty())
                columns.left = std::max(columns.left, close.at(edge.back()));
            if (const std::vector<int> edge = edge_of(circuits, run, Side::right); !edge.empty())
                columns.right = std::max(columns.right, width - far.at(edge.back()));
        }
    }
    return columns;
}

Xs place_across(const Circuits& circuits, const Lengths& lengths, const Circuit& circuit, const Frame& frame,
                const Xs& pinned) {
    const Pushing pushing(circuits, lengths, circuit, frame.ground_start);
    const Bounds bounds = bounds_of(circuits, pushing, circuit, frame, pinned);
    const std::map<int, float> shares = shares_of(circuits, circuit);
    Xs x = pushing.to_left(bounds.least);
    const Xs late = pushing.to_right(frame.width, bounds.most);
    for (auto& [v, at] : x)
        at = std::round(at + shares.at(v) * std::max(0.0F, late.at(v) - at));
    pull_together(circuits, lengths, circuit, shares, pinned, x);
    return x;
}

} // namespace lightoff::diagram
