// SPDX-License-Identifier: MIT
#include "bench/effects.hpp"

#include "bench/wires_by_hand.hpp"
#include "furnace/tolerance.hpp"

#include <cmath>

namespace lightoff::bench {
namespace {

using instruments::Spot;

constexpr double kLeadOhm = 0.02;    ///< of a jumper lead with its clips (common practice, no source)
constexpr double kBreakerOhm = 0.05; ///< of a lead with a small breaker (common practice, no source)
constexpr double kLandedOhm = 0.005; ///< of a wire's end on another terminal, as on its own
constexpr double kSpun_rad_s = 12.0; ///< two turns a second: what a hand gives a wheel (teaching value)
constexpr double kHolds_v = 5.0;     ///< a capacitor below it is empty
/// What a water heater draws, 40 cfh (common practice, no source), where the scenario names nothing else.
constexpr double kOtherGas_m3_s = 40.0 * 7.8658e-6;

/// One action taking effect.
class Effect {
public:
    Effect(const Site& site, World& world, furnace::Workspace& workspace, const Action& action)
        : site_(site), world_(world), in_(world.inputs), workspace_(workspace), action_(action) {}

    void take() {
        const auto flag = static_cast<std::uint8_t>(action_.value);
        instruments::Bag& bag = world_.bag;
        Handiwork& work = world_.handiwork;
        switch (action_.verb) {
        case Verb::none:
        case Verb::wait:
        case Verb::look:
        case Verb::keep:
        case Verb::stops_at:
        case Verb::strike:
        case Verb::strike_part:
        case Verb::unstrike:
        case Verb::tag:
        case Verb::cause:
        case Verb::cause_behind:
        case Verb::as_found:
        case Verb::as_left:
        case Verb::found:
        case Verb::expect:
        case Verb::test_old:
            break; // time, eyes and paper: the furnace feels nothing
        case Verb::thermostat_set:
            in_.set_point_k = 0.001 * static_cast<double>(action_.value);
            break;
        case Verb::thermostat_mode:
            in_.thermostat_mode = flag != 0 ? control::ThermostatMode::heat : control::ThermostatMode::off;
            break;
        case Verb::thermostat_fan:
            in_.thermostat_fan = flag != 0 ? control::FanSwitch::on : control::FanSwitch::automatic;
            break;
        case Verb::breaker:
            in_.breaker_on = flag;
            break;
        case Verb::disconnect:
            in_.disconnect_on = flag;
            break;
        case Verb::gas_cock:
            in_.gas_cock_open = flag;
            break;
        case Verb::burner_door:
            in_.burner_door_on = flag;
            break;
        case Verb::blower_door:
            in_.blower_door_on = flag;
            in_.door_switch_held = work.door_switch_taped;
            break;
        case Verb::door_switch:
            in_.door_switch_held = flag;
            break;
        case Verb::tape:
            in_.door_switch_held = flag;
            work.door_switch_taped = flag;
            break;
        case Verb::filter:
            in_.filter_in = flag;
            break;
        case Verb::appliances:
            appliances(flag != 0);
            break;
        case Verb::take_off:
        case Verb::put_back:
            work.set_off(action_.value, action_.verb == Verb::take_off);
            service();
            break;
        case Verb::clean:
        case Verb::tighten:
        case Verb::reset:
        case Verb::replace:
        case Verb::set_right:
            service();
            break;
        case Verb::adjust:
            turn_screw();
            break;
        case Verb::spin:
            spin();
            break;
        case Verb::discharge:
            discharge();
            break;
        case Verb::lift:
            part(terminal(action_.value));
            break;
        case Verb::seat:
            join(terminal(action_.value));
            break;
        case Verb::unplug:
        case Verb::plug_in:
            plug();
            break;
        case Verb::land:
            attach(free_landing(world_), terminal(action_.target).lug, terminal(action_.value).pin,
                   kLandedOhm);
            break;
        case Verb::jumper:
            attach(instruments::kJumperSlot, action_.target, action_.value, kLeadOhm);
            break;
        case Verb::jumper_off:
            in_.attachments[instruments::kJumperSlot] = {};
            break;
        case Verb::small_breaker:
        case Verb::small_breaker_reset:
            small_breaker();
            break;
        case Verb::small_breaker_off:
            in_.attachments[instruments::kSmallBreakerSlot] = {};
            break;
        case Verb::leads:
            bag.multimeter.setting.red = action_.target;
            bag.multimeter.setting.black = action_.value;
            if (bag.multimeter.setting.function == instruments::Function::off)
                bag.multimeter.setting.function = instruments::Function::ac_volts;
            break;
        case Verb::leads_off:
            bag.multimeter.setting.red = bag.multimeter.setting.black = 0;
            break;
        case Verb::meter:
            bag.multimeter.setting.function = static_cast<instruments::Function>(action_.value);
            break;
        case Verb::meter_fuses:
            instruments::fit_new_fuses(bag.multimeter);
            break;
        case Verb::zero:
            ++bag.manometer.setting.zero_presses;
            break;
        case Verb::clamp:
            bag.clamp.setting = {action_.value, 1};
            break;
        case Verb::clamp_off:
            bag.clamp.setting = {};
            break;
        case Verb::manometer_a:
            bag.manometer.setting.on = 1;
            bag.manometer.setting.plus = hung_at();
            break;
        case Verb::manometer_b:
            bag.manometer.setting.on = 1;
            bag.manometer.setting.minus = hung_at();
            break;
        case Verb::probe_1:
            bag.thermometer.setting.on = 1;
            bag.thermometer.setting.probe_1 = hung_at();
            break;
        case Verb::probe_2:
            bag.thermometer.setting.on = 1;
            bag.thermometer.setting.probe_2 = hung_at();
            break;
        case Verb::analyser:
            put(bag.analyser.setting.on, bag.analyser.setting.probe);
            break;
        case Verb::sniff:
            put(bag.gas_detector.setting.on, bag.gas_detector.setting.tip);
            break;
        case Verb::bubbles:
            put(bag.leak_solution.setting.on, bag.leak_solution.setting.joint);
            break;
        case Verb::tachometer:
            put(bag.tachometer.setting.on, bag.tachometer.setting.target);
            break;
        case Verb::tester:
            bag.voltage_tester.setting = {action_.value, 1};
            break;
        case Verb::wattmeter:
            bag.wattmeter.setting =
                flag != 0 ? instruments::at_furnace_supply(site_.model) : instruments::WattmeterSetting{};
            break;
        case Verb::stopwatch:
            bag.dial_watch.setting.looking = flag;
            bag.dial_watch.setting.starts += flag;
            break;
        case Verb::shut_off:
            work.tagged = 1;
            break;
        case Verb::tell:
            work.told = static_cast<std::uint8_t>(work.told | 1U << static_cast<unsigned>(action_.value));
            break;
        case Verb::sign_off:
            work.signed_off = 1;
            break;
        }
        bag.multimeter.stored_v = static_cast<float>(
            held_v(site_.model, world_, bag.multimeter.setting.red, bag.multimeter.setting.black));
        instruments::connect(bag, in_);
    }

private:
    /// A hose or probe that is put nowhere hangs in the room.
    [[nodiscard]] Spot hung_at() const {
        return action_.value == kNowhere ? Spot::room : static_cast<Spot>(action_.value);
    }
    void put(std::uint8_t& on, Spot& spot) const {
        on = action_.value == kNowhere ? 0 : 1;
        if (on != 0)
            spot = static_cast<Spot>(action_.value);
    }

    void appliances(bool on) {
        Handiwork& work = world_.handiwork;
        if (!on)
            work.other_gas_m3_s = in_.other_gas_m3_s > 0.0 ? in_.other_gas_m3_s : kOtherGas_m3_s;
        in_.other_gas_m3_s = on ? work.other_gas_m3_s : 0.0;
        work.appliances_off = on ? 0 : 1;
    }

    /// Onsets of numbers that a service deals with are over: what made them come and go is gone.
    void service() {
        const faults::Service& what = *site_.catalogue.find_service(*service_of(action_));
        for (Onset& onset : world_.onsets)
            if (onset.field != kNoField && onset.trigger != OnsetTrigger::from_tick &&
                faults::touches(site_.catalogue, what, world_.condition, onset.field))
                onset.field = kNoField;
        if (action_.verb == Verb::replace)
            lay_down(world_.old_parts, taken_out(site_, action_.value, world_.condition));
        faults::perform(site_.catalogue, what, furnace::as_built(site_.model, world_.seed), world_.condition);
        if (what.resets_rollout)
            heat::reset_rollout(site_.model.heat, world_.condition.heat, world_.state.heat);
        if (action_.verb == Verb::replace) // a new capacitor is empty
            if (const int capacitor = capacitor_of(site_.model, part_id(action_.value)); capacitor >= 0)
                world_.handiwork.capacitor_v[static_cast<std::size_t>(capacitor)] = 0.0;
    }
    void turn_screw() {
        const faults::Service& what = *site_.catalogue.find_service(*service_of(action_));
        faults::turn(what, 0.125 * static_cast<double>(action_.value), world_.condition);
        std::int8_t& stands = world_.handiwork.eighths[action_.target];
        stands = static_cast<std::int8_t>(stands + action_.value);
    }

    void spin() {
        if (action_.value == static_cast<std::int32_t>(Wheel::blower)) {
            double& speed = world_.state.air.blower.speed_rad_s;
            speed = std::max(speed, kSpun_rad_s);
        } else {
            double& speed = world_.state.draft.inducer.speed_rad_s;
            speed = std::max(speed, kSpun_rad_s);
        }
    }
    [[nodiscard]] const std::string& part_id(int part) const {
        return site_.catalogue.parts[static_cast<std::size_t>(part)].id;
    }
    void discharge() {
        const int capacitor = capacitor_of(site_.model, part_id(action_.value));
        world_.handiwork.capacitor_v[static_cast<std::size_t>(capacitor)] = 0.0;
    }

    [[nodiscard]] const furnace::Terminal& terminal(int index) const {
        return site_.model.wiring.terminals[static_cast<std::size_t>(index)];
    }
    void attach(std::size_t slot, int a, int b, double ohm) {
        in_.attachments[slot] = {};
        in_.attachments[slot].a = a;
        in_.attachments[slot].b = b;
        in_.attachments[slot].ohm = ohm;
    }
    void small_breaker() {
        Handiwork& work = world_.handiwork;
        electrical::Attachment& lead = in_.attachments[instruments::kSmallBreakerSlot];
        if (action_.verb == Verb::small_breaker)
            attach(instruments::kSmallBreakerSlot, action_.target, action_.value, kBreakerOhm);
        lead.ohm = kBreakerOhm;
        work.small_breaker_tripped = 0;
        work.small_breaker_heat = 0.0;
    }

    /// A capacitor that is cut off keeps the volts of that moment; the crest, so that nobody is lucky.
    void keep_charge(const furnace::Terminal& t) {
        const electrical::Netlist& net = site_.model.wiring.netlist;
        const std::vector<int> capacitors = run_capacitors(site_.model);
        for (std::size_t i = 0; i < capacitors.size(); ++i) {
            const electrical::Element& c = net.elements[static_cast<std::size_t>(capacitors[i])];
            const bool open = world_.condition.wiring.series_ohm[static_cast<std::size_t>(capacitors[i])] >=
                              electrical::kOpenOhm;
            if ((c.a != t.pin && c.b != t.pin) || open)
                continue;
            const electrical::AcSolution ac =
                furnace::solve_ac(site_.model, world_.state, world_.condition, in_, workspace_);
            electrical::AcVoltages volts{};
            workspace_.network.node_voltages(ac, volts);
            const double crest_v = std::sqrt(2.0) * units::abs(volts[static_cast<std::size_t>(c.a)] -
                                                               volts[static_cast<std::size_t>(c.b)]);
            if (crest_v > kHolds_v)
                world_.handiwork.capacitor_v[i] = crest_v;
        }
    }
    void part(const furnace::Terminal& t) {
        keep_charge(t);
        electrical::set_element(in_.parted, t.joint, true);
    }
    /// Back in circuit it discharges through the windings at once.
    void join(const furnace::Terminal& t) {
        if (const std::size_t slot = landing_of(world_, t.lug); slot != 0)
            in_.attachments[slot] = {};
        electrical::set_element(in_.parted, t.joint, false);
        const electrical::Netlist& net = site_.model.wiring.netlist;
        const std::vector<int> capacitors = run_capacitors(site_.model);
        for (std::size_t i = 0; i < capacitors.size(); ++i) {
            const electrical::Element& c = net.elements[static_cast<std::size_t>(capacitors[i])];
            if (!is_cut_off(c.a) && !is_cut_off(c.b))
                world_.handiwork.capacitor_v[i] = 0.0;
        }
    }
    [[nodiscard]] bool is_cut_off(int pin) const {
        for (const furnace::Terminal& t : site_.model.wiring.terminals)
            if (t.pin == pin && electrical::has_element(in_.parted, t.joint))
                return true;
        return false;
    }
    void plug() {
        const std::string& plug = site_.model.places[static_cast<std::size_t>(action_.value)].part;
        for (const furnace::Terminal& t : site_.model.wiring.terminals) {
            if (!t.is_at(plug))
                continue;
            if (action_.verb == Verb::unplug)
                part(t);
            else
                join(t);
        }
    }

    const Site& site_;
    World& world_;
    furnace::Inputs& in_;
    furnace::Workspace& workspace_;
    const Action& action_;
};

} // namespace

void take_effect(const Site& site, World& world, furnace::Workspace& workspace, const Action& action) {
    Effect(site, world, workspace, action).take();
}

} // namespace lightoff::bench
