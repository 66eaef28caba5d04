// SPDX-License-Identifier: MIT
#include "electrical/elimination_plan.hpp"
#include "electrical/netlist.hpp"
#include <array>
#include <bit>
#include <cstdint>

namespace lightoff::electrical {
namespace {

/// A set of nodes.
class NodeSet {
public:
    void insert(int i) { words_[word(i)] |= bit(i); }
    void erase(int i) { words_[word(i)] &= ~bit(i); }
    void unite(const NodeSet& o) {
        for (std::size_t w = 0; w < words_.size(); ++w)
            words_[w] |= o.words_[w];
    }
    [[nodiscard]] bool contains(int i) const { return (words_[word(i)] & bit(i)) != 0; }
    [[nodiscard]] int size() const {
        int n = 0;
        for (const std::uint64_t w : words_)
            n += std::popcount(w);
        return n;
    }

private:
    static std::size_t word(int i) { return static_cast<std::size_t>(i) / 64; }
    static std::uint64_t bit(int i) { return std::uint64_t{1} << (static_cast<unsigned>(i) % 64U); }
    std::array<std::uint64_t, kMaxNodes / 64> words_{};
};

int least_joined(const std::vector<int>& degrees, const NodeSet& left, const NodeSet& kept, bool want_kept) {
    int best = -1;
    int best_degree = 0;
    for (int i = 1; i < static_cast<int>(degrees.size()); ++i) {
        if (!left.contains(i) || kept.contains(i) != want_kept)
            continue;
        const int degree = degrees[static_cast<std::size_t>(i)];
        if (best < 0 || degree < best_degree) {
            best = i;
            best_degree = degree;
        }
    }
    return best;
}

} // namespace

int EliminationPlan::branch(int a, int b) const {
    if (a == 0)
        return b;
    if (b == 0)
        return a;
    const int sa = step_of[static_cast<std::size_t>(a)];
    const int sb = step_of[static_cast<std::size_t>(b)];
    const Step& owner = steps[static_cast<std::size_t>(sa < sb ? sa : sb)];
    const int other = sa < sb ? b : a;
    for (int k = owner.first; k < owner.first + owner.count; ++k)
        if (neighbours[static_cast<std::size_t>(k)] == other)
            return node_count + k;
    return 0; // not joined: the caller's mistake; y[0] has no effect
}

EliminationPlan plan_elimination(int node_count, std::span<const NodePair> pairs,
                                 std::span<const int> kept_nodes) {
    std::vector<NodeSet> joined(static_cast<std::size_t>(node_count));
    const auto set_of = [&](int i) -> NodeSet& { return joined[static_cast<std::size_t>(i)]; };
    for (const auto& [a, b] : pairs) {
        if (a == 0 || b == 0 || a == b)
            continue;
        set_of(a).insert(b);
        set_of(b).insert(a);
    }
    std::vector<int> degrees; // counted anew only where a step changes them
    for (const NodeSet& others : joined)
        degrees.push_back(others.size());
    NodeSet kept;
    for (const int k : kept_nodes)
        if (k != 0)
            kept.insert(k);
    NodeSet left;
    for (int i = 1; i < node_count; ++i)
        left.insert(i);

    EliminationPlan plan;
    plan.node_count = node_count;
    plan.step_of.assign(static_cast<std::size_t>(node_count), -1);
    plan.first_kept = node_count - 1 - kept.size();
    for (int n = 0; n < node_count - 1; ++n) {
        const int k = least_joined(degrees, left, kept, n >= plan.first_kept);
        EliminationPlan::Step step;
        step.node = k;
        step.first = static_cast<int>(plan.neighbours.size());
        for (int i = 1; i < node_count; ++i)
            if (set_of(k).contains(i))
                plan.neighbours.push_back(i);
        step.count = static_cast<int>(plan.neighbours.size()) - step.first;
        for (int m = step.first; m < step.first + step.count; ++m) {
            const int i = plan.neighbours[static_cast<std::size_t>(m)];
            set_of(i).unite(set_of(k));
            set_of(i).erase(i);
            set_of(i).erase(k);
            degrees[static_cast<std::size_t>(i)] = set_of(i).size();
        }
        left.erase(k);
        plan.step_of[static_cast<std::size_t>(k)] = n;
        plan.steps.push_back(step);
    }
    for (EliminationPlan::Step& step : plan.steps) {
        step.target = static_cast<int>(plan.targets.size());
        for (int i = 1; i < step.count; ++i)
            for (int j = 0; j < i; ++j)
                plan.targets.push_back(
                    plan.branch(plan.neighbours[static_cast<std::size_t>(step.first + i)],
                                plan.neighbours[static_cast<std::size_t>(step.first + j)]));
    }
    return plan;
}

} // namespace lightoff::electrical
