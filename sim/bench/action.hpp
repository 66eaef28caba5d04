// SPDX-License-Identifier: MIT
#pragma once
#include "bench/site.hpp"

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// What a person can do. An action is a small integer value; files and terminals hold its text,
/// "verb word word", with names and units, never indices.
namespace lightoff::bench {

/// The meaning of a verb never changes; new ones are added at the end.
enum class Verb : std::uint16_t {
    none = 0,
    wait,                ///< do nothing for a while; the furnace runs on
    thermostat_set,      ///< turn the thermostat's set point
    thermostat_mode,     ///< thermostat to heat or off
    thermostat_fan,      ///< thermostat's fan switch to on or automatic
    breaker,             ///< breaker in the panel
    disconnect,          ///< disconnect switch beside the furnace
    gas_cock,            ///< gas cock ahead of the furnace
    burner_door,         ///< burner compartment door on or off
    blower_door,         ///< blower compartment door on or off
    door_switch,         ///< hold the door switch in by hand, or let go
    filter,              ///< filter in its rack or out
    leads,               ///< multimeter: red lead, black lead on two test points
    leads_off,           ///< multimeter's leads taken off
    tape,                ///< tape the door switch in, or take the tape off
    look,                ///< look closely at a part
    take_off,            ///< take a part off or out
    put_back,            ///< and back
    clean,               ///< clean or clear a part
    tighten,             ///< make a part's screws and plugs fast
    adjust,              ///< turn a part's adjusting screw
    reset,               ///< press a part's button
    replace,             ///< fit a new part
    spin,                ///< turn a wheel by hand
    discharge,           ///< discharge a capacitor
    lift,                ///< take a wire off its terminal
    seat,                ///< push it back on its own terminal
    unplug,              ///< pull a plug with all its wires
    plug_in,             ///< and push it in again
    land,                ///< put a lifted wire on another terminal
    jumper,              ///< jumper lead between two test points
    jumper_off,          ///< jumper lead taken off
    small_breaker,       ///< lead with a small breaker in it, between two test points
    small_breaker_off,   ///< the same taken off
    small_breaker_reset, ///< its breaker pushed in again
    meter,               ///< multimeter's function
    clamp,               ///< clamp ammeter round a wire
    clamp_off,
    manometer_a,  ///< hose of the manometer's first port to a tap or tee
    manometer_b,  ///< and of its second
    probe_1,      ///< thermometer's first probe to a place
    probe_2,      ///< and its second
    analyser,     ///< combustion analyser's probe to a place
    sniff,        ///< combustible-gas detector to a place
    bubbles,      ///< leak-detection solution on a joint
    tester,       ///< non-contact voltage tester near a test point
    tachometer,   ///< tachometer at a wheel
    wattmeter,    ///< wattmeter in the furnace's supply, or out
    stopwatch,    ///< at the gas meter's dial
    keep,         ///< write down what an instrument shows
    appliances,   ///< the other gas appliances on or off
    shut_off,     ///< shut the appliance off and tag it
    tell,         ///< tell the customer something, and write it down
    stops_at,     ///< state the step at which the sequence stops
    strike,       ///< strike out a block of the suspects sheet, because of a reading
    strike_part,  ///< strike out a part, because of a reading
    unstrike,     ///< take a struck block back
    tag,          ///< write the tag of a part from the van: which reading condemns the old one
    cause,        ///< name the cause
    cause_behind, ///< name what brought the cause about
    as_found,     ///< tune-up report: value before anything was changed, from a reading
    as_left,      ///< tune-up report: value after, from a reading
    found,        ///< tune-up report: a condition found
    sign_off,     ///< the work order is finished
    set_right,    ///< lay, align or set a part as it should be
    zero,         ///< press the manometer's zero button
    meter_fuses,  ///< new fuses for the multimeter
    test_old,     ///< test a part on the bench that was taken out for a new one
    expect        ///< say what the next reading of an instrument will be, before it is taken
};

/// Integer arguments in fixed units: the words of a verb in the order of VerbSpec::words. A verb of one word
/// has it in `value`; a verb of two has the first in `target`.
struct Action {
    Verb verb = Verb::none;
    std::uint16_t target = 0;
    std::int32_t value = 0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("verb", "", self.verb);
        visit("target", "", self.target);
        visit("value", "", self.value);
    }
    friend bool operator==(const Action&, const Action&) = default;
};

/// What a word of an action can be, and the integer that it stands for.
enum class Word : std::uint8_t {
    none,
    seconds,     ///< 1 s to 24 h: seconds
    temperature, ///< 40 F to 95 F: millikelvin
    on_off,      ///< 0, 1
    heat_off,
    on_auto,
    point,         ///< test point: node
    terminal,      ///< furnace::Wiring::terminals
    plug,          ///< furnace::Model::places
    wire,          ///< element of the netlist
    part,          ///< faults::Catalogue::parts
    turns,         ///< -5 to +5 turns: eighths of a turn clockwise
    wheel,         ///< Wheel
    function,      ///< instruments::Function
    pressure_spot, ///< instruments::Spot that takes it, or kNowhere ("off"); the same for those below
    temperature_spot,
    flue_spot,
    sniff_spot,
    solution_spot,
    tachometer_spot,
    instrument, ///< a window: place in instruments::displays
    reading,    ///< number of a reading in the notebook, counted from 1; 0: none
    step,       ///< steps passed, 0 to 5; 6: the sequence runs through
    block,      ///< faults::Group
    fault,      ///< faults::Catalogue::faults
    line,       ///< of the tune-up report: ReportLine
    topic,      ///< Topic
    expected    ///< -2,000,000 to 2,000,000 in the window's plain unit: thousandths; kExpectsOverload: "OL"
};

inline constexpr std::int32_t kNowhere = -1;
inline constexpr std::int32_t kExpectsOverload = 2147483647;

enum class Wheel : std::uint8_t { none, blower, inducer };

/// What a customer can be told.
enum class Topic : std::uint8_t { unsafe, repaired, advice, nothing_wrong };

/// Lines of the tune-up report that take a measured value.
enum class ReportLine : std::uint8_t {
    line_voltage,
    control_voltage,
    inlet_static,
    inlet_flowing,
    manifold,
    firing_rate,
    rise,
    external_static,
    draft,
    flame_current,
    igniter_resistance,
    blower_current,
    blower_capacitor,
    inducer_current,
    oxygen,
    carbon_monoxide,
    ambient_carbon_monoxide
};

/// One row for each verb: its name in text, what it takes, how long it keeps the hands busy.
struct VerbSpec {
    Verb verb = Verb::none;
    std::string_view name;
    std::array<Word, 2> words{};
    std::int32_t ticks = 0; ///< elapsed time at the furnace (teaching value); services have their own
    int hands = 0;          ///< that it needs free at the furnace
    std::string_view help;

    [[nodiscard]] std::size_t word_count() const {
        return words[0] == Word::none ? 0 : words[1] == Word::none ? 1 : 2;
    }
};

/// All verbs, in the order of their numbers.
std::span<const VerbSpec> verbs();
const VerbSpec& spec_of(Verb verb);

/// Whether it only says something or writes it down: neither furnace nor instruments feel it.
bool is_paper(Verb verb);
/// Whether it works a switch of the furnace's own wiring: in the supply, at the thermostat, in the door's
/// way.
bool works_a_switch(Verb verb);

/// The kind of service that a verb does to a part; none for the other verbs.
std::optional<faults::ServiceKind> service_of(Verb verb);
/// The same with the part.
std::optional<faults::ServiceRef> service_of(const Action& action);

/// A name that a word may be, and the integer that it stands for.
struct Choice {
    std::string name;
    std::int32_t value = 0;
};
/// Every name that a word may be; empty for numbers, which have a range instead.
std::vector<Choice> choices(const Site& site, Word word);

/// Whether every word of an action stands for something at this site.
bool is_known(const Site& site, const Action& action);

/// Text of a Word::expected: "24", "-0.95", "OL".
std::string expected_text(std::int32_t thousandths);

/// Canonical text of an action; parse_action gives the same action back.
std::string format_action(const Site& site, const Action& action);

/// Reads "verb word word". Throws std::invalid_argument that says what was found and what is allowed.
Action parse_action(const Site& site, std::string_view text);

} // namespace lightoff::bench
