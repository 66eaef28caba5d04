// SPDX-License-Identifier: MIT
#include "control/load_tables.hpp"

#include <fstream>
#include <nlohmann/json.hpp>
#include <stdexcept>

namespace lightoff::control {

using nlohmann::json;

template <class T>
void take(const json& j, const char* key, T& value) {
    if (j.contains(key))
        j.at(key).get_to(value);
}
void take(const json& j, const char* key, std::optional<double>& value) {
    if (j.contains(key))
        value = j.at(key).get<double>();
}
void from_json(const json& j, InputDescription& d) {
    take(j, "name", d.name);
    take(j, "terminal", d.terminal);
    take(j, "on_above_v", d.on_above_v);
    take(j, "off_below_v", d.off_below_v);
    take(j, "on_above_ua", d.on_above_ua);
    take(j, "off_below_ua", d.off_below_ua);
    take(j, "on_after_s", d.on_after_s);
    take(j, "off_after_s", d.off_after_s);
}
void from_json(const json& j, SupplyDescription& d) {
    take(j, "terminal", d.terminal);
    take(j, "works_above_v", d.works_above_v);
    take(j, "resets_below_v", d.resets_below_v);
    take(j, "hold_up_s", d.hold_up_s);
}
void from_json(const json& j, SettingDescription& d) {
    take(j, "name", d.name);
    take(j, "choices_s", d.choices_s);
    take(j, "chosen_s", d.chosen_s);
}
void from_json(const json& j, ExitDescription& d) {
    take(j, "inputs", d.inputs);
    take(j, "in", d.in);
    take(j, "not_in", d.not_in);
    take(j, "at_least", d.at_least);
    take(j, "after_s", d.after_s);
    take(j, "after_setting", d.after_setting);
    take(j, "go_to", d.go_to);
}
void from_json(const json& j, SharedExitDescription& d) {
    take(j, "from", d.from);
    d.exit = j.get<ExitDescription>();
}
void from_json(const json& j, StateDescription& d) {
    take(j, "name", d.name);
    take(j, "title", d.title);
    take(j, "outputs", d.outputs);
    take(j, "lamp", d.lamp);
    take(j, "new_call", d.new_call);
    take(j, "reach", d.reach);
    take(j, "end_trial", d.end_trial);
    take(j, "count_up", d.count_up);
    take(j, "clear", d.clear);
    take(j, "held_until_power_loss", d.held_until_power_loss);
    take(j, "exits", d.exits);
}
void from_json(const json& j, MachineDescription& d) {
    take(j, "name", d.name);
    take(j, "start", d.start);
    take(j, "standby", d.standby);
    take(j, "sets", d.sets);
    take(j, "shared_exits", d.shared_exits);
    take(j, "states", d.states);
}
void from_json(const json& j, LampPatternDescription& d) {
    take(j, "name", d.name);
    take(j, "meaning", d.meaning);
    take(j, "counted", d.counted);
    take(j, "flashes", d.flashes);
    take(j, "on_s", d.on_s);
    take(j, "off_s", d.off_s);
    take(j, "glow_s", d.glow_s);
    take(j, "rest_s", d.rest_s);
}
void from_json(const json& j, LampDescription& d) {
    take(j, "change_dark_s", d.change_dark_s);
    take(j, "at_zero", d.at_zero);
    take(j, "patterns", d.patterns);
}
void from_json(const json& j, StepDescription& d) {
    take(j, "count", d.count);
    take(j, "step", d.step);
    take(j, "how", d.how);
    take(j, "measure", d.measure);
}
void from_json(const json& j, BoardDescription& d) {
    take(j, "name", d.name);
    take(j, "supply", d.supply);
    take(j, "self_check", d.self_check);
    take(j, "inputs", d.inputs);
    take(j, "outputs", d.outputs);
    take(j, "never_together", d.never_together);
    take(j, "counters", d.counters);
    take(j, "settings", d.settings);
    take(j, "machines", d.machines);
    take(j, "lamp", d.lamp);
    take(j, "steps", d.steps);
}
void from_json(const json& j, ThermostatDescription& d) {
    take(j, "sensor_lag_s", d.sensor_lag_s);
    take(j, "differential_k", d.differential_k);
    take(j, "heat_bias_k", d.heat_bias_k);
    take(j, "heat_bias_lag_s", d.heat_bias_lag_s);
    take(j, "anticipator_a", d.anticipator_a);
    take(j, "works_above_v", d.works_above_v);
    const std::string power = j.value("power", "none");
    d.power = power == "battery"  ? ThermostatPower::battery
              : power == "common" ? ThermostatPower::common
                                  : ThermostatPower::none;
}

} // namespace lightoff::control

namespace control_tests {
namespace {

nlohmann::json read(const std::string& file) {
    std::ifstream stream(LIGHTOFF_SOURCE_DIR "/tests/control/tables/" + file);
    if (!stream)
        throw std::runtime_error("cannot read " + file);
    return nlohmann::json::parse(stream);
}

} // namespace

lightoff::control::BoardDescription load_board(const std::string& file) {
    return read(file).get<lightoff::control::BoardDescription>();
}
lightoff::control::ThermostatDescription load_thermostat(const std::string& file) {
    return read(file).get<lightoff::control::ThermostatDescription>();
}

} // namespace control_tests
