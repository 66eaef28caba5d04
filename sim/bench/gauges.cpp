// SPDX-License-Identifier: MIT
#include "bench/gauges.hpp"

#include "bench/access.hpp"
#include "bench/milestones.hpp"
#include "bench/readouts.hpp"
#include "furnace/network_now.hpp"
#include "instruments/display.hpp"
#include "instruments/moment.hpp"
#include "instruments/spots.hpp"
#include "instruments/thermometer.hpp"
#include "units/convert.hpp"

#include <algorithm>
#include <array>
#include <stdexcept>
#include <string_view>

namespace lightoff::bench {
namespace {

using instruments::Quantity;
using instruments::Spot;

// ---- things that stand this way or that way ----

struct StateRow {
    std::string_view name;
    std::string_view off, on;
    bool (*value)(const furnace::Model&, const World&);
};

constexpr std::array kStates{
    StateRow{"thermostat R-W", "open", "closed",
             [](const furnace::Model&, const World& w) { return w.state.thermostat_heat_closed != 0; }},
    StateRow{"door switch", "open", "closed",
             [](const furnace::Model&, const World& w) {
                 return w.inputs.blower_door_on != 0 || w.inputs.door_switch_held != 0;
             }},
    StateRow{"rollout switch", "open", "closed",
             [](const furnace::Model&, const World& w) { return w.state.signals.heat.rollout_closed != 0; }},
    StateRow{"limit", "open", "closed",
             [](const furnace::Model&, const World& w) { return w.state.signals.heat.limit_closed != 0; }},
    StateRow{"inducer", "still", "turns",
             [](const furnace::Model&, const World& w) { return w.state.draft.inducer.speed_rad_s > 1.0; }},
    StateRow{"pressure switch", "open", "closed",
             [](const furnace::Model&, const World& w) { return w.state.signals.draft.switch_closed != 0; }},
    StateRow{"igniter", "too cold to light gas", "hot enough to light gas",
             [](const furnace::Model&, const World& w) { return igniter_lights_gas(w); }},
    StateRow{"gas valve's armature", "released", "pulled in",
             [](const furnace::Model& m, const World& w) {
                 return m.wiring.gas_valve >= 0 && furnace::armature_in(m, w.state, m.wiring.gas_valve);
             }},
    StateRow{"blower", "still", "turns",
             [](const furnace::Model&, const World& w) { return w.state.air.blower.speed_rad_s > 1.0; }},
    StateRow{"blower motor's overload", "open", "closed",
             [](const furnace::Model&, const World& w) {
                 return w.state.signals.heat.blower_overload_closed != 0;
             }},
    StateRow{"inducer motor's overload", "open", "closed", [](const furnace::Model&, const World& w) {
                 return w.state.signals.heat.inducer_overload_closed != 0;
             }}};

// Rows behind those of the table.
constexpr int kBurners = static_cast<int>(kStates.size());
constexpr int kLamp = kBurners + 1;
constexpr int kFirstRelay = kLamp + 1;

std::vector<std::string> burner_words(int burners) {
    std::vector<std::string> words{"none lit"};
    for (int lit = 1; lit <= burners; ++lit)
        words.push_back(std::to_string(lit) + " of " + std::to_string(burners) + " lit");
    return words;
}

/// Dark, each pattern, and a counted one with each of its counts.
std::vector<std::string> lamp_words(const control::Board& board) {
    std::vector<std::string> words{"dark"};
    for (std::size_t p = 0; p < board.patterns.size(); ++p) {
        words.push_back(board.pattern_names[p]);
        for (std::size_t n = 1; board.patterns[p].counted && n <= board.steps.size(); ++n)
            words.push_back(board.pattern_names[p] + " " + std::to_string(n));
    }
    return words;
}

int lamp_word(const control::Board& board, const control::BoardState& state) {
    const control::LampState& lamp = state.lamp;
    if (state.powered == 0 || lamp.pattern >= board.patterns.size())
        return 0;
    std::size_t word = 1;
    for (std::size_t p = 0; p < lamp.pattern; ++p)
        word += 1 + (board.patterns[p].counted ? board.steps.size() : 0);
    if (board.patterns[lamp.pattern].counted)
        word += std::min<std::size_t>(lamp.count, board.steps.size());
    return static_cast<int>(word);
}

double state_value(const furnace::Model& model, const World& world, int row) {
    if (row < kBurners)
        return kStates[static_cast<std::size_t>(row)].value(model, world) ? 1.0 : 0.0;
    if (row == kBurners)
        return lit_burners(model, world);
    if (row == kLamp)
        return lamp_word(model.board, world.state.board);
    return furnace::armature_in(model, world.state, row - kFirstRelay) ? 1.0 : 0.0;
}

/// "board.coil_inducer" as people say it: "board coil inducer".
std::string spoken(std::string name) {
    std::replace_if(
        name.begin(), name.end(), [](char c) { return c == '_' || c == '.'; }, ' ');
    return name;
}

// ---- readings that the trade has a name for ----

struct Taken {
    std::string_view readout;
    std::string_view where;
    Quantity quantity;
};

constexpr std::array kTaken{
    Taken{"suction at the port", "tee in the hose, inducer side", Quantity::pressure},
    Taken{"suction at the pressure switch", "tee in the hose, pressure switch side", Quantity::pressure},
    Taken{"vent connector pressure", "test hole in the vent connector", Quantity::pressure},
    Taken{"inducer speed", "shaft of the inducer motor", Quantity::speed},
    Taken{"gas inlet pressure", "inlet pressure tap of the gas valve", Quantity::pressure},
    Taken{"manifold pressure", "manifold pressure tap of the gas valve", Quantity::pressure},
    Taken{"dial time", "test dial of the gas meter, with a stopwatch", Quantity::stopwatch},
    Taken{"oxygen", "test hole in the vent connector", Quantity::oxygen},
    Taken{"carbon dioxide", "test hole in the vent connector", Quantity::carbon_dioxide},
    Taken{"carbon monoxide air-free", "test hole in the vent connector", Quantity::co_air_free},
    Taken{"excess air", "test hole in the vent connector", Quantity::excess_air},
    Taken{"flue gas over room", "test hole in the vent connector", Quantity::net_temperature},
    Taken{"steady efficiency", "test hole in the vent connector", Quantity::efficiency},
    Taken{"flame current", "in series with the lead of the rod", Quantity::dc_microamps},
    Taken{"return static", "static port between filter and cabinet", Quantity::pressure},
    Taken{"supply static", "static port before the coil", Quantity::pressure},
    Taken{"external static", "from the return port to the supply port", Quantity::pressure},
    Taken{"return air", "return duct at the furnace", Quantity::temperature},
    Taken{"supply air", "supply duct out of sight of the exchanger", Quantity::temperature},
    Taken{"temperature rise", "supply duct less return duct", Quantity::temperature_difference},
    Taken{"blower speed", "shaft of the blower motor", Quantity::speed},
    Taken{"outdoors", "outdoors in the shade", Quantity::temperature},
};

/// Probes of the thermometer besides those of the readouts.
constexpr std::array kProbes{Spot::supply_plenum,       Spot::burner_compartment, Spot::blower_motor_shell,
                             Spot::inducer_motor_shell, Spot::transformer_case,   Spot::room};

std::string between(const furnace::Model& model, int a, int b) {
    return "from " + point_name(model, a) + " to " + point_name(model, b);
}

/// Volts between two nodes; the workspace must hold the solution.
double volts(const electrical::AcVoltages& all, int a, int b) {
    return units::abs(all[static_cast<std::size_t>(a)] - all[static_cast<std::size_t>(b)]);
}

// ---- units of a gauge and of the instrument that reads it ----

struct Si {
    double factor = 1.0;
    double offset = 0.0;
};

Si si_of(const std::string& unit) {
    if (unit == "F")
        return {1.0 / 1.8, units::fahrenheit_to_k(0.0)};
    if (unit == "F difference")
        return {1.0 / 1.8, 0.0};
    for (int u = 0; u <= static_cast<int>(instruments::Unit::second); ++u) {
        const instruments::UnitRow& row = instruments::unit_row(static_cast<instruments::Unit>(u));
        if (row.text == unit)
            return {row.factor, row.offset};
    }
    return {};
}

} // namespace

Gauges::Gauges(const furnace::Model& model) : model_(&model) {
    add_states();
    add_readouts();
    add_board_senses();
    add_temperatures();
}

void Gauges::add_states() {
    const auto add = [this](std::string name, std::vector<std::string> words, int row) {
        Gauge gauge;
        gauge.name = std::move(name);
        gauge.group = "contacts and moving parts";
        gauge.words = std::move(words);
        gauge.a = row;
        list_.push_back(std::move(gauge));
    };
    for (std::size_t i = 0; i < kStates.size(); ++i)
        add(std::string(kStates[i].name), {std::string(kStates[i].off), std::string(kStates[i].on)},
            static_cast<int>(i));
    add("burners", burner_words(static_cast<int>(model_->gas.burner_count)), kBurners);
    add("progress lamp", lamp_words(model_->board), kLamp);
    for (std::size_t r = 0; r < model_->wiring.relays.size(); ++r)
        if (static_cast<int>(r) != model_->wiring.gas_valve)
            add(spoken(model_->wiring.relays[r].name), {"released", "pulled in"},
                kFirstRelay + static_cast<int>(r));
}

void Gauges::add_readouts() {
    // Names, units and order are those of the readouts, which only a World can tell.
    furnace::Workspace workspace(*model_);
    World world;
    world.state = furnace::rest_state(*model_, world.inputs, units::fahrenheit_to_k(66.0));
    const std::vector<Readout> readouts = bench::readouts(*model_, world, workspace);
    for (std::size_t i = 0; i < readouts.size(); ++i) {
        Gauge gauge;
        gauge.name = readouts[i].name;
        gauge.group = readouts[i].group;
        gauge.unit = readouts[i].unit;
        gauge.kind = Gauge::Kind::readout;
        gauge.a = static_cast<int>(i);
        if (i < model_->readings.size()) { // the electrical ones, in the order of the equipment file
            const furnace::Reading& reading = model_->readings[i];
            const bool amps = reading.kind == furnace::Reading::Kind::amps;
            gauge.quantity = amps ? Quantity::clamp_amps : Quantity::ac_volts;
            gauge.where = amps ? "clamp round " +
                                     model_->wiring.netlist.element_names[static_cast<std::size_t>(reading.a)]
                               : between(*model_, reading.a, reading.b);
        }
        for (const Taken& taken : kTaken)
            if (taken.readout == gauge.name) {
                gauge.where = taken.where;
                gauge.quantity = taken.quantity;
            }
        list_.push_back(std::move(gauge));
    }
}

void Gauges::add_board_senses() {
    const control::Board& board = model_->board;
    const int common = model_->find_test_point("board.C");
    for (std::size_t i = 0; i < board.input_terminals.size() && common >= 0; ++i) {
        const int node = model_->find_test_point(board.input_terminals[i]);
        const bool known = std::any_of(list_.begin(), list_.end(), [&](const Gauge& gauge) {
            return gauge.where == between(*model_, node, common);
        });
        if (node < 0 || known || board.input_is_flame[i] != 0)
            continue;
        Gauge gauge;
        gauge.name = spoken(board.input_names[i]) + ", as the board senses it";
        gauge.where = between(*model_, node, common);
        gauge.group = "electrical";
        gauge.unit = "V";
        gauge.quantity = Quantity::ac_volts;
        gauge.kind = Gauge::Kind::volts;
        gauge.a = node;
        gauge.b = common;
        list_.push_back(std::move(gauge));
    }
}

void Gauges::add_temperatures() {
    for (const Spot spot : kProbes) {
        Gauge gauge;
        gauge.name = spot == Spot::room ? "air round the furnace" : instruments::spot_row(spot).title;
        gauge.where = "probe of the thermometer";
        gauge.group = "air and heat";
        gauge.unit = "F";
        gauge.quantity = Quantity::temperature;
        gauge.kind = Gauge::Kind::temperature;
        gauge.a = static_cast<int>(spot);
        list_.push_back(std::move(gauge));
    }
}

std::size_t Gauges::find(const std::string& name) const {
    for (std::size_t i = 0; i < list_.size(); ++i)
        if (list_[i].name == name)
            return i;
    throw std::invalid_argument("there is no gauge \"" + name + "\"");
}

void Gauges::read(const World& world, furnace::Workspace& workspace, std::vector<double>& out) const {
    const std::vector<Readout> readouts = bench::readouts(*model_, world, workspace);
    // The readouts have solved the network; this is the same solution again.
    const electrical::AcSolution ac =
        furnace::solve_ac(*model_, world.state, world.condition, world.inputs, workspace);
    electrical::AcVoltages all{};
    workspace.network.node_voltages(ac, all);
    const instruments::Moment now(*model_, world.state, world.condition, world.inputs, world.seed, world.tick,
                                  workspace);
    out.clear();
    for (const Gauge& gauge : list_)
        switch (gauge.kind) {
        case Gauge::Kind::state:
            out.push_back(state_value(*model_, world, gauge.a));
            break;
        case Gauge::Kind::readout:
            out.push_back(readouts[static_cast<std::size_t>(gauge.a)].value);
            break;
        case Gauge::Kind::volts:
            out.push_back(volts(all, gauge.a, gauge.b));
            break;
        case Gauge::Kind::temperature:
            out.push_back(
                units::k_to_fahrenheit(instruments::temperature_k(now, static_cast<Spot>(gauge.a))));
            break;
        }
}

double accuracy(const Gauge& gauge, double value) {
    const double size = value < 0.0 ? -value : value;
    if (gauge.quantity == Quantity::none)
        return kWorkedOut * size;
    const Si si = si_of(gauge.unit);
    instruments::Display display;
    instruments::show(display, gauge.quantity, si.offset + si.factor * value);
    const instruments::Value shown = instruments::value_of(display);
    return shown.known ? shown.half_width / si.factor : kWorkedOut * size;
}

bool differ(const Gauge& gauge, double one, double other) {
    if (!gauge.words.empty())
        return one != other;
    const double difference = one < other ? other - one : one - other;
    // Of two values one of which is nothing, the other says how well it can be read.
    return difference > std::max(accuracy(gauge, one), accuracy(gauge, other));
}

int decimals_of(const std::string& unit) {
    if (unit == "in. w.c.")
        return 3;
    if (unit == "A")
        return 2;
    if (unit == "Btu/h" || unit == "rpm" || unit == "cfm" || unit == "ppm" || unit == "W")
        return 0;
    return 1;
}

} // namespace lightoff::bench
