// SPDX-License-Identifier: MIT
#include "gui/diagram/layout/untaken.hpp"

#include <algorithm>
#include <iterator>

namespace lightoff::diagram {
namespace {

constexpr int kSearchSteps = 20000; ///< of a search for the best chain; far more than any furnace needs

std::size_t index(int i) {
    return static_cast<std::size_t>(i);
}

bool contains(const std::vector<int>& list, int value) {
    return std::find(list.begin(), list.end(), value) != list.end();
}

/// Tries every simple chain from a start.
class ChainSearch {
public:
    ChainSearch(const Graph& graph, const Rails& rails, int goal, const std::vector<int>& links,
                const std::vector<int>& worth)
        : graph_(graph), rails_(rails), goal_(goal), links_(links), worth_(worth) {}

    Run best_from(int start) {
        now_.vertices = best_.vertices = {start};
        extend(0);
        return std::move(best_);
    }

private:
    void extend(int points) {
        const int here = now_.vertices.back();
        note(points);
        if (++steps_ > kSearchSteps || here == goal_ || (!now_.links.empty() && rails_.has(here)))
            return;
        for (const int l : graph_.at(here)) {
            const int next = graph_.link(l).other_end(here);
            if (!contains(links_, l) || contains(now_.vertices, next) || (rails_.has(next) && next != goal_))
                continue;
            now_.vertices.push_back(next);
            now_.links.push_back(l);
            extend(points + worth_[index(l)]);
            now_.vertices.pop_back();
            now_.links.pop_back();
        }
    }

    /// Of chains worth the same the shortest to a goal, the longest to anywhere.
    void note(int points) {
        const auto length = static_cast<int>(now_.links.size());
        const bool anywhere = goal_ < 0;
        const int score = 100 * points - (anywhere ? -length : length);
        if ((anywhere ? length > 0 : now_.vertices.back() == goal_) && score > best_score_) {
            best_score_ = score;
            best_ = now_;
        }
    }

    const Graph& graph_;
    const Rails& rails_;
    int goal_;
    const std::vector<int>& links_;
    const std::vector<int>& worth_;
    Run now_, best_;
    int best_score_ = -1000000;
    int steps_ = 0;
};

} // namespace

Run reversed(Run run) {
    std::reverse(run.vertices.begin(), run.vertices.end());
    std::reverse(run.links.begin(), run.links.end());
    std::swap(run.left, run.right);
    return run;
}

Untaken::Untaken(const Graph& graph, const Rails& rails)
    : graph_(graph), rails_(rails), taken_(graph.links.size(), false), placed_(graph.vertices.size(), false) {
    for (const int v : rails.vertices)
        if (v >= 0)
            placed_[index(v)] = true;
}

void Untaken::take(int link) {
    taken_[index(link)] = true;
}

void Untaken::take(const Run& run) {
    for (const int l : run.links)
        take(l);
    for (const int v : run.vertices)
        placed_[index(v)] = true;
}

std::vector<int> Untaken::together_with(int link) const {
    std::vector<int> links{link};
    for (std::size_t i = 0; i < links.size(); ++i)
        for (const int v : {graph_.link(links[i]).a, graph_.link(links[i]).b}) {
            if (rails_.has(v))
                continue;
            for (const int l : graph_.at(v))
                if (has(l) && !contains(links, l))
                    links.push_back(l);
        }
    return links;
}

Run Untaken::shortest(int from, int to, const std::function<bool(const Link&)>& may) const {
    if (from < 0 || to < 0)
        return {};
    std::vector<int> came(graph_.vertices.size(), -1);
    std::vector<int> reached{from};
    for (std::size_t i = 0; i < reached.size() && came[index(to)] < 0; ++i)
        for (const int l : graph_.at(reached[i])) {
            const int next = graph_.link(l).other_end(reached[i]);
            if (!has(l) || !may(graph_.link(l)) || contains(reached, next) ||
                (rails_.has(next) && next != to))
                continue;
            came[index(next)] = l;
            reached.push_back(next);
        }
    return came[index(to)] < 0 && from != to ? Run{} : way_back(came, from, to);
}

Run Untaken::parallel_from(int start, const std::vector<int>& links) const {
    std::vector<int> came(graph_.vertices.size(), -1);
    std::vector<int> reached{start};
    for (std::size_t i = 0; i < reached.size(); ++i) {
        if (i > 0 && placed_[index(reached[i])])
            return way_back(came, start, reached[i]);
        for (const int l : graph_.at(reached[i])) {
            const int next = graph_.link(l).other_end(reached[i]);
            if (!has(l) || !contains(links, l) || contains(reached, next))
                continue;
            came[index(next)] = l;
            reached.push_back(next);
        }
    }
    return {};
}

/// By the link over which each vertex was reached first.
Run Untaken::way_back(const std::vector<int>& came, int from, int to) const {
    Run run;
    run.vertices.push_back(to);
    while (run.vertices.back() != from) {
        const int l = came[index(run.vertices.back())];
        run.links.push_back(l);
        run.vertices.push_back(graph_.link(l).other_end(run.vertices.back()));
    }
    return reversed(std::move(run));
}

Run Untaken::best_from(int start, int goal, const std::vector<int>& links,
                       const std::vector<int>& worth) const {
    std::vector<int> left;
    std::copy_if(links.begin(), links.end(), std::back_inserter(left), [&](int l) { return has(l); });
    return ChainSearch(graph_, rails_, goal, left, worth).best_from(start);
}

} // namespace lightoff::diagram
