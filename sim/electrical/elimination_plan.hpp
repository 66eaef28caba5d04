// SPDX-License-Identifier: MIT
#pragma once
#include <span>
#include <utility>
#include <vector>

namespace lightoff::electrical {

using NodePair = std::pair<int, int>;

/// Order of elimination of the nodes of a network (minimum degree, ties by index, `kept` nodes last)
/// and where every branch of the star-mesh transformation goes. Depends on which pairs of nodes are
/// joined, not on any value.
///
/// Branch admittances stand in one array: y[i] joins node i to earth, the rest join pairs.
struct EliminationPlan {
    struct Step {
        int node = 0;
        int first = 0; ///< of its neighbours, in `neighbours`; their branches are y[node_count + first ...]
        int count = 0;
        int target = 0; ///< first of its count*(count-1)/2 mesh branches, in `targets`
    };
    int node_count = 0; ///< earth (0) included
    int first_kept = 0; ///< index of the first step that eliminates a kept node
    std::vector<Step> steps;
    std::vector<int> step_of; ///< by node
    std::vector<int> neighbours;
    std::vector<int> targets; ///< index into y for neighbours (1,0), (2,0), (2,1), (3,0) ...

    [[nodiscard]] int branch_count() const { return node_count + static_cast<int>(neighbours.size()); }
    /// Index into y of the branch between two nodes, which must be joined or one of them earth
    /// (both earth: y[0], which nobody reads).
    [[nodiscard]] int branch(int a, int b) const;
};

EliminationPlan plan_elimination(int node_count, std::span<const NodePair> joined, std::span<const int> kept);

} // namespace lightoff::electrical
