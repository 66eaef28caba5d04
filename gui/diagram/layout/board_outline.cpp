// SPDX-License-Identifier: MIT
#include "gui/diagram/layout/board_outline.hpp"

#include "gui/diagram/layout/rail_lines.hpp"
#include "gui/diagram/names.hpp"

#include <algorithm>

namespace lightoff::diagram {
namespace {

constexpr float kRailPad = 14; ///< of the board beyond a rail
constexpr float kPinPad = 10;  ///< of the board round a pin that stands alone

/// Collects the pieces of the outline.
class Outline {
public:
    Outline(const Circuits& circuits, const Positions& positions, float width)
        : circuits_(circuits), positions_(positions), width_(width), board_(circuits.board()) {}

    /// Where the supply comes onto the board: from there its tracks lead to both rails.
    void add_bus(float bus) { add({-kRailPad, bus - kBusPitch / 2}, {right_end(), bus + kRowHalf}); }
    void add_entries(const Supply& supply) {
        const float line_top = supply.y[Supply::line] - kRowHalf;
        add({last_before_rail(circuits_.line, positions_).x, line_top},
            {right_end(), supply.bus() - kBusPitch / 2});
        if (!circuits_.neutral.links.empty())
            add({last_before_rail(circuits_.neutral, positions_).x, supply.y[Supply::neutral] - kRowHalf},
                {right_end(), line_top});
    }

    /// Stretches of a run that stay within the board.
    void add_stretches(const Run& run, float y) {
        for (std::size_t i = 0; i < run.vertices.size(); ++i)
            if (is_inside(run.vertices[i])) {
                const std::size_t last = end_of_stretch(run, i);
                add_stretch(run, i, last, y);
                i = last;
            }
    }

    /// A rail and what stands close to it.
    void add_rail(Rail rail, float from, float to) {
        const int v = circuits_.rail_vertex(rail);
        if (v < 0 || circuits_.vertex(v).owner != board_)
            return;
        const float edge = edge_at(rail);
        if (is_left(rail))
            add({-kRailPad, from - kRowHalf}, {edge, to + kRowHalf});
        else
            add({edge, from - kRowHalf}, {right_end(), to + kRowHalf});
    }

    [[nodiscard]] std::vector<Block> take() {
        if (pieces_.empty())
            return {};
        return {{Block::Kind::unit, spaced(board_), std::move(pieces_)}};
    }

private:
    void add(ImVec2 min, ImVec2 max) { pieces_.push_back({min, max}); }

    [[nodiscard]] static bool is_left(Rail rail) { return rail == Rail::line || rail == Rail::feed; }
    [[nodiscard]] float right_end() const { return width_ + kRailPad; }

    [[nodiscard]] bool is_inside(int v) const {
        return circuits_.vertex(v).owner == board_ && !circuits_.vertex(v).lug;
    }

    [[nodiscard]] std::size_t end_of_stretch(const Run& run, std::size_t i) const {
        while (i + 1 < run.vertices.size() && is_inside(run.vertices[i + 1]) &&
               circuits_.link(run.links[i]).owner == board_)
            ++i;
        return i;
    }

    void add_stretch(const Run& run, std::size_t first, std::size_t last, float y) {
        const bool single = first == last;
        if (single && circuits_.is_rail(run.vertices[first]))
            return; // only a tap off the rail
        const float pad = single ? kPinPad : 0;
        float from = x_of(run, first) - pad;
        float to = x_of(run, last) + pad;
        if (single && first == 0 && leads_nowhere(run)) { // a parked lead: its terminal stands in the edge
            from = -kRailPad;
            to = x_of(run, first);
        }
        add({std::min(from, to), y - kRowHalf}, {std::max(from, to), y + kRowHalf});
    }

    [[nodiscard]] static bool leads_nowhere(const Run& run) {
        return run.stub && run.left == Rail::none && run.right == Rail::none;
    }

    [[nodiscard]] float x_of(const Run& run, std::size_t i) const {
        if (const int v = run.vertices[i]; !circuits_.is_rail(v))
            return positions_[v].at.x;
        return i == 0 ? -kRailPad : right_end();
    }

    /// How far the board reaches from a rail in every row: to the pin that lies closest to the rail.
    [[nodiscard]] float edge_at(Rail rail) const {
        const Side side = is_left(rail) ? Side::left : Side::right;
        float edge = side == Side::left ? width_ : 0;
        bool found = false;
        for (const Circuit& circuit : circuits_.circuits)
            for (const Run& run : circuit.runs) {
                if ((side == Side::left ? run.left : run.right) != rail)
                    continue;
                const std::vector<int> pins = edge_of(circuits_, run, side);
                if (pins.empty() || circuits_.vertex(pins.back()).terminal < 0)
                    continue;
                const float x = positions_[pins.back()].at.x;
                edge = side == Side::left ? std::min(edge, x) : std::max(edge, x);
                found = true;
            }
        return found ? edge : side == Side::left ? kRailPad : width_ - kRailPad;
    }

    const Circuits& circuits_;
    const Positions& positions_;
    float width_;
    std::string board_;
    std::vector<canvas::Rect> pieces_;
};

} // namespace

std::vector<Block> board_outline(const Circuits& circuits, const Supply& supply, const Stack& stack,
                                 const Positions& positions, float width) {
    Outline outline(circuits, positions, width);
    const bool fed_on_board =
        !supply.empty() && circuits.vertex(circuits.line.vertices.back()).owner == circuits.board();
    if (fed_on_board)
        outline.add_bus(supply.bus());
    for (std::size_t c = 0; c < circuits.circuits.size(); ++c)
        for (std::size_t i = 0; i < circuits.circuits[c].runs.size(); ++i)
            outline.add_stretches(circuits.circuits[c].runs[i], stack.circuits[c].runs[i].y);
    if (fed_on_board)
        outline.add_entries(supply);
    for (const Rail rail : {Rail::line, Rail::neutral})
        outline.add_rail(rail, supply.bus(), stack.high_end);
    if (stack.has_low)
        for (const Rail rail : {Rail::feed, Rail::common})
            outline.add_rail(rail, stack.low_start, lowest_on(circuits, stack, rail));
    return outline.take();
}

} // namespace lightoff::diagram
