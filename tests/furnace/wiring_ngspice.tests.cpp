// SPDX-License-Identifier: MIT
//
// The reference furnace's whole netlist against ngspice, healthy and with one thing wrong at a time. Source
// of every expected voltage: ngspice on the exported deck; 0.1 % or 1 mV on every node.
//
// A piece cut off from everything hangs on picofarads; there ngspice's own rounding passes the tolerance.
// Such a circuit is solved a third time in wider numbers (deck_solver.hpp): that must show ngspice off and
// the project's solver right. Every moment starts with a circuit on which all three agree.
#include "moments.hpp"
#include "support/deck_solver.hpp"
#include "support/ngspice_circuit.hpp"

#include "files/json_text.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <fstream>
#include <set>

using namespace lightoff;
using namespace lightoff::test;

namespace {

constexpr double kShortOhm = 0.01;

bool is_between_conductors(const std::string& element) {
    return element.find('~') != std::string::npos;
}

/// Two nodes that lie side by side.
struct Neighbours {
    std::string name;
    int a = 0;
    int b = 0;
};

std::string part_of(const std::string& place) {
    return place.substr(0, place.find('.'));
}

/// Terminals of one part that stand one after the other in the profile, pin to pin and lug to lug, and the
/// nodes inside a part likewise: tracks of the board, ends of windings.
std::vector<Neighbours> neighbours(const furnace::Model& model) {
    std::ifstream file(kReferenceEquipment);
    const auto wiring = nlohmann::ordered_json::parse(file)["wiring"]; // keeps the file's order
    std::vector<Neighbours> found;
    std::set<std::pair<int, int>> seen;
    const auto add = [&](const std::string& one, const std::string& two) {
        const int a = model.find_test_point(one);
        const int b = model.find_test_point(two);
        REQUIRE(a > 0);
        REQUIRE(b > 0);
        if (a != b && seen.insert(std::minmax(a, b)).second)
            found.push_back({one + " to " + two, a, b});
    };
    std::string before;
    for (const auto& [name, terminal] : wiring["terminals"].items()) {
        if (part_of(name) == part_of(before)) {
            add(before + ".pin", name + ".pin");
            add(before + ".lug", name + ".lug");
        }
        before = name;
    }
    before.clear();
    for (const auto& node : wiring["nodes"]) {
        const auto name = node.get<std::string>();
        if (part_of(name) == part_of(before))
            add(before, name);
        before = name;
    }
    return found;
}

/// How far the project's solver is off ngspice and, where that matters, who is right.
struct Verdict {
    WorstNode ngspice;
    bool in_wide_numbers = false;
    WorstNode wide;        ///< the project's solver against the wide numbers
    WorstNode ngspice_off; ///< ngspice against them
};

/// One moment of the furnace in both solvers.
class Comparison {
public:
    Comparison(const furnace::Model& model, Moment moment, bool ac)
        : net_(model.wiring.netlist), workspace_(net_), moment_(std::move(moment)),
          neighbours_(neighbours(model)), ac_(ac) {
        // A millionth of an ohm in every capacitor's lead: the deck then has the lead as an element.
        for (std::size_t i = 0; i < net_.elements.size(); ++i)
            if (net_.elements[i].kind == el::ElementKind::capacitor)
                moment_.condition.series_ohm[i] = 1e-6F;
        if (ac_)
            attach(0, "board.R", "board.C", 1e7, 0.0); // a voltmeter
        else
            attach_ohmmeters();
        spice_.load(deck(moment_.condition, solve_ours(moment_.condition), -1));
    }

    Verdict healthy() { return compare(moment_.condition, -1); }

    Verdict with_open(std::size_t element) {
        el::Condition condition = moment_.condition;
        condition.series_ohm[element] = el::kOpenOhm;
        return compare(condition, -1);
    }

    Verdict with_short(std::size_t k) {
        el::Condition condition = moment_.condition;
        condition.bridges[0] = {static_cast<std::int16_t>(neighbours_[k].a),
                                static_cast<std::int16_t>(neighbours_[k].b), static_cast<float>(kShortOhm)};
        return compare(condition, static_cast<int>(k));
    }

    [[nodiscard]] const std::vector<Neighbours>& pairs() const { return neighbours_; }
    [[nodiscard]] const el::Netlist& netlist() const { return net_; }

private:
    void attach(std::size_t slot, const std::string& a, const std::string& b, double ohm, double dc_v) {
        const auto node = [&](const std::string& name) { return reference_model().find_test_point(name); };
        moment_.inputs.attachments[slot] = {node(a), node(b), ohm, 0.0, dc_v};
    }

    /// Without a test source nothing but the flame drives DC. One volt behind 10 kohm on every circuit.
    void attach_ohmmeters() {
        attach(0, "board.line", "board.neutral", 1e4, 1.0);
        attach(1, "board.R", "board.C", 1e4, 1.0);
        attach(2, "valve.hot", "valve.common", 1e4, 1.0);
        attach(3, "igniter_plug.line", "igniter_plug.neutral", 1e4, 1.0);
        attach(4, "board.park_1", "board.park_2", 1e4, 1.0);
        attach(5, "inducer_capacitor.a", "inducer_capacitor.b", 1e4, 1.0);
        attach(6, "thermostat.W", "thermostat.C", 1e4, 1.0);
        attach(7, "rod.lead", "cabinet.metal", 1e4, 1.0);
        attach(8, "panel.line", "earth", 1e4, 1.0);
    }

    Solved solve_ours(const el::Condition& condition) {
        return solve(net_, workspace_, condition, moment_.inputs, moment_.ports);
    }

    /// The exported deck with a resistor between each two neighbours, which carries nothing but in one.
    [[nodiscard]] std::string deck(const el::Condition& condition, const Solved& ours, int shorted) const {
        el::Condition without_bridge = condition;
        without_bridge.bridges = moment_.condition.bridges;
        const el::OperatingPoint point{without_bridge, moment_.inputs, moment_.ports, ours.flame_siemens,
                                       ours.flame_dc_a};
        std::string text = el::spice_deck(net_, point, ac_ ? el::Analysis::ac : el::Analysis::dc);
        std::string resistors;
        for (std::size_t k = 0; k < neighbours_.size(); ++k)
            resistors += "Rshort" + std::to_string(k) + " n" + std::to_string(neighbours_[k].a) + " n" +
                         std::to_string(neighbours_[k].b) +
                         (static_cast<int>(k) == shorted ? " " + std::to_string(kShortOhm) : " 1e18") + "\n";
        return text.insert(text.find('\n') + 1, resistors);
    }

    Verdict compare(const el::Condition& condition, int shorted) {
        const Solved ours = solve_ours(condition);
        const std::string text = deck(condition, ours, shorted);
        spice_.alter_to(text);
        const int count = net_.node_count();
        const std::vector<std::complex<double>> ngspice = ac_ ? spice_.ac(count) : spice_.dc(count);
        Verdict verdict;
        verdict.ngspice = worst_node(ours, ngspice, ac_);
        const bool healthy = shorted < 0 && verdict_count_++ == 0;
        if (verdict.ngspice.units <= 1.0 && !healthy)
            return verdict;
        const DeckSolver solver(text, ac_);
        std::vector<std::complex<double>> wide(1);
        for (int i = 1; i < count; ++i)
            wide.push_back(solver.volts("n" + std::to_string(i)));
        verdict.in_wide_numbers = true;
        verdict.wide = worst_node(ours, wide, ac_);
        for (int i = 1; i < count; ++i)
            verdict.ngspice_off.look_at(i, ngspice[static_cast<std::size_t>(i)],
                                        wide[static_cast<std::size_t>(i)]);
        return verdict;
    }

    const el::Netlist& net_;
    el::Workspace workspace_;
    Moment moment_;
    std::vector<Neighbours> neighbours_;
    bool ac_;
    int verdict_count_ = 0;
    NgspiceCircuit spice_;
};

void check_every_fault(bool ac) {
    int circuits = 0;
    int settled_in_wide_numbers = 0;
    double worst_of_all = 0.0;
    for (const Moment& moment : moments_of_a_call()) {
        Comparison comparison(reference_model(), moment, ac);
        const el::Netlist& net = comparison.netlist();
        const auto check = [&](const std::string& what, const Verdict& verdict) {
            ++circuits;
            const WorstNode& worst = verdict.in_wide_numbers ? verdict.wide : verdict.ngspice;
            worst_of_all = std::max(worst_of_all, worst.units);
            INFO(moment.name << (ac ? ", AC, " : ", DC, ") << what << ": "
                             << net.node_names[static_cast<std::size_t>(worst.node)] << " ours " << worst.ours
                             << (verdict.in_wide_numbers ? " in wide numbers " : " ngspice ")
                             << worst.ngspice);
            CHECK(worst.units <= (verdict.in_wide_numbers ? 0.2 : 1.0));
            if (!verdict.in_wide_numbers || what == "healthy")
                return;
            ++settled_in_wide_numbers;
            CHECK(verdict.ngspice_off.units > 0.9); // else the two others would be wrong together
        };
        const Verdict healthy = comparison.healthy();
        check("healthy", healthy);
        CHECK(healthy.ngspice.units <= 1.0);
        CHECK(healthy.ngspice_off.units <= 1.0);
        for (std::size_t i = 0; i < net.elements.size(); ++i)
            if (!is_between_conductors(net.element_names[i]))
                check(net.element_names[i] + " open", comparison.with_open(i));
        for (std::size_t k = 0; k < comparison.pairs().size(); ++k)
            check(comparison.pairs()[k].name + " shorted", comparison.with_short(k));
    }
    CHECK(circuits > 4 * (100 + 60)); // a loop over little would prove little
    CHECK(settled_in_wide_numbers < circuits / 20);
    WARN(circuits << " circuits, worst node " << worst_of_all << " of the tolerance; in "
                  << settled_in_wide_numbers << " ngspice's own rounding is more than that");
}

} // namespace

TEST_CASE("every open conductor and every short of neighbours agrees with ngspice at 60 Hz") {
    check_every_fault(true);
}

TEST_CASE("every open conductor and every short of neighbours agrees with ngspice at DC") {
    check_every_fault(false);
}
