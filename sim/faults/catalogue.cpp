// SPDX-License-Identifier: MIT
#include "faults/catalogue.hpp"

#include "furnace/condition_paths.hpp"
#include "units/fields.hpp"
#include "units/pinned_math.hpp"

#include <algorithm>
#include <array>
#include <stdexcept>
#include <type_traits>

namespace lightoff::faults {
namespace {

template <class List>
int find_id(const List& list, std::string_view id) {
    const auto it = std::find_if(list.begin(), list.end(), [&](const auto& item) { return item.id == id; });
    return it == list.end() ? -1 : static_cast<int>(it - list.begin());
}

double between(double least, double most, bool logarithmic, double severity) {
    if (severity <= 0.0)
        return least;
    if (severity >= 1.0)
        return most;
    return logarithmic ? least * units::pow(most / least, severity) : least + (most - least) * severity;
}

void require_severity(double severity) {
    if (!(severity >= 0.0 && severity <= 1.0))
        throw std::invalid_argument("a severity is 0 to 1");
}

std::size_t at(int i) {
    return static_cast<std::size_t>(i);
}

NodePair pair_of(const electrical::Bridge& bridge) {
    return {std::min<int>(bridge.a, bridge.b), std::max<int>(bridge.a, bridge.b)};
}

bool clears(const Catalogue& catalogue, const Service& service, const electrical::Bridge& bridge) {
    return bridge.a != bridge.b &&
           std::any_of(service.clears_bridges.begin(), service.clears_bridges.end(),
                       [&](int i) { return catalogue.bridges[at(i)] == pair_of(bridge); });
}

bool is_whole_number(std::uint64_t field) {
    std::uint64_t i = 0;
    bool whole = false;
    const furnace::Condition condition;
    units::for_each_value(condition, [&](const auto& value) {
        if (i++ == field)
            whole = !std::is_floating_point_v<std::remove_cvref_t<decltype(value)>>;
    });
    return whole;
}

void check_change(const Change& change) {
    if (change.logarithmic && !(change.least * change.most > 0.0))
        throw std::invalid_argument("a logarithmic change has ends of one sign, neither of them 0");
    const auto whole = static_cast<double>(static_cast<std::int64_t>(change.most));
    if (is_whole_number(change.field) && (change.least != change.most || change.most != whole))
        throw std::invalid_argument("a condition that is a whole number takes one value at every severity");
}

bool may(const Fault& fault, Trigger trigger) {
    return std::find(fault.triggers.begin(), fault.triggers.end(), trigger) != fault.triggers.end();
}

void check_triggers(const Fault& fault) {
    if (fault.triggers.empty())
        throw std::invalid_argument("a fault sets in by something");
    if (may(fault, Trigger::when_hot) != (fault.hot_node >= 0))
        throw std::invalid_argument("\"when-hot\" and the node and temperature for it belong together");
    if (may(fault, Trigger::now_and_then) != (fault.stretch_ticks > 0))
        throw std::invalid_argument("\"now-and-then\" and the length of a stretch belong together");
    const bool only_from_start = fault.triggers.size() == 1 && may(fault, Trigger::from_start);
    if (!fault.controls.empty() && !only_from_start)
        throw std::invalid_argument("a control that was left so is so from the start");
}

void check_services(const Catalogue& catalogue, const Fault& fault) {
    for (const auto* list : {&fault.repairs, &fault.seeming})
        for (const ServiceRef& ref : *list)
            if (catalogue.find_service(ref) == nullptr)
                throw std::invalid_argument("part " + catalogue.parts[at(ref.part)].id +
                                            " has no service of that kind");
    for (const ServiceRef& ref : fault.seeming)
        if (std::find(fault.repairs.begin(), fault.repairs.end(), ref) != fault.repairs.end())
            throw std::invalid_argument("what repairs a fault does not only seem to");
    if (fault.repairs.empty() == fault.controls.empty())
        throw std::invalid_argument("a fault has a repair, or is a control that was left wrong");
}

} // namespace

std::string_view name_of(Group group) {
    constexpr std::array<std::string_view, kGroups> kNames{"power", "call",        "draft",        "ignition",
                                                           "gas",   "flame-sense", "heat-and-air", "control"};
    return kNames[static_cast<std::size_t>(group)];
}

int Catalogue::find_part(std::string_view id) const {
    return find_id(parts, id);
}

int Catalogue::find_fault(std::string_view id) const {
    return find_id(faults, id);
}

const Service* Catalogue::find_service(ServiceRef ref) const {
    for (const Service& service : parts[at(ref.part)].services)
        if (service.kind == ref.kind)
            return &service;
    return nullptr;
}

std::vector<Setting> settings_at(const Fault& fault, double severity) {
    require_severity(severity);
    std::vector<Setting> settings;
    for (const Change& c : fault.changes)
        settings.push_back({c.field, between(c.least, c.most, c.logarithmic, severity)});
    return settings;
}

std::vector<electrical::Bridge> bridges_at(const Catalogue& catalogue, const Fault& fault, double severity) {
    require_severity(severity);
    std::vector<electrical::Bridge> bridges;
    for (const BridgeChange& c : fault.bridges) {
        const NodePair& nodes = catalogue.bridges[at(c.bridge)];
        bridges.push_back({static_cast<std::int16_t>(nodes.a), static_cast<std::int16_t>(nodes.b),
                           static_cast<float>(between(c.least_ohm, c.most_ohm, true, severity))});
    }
    return bridges;
}

int free_bridge(const electrical::Condition& wiring) {
    for (std::size_t i = 0; i < wiring.bridges.size(); ++i)
        if (wiring.bridges[i].a == wiring.bridges[i].b)
            return static_cast<int>(i);
    return -1;
}

bool is_on(Control control, const furnace::Inputs& inputs) {
    switch (control) {
    case Control::breaker:
        return inputs.breaker_on != 0;
    case Control::disconnect:
        return inputs.disconnect_on != 0;
    case Control::gas_cock:
        return inputs.gas_cock_open != 0;
    case Control::thermostat_mode:
        return inputs.thermostat_mode == control::ThermostatMode::heat;
    case Control::filter:
        return inputs.filter_in != 0;
    }
    return false;
}

void set_control(const ControlLeft& left, bool healthy, furnace::Inputs& inputs) {
    const bool on = left.on != healthy;
    const auto flag = static_cast<std::uint8_t>(on ? 1 : 0);
    switch (left.control) {
    case Control::breaker:
        inputs.breaker_on = flag;
        break;
    case Control::disconnect:
        inputs.disconnect_on = flag;
        break;
    case Control::gas_cock:
        inputs.gas_cock_open = flag;
        break;
    case Control::thermostat_mode:
        inputs.thermostat_mode = on ? control::ThermostatMode::heat : control::ThermostatMode::off;
        break;
    case Control::filter:
        inputs.filter_in = flag;
        break;
    }
}

void apply(const Catalogue& catalogue, const Fault& fault, double severity, furnace::Condition& condition,
           furnace::Inputs& inputs) {
    for (const Setting& s : settings_at(fault, severity))
        furnace::set_condition_field(condition, s.field, s.value);
    for (const electrical::Bridge& bridge : bridges_at(catalogue, fault, severity)) {
        const int slot = free_bridge(condition.wiring);
        if (slot < 0)
            throw std::invalid_argument("more shorts at once than the wiring has room for");
        condition.wiring.bridges[at(slot)] = bridge;
    }
    for (const ControlLeft& left : fault.controls)
        set_control(left, false, inputs);
}

void perform(const Catalogue& catalogue, const Service& service, const furnace::Condition& as_built,
             furnace::Condition& condition) {
    for (const std::uint64_t field : service.restores)
        furnace::set_condition_field(condition, field, furnace::condition_value(as_built, field));
    for (electrical::Bridge& bridge : condition.wiring.bridges)
        if (clears(catalogue, service, bridge))
            bridge = {};
    for (const Setting& s : service.sets)
        furnace::set_condition_field(condition, s.field, s.value);
}

bool touches(const Catalogue& catalogue, const Service& service, const furnace::Condition& condition,
             std::uint64_t field) {
    if (std::binary_search(service.restores.begin(), service.restores.end(), field))
        return true;
    if (std::any_of(service.sets.begin(), service.sets.end(),
                    [&](const Setting& s) { return s.field == field; }))
        return true;
    for (std::size_t i = 0; i < condition.wiring.bridges.size(); ++i) {
        const std::uint64_t first = bridge_field(static_cast<int>(i));
        if (field >= first && field < first + 3)
            return clears(catalogue, service, condition.wiring.bridges[i]);
    }
    return false;
}

std::uint64_t bridge_field(int bridge) {
    // Behind the two lists of the wiring's elements: see electrical::Condition::fields.
    constexpr std::uint64_t kFirst = 2 * electrical::kMaxElements;
    return kFirst + 3 * static_cast<std::uint64_t>(bridge);
}

void check(const Catalogue& catalogue, const Fault& fault) {
    if (fault.changes.empty() && fault.bridges.empty() && fault.controls.empty())
        throw std::invalid_argument("a fault changes something");
    for (const Change& change : fault.changes)
        check_change(change);
    for (const BridgeChange& bridge : fault.bridges)
        if (!(bridge.least_ohm > 0.0 && bridge.most_ohm > 0.0))
            throw std::invalid_argument("a short has ohms above 0");
    check_triggers(fault);
    check_services(catalogue, fault);
}

} // namespace lightoff::faults
