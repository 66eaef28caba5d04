// SPDX-License-Identifier: MIT
#pragma once
#include "bench/site.hpp"

#include <cstdint>
#include <span>
#include <string>
#include <string_view>

/// What a person can do. An action is a small integer value; files and terminals hold its text,
/// "verb argument argument", with names and units, never indices.
namespace lightoff::bench {

/// The meaning of a verb never changes; new ones are added at the end.
enum class Verb : std::uint16_t {
    none = 0,
    wait,            ///< do nothing for a while; the furnace runs on
    thermostat_set,  ///< turn the thermostat's set point
    thermostat_mode, ///< thermostat to heat or off
    thermostat_fan,  ///< thermostat's fan switch to on or automatic
    breaker,         ///< breaker in the panel
    disconnect,      ///< disconnect switch beside the furnace
    gas_cock,        ///< gas cock ahead of the furnace
    burner_door,     ///< burner compartment door on or off
    blower_door,     ///< blower compartment door on or off
    door_switch,     ///< hold the door switch in by hand, or let go
    filter,          ///< filter in its rack or out
    leads,           ///< voltmeter: red lead, black lead on two test points
    leads_off,       ///< voltmeter's leads taken off
};

/// Integer arguments in fixed units: millikelvin, seconds, test point, 0 or 1 for off or on.
struct Action {
    Verb verb = Verb::none;
    std::uint16_t target = 0; ///< first test point, where the verb has one
    std::int32_t value = 0;   ///< the verb's number: see VerbSpec::argument

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("verb", "", self.verb);
        visit("target", "", self.target);
        visit("value", "", self.value);
    }
    friend bool operator==(const Action&, const Action&) = default;
};

enum class Argument { none, seconds, temperature, on_off, heat_off, on_auto, two_points };

/// One row for each verb: its name in text, what it takes, how long it keeps the hands busy.
struct VerbSpec {
    Verb verb;
    std::string_view name;
    Argument argument;
    std::int32_t duration_ticks; ///< elapsed time at the furnace (teaching value)
    std::string_view help;
};

/// All verbs, in the order of their numbers.
std::span<const VerbSpec> verbs();
const VerbSpec& spec_of(Verb verb);

/// Canonical text of an action; parse_action gives the same action back.
std::string format_action(const Site& site, const Action& action);

/// Reads "verb arguments". Throws std::invalid_argument that says what was found and what is allowed.
Action parse_action(const Site& site, std::string_view text);

} // namespace lightoff::bench
