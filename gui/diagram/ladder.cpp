// SPDX-License-Identifier: MIT
#include "gui/diagram/ladder.hpp"

#include "gui/diagram/circuits.hpp"
#include "gui/diagram/names.hpp"
#include "gui/diagram/symbol_names.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace lightoff::diagram {
namespace {

using canvas::Rect;
using canvas::operator+;
using electrical::ElementKind;

constexpr float kPitch = 24;      ///< between rows
constexpr float kTightPitch = 15; ///< where a row holds no test points
constexpr float kRowHalf = 12;
constexpr float kMargin = 42;      ///< left and right of the rails
constexpr float kTop = 22;         ///< above the first row: names of the supply's parts
constexpr float kLeastWidth = 820; ///< fills a pane that is wider than high
constexpr float kToRail = 20;      ///< from a rail to the first pin
constexpr float kGroundInset = 26;
constexpr float kCoreGap = 34; ///< between the windings of a transformer
constexpr float kSectionGap = 12;
constexpr float kHeadGap = 9;      ///< above a circuit with a name over it
constexpr float kNamedLength = 92; ///< of a relay's contact or a fuse on a rail, so that its name has room
constexpr float kBusPitch = 18;    ///< from the row of the line to the head of its rail
constexpr float kRailPad = 14;     ///< of the board beyond a rail

std::size_t index(int i) {
    return static_cast<std::size_t>(i);
}

class Drafter {
public:
    explicit Drafter(const furnace::Model& model)
        : model_(model), net_(model.wiring.netlist), c_(read_circuits(model)) {}

    Ladder draw() {
        out_.common_node = model_.wiring.common;
        out_.pin_spot.assign(model_.wiring.terminals.size(), -1);
        out_.lug_spot.assign(model_.wiring.terminals.size(), -1);
        at_.assign(c_.vertices.size(), ImVec2{0, 0});
        has_place_.assign(c_.vertices.size(), false);
        home_row_.assign(c_.vertices.size(), 0);
        find_width();
        draw_supply();
        draw_circuits();
        draw_loose();
        draw_rails();
        draw_blocks();
        drop_doubled_names();
        name_nameless();
        out_.bounds = {{-kMargin, 0}, {width_ + kMargin, y_ + kRowHalf + 4}};
        out_.common_spot = spot_of_common();
        return std::move(out_);
    }

private:
    /// A terminal of a part that neither symbol nor box names says whose it is.
    void name_nameless() {
        std::set<std::string> named{board_owner_};
        for (const Symbol& symbol : out_.symbols)
            if (!symbol.name.empty())
                named.insert(std::string(owner_of(net_.element_names[index(symbol.element)])));
        for (const Block& block : out_.blocks)
            named.insert(block.name);
        for (Spot& spot : out_.spots)
            if (spot.terminal >= 0 && !spot.plug && named.count(spot.owner) == 0 &&
                named.count(spaced(spot.owner)) == 0)
                spot.name = spaced(spot.owner) + " " + spot.name;
    }

    /// A box that has a part's name says it for the symbol inside.
    void drop_doubled_names() {
        for (Symbol& symbol : out_.symbols)
            for (const Block& block : out_.blocks)
                if (symbol.name == block.name)
                    symbol.name.clear();
    }

    // ---- widths ----

    [[nodiscard]] float length(int link) const { return least_length(model_, c_.links[index(link)]); }

    [[nodiscard]] bool is_rail(int v) const { return c_.is_rail(v); }

    /// Least length of a link in its run: what hangs on a rail stands off it.
    [[nodiscard]] float length_in(const Run& run, std::size_t i) const {
        const bool at_left = i == 0 && is_rail(run.vertices.front());
        const bool at_right = i + 1 == run.links.size() && is_rail(run.vertices.back());
        const float least = length(run.links[i]);
        if (at_left &&
            (is_relay_contact(c_.links[index(run.links[i])]) || is_fuse(c_.links[index(run.links[i])])))
            return kNamedLength;
        return at_left || at_right ? std::max(least, kToRail) : least;
    }

    [[nodiscard]] bool is_relay_contact(const Link& link) const {
        return link.kind == LinkKind::part && kind_of(model_, link) == SymbolKind::relay_contact;
    }
    [[nodiscard]] bool is_fuse(const Link& link) const {
        return link.kind == LinkKind::part && kind_of(model_, link) == SymbolKind::fuse;
    }

    void find_width() {
        width_ = kLeastWidth;
        for (const Circuit& circuit : c_.circuits)
            width_ = std::max(width_, needed(circuit));
        for (const Run* run : {&c_.line, &c_.neutral, &c_.ground}) {
            float sum = 0;
            for (const int l : run->links)
                sum += length(l);
            width_ = std::max(width_, sum + 3 * kToRail);
        }
    }

    [[nodiscard]] static float right_end(const Circuit& circuit, float width) {
        return circuit.right == Rail::ground ? width - kGroundInset : width;
    }
    /// Where a run begins; one from the cabinet's metal to the right rail is kept short.
    [[nodiscard]] float left_end(Rail left) const { return left == Rail::ground ? ground_start_ : 0; }

    /// Where each vertex comes to lie if everything is pushed left; `least` holds what is asked for besides.
    [[nodiscard]] std::map<int, float> pushed_left(const Circuit& circuit,
                                                   const std::map<int, float>& least) const {
        std::map<int, float> x;
        const auto floor_of = [&](int v) {
            const auto asked = least.find(v);
            return asked == least.end() ? 0.0F : asked->second;
        };
        for (bool moved = true; moved;) {
            moved = false;
            for (const Run& run : circuit.runs)
                for (std::size_t i = 0; i < run.vertices.size(); ++i) {
                    const int v = run.vertices[i];
                    if (is_rail(v))
                        continue;
                    float want = floor_of(v);
                    if (i > 0) {
                        const int before = run.vertices[i - 1];
                        want = std::max(want, (is_rail(before) ? left_end(run.left) : x[before]) +
                                                  length_in(run, i - 1));
                    }
                    const auto [it, fresh] = x.try_emplace(v, want);
                    if (fresh || it->second < want) {
                        it->second = std::max(it->second, want);
                        moved = true;
                    }
                }
        }
        return x;
    }

    [[nodiscard]] std::map<int, float> pushed_right(const Circuit& circuit, float width,
                                                    const std::map<int, float>& most) const {
        std::map<int, float> x;
        const auto ceiling_of = [&](int v) {
            const auto asked = most.find(v);
            return asked == most.end() ? width - kToRail : asked->second;
        };
        for (bool moved = true; moved;) {
            moved = false;
            for (const Run& run : circuit.runs)
                for (std::size_t i = run.vertices.size(); i-- > 0;) {
                    const int v = run.vertices[i];
                    if (is_rail(v))
                        continue;
                    float want = ceiling_of(v);
                    if (i + 1 < run.vertices.size()) {
                        const int after = run.vertices[i + 1];
                        const float end = run.right == Rail::ground ? width - kGroundInset : width;
                        want = std::min(want, (is_rail(after)        ? end
                                               : x.count(after) != 0 ? x[after]
                                                                     : width) -
                                                  length_in(run, i));
                    }
                    const auto [it, fresh] = x.try_emplace(v, want);
                    if (fresh || it->second > want) {
                        it->second = std::min(it->second, want);
                        moved = true;
                    }
                }
        }
        return x;
    }

    [[nodiscard]] float needed(const Circuit& circuit) const {
        std::map<int, float> x = pushed_left(circuit, {});
        float most = 0;
        for (const Run& run : circuit.runs)
            for (std::size_t i = 0; i < run.links.size(); ++i) {
                const int v = run.vertices[i];
                const float from = is_rail(v) ? left_end(run.left) : x[v];
                const float inset = run.right == Rail::ground ? kGroundInset : kToRail;
                const bool to_rail = is_rail(run.vertices[i + 1]);
                most = std::max(most, from + length_in(run, i) +
                                          (to_rail && run.right != Rail::ground ? 0 : inset));
            }
        return most;
    }

    // ---- one circuit ----

    /// The last vertices of a run, seen from a rail, that belong to the part that the rail is in; the
    /// outermost is where the wiring leaves it.
    [[nodiscard]] std::vector<int> edge_of(const Run& run, bool left) const {
        std::vector<int> edge;
        const Rail rail = left ? run.left : run.right;
        const std::size_t n = run.vertices.size();
        const auto nth = [&](std::size_t i) { return run.vertices[left ? i : n - 1 - i]; };
        std::string owner;
        std::size_t i = 0;
        if (rail != Rail::none && rail != Rail::ground) {
            owner = c_.vertices[index(nth(0))].owner;
            i = 1;
        } else if (run.stub && left && rail == Rail::none) {
            owner = c_.vertices[index(nth(0))].owner;
            if (owner != board_owner_)
                return edge;
        } else {
            return edge;
        }
        for (; i < n; ++i) {
            const Vertex& v = c_.vertices[index(nth(i))];
            if (v.owner != owner || v.lug || is_rail(nth(i)))
                break;
            edge.push_back(nth(i));
        }
        return edge.size() + (rail == Rail::none ? 0 : 1) == n ? std::vector<int>{} : edge;
    }

    /// How much of a vertex's play lies left of it: by the wires on either side, so that wires take up the
    /// room and what is screwed together stays together. Never falls from left to right, so lengths are kept.
    [[nodiscard]] std::map<int, float> shares_of(const Circuit& circuit) const {
        std::map<int, int> before, after;
        for (std::size_t pass = 0; pass <= circuit.runs.size(); ++pass)
            for (const Run& run : circuit.runs)
                for (std::size_t i = 0; i < run.links.size(); ++i) {
                    const std::size_t k = run.links.size() - 1 - i;
                    count_wire(run, i, run.vertices[i], run.vertices[i + 1], before);
                    count_wire(run, k, run.vertices[k + 1], run.vertices[k], after);
                }
        std::map<int, float> shares;
        for (const Run& run : circuit.runs)
            for (const int v : run.vertices) {
                const int sum = before[v] + after[v];
                shares[v] = sum > 0 ? static_cast<float>(before[v]) / static_cast<float>(sum)
                            : circuit.left == Rail::none ? 1.0F
                                                         : 0.0F;
            }
        return shares;
    }

    /// Parts keep their own length wherever a wire on one side can take up the rest.
    void pull_together(const Circuit& circuit, const std::map<int, float>& shares) {
        std::map<int, int> in, out;
        std::map<int, bool> wire_in;
        for (const Run& run : circuit.runs)
            for (std::size_t i = 0; i < run.links.size(); ++i) {
                ++out[run.vertices[i]];
                ++in[run.vertices[i + 1]];
                wire_in[run.vertices[i + 1]] = c_.links[index(run.links[i])].kind == LinkKind::wire;
            }
        for (const Run& run : circuit.runs)
            for (std::size_t i = 0; i < run.links.size(); ++i) {
                const int a = run.vertices[i], b = run.vertices[i + 1];
                const bool rigid = c_.links[index(run.links[i])].kind != LinkKind::wire;
                if (rigid && !is_rail(a) && !is_rail(b) && in[b] == 1 && shares.at(b) < 1 &&
                    pinned_.count(b) == 0)
                    at_[index(b)].x = at_[index(a)].x + length_in(run, i);
            }
        for (const Run& run : circuit.runs)
            for (std::size_t i = run.links.size(); i-- > 0;) {
                const int a = run.vertices[i], b = run.vertices[i + 1];
                const bool rigid = c_.links[index(run.links[i])].kind != LinkKind::wire;
                if (rigid && !is_rail(a) && !is_rail(b) && out[a] == 1 && in[a] == 1 && wire_in[a] &&
                    pinned_.count(a) == 0)
                    at_[index(a)].x = at_[index(b)].x - length_in(run, i);
            }
    }

    void count_wire(const Run& run, std::size_t link, int from, int to, std::map<int, int>& count) const {
        const int own = c_.links[index(run.links[link])].kind == LinkKind::wire ? 1 : 0;
        count[to] = std::max(count[to], (is_rail(from) ? 0 : count[from]) + own);
    }

    void place_across(const Circuit& circuit) {
        const float room = width_ - needed(circuit);
        std::map<int, float> least = pinned_, most = pinned_;
        const std::map<int, float> close = pushed_left(circuit, {});
        const std::map<int, float> far = pushed_right(circuit, width_, {});
        const float column = circuit.low_voltage ? low_edge_left_ : high_edge_left_;
        const float far_column = width_ - (circuit.low_voltage ? low_edge_right_ : high_edge_right_);
        for (const Run& run : circuit.runs) {
            if (const std::vector<int> edge = edge_of(run, true); !edge.empty()) {
                const float x = std::min(column, close.at(edge.back()) + room / 2);
                least[edge.back()] = std::max(x, least.count(edge.back()) != 0 ? least[edge.back()] : 0);
            }
            if (const std::vector<int> edge = edge_of(run, false); !edge.empty()) {
                most[edge.back()] = std::max(far_column, far.at(edge.back()) - room / 2);
            }
        }
        const std::map<int, float> shares = shares_of(circuit);
        const std::map<int, float> early = pushed_left(circuit, least);
        const std::map<int, float> late = pushed_right(circuit, width_, most);
        for (const auto& [v, x] : early) {
            const float share = shares.at(v);
            at_[index(v)].x = std::round(x + share * std::max(0.0F, late.at(v) - x));
        }
        pull_together(circuit, shares);
    }

    void find_columns() {
        for (const Circuit& circuit : c_.circuits) {
            const std::map<int, float> close = pushed_left(circuit, {});
            const std::map<int, float> far = pushed_right(circuit, width_, {});
            float& left = circuit.low_voltage ? low_edge_left_ : high_edge_left_;
            float& right = circuit.low_voltage ? low_edge_right_ : high_edge_right_;
            for (const Run& run : circuit.runs) {
                if (const std::vector<int> edge = edge_of(run, true); !edge.empty())
                    left = std::max(left, close.at(edge.back()));
                if (const std::vector<int> edge = edge_of(run, false); !edge.empty())
                    right = std::max(right, width_ - far.at(edge.back()));
            }
        }
    }

    /// Left and right of what a run covers, uprights included.
    [[nodiscard]] canvas::Rect cover(const Run& run, float width) const {
        const auto x = [&](int v, Rail rail, float rail_x) {
            return !is_rail(v)            ? at_[index(v)].x
                   : rail == Rail::ground ? std::abs(rail_x - kGroundInset)
                                          : rail_x;
        };
        const float a = x(run.vertices.front(), run.left, 0);
        const float b = x(run.vertices.back(), run.right, width);
        return {{std::min(a, b), 0}, {std::max(a, b), 0}};
    }

    /// A row for each run below the main one: short branches close to it, those from the left by where they
    /// end, so that uprights cross as few rungs as can be.
    [[nodiscard]] std::vector<int> rows_of(const Circuit& circuit) const {
        const std::size_t n = circuit.runs.size();
        std::vector<int> row(n, 0);
        std::vector<std::size_t> order;
        for (std::size_t i = 1; i < n; ++i)
            order.push_back(i);
        std::stable_sort(order.begin(), order.end(), [&](std::size_t i, std::size_t k) {
            return reach(circuit.runs[i]) < reach(circuit.runs[k]);
        });
        std::vector<std::size_t> done{0};
        for (bool some = true; some;) {
            some = false;
            for (const std::size_t i : order) {
                if (std::find(done.begin(), done.end(), i) != done.end() || !parents_done(circuit, i, done))
                    continue;
                row[i] = best_row(circuit, i, row, done);
                done.push_back(i);
                some = true;
            }
        }
        return row;
    }

    [[nodiscard]] float reach(const Run& run) const {
        const Rect span = cover(run, width_);
        const bool left = run.left != Rail::none || (run.stub && !is_rail(run.vertices.front()));
        return left ? span.max.x : span.width();
    }

    [[nodiscard]] static bool parents_done(const Circuit& circuit, std::size_t run,
                                           const std::vector<std::size_t>& done) {
        for (const int end : {circuit.runs[run].vertices.front(), circuit.runs[run].vertices.back()})
            for (std::size_t i = 0; i < run; ++i) {
                const std::vector<int>& vs = circuit.runs[i].vertices;
                const bool inner = std::find(vs.begin(), vs.end(), end) != vs.end();
                if (inner && std::find(done.begin(), done.end(), i) == done.end())
                    return false;
                if (inner)
                    break;
            }
        return true;
    }

    [[nodiscard]] int row_of_vertex(const Circuit& circuit, int v, const std::vector<int>& row,
                                    const std::vector<std::size_t>& done) const {
        for (std::size_t i = 0; i < circuit.runs.size(); ++i) {
            if (std::find(done.begin(), done.end(), i) == done.end())
                continue;
            const std::vector<int>& vs = circuit.runs[i].vertices;
            if (std::find(vs.begin(), vs.end(), v) != vs.end())
                return row[i];
        }
        return -1;
    }

    [[nodiscard]] int best_row(const Circuit& circuit, std::size_t run, const std::vector<int>& row,
                               const std::vector<std::size_t>& done) const {
        const Run& r = circuit.runs[run];
        const Rect span = cover(r, width_);
        int best = 1;
        float best_cost = 1e9F;
        for (int candidate = 1; candidate <= static_cast<int>(circuit.runs.size()); ++candidate) {
            float cost = static_cast<float>(candidate);
            for (const std::size_t k : done) {
                const Rect other = cover(circuit.runs[k], width_);
                if (row[k] == candidate && span.min.x < other.max.x + 14 && other.min.x < span.max.x + 14)
                    cost += shares_end(r, circuit.runs[k]) &&
                                    (span.max.x <= other.min.x || other.max.x <= span.min.x)
                                ? 0.0F
                                : 1000.0F;
                for (const int end : {r.vertices.front(), r.vertices.back()}) {
                    const int home = is_rail(end) ? -1 : row_of_vertex(circuit, end, row, done);
                    const float x = at_[index(end)].x;
                    if (home >= 0 && row[k] > std::min(home, candidate) &&
                        row[k] < std::max(home, candidate) && x > other.min.x && x < other.max.x)
                        cost += 3;
                }
            }
            if (cost < best_cost) {
                best_cost = cost;
                best = candidate;
            }
        }
        return best;
    }

    static bool shares_end(const Run& a, const Run& b) {
        for (const int v : {a.vertices.front(), a.vertices.back()})
            if (v == b.vertices.front() || v == b.vertices.back())
                return true;
        return false;
    }

    void draw_circuit(const Circuit& circuit) {
        ground_start_ = 0;
        ground_start_ = circuit.left == Rail::ground ? width_ - needed(circuit) - kPitch : 0;
        if (has_name_above(circuit))
            y_ += kHeadGap;
        place_across(circuit);
        const std::vector<int> row = rows_of(circuit);
        const int last = *std::max_element(row.begin(), row.end());
        std::vector<float> y(index(last) + 1);
        for (int r = 0; r <= last; ++r) {
            y_ += pitch_of(circuit, row, r);
            y[index(r)] = y_;
        }
        std::vector<std::size_t> order(circuit.runs.size());
        for (std::size_t i = 0; i < order.size(); ++i)
            order[i] = i;
        std::stable_sort(order.begin(), order.end(),
                         [&](std::size_t a, std::size_t b) { return row[a] < row[b]; });
        // Vertices lie in the row of the run that brought them in.
        for (std::size_t i = 0; i < circuit.runs.size(); ++i)
            for (const int v : circuit.runs[i].vertices)
                if (!is_rail(v) && !has_place_[index(v)]) {
                    at_[index(v)].y = y[index(row[i])];
                    has_place_[index(v)] = true;
                    home_row_[index(v)] = row_ + row[i];
                }
        for (const std::size_t i : order)
            draw_run(circuit.runs[i], y[index(row[i])], row_ + row[i]);
        for (const Run& run : circuit.runs)
            add_walk(circuit, run);
        mark_branches(circuit);
        for (const int v : circuit.taps)
            out_.marks.push_back({Mark::Kind::reads, at_[index(v)]});
        row_ += last + 1;
    }

    /// Whether a motor or something in the living room is in it: its name stands over its outline.
    [[nodiscard]] bool has_name_above(const Circuit& circuit) const {
        for (const Run& run : circuit.runs) {
            for (const int l : run.links)
                if (c_.links[index(l)].kind == LinkKind::part &&
                    kind_of(model_, c_.links[index(l)]) == SymbolKind::winding)
                    return true;
            for (const int v : run.vertices)
                if (where_is(c_.vertices[index(v)].owner) == furnace::Place::Where::living_room)
                    return true;
        }
        return false;
    }

    [[nodiscard]] float pitch_of(const Circuit& circuit, const std::vector<int>& row, int r) const {
        for (std::size_t i = 0; i < circuit.runs.size(); ++i)
            if (row[i] == r)
                for (const int v : circuit.runs[i].vertices)
                    if (c_.vertices[index(v)].terminal >= 0)
                        return kPitch;
        return kTightPitch;
    }

    void draw_run(const Run& run, float y, int row) {
        run_y_[&run] = y;
        for (const Rail rail : {run.left, run.right})
            rail_uses_.push_back({rail, y});
        for (std::size_t i = 0; i < run.vertices.size(); ++i) {
            const int v = run.vertices[i];
            if (i > 0)
                draw_link(run, i - 1, y);
            if (!is_rail(v) && home_row_[index(v)] == row)
                add_spot(v);
        }
    }

    /// A dot where three lines meet that no terminal marks.
    void mark_branches(const Circuit& circuit) {
        std::map<int, int> lines;
        for (const Run& run : circuit.runs)
            for (const int l : run.links)
                for (const int v : {c_.links[index(l)].a, c_.links[index(l)].b})
                    ++lines[v];
        for (const auto& [v, count] : lines)
            if (count > 2 && !is_rail(v) && spot_of_vertex_.count(v) == 0)
                out_.marks.push_back({Mark::Kind::branch, at_[index(v)]});
    }

    /// The spots of a run; an end that is a splice goes on along the run that it is spliced into.
    void add_walk(const Circuit& circuit, const Run& run) {
        std::vector<int> walk = beyond(circuit, run, run.vertices.front(), false);
        std::reverse(walk.begin(), walk.end());
        for (const int v : run.vertices)
            if (!is_rail(v) && spot_of_vertex_.count(v) != 0)
                walk.push_back(spot_of_vertex_.at(v));
        for (const int spot : beyond(circuit, run, run.vertices.back(), true))
            walk.push_back(spot);
        out_.runs.push_back(std::move(walk));
    }

    /// The spots that follow a splice, from it outwards; none if the end is no splice.
    [[nodiscard]] std::vector<int> beyond(const Circuit& circuit, const Run& run, int splice,
                                          bool rightwards) const {
        std::vector<int> spots;
        if (is_rail(splice) || spot_of_vertex_.count(splice) != 0)
            return spots;
        for (const Run& home : circuit.runs) {
            if (&home == &run)
                break;
            const std::vector<int>& vs = home.vertices;
            const auto it = std::find(vs.begin(), vs.end(), splice);
            if (it == vs.end())
                continue;
            const int step = rightwards ? 1 : -1;
            for (auto i = static_cast<int>(it - vs.begin()) + step; i >= 0 && i < static_cast<int>(vs.size());
                 i += step)
                if (const auto spot = spot_of_vertex_.find(vs[index(i)]); spot != spot_of_vertex_.end())
                    spots.push_back(spot->second);
            break;
        }
        return spots;
    }

    /// Where a run's vertex stands in the run's own row.
    [[nodiscard]] ImVec2 in_row(const Run& run, std::size_t i, float y) const {
        const int v = run.vertices[i];
        if (!is_rail(v))
            return {at_[index(v)].x, y};
        const Rail rail = i == 0 ? run.left : run.right;
        if (i == 0)
            return {left_end(rail), y};
        return {rail == Rail::ground ? width_ - kGroundInset : width_, y};
    }

    void draw_link(const Run& run, std::size_t i, float y) {
        const Link& link = c_.links[index(run.links[i])];
        const ImVec2 from = in_row(run, i, y);
        const ImVec2 to = in_row(run, i + 1, y);
        std::vector<ImVec2> path{from, to};
        if (const int v = run.vertices[i]; !is_rail(v) && at_[index(v)].y != y)
            path.insert(path.begin(), at_[index(v)]);
        if (const int v = run.vertices[i + 1]; !is_rail(v) && at_[index(v)].y != y)
            path.push_back(at_[index(v)]);
        if (i == 0 && run.left == Rail::ground)
            out_.marks.push_back({Mark::Kind::ground, from});
        if (i + 1 == run.links.size() && run.right == Rail::ground)
            out_.marks.push_back({Mark::Kind::ground, to});
        if (link.kind == LinkKind::wire)
            return add_wire(link, std::move(path), {(from.x + to.x) / 2, y});
        if (link.kind == LinkKind::part) {
            add_symbol(link, from, to);
            if (path.front().y != y)
                out_.tracks.push_back({{path.front(), from}, -1});
            if (path.back().y != y)
                out_.tracks.push_back({{to, path.back()}, -1});
            return;
        }
        out_.tracks.push_back({std::move(path), link.kind == LinkKind::joint ? link.element : -1});
    }

    void add_wire(const Link& link, std::vector<ImVec2> path, ImVec2 ferrule) {
        const std::vector<int>& wires = model_.wiring.wires;
        const auto i =
            static_cast<std::size_t>(std::find(wires.begin(), wires.end(), link.element) - wires.begin());
        const std::string& colour = model_.wiring.wire_colours[i];
        Wire wire{link.element,    net_.element_names[index(link.element)],
                  colour,          ferrule_letters(colour),
                  std::move(path), ferrule};
        const bool forward = run_goes_forward(link, wire.path.front());
        const int a = forward ? link.a : link.b;
        const int b = forward ? link.b : link.a;
        wire.from_node = c_.vertices[index(a)].node;
        wire.to_node = c_.vertices[index(b)].node;
        wire_ends_.push_back({a, b});
        out_.wires.push_back(std::move(wire));
    }

    [[nodiscard]] bool run_goes_forward(const Link& link, ImVec2 start) const {
        if (is_rail(link.a))
            return is_rail(link.b) || at_[index(link.b)].x != start.x || at_[index(link.b)].y != start.y;
        return at_[index(link.a)].x == start.x && at_[index(link.a)].y == start.y;
    }

    // ---- spots ----

    void add_spot(int v) {
        const Vertex& vertex = c_.vertices[index(v)];
        const bool bare = vertex.terminal < 0;
        if (spot_of_vertex_.count(v) != 0 || (bare && model_.touchable[index(vertex.node)] == 0) ||
            (bare && is_track(vertex.node)))
            return;
        Spot spot;
        spot.node = vertex.node;
        spot.terminal = vertex.terminal;
        spot.lug = vertex.lug;
        spot.at = at_[index(v)];
        spot.row = home_row_[index(v)];
        spot.owner = vertex.owner;
        const std::string& own =
            bare ? net_.node_names[index(vertex.node)] : model_.wiring.terminals[index(vertex.terminal)].name;
        spot.name = bare ? spaced(owner_of(own)) + " " + spaced(rest_of(own)) : spaced(rest_of(own));
        spot.full_name = own + (vertex.lug ? ".lug" : "");
        spot.where = where_is(vertex.owner);
        spot.plug = is_plug(vertex.owner);
        if (spot.plug)
            spot.name = "plug";
        const auto number = static_cast<int>(out_.spots.size());
        if (!bare)
            (vertex.lug ? out_.lug_spot : out_.pin_spot)[index(vertex.terminal)] = number;
        spot_of_vertex_[v] = number;
        out_.spots.push_back(std::move(spot));
    }

    /// Whether a node is the track of terminals, which have spots of their own.
    [[nodiscard]] bool is_track(int node) const {
        return std::any_of(model_.wiring.terminals.begin(), model_.wiring.terminals.end(),
                           [&](const furnace::Terminal& t) { return t.pin == node; }) &&
               !is_bare_metal(node);
    }

    /// Touchable though it is also a terminal's pin: the cabinet's sheet metal with its screw.
    [[nodiscard]] bool is_bare_metal(int node) const {
        return std::find(c_.earthed.begin(), c_.earthed.end(), node) != c_.earthed.end() &&
               c_.rail_vertex(Rail::ground) == node;
    }

    [[nodiscard]] bool is_plug(const std::string& owner) const {
        return std::any_of(model_.places.begin(), model_.places.end(),
                           [&](const furnace::Place& place) { return place.part == owner && place.plug; });
    }

    [[nodiscard]] furnace::Place::Where where_is(const std::string& owner) const {
        for (const furnace::Place& place : model_.places)
            if (place.part == owner)
                return place.where;
        return furnace::Place::Where::outside;
    }

    // ---- symbols ----

    void add_symbol(const Link& link, ImVec2 from, ImVec2 to) {
        Symbol symbol;
        symbol.element = link.element;
        symbol.from = from;
        symbol.to = to;
        symbol.kind = kind_of(model_, link);
        symbol.closed_at_rest =
            symbol.kind == SymbolKind::temperature_switch || symbol.kind == SymbolKind::reset_switch ||
            symbol.kind == SymbolKind::overload || net_.elements[index(link.element)].normally_closed;
        symbol.name = name_of(model_, c_, link);
        if (symbol.kind == SymbolKind::relay_contact)
            symbol.short_name = symbol.name.substr(0, symbol.name.find(' '));
        if (symbol.kind == SymbolKind::relay_contact && !is_rail(link.a) && !is_rail(link.b))
            symbol.name =
                symbol.short_name; // between the loads that it works, words would be taken for theirs
        symbol.core_below = symbol.kind == SymbolKind::transformer_winding && !low_section_;
        out_.symbols.push_back(std::move(symbol));
    }

    // ---- supply ----

    [[nodiscard]] float bus_y() const { return supply_y_[2] + kBusPitch; }

    /// The parts that the supply passes, in columns from left to right, ground, neutral and line as rows.
    void draw_supply() {
        if (c_.line.links.empty()) {
            y_ = kTop;
            return;
        }
        Run ground = c_.ground;
        if (!ground.links.empty() && c_.links[index(ground.links.front())].kind == LinkKind::part) {
            ground.vertices.erase(ground.vertices.begin()); // the bond stands between neutral and ground
            ground.links.erase(ground.links.begin());
        }
        const std::array<const Run*, 3> runs{&ground, &c_.neutral, &c_.line};
        for (std::size_t r = 0; r < runs.size(); ++r)
            supply_y_[r] = kTop + kRowHalf + kPitch * static_cast<float>(r);
        const std::vector<std::string> columns = columns_of_supply();
        place_supply(runs, columns);
        for (std::size_t r = 0; r < runs.size(); ++r)
            draw_supply_run(*runs[r], r);
        draw_source_and_bond();
        box_supply(columns);
        y_ = bus_y();
        row_ = 4;
    }

    [[nodiscard]] std::vector<std::string> columns_of_supply() const {
        std::vector<std::string> columns;
        const auto note = [&](const Run& run) {
            for (const int v : run.vertices) {
                const std::string& owner = c_.vertices[index(v)].owner;
                if (std::find(columns.begin(), columns.end(), owner) == columns.end())
                    columns.push_back(owner);
            }
        };
        note(c_.line);
        const std::size_t of_line = columns.size();
        for (const Run* run : {&c_.neutral, &c_.ground})
            note(*run);
        if (of_line > 0) // the board comes last, at its rails
            std::rotate(columns.begin() + static_cast<std::ptrdiff_t>(of_line) - 1,
                        columns.begin() + static_cast<std::ptrdiff_t>(of_line), columns.end());
        return columns;
    }

    void place_supply(const std::array<const Run*, 3>& runs, const std::vector<std::string>& columns) {
        std::vector<float> start(columns.size() + 1, 0);
        std::vector<float> wide(columns.size(), 0);
        for (const Run* run : runs) {
            const std::vector<std::pair<std::size_t, float>> stretches = stretches_of(*run, columns);
            for (const auto& [column, w] : stretches)
                wide[column] = std::max(wide[column], w);
        }
        float sum = 0;
        for (const float w : wide)
            sum += w;
        const float gaps = static_cast<float>(std::max<std::size_t>(1, columns.size() - 1));
        const float gap = std::max(36.0F, (width_ - kToRail - sum) / gaps);
        float x = 0;
        for (std::size_t i = 0; i < columns.size(); ++i) {
            start[i] = x;
            x += wide[i] + gap;
        }
        for (std::size_t r = 0; r < runs.size(); ++r) {
            float in_column = 0;
            std::string before;
            for (std::size_t i = 0; i < runs[r]->vertices.size(); ++i) {
                const int v = runs[r]->vertices[i];
                const std::string& owner = c_.vertices[index(v)].owner;
                const auto column = static_cast<std::size_t>(
                    std::find(columns.begin(), columns.end(), owner) - columns.begin());
                in_column = owner == before ? in_column + length(runs[r]->links[i - 1]) : 0;
                before = owner;
                at_[index(v)] = {std::round(start[column] + in_column), supply_y_[r]};
                home_row_[index(v)] = static_cast<int>(r);
            }
        }
    }

    /// Width of each piece of a run that stays in one part.
    [[nodiscard]] std::vector<std::pair<std::size_t, float>>
    stretches_of(const Run& run, const std::vector<std::string>& columns) const {
        std::vector<std::pair<std::size_t, float>> out;
        for (std::size_t i = 0; i < run.vertices.size(); ++i) {
            const std::string& owner = c_.vertices[index(run.vertices[i])].owner;
            const auto column =
                static_cast<std::size_t>(std::find(columns.begin(), columns.end(), owner) - columns.begin());
            if (out.empty() || out.back().first != column)
                out.push_back({column, 0});
            else
                out.back().second += length(run.links[i - 1]);
        }
        return out;
    }

    void draw_supply_run(const Run& run, std::size_t r) {
        std::vector<int> walk;
        for (std::size_t i = 0; i < run.vertices.size(); ++i) {
            const int v = run.vertices[i];
            if (i > 0) {
                const Link& link = c_.links[index(run.links[i - 1])];
                const ImVec2 from = at_[index(run.vertices[i - 1])];
                const ImVec2 to{at_[index(v)].x, supply_y_[r]};
                if (link.kind == LinkKind::wire)
                    add_wire(link, {from, to}, {(from.x + to.x) / 2, supply_y_[r]});
                else if (link.kind == LinkKind::part)
                    add_symbol(link, from, to);
                else if (!is_rail(v) || r == 0)
                    out_.tracks.push_back({{from, to}, link.kind == LinkKind::joint ? link.element : -1});
            }
            has_place_[index(v)] = true;
            if (!is_rail(v) || r == 0)
                add_spot(v);
            if (spot_of_vertex_.count(v) != 0)
                walk.push_back(spot_of_vertex_.at(v));
        }
        if (r == 0 && !run.vertices.empty())
            out_.marks.push_back({Mark::Kind::ground, at_[index(run.vertices.back())]});
        out_.runs.push_back(std::move(walk));
    }

    /// The source stands between the beginnings of line and neutral; the bond between neutral and ground.
    void draw_source_and_bond() {
        if (c_.neutral.vertices.empty())
            return;
        const int hot = c_.line.vertices.front();
        const int low = c_.neutral.vertices.front();
        for (const Link& link : c_.links)
            if (link.kind == LinkKind::part && net_.elements[index(link.element)].kind == ElementKind::source)
                draw_source(link, low, hot);
        if (const Run& ground = c_.ground; ground.links.size() > 1)
            if (const Link& bond = c_.links[index(ground.links.front())]; bond.kind == LinkKind::part)
                add_symbol(bond, at_[index(ground.vertices[0])], at_[index(ground.vertices[1])]);
        for (const int v : c_.earthed)
            if (has_place_[index(v)] && !is_rail(v) && spot_of_vertex_.count(v) != 0) {
                const ImVec2 aside{at_[index(v)].x - kRowHalf, at_[index(v)].y};
                out_.tracks.push_back({{aside, at_[index(v)]}, -1});
                out_.marks.push_back({Mark::Kind::earth, aside});
            }
    }

    void draw_source(const Link& link, int low, int hot) {
        const ImVec2 foot{at_[index(hot)].x, supply_y_[1]};
        add_symbol(link, foot, at_[index(hot)]);
        out_.tracks.push_back({{foot, {at_[index(low)].x, supply_y_[1]}}, -1});
    }

    void box_supply(const std::vector<std::string>& columns) {
        for (const std::string& owner : columns) {
            Rect box{{1e9F, 1e9F}, {-1e9F, -1e9F}};
            std::set<int> rows;
            for (const Spot& spot : out_.spots)
                if (spot.owner == owner && !spot.lug) {
                    box.min = {std::min(box.min.x, spot.at.x), std::min(box.min.y, spot.at.y)};
                    box.max = {std::max(box.max.x, spot.at.x), std::max(box.max.y, spot.at.y)};
                    rows.insert(spot.row);
                }
            if (rows.size() < 2 || owner == board_owner())
                continue;
            out_.blocks.push_back(
                {Block::Kind::room,
                 spaced(owner),
                 {{{box.min.x - 14, box.min.y - kRowHalf}, {box.max.x + 14, box.max.y + kRowHalf}}}});
        }
    }

    // ---- all circuits ----

    void draw_circuits() {
        board_owner_ = board_owner();
        find_columns();
        for (std::size_t i = 0; i < c_.circuits.size(); ++i) {
            const Circuit& circuit = c_.circuits[i];
            if (circuit.low_voltage && !low_section_) {
                low_section_ = true;
                high_end_ = y_;
                y_ += circuit.is_secondary ? kCoreGap - kPitch : kSectionGap;
                low_start_ = y_ + kPitch;
            }
            draw_circuit(circuit);
            if (circuit.winding >= 0)
                align_next_winding(i);
        }
        if (!low_section_)
            high_end_ = y_;
    }

    /// The windings of a transformer face each other: the next circuit's is put where this one's came to lie.
    void align_next_winding(std::size_t i) {
        pinned_.clear();
        if (i + 1 >= c_.circuits.size() || c_.circuits[i + 1].winding < 0)
            return;
        const auto left_of = [&](const Circuit& circuit) {
            for (const Run& run : circuit.runs)
                for (std::size_t k = 0; k < run.links.size(); ++k)
                    if (run.links[k] == circuit.winding)
                        return run.vertices[k];
            return -1;
        };
        const int here = left_of(c_.circuits[i]);
        const int there = left_of(c_.circuits[i + 1]);
        if (here >= 0 && there >= 0)
            pinned_[there] = at_[index(here)].x;
    }

    [[nodiscard]] std::string board_owner() const {
        const int common = c_.rail_vertex(Rail::common);
        return common < 0 ? "" : c_.vertices[index(common)].owner;
    }

    /// Whatever no run took: below everything, in a row, so that it can be reached.
    void draw_loose() {
        float x = kToRail;
        bool begun = false;
        for (std::size_t v = 0; v < c_.vertices.size(); ++v) {
            const Vertex& vertex = c_.vertices[v];
            const bool wanted =
                vertex.terminal >= 0 || (model_.touchable[index(vertex.node)] != 0 && !is_track(vertex.node));
            if (!wanted || spot_of_vertex_.count(static_cast<int>(v)) != 0)
                continue;
            if (!begun || x > width_ - kToRail) {
                y_ += kPitch;
                ++row_;
                x = kToRail;
                begun = true;
            }
            at_[v] = {x, y_};
            home_row_[v] = row_;
            has_place_[v] = true;
            add_spot(static_cast<int>(v));
            x += vertex.lug ? 3 * kPitch : kPitch;
        }
        std::set<int> drawn;
        for (const Wire& wire : out_.wires)
            drawn.insert(wire.element);
        for (const Link& link : c_.links)
            if (link.kind == LinkKind::wire && drawn.count(link.element) == 0)
                add_wire(link, {at_[index(link.a)], at_[index(link.b)]},
                         {(at_[index(link.a)].x + at_[index(link.b)].x) / 2,
                          (at_[index(link.a)].y + at_[index(link.b)].y) / 2});
        finish_spots();
    }

    void note_wired(Spot& spot) {
        spot.wired = true;
        if (spot.terminal >= 0)
            for (const int both : {out_.pin_spot[index(spot.terminal)], out_.lug_spot[index(spot.terminal)]})
                if (both >= 0)
                    out_.spots[index(both)].wired = true;
    }

    void finish_spots() {
        for (std::size_t i = 0; i < out_.wires.size(); ++i) {
            const auto end = [&](int v) {
                const auto it = spot_of_vertex_.find(v);
                return it == spot_of_vertex_.end() ? -1 : it->second;
            };
            out_.wires[i].from = end(wire_ends_[i].first);
            out_.wires[i].to = end(wire_ends_[i].second);
            for (const int spot : {out_.wires[i].from, out_.wires[i].to})
                if (spot >= 0)
                    note_wired(out_.spots[index(spot)]);
        }
        for (std::size_t t = 0; t < out_.pin_spot.size(); ++t) {
            Spot& pin = out_.spots[index(out_.pin_spot[t])];
            Spot& lug = out_.spots[index(out_.lug_spot[t])];
            const ImVec2 d{lug.at.x - pin.at.x, lug.at.y - pin.at.y};
            const float far = std::max(std::abs(d.x), std::abs(d.y));
            if (far > 0)
                pin.outward = lug.outward = std::abs(d.x) >= std::abs(d.y) ? ImVec2{d.x / std::abs(d.x), 0}
                                                                           : ImVec2{0, d.y / std::abs(d.y)};
        }
    }

    // ---- rails and blocks ----

    void draw_rails() {
        const float bus = bus_y();
        const bool has_supply = !c_.line.links.empty();
        const float high_start = has_supply ? bus : kTop;
        if (c_.rail_vertex(Rail::line) >= 0) {
            RailLine line{"L", {}, {0, high_start}, c_.rail_vertex(Rail::line)};
            if (has_supply) {
                const ImVec2 end = last_before_rail(c_.line);
                line.path = {end, {end.x, bus}, {0, bus}};
            }
            line.path.push_back({0, high_end_});
            RailLine neutral{"N", {}, {width_, high_start}, c_.rail_vertex(Rail::neutral)};
            if (!c_.neutral.links.empty()) {
                const ImVec2 end = last_before_rail(c_.neutral);
                neutral.path = {end, {width_, end.y}};
            }
            neutral.path.push_back({width_, high_end_});
            out_.rails.push_back(std::move(line));
            out_.rails.push_back(std::move(neutral));
        }
        if (low_section_) {
            out_.rails.push_back({"R",
                                  {{0, low_start_}, {0, last_y_on(Rail::feed)}},
                                  {0, low_start_},
                                  c_.rail_vertex(Rail::feed)});
            out_.rails.push_back({"C",
                                  {{width_, low_start_}, {width_, last_y_on(Rail::common)}},
                                  {width_, low_start_},
                                  c_.rail_vertex(Rail::common)});
        }
    }

    [[nodiscard]] ImVec2 last_before_rail(const Run& run) const {
        return at_[index(run.vertices[run.vertices.size() - 2])];
    }

    [[nodiscard]] float last_y_on(Rail rail) const {
        float last = low_start_;
        for (const auto& [r, y] : rail_uses_)
            if (r == rail)
                last = std::max(last, y);
        return last;
    }

    void draw_blocks() {
        draw_board();
        draw_rooms();
        draw_casings();
    }

    /// Stretches of a run that stay within the board, by row.
    void draw_board() {
        Block block{Block::Kind::unit, spaced(board_owner_), {}};
        const auto add = [&](float from, float to, float y, float half) {
            block.pieces.push_back({{std::min(from, to), y - half}, {std::max(from, to), y + half}});
        };
        const std::string& owner = board_owner_;
        for (const Circuit& circuit : c_.circuits)
            for (const Run& run : circuit.runs)
                add_board_pieces(run, owner, add);
        const auto along = [&](Rail rail, float from, float to) {
            const bool left = rail == Rail::line || rail == Rail::feed;
            const float edge = board_edge(rail);
            if (const int v = c_.rail_vertex(rail); v >= 0 && c_.vertices[index(v)].owner == owner)
                block.pieces.push_back({{left ? -kRailPad : edge, from - kRowHalf},
                                        {left ? edge : width_ + kRailPad, to + kRowHalf}});
        };
        if (!c_.line.links.empty() && c_.vertices[index(c_.line.vertices.back())].owner == owner)
            add_head(block);
        along(Rail::line, bus_y(), high_end_);
        along(Rail::neutral, bus_y(), high_end_);
        if (low_section_) {
            along(Rail::feed, low_start_, last_y_on(Rail::feed));
            along(Rail::common, low_start_, last_y_on(Rail::common));
        }
        if (!block.pieces.empty())
            out_.blocks.insert(out_.blocks.begin(), std::move(block));
    }

    /// How far the board reaches from a rail in every row: to the pin that lies closest to the rail.
    [[nodiscard]] float board_edge(Rail rail) const {
        const bool left = rail == Rail::line || rail == Rail::feed;
        float edge = left ? width_ : 0;
        for (const Circuit& circuit : c_.circuits)
            for (const Run& run : circuit.runs) {
                const std::vector<int> pins =
                    (left ? run.left : run.right) == rail ? edge_of(run, left) : std::vector<int>{};
                if (!pins.empty() && c_.vertices[index(pins.back())].terminal >= 0)
                    edge = left ? std::min(edge, at_[index(pins.back())].x)
                                : std::max(edge, at_[index(pins.back())].x);
            }
        const bool none = left ? edge == width_ : edge == 0;
        return none ? (left ? kRailPad : width_ - kRailPad) : edge;
    }

    /// Where the supply comes onto the board: from there its tracks lead to both rails.
    void add_head(Block& block) const {
        const float right = width_ + kRailPad;
        const float bus = bus_y();
        block.pieces.insert(block.pieces.begin(),
                            {{-kRailPad, bus - kBusPitch / 2}, {right, bus + kRowHalf}});
        const float line_top = supply_y_[2] - kRowHalf;
        block.pieces.push_back({{last_before_rail(c_.line).x, line_top}, {right, bus - kBusPitch / 2}});
        if (!c_.neutral.links.empty())
            block.pieces.push_back(
                {{last_before_rail(c_.neutral).x, supply_y_[1] - kRowHalf}, {right, line_top}});
    }

    template <class Add>
    void add_board_pieces(const Run& run, const std::string& owner, Add&& add) const {
        const auto inside = [&](int v) {
            const Vertex& vertex = c_.vertices[index(v)];
            return vertex.owner == owner && !vertex.lug;
        };
        for (std::size_t i = 0; i < run.vertices.size(); ++i) {
            if (!inside(run.vertices[i]))
                continue;
            std::size_t last = i;
            while (last + 1 < run.vertices.size() && inside(run.vertices[last + 1]) &&
                   c_.links[index(run.links[last])].owner == owner)
                ++last;
            const float y = row_y(run);
            const auto x = [&](std::size_t k) {
                const int v = run.vertices[k];
                if (is_rail(v))
                    return k == 0 ? -kRailPad : width_ + kRailPad;
                return at_[index(v)].x;
            };
            const bool only_a_tap_off = last == i && is_rail(run.vertices[i]);
            const float pad = last == i && !is_rail(run.vertices[i]) ? 10.0F : 0.0F;
            if (run.stub && i == 0 && last == i && leads_nowhere(run))
                add(-kRailPad, x(i), y, kRowHalf); // a parked lead: its terminal stands in the board's edge
            else if (!only_a_tap_off)
                add(x(i) - (is_rail(run.vertices[i]) ? 0 : pad), x(last) + pad, y, kRowHalf);
            i = last;
        }
    }

    [[nodiscard]] bool leads_nowhere(const Run& run) const {
        return run.left == Rail::none && run.right == Rail::none && !is_rail(run.vertices.front());
    }

    /// The height of a run's own row: that of a vertex that it brought in.
    [[nodiscard]] float row_y(const Run& run) const {
        const auto it = run_y_.find(&run);
        return it == run_y_.end() ? y_ : it->second;
    }

    /// Row by row round what is in the living room.
    void draw_rooms() {
        std::map<std::string, std::map<float, Rect>> rooms;
        for (const Spot& spot : out_.spots)
            if (spot.where == furnace::Place::Where::living_room)
                widen(rooms[spot.owner], spot.at);
        for (auto& [owner, rows] : rooms) {
            for (const Symbol& symbol : out_.symbols)
                if (owner_of(net_.element_names[index(symbol.element)]) == owner)
                    for (const ImVec2 end : {symbol.from, symbol.to})
                        widen(rows, end);
            Block block{Block::Kind::room, spaced(owner) + ", living room", {}};
            for (const auto& [y, box] : rows)
                block.pieces.push_back({{box.min.x - 12, y - kRowHalf}, {box.max.x + 6, y + kRowHalf}});
            out_.blocks.push_back(std::move(block));
        }
    }

    static void widen(std::map<float, Rect>& rows, ImVec2 p) {
        Rect& box = rows.try_emplace(p.y, Rect{p, p}).first->second;
        box.min.x = std::min(box.min.x, p.x);
        box.max.x = std::max(box.max.x, p.x);
    }

    /// A motor's casing round its windings, row by row: a capacitor beside them stays outside.
    void draw_casings() {
        std::map<std::string, Block> blocks;
        for (const Symbol& symbol : out_.symbols)
            if (symbol.kind == SymbolKind::winding || symbol.kind == SymbolKind::overload) {
                const std::string owner(owner_of(net_.element_names[index(symbol.element)]));
                Block& block = blocks[owner];
                block.kind = Block::Kind::casing;
                block.name = spaced(owner) + " motor";
                const float y = symbol.from.y;
                block.pieces.push_back({{std::min(symbol.from.x, symbol.to.x) - 5, y - kRowHalf + 1},
                                        {std::max(symbol.from.x, symbol.to.x) + 5, y + kRowHalf + 1}});
            }
        for (auto& [owner, block] : blocks)
            out_.blocks.push_back(std::move(block));
    }

    [[nodiscard]] int spot_of_common() const {
        const furnace::Terminal* best = nullptr;
        int spot = -1;
        for (std::size_t t = 0; t < model_.wiring.terminals.size(); ++t) {
            const furnace::Terminal& terminal = model_.wiring.terminals[t];
            // The screw that people park the black lead on has the shortest name: "C".
            if (terminal.pin == model_.wiring.common &&
                (best == nullptr || terminal.name.size() < best->name.size())) {
                best = &terminal;
                spot = out_.pin_spot[t];
            }
        }
        return spot;
    }

    const furnace::Model& model_;
    const electrical::Netlist& net_;
    Circuits c_;
    Ladder out_;
    std::vector<ImVec2> at_;      ///< by vertex
    std::vector<bool> has_place_; ///< by vertex
    std::vector<int> home_row_;   ///< by vertex
    std::map<int, int> spot_of_vertex_;
    std::map<int, float> pinned_; ///< vertices that must lie where something above them lies
    std::map<const Run*, float> run_y_;
    std::vector<std::pair<int, int>> wire_ends_; ///< vertices, by Ladder::wires
    std::vector<std::pair<Rail, float>> rail_uses_;
    float ground_start_ = 0; ///< x at which a run from the cabinet's metal begins
    std::array<float, 3> supply_y_{};
    std::string board_owner_;
    float width_ = 0;
    float y_ = 0; ///< of the last row
    int row_ = 0;
    float high_end_ = 0, low_start_ = 0;
    float high_edge_left_ = 0, high_edge_right_ = 0, low_edge_left_ = 0, low_edge_right_ = 0;
    bool low_section_ = false;
};

} // namespace

int Ladder::spot_of_node(int node) const {
    for (std::size_t i = 0; i < spots.size(); ++i)
        if (spots[i].node == node)
            return static_cast<int>(i);
    return -1;
}

Ladder lay_out(const furnace::Model& model) {
    return Drafter(model).draw();
}

} // namespace lightoff::diagram
