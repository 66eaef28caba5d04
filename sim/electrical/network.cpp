// SPDX-License-Identifier: MIT
#include "electrical/network.hpp"
#include "electrical/element_admittance.hpp"
#include "electrical/flame_rectifier.hpp"
#include <algorithm>
#include <cmath>
#include <cstring>
#include <type_traits>

namespace lightoff::electrical {
namespace {

constexpr std::size_t at(int i) {
    return static_cast<std::size_t>(i);
}

constexpr Complex inverse_of(Complex a) {
    return inverse(a);
}
constexpr double inverse_of(double a) {
    return 1.0 / a;
}

template <class T>
bool same_bytes(const T& a, const T& b) {
    static_assert(std::is_trivially_copyable_v<T>);
    // Equal bits are what is asked for; there is no padding, as the constructor asserts.
    // NOLINTNEXTLINE(bugprone-suspicious-memory-comparison)
    return std::memcmp(&a, &b, sizeof(T)) == 0;
}

/// Whole steps of kTemperatureStepK above the reference, to the nearest.
std::int32_t temperature_step(double kelvin) {
    const double steps = (kelvin - kWindingReferenceK) / kTemperatureStepK;
    const double bounded = std::max(-1000.0, std::min(1000.0, steps));
    return static_cast<std::int32_t>(bounded + 1000.5) - 1000;
}

template <class KeyType>
ElementSetting setting_of(const Element& e, int index, const KeyType& key) {
    ElementSetting s;
    s.series_ohm = series_ohm(key.condition, key.parted, index);
    s.factor = static_cast<double>(key.condition.factor[at(index)]);
    if (e.kind == ElementKind::contact)
        s.closed =
            ((key.switches >> static_cast<unsigned>(e.switch_bit)) & 1U) != (e.normally_closed ? 1U : 0U);
    if (e.thermal_group >= 0)
        s.copper_factor =
            1.0 + kCopperPerKelvin * kTemperatureStepK * key.temperature_steps[at(e.thermal_group)];
    return s;
}

template <class T>
T admittance(const Element& e, const ElementSetting& s) {
    if constexpr (std::is_same_v<T, double>)
        return dc_admittance(e, s);
    else
        return ac_admittance(e, s);
}

template <class T>
T source_emf(const Element& e, double factor) {
    if constexpr (std::is_same_v<T, double>)
        return e.dc_v * factor;
    else
        return Complex{e.ac_v * factor, e.ac_quadrature_v * factor};
}

template <class T>
T attachment_emf(const Attachment& a) {
    if constexpr (std::is_same_v<T, double>)
        return a.dc_v;
    else
        return Complex{a.ac_v};
}

template <class T>
T stray_admittance(const Stray& s) {
    if constexpr (std::is_same_v<T, double>)
        return 1.0 / s.ohm;
    else
        return Complex{1.0 / s.ohm, 2.0 * units::pi * units::line_frequency_hz * s.farad};
}

bool is_port(const Element& e) {
    return e.port >= 0;
}

/// One row of a reduced network at given port currents.
template <class T, std::size_t N, std::size_t P>
T evaluate(const std::array<T, N>& row, const std::array<T, P>& port_a, int ports) {
    T x = row[0];
    for (int k = 0; k < ports; ++k)
        x -= row[at(1 + k)] * port_a[at(k)];
    return x;
}

/// Turns branch admittances into shares of their star and meshes of the neighbours, node by node.
template <class T>
void eliminate(const EliminationPlan& plan, T* y, T* pivot_inverse, T* current) {
    const int* neighbours = plan.neighbours.data();
    const int* target = plan.targets.data();
    for (int n = 0; n < static_cast<int>(plan.steps.size()); ++n) {
        const EliminationPlan::Step& step = plan.steps[at(n)];
        T* branch = y + plan.node_count + step.first;
        const int* to = neighbours + step.first;
        const T earth = y[step.node];
        T sum = earth;
        for (int i = 0; i < step.count; ++i)
            sum += branch[i];
        const T inverse = inverse_of(sum);
        pivot_inverse[n] = inverse;
        const bool carry = n < plan.first_kept;
        const T here = current[step.node];
        const T earth_share = earth * inverse;
        for (int i = 0; i < step.count; ++i) {
            const T admittance_i = branch[i];
            y[to[i]] += admittance_i * earth_share;
            for (int j = 0; j < i; ++j)
                y[*target++] += admittance_i * branch[j];
            branch[i] = admittance_i * inverse;
            if (carry)
                current[to[i]] += branch[i] * here;
        }
    }
}

/// Solves A x = b in place, partial pivoting; A is N x (N + 1) with b in the last column. The size
/// is a constant so that the compiler lays the loops out flat.
template <int N, class T>
void solve_dense_of(Workspace::Dense<T>& a) {
    const auto size_of = [](T v) {
        if constexpr (std::is_same_v<T, double>)
            return v * v;
        else
            return norm(v);
    };
    for (int c = 0; c < N; ++c) {
        T* const row = a[at(c)].data();
        int best = c;
        double largest = size_of(row[c]);
        for (int r = c + 1; r < N; ++r) {
            const double size = size_of(a[at(r)][at(c)]);
            if (size > largest) {
                largest = size;
                best = r;
            }
        }
        if (best != c)
            std::swap(a[at(best)], a[at(c)]);
        const T inverse = inverse_of(row[c]);
        row[c] = inverse;
        for (int r = c + 1; r < N; ++r) {
            T* const below = a[at(r)].data();
            const T share = below[c] * inverse;
#pragma GCC unroll 8
            for (int k = c + 1; k <= N; ++k)
                below[k] -= share * row[k];
        }
    }
    for (int r = N - 1; r >= 0; --r) {
        T x = a[at(r)][N];
        for (int k = r + 1; k < N; ++k)
            x -= a[at(r)][at(k)] * a[at(k)][N];
        a[at(r)][N] = x * a[at(r)][at(r)];
    }
}

template <class T>
void solve_dense(Workspace::Dense<T>& a, int n) {
    switch (n) {
    case 1:
        return solve_dense_of<1>(a);
    case 2:
        return solve_dense_of<2>(a);
    case 3:
        return solve_dense_of<3>(a);
    case 4:
        return solve_dense_of<4>(a);
    case 5:
        return solve_dense_of<5>(a);
    case 6:
        return solve_dense_of<6>(a);
    case 7:
        return solve_dense_of<7>(a);
    case 8:
        return solve_dense_of<8>(a);
    default:
        return;
    }
}

void solve_ports(PortMatrix<kMaxPorts>& a, int n, std::array<Complex, kMaxPorts>& x) {
    switch (n) {
    case 1:
        return solve_passive<1>(a, x);
    case 2:
        return solve_passive<2>(a, x);
    case 3:
        return solve_passive<3>(a, x);
    case 4:
        return solve_passive<4>(a, x);
    case 5:
        return solve_passive<5>(a, x);
    case 6:
        return solve_passive<6>(a, x);
    case 7:
        return solve_passive<7>(a, x);
    case 8:
        return solve_passive<8>(a, x);
    default:
        return;
    }
}

} // namespace

Workspace::Workspace(const Netlist& netlist) : netlist_(&netlist) {
    static_assert(sizeof(Condition) == 2 * kMaxElements * sizeof(float) + kMaxBridges * sizeof(Bridge));
    static_assert(sizeof(Bridge) == 8 && sizeof(Attachment) == 32, "no padding: compared as bytes");
    ac_columns_.resize(at(netlist.node_count()));
    dc_columns_.resize(at(netlist.node_count()));
    Key untouched;
    untouched.source_factor.fill(1.0);
    begin(untouched);
}

void Workspace::forget() {
    now().ac.valid = false;
    now().dc.valid = false;
    forget_solutions();
}

void Workspace::forget_solutions() {
    ac_solved_ = false;
    dc_solved_ = false;
    ac_nodes_known_ = false;
    squared_ = 0;
    sensed_ = 0;
}

/// Solutions are of these ports from here on.
void Workspace::take(const PortInputs& ports) {
    if (same_bytes(ports, solved_for_))
        return;
    forget_solutions();
    solved_for_ = ports;
}

bool Workspace::Key::is_of(const Condition& wiring, const NetworkInputs& inputs,
                           const TemperatureSteps& steps) const {
    return inputs.switches == switches && inputs.parted == parted && same_bytes(steps, temperature_steps) &&
           same_bytes(inputs.source_factor, source_factor) && same_bytes(inputs.attachments, attachments) &&
           same_bytes(wiring, condition);
}

/// A state that comes back finds its reduction ready: relays go to and fro, leads too, and one workspace
/// serves several furnaces in turns.
void Workspace::set(const Condition& condition, const NetworkInputs& inputs) {
    TemperatureSteps steps{};
    for (std::size_t i = 0; i < netlist_->thermal_group_names.size(); ++i)
        steps[i] = temperature_step(inputs.group_temperature_k[i]);
    if (now().key.is_of(condition, inputs, steps))
        return;
    forget_solutions();
    const auto known = std::find_if(kept_.begin(), kept_.end(), [&](const Reduction& r) {
        return r.key.is_of(condition, inputs, steps);
    });
    if (known == kept_.end())
        begin({condition, inputs.attachments, inputs.source_factor, inputs.switches, inputs.parted, steps});
    else
        kept_.splice(kept_.begin(), kept_, known);
}

/// A reduction that is still to be made, in place of the one that was not used for longest.
void Workspace::begin(const Key& key) {
    if (kept_.size() < kKeptReductions)
        kept_.emplace_front();
    else
        kept_.splice(kept_.begin(), kept_, std::prev(kept_.end()));
    now().key = key;
    now().planned = planned_for(key);
    const EliminationPlan& plan = now().planned->plan;
    const auto fit = [&](auto& r) {
        r.y.resize(at(plan.branch_count()));
        r.pivot_inverse.resize(plan.steps.size());
        r.current.resize(at(plan.node_count));
    };
    fit(now().ac);
    fit(now().dc);
    forget();
}

/// Leads that come back to where they were find their plan ready.
std::shared_ptr<const Workspace::Planned> Workspace::planned_for(const Key& key) {
    Joins joins{};
    for (int i = 0; i < kMaxBridges; ++i)
        joins[at(i)] = {key.condition.bridges[at(i)].a, key.condition.bridges[at(i)].b};
    for (int i = 0; i < kMaxAttachments; ++i)
        joins[at(kMaxBridges + i)] = {key.attachments[at(i)].a, key.attachments[at(i)].b};
    const auto known = plans_.find(joins);
    if (known != plans_.end())
        return known->second;
    if (plans_.size() >= kKeptPlans)
        plans_.clear();
    return plans_.emplace(joins, std::make_shared<const Planned>(plan_for(joins))).first->second;
}

Workspace::Planned Workspace::plan_for(const Joins& joins) const {
    const Netlist& net = *netlist_;
    Planned planned;
    std::vector<NodePair> joined(joins.begin(), joins.end());
    for (const Element& e : net.elements) {
        if (is_port(e))
            continue;
        joined.emplace_back(e.a, e.b);
        if (e.kind == ElementKind::winding) {
            joined.emplace_back(e.a, e.field);
            joined.emplace_back(e.b, e.field);
        }
    }
    std::vector<int> kept;
    for (const Port& p : net.ports) {
        kept.push_back(p.a);
        kept.push_back(p.b);
    }
    planned.plan = plan_elimination(net.node_count(), joined, kept);

    for (const Element& e : net.elements) {
        Stamp s;
        if (!is_port(e))
            s.branch[0] = planned.plan.branch(e.a, e.b);
        if (e.kind == ElementKind::winding)
            s.branch = {s.branch[0],
                        planned.plan.branch(e.a, e.field),
                        planned.plan.branch(e.b, e.field),
                        planned.plan.branch(e.a, 0),
                        planned.plan.branch(e.b, 0),
                        planned.plan.branch(e.field, 0)};
        planned.stamps.push_back(s);
    }
    for (int i = 0; i < kMaxBridges; ++i)
        planned.bridge_branch[at(i)] = planned.plan.branch(joins[at(i)].first, joins[at(i)].second);
    for (int i = 0; i < kMaxAttachments; ++i)
        planned.attachment_branch[at(i)] =
            planned.plan.branch(joins[at(kMaxBridges + i)].first, joins[at(kMaxBridges + i)].second);

    std::vector<bool> wanted(at(net.node_count()), false);
    for (const Sense& s : net.senses) {
        wanted[at(s.a)] = wanted[at(s.b)] = true;
        if (s.element >= 0 && net.elements[at(s.element)].field >= 0)
            wanted[at(net.elements[at(s.element)].field)] = true;
    }
    for (int i = 0; i < kMaxAttachments; ++i) {
        const NodePair& ends = joins[at(kMaxBridges + i)];
        wanted[at(ends.first)] = wanted[at(ends.second)] = true;
    }
    for (int n = 0; n < planned.plan.first_kept; ++n) {
        const EliminationPlan::Step& step = planned.plan.steps[at(n)];
        if (!wanted[at(step.node)])
            continue;
        for (int i = step.first; i < step.first + step.count; ++i)
            wanted[at(planned.plan.neighbours[at(i)])] = true;
    }
    for (int n = planned.plan.first_kept - 1; n >= 0; --n)
        if (wanted[at(planned.plan.steps[at(n)].node)])
            planned.wanted_steps.push_back(n);
    return planned;
}

template <class T>
void Workspace::assemble(Reduced<T>& r) const {
    const Netlist& net = *netlist_;
    const Key& key = now().key;
    const Planned& planned = *now().planned;
    std::fill(r.y.begin(), r.y.end(), T{});
    std::fill(r.current.begin(), r.current.end(), T{});
    for (int i = 1; i < planned.plan.node_count; ++i)
        r.y[at(i)] = stray_admittance<T>(net.strays[at(i)]);

    const auto inject = [&](int a, int b, T current) {
        r.current[at(a)] += current;
        r.current[at(b)] -= current;
    };
    for (int i = 0; i < net.element_count(); ++i) {
        const Element& e = net.elements[at(i)];
        if (is_port(e))
            continue;
        const std::array<int, 6>& branch = planned.stamps[at(i)].branch;
        const T y = admittance<T>(e, setting_of(e, i, key));
        r.y[at(branch[0])] += y;
        if (e.kind == ElementKind::source)
            inject(e.a, e.b, y * source_emf<T>(e, key.source_factor[at(e.source)]));
        if constexpr (std::is_same_v<T, Complex>) {
            if (e.kind != ElementKind::winding)
                continue;
            // I = y (Vp - Vq - n E) at the ends and n I at the field node, written as branches.
            const T ny = e.turns * y;
            r.y[at(branch[1])] += ny;
            r.y[at(branch[2])] -= ny;
            r.y[at(branch[3])] -= ny;
            r.y[at(branch[4])] += ny;
            r.y[at(branch[5])] += e.turns * ny;
        }
    }
    if constexpr (std::is_same_v<T, Complex>)
        for (const Core& c : net.cores) {
            r.y[at(c.field_m)].re += 1.0 / c.iron_loss_ohm;
            if (c.motor >= 0)
                r.y[at(c.field_a)].re += 1.0 / c.iron_loss_ohm;
            else
                r.y[at(c.field_m)].im -= 1.0 / c.magnetising_ohm;
        }
    for (int i = 0; i < kMaxBridges; ++i) {
        const Bridge& b = key.condition.bridges[at(i)];
        if (b.a != b.b)
            r.y[at(planned.bridge_branch[at(i)])] += T(1.0 / static_cast<double>(b.ohm));
    }
    for (int i = 0; i < kMaxAttachments; ++i) {
        const Attachment& a = key.attachments[at(i)];
        if (a.a == a.b)
            continue;
        const double y = 1.0 / a.ohm;
        r.y[at(planned.attachment_branch[at(i)])] += T(y);
        inject(a.a, a.b, y * attachment_emf<T>(a));
    }
    r.y[kEarth] = T{};
    r.current[kEarth] = T{};
}

template <class T>
std::array<T, Workspace::kColumns> Workspace::current_row(const Columns<T>& columns, int element) const {
    const Element& e = netlist_->elements[at(element)];
    std::array<T, kColumns> row{};
    if (is_port(e)) {
        row[at(1 + e.port)] = T(-1.0);
        return row;
    }
    const T y = admittance<T>(e, setting_of(e, element, now().key));
    const bool coupled = std::is_same_v<T, Complex> && e.kind == ElementKind::winding;
    for (int c = 0; c <= netlist_->port_count(); ++c) {
        T v = columns[at(e.a)][at(c)] - columns[at(e.b)][at(c)];
        if (coupled)
            v -= e.turns * columns[at(e.field)][at(c)];
        row[at(c)] = v;
    }
    if (e.kind == ElementKind::source)
        row[0] -= source_emf<T>(e, now().key.source_factor[at(e.source)]);
    for (T& x : row)
        x = y * x;
    return row;
}

template <class T>
void Workspace::reduce(Reduced<T>& r, Columns<T>& columns) const {
    const EliminationPlan& plan = now().planned->plan;
    const Netlist& net = *netlist_;
    const int width = 1 + net.port_count();
    assemble(r);
    eliminate(plan, r.y.data(), r.pivot_inverse.data(), r.current.data());

    const int steps = static_cast<int>(plan.steps.size());
    for (int n = plan.first_kept; n < steps; ++n) {
        const int node = plan.steps[at(n)].node;
        columns[at(node)] = {};
        columns[at(node)][0] = r.current[at(node)];
    }
    for (int k = 0; k < net.port_count(); ++k) {
        const Port& p = net.ports[at(k)];
        columns[at(p.a)][at(1 + k)] += T(1.0);
        columns[at(p.b)][at(1 + k)] -= T(1.0);
    }
    for (int n = plan.first_kept; n < steps; ++n) {
        const EliminationPlan::Step& step = plan.steps[at(n)];
        for (int i = step.first; i < step.first + step.count; ++i)
            for (int c = 0; c < width; ++c)
                columns[at(plan.neighbours[at(i)])][at(c)] +=
                    r.y[at(plan.node_count + i)] * columns[at(step.node)][at(c)];
    }
    const auto resolve = [&](const EliminationPlan::Step& step, std::array<T, kColumns>& column) {
        for (int i = step.first; i < step.first + step.count; ++i) {
            const T share = r.y[at(plan.node_count + i)];
            const std::array<T, kColumns>& other = columns[at(plan.neighbours[at(i)])];
            for (int c = 0; c < width; ++c)
                column[at(c)] += share * other[at(c)];
        }
    };
    for (int n = steps - 1; n >= plan.first_kept; --n) {
        const EliminationPlan::Step& step = plan.steps[at(n)];
        std::array<T, kColumns>& column = columns[at(step.node)];
        for (int c = 0; c < width; ++c)
            column[at(c)] = r.pivot_inverse[at(n)] * column[at(c)];
        resolve(step, column);
    }
    columns[kEarth] = {};
    for (const int n : now().planned->wanted_steps) {
        const EliminationPlan::Step& step = plan.steps[at(n)];
        std::array<T, kColumns>& column = columns[at(step.node)];
        column = {};
        column[0] = r.pivot_inverse[at(n)] * r.current[at(step.node)];
        resolve(step, column);
    }

    const auto difference = [&](int a, int b, std::array<T, kColumns>& row) {
        for (int c = 0; c < width; ++c)
            row[at(c)] = columns[at(a)][at(c)] - columns[at(b)][at(c)];
    };
    for (int k = 0; k < net.port_count(); ++k)
        difference(net.ports[at(k)].a, net.ports[at(k)].b, r.ports[at(k)]);
    for (int i = 0; i < net.sense_count(); ++i) {
        const Sense& s = net.senses[at(i)];
        if (s.element < 0)
            difference(s.a, s.b, r.rows[at(i)]);
        else
            r.rows[at(i)] = current_row(columns, s.element);
    }
    for (int i = 0; i < kMaxAttachments; ++i) {
        const Attachment& a = now().key.attachments[at(i)];
        if (a.a != a.b)
            difference(a.a, a.b, r.rows[at(kMaxSenses + i)]);
        else
            r.rows[at(kMaxSenses + i)] = {};
    }
    r.valid = true;
}

/// The network's admittances between its ports, and the currents it drives into them when they are shorted:
/// the inverse of the impedances, by Gaussian elimination with pivoting, once for each full solve.
void Workspace::invert_ports() {
    const int n = netlist_->port_count();
    now().network_y = {};
    for (int column = 0; column <= n; ++column) {
        Dense<Complex>& a = dense_ac_;
        for (int k = 0; k < n; ++k) {
            for (int l = 0; l < n; ++l)
                a[at(k)][at(l)] = now().ac.ports[at(k)][at(1 + l)];
            a[at(k)][at(n)] = column == n ? now().ac.ports[at(k)][0] : Complex(k == column ? 1.0 : 0.0);
        }
        solve_dense(a, n);
        for (int k = 0; k < n; ++k)
            now().network_y.set(at(k), column == n ? 0 : at(1 + column), a[at(k)][at(n)]);
    }
}

/// Senses side by side, for all of them at once, and the ohms in which their currents turn to heat.
void Workspace::lay_out_senses() {
    for (int c = 0; c <= netlist_->port_count(); ++c)
        for (int i = 0; i < netlist_->sense_count(); ++i)
            now().sense_pairs[at(i / 2)][at(c)].set_lane(at(i % 2), now().ac.rows[at(i)][at(c)]);
    for (int i = 0; i < netlist_->sense_count(); ++i) {
        const int element = netlist_->senses[at(i)].element;
        if (element < 0 || is_port(netlist_->elements[at(element)]))
            continue;
        const Element& e = netlist_->elements[at(element)];
        now().sense_ohm[at(i)] = inverse(ac_admittance(e, setting_of(e, element, now().key))).re;
    }
}

const Workspace::SenseValues& Workspace::ac_sense_squares(int count) {
    if (squared_ >= count)
        return sense_squares_;
    const int ports = netlist_->port_count();
    std::array<ComplexPair, kMaxPorts> port_a;
    for (int k = 0; k < ports; ++k)
        port_a[at(k)] = ComplexPair(solution_.port_a[at(k)]);
    for (int pair = squared_ / 2; 2 * pair < count; ++pair) {
        const std::array<ComplexPair, kColumns>& row = now().sense_pairs[at(pair)];
        ComplexPair value = row[0];
        for (int k = 0; k < ports; ++k)
            value -= row[at(1 + k)] * port_a[at(k)];
        const units::DoublePair squares = norm(value);
        sense_squares_[at(2 * pair)] = squares[0];
        sense_squares_[at(2 * pair + 1)] = squares[1];
    }
    squared_ = count;
    return sense_squares_;
}

const Workspace::SenseValues& Workspace::ac_sense_rms(int count) {
    for (const SenseValues& squares = ac_sense_squares(count); sensed_ < count; ++sensed_)
        sense_rms_[at(sensed_)] = std::sqrt(squares[at(sensed_)]);
    return sense_rms_;
}

template <class T>
Workspace::Reduced<T>& Workspace::reduced() {
    if constexpr (std::is_same_v<T, Complex>) {
        if (!now().ac.valid) {
            reduce(now().ac, ac_columns_);
            invert_ports();
            lay_out_senses();
        }
        return now().ac;
    } else {
        if (!now().dc.valid)
            reduce(now().dc, dc_columns_);
        return now().dc;
    }
}

/// Admittance of an igniter's or flame's branch at this moment, a bad connection in series included.
double Workspace::branch_siemens(const Port& port, int k, const PortInputs& in) const {
    const double factor = static_cast<double>(now().key.condition.factor[at(port.index)]);
    const double series = series_ohm(now().key.condition, now().key.parted, port.index);
    if (port.kind == PortKind::igniter)
        return 1.0 / (in.igniter_ohm[at(k)] * factor + series);
    return mean_flame_siemens(abs(now().ac.ports[at(k)][at(1 + k)]), in.flame_forward_siemens[at(k)],
                              in.flame_reverse_siemens[at(k)]);
}

const AcSolution& Workspace::solve_ac(const PortInputs& in) {
    take(in);
    if (ac_solved_)
        return solution_;
    ac_solved_ = true;
    const Netlist& net = *netlist_;
    const Reduced<Complex>& r = reduced<Complex>();
    const int n = net.port_count();
    AcSolution& out = solution_;
    PortMatrix<kMaxPorts>& a = port_matrix_;
    std::copy_n(now().network_y.rows.begin(), n, a.rows.begin());
    std::array<double, kMaxPorts> own;
    for (int k = 0; k < n; ++k) {
        const Port& p = net.ports[at(k)];
        if (p.kind == PortKind::motor_main) {
            MotorAdmittance& y = motors_[at(p.index)];
            y = motor_admittance(net.motors[at(p.index)], in.rotor_rad_s[at(p.index)]);
            a.add(at(k), at(1 + k), y.mm);
            a.add(at(k), at(2 + k), y.ma);
            a.add(at(k + 1), at(1 + k), y.am);
            a.add(at(k + 1), at(2 + k), y.mm);
        } else if (p.kind != PortKind::motor_start) {
            own[at(k)] = branch_siemens(p, k, in);
            a.add(at(k), at(1 + k), own[at(k)]);
        }
    }
    solve_ports(a, n, out.port_v);

    for (int k = 0; k < n; ++k) {
        const Port& p = net.ports[at(k)];
        const Complex v = out.port_v[at(k)];
        if (p.kind == PortKind::motor_main) {
            const Complex start = out.port_v[at(k + 1)];
            const MotorAdmittance& y = motors_[at(p.index)];
            out.port_a[at(k)] = y.mm * v + y.ma * start;
            out.port_a[at(k + 1)] = y.am * v + y.mm * start;
            out.torque[at(p.index)] = motor_torque(net.motors[at(p.index)], y, v, start);
        } else if (p.kind != PortKind::motor_start) {
            out.port_a[at(k)] = own[at(k)] * v;
            if (p.kind == PortKind::flame)
                out.flame_open_v[at(k)] = abs(v + r.ports[at(k)][at(1 + k)] * out.port_a[at(k)]);
        }
    }
    return out;
}

const DcSolution& Workspace::solve_dc(const PortInputs& in) {
    const AcSolution& ac = solve_ac(in);
    if (dc_solved_)
        return dc_solution_;
    dc_solved_ = true;
    const Netlist& net = *netlist_;
    const Reduced<double>& r = reduced<double>();
    const Reduced<Complex>& r_ac = reduced<Complex>();
    const int n = net.port_count();
    DcSolution& out = dc_solution_;
    out = {};
    std::array<double, kMaxPorts> own{};
    for (int k = 0; k < n; ++k) {
        const Port& p = net.ports[at(k)];
        if (p.kind == PortKind::igniter)
            own[at(k)] =
                1.0 / (in.igniter_ohm[at(k)] * static_cast<double>(now().key.condition.factor[at(p.index)]) +
                       series_ohm(now().key.condition, now().key.parted, p.index));
        if (p.kind != PortKind::flame)
            continue;
        // A lead that is open for DC but not for AC (its capacitance) charges until it stops the mean
        // current: the larger of the two resistances rules.
        const double supply = std::max(abs(r_ac.ports[at(k)][at(1 + k)]), r.ports[at(k)][at(1 + k)]);
        out.port_a[at(k)] =
            mean_flame_current_a({ac.flame_open_v[at(k)], supply, in.flame_forward_siemens[at(k)],
                                  in.flame_reverse_siemens[at(k)]});
    }
    // Motors' axes carry no DC, flames are sources: only igniters are left to be solved for.
    std::array<int, kMaxPorts> open{};
    int m = 0;
    for (int k = 0; k < n; ++k)
        if (own[at(k)] > 0.0)
            open[at(m++)] = k;
    Dense<double>& a = dense_dc_;
    for (int i = 0; i < m; ++i) {
        const auto& row = r.ports[at(open[at(i)])];
        a[at(i)][at(m)] = evaluate(row, out.port_a, n);
        for (int j = 0; j < m; ++j)
            a[at(i)][at(j)] = row[at(1 + open[at(j)])] * own[at(open[at(j)])] + (i == j ? 1.0 : 0.0);
    }
    solve_dense(a, m);
    for (int i = 0; i < m; ++i)
        out.port_a[at(open[at(i)])] = own[at(open[at(i)])] * a[at(i)][at(m)];
    return out;
}

Complex Workspace::ac_sense(const AcSolution& s, int sense) const {
    return evaluate(now().ac.rows[at(sense)], s.port_a, netlist_->port_count());
}

double Workspace::dc_sense(const DcSolution& s, int sense) const {
    return evaluate(now().dc.rows[at(sense)], s.port_a, netlist_->port_count());
}

double Workspace::ac_loss_w(int sense) {
    const int element = netlist_->senses[at(sense)].element;
    if (element < 0)
        return 0.0;
    const Element& e = netlist_->elements[at(element)];
    if (is_port(e)) {
        const Complex v = solution_.port_v[at(e.port)];
        const Complex i = solution_.port_a[at(e.port)];
        return v.re * i.re + v.im * i.im;
    }
    return ac_sense_squares(netlist_->sense_count())[at(sense)] * now().sense_ohm[at(sense)];
}

double Workspace::igniter_w(const AcSolution& s, int port, double ohm) const {
    const int element = netlist_->ports[at(port)].index;
    const double element_ohm = ohm * static_cast<double>(now().key.condition.factor[at(element)]);
    const double branch_ohm = element_ohm + series_ohm(now().key.condition, now().key.parted, element);
    return norm(s.port_v[at(port)]) * element_ohm / (branch_ohm * branch_ohm);
}

Complex Workspace::ac_attachment_v(const AcSolution& s, int i) const {
    return evaluate(now().ac.rows[at(kMaxSenses + i)], s.port_a, netlist_->port_count());
}

double Workspace::dc_attachment_v(const DcSolution& s, int i) const {
    return evaluate(now().dc.rows[at(kMaxSenses + i)], s.port_a, netlist_->port_count());
}

Complex Workspace::ac_attachment_a(const AcSolution& s, int i) const {
    const Attachment& a = now().key.attachments[at(i)];
    if (a.a == a.b)
        return {};
    return (1.0 / a.ohm) * (ac_attachment_v(s, i) - a.ac_v);
}

double Workspace::dc_attachment_a(const DcSolution& s, int i) const {
    const Attachment& a = now().key.attachments[at(i)];
    if (a.a == a.b)
        return 0.0;
    return (dc_attachment_v(s, i) - a.dc_v) / a.ohm;
}

template <class T>
void Workspace::all_nodes(const Reduced<T>& r, const std::array<T, kMaxPorts>& port_a,
                          std::array<T, kMaxNodes>& volts) const {
    const EliminationPlan& plan = now().planned->plan;
    const int steps = static_cast<int>(plan.steps.size());
    volts = {};
    for (int i = 1; i < plan.node_count; ++i)
        volts[at(i)] = r.current[at(i)];
    for (int k = 0; k < netlist_->port_count(); ++k) {
        const Port& p = netlist_->ports[at(k)];
        volts[at(p.a)] -= port_a[at(k)];
        volts[at(p.b)] += port_a[at(k)];
    }
    for (int n = plan.first_kept; n < steps; ++n) {
        const EliminationPlan::Step& step = plan.steps[at(n)];
        for (int i = step.first; i < step.first + step.count; ++i)
            volts[at(plan.neighbours[at(i)])] += r.y[at(plan.node_count + i)] * volts[at(step.node)];
    }
    volts[kEarth] = T{};
    for (int n = steps - 1; n >= 0; --n) {
        const EliminationPlan::Step& step = plan.steps[at(n)];
        T v = r.pivot_inverse[at(n)] * volts[at(step.node)];
        for (int i = step.first; i < step.first + step.count; ++i)
            v += r.y[at(plan.node_count + i)] * volts[at(plan.neighbours[at(i)])];
        volts[at(step.node)] = v;
    }
}

void Workspace::node_voltages(const AcSolution& s, AcVoltages& volts) const {
    all_nodes(now().ac, s.port_a, volts);
}
void Workspace::node_voltages(const DcSolution& s, DcVoltages& volts) const {
    all_nodes(now().dc, s.port_a, volts);
}

const AcVoltages& Workspace::ac_node_voltages() {
    if (!ac_nodes_known_)
        node_voltages(solution_, ac_nodes_);
    ac_nodes_known_ = true;
    return ac_nodes_;
}

Complex Workspace::element_current(const AcSolution& s, const AcVoltages& volts, int element) const {
    const Element& e = netlist_->elements[at(element)];
    if (is_port(e))
        return s.port_a[at(e.port)];
    Complex v = volts[at(e.a)] - volts[at(e.b)];
    if (e.kind == ElementKind::winding)
        v -= e.turns * volts[at(e.field)];
    if (e.kind == ElementKind::source)
        v -= source_emf<Complex>(e, now().key.source_factor[at(e.source)]);
    return ac_admittance(e, setting_of(e, element, now().key)) * v;
}

double Workspace::element_current(const DcSolution& s, const DcVoltages& volts, int element) const {
    const Element& e = netlist_->elements[at(element)];
    if (is_port(e))
        return s.port_a[at(e.port)];
    double v = volts[at(e.a)] - volts[at(e.b)];
    if (e.kind == ElementKind::source)
        v -= source_emf<double>(e, now().key.source_factor[at(e.source)]);
    return dc_admittance(e, setting_of(e, element, now().key)) * v;
}

} // namespace lightoff::electrical
