// SPDX-License-Identifier: MIT
#include "gui/explore/hands_words.hpp"

#include "gui/canvas/lettering.hpp"
#include "units/convert.hpp"

#include <array>
#include <cmath>
#include <string_view>

namespace lightoff::explore {
namespace {

using bench::Verb;

struct Wording {
    Verb verb;
    std::string_view on, off;
};

constexpr std::array kWordings{
    Wording{Verb::thermostat_mode, "turning the thermostat to heat", "turning the thermostat off"},
    Wording{Verb::thermostat_fan, "turning the fan switch on", "turning the fan switch to auto"},
    Wording{Verb::breaker, "closing the breaker", "opening the breaker"},
    Wording{Verb::disconnect, "closing the disconnect", "opening the disconnect"},
    Wording{Verb::gas_cock, "opening the gas cock", "shutting the gas cock"},
    Wording{Verb::burner_door, "putting the burner door on", "taking the burner door off"},
    Wording{Verb::blower_door, "putting the blower door on", "taking the blower door off"},
    Wording{Verb::door_switch, "holding the door switch in", "letting go of the door switch"},
    Wording{Verb::filter, "putting the filter in", "taking the filter out"},
};

} // namespace

std::string hands_words(const bench::Site& site, const bench::Action& action) {
    if (action.verb == Verb::thermostat_set) {
        const double kelvin = 0.001 * static_cast<double>(action.value);
        return "turning the thermostat to " + canvas::figure(std::round(units::k_to_fahrenheit(kelvin)), 0) +
               " °F";
    }
    for (const Wording& wording : kWordings) {
        if (wording.verb == action.verb) {
            return std::string(action.value != 0 ? wording.on : wording.off);
        }
    }
    return bench::format_action(site, action);
}

} // namespace lightoff::explore
