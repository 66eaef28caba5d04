// SPDX-License-Identifier: MIT
#include "gui/instruments/faces.hpp"

#include "bench/access.hpp"
#include "bench/offers.hpp"
#include "gui/instruments/draw.hpp"
#include "gui/instruments/places.hpp"
#include "units/convert.hpp"

#include <algorithm>
#include <array>

namespace lightoff::faces {
namespace {

using bench::Verb;
using instruments::Display;
using instruments::Instrument;
using instruments::Spot;
using view::Wanted;

constexpr std::array<Title, kInstruments> kTitles{{
    {"Multimeter", "volts, ohms, capacitance; amps and microamps in series"},
    {"Clamp ammeter", "amps through one wire, nothing opened"},
    {"Wattmeter", "in the furnace's supply"},
    {"Tachometer", "turns of a wheel or shaft, by a mark on it"},
    {"Manometer", "first port less second port"},
    {"Thermometer", "two probes and their difference"},
    {"Combustion analyser", "draws a sample; wait until it has come through the hose"},
    {"Gas detector", "gas in air; its ticks quicken with it"},
    {"Leak solution", "brushed on a joint under pressure"},
    {"Voltage tester", "glows near live line voltage; proves nothing dead"},
    {"Meter dial and stopwatch", "the gas meter's test dial, from pass to pass of its hand"},
    {"CO alarm", "worn; the air of the room where the furnace stands"},
}};

const Display& display_of(const Face& face, std::size_t window) {
    return face.known.percept.instruments.window[window];
}

/// Windows of an instrument, by their place among all.
std::vector<std::size_t> windows_of(Instrument instrument) {
    const auto all = instruments::displays(instruments::Bag{});
    std::vector<std::size_t> own;
    for (std::size_t i = 0; i < all.size(); ++i)
        if (all[i].instrument == instrument)
            own.push_back(i);
    return own;
}

/// "range 60.00 V": the highest number of the range it has chosen.
std::string range_words(const Display& display) {
    const instruments::Range& range = instruments::quantity_row(display.quantity).ranges[display.range];
    const double top = static_cast<double>(range.counts) * instruments::power_of_ten(range.exponent);
    return "range " + canvas::figure(top, std::max(0, -range.exponent)) + " " +
           std::string(instruments::unit_row(range.unit).written);
}

/// The number of the last reading that this window gave; 0 if what stands in it is none yet.
std::size_t reading_of(const Face& face, std::size_t window) {
    const Display& display = display_of(face, window);
    if (display.ticks_settled < instruments::kSettledTicks)
        return 0;
    const std::uint64_t since =
        face.known.percept.tick - std::min<std::uint64_t>(face.known.percept.tick, display.ticks_settled);
    for (std::size_t i = face.known.readings.size(); i-- > 0;)
        if (face.known.readings[i].window == static_cast<int>(window))
            return face.known.readings[i].tick >= since ? i + 1 : 0;
    return 0;
}

/// What was said beforehand of a reading, or of the next one (0); nullptr if nothing was.
const bench::Expectation* expectation_of(const Face& face, std::size_t window, std::size_t reading) {
    for (const bench::Expectation& one : face.known.expectations)
        if (one.window == static_cast<int>(window) && one.reading == static_cast<int>(reading))
            return &one;
    return nullptr;
}

std::string state_of(const Face& face, std::size_t window) {
    const Display& display = display_of(face, window);
    const bench::Expectation* next = expectation_of(face, window, 0);
    const std::string awaited = next == nullptr ? "" : "you expect " + bench::expected_text(next->value);
    if (!display.has(instruments::kOn))
        return awaited;
    const std::string behind = awaited.empty() ? "" : ", " + awaited;
    if (const std::size_t number = reading_of(face, window); number != 0) {
        const bench::Expectation* said = expectation_of(face, window, number);
        return "steady: reading " + std::to_string(number) +
               (said == nullptr ? behind : ", you expected " + bench::expected_text(said->value));
    }
    return (display.ticks_settled >= instruments::kSettledTicks ? "steady for 2 s" : "not steady yet") +
           behind;
}

std::string flag_words(const Display& display) {
    using namespace instruments;
    if (display.has(kAlarm))
        return "ALARM";
    if (display.has(kBeep))
        return display.quantity == Quantity::glow ? "" : "beeps";
    return display.has(kNoisy) ? "the number jumps" : "";
}

/// `settles`: whether a number that stands counts by itself.
Pane pane_of(const Face& face, std::size_t window, std::string label, bool settles = true) {
    const Display& display = display_of(face, window);
    Pane pane;
    pane.label = std::move(label);
    pane.figure = sheet::figure_of(display);
    if (face.known.units == view::Units::si && display.has(instruments::kOn)) {
        const sheet::Figure si = sheet::figure_in(display, view::Units::si);
        pane.in_si = si.unit == pane.figure.unit ? "" : "= " + si.text();
    }
    pane.beep = flag_words(display);
    pane.alarm = display.has(instruments::kAlarm);
    if (settles) {
        pane.settled = display.has(instruments::kOn) ? static_cast<float>(display.ticks_settled) /
                                                           static_cast<float>(instruments::kSettledTicks)
                                                     : 0.0F;
        pane.state = state_of(face, window);
    } else if (display.has(instruments::kOn)) {
        pane.state = "a reading when kept";
    }
    return pane;
}

void ask(const Face& face, std::string line) {
    face.wanted.lines.push_back(std::move(line));
}
void ask(const Face& face, Verb verb) {
    ask(face, std::string(bench::spec_of(verb).name));
}
void ask(const Face& face, Verb verb, int value) {
    ask(face, line_for(face.known, verb, value));
}

std::string keep_line(const Face& face, std::size_t window) {
    return line_for(face.known, Verb::keep, static_cast<int>(window));
}

/// Buttons that write down what stands in the windows, behind `more` of the face's own. The index of one of
/// those if it was pressed.
std::optional<std::size_t> buttons_and_keep(const Face& face, std::vector<std::string> more,
                                            const std::vector<std::pair<std::size_t, std::string>>& keeps) {
    const std::size_t own = more.size();
    for (const auto& [window, words] : keeps)
        more.push_back(words);
    more.emplace_back("Expect …");
    face.column.gap(4);
    const auto pressed = face.column.buttons(more);
    if (!pressed || *pressed < own)
        return pressed;
    if (*pressed - own < keeps.size())
        ask(face, keep_line(face, keeps[*pressed - own].first));
    else
        face.wanted.begun = expect_line(face.known, keeps.front().first);
    return {};
}

std::string spot_title(Spot spot) {
    return std::string(instruments::spot_row(spot).title);
}

/// A connection whose places are those of a verb, with its list when it lies open. Under the pointer its
/// place is shown wherever it is drawn.
void connection(const Face& face, Verb verb, Connection one, int at) {
    one.id = std::string(bench::spec_of(verb).name);
    one.open = face.view.open == one.id;
    one.hand = one.open ? "close" : one.placed ? "move" : "put to …";
    const sheet::Touch touch = draw_connection(face.column, one);
    if (touch.hovered && one.placed)
        face.wanted.hover = view::Thing{bench::spec_of(verb).words[0], at};
    if (touch.pressed) {
        face.view.open = one.open ? "" : one.id;
        face.view.search.clear();
        return;
    }
    if (!one.open)
        return;
    face.column.indent(16);
    const std::vector<sheet::Entry> places = places_of(face.known, verb, at);
    if (const auto picked = sheet::pick_list(face.column, one.id, places, face.view.search)) {
        ask(face, verb, places[*picked].value);
        face.view.open.clear();
    }
    face.column.indent(-16);
    face.column.gap(8);
}

void spot_connection(const Face& face, Verb verb, const char* letter, const std::string& what, bool on,
                     Spot spot) {
    const bool hangs = !on || spot == Spot::room;
    connection(face, verb,
               {"", letter,
                what + (!on                  ? " is on nothing"
                        : spot == Spot::room ? " is open to the room"
                                             : " at " + spot_title(spot)),
                false, !hangs, false},
               on ? static_cast<int>(spot) : bench::kNowhere);
}

// ---- multimeter ----

std::string lead_words(const Face& face, Wanted::Lead lead, int node) {
    const std::string colour = lead == Wanted::Lead::red ? "red" : "black";
    if (face.view.in_hand == lead)
        return colour + " in your hand: point at a place, or choose one";
    const int waits = lead == Wanted::Lead::red ? face.view.red_waits : face.view.black_waits;
    if (waits >= 0)
        return colour + " on " + bench::point_name(face.known.site->model, waits) +
               ", waits for the other lead";
    const auto& setting = face.bag.multimeter.setting;
    return setting.red == setting.black ? colour + " on nothing"
                                        : colour + " on " + bench::point_name(face.known.site->model, node);
}

void meter_lead(const Face& face, Wanted::Lead lead, int node) {
    const bool red = lead == Wanted::Lead::red;
    const auto& setting = face.bag.multimeter.setting;
    const std::string id = red ? "red" : "black";
    const bool open = face.view.open == id;
    const bool placed = setting.red != setting.black && face.view.in_hand != lead;
    const sheet::Touch touch =
        draw_connection(face.column, {id, red ? "R" : "B", lead_words(face, lead, node), red, placed, open,
                                      open ? "close" : "pick up"});
    if (touch.hovered && placed)
        face.wanted.hover = view::Thing{bench::Word::point, node};
    if (touch.pressed) {
        face.view.open = open ? "" : id;
        face.view.search.clear();
        if (!open) {
            face.wanted.lead = lead;
            face.wanted.lead_point = -1;
        }
        return;
    }
    if (!open)
        return;
    face.column.indent(16);
    const std::vector<sheet::Entry> points = points_of(face.known, setting.red == setting.black ? -1 : node);
    if (const auto picked = sheet::pick_list(face.column, id, points, face.view.search)) {
        face.wanted.lead = lead;
        face.wanted.lead_point = points[*picked].value;
        face.view.open.clear();
    }
    face.column.indent(-16);
    face.column.gap(8);
}

/// All functions as detents of one knob.
void meter_functions(const Face& face) {
    face.column.gap(4);
    std::vector<std::string> words;
    for (const instruments::FunctionRow& row : instruments::functions())
        words.emplace_back(row.title);
    const auto now = static_cast<std::size_t>(face.bag.multimeter.setting.function);
    if (const auto pressed = draw_knob(face.column, words, now))
        ask(face, Verb::meter, static_cast<int>(*pressed));
}

void multimeter(const Face& face) {
    const instruments::MultimeterSetting& setting = face.bag.multimeter.setting;
    const std::size_t window = windows_of(Instrument::multimeter)[0];
    const Display& display = display_of(face, window);
    const bool on_something = setting.red != setting.black;
    Pane pane =
        pane_of(face, window, std::string(instruments::function_row(setting.function).title), on_something);
    if (display.has(instruments::kOn) && !display.has(instruments::kOverload))
        pane.mode = range_words(display);
    draw_window(face.column, pane);
    meter_lead(face, Wanted::Lead::red, setting.red);
    meter_lead(face, Wanted::Lead::black, setting.black);
    meter_functions(face);
    const auto pressed = buttons_and_keep(face, {"Leads off", "New fuses in the meter"},
                                          {{window, "Keep the reading##meter"}});
    if (pressed)
        ask(face, *pressed == 0 ? Verb::leads_off : Verb::meter_fuses);
}

// ---- the others ----

std::string wire_name(const Face& face, int element) {
    return face.known.site->model.wiring.netlist.element_names[static_cast<std::size_t>(element)];
}

void clamp(const Face& face) {
    const instruments::ClampSetting& setting = face.bag.clamp.setting;
    const std::size_t window = windows_of(Instrument::clamp)[0];
    draw_window(face.column, pane_of(face, window, "AC amps"));
    const bool on = setting.on != 0 && setting.element >= 0;
    connection(face, Verb::clamp,
               {"", "J", on ? "jaw round " + wire_name(face, setting.element) : "jaw round nothing", false,
                on, false},
               on ? setting.element : -1);
    if (buttons_and_keep(face, {"Clamp off"}, {{window, "Keep the reading##clamp"}}))
        ask(face, Verb::clamp_off);
}

void wattmeter(const Face& face) {
    const std::vector<std::size_t> w = windows_of(Instrument::wattmeter);
    draw_window(face.column, pane_of(face, w[2], "watts"));
    const std::array<Pane, 3> small{pane_of(face, w[0], "volts"), pane_of(face, w[1], "amps"),
                                    pane_of(face, w[3], "power factor")};
    draw_small_windows(face.column, small);
    const bool in = face.bag.wattmeter.setting.on != 0;
    face.column.words(in ? "In the furnace's supply." : "In the bag's loop, not in the supply.");
    const auto pressed = buttons_and_keep(
        face, {"Into the supply", "Out of the supply"},
        {{w[2], "Keep watts"}, {w[0], "Keep volts"}, {w[1], "Keep amps"}, {w[3], "Keep power factor"}});
    if (pressed)
        ask(face, Verb::wattmeter, *pressed == 0 ? 1 : 0);
}

void tachometer(const Face& face) {
    const auto& setting = face.bag.tachometer.setting;
    const std::size_t window = windows_of(Instrument::tachometer)[0];
    draw_window(face.column, pane_of(face, window, "speed"));
    spot_connection(face, Verb::tachometer, "T", "aimed", setting.on != 0, setting.target);
    buttons_and_keep(face, {}, {{window, "Keep the reading##tachometer"}});
}

void manometer(const Face& face) {
    const auto& setting = face.bag.manometer.setting;
    const std::size_t window = windows_of(Instrument::manometer)[0];
    const bool between = setting.plus != setting.minus;
    draw_window(face.column, pane_of(face, window, "pressure difference", between));
    spot_connection(face, Verb::manometer_a, "1", "first hose", setting.on != 0, setting.plus);
    spot_connection(face, Verb::manometer_b, "2", "second hose", setting.on != 0, setting.minus);
    if (buttons_and_keep(face, {"Press zero"}, {{window, "Keep the reading##manometer"}}))
        ask(face, Verb::zero);
}

void thermometer(const Face& face) {
    const auto& setting = face.bag.thermometer.setting;
    const std::vector<std::size_t> w = windows_of(Instrument::thermometer);
    draw_window(face.column, pane_of(face, w[2], "T1 − T2"));
    const std::array<Pane, 2> small{pane_of(face, w[0], "T1"), pane_of(face, w[1], "T2")};
    draw_small_windows(face.column, small);
    spot_connection(face, Verb::probe_1, "T1", "probe", setting.on != 0, setting.probe_1);
    spot_connection(face, Verb::probe_2, "T2", "probe", setting.on != 0, setting.probe_2);
    buttons_and_keep(face, {}, {{w[0], "Keep T1"}, {w[1], "Keep T2"}, {w[2], "Keep T1 − T2"}});
}

void analyser(const Face& face) {
    const auto& setting = face.bag.analyser.setting;
    const std::vector<std::size_t> w = windows_of(Instrument::analyser);
    constexpr std::array<const char*, 9> kNames{"O₂",        "CO",  "CO₂",        "CO air-free", "stack",
                                                "inlet air", "net", "excess air", "efficiency"};
    std::vector<Pane> panes;
    std::vector<std::pair<std::size_t, std::string>> keeps;
    for (std::size_t i = 0; i < kNames.size(); ++i) {
        const bool measured = i == 0 || i == 1 || i == 4; // the others follow from these
        panes.push_back(pane_of(face, w[i], kNames[i], measured));
        keeps.emplace_back(w[i], std::string("Keep ") + kNames[i]);
    }
    draw_small_windows(face.column, panes);
    spot_connection(face, Verb::analyser, "P", "probe", setting.on != 0, setting.probe);
    face.column.note(setting.fuel == instruments::AnalyserFuel::propane ? "Fuel in its menu: propane."
                                                                        : "Fuel in its menu: natural gas.");
    buttons_and_keep(face, {}, keeps);
}

void gas_detector(const Face& face) {
    const auto& setting = face.bag.gas_detector.setting;
    const std::vector<std::size_t> w = windows_of(Instrument::gas_detector);
    draw_window(face.column, pane_of(face, w[0], "of the lower flammable limit"));
    const Display& ticks = display_of(face, w[1]);
    if (ticks.has(instruments::kOn)) {
        face.column.note("ticks, " + std::to_string(ticks.mantissa) + " a second");
        draw_ticks(face.column, ticks.mantissa, static_cast<float>(face.known.percept.tick % 20) / 20);
    }
    spot_connection(face, Verb::sniff, "S", "tip", setting.on != 0, setting.tip);
    buttons_and_keep(face, {}, {{w[0], "Keep the reading##sniff"}, {w[1], "Keep the ticks"}});
}

void leak_solution(const Face& face) {
    const auto& setting = face.bag.leak_solution.setting;
    const std::size_t window = windows_of(Instrument::leak_solution)[0];
    const Display& bubble = display_of(face, window);
    const bool on = bubble.has(instruments::kOn);
    const bool blows = on && bubble.mantissa > 0;
    face.column.words(blows ? "A bubble of " + sheet::figure_of(bubble).text() + "."
                      : on  ? "Wet; no bubble."
                            : "Nothing is brushed on.",
                      canvas::Type::Heading);
    draw_bubble(face.column, on ? static_cast<float>(bubble.mantissa) : 0.0F);
    face.column.note(state_of(face, window));
    spot_connection(face, Verb::bubbles, "L", "brushed on", setting.on != 0, setting.joint);
    buttons_and_keep(face, {}, {{window, "Keep what is seen##bubbles"}});
}

void voltage_tester(const Face& face) {
    const auto& setting = face.bag.voltage_tester.setting;
    const std::size_t window = windows_of(Instrument::voltage_tester)[0];
    const Display& display = display_of(face, window);
    const bool glows = display.has(instruments::kOn) && display.mantissa != 0;
    face.column.words(!display.has(instruments::kOn) ? "In the pocket."
                      : glows                        ? "It glows."
                                                     : "It stays dark.",
                      canvas::Type::Heading);
    draw_tip(face.column, glows);
    face.column.note(state_of(face, window));
    const bool on = setting.on != 0;
    connection(
        face, Verb::tester,
        {"", "V",
         on ? "held near " + bench::point_name(face.known.site->model, setting.node) : "held near nothing",
         false, on, false},
        on ? setting.node : -1);
    buttons_and_keep(face, {}, {{window, "Keep what is seen##tester"}});
}

void dial_watch(const Face& face) {
    const std::vector<std::size_t> w = windows_of(Instrument::dial_watch);
    const Display& dial = display_of(face, w[0]);
    draw_dial(face.column, static_cast<float>(dial.mantissa) / 100, dial.has(instruments::kOn));
    const double turn_m3 = face.known.site->model.gas.meter_dial_m3;
    const std::string turn = face.known.units == view::Units::si
                                 ? canvas::figure(turn_m3 * 1000.0, 1) + " L"
                                 : canvas::figure(turn_m3 / units::cubic_metres_per_cubic_foot, 1) + " ft³";
    face.column.note(std::string("Test dial: one turn is ") + turn + ". " +
                     (dial.has(instruments::kOn) ? "Hand at " + sheet::figure_of(dial).number + " of a turn."
                                                 : "Nobody stands at the gas meter."));
    face.column.gap(6);
    draw_window(face.column, pane_of(face, w[1], "stopwatch"));
    const auto pressed = buttons_and_keep(face, {"Start at the dial", "Put it away"},
                                          {{w[1], "Keep the time"}, {w[0], "Keep the hand's place"}});
    if (pressed)
        ask(face, Verb::stopwatch, *pressed == 0 ? 1 : 0);
}

void co_alarm(const Face& face) {
    const std::size_t window = windows_of(Instrument::co_alarm)[0];
    draw_window(face.column, pane_of(face, window, "CO in the room"));
    buttons_and_keep(face, {}, {{window, "Keep the reading##alarm"}});
}

constexpr std::array<void (*)(const Face&), kInstruments> kFaces{
    multimeter, clamp,        wattmeter,     tachometer,     manometer,  thermometer,
    analyser,   gas_detector, leak_solution, voltage_tester, dial_watch, co_alarm};

} // namespace

Title title_of(Instrument instrument) {
    return kTitles[static_cast<std::size_t>(instrument)];
}

void draw_face(const Face& face, Instrument instrument) {
    ImGui::PushID(static_cast<int>(instrument));
    kFaces[static_cast<std::size_t>(instrument)](face);
    ImGui::PopID();
}

} // namespace lightoff::faces
