// SPDX-License-Identifier: MIT
#include "gui/diagram/layout/rows.hpp"

#include "gui/diagram/layout/sizes.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace lightoff::diagram {
namespace {

constexpr float kApart = 14;         ///< between two runs in one row
constexpr float kOverlapCost = 1000; ///< in rows: never, if there is another way
constexpr float kCrossingCost = 3;
constexpr int kNoRow = -1;

/// Left and right of what a run covers, uprights included.
struct Span {
    float left = 0, right = 0;

    [[nodiscard]] float width() const { return right - left; }
    [[nodiscard]] bool is_near(Span other) const {
        return left < other.right + kApart && other.left < right + kApart;
    }
    [[nodiscard]] bool is_beside(Span other) const { return right <= other.left || other.right <= left; }
    [[nodiscard]] bool has_inside(float x) const { return x > left && x < right; }
};

std::array<int, 2> ends_of(const Run& run) {
    return {run.vertices.front(), run.vertices.back()};
}

bool contains(const Run& run, int vertex) {
    return std::find(run.vertices.begin(), run.vertices.end(), vertex) != run.vertices.end();
}

bool share_an_end(const Run& a, const Run& b) {
    for (const int v : ends_of(a))
        if (v == b.vertices.front() || v == b.vertices.back())
            return true;
    return false;
}

/// Gives one run after the other its row.
class RowChooser {
public:
    RowChooser(const Circuits& circuits, const Circuit& circuit, const Xs& x, float width)
        : circuits_(circuits), runs_(circuit.runs), x_(x), row_(circuit.runs.size(), kNoRow) {
        for (const Run& run : runs_)
            spans_.push_back(span_of(run, width));
    }

    std::vector<int> choose() {
        row_[0] = 0;
        const std::vector<std::size_t> order = by_reach();
        for (bool some = true; some;) {
            some = false;
            for (const std::size_t i : order)
                if (row_[i] == kNoRow && parents_have_rows(i)) {
                    row_[i] = best_row(i);
                    some = true;
                }
        }
        std::replace(row_.begin(), row_.end(), kNoRow, 0);
        return std::move(row_);
    }

private:
    [[nodiscard]] Span span_of(const Run& run, float width) const {
        const auto x = [&](int v, Rail rail, float rail_x) {
            return !circuits_.is_rail(v)  ? x_.at(v)
                   : rail == Rail::ground ? std::abs(rail_x - kGroundInset)
                                          : rail_x;
        };
        const float a = x(run.vertices.front(), run.left, 0);
        const float b = x(run.vertices.back(), run.right, width);
        return {std::min(a, b), std::max(a, b)};
    }

    /// The branches in the order in which they choose.
    [[nodiscard]] std::vector<std::size_t> by_reach() const {
        std::vector<std::size_t> order;
        for (std::size_t i = 1; i < runs_.size(); ++i)
            order.push_back(i);
        std::stable_sort(order.begin(), order.end(),
                         [&](std::size_t i, std::size_t k) { return reach(i) < reach(k); });
        return order;
    }

    [[nodiscard]] float reach(std::size_t i) const {
        const Run& run = runs_[i];
        const bool from_left =
            run.left != Rail::none || (run.stub && !circuits_.is_rail(run.vertices.front()));
        return from_left ? spans_[i].right : spans_[i].width();
    }

    /// Whether the runs that this one's ends lie in have theirs.
    [[nodiscard]] bool parents_have_rows(std::size_t i) const {
        for (const int end : ends_of(runs_[i]))
            for (std::size_t k = 0; k < i; ++k)
                if (contains(runs_[k], end)) {
                    if (row_[k] == kNoRow)
                        return false;
                    break;
                }
        return true;
    }

    [[nodiscard]] int best_row(std::size_t i) const {
        int best = 1;
        float least = 1e9F;
        for (int candidate = 1; candidate <= static_cast<int>(runs_.size()); ++candidate)
            if (const float cost = cost_of(i, candidate); cost < least) {
                least = cost;
                best = candidate;
            }
        return best;
    }

    [[nodiscard]] float cost_of(std::size_t i, int candidate) const {
        auto cost = static_cast<float>(candidate);
        for (std::size_t k = 0; k < runs_.size(); ++k) {
            if (row_[k] == kNoRow)
                continue;
            if (row_[k] == candidate && collide(i, k))
                cost += kOverlapCost;
            cost += kCrossingCost * static_cast<float>(crossings(i, candidate, k));
        }
        return cost;
    }

    /// Whether two runs can't lie in one row; those that meet end to end can.
    [[nodiscard]] bool collide(std::size_t i, std::size_t k) const {
        const bool end_to_end = share_an_end(runs_[i], runs_[k]) && spans_[i].is_beside(spans_[k]);
        return spans_[i].is_near(spans_[k]) && !end_to_end;
    }

    /// How many of a run's uprights would cross another.
    [[nodiscard]] int crossings(std::size_t i, int candidate, std::size_t k) const {
        int count = 0;
        for (const int end : ends_of(runs_[i])) {
            const int home = circuits_.is_rail(end) ? kNoRow : row_of_vertex(end);
            const bool between =
                home != kNoRow && row_[k] > std::min(home, candidate) && row_[k] < std::max(home, candidate);
            count += between && spans_[k].has_inside(x_.at(end)) ? 1 : 0;
        }
        return count;
    }

    [[nodiscard]] int row_of_vertex(int v) const {
        for (std::size_t i = 0; i < runs_.size(); ++i)
            if (row_[i] != kNoRow && contains(runs_[i], v))
                return row_[i];
        return kNoRow;
    }

    const Circuits& circuits_;
    const std::vector<Run>& runs_;
    const Xs& x_;
    std::vector<Span> spans_;
    std::vector<int> row_;
};

} // namespace

std::vector<int> rows_of(const Circuits& circuits, const Circuit& circuit, const Xs& x, float width) {
    return RowChooser(circuits, circuit, x, width).choose();
}

} // namespace lightoff::diagram
