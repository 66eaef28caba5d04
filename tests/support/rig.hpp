// SPDX-License-Identifier: MIT
#pragma once
#include "bench/bench.hpp"
#include "bench/milestones.hpp"
#include "bench/readouts.hpp"
#include "files/equipment.hpp"
#include "files/fault_catalogue.hpp"
#include "files/hazard_table.hpp"
#include "files/reader.hpp"
#include "files/scenario.hpp"
#include "lesson/scenario.hpp"

#include <algorithm>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// The reference furnace on its golden call, to be run, broken and read.
namespace lightoff::test {

inline const std::string kReferenceEquipment =
    std::string(LIGHTOFF_SOURCE_DIR) + "/scenarios/equipment/reference-80k-induced-draft.json";
inline const std::string kCallForHeat =
    std::string(LIGHTOFF_SOURCE_DIR) + "/scenarios/calls/call-for-heat.json";

/// A furnace with what can be done to it.
inline bench::Site site_with(furnace::Model model) {
    bench::Site site;
    site.model = std::move(model);
    site.catalogue = files::load_catalogue(site.model);
    site.hazards = files::read_hazards(files::read_hazard_file());
    return site;
}

/// The reference furnace; read once for each program.
inline const bench::Site& reference_site() {
    static const bench::Site site =
        site_with(files::read_equipment(files::read_document(kReferenceEquipment)));
    return site;
}
inline const furnace::Model& reference_model() {
    return reference_site().model;
}

inline const lesson::Scenario& call_for_heat() {
    static const lesson::Scenario scenario = files::read_scenario(files::read_document(kCallForHeat));
    return scenario;
}

/// A furnace with its World, from tick 0 of the scenario (the call comes at 5 s). Seed 0: nominal parts.
class Rig {
public:
    explicit Rig(std::uint64_t seed = 0, const lesson::Scenario& scenario = call_for_heat(),
                 const bench::Site& its_site = reference_site())
        : site(its_site), model(site.model), workspace(model),
          world(lesson::begin_world(site, scenario, seed)),
          history_(site, lesson::history_of(site, scenario)), watch_(model) {
        watch_.look(world, milestones);
    }

    /// Sets one number of the Condition, "draft.path.vent_blockage", "wiring/igniter.element/factor".
    void set(const std::string& path, double value) {
        furnace::set_condition_field(world.condition, furnace::condition_field(model, path), value);
    }
    /// The same with part of the wiring taken out of circuit.
    void open(const std::string& element) {
        set("wiring/" + element + "/series_resistance", static_cast<double>(electrical::kOpenOhm));
    }
    /// A piece of wire between two places, "board.R" and "board.C".
    void bridge(const std::string& a, const std::string& b, double ohm, std::size_t slot = 0) {
        world.condition.wiring.bridges[slot] = {static_cast<std::int16_t>(node(a)),
                                                static_cast<std::int16_t>(node(b)), static_cast<float>(ohm)};
    }

    void run(double seconds) { run_ticks(static_cast<std::uint64_t>(seconds * ticks_per_second() + 0.5)); }

    /// Runs till `done(*this)`; the seconds since the start of the scenario, or none within `limit_s`.
    template <class Done>
    std::optional<double> run_until(double limit_s, Done done) {
        const auto ticks = static_cast<std::uint64_t>(limit_s * ticks_per_second() + 0.5);
        for (std::uint64_t i = 0; i < ticks; ++i) {
            if (done(*this))
                return now_s();
            run_ticks(1);
        }
        return done(*this) ? std::optional<double>(now_s()) : std::nullopt;
    }

    /// Does what an action says, "burner-door off", and waits till it is done. Refusals are failures.
    void act(const std::string& text) {
        while (world.hands.busy != 0) // the scenario's history may be at it
            run_ticks(1);
        const bench::Verdict verdict = bench::begin(site, world, bench::parse_action(site, text));
        if (!verdict.allowed)
            throw std::invalid_argument(text + " is refused: " + verdict.reason);
        while (world.hands.busy != 0)
            run_ticks(1);
    }

    [[nodiscard]] double now_s() const { return static_cast<double>(world.tick) / ticks_per_second(); }

    /// A readout by its name, trade units: "oxygen", "blower current".
    double read(const std::string& name) {
        return bench::readout(bench::readouts(model, world, workspace), name);
    }

    /// Volts between two places.
    double volts(const std::string& a, const std::string& b) {
        const electrical::AcVoltages all = node_voltages();
        return units::abs(all[node(a)] - all[node(b)]);
    }

    /// Amps through an element.
    double amps(const std::string& element) {
        const electrical::AcSolution ac =
            furnace::solve_ac(model, world.state, world.condition, world.inputs, workspace);
        electrical::AcVoltages all{};
        workspace.network.node_voltages(ac, all);
        const auto& names = model.wiring.netlist.element_names;
        const auto at = std::find(names.begin(), names.end(), element);
        if (at == names.end())
            throw std::invalid_argument("there is no element " + element);
        return units::abs(workspace.network.element_current(ac, all, static_cast<int>(at - names.begin())));
    }

    /// Name of the state that a machine of the board is in.
    [[nodiscard]] const std::string& board_state(const std::string& machine = "burner") const {
        const std::size_t m = model.board.machine(machine);
        return model.board.machines[m].state_names[world.state.board.state[m]];
    }
    [[nodiscard]] bool drives(const std::string& output) const {
        return (world.state.board.outputs >> model.board.output(output) & 1U) != 0;
    }
    [[nodiscard]] bool senses(const std::string& input) const {
        return (world.state.board.sensed >> model.board.input(input) & 1U) != 0;
    }
    [[nodiscard]] int counter(const std::string& name) const {
        return world.state.board.counter[model.board.counter(name)];
    }

    /// What the lamp shows: the pattern's name ("dark" without), and how many flashes it counts.
    [[nodiscard]] std::string lamp() const {
        const std::uint8_t pattern = world.state.board.lamp.pattern;
        return pattern == control::kNoPattern ? "dark" : model.board.pattern_names[pattern];
    }
    [[nodiscard]] int lamp_count() const { return world.state.board.lamp.count; }
    [[nodiscard]] bool lamp_on() const { return world.state.board.lamp.on != 0; }

    /// Seconds of the scenario at which a milestone was seen for the `nth` time after `from_s`.
    [[nodiscard]] std::optional<double> time_of(const std::string& milestone, double from_s = 0.0,
                                                int nth = 1) const {
        for (const bench::Milestone& m : milestones) {
            const double at_s = static_cast<double>(m.tick) / ticks_per_second();
            if (at_s >= from_s && m.text == milestone && --nth == 0)
                return at_s;
        }
        return std::nullopt;
    }
    [[nodiscard]] int count_of(const std::string& milestone) const {
        return static_cast<int>(std::count_if(milestones.begin(), milestones.end(),
                                              [&](const auto& m) { return m.text == milestone; }));
    }

    const bench::Site& site;
    const furnace::Model& model;
    furnace::Workspace workspace;
    bench::World world;
    std::vector<bench::Milestone> milestones;

private:
    [[nodiscard]] double ticks_per_second() const { return 1.0 / model.board.tick_s; }

    void run_ticks(std::uint64_t ticks) {
        for (std::uint64_t i = 0; i < ticks; ++i) {
            history_.run(world, workspace, world.tick + 1);
            watch_.look(world, milestones);
        }
    }
    [[nodiscard]] std::size_t node(const std::string& place) const {
        const int found = model.find_test_point(place);
        if (found < 0)
            throw std::invalid_argument("there is no place " + place);
        return static_cast<std::size_t>(found);
    }
    electrical::AcVoltages node_voltages() {
        const electrical::AcSolution ac =
            furnace::solve_ac(model, world.state, world.condition, world.inputs, workspace);
        electrical::AcVoltages all{};
        workspace.network.node_voltages(ac, all);
        return all;
    }

    bench::History history_;
    bench::MilestoneWatch watch_;
};

} // namespace lightoff::test
