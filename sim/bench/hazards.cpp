// SPDX-License-Identifier: MIT
#include "bench/hazards.hpp"

#include "bench/access.hpp"
#include "bench/bench.hpp"
#include "bench/percept.hpp"
#include "bench/wires_by_hand.hpp"
#include "furnace/furnace.hpp"

#include <algorithm>

namespace lightoff::bench {
namespace {

using instruments::Spot;

/// A hand that touches: 2 kohm to earth; dangerous from 30 mA on (IEC 60479-1, from memory). 24 V stays
/// below.
constexpr double kBodyOhm = 2000.0;
constexpr double kDangerous_a = 0.030;
constexpr std::size_t kBodySlot = electrical::kMaxAttachments - 1;

constexpr double kLineVolts = 100.0;
constexpr double kSeenLive_v = 100.0; ///< a meter that has shown as much works
constexpr double kDead_v = 2.0;
constexpr double kTested_v = 30.0; ///< from here on a measurement counts as live testing
constexpr double kPasses_v = 10.0; ///< behind an open safety: current finds another way
constexpr double kHurts_v = 50.0;  ///< a capacitor that still holds as much
constexpr double kBurns_k = 338.0; ///< bare metal burns within a second, 65 C (ISO 13732-1, from memory)
constexpr std::uint64_t kBypassLimitTicks = 20 * 60;
constexpr std::uint64_t kCoLimitTicks = 20 * 60;
constexpr std::uint64_t kBypassEveryTicks = 20;
constexpr std::uint64_t kSettlesTicks = 60; ///< in which a furnace at rest has its voltages

constexpr std::array<std::string_view, static_cast<std::size_t>(Hazard::count)> kIds{
    "switch-in-gas",    "worked-live",      "motor-can-start",   "not-proved-dead",  "charged-capacitor",
    "rollout-bypassed", "burner-on-bypass", "gas-open-apart",    "trial-in-gas",     "stayed-in-co",
    "hot-surface",      "ohms-on-live",     "meter-fuse-blown",  "jumper-forbidden", "live-testing-forbidden",
    "left-bypass",      "left-open",        "left-leak-untested"};

/// Whether a contact is made or broken: by a switch, the end of a lead, a switch of another appliance.
bool makes_a_spark(Verb verb) {
    return works_a_switch(verb) || verb == Verb::jumper || verb == Verb::small_breaker ||
           verb == Verb::appliances;
}

/// The service in which an action takes a part in hand; none for the others, nor for pressing its button.
std::optional<faults::ServiceRef> in_hand(const Action& action) {
    const std::optional<faults::ServiceRef> service = service_of(action);
    return service && service->kind == faults::ServiceKind::reset ? std::nullopt : service;
}

/// Nodes that the hands touch in doing something.
std::vector<int> nodes_in_hand(const Site& site, const Action& action) {
    std::vector<int> nodes;
    const auto add_terminal = [&](int index) {
        const furnace::Terminal& t = site.model.wiring.terminals[static_cast<std::size_t>(index)];
        nodes.push_back(t.pin);
        nodes.push_back(t.lug);
    };
    if (action.verb == Verb::lift || action.verb == Verb::seat)
        add_terminal(action.value);
    if (action.verb == Verb::land) {
        add_terminal(action.target);
        add_terminal(action.value);
    }
    if (const auto service = in_hand(action))
        for (const std::string& has : site.catalogue.parts[static_cast<std::size_t>(service->part)].has)
            for (const int node : nodes_of(site.model, has))
                nodes.push_back(node);
    return nodes; // a plug is pulled by its body
}

std::vector<double> volts_to_earth(const Site& site, const World& world, furnace::Workspace& workspace) {
    const electrical::AcSolution ac =
        furnace::solve_ac(site.model, world.state, world.condition, world.inputs, workspace);
    electrical::AcVoltages all{};
    workspace.network.node_voltages(ac, all);
    std::vector<double> volts;
    for (int node = 0; node < site.model.wiring.netlist.node_count(); ++node)
        volts.push_back(units::abs(all[static_cast<std::size_t>(node)]));
    return volts;
}

/// Whether touching a node drives a dangerous current through a hand to earth.
bool is_live(const Site& site, const World& world, int node, furnace::Workspace& workspace) {
    furnace::Inputs inputs = world.inputs;
    inputs.attachments[kBodySlot] = {};
    inputs.attachments[kBodySlot].a = node;
    inputs.attachments[kBodySlot].b = electrical::kEarth;
    inputs.attachments[kBodySlot].ohm = kBodyOhm;
    const electrical::AcSolution ac =
        furnace::solve_ac(site.model, world.state, world.condition, inputs, workspace);
    return units::abs(workspace.network.ac_attachment_a(ac, static_cast<int>(kBodySlot))) > kDangerous_a;
}

bool has_wheel(const furnace::Model& model, const faults::Part& part) {
    const auto& motors = model.wiring;
    const auto is = [&](const std::string& name) {
        return std::find(part.has.begin(), part.has.end(), name) != part.has.end();
    };
    using Where = furnace::Place::Where;
    return (motors.blower_motor >= 0 && is("blower") && part.where == Where::blower_compartment) ||
           (motors.inducer_motor >= 0 && is("inducer") && part.where == Where::burner_compartment);
}

double surface_k(const World& world, const faults::Part& part) {
    const heat::Nodes& t = world.state.heat.temperature;
    switch (part.surface) {
    case faults::Surface::cool:
        return 0.0;
    case faults::Surface::fire:
        return t.exchanger[0];
    case faults::Surface::igniter:
        return t.igniter;
    case faults::Surface::blower_winding:
        return t.blower_winding;
    case faults::Surface::inducer_winding:
        return t.inducer_winding;
    }
    return 0.0;
}

bool has_hand_made_path(const World& world) {
    for (std::size_t slot = instruments::kJumperSlot; slot < electrical::kMaxAttachments; ++slot)
        if (is_attached(world.inputs, slot))
            return true;
    return false;
}

bool is_contact_of(const furnace::Wiring& wiring, const electrical::Element& element,
                   furnace::Driver driver) {
    return element.kind == electrical::ElementKind::contact && element.switch_bit >= 0 &&
           wiring.switches[static_cast<std::size_t>(element.switch_bit)].driver == driver;
}

/// Whether current would pass a safety's contact by another way if it were open.
bool is_bypassed(const Site& site, const World& world, furnace::Driver driver,
                 furnace::Workspace& workspace) {
    const furnace::Wiring& wiring = site.model.wiring;
    const electrical::Netlist& net = wiring.netlist;
    for (std::size_t e = 0; e < net.elements.size(); ++e) {
        const electrical::Element& contact = net.elements[e];
        if (!is_contact_of(wiring, contact, driver))
            continue;
        furnace::Condition open = world.condition;
        electrical::open_element(open.wiring, static_cast<int>(e));
        const electrical::AcSolution ac =
            furnace::solve_ac(site.model, world.state, open, world.inputs, workspace);
        electrical::AcVoltages volts{};
        workspace.network.node_voltages(ac, volts);
        const auto against_common = [&](int node) {
            return units::abs(volts[static_cast<std::size_t>(node)] -
                              volts[static_cast<std::size_t>(wiring.common)]);
        };
        if (against_common(contact.a) > kPasses_v && against_common(contact.b) > kPasses_v)
            return true;
    }
    return false;
}

/// Whether a lead lies across a safety's contact, live or not.
bool is_bridged(const Site& site, const World& world, furnace::Driver driver) {
    const furnace::Wiring& wiring = site.model.wiring;
    for (const electrical::Element& contact : wiring.netlist.elements) {
        if (!is_contact_of(wiring, contact, driver))
            continue;
        for (std::size_t slot = instruments::kJumperSlot; slot < electrical::kMaxAttachments; ++slot) {
            const auto& lead = world.inputs.attachments[slot];
            if ((lead.a == contact.a && lead.b == contact.b) || (lead.a == contact.b && lead.b == contact.a))
                return true;
        }
    }
    return false;
}

std::uint32_t switches_of(const World& world) {
    const furnace::Inputs& in = world.inputs;
    const bool door_switch = in.blower_door_on != 0 || in.door_switch_held != 0;
    return (in.disconnect_on != 0 ? 1U : 0U) | (in.breaker_on != 0 ? 2U : 0U) | (door_switch ? 4U : 0U);
}

} // namespace

std::string_view id_of(Hazard hazard) {
    return kIds[static_cast<std::size_t>(hazard)];
}

HazardWatch::HazardWatch(const Site& site, const SchoolRules& rules) : site_(&site), rules_(rules) {
    // A sound furnace at rest says which places have 120 V as a rule.
    furnace::Workspace workspace(site.model);
    World sound = fresh_world(site.model, furnace::Inputs{}, furnace::Inputs{}.set_point_k, 0);
    advance(site, sound, workspace, kSettlesTicks);
    for (const double volts : volts_to_earth(site, sound, workspace))
        line_node_.push_back(volts > kLineVolts ? 1 : 0);
}

void HazardWatch::note(std::uint64_t tick, Hazard hazard, std::string about) {
    events_.push_back({tick, hazard, std::move(about), 0});
}

void HazardWatch::note_once(const World& world, bool is_so, Hazard hazard, const std::string& about) {
    std::uint8_t& open = open_[static_cast<std::size_t>(hazard)];
    if (is_so && open == 0)
        note(world.tick, hazard, about);
    if (!is_so && open != 0)
        for (auto event = events_.rbegin(); event != events_.rend(); ++event)
            if (event->hazard == hazard) {
                event->ended_tick = world.tick;
                break;
            }
    open = is_so ? 1 : 0;
}

void HazardWatch::before(const World& world, const Action& action, furnace::Workspace& workspace) {
    if (makes_a_spark(action.verb) && perceive(*site_, world).smelt.gas > 0)
        note(world.tick, Hazard::switch_in_gas, std::string(spec_of(action.verb).name));
    if ((action.verb == Verb::jumper || action.verb == Verb::small_breaker) && !rules_.jumpers_allowed)
        note(world.tick, Hazard::jumper_forbidden, std::string(spec_of(action.verb).name));
    if (action.verb == Verb::leads && !rules_.live_testing_allowed) {
        const std::vector<double> volts = volts_to_earth(*site_, world, workspace);
        for (const int node : {static_cast<int>(action.target), static_cast<int>(action.value)})
            if (volts[static_cast<std::size_t>(node)] > kTested_v) {
                note(world.tick, Hazard::live_testing_forbidden, point_name(site_->model, node));
                break;
            }
    }
    before_handling(world, action, workspace);
    if (action.verb == Verb::sign_off)
        before_sign_off(world);
}

void HazardWatch::before_handling(const World& world, const Action& action, furnace::Workspace& workspace) {
    const furnace::Model& model = site_->model;
    const std::vector<int> nodes = nodes_in_hand(*site_, action);
    bool live = false;
    bool line = false;
    for (const int node : nodes) {
        line = line || line_node_[static_cast<std::size_t>(node)] != 0;
        if (!live && is_live(*site_, world, node, workspace)) {
            live = true;
            note(world.tick, Hazard::worked_live, point_name(model, node));
        }
    }
    const std::vector<int> capacitors = run_capacitors(model);
    for (std::size_t i = 0; i < capacitors.size(); ++i) {
        const electrical::Element& c = model.wiring.netlist.elements[static_cast<std::size_t>(capacitors[i])];
        const bool touched = std::find(nodes.begin(), nodes.end(), c.a) != nodes.end() ||
                             std::find(nodes.begin(), nodes.end(), c.b) != nodes.end();
        if (touched && world.handiwork.capacitor_v[i] > kHurts_v)
            note(world.tick, Hazard::charged_capacitor,
                 model.wiring.netlist.element_names[static_cast<std::size_t>(capacitors[i])]);
    }

    const std::optional<faults::ServiceRef> ref = in_hand(action);
    const bool spins = action.verb == Verb::spin;
    const faults::Part* part = ref ? &site_->catalogue.parts[static_cast<std::size_t>(ref->part)] : nullptr;
    const bool wheel = spins || (part != nullptr && has_wheel(model, *part));
    const std::string about = part != nullptr ? part->title : spins ? "wheel" : "wires";
    if (wheel && world.state.board.powered != 0)
        note(world.tick, Hazard::motor_can_start, about);
    if ((wheel || line) && !live && world.state.board.powered == 0 && !proved_dead_)
        note(world.tick, Hazard::not_proved_dead, about);
    if (part == nullptr)
        return;
    if (surface_k(world, *part) > kBurns_k)
        note(world.tick, Hazard::hot_surface, part->title);
    const faults::Service* service = site_->catalogue.find_service(*ref);
    if (service == nullptr || !service->opens_gas)
        return;
    joint_opened_ = true;
    if (world.inputs.gas_cock_open != 0)
        note(world.tick, Hazard::gas_open_apart, part->title);
}

void HazardWatch::before_sign_off(const World& world) {
    const furnace::Inputs& in = world.inputs;
    const Handiwork& work = world.handiwork;
    if (has_hand_made_path(world) || work.door_switch_taped != 0)
        note(world.tick, Hazard::left_bypass,
             work.door_switch_taped != 0 ? "tape on the door switch" : "a lead or a wire out of its place");
    const bool parted = std::any_of(in.parted.begin(), in.parted.end(), [](auto bits) { return bits != 0; });
    const bool off =
        std::any_of(work.parts_off.begin(), work.parts_off.end(), [](auto bits) { return bits != 0; });
    if (in.burner_door_on == 0 || in.blower_door_on == 0 || in.filter_in == 0 || parted || off)
        note(world.tick, Hazard::left_open,
             parted ? "a wire or plug"
             : off  ? "a part"
                    : "a door or the filter");
    if (joint_opened_)
        note(world.tick, Hazard::left_leak_untested, "gas joint");
}

void HazardWatch::read(const World& world, const Notebook& notebook) {
    const std::vector<Reading>& readings = notebook.readings();
    for (; readings_seen_ < readings.size(); ++readings_seen_) {
        const Reading& reading = readings[readings_seen_];
        const instruments::Quantity quantity = reading.display.quantity;
        const bool at_a_joint =
            quantity == instruments::Quantity::bubble || quantity == instruments::Quantity::explosive_limit;
        if (at_a_joint && world.inputs.gas_cock_open != 0)
            joint_opened_ = false;
        if (quantity != instruments::Quantity::ac_volts && quantity != instruments::Quantity::low_z_volts)
            continue;
        const instruments::Value shown = instruments::value_of(reading.display);
        if (!shown.known)
            continue;
        if (shown.value > kSeenLive_v)
            meter_saw_live_ = true;
        const auto& leads = world.bag.multimeter.setting;
        const bool on_line = line_node_[static_cast<std::size_t>(leads.red)] !=
                             line_node_[static_cast<std::size_t>(leads.black)];
        if (on_line && shown.value < kDead_v && meter_saw_live_)
            proved_dead_ = true;
    }
}

void HazardWatch::watch_bypass(const World& world, furnace::Workspace& workspace) {
    if (world.tick % kBypassEveryTicks != 0)
        return;
    const bool hand_made = has_hand_made_path(world);
    const bool rollout = hand_made && (is_bridged(*site_, world, furnace::Driver::rollout) ||
                                       is_bypassed(*site_, world, furnace::Driver::rollout, workspace));
    note_once(world, rollout, Hazard::rollout_bypassed, "rollout switch");
    const bool any =
        rollout || (hand_made && (is_bypassed(*site_, world, furnace::Driver::limit, workspace) ||
                                  is_bypassed(*site_, world, furnace::Driver::pressure_switch, workspace)));
    const bool burning = world.state.signals.combustion.heat_released_hhv_w > 0.0;
    bypass_ticks_ = any && burning ? bypass_ticks_ + kBypassEveryTicks : 0;
    note_once(world, bypass_ticks_ >= kBypassLimitTicks, Hazard::burner_on_bypass, "a safety switch");
}

void HazardWatch::watch_air(const World& world) {
    const bool alarm = world.bag.co_alarm.display.has(instruments::kAlarm);
    co_ticks_ = alarm ? co_ticks_ + 1 : 0;
    note_once(world, co_ticks_ >= kCoLimitTicks, Hazard::stayed_in_co, "carbon monoxide");
    const double of_limit = world.state.gas.room.raw_gas_fraction / site_->model.combustion.fuel.lower_limit;
    const bool trial = of_limit > 0.5 && world.state.signals.power.igniter_w > 0.0;
    note_once(world, trial, Hazard::trial_in_gas, "gas in the room");
}

void HazardWatch::watch_meter(const World& world) {
    const instruments::Multimeter& meter = world.bag.multimeter;
    using instruments::Function;
    const Function function = meter.setting.function;
    const bool tests =
        function == Function::ohms || function == Function::continuity || function == Function::capacitance;
    note_once(world, tests && meter.display.has(instruments::kNoisy), Hazard::ohms_on_live, "multimeter");
    note_once(world, meter.state.amp_fuse_blown != 0 || meter.state.microamp_fuse_blown != 0,
              Hazard::meter_fuse_blown, "multimeter");
}

void HazardWatch::watch_switches(const World& world) {
    const std::uint32_t now = switches_of(world);
    if ((now & ~switches_) != 0)
        proved_dead_ = false;
    switches_ = now;
}

void HazardWatch::observe(const World& world, const Notebook& notebook, furnace::Workspace& workspace) {
    watch_switches(world);
    read(world, notebook);
    watch_bypass(world, workspace);
    watch_air(world);
    watch_meter(world);
}

} // namespace lightoff::bench
