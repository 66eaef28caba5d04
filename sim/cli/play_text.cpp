// SPDX-License-Identifier: MIT
#include "cli/play_text.hpp"

#include "bench/access.hpp"
#include "bench/hand_words.hpp"
#include "bench/offers.hpp"
#include "cli/text_layout.hpp"
#include "units/convert.hpp"
#include "visit/play_line.hpp"
#include "visit/words.hpp"

#include <array>

namespace lightoff::cli {
namespace {

constexpr std::size_t kClockWidth = 9;
constexpr std::size_t kLabelWidth = 22;
constexpr std::size_t kFewChoices = 60; ///< more are shown by TAB and by `actions`

void row(Output& out, const std::string& label, const std::string& text) {
    write_labelled(out, "  " + label, kLabelWidth, text);
}

std::string fahrenheit(double kelvin) {
    return fixed(units::k_to_fahrenheit(kelvin), 0) + " °F";
}

std::string difference_f(double kelvin) {
    return fixed(kelvin * 1.8, 0);
}

std::string inwc(double pascals, int decimals) {
    return fixed(pascals / units::pascals_per_inwc, decimals) + " in. w.c.";
}

std::string join(const std::vector<std::string>& texts, const std::string& between = ", ") {
    std::string all;
    for (const std::string& text : texts)
        all += (all.empty() ? "" : between) + text;
    return all;
}

void write_switches(Output& out, const bench::LeftAs& left, const bench::Worked& worked) {
    const auto is = [](bool first, const char* if_so, const char* if_not) -> std::string {
        return first ? if_so : if_not;
    };
    row(out, "thermostat",
        is(left.thermostat_mode == control::ThermostatMode::heat, "heat", "off") + ", fan " +
            is(left.thermostat_fan == control::FanSwitch::on, "on", "auto") + ", set to " +
            fahrenheit(left.set_point_k));
    row(out, "power",
        "breaker " + is(left.breaker_on, "on", "off") + ", disconnect " +
            is(left.disconnect_on, "on", "off"));
    row(out, "gas cock", is(left.gas_cock_open, "open", "shut"));
    row(out, "doors",
        "burner door " + is(left.burner_door_on, "on", "off") + ", blower door " +
            is(left.blower_door_on, "on", "off"));
    if (worked.door_switch_taped)
        row(out, "door switch", "taped in");
    else if (left.door_switch_held)
        row(out, "door switch", "held in by one hand");
    if (!left.filter_in)
        row(out, "filter", "out");
    if (worked.appliances_off)
        row(out, "other appliances", "off");
    if (worked.tagged)
        row(out, "tag", "hangs on the furnace");
}

void write_apart(Output& out, const bench::Site& site, const bench::Worked& worked) {
    std::vector<std::string> off;
    for (std::size_t i = 0; i < site.catalogue.parts.size(); ++i) {
        const double turns = 0.125 * worked.eighths[i];
        if ((worked.parts_off[i / 64] >> (i % 64) & 1U) != 0)
            off.push_back(site.catalogue.parts[i].id);
        if (turns != 0.0)
            row(out, site.catalogue.parts[i].id,
                "screw stands " + fixed(turns, 3) + " turns from how it was found");
    }
    if (!off.empty())
        row(out, "taken off", join(off));
    std::vector<std::string> lifted;
    for (const furnace::Terminal& terminal : site.model.wiring.terminals)
        if (electrical::has_element(worked.parted, terminal.joint))
            lifted.push_back(terminal.name);
    if (!lifted.empty())
        row(out, "wires off", join(lifted));
    for (std::size_t slot = instruments::kJumperSlot; slot < worked.joined.size(); ++slot) {
        const auto [a, b] = worked.joined[slot];
        if (a == b)
            continue;
        const std::string what = slot == instruments::kJumperSlot         ? "jumper lead"
                                 : slot == instruments::kSmallBreakerSlot ? "small breaker"
                                                                          : "wire landed";
        row(out, what,
            bench::point_name(site.model, a) + " to " + bench::point_name(site.model, b) +
                (slot == instruments::kSmallBreakerSlot && worked.small_breaker_tripped ? ", snapped out"
                                                                                        : ""));
    }
}

/// The verbs of a group, one line each.
void write_group(Output& out, const bench::VerbGroup& group) {
    out.line(out.heading(group.title));
    for (const bench::Verb verb : group.verbs) {
        const bench::VerbSpec& spec = bench::spec_of(verb);
        write_labelled(out, "  " + bench::pattern_of(spec), 32, spec.help);
    }
}

void write_general_help(Output& out) {
    write_wrapped(out,
                  "One action a line; the furnace runs on while you work. Nothing is read until a number has "
                  "stood for two seconds: `read` waits for that. TAB completes; `help VERB` says what a "
                  "verb takes here.");
    for (const bench::VerbGroup& group : bench::verb_groups()) {
        out.line();
        write_group(out, group);
    }
    out.line();
    out.line(out.heading("Waiting for something"));
    write_labelled(out, "  wait until THING", 32, "stops on what can be perceived, within 15 min");
    write_labelled(out, "  ... within TIME", 32, "or within another time");
    for (const visit::UntilRow& until : visit::until_rows())
        write_labelled(out, "    " + std::string(until.name), 32, until.help);
    write_labelled(out, "  read", 32, "short for wait until settled");
    out.line();
    out.line(out.heading("Questions, which cost no time"));
    for (const visit::AskRow& ask : visit::ask_rows())
        write_labelled(out, "  " + std::string(ask.name), 32, ask.help);
}

void write_verb_help(Output& out, const bench::Site& site, const bench::VerbSpec& spec) {
    out.line(out.heading(bench::pattern_of(spec)));
    write_wrapped(out, spec.help, 2);
    if (bench::takes_its_own_time(spec.verb))
        out.line("  each part takes its own time");
    else if (spec.ticks > 0)
        out.line("  takes about " + fixed(static_cast<double>(spec.ticks) * units::seconds_per_tick, 0) +
                 " s" +
                 (spec.hands == 2   ? ", both hands"
                  : spec.hands == 1 ? ", one hand"
                                    : ""));
    for (std::size_t i = 0; i < spec.word_count(); ++i) {
        const std::string name(bench::placeholder(spec.words[i]));
        if (const std::string_view range = bench::range_of(spec.words[i]); !range.empty()) {
            write_labelled(out, "  " + name, 14, range);
            continue;
        }
        if (i == 1 && spec.words[0] == spec.words[1])
            continue;
        std::vector<std::string> names;
        for (const bench::Choice& choice : bench::offered(site, spec.verb, i))
            names.push_back(choice.name);
        if (names.size() > kFewChoices)
            write_labelled(out, "  " + name, 14,
                           std::to_string(names.size()) + " names such as " + names.front() + " and " +
                               names[names.size() / 2] + "; TAB or `lightoff-cli actions` shows them");
        else
            write_labelled(out, "  " + name, 14, join(names));
    }
}

} // namespace

void write_work_order(Output& out, const files::LoadedBundle& bundle) {
    const lesson::Scenario& scenario = bundle.scenario;
    const furnace::RatingPlate& plate = bundle.site.model.rating;
    out.line(out.heading("Work order: " + scenario.title));
    row(out, "call", visit::kind_text(scenario.kind));
    row(out, "customer", "“" + scenario.complaint + "”");
    row(out, "furnace", bundle.site.model.title);
    row(out, "rating plate",
        plate.gas + ", input " + fixed(units::w_to_btuh(plate.input_w), 0) + " Btu/h, manifold " +
            inwc(plate.manifold_pa, 1) + ", rise " + difference_f(plate.rise_low_k) + " to " +
            difference_f(plate.rise_high_k) + " °F, external static at most " +
            inwc(plate.external_static_pa, 2) + ", blower at most " + fixed(plate.blower_full_load_a, 1) +
            " A");
    row(out, "outdoors", fahrenheit(scenario.inputs.outdoor_k));
    row(out, "where the furnace is", fahrenheit(scenario.inputs.basement_k));
    out.line();
    write_wrapped(out, visit::cautions());
    out.line();
}

void write_event(Output& out, std::uint64_t ticks_here, std::string_view what, const std::string& text) {
    out.line(out.styled(Style::quiet, padded_left(visit::clock_text(ticks_here), kClockWidth)) + "  " +
             padded(what, 6) + " " + text);
}

void write_notes(Output& out, const visit::Visit& visit) {
    const auto& readings = visit.notebook().readings();
    if (readings.empty())
        out.line("  nothing read yet");
    for (std::size_t i = 0; i < readings.size(); ++i)
        write_event(out, readings[i].tick - visit.arrived_tick(), "",
                    visit::reading_text(visit.site(), readings[i], i + 1));
}

void write_status(Output& out, const visit::Visit& visit) {
    const bench::Percept percept = visit.percept();
    row(out, "time", visit::clock_text(visit.ticks_here()));
    write_switches(out, percept.left_as, percept.worked);
    write_apart(out, visit.site(), percept.worked);
    const auto windows = instruments::displays(visit.world().bag);
    for (std::size_t i = 0; i < windows.size(); ++i) {
        const instruments::Display& display = percept.instruments.window[i];
        if (!display.has(instruments::kOn))
            continue;
        row(out, std::string(windows[i].name),
            visit::window_text(display) + ", " +
                bench::where_is_it(visit.site(), visit.world().bag, windows[i]));
    }
    row(out, "readings", std::to_string(visit.notebook().readings().size()));
}

void write_help(Output& out, const bench::Site& site, const std::string& topic) {
    if (topic.empty())
        return write_general_help(out);
    for (const bench::VerbSpec& spec : bench::verbs())
        if (spec.name == topic)
            write_verb_help(out, site, spec);
    if (topic == "wait" || topic == "read") {
        out.line("  or: wait until THING [within TIME]; read: wait until settled");
        for (const visit::UntilRow& until : visit::until_rows())
            write_labelled(out, "    " + std::string(until.name), 16, until.help);
    }
    for (const visit::AskRow& ask : visit::ask_rows())
        if (ask.name == topic)
            write_labelled(out, "  " + std::string(ask.name), 14, ask.help);
}

} // namespace lightoff::cli
