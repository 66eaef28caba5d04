// SPDX-License-Identifier: MIT
#include "gui/view/things.hpp"

#include "bench/access.hpp"
#include "bench/hand_words.hpp"
#include "bench/offers.hpp"
#include "instruments/spots.hpp"
#include "units/convert.hpp"

#include <algorithm>

namespace lightoff::view {
namespace {

using bench::Verb;
using bench::Word;

constexpr std::array<std::string_view, kSlots> kSlotNames{"Look",     "Hear",  "Measure", "Undo",
                                                          "Put back", "Clean", "Adjust",  "Replace"};
constexpr std::array<std::string_view, kSlots> kWhyEmpty{
    "Nothing more is to be seen of it than the drawing shows.",
    "It makes no sound of its own.",
    "No instrument goes there.",
    "Nothing of it comes off.",
    "Nothing of it is off.",
    "Nothing to clean there.",
    "Nothing to adjust there.",
    "No such part in the van.",
};

/// Under which slot a verb stands.
Slot slot_of(Verb verb) {
    switch (verb) {
    case Verb::look:
        return Slot::look;
    case Verb::test_old:
        return Slot::measure;
    case Verb::take_off:
    case Verb::lift:
    case Verb::unplug:
        return Slot::undo;
    case Verb::put_back:
    case Verb::seat:
    case Verb::plug_in:
    case Verb::set_right:
        return Slot::put_back;
    case Verb::clean:
    case Verb::discharge:
        return Slot::clean;
    case Verb::replace:
        return Slot::replace;
    default:
        return Slot::adjust;
    }
}

struct Fill {
    const Known& known;
    std::array<SlotFill, kSlots> slots;

    SlotFill& at(Slot slot) { return slots[static_cast<std::size_t>(slot)]; }

    void add(Slot slot, const bench::Action& action, std::string words) {
        const bench::Verdict verdict = known.check(action);
        at(slot).choices.push_back({bench::format_action(*known.site, action), std::move(words),
                                    verdict.allowed, verdict.reason,
                                    static_cast<double>(verdict.duration_ticks) * units::seconds_per_tick});
    }
    void add_wait(std::string_view about) {
        at(Slot::hear)
            .choices.push_back(
                {"wait until " + std::string(about), "wait for a change in its sound", true, {}, 0.0});
    }
};

std::string dashed(std::string id) {
    std::replace(id.begin(), id.end(), '_', '-');
    return id;
}

/// Whether a verb is a part's own: "gas-cock" and the part gas_cock, "thermostat-set" and the thermostat.
bool is_own_verb(const bench::VerbSpec& spec, const std::string& part_id) {
    const std::string name = dashed(part_id);
    return spec.name == name || (spec.name.size() > name.size() && spec.name.substr(0, name.size()) == name &&
                                 spec.name[name.size()] == '-' && spec.word_count() == 1);
}

void add_own_verbs(Fill& fill, const bench::VerbSpec& spec) {
    if (spec.words[0] == Word::temperature) {
        const auto set_mk = static_cast<std::int32_t>(fill.known.percept.left_as.set_point_k * 1000.0 + 0.5);
        for (const int degrees : {-5, -1, +1, +5})
            fill.add(Slot::adjust, {spec.verb, 0, set_mk + degrees * 5000 / 9},
                     (degrees < 0 ? "set \u2212" : "set +") + std::to_string(std::abs(degrees)) + " °F");
        return;
    }
    for (const bench::Choice& choice : bench::choices(*fill.known.site, spec.words[0]))
        fill.add(Slot::adjust, {spec.verb, 0, choice.value}, std::string(spec.name) + " " + choice.name);
}

void add_turns(Fill& fill, const bench::VerbSpec& spec, int part) {
    constexpr std::array<std::int32_t, 4> kEighths{-8, -1, 1, 8};
    constexpr std::array<const char*, 4> kWords{"one turn anticlockwise", "1/8 anticlockwise",
                                                "1/8 clockwise", "one turn clockwise"};
    const faults::Service* service =
        fill.known.site->catalogue.find_service({part, faults::ServiceKind::adjust});
    if (service == nullptr || service->per_turn == 0.0)
        return fill.add(Slot::adjust, {spec.verb, static_cast<std::uint16_t>(part), 0},
                        "set it as the plate says");
    for (std::size_t i = 0; i < kEighths.size(); ++i)
        fill.add(Slot::adjust, {spec.verb, static_cast<std::uint16_t>(part), kEighths[i]}, kWords[i]);
}

void add_services(Fill& fill, int part) {
    const bench::Site& site = *fill.known.site;
    for (const bench::VerbSpec& spec : bench::verbs()) {
        if (is_own_verb(spec, site.catalogue.parts[static_cast<std::size_t>(part)].id)) {
            add_own_verbs(fill, spec);
            continue;
        }
        if (spec.words[0] != Word::part || bench::is_paper(spec.verb))
            continue;
        const auto offered = bench::offered(site, spec.verb, 0);
        if (std::none_of(offered.begin(), offered.end(),
                         [&](const bench::Choice& choice) { return choice.value == part; }))
            continue;
        if (spec.verb == Verb::adjust)
            add_turns(fill, spec, part);
        else
            fill.add(slot_of(spec.verb), {spec.verb, 0, part},
                     spec.verb == Verb::look       ? "look closely"
                     : spec.verb == Verb::replace  ? "fit a new one"
                     : spec.verb == Verb::test_old ? "test the old one on the bench"
                                                   : std::string(spec.name));
    }
}

/// Names of the wiring that belong to a part: "pressure_switch" of "pressure_switch.contact".
bool has_place(const faults::Part& part, const furnace::Terminal& terminal) {
    return std::any_of(part.has.begin(), part.has.end(), [&](const std::string& name) {
        return terminal.is_at(name.substr(0, name.find('.')));
    });
}

void add_leads(Fill& fill, int node, const std::string& name) {
    for (const Wanted::Lead lead : {Wanted::Lead::red, Wanted::Lead::black}) {
        SlotChoice choice;
        choice.words = (lead == Wanted::Lead::red ? "red lead on " : "black lead on ") + name;
        choice.line = std::to_string(node);
        choice.lead = lead;
        fill.at(Slot::measure).choices.push_back(choice);
    }
}

void add_terminal(Fill& fill, std::size_t index) {
    const bench::Site& site = *fill.known.site;
    const auto value = static_cast<std::int32_t>(index);
    fill.add(Slot::undo, {Verb::lift, 0, value}, "lift its wire");
    fill.add(Slot::put_back, {Verb::seat, 0, value}, "seat its wire");
    for (const bench::Choice& plug : bench::choices(site, Word::plug))
        if (site.model.wiring.terminals[index].is_at(plug.name)) {
            fill.add(Slot::undo, {Verb::unplug, 0, plug.value}, "unplug");
            fill.add(Slot::put_back, {Verb::plug_in, 0, plug.value}, "plug in");
        }
}

void add_point(Fill& fill, int node) {
    const bench::Site& site = *fill.known.site;
    add_leads(fill, node, bench::point_name(site.model, node));
    fill.add(Slot::measure, {Verb::tester, 0, node}, "non-contact tester near it");
    const auto& terminals = site.model.wiring.terminals;
    for (std::size_t i = 0; i < terminals.size(); ++i)
        if (terminals[i].pin == node || terminals[i].lug == node)
            add_terminal(fill, i);
}

/// Verbs that take a spot, by what the spot takes.
void add_spot(Fill& fill, instruments::Spot spot) {
    for (const bench::VerbSpec& spec : bench::verbs()) {
        if (spec.word_count() != 1 || spec.words[0] < Word::pressure_spot ||
            spec.words[0] > Word::tachometer_spot)
            continue;
        const auto names = bench::choices(*fill.known.site, spec.words[0]);
        if (std::any_of(names.begin(), names.end(), [&](const bench::Choice& choice) {
                return choice.value == static_cast<std::int32_t>(spot);
            }))
            fill.add(Slot::measure, {spec.verb, 0, static_cast<std::int32_t>(spot)},
                     std::string(spec.name) + " here");
    }
}

bool is_spot(Word kind) {
    return kind >= Word::pressure_spot && kind <= Word::tachometer_spot;
}

void add_part(Fill& fill, int part) {
    const faults::Part& it = fill.known.site->catalogue.parts[static_cast<std::size_t>(part)];
    add_services(fill, part);
    for (const furnace::Terminal& terminal : fill.known.site->model.wiring.terminals)
        if (has_place(it, terminal))
            add_leads(fill, terminal.pin, terminal.name);
    const std::string stem = it.id.substr(0, it.id.find('_'));
    for (const std::string_view about : {"inducer", "blower", "burners", "valve"})
        if (stem == about || it.id == about || it.id == "gas_" + std::string(about))
            fill.add_wait(about);
}

} // namespace

std::string_view name_of(Slot slot) {
    return kSlotNames[static_cast<std::size_t>(slot)];
}

std::string title_of(const bench::Site& site, const Thing& thing) {
    if (thing.kind == Word::part)
        return bench::part_title(site, thing.value);
    if (thing.kind == Word::point)
        return bench::point_name(site.model, thing.value);
    if (is_spot(thing.kind))
        return std::string(instruments::spot_row(static_cast<instruments::Spot>(thing.value)).title);
    if (thing.kind == Word::on_off) {
        std::string name(bench::spec_of(static_cast<Verb>(thing.value)).name);
        std::replace(name.begin(), name.end(), '-', ' ');
        name[0] = static_cast<char>(name[0] - 'a' + 'A');
        return name;
    }
    for (const bench::Choice& choice : bench::choices(site, thing.kind))
        if (choice.value == thing.value)
            return choice.name;
    return {};
}

std::string worn_words(const bench::Percept& percept, const Thing& thing) {
    using Steps = std::array<std::string_view, faults::kWearSteps>;
    static constexpr std::array<Steps, faults::kWears> kWords{
        Steps{"a film of dirt", "some dirt", "dirty", "thick with dirt", "packed with dirt"},
        Steps{"a breath of soot", "some soot", "sooty", "black with soot", "caked with soot"},
        Steps{"specks of rust", "some rust", "rusty", "eaten by rust", "all rust"},
        Steps{"drops of water", "some water", "water stands in it", "much water in it", "full of water"},
        Steps{"faintly browned", "browned", "brown", "scorched", "charred"},
        Steps{"a green tinge", "green specks", "green crust", "thick green crust", "eaten away, green"},
        Steps{"a film on it", "dull", "coated", "thickly coated", "crusted over"}};
    if (thing.kind != Word::part)
        return {};
    std::string words;
    for (int wear = 0; wear < faults::kWears; ++wear)
        if (const int step = percept.worn.step(thing.value, static_cast<faults::Wear>(wear)); step > 0)
            words += (words.empty() ? "" : ", ") +
                     std::string(kWords[static_cast<std::size_t>(wear)][static_cast<std::size_t>(step - 1)]);
    if (percept.worn.is_traced(thing.value))
        words += (words.empty() ? "" : ", ") + std::string("somebody has left a note");
    return words;
}

std::array<SlotFill, kSlots> slots_of(const Known& known, const Thing& thing) {
    Fill fill{known, {}};
    switch (thing.kind) {
    case Word::part:
        add_part(fill, thing.value);
        break;
    case Word::point:
        add_point(fill, thing.value);
        break;
    case Word::terminal:
        add_point(fill, known.site->model.wiring.terminals[static_cast<std::size_t>(thing.value)].pin);
        break;
    case Word::wire:
        fill.add(Slot::measure, {Verb::clamp, 0, thing.value}, "clamp ammeter round it");
        break;
    case Word::wheel:
        fill.add(Slot::adjust, {Verb::spin, 0, thing.value}, "spin by hand");
        break;
    case Word::on_off: {
        const bench::VerbSpec& spec = bench::spec_of(static_cast<Verb>(thing.value));
        add_own_verbs(fill, spec);
        break;
    }
    default:
        if (is_spot(thing.kind))
            add_spot(fill, static_cast<instruments::Spot>(thing.value));
    }
    for (std::size_t i = 0; i < kSlots; ++i)
        if (fill.slots[i].choices.empty())
            fill.slots[i].why_empty = kWhyEmpty[i];
    return fill.slots;
}

} // namespace lightoff::view
