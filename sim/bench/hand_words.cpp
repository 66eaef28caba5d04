// SPDX-License-Identifier: MIT
#include "bench/hand_words.hpp"

#include "bench/action.hpp"

namespace lightoff::bench {
namespace {

std::string either(bool first, const char* if_so, const char* if_not) {
    return first ? if_so : if_not;
}

std::string look_in_words(const Site& site, const LookedAt& looked) {
    if (looked.part < 0)
        return {};
    const faults::Part& part = site.catalogue.parts[static_cast<std::size_t>(looked.part)];
    if (looked.old) {
        const std::size_t sights = part.look.sights.size() + part.bench_test.sights.size();
        const std::size_t values = part.bench_test.elements.size() + part.bench_test.pairs.size();
        const std::vector<int> bands(looked.band.begin(),
                                     looked.band.begin() + static_cast<std::ptrdiff_t>(sights));
        return part.title + ", the old one: " +
               tested_in_words(
                   site, looked.part, bands,
                   {looked.value.begin(), looked.value.begin() + static_cast<std::ptrdiff_t>(values)}) +
               ".";
    }
    std::string words;
    for (std::size_t i = 0; i < part.look.sights.size() && i < kMaxSights; ++i)
        words += (words.empty() ? "" : "; ") + part.look.sights[i].bands[looked.band[i]].words;
    return part.title + ": " + (words.empty() ? "nothing about it catches the eye" : words) + ".";
}

/// Eighths of a turn: "0.5 turns clockwise".
std::string turns_in_words(std::int32_t eighths) {
    const std::int32_t size = eighths < 0 ? -eighths : eighths;
    std::string text = std::to_string(size * 125); // thousandths
    text.insert(0, text.size() < 4 ? 4 - text.size() : 0, '0');
    text.insert(text.size() - 3, ".");
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.')
        text.pop_back();
    return text + (size == 8 ? " turn " : " turns ") + (eighths > 0 ? "clockwise" : "counter-clockwise");
}

std::string name_in(const Site& site, Word word, std::int32_t value) {
    for (const Choice& choice : choices(site, word))
        if (choice.value == value)
            return choice.name;
    return "?";
}

} // namespace

std::string in_sentence(const faults::Part& part) {
    std::string words = part.title;
    if (!words.empty() && words[0] >= 'A' && words[0] <= 'Z')
        words[0] = static_cast<char>(words[0] - 'A' + 'a');
    return words;
}

const std::string& part_title(const Site& site, int part) {
    return site.catalogue.parts[static_cast<std::size_t>(part)].title;
}

std::string done_in_words(const Site& site, const Percept& percept) {
    const Action& done = percept.hands.last;
    const bool on = done.value != 0;
    const auto part = [&] { return part_title(site, done.value); };
    const auto terminal = [&](std::int32_t i) { return name_in(site, Word::terminal, i); };
    switch (done.verb) {
    case Verb::look:
    case Verb::test_old:
        return look_in_words(site, percept.looked_at);
    case Verb::thermostat_set:
        return "The set point is turned.";
    case Verb::thermostat_mode:
        return "Thermostat on " + either(on, "heat.", "off.");
    case Verb::thermostat_fan:
        return "Thermostat's fan switch on " + either(on, "on.", "auto.");
    case Verb::breaker:
        return "Breaker " + either(on, "on.", "off.");
    case Verb::disconnect:
        return "Disconnect switch " + either(on, "on.", "off.");
    case Verb::gas_cock:
        return "Gas cock " + either(on, "open.", "shut.");
    case Verb::burner_door:
        return either(on, "Burner door on.", "Burner door off; the burner compartment lies open.");
    case Verb::blower_door:
        return either(on, "Blower door on.", "Blower door off; the blower compartment lies open.");
    case Verb::door_switch:
        return either(on, "One hand holds the door switch in.", "The door switch is let go.");
    case Verb::tape:
        return either(on, "Tape holds the door switch in.", "The tape is off the door switch.");
    case Verb::filter:
        return either(on, "The filter is in its rack.", "The filter is out.");
    case Verb::take_off:
        return part() + ": off.";
    case Verb::put_back:
        return part() + ": back in place.";
    case Verb::clean:
        return part() + ": cleaned.";
    case Verb::tighten:
        return part() + ": made fast.";
    case Verb::adjust:
        return part_title(site, done.target) + ": screw turned " + turns_in_words(done.value) + ".";
    case Verb::set_right:
        return part() + ": set right.";
    case Verb::reset:
        return part() + ": button pressed.";
    case Verb::replace:
        return part() + ": a new one is in.";
    case Verb::spin:
        return "You give the " +
               either(done.value == static_cast<std::int32_t>(Wheel::blower), "blower wheel", "inducer") +
               " a spin.";
    case Verb::discharge:
        return part() + ": bridged with the resistor.";
    case Verb::lift:
        return "The wire of " + terminal(done.value) + " is off and hangs free.";
    case Verb::seat:
        return "The wire of " + terminal(done.value) + " is on its terminal.";
    case Verb::unplug:
        return "The plug " + name_in(site, Word::plug, done.value) + " is pulled.";
    case Verb::plug_in:
        return "The plug " + name_in(site, Word::plug, done.value) + " is in.";
    case Verb::land:
        return "The wire of " + terminal(done.target) + " is on " + terminal(done.value) + ".";
    case Verb::jumper:
        return "The jumper lead is on.";
    case Verb::jumper_off:
        return "The jumper lead is off.";
    case Verb::small_breaker:
        return "The lead with the small breaker is on.";
    case Verb::small_breaker_off:
        return "The lead with the small breaker is off.";
    case Verb::small_breaker_reset:
        return "The small breaker is pushed in.";
    case Verb::meter_fuses:
        return "The multimeter has new fuses.";
    case Verb::appliances:
        return "The other gas appliances are " + either(on, "on.", "off.");
    case Verb::shut_off:
        return "The tag hangs on the furnace.";
    case Verb::tell:
        return "The customer has heard it and signed for it.";
    case Verb::sign_off:
        return "The work order is signed.";
    default:
        return {};
    }
}

} // namespace lightoff::bench
