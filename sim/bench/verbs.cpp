// SPDX-License-Identifier: MIT
#include "bench/action.hpp"

#include <array>
#include <stdexcept>

namespace lightoff::bench {
namespace {

constexpr std::int32_t seconds(int s) {
    return s * 20;
}

using W = Word;

constexpr std::array kVerbs{
    VerbSpec{Verb::wait, "wait", {W::seconds}, 0, 0, "let time pass: wait 30s"},
    VerbSpec{Verb::thermostat_set,
             "thermostat-set",
             {W::temperature},
             seconds(2),
             0,
             "turn the set point: thermostat-set 72F"},
    VerbSpec{Verb::thermostat_mode, "thermostat-mode", {W::heat_off}, seconds(2), 0, "thermostat-mode heat"},
    VerbSpec{Verb::thermostat_fan, "thermostat-fan", {W::on_auto}, seconds(2), 0, "thermostat-fan auto"},
    VerbSpec{Verb::breaker, "breaker", {W::on_off}, seconds(5), 0, "breaker in the panel: breaker off"},
    VerbSpec{Verb::disconnect,
             "disconnect",
             {W::on_off},
             seconds(1),
             1,
             "switch beside the furnace: disconnect off"},
    VerbSpec{Verb::gas_cock, "gas-cock", {W::on_off}, seconds(2), 1, "gas-cock on (open), gas-cock off"},
    VerbSpec{Verb::burner_door, "burner-door", {W::on_off}, seconds(5), 1, "burner-door on, burner-door off"},
    VerbSpec{Verb::blower_door, "blower-door", {W::on_off}, seconds(5), 1, "blower-door on, blower-door off"},
    VerbSpec{Verb::door_switch,
             "door-switch",
             {W::on_off},
             seconds(1),
             1,
             "hold the door switch in with one hand: door-switch on; let go: door-switch off"},
    VerbSpec{
        Verb::filter, "filter", {W::on_off}, seconds(10), 1, "filter on (in its rack), filter off (out)"},
    VerbSpec{Verb::leads,
             "leads",
             {W::point, W::point},
             seconds(4),
             1,
             "multimeter, red lead then black: leads board.R board.C"},
    VerbSpec{Verb::leads_off, "leads-off", {}, seconds(2), 1, "take the multimeter's leads off"},
    VerbSpec{Verb::tape,
             "tape",
             {W::on_off},
             seconds(8),
             2,
             "tape the door switch in: tape on; take the tape off: tape off"},
    VerbSpec{Verb::look, "look", {W::part}, seconds(5), 0, "look closely at a part: look filter"},
    VerbSpec{Verb::take_off, "take-off", {W::part}, seconds(30), 2, "take a part off or out"},
    VerbSpec{Verb::put_back, "put-back", {W::part}, seconds(30), 2, "put it back"},
    VerbSpec{Verb::clean, "clean", {W::part}, seconds(60), 2, "clean or clear a part"},
    VerbSpec{Verb::tighten, "tighten", {W::part}, seconds(30), 2, "make its screws and plugs fast"},
    VerbSpec{Verb::adjust,
             "adjust",
             {W::part, W::turns},
             seconds(20),
             2,
             "turn its screw, clockwise is +, in eighths of a turn: adjust PART +0.5"},
    VerbSpec{Verb::reset, "reset", {W::part}, seconds(3), 1, "press its button"},
    VerbSpec{Verb::replace, "replace", {W::part}, seconds(300), 2, "fit a new part"},
    VerbSpec{Verb::spin, "spin", {W::wheel}, seconds(3), 1, "turn a wheel by hand: spin blower"},
    VerbSpec{
        Verb::discharge, "discharge", {W::part}, seconds(10), 2, "discharge a capacitor through a resistor"},
    VerbSpec{Verb::lift, "lift", {W::terminal}, seconds(8), 2, "take a wire off its terminal: lift board.W"},
    VerbSpec{Verb::seat, "seat", {W::terminal}, seconds(8), 2, "push it on again: seat board.W"},
    VerbSpec{Verb::unplug, "unplug", {W::plug}, seconds(5), 2, "pull a plug with all its wires"},
    VerbSpec{Verb::plug_in, "plug-in", {W::plug}, seconds(5), 2, "push it in again"},
    VerbSpec{Verb::land,
             "land",
             {W::terminal, W::terminal},
             seconds(12),
             2,
             "put the wire lifted off the first terminal on the second"},
    VerbSpec{Verb::jumper,
             "jumper",
             {W::point, W::point},
             seconds(6),
             2,
             "jumper lead between two test points: jumper board.R board.W"},
    VerbSpec{Verb::jumper_off, "jumper-off", {}, seconds(3), 1, "take the jumper lead off"},
    VerbSpec{Verb::small_breaker,
             "small-breaker",
             {W::point, W::point},
             seconds(8),
             2,
             "lead with a small breaker in it, in a fuse's place"},
    VerbSpec{Verb::small_breaker_off, "small-breaker-off", {}, seconds(3), 1, "take it off"},
    VerbSpec{
        Verb::small_breaker_reset, "small-breaker-reset", {}, seconds(2), 1, "push its breaker in again"},
    VerbSpec{Verb::meter, "meter", {W::function}, seconds(2), 1, "multimeter's function: meter dc-microamps"},
    VerbSpec{Verb::clamp, "clamp", {W::wire}, seconds(5), 1, "clamp ammeter round a wire"},
    VerbSpec{Verb::clamp_off, "clamp-off", {}, seconds(2), 1, "clamp ammeter off"},
    VerbSpec{Verb::manometer_a,
             "manometer-a",
             {W::pressure_spot},
             seconds(30),
             2,
             "hose of the manometer's first port to a tap or tee; room: open to the room"},
    VerbSpec{Verb::manometer_b, "manometer-b", {W::pressure_spot}, seconds(30), 2, "hose of its second port"},
    VerbSpec{Verb::probe_1,
             "probe-1",
             {W::temperature_spot},
             seconds(15),
             1,
             "thermometer's first probe to a place"},
    VerbSpec{Verb::probe_2, "probe-2", {W::temperature_spot}, seconds(15), 1, "its second probe"},
    VerbSpec{Verb::analyser, "analyser", {W::flue_spot}, seconds(20), 1, "combustion analyser's probe"},
    VerbSpec{Verb::sniff, "sniff", {W::sniff_spot}, seconds(5), 1, "combustible-gas detector to a place"},
    VerbSpec{
        Verb::bubbles, "bubbles", {W::solution_spot}, seconds(15), 1, "leak-detection solution on a joint"},
    VerbSpec{
        Verb::tester, "tester", {W::point}, seconds(3), 1, "non-contact voltage tester near a test point"},
    VerbSpec{Verb::tachometer, "tachometer", {W::tachometer_spot}, seconds(20), 1, "tachometer at a wheel"},
    VerbSpec{Verb::wattmeter, "wattmeter", {W::on_off}, seconds(30), 2, "wattmeter in the furnace's supply"},
    VerbSpec{Verb::stopwatch,
             "stopwatch",
             {W::on_off},
             seconds(10),
             1,
             "at the gas meter, from one pass of the dial's hand to the next: stopwatch on"},
    VerbSpec{
        Verb::keep, "keep", {W::instrument}, 0, 0, "write down what an instrument shows: keep multimeter"},
    VerbSpec{
        Verb::appliances, "appliances", {W::on_off}, seconds(60), 0, "the other gas appliances on or off"},
    VerbSpec{Verb::shut_off, "shut-off", {}, seconds(60), 1, "hang the tag on an appliance that is shut off"},
    VerbSpec{Verb::tell, "tell", {W::topic}, seconds(60), 0, "tell the customer, and write it down"},
    VerbSpec{Verb::stops_at,
             "stops-at",
             {W::step},
             0,
             0,
             "how many steps the sequence passes before it stops, 0 to 5; 6 if it runs through"},
    VerbSpec{Verb::strike,
             "strike",
             {W::block, W::reading},
             0,
             0,
             "strike out a block because of a reading: strike power 2"},
    VerbSpec{Verb::strike_part,
             "strike-part",
             {W::part, W::reading},
             0,
             0,
             "strike out a part because of a reading"},
    VerbSpec{Verb::unstrike, "unstrike", {W::block}, 0, 0, "take a struck block back"},
    VerbSpec{Verb::tag,
             "tag",
             {W::part, W::reading},
             0,
             0,
             "tag of a part from the van: the reading that condemns the old one, 0 for none"},
    VerbSpec{Verb::cause, "cause", {W::fault}, 0, 0, "name the cause"},
    VerbSpec{Verb::cause_behind, "cause-behind", {W::fault}, 0, 0, "name what brought the cause about"},
    VerbSpec{Verb::as_found, "as-found", {W::line, W::reading}, 0, 0, "report a value as it was found"},
    VerbSpec{Verb::as_left, "as-left", {W::line, W::reading}, 0, 0, "report a value as it was left"},
    VerbSpec{Verb::found, "found", {W::fault}, 0, 0, "report a condition found at a tune-up"},
    VerbSpec{Verb::sign_off, "sign-off", {}, 0, 0, "sign the work order: the call is finished"},
    VerbSpec{Verb::set_right,
             "set-right",
             {W::part},
             seconds(60),
             2,
             "lay, align or set a part as it should be: set-right pressure_hose"},
    VerbSpec{Verb::zero, "zero", {}, seconds(2), 1, "press the manometer's zero button"},
    VerbSpec{
        Verb::meter_fuses, "meter-fuses", {}, seconds(120), 2, "new fuses for the multimeter, leads off"},
    VerbSpec{Verb::test_old,
             "test-old",
             {W::part},
             seconds(60),
             2,
             "test a part on the bench that a new one has replaced: test-old igniter"},
    VerbSpec{Verb::expect,
             "expect",
             {W::instrument, W::expected},
             0,
             0,
             "say what an instrument's next reading will be, before it is taken: expect multimeter 24"},
};

constexpr bool in_order() {
    for (std::size_t i = 0; i < kVerbs.size(); ++i)
        if (static_cast<std::size_t>(kVerbs[i].verb) != i + 1)
            return false;
    return true;
}
static_assert(in_order(), "a verb's row stands at its number");

} // namespace

std::span<const VerbSpec> verbs() {
    return kVerbs;
}

const VerbSpec& spec_of(Verb verb) {
    const auto number = static_cast<std::size_t>(verb);
    if (number == 0 || number > kVerbs.size())
        throw std::invalid_argument("no verb has the number " + std::to_string(number));
    return kVerbs[number - 1];
}

bool is_paper(Verb verb) {
    switch (verb) {
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
        return true;
    default:
        return false;
    }
}

bool works_a_switch(Verb verb) {
    switch (verb) {
    case Verb::thermostat_set:
    case Verb::thermostat_mode:
    case Verb::thermostat_fan:
    case Verb::breaker:
    case Verb::disconnect:
    case Verb::blower_door:
    case Verb::door_switch:
    case Verb::tape:
        return true;
    default:
        return false;
    }
}

std::optional<faults::ServiceKind> service_of(Verb verb) {
    switch (verb) {
    case Verb::take_off:
        return faults::ServiceKind::take_off;
    case Verb::put_back:
        return faults::ServiceKind::put_back;
    case Verb::clean:
        return faults::ServiceKind::clean;
    case Verb::tighten:
        return faults::ServiceKind::tighten;
    case Verb::adjust:
    case Verb::set_right:
        return faults::ServiceKind::adjust;
    case Verb::reset:
        return faults::ServiceKind::reset;
    case Verb::replace:
        return faults::ServiceKind::replace;
    default:
        return std::nullopt;
    }
}

std::optional<faults::ServiceRef> service_of(const Action& action) {
    const std::optional<faults::ServiceKind> kind = service_of(action.verb);
    if (!kind)
        return std::nullopt;
    const bool part_first = spec_of(action.verb).word_count() == 2; // adjust PART TURNS
    return faults::ServiceRef{part_first ? static_cast<int>(action.target) : action.value, *kind};
}

} // namespace lightoff::bench
