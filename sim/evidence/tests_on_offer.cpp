// SPDX-License-Identifier: MIT
#include "evidence/tests_on_offer.hpp"

#include "bench/access.hpp"
#include "bench/action.hpp"
#include "bench/hand_words.hpp"
#include "units/constants.hpp"

#include <algorithm>

namespace lightoff::evidence {
namespace {

using bench::Verb;
using Where = furnace::Place::Where;

constexpr double kStart_s = 90.0;
constexpr double kWarm_s = 480.0;
constexpr double kEnding_s = 240.0;
constexpr double kSettle_s = 3.0; ///< till a reading counts
constexpr double kAnalyserSettles_s = 40.0;
constexpr double kDetectorSettles_s = 10.0;
constexpr double kLookUp_s =
    20.0; ///< a terminal that is none of the furnace's named readings (teaching value)

double seconds(std::uint64_t ticks) {
    return static_cast<double>(ticks) * units::seconds_per_tick;
}
double takes_s(Verb verb) {
    return seconds(static_cast<std::uint64_t>(bench::spec_of(verb).ticks));
}

std::string words(When when) {
    switch (when) {
    case When::as_it_stands:
        return "as it stands";
    case When::in_a_start:
        return "in a start";
    case When::when_warm:
        return "warm";
    case When::ending:
        return "to the end of the call";
    }
    return {};
}

class List {
public:
    explicit List(const bench::Site& site) : site_(site), model_(site.model) {}

    std::vector<Test> make() {
        add(TestKind::watch, When::in_a_start, 0, 0, "watch the sequence", kWatched);
        add(TestKind::watch, When::when_warm, 0, 0, "watch the sequence", kWatched);
        add(TestKind::watch, When::ending, 0, 0, "watch the sequence", kWatchedEnding);
        add_electrical();
        add_spots();
        add_elements();
        add_apart();
        add_looks();
        return std::move(tests_);
    }

private:
    static constexpr std::size_t kWatched = 7;
    static constexpr std::size_t kWatchedEnding = 3;

    void add(TestKind kind, When when, int a, int b, const std::string& what, std::size_t values = 1,
             double look_up_s = 0.0) {
        tests_.push_back({kind, when, a, b, next_, values, look_up_s, what + ", " + words(when), -1});
        next_ += values;
    }
    void add_volts(int a, int b, const std::string& what, double look_up_s = 0.0) {
        for (const When when : {When::as_it_stands, When::in_a_start})
            add(TestKind::volts, when, a, b, what, 1, look_up_s);
    }

    void add_electrical() {
        for (const furnace::Reading& r : model_.readings) {
            if (r.kind == furnace::Reading::Kind::volts)
                add_volts(r.a, r.b, "volts, " + r.name);
            if (r.kind == furnace::Reading::Kind::amps)
                for (const When when : {When::in_a_start, When::when_warm})
                    add(TestKind::amps, when, r.a, 0, "clamp, " + r.name);
        }
        for (const furnace::Terminal& t : model_.wiring.terminals)
            if (bench::is_test_point(model_, t.pin) && t.pin != model_.wiring.common)
                add_volts(t.pin, model_.wiring.common, "volts, " + t.name + " to common", kLookUp_s);
        if (model_.wiring.flame_sense >= 0)
            add(TestKind::microamps, When::in_a_start, 0, 0, "microamps in series with the flame rod");
    }

    void add_spots() {
        for (const instruments::SpotRow& row : instruments::spots()) {
            if ((row.takes & instruments::kTakesSniffing) != 0)
                for (const When when : {When::as_it_stands, When::in_a_start, When::ending})
                    add(TestKind::sniff, when, static_cast<int>(row.spot), 0,
                        "gas detector, " + std::string(row.title));
            if ((row.takes & instruments::kTakesPressure) == 0 || row.spot == instruments::Spot::room)
                continue;
            const std::string what = "manometer, " + std::string(row.title);
            for (const When when : {When::as_it_stands, When::in_a_start, When::when_warm})
                add(TestKind::pressure, when, static_cast<int>(row.spot), 0, what);
        }
        add(TestKind::rise, When::when_warm, static_cast<int>(instruments::Spot::supply_duct), 0,
            "temperature rise");
        add(TestKind::flue, When::when_warm, static_cast<int>(instruments::Spot::vent_connector), 0,
            "flue gas", 2);
    }

    void add_elements() {
        const electrical::Netlist& net = model_.wiring.netlist;
        for (std::size_t i = 0; i < net.elements.size(); ++i) {
            const electrical::Element& e = net.elements[i];
            const bool by_itself = e.switch_bit < 0 && e.source < 0 && e.ohm + e.farad > 0.0;
            const bool igniter = e.kind == electrical::ElementKind::igniter;
            if (!(by_itself || igniter) || !bench::is_test_point(model_, e.a) ||
                !bench::is_test_point(model_, e.b))
                continue;
            const auto element = static_cast<int>(i);
            if (e.farad > 0.0)
                add(TestKind::farads, When::as_it_stands, element, 0, "capacitance, " + net.element_names[i]);
            else
                add(TestKind::ohms, When::as_it_stands, element, 0, "ohms, " + net.element_names[i]);
        }
    }

    /// Wherever something could touch that should not: copper on the cabinet, two wires of a cable.
    void add_apart() {
        for (const faults::NodePair& pair : site_.catalogue.bridges)
            for (std::size_t i = 0; i < model_.wiring.terminals.size(); ++i) {
                const furnace::Terminal& t = model_.wiring.terminals[i];
                const bool is_end = t.lug == pair.a || t.lug == pair.b || t.pin == pair.a || t.pin == pair.b;
                if (!is_end || !bench::is_test_point(model_, pair.a) || !bench::is_test_point(model_, pair.b))
                    continue;
                add(TestKind::apart, When::as_it_stands, pair.a, pair.b,
                    "ohms, " + bench::point_name(model_, pair.a) + " to " +
                        bench::point_name(model_, pair.b) + ", " + t.name + " lifted");
                tests_.back().terminal = static_cast<int>(i);
                break;
            }
    }

    void add_looks() {
        for (std::size_t i = 0; i < site_.catalogue.parts.size(); ++i) {
            const faults::Part& part = site_.catalogue.parts[i];
            std::size_t values = part.look.sights.size();
            for (const faults::Fault& f : site_.catalogue.faults)
                if (f.part == static_cast<int>(i) && !f.controls.empty())
                    values = part.look.sights.size() + 1;
            if (values > 0)
                add(TestKind::look, When::as_it_stands, static_cast<int>(i), 0,
                    "look at the " + bench::in_sentence(part), values);
        }
    }

    const bench::Site& site_;
    const furnace::Model& model_;
    std::vector<Test> tests_;
    std::size_t next_ = 0;
};

/// What has to be open before a test.
struct Open {
    bool burner = false;
    bool blower = false;
    double take_off_s = 0.0;
};

void reach(Where where, Open& open) {
    open.burner = open.burner || where == Where::burner_compartment;
    open.blower = open.blower || where == Where::blower_compartment;
}

void reach_node(const furnace::Model& model, int node, Open& open) {
    const std::string name = bench::point_name(model, node);
    reach(bench::where_is(model, name.substr(0, name.find('.'))), open);
}

void reach_part(const bench::Site& site, int index, Open& open) {
    const faults::Part& part = site.catalogue.parts[static_cast<std::size_t>(index)];
    reach(part.where, open);
    open.burner = open.burner || part.look.access.burner_door_off;
    open.blower = open.blower || part.look.access.blower_door_off;
    for (const int other : part.look.access.off) {
        const faults::Service* off = site.catalogue.find_service({other, faults::ServiceKind::take_off});
        open.take_off_s += off == nullptr ? 0.0 : seconds(off->ticks);
        reach(site.catalogue.parts[static_cast<std::size_t>(other)].where, open);
    }
}

Open needs_open(const bench::Site& site, const Test& test) {
    Open open;
    switch (test.kind) {
    case TestKind::watch:
        break;
    case TestKind::volts:
    case TestKind::apart:
        reach_node(site.model, test.a, open);
        reach_node(site.model, test.b, open);
        break;
    case TestKind::amps:
    case TestKind::ohms:
    case TestKind::farads:
        reach_node(site.model, site.model.wiring.netlist.elements[static_cast<std::size_t>(test.a)].a, open);
        break;
    case TestKind::microamps:
        open.burner = true;
        break;
    case TestKind::pressure:
    case TestKind::rise:
    case TestKind::flue:
    case TestKind::sniff:
        reach(instruments::spot_row(static_cast<instruments::Spot>(test.a)).where, open);
        break;
    case TestKind::look:
        reach_part(site, test.a, open);
        break;
    }
    return open;
}

double put_on_s(const bench::Site& site, const Test& test) {
    switch (test.kind) {
    case TestKind::watch:
        return 0.0;
    case TestKind::volts:
        return takes_s(Verb::leads) + kSettle_s;
    case TestKind::amps:
        return takes_s(Verb::clamp) + kSettle_s;
    case TestKind::microamps:
        return takes_s(Verb::lift) + takes_s(Verb::meter) + takes_s(Verb::leads) + takes_s(Verb::seat);
    case TestKind::pressure:
        return takes_s(Verb::manometer_a) + kSettle_s;
    case TestKind::rise:
        return takes_s(Verb::probe_1) + takes_s(Verb::probe_2);
    case TestKind::flue:
        return takes_s(Verb::analyser) + kAnalyserSettles_s;
    case TestKind::sniff:
        return takes_s(Verb::sniff) + kDetectorSettles_s;
    case TestKind::ohms:
    case TestKind::apart:
    case TestKind::farads:
        return takes_s(Verb::lift) + takes_s(Verb::meter) + takes_s(Verb::leads) + kSettle_s +
               takes_s(Verb::seat);
    case TestKind::look:
        return seconds(site.catalogue.parts[static_cast<std::size_t>(test.a)].look.ticks);
    }
    return 0.0;
}

bool wants_power(const Test& test) {
    return test.kind != TestKind::ohms && test.kind != TestKind::apart && test.kind != TestKind::farads &&
           test.kind != TestKind::look && test.kind != TestKind::sniff;
}

double run_s(When when) {
    return when == When::in_a_start ? kStart_s : when == When::when_warm ? kWarm_s : kWarm_s + kEnding_s;
}

} // namespace

std::vector<Test> tests_on_offer(const bench::Site& site) {
    return List(site).make();
}

double minutes_of(const bench::Site& site, const Test& test, const Stance& stance) {
    const Open open = needs_open(site, test);
    const Stance after = stance_after(site, test, stance);
    double s = open.take_off_s + test.look_up_s + put_on_s(site, test);
    s += stance.burner_door_on != after.burner_door_on ? takes_s(Verb::burner_door) : 0.0;
    s += stance.blower_door_on != after.blower_door_on ? takes_s(Verb::blower_door) : 0.0;
    s += !after.blower_door_on && wants_power(test) && (stance.blower_door_on || !stance.door_switch_in)
             ? takes_s(Verb::door_switch)
             : 0.0;
    s += stance.power_on != after.power_on ? takes_s(Verb::disconnect) : 0.0;
    if (test.when != When::as_it_stands)
        s += 2.0 * takes_s(Verb::disconnect) + run_s(test.when);
    return s / 60.0;
}

Stance stance_after(const bench::Site& site, const Test& test, Stance stance) {
    const Open open = needs_open(site, test);
    stance.burner_door_on = stance.burner_door_on && !open.burner;
    stance.blower_door_on = stance.blower_door_on && !open.blower;
    const bool as_it_is = test.kind == TestKind::look || test.kind == TestKind::sniff;
    stance.power_on = as_it_is ? stance.power_on : wants_power(test);
    stance.door_switch_in = stance.blower_door_on || wants_power(test);
    return stance;
}

} // namespace lightoff::evidence
