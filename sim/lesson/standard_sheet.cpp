// SPDX-License-Identifier: MIT
#include "lesson/standard_sheet.hpp"

#include "bench/readouts.hpp"
#include "units/convert.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace lightoff::lesson {
namespace {

constexpr double kWind_pa = 20.0;
constexpr double kCallFrom_s = 5.0;
constexpr double kCallTo_s = 1200.0;
constexpr double kProof_s = 1500.0; ///< from here on the blower's lead is off and heat is called for again
constexpr double kSheetEnd_s = 1900.0;
constexpr double kWarm_k = 299.0; ///< set point that the house does not reach
constexpr double kCold_k = 283.0;

struct Moment {
    std::string_view name;
    double at_s;
};
constexpr std::array<Moment, 8> kMoments{{{"standby", 4.0},
                                          {"purge", 24.0},
                                          {"warm-up", 43.0},
                                          {"trial", 48.0},
                                          {"warm", 300.0},
                                          {"hot", 1190.0},
                                          {"after", 1320.0},
                                          {"limit proof", 1850.0}}};

/// Readouts that no instrument shows: worked out from others, or inside a part.
constexpr std::array<std::string_view, 9> kNotOnAMeter{
    "airflow",           "delivered heat",  "jacket loss",         "limit element", "excess air",
    "steady efficiency", "igniter surface", "suction at the port", "input rate"};

struct Accuracy {
    std::string_view unit;
    double share;
    double steps;
};
constexpr std::array<Accuracy, 11> kAccuracies{{{"V", 0.01, 0.3},
                                                {"A", 0.02, 0.05},
                                                {"uA", 0.02, 0.1},
                                                {"W", 0.02, 5.0},
                                                {"in. w.c.", 0.01, 0.01},
                                                {"rpm", 0.002, 5.0},
                                                {"F", 0.0, 2.0},
                                                {"F difference", 0.0, 2.0},
                                                {"%", 0.0, 0.3},
                                                {"ppm", 0.05, 10.0},
                                                {"s", 0.01, 1.0}}};

double accuracy_of(std::string_view unit, double value) {
    for (const Accuracy& a : kAccuracies)
        if (a.unit == unit)
            return a.steps + a.share * std::abs(value);
    return 0.02 * std::abs(value) + 1.0;
}

class Sheet {
public:
    Sheet(const bench::Site& site, bench::World& world, furnace::Workspace& workspace)
        : site_(site), world_(world), workspace_(workspace) {}

    std::vector<SheetReading> write() {
        const double tick_s = site_.model.board.tick_s;
        const auto end = static_cast<std::uint64_t>(kSheetEnd_s / tick_s);
        std::size_t next = 0;
        add_ohms();
        while (world_.tick < end) {
            const double now_s = static_cast<double>(world_.tick) * tick_s;
            if (now_s >= kProof_s)
                unplug_blower();
            const bool call = (now_s >= kCallFrom_s && now_s < kCallTo_s) || now_s >= kProof_s;
            world_.inputs.set_point_k = call ? kWarm_k : kCold_k;
            if (next < kMoments.size() && now_s >= kMoments[next].at_s)
                add_moment(kMoments[next++].name);
            bench::advance(site_, world_, workspace_, 1);
            stamp(now_s);
        }
        constexpr std::array<const char*, 7> kNames{
            "pressure switch closes", "first burner lights", "all burners lit",        "blower turns",
            "blower turned last",     "inducer turned last", "limit proof: last flame"};
        for (std::size_t i = 0; i < stamps_.size(); ++i)
            add(std::string("stopwatch: ") + kNames[i], "s", stamps_[i]);
        return std::move(readings_);
    }

private:
    void add(std::string name, std::string_view unit, double value) {
        readings_.push_back({std::move(name), value, accuracy_of(unit, value)});
    }

    /// Without air the limit must open within minutes.
    void unplug_blower() {
        const int joint = site_.model.wiring.joint_of_terminal("board.blower_neutral");
        if (joint >= 0)
            electrical::set_element(world_.inputs.parted, joint, true);
    }

    /// The first time of what begins, the last time of what ends.
    void stamp(double now_s) {
        const furnace::State& s = world_.state;
        const auto burners = static_cast<std::ptrdiff_t>(site_.model.gas.burner_count);
        const auto lit = std::count_if(s.combustion.flame.begin(), s.combustion.flame.begin() + burners,
                                       [](double f) { return f > 0.5; });
        const std::array<bool, 4> begun{s.signals.draft.switch_closed != 0, lit > 0, lit == burners,
                                        s.air.blower.speed_rad_s > 1.0};
        for (std::size_t i = 0; i < begun.size(); ++i)
            if (begun[i] && stamps_[i] == 0.0)
                stamps_[i] = now_s;
        if (begun[3])
            stamps_[4] = now_s;
        if (s.draft.inducer.speed_rad_s > 1.0)
            stamps_[5] = now_s;
        if (now_s >= kProof_s && lit > 0)
            stamps_[6] = now_s;
    }

    void add_moment(std::string_view moment) {
        const std::string before = std::string(moment) + ": ";
        for (const bench::Readout& r : bench::readouts(site_.model, world_, workspace_))
            if (std::find(kNotOnAMeter.begin(), kNotOnAMeter.end(), r.name) == kNotOnAMeter.end())
                add(before + r.name, r.unit, r.value);
        const draft::Outputs& d = world_.state.signals.draft;
        add(before + "hose tee, inducer side", "in. w.c.", units::pa_to_inwc(d.inducer_side_suction_pa));
        add(before + "hose tee, switch side", "in. w.c.", units::pa_to_inwc(d.switch_side_suction_pa));
        add(before + "combustible gas", "ppm", 1e6 * world_.state.gas.room.raw_gas_fraction);
        add(before + "ambient CO", "ppm", 1e6 * world_.state.gas.room.co_fraction);
        const control::LampState& lamp = world_.state.board.lamp;
        add(before + "lamp", "", 100.0 * lamp.pattern + 10.0 * lamp.count);
        add_volts(before);
    }

    void add_volts(const std::string& before) {
        const furnace::Model& model = site_.model;
        const electrical::AcSolution ac =
            furnace::solve_ac(model, world_.state, world_.condition, world_.inputs, workspace_);
        electrical::AcVoltages volts{};
        workspace_.network.node_voltages(ac, volts);
        const auto common = static_cast<std::size_t>(model.wiring.common);
        for (std::size_t node = 0; node < model.touchable.size(); ++node)
            if (model.touchable[node] != 0)
                add(before + model.test_point_name(static_cast<int>(node)) + " to C", "V",
                    units::abs(volts[node] - volts[common]));
    }

    /// Each element of the wiring by itself, power off and its ends lifted; a capacitor in uF. Contacts are
    /// as good as closed ones.
    void add_ohms() {
        constexpr double kMost_ohm = 40e6; // what an ohmmeter shows as OL
        const electrical::Netlist& net = site_.model.wiring.netlist;
        const electrical::Condition& condition = world_.condition.wiring;
        for (std::size_t i = 0; i < net.elements.size(); ++i) {
            const electrical::Element& e = net.elements[i];
            const auto factor = static_cast<double>(condition.factor[i]);
            const double series = std::min(kMost_ohm, static_cast<double>(condition.series_ohm[i]));
            const double ohm = std::min(kMost_ohm, e.ohm * factor + series);
            readings_.push_back({net.element_names[i] + ", ohms", ohm, 0.01 * ohm + 0.3});
            if (e.farad > 0.0) {
                const double micro_f = series < kMost_ohm ? 1e6 * e.farad * factor : 0.0;
                readings_.push_back({net.element_names[i] + ", uF", micro_f, 0.02 * micro_f + 0.1});
            }
        }
        const double igniter = std::min(kMost_ohm, igniter_ohm());
        readings_.push_back({"igniter cold, ohms", igniter, 0.01 * igniter + 0.3});
    }

    [[nodiscard]] double igniter_ohm() const {
        return site_.model.heat.igniter.cold_ohm * world_.condition.heat.igniter_resistance_factor;
    }

    const bench::Site& site_;
    bench::World& world_;
    furnace::Workspace& workspace_;
    std::array<double, 7> stamps_{};
    std::vector<SheetReading> readings_;
};

} // namespace

std::vector<SheetReading> standard_sheet(const bench::Site& site, const Scenario& scenario,
                                         const faults::Fault* fault, double severity,
                                         furnace::Workspace& workspace) {
    Scenario standard;
    standard.inputs = scenario.inputs;
    standard.inputs.wind_pa = std::max(kWind_pa, scenario.inputs.wind_pa);
    standard.inputs.thermostat_mode = control::ThermostatMode::heat;
    standard.house_k = scenario.house_k;
    if (fault != nullptr)
        standard.faults.push_back({fault->id, severity, faults::Trigger::from_start, 0});
    bench::World world = begin_world(site, standard, 0);
    return Sheet(site, world, workspace).write();
}

double distance(const std::vector<SheetReading>& a, const std::vector<SheetReading>& b) {
    double most = 0.0;
    for (std::size_t i = 0; i < a.size() && i < b.size(); ++i)
        most = std::max(most, std::abs(a[i].value - b[i].value) / std::max(a[i].accuracy, b[i].accuracy));
    return most;
}

} // namespace lightoff::lesson
