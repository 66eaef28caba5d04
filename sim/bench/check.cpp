// SPDX-License-Identifier: MIT
// Why an action can't be done. Nothing here looks at what is wrong with a part: only at what whoever stands
// there knows (doors, switches, leads, parts taken off).
#include "bench/access.hpp"
#include "bench/bench.hpp"
#include "bench/hand_words.hpp"
#include "bench/wires_by_hand.hpp"

#include <algorithm>
#include <string>

namespace lightoff::bench {
namespace {

using instruments::Spot;
using std::string;

Verdict refuse(string reason) {
    return {false, 0, std::move(reason)};
}

Verdict allow(std::int64_t ticks) {
    return {true, static_cast<std::uint64_t>(ticks), {}};
}

bool holds_door_switch(const World& world) {
    return world.inputs.door_switch_held != 0 && world.handiwork.door_switch_taped == 0;
}

/// One action judged in one World.
class Judge {
public:
    Judge(const Site& site, const World& world, const Action& action)
        : site_(site), model_(site.model), world_(world), in_(world.inputs), action_(action),
          spec_(spec_of(action.verb)) {}

    [[nodiscard]] Verdict verdict() const {
        if (world_.handiwork.signed_off != 0)
            return refuse("The work order is signed; the call is finished.");
        if (world_.hands.busy != 0)
            return refuse("Your hands are busy; wait until that is done.");
        if (!is_known(site_, action_))
            return refuse("There is no such thing here.");
        if (action_.verb != Verb::door_switch && !has_hands(spec_.hands))
            return refuse("That takes both hands, and one holds the door switch.");
        return by_verb();
    }

private:
    [[nodiscard]] bool has_hands(int wanted) const { return wanted < 2 || !holds_door_switch(world_); }
    [[nodiscard]] Verdict yes() const { return allow(spec_.ticks); }

    [[nodiscard]] Verdict by_verb() const {
        switch (action_.verb) {
        case Verb::wait:
            return allow(std::int64_t{action_.value} * 20);
        case Verb::breaker:
            return toggle(in_.breaker_on != 0, "breaker", "on", "off");
        case Verb::disconnect:
            return toggle(in_.disconnect_on != 0, "disconnect switch", "on", "off");
        case Verb::gas_cock:
            return toggle(in_.gas_cock_open != 0, "gas cock", "open", "shut");
        case Verb::burner_door:
            return toggle(in_.burner_door_on != 0, "burner compartment door", "on", "off");
        case Verb::blower_door:
            return toggle(in_.blower_door_on != 0, "blower compartment door", "on", "off");
        case Verb::filter:
            return toggle(in_.filter_in != 0, "filter", "in its rack", "out");
        case Verb::wattmeter:
            return toggle(world_.bag.wattmeter.setting.on != 0, "wattmeter", "in", "out");
        case Verb::stopwatch:
            return toggle(world_.bag.dial_watch.setting.looking != 0, "stopwatch", "running", "put away");
        case Verb::appliances:
            return toggle(world_.handiwork.appliances_off == 0, "other appliances' gas", "on", "off");
        case Verb::door_switch:
            return door_switch();
        case Verb::tape:
            return tape();
        case Verb::leads:
        case Verb::jumper:
        case Verb::small_breaker:
            return two_points();
        case Verb::tester:
            return one_point(action_.value);
        case Verb::leads_off:
            return taken_off(world_.bag.multimeter.setting.red != world_.bag.multimeter.setting.black,
                             "The multimeter's leads are not on anything.");
        case Verb::jumper_off:
            return taken_off(is_attached(in_, instruments::kJumperSlot),
                             "There is no jumper lead on anything.");
        case Verb::small_breaker_off:
        case Verb::small_breaker_reset:
            return taken_off(is_attached(in_, instruments::kSmallBreakerSlot),
                             "The lead with the small breaker is not on anything.");
        case Verb::meter_fuses:
            return taken_off(world_.bag.multimeter.setting.red == world_.bag.multimeter.setting.black,
                             "Take the multimeter's leads off first.");
        case Verb::zero:
            return taken_off(world_.bag.manometer.setting.on != 0, "The manometer is off.");
        case Verb::clamp:
            return clamp();
        case Verb::clamp_off:
            return taken_off(world_.bag.clamp.setting.on != 0, "The clamp is not round a wire.");
        case Verb::look:
            return look();
        case Verb::test_old:
            return test_old();
        case Verb::take_off:
        case Verb::put_back:
        case Verb::clean:
        case Verb::tighten:
        case Verb::adjust:
        case Verb::set_right:
        case Verb::reset:
        case Verb::replace:
            return service(*service_of(action_));
        case Verb::spin:
            return spin();
        case Verb::discharge:
            return discharge();
        case Verb::lift:
        case Verb::seat:
            return wire_on_its_terminal();
        case Verb::land:
            return land();
        case Verb::unplug:
        case Verb::plug_in:
            return plug();
        case Verb::manometer_a:
        case Verb::manometer_b:
        case Verb::probe_1:
        case Verb::probe_2:
        case Verb::analyser:
        case Verb::sniff:
        case Verb::bubbles:
        case Verb::tachometer:
            return spot();
        case Verb::keep:
            return keep();
        case Verb::shut_off:
            return shut_off();
        case Verb::none:
            return refuse("Nothing is not an action.");
        case Verb::thermostat_set:
        case Verb::thermostat_mode:
        case Verb::thermostat_fan:
        case Verb::meter:
        case Verb::tell:
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
        case Verb::sign_off:
            return yes();
        }
        return yes();
    }

    [[nodiscard]] Verdict toggle(bool is_on, const string& thing, const string& on, const string& off) const {
        if ((action_.value != 0) == is_on)
            return refuse("The " + thing + " is already " + (is_on ? on : off) + ".");
        return yes();
    }
    [[nodiscard]] Verdict taken_off(bool is_on, const string& why_not) const {
        return is_on ? yes() : refuse(why_not);
    }

    [[nodiscard]] Verdict door_switch() const {
        if (in_.blower_door_on != 0)
            return refuse("The door switch is behind the blower compartment door; take that off first.");
        if (world_.handiwork.door_switch_taped != 0)
            return refuse("The door switch is taped in; take the tape off.");
        if ((action_.value != 0) == (in_.door_switch_held != 0))
            return refuse(action_.value != 0 ? "You are holding the door switch already."
                                             : "You are not holding the door switch.");
        return yes();
    }
    [[nodiscard]] Verdict tape() const {
        if (in_.blower_door_on != 0)
            return refuse("The door switch is behind the blower compartment door; take that off first.");
        return toggle(world_.handiwork.door_switch_taped != 0, "door switch", "taped in", "free of tape");
    }

    [[nodiscard]] Verdict one_point(int node) const {
        string reason = why_out_of_reach(model_, in_, node);
        return reason.empty() ? yes() : refuse(std::move(reason));
    }
    [[nodiscard]] Verdict two_points() const {
        for (const int node : {static_cast<int>(action_.target), static_cast<int>(action_.value)})
            if (Verdict verdict = one_point(node); !verdict.allowed)
                return verdict;
        return yes();
    }

    /// A wire can be got at where either of its ends can.
    [[nodiscard]] Verdict clamp() const {
        const auto element = static_cast<std::size_t>(action_.value);
        const electrical::Element& wire = model_.wiring.netlist.elements[element];
        string reason = why_out_of_reach(model_, in_, wire.a);
        if (!reason.empty() && !why_out_of_reach(model_, in_, wire.b).empty())
            return refuse(std::move(reason));
        return yes();
    }

    [[nodiscard]] const faults::Part& part_at(int part) const {
        return site_.catalogue.parts[static_cast<std::size_t>(part)];
    }
    [[nodiscard]] string why_no_access(const faults::Part& part, const faults::Access& access) const {
        return bench::why_no_access(site_, world_, part, access);
    }
    [[nodiscard]] Verdict look() const {
        const faults::Part& part = part_at(action_.value);
        string why = why_no_access(part, part.look.access);
        return why.empty() ? allow(part.look.ticks) : refuse(std::move(why));
    }
    [[nodiscard]] Verdict test_old() const {
        const faults::Part& part = part_at(action_.value);
        if (find_old(world_.old_parts, action_.value) == nullptr)
            return refuse("No old " + in_sentence(part) + " lies on the bench.");
        if (part.bench_test.ticks == 0)
            return refuse("There is no test on the bench for the " + in_sentence(part) + ".");
        return allow(part.bench_test.ticks);
    }
    [[nodiscard]] Verdict service(faults::ServiceRef ref) const {
        const auto [index, kind] = ref;
        const bool by_turns = action_.verb == Verb::adjust;
        const faults::Part& part = part_at(index);
        const faults::Service* service = site_.catalogue.find_service(ref);
        const bool has_screw = service != nullptr && service->per_turn != 0.0;
        if (action_.verb == Verb::set_right && has_screw)
            return refuse("The " + in_sentence(part) + " is set by turns of its screw: adjust.");
        if (service == nullptr || (by_turns && !has_screw))
            return refuse("The " + in_sentence(part) + " is nothing to " + words_of(kind) + ".");
        const bool off = world_.handiwork.is_off(index);
        if (kind == faults::ServiceKind::take_off && off)
            return refuse("The " + in_sentence(part) + " is off already.");
        if (kind == faults::ServiceKind::put_back && !off)
            return refuse("The " + in_sentence(part) + " is in its place.");
        if (!has_hands(service->hands))
            return refuse("That takes both hands, and one holds the door switch.");
        if (string why = why_no_access(part, service->access); !why.empty())
            return refuse(std::move(why));
        if (by_turns && beyond_its_stop(*service, index))
            return refuse("The screw of the " + in_sentence(part) + " turns no further.");
        return allow(service->ticks);
    }
    [[nodiscard]] bool beyond_its_stop(const faults::Service& service, int part) const {
        const int stands = world_.handiwork.eighths[static_cast<std::size_t>(part)] + action_.value;
        const double turns = 0.125 * static_cast<double>(stands < 0 ? -stands : stands);
        return turns > service.most_turns;
    }
    /// "take off"
    static string words_of(faults::ServiceKind kind) {
        string words(faults::name_of(kind));
        std::replace(words.begin(), words.end(), '-', ' ');
        return words;
    }

    [[nodiscard]] Verdict spin() const {
        const bool blower = action_.value == static_cast<std::int32_t>(Wheel::blower);
        string why = why_behind_a_door(blower ? furnace::Place::Where::blower_compartment
                                              : furnace::Place::Where::burner_compartment,
                                       in_);
        return why.empty() ? yes() : refuse((blower ? "The blower wheel is " : "The inducer is ") + why);
    }
    [[nodiscard]] Verdict discharge() const {
        const faults::Part& part = part_at(action_.value);
        if (capacitor_of(model_, part.id) < 0)
            return refuse("The " + in_sentence(part) + " holds no charge.");
        string why = why_no_access(part, {});
        return why.empty() ? yes() : refuse(std::move(why));
    }

    [[nodiscard]] const furnace::Terminal& terminal(int index) const {
        return model_.wiring.terminals[static_cast<std::size_t>(index)];
    }
    [[nodiscard]] bool is_lifted(const furnace::Terminal& t) const {
        return electrical::has_element(in_.parted, t.joint);
    }
    [[nodiscard]] Verdict wire_on_its_terminal() const {
        const furnace::Terminal& t = terminal(action_.value);
        if (Verdict verdict = one_point(t.lug); !verdict.allowed)
            return verdict;
        if (is_lifted(t) == (action_.verb == Verb::lift))
            return refuse("The wire of " + t.name + " is " +
                          (is_lifted(t) ? "off its terminal already." : "on its terminal."));
        return yes();
    }
    [[nodiscard]] Verdict land() const {
        const furnace::Terminal& from = terminal(action_.target);
        const furnace::Terminal& to = terminal(action_.value);
        for (const int node : {from.lug, to.pin})
            if (Verdict verdict = one_point(node); !verdict.allowed)
                return verdict;
        if (!is_lifted(from))
            return refuse("Take the wire off " + from.name + " first.");
        if (landing_of(world_, from.lug) != 0)
            return refuse("That wire is on another terminal already; `seat` puts it back on its own.");
        if (where_is(model_, from.name.substr(0, from.name.find('.'))) !=
            where_is(model_, to.name.substr(0, to.name.find('.'))))
            return refuse("The wire of " + from.name + " does not reach to " + to.name + ".");
        if (free_landing(world_) == 0)
            return refuse("Too many wires are off their places; put some back first.");
        return yes();
    }
    [[nodiscard]] Verdict plug() const {
        const furnace::Place& place = model_.places[static_cast<std::size_t>(action_.value)];
        if (string why = why_behind_a_door(place.where, in_); !why.empty())
            return refuse("The plug is " + why);
        const bool apart = is_unplugged(model_, world_, place.part);
        if (apart == (action_.verb == Verb::unplug))
            return refuse(apart ? "The plug is pulled already." : "The plug is in.");
        return yes();
    }

    [[nodiscard]] Verdict spot() const {
        if (action_.value == kNowhere)
            return yes();
        const instruments::SpotRow& row = instruments::spot_row(static_cast<Spot>(action_.value));
        string why = why_behind_a_door(row.where, in_);
        return why.empty() ? yes() : refuse(string(row.title) + " is " + why);
    }
    [[nodiscard]] Verdict keep() const {
        const auto all = instruments::displays(world_.bag);
        const instruments::NamedDisplay& one = all[static_cast<std::size_t>(action_.value)];
        return one.display->has(instruments::kOn)
                   ? yes()
                   : refuse("Nothing stands in the window of the " + string(one.name) + ".");
    }
    [[nodiscard]] Verdict shut_off() const {
        if (world_.handiwork.tagged != 0)
            return refuse("The tag hangs there already.");
        if (in_.gas_cock_open != 0 || (in_.disconnect_on != 0 && in_.breaker_on != 0))
            return refuse("Shut the gas cock and switch the disconnect off first; then the tag means it.");
        return yes();
    }

    const Site& site_;
    const furnace::Model& model_;
    const World& world_;
    const furnace::Inputs& in_;
    const Action& action_;
    const VerbSpec& spec_;
};

} // namespace

Verdict check(const Site& site, const World& world, const Action& action) {
    return Judge(site, world, action).verdict();
}

} // namespace lightoff::bench
