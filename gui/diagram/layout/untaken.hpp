// SPDX-License-Identifier: MIT
#pragma once
#include "gui/diagram/layout/rails.hpp"

#include <functional>

namespace lightoff::diagram {

/// A chain from left to right: vertices.size() == links.size() + 1. Ends on a rail, on a vertex of an earlier
/// run of its circuit, or nowhere.
struct Run {
    std::vector<int> vertices;
    std::vector<int> links;
    Rail left = Rail::none;
    Rail right = Rail::none;
    bool stub = false; ///< one end leads nowhere
};

Run reversed(Run run);

/// The links that no run has taken yet, and ways along them. A way never passes a rail.
class Untaken {
public:
    Untaken(const Graph& graph, const Rails& rails);

    void take(int link);
    void take(const Run& run);
    [[nodiscard]] bool has(int link) const { return !taken_[static_cast<std::size_t>(link)]; }

    /// Links that hang together with one.
    [[nodiscard]] std::vector<int> together_with(int link) const;
    /// The shortest way over links that may be used; empty if there is none.
    [[nodiscard]] Run shortest(int from, int to, const std::function<bool(const Link&)>& may) const;
    /// The shortest way from a vertex along some links to a rail or to where a run has been; empty if there
    /// is none.
    [[nodiscard]] Run parallel_from(int start, const std::vector<int>& links) const;
    /// The way along some links that is worth most, to a goal or (-1) to anywhere; `worth` by link. No links
    /// if there is none.
    [[nodiscard]] Run best_from(int start, int goal, const std::vector<int>& links,
                                const std::vector<int>& worth) const;

private:
    [[nodiscard]] Run way_back(const std::vector<int>& came, int from, int to) const;

    const Graph& graph_;
    const Rails& rails_;
    std::vector<bool> taken_;  ///< by link
    std::vector<bool> placed_; ///< by vertex: a run has been there
};

} // namespace lightoff::diagram
