// SPDX-License-Identifier: MIT
#include "files/equipment_rooms.hpp"

#include "control/board.hpp"
#include "units/constants.hpp"

namespace lightoff::files {
namespace {

using control::BoardDescription;

/// The builder judges times against the tick; here they only have to be sane.
constexpr Range kTime{0.0, 86400.0, "s"};
constexpr Count kNames{0, 64};

double whole_ticks_s(const Object& o, std::string_view name, double otherwise_s) {
    return static_cast<double>(o.ticks_or(
               name, kTime, static_cast<std::int64_t>(otherwise_s * units::ticks_per_second + 0.5))) /
           units::ticks_per_second;
}

std::vector<std::string> texts_or_none(const Object& o, std::string_view name) {
    return o.has(name) ? o.texts(name, kNames) : std::vector<std::string>{};
}

std::optional<double> threshold(const Object& o, std::string_view name, std::string_view unit, double scale) {
    if (!o.has_number(name, unit))
        return std::nullopt;
    return scale * o.number(name, {0.0, 300.0, unit});
}

control::InputDescription read_input(const Object& o) {
    control::InputDescription in;
    in.name = o.text("name", {1, 64});
    in.terminal = o.text("terminal", {1, 64});
    in.on_above_v = threshold(o, "on_above", "V", 1.0);
    in.off_below_v = threshold(o, "off_below", "V", 1.0);
    in.on_above_ua = threshold(o, "on_above", "uA", 1e6);
    in.off_below_ua = threshold(o, "off_below", "uA", 1e6);
    in.on_after_s = whole_ticks_s(o, "on_after", in.on_after_s);
    in.off_after_s = whole_ticks_s(o, "off_after", in.off_after_s);
    return in;
}

control::ExitDescription read_exit(const Object& o) {
    control::ExitDescription e;
    for (auto& [name, value] : o.named_flags("inputs", 16))
        e.inputs[name] = value;
    for (auto& [name, states] : o.named_texts("in", 8, kNames))
        e.in[name] = states;
    for (auto& [name, states] : o.named_texts("not_in", 8, kNames))
        e.not_in[name] = states;
    for (auto& [name, count] : o.named_integers("at_least", 8, 1, 255))
        e.at_least[name] = static_cast<int>(count);
    e.after_s = whole_ticks_s(o, "after", 0.0);
    e.after_setting = o.text_or("after_setting", "");
    e.go_to = o.text("go_to", {1, 64});
    return e;
}

control::StateDescription read_state(const Object& o) {
    control::StateDescription s;
    s.name = o.text("name", {1, 64});
    s.title = o.text("title", {1, 120});
    s.outputs = texts_or_none(o, "outputs");
    s.lamp = o.text_or("lamp", "");
    s.new_call = o.flag_or("new_call", false);
    s.reach = static_cast<int>(o.integer_or("reach", 0, 20, 0));
    s.end_trial = o.flag_or("end_trial", false);
    s.count_up = texts_or_none(o, "count_up");
    s.clear = texts_or_none(o, "clear");
    s.held_until_power_loss = o.flag_or("held_until_power_loss", false);
    for (const Object& e : o.objects("exits", {0, 32}))
        s.exits.push_back(read_exit(e));
    return s;
}

control::MachineDescription read_machine(const Object& o) {
    control::MachineDescription m;
    m.name = o.text("name", {1, 64});
    m.start = o.text("start", {1, 64});
    m.standby = o.text("standby", {1, 64});
    for (auto& [name, states] : o.named_texts("sets", 32, kNames))
        m.sets[name] = states;
    if (o.has("shared_exits"))
        for (const Object& e : o.objects("shared_exits", {0, 32}))
            m.shared_exits.push_back({e.texts("from", kNames), read_exit(e)});
    for (const Object& s : o.objects("states", {1, control::kMaxStates}))
        m.states.push_back(read_state(s));
    return m;
}

control::LampDescription read_lamp(const Object& o) {
    control::LampDescription lamp;
    lamp.change_dark_s = whole_ticks_s(o, "change_dark", 0.0);
    lamp.at_zero = o.text_or("at_zero", "");
    for (const Object& p : o.objects("patterns", {1, 16})) {
        control::LampPatternDescription pattern;
        pattern.name = p.text("name", {1, 64});
        pattern.meaning = p.text("meaning");
        pattern.counted = p.flag_or("counted", false);
        pattern.flashes = static_cast<int>(p.integer_or("flashes", 0, 20, 0));
        pattern.on_s = whole_ticks_s(p, "on", 0.0);
        pattern.off_s = whole_ticks_s(p, "off", 0.0);
        pattern.glow_s = whole_ticks_s(p, "glow", 0.0);
        pattern.rest_s = whole_ticks_s(p, "rest", 0.0);
        lamp.patterns.push_back(std::move(pattern));
    }
    return lamp;
}

} // namespace

BoardDescription read_board(const Object& section) {
    BoardDescription d;
    d.name = section.text("name", {1, 120});
    const Object supply = section.object("supply");
    d.supply.terminal = supply.text("terminal", {1, 64});
    d.supply.works_above_v = supply.number("works_above", {0.0, 300.0, "V"});
    d.supply.resets_below_v = supply.number("resets_below", {0.0, 300.0, "V"});
    d.supply.hold_up_s = whole_ticks_s(supply, "hold_up", d.supply.hold_up_s);
    d.self_check = section.text_or("self_check", "");
    for (const Object& o : section.objects("inputs", {1, control::kMaxInputs}))
        d.inputs.push_back(read_input(o));
    d.outputs = section.texts("outputs", {1, control::kMaxOutputs});
    for (auto& [name, outputs] : section.named_texts("never_together", 8, kNames))
        d.never_together.push_back(outputs);
    d.counters = texts_or_none(section, "counters");
    if (section.has("settings"))
        for (const Object& o : section.objects("settings", {0, control::kMaxSettings})) {
            control::SettingDescription setting;
            setting.name = o.text("name", {1, 64});
            setting.choices_s = o.numbers("choices", kTime, {1, control::kMaxChoices});
            setting.chosen_s = o.number("chosen", kTime);
            d.settings.push_back(std::move(setting));
        }
    for (const Object& o : section.objects("machines", {1, control::kMaxMachines}))
        d.machines.push_back(read_machine(o));
    d.lamp = read_lamp(section.object("lamp"));
    for (const Object& o : section.objects("steps", {0, 20})) {
        control::StepDescription step;
        step.count = static_cast<int>(o.integer("count", 1, 20));
        step.step = o.text("step");
        step.how = o.text("how");
        step.measure = texts_or_none(o, "measure");
        d.steps.push_back(std::move(step));
    }
    return d;
}

control::ThermostatDescription read_thermostat(const Object& o) {
    control::ThermostatDescription t;
    t.sensor_lag_s = o.number("sensor_lag", {0.1, 3600.0, "s"});
    t.differential_k = o.number("differential", {0.01, 10.0, "K_difference"});
    t.heat_bias_k = o.number("heat_bias", {0.0, 10.0, "K_difference"});
    t.heat_bias_lag_s = o.number("heat_bias_lag", {0.1, 36000.0, "s"});
    t.anticipator_a = o.number("anticipator", {0.0, 10.0, "A"});
    t.power = o.choice<control::ThermostatPower>("power", {{"none", control::ThermostatPower::none},
                                                           {"battery", control::ThermostatPower::battery},
                                                           {"common", control::ThermostatPower::common}});
    t.works_above_v = o.number("works_above", {0.0, 40.0, "V"});
    return t;
}

} // namespace lightoff::files
