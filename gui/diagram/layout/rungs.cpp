// SPDX-License-Identifier: MIT
#include "gui/diagram/layout/rungs.hpp"

#include "gui/diagram/layout/sizes.hpp"

#include <algorithm>
#include <map>

namespace lightoff::diagram {
namespace {

/// One circuit of the stack.
class Rung {
public:
    Rung(const Circuits& circuits, const Circuit& circuit, const PlacedCircuit& placed,
         const Positions& positions, float width, LadderBuilder& out)
        : circuits_(circuits), circuit_(circuit), placed_(placed), positions_(positions), width_(width),
          out_(out) {}

    void draw() {
        for (const std::size_t run : from_the_top())
            draw_run(circuit_.runs[run], placed_.runs[run]);
        for (const Run& run : circuit_.runs)
            add_walk(run);
        mark_branches();
        for (const int v : circuit_.taps)
            out_.add_mark(Mark::Kind::reads, at(v));
    }

private:
    [[nodiscard]] std::vector<std::size_t> from_the_top() const {
        std::vector<std::size_t> order;
        for (std::size_t i = 0; i < circuit_.runs.size(); ++i)
            order.push_back(i);
        std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
            return placed_.runs[a].row < placed_.runs[b].row;
        });
        return order;
    }

    // ---- links and spots ----

    void draw_run(const Run& run, const PlacedRun& placed) {
        for (std::size_t i = 0; i < run.vertices.size(); ++i) {
            if (i > 0)
                draw_link(run, i - 1, placed.y);
            const int v = run.vertices[i];
            if (circuit_.low_voltage)
                out_.note_low_voltage(v);
            if (!is_rail(v) && positions_[v].row == placed.row)
                out_.add_spot(v, positions_[v]);
        }
    }

    void draw_link(const Run& run, std::size_t i, float y) {
        const Link& link = circuits_.link(run.links[i]);
        const ImVec2 from = in_row(run, i, y);
        const ImVec2 to = in_row(run, i + 1, y);
        if (i == 0 && run.left == Rail::ground)
            out_.add_mark(Mark::Kind::ground, from);
        if (i + 1 == run.links.size() && run.right == Rail::ground)
            out_.add_mark(Mark::Kind::ground, to);
        std::vector<ImVec2> path;
        if (const int v = run.vertices[i]; is_in_other_row(v, y))
            path.push_back(at(v));
        path.push_back(from);
        path.push_back(to);
        if (const int v = run.vertices[i + 1]; is_in_other_row(v, y))
            path.push_back(at(v));
        if (link.kind == LinkKind::wire)
            out_.add_wire(link, run.vertices[i], std::move(path), {(from.x + to.x) / 2, y});
        else if (link.kind == LinkKind::part)
            draw_part(run, i, path, from, to);
        else
            out_.add_track(link, std::move(path));
    }

    /// A part lies in the run's row, with plain uprights to ends that don't.
    void draw_part(const Run& run, std::size_t i, const std::vector<ImVec2>& path, ImVec2 from, ImVec2 to) {
        out_.add_symbol(circuits_.link(run.links[i]), from, to, circuit_.low_voltage);
        if (path.front().y != from.y)
            out_.add_line(run.vertices[i], path.front(), from);
        if (path.back().y != to.y)
            out_.add_line(run.vertices[i + 1], to, path.back());
    }

    /// Where a run's vertex stands in the run's own row.
    [[nodiscard]] ImVec2 in_row(const Run& run, std::size_t i, float y) const {
        if (const int v = run.vertices[i]; !is_rail(v))
            return {at(v).x, y};
        if (i == 0)
            return {run.left == Rail::ground ? placed_.ground_start : 0, y};
        return {run.right == Rail::ground ? width_ - kGroundInset : width_, y};
    }

    [[nodiscard]] bool is_in_other_row(int v, float y) const { return !is_rail(v) && at(v).y != y; }

    // ---- walks ----

    /// The spots of a run; an end that is a splice goes on along the run that it is spliced into.
    void add_walk(const Run& run) {
        std::vector<int> walk = beyond(run, run.vertices.front(), -1);
        std::reverse(walk.begin(), walk.end());
        for (const int v : run.vertices)
            if (!is_rail(v) && out_.spot_of(v) >= 0)
                walk.push_back(out_.spot_of(v));
        for (const int spot : beyond(run, run.vertices.back(), 1))
            walk.push_back(spot);
        out_.add_walk(std::move(walk));
    }

    /// The spots that follow a splice, from it outwards; none if the end is no splice.
    [[nodiscard]] std::vector<int> beyond(const Run& run, int splice, int step) const {
        if (is_rail(splice) || out_.spot_of(splice) >= 0)
            return {};
        for (const Run& home : circuit_.runs) {
            if (&home == &run)
                break;
            const std::vector<int>& vs = home.vertices;
            if (const auto it = std::find(vs.begin(), vs.end(), splice); it != vs.end())
                return spots_from(vs, static_cast<int>(it - vs.begin()) + step, step);
        }
        return {};
    }

    [[nodiscard]] std::vector<int> spots_from(const std::vector<int>& vertices, int first, int step) const {
        std::vector<int> spots;
        for (int i = first; i >= 0 && i < static_cast<int>(vertices.size()); i += step)
            if (const int spot = out_.spot_of(vertices[static_cast<std::size_t>(i)]); spot >= 0)
                spots.push_back(spot);
        return spots;
    }

    // ---- marks ----

    /// A dot where three lines meet that no terminal marks.
    void mark_branches() {
        std::map<int, int> lines;
        for (const Run& run : circuit_.runs)
            for (const int l : run.links)
                for (const int v : {circuits_.link(l).a, circuits_.link(l).b})
                    ++lines[v];
        for (const auto& [v, count] : lines)
            if (count > 2 && !is_rail(v) && out_.spot_of(v) < 0)
                out_.add_mark(Mark::Kind::branch, at(v));
    }

    [[nodiscard]] bool is_rail(int v) const { return circuits_.is_rail(v); }
    [[nodiscard]] ImVec2 at(int v) const { return positions_[v].at; }

    const Circuits& circuits_;
    const Circuit& circuit_;
    const PlacedCircuit& placed_;
    const Positions& positions_;
    float width_;
    LadderBuilder& out_;
};

} // namespace

void draw_rungs(const Circuits& circuits, const Stack& stack, const Positions& positions, float width,
                LadderBuilder& out) {
    for (std::size_t i = 0; i < circuits.circuits.size(); ++i)
        Rung(circuits, circuits.circuits[i], stack.circuits[i], positions, width, out).draw();
}

} // namespace lightoff::diagram
