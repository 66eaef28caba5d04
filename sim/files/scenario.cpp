// SPDX-License-Identifier: MIT
#include "files/scenario.hpp"

#include "units/atmosphere.hpp"

#include <functional>

namespace lightoff::files {
namespace {

using lesson::Difficulty;
using lesson::Help;
using lesson::Kind;
using lesson::Scenario;

constexpr Range kDay{0.0, 86400.0, "s"};
constexpr Range kHouseTemperature{30.0, 110.0, "F"};

void read_surroundings(const Object& root, Scenario& s) {
    const Object house = root.object("house");
    s.house_k = house.number("inside_temperature", kHouseTemperature);
    s.inputs.basement_k = house.number("basement_temperature", kHouseTemperature);
    s.inputs.barometric_pa =
        units::pressure_at_altitude_pa(house.number("altitude", {-1000.0, 12000.0, "ft"}));
    s.inputs.basement_air_changes_per_s =
        house.number_or("basement_air_changes_per_hour", {0.0, 20.0}, 0.5) / 3600.0;

    const Object weather = root.object("weather");
    s.inputs.outdoor_k = weather.number("outdoor_temperature", {-60.0, 120.0, "F"});
    s.inputs.wind_pa = weather.number("wind_pressure", {0.0, 500.0, "Pa"});

    const Object supply = root.object("supply");
    s.inputs.line_voltage_v = supply.number("line", {0.0, 150.0, "V"});
    s.inputs.other_gas_m3_s = supply.number("other_appliances", {0.0, 1000.0, "cfh"});

    const Object thermostat = root.object("thermostat");
    s.inputs.thermostat_mode = thermostat.choice<control::ThermostatMode>(
        "mode", {{"heat", control::ThermostatMode::heat}, {"off", control::ThermostatMode::off}});
    s.inputs.thermostat_fan = thermostat.choice<control::FanSwitch>(
        "fan", {{"auto", control::FanSwitch::automatic}, {"on", control::FanSwitch::on}});
    s.inputs.set_point_k = thermostat.number("set_point", {40.0, 95.0, "F"});
}

void read_changes(const Object& root, Scenario& s) {
    for (const Object& o : root.objects("overrides", {0, 64}))
        s.overrides.push_back({o.text("condition"), o.number("value", {-1e15, 1e15}), 0});
    for (const Object& o : root.objects("onsets", {0, bench::kMaxOnsets}))
        s.onsets.push_back({o.text("condition"), o.number("value", {-1e15, 1e15}),
                            static_cast<std::uint64_t>(o.ticks("at", kDay))});
    for (const Object& h : root.objects("history", {0, 200}))
        s.history.push_back({static_cast<std::uint64_t>(h.ticks("at", kDay)), h.text("do")});
    s.arrive_after_ticks = static_cast<std::uint64_t>(root.ticks("arrive_after", kDay));
}

void read_faults(const Object& root, Scenario& s) {
    using faults::Trigger;
    if (!root.has("faults"))
        return;
    for (const Object& o : root.objects("faults", {0, 8})) {
        lesson::FaultUse use;
        use.id = o.text("fault", {1, 40});
        use.severity = o.number_or("severity", {0.0, 1.0}, 1.0);
        use.onset = o.choice_or<Trigger>("onset",
                                         {{"from-start", Trigger::from_start},
                                          {"at", Trigger::at_tick},
                                          {"when-hot", Trigger::when_hot},
                                          {"now-and-then", Trigger::now_and_then}},
                                         Trigger::from_start);
        if (use.onset == Trigger::at_tick)
            use.tick = static_cast<std::uint64_t>(o.ticks("at", kDay));
        s.faults.push_back(std::move(use));
    }
}

void read_lesson(const Object& root, Scenario& s) {
    s.help = root.choice<Help>(
        "help", {{"learning", Help::learning}, {"practice", Help::practice}, {"exam", Help::exam}});
    s.difficulty = root.choice_or(
        "difficulty",
        {{"easy", Difficulty::easy}, {"medium", Difficulty::medium}, {"hard", Difficulty::hard}},
        Difficulty::medium);
    s.twin = root.text_or("twin", "", {1, 64});
    const Object rules = root.object("school_rules");
    s.school_rules.jumpers_allowed = rules.flag("jumpers_allowed");
    s.school_rules.live_testing_allowed = rules.flag("live_testing_allowed");
    for (const Object& w : root.objects("rubric_weights", {0, 16}))
        s.rubric_weights[w.text("line")] = w.number("weight", {0.0, 100.0});
}

/// Runs `judge`; what it finds wrong becomes an Error at `key` of `object`.
void judged(const Object& object, std::string_view key, const std::function<void()>& judge) {
    try {
        judge();
    } catch (const std::invalid_argument& error) {
        throw object.error(key, error.what());
    }
}

} // namespace

Scenario read_scenario(const Document& document) {
    const Object root = document.root();
    Scenario s;
    root.choice<bool>("format", {{kScenarioFormat, true}});
    s.title = root.text("title", {1, 120});
    s.complaint = root.text("complaint");
    s.kind = root.choice<Kind>("kind", {{"no-heat", Kind::no_heat},
                                        {"poor-heat", Kind::poor_heat},
                                        {"noise", Kind::noise},
                                        {"smell-or-alarm", Kind::smell_or_alarm},
                                        {"callback", Kind::callback},
                                        {"nothing-wrong", Kind::nothing_wrong},
                                        {"tune-up", Kind::tune_up},
                                        {"explore", Kind::explore}});
    s.equipment = root.text("equipment", {1, 64});
    read_surroundings(root, s);
    read_changes(root, s);
    read_faults(root, s);
    read_lesson(root, s);
    for (const Object& o : root.optional_objects("traces", {0, 16}))
        s.traces.push_back({o.text("part", {1, 40}), o.text("words", {1, 120})});
    root.finish();
    return s;
}

std::vector<bench::Trace> read_traces(const Document& document, const Scenario& scenario,
                                      const faults::Catalogue& catalogue) {
    std::vector<bench::Trace> traces;
    const std::vector<Object> objects = document.root().optional_objects("traces", {0, 16});
    for (std::size_t i = 0; i < objects.size(); ++i) {
        const int part = catalogue.find_part(scenario.traces[i].part);
        if (part < 0)
            throw objects[i].error("part", "a part of the catalogue: `lightoff-cli actions` lists them");
        traces.push_back({part, scenario.traces[i].words});
    }
    return traces;
}

void check_scenario(const Document& document, const Scenario& scenario, const bench::Site& site) {
    const Object root = document.root();
    const auto check_path = [&](const Object& o) {
        judged(o, "condition", [&] { furnace::condition_field(site.model, o.text("condition")); });
    };
    for (const Object& o : root.objects("overrides", {0, 64}))
        check_path(o);
    for (const Object& o : root.objects("onsets", {0, bench::kMaxOnsets}))
        check_path(o);
    for (const Object& h : root.objects("history", {0, 200}))
        judged(h, "do", [&] { bench::parse_action(site, h.text("do")); });
    if (scenario.faults.empty())
        return;
    const std::vector<Object> faults = root.objects("faults", {0, 8});
    for (std::size_t i = 0; i < faults.size(); ++i) {
        Scenario alone = scenario;
        alone.faults = {scenario.faults[i]};
        judged(faults[i], "fault", [&] { lesson::begin_world(site, alone, 0); });
    }
    judged(root, "faults", [&] { lesson::begin_world(site, scenario, 0); });
}

} // namespace lightoff::files
