// SPDX-License-Identifier: MIT
#include "files/catalogue_text.hpp"

#include <algorithm>
#include <functional>

namespace lightoff::files {
namespace {

using faults::ServiceKind;
using faults::Surface;
using faults::Wear;
using furnace::Place;

constexpr Range kAnyValue{-1e15, 1e15};
constexpr double kNoEnd = 1e300;

AccessText read_access(const Object& o) {
    AccessText a;
    a.burner_door_off = o.flag_or("burner_door_off", false);
    a.blower_door_off = o.flag_or("blower_door_off", false);
    a.off = named_texts_at(o, "off", {1, 8});
    a.on = named_texts_at(o, "on", {1, 8});
    return a;
}

std::vector<faults::Band> read_bands(const Object& sight) {
    std::vector<faults::Band> bands;
    double before = -kNoEnd;
    for (const Object& o : sight.objects("bands", {1, 8})) {
        if (before == kNoEnd)
            throw o.error("words", "no band behind one without \"below\"");
        const double below = o.number_or("below", kAnyValue, kNoEnd);
        if (below <= before)
            throw o.error("below", "more than in the band before");
        before = below;
        bands.push_back({below, o.text("words", {1, 200})});
    }
    if (before != kNoEnd)
        throw sight.error("bands", "a last band without \"below\"");
    return bands;
}

void read_shows(const Object& o, SightText& sight) {
    sight.wear = o.choice<Wear>("as", {{"dirt", Wear::dirt},
                                       {"soot", Wear::soot},
                                       {"rust", Wear::rust},
                                       {"water", Wear::water},
                                       {"burnt", Wear::burnt},
                                       {"corrosion", Wear::corrosion},
                                       {"coat", Wear::coat}});
    sight.steps = o.numbers("from", kAnyValue, {1, static_cast<std::size_t>(faults::kWearSteps)});
    const auto begin = sight.steps.begin(), end = sight.steps.end();
    if (std::adjacent_find(begin, end, std::greater_equal<>()) != end &&
        std::adjacent_find(begin, end, std::less_equal<>()) != end)
        throw o.error("from", "rising or falling numbers");
    sight.until = o.number_or("until", kAnyValue, kNoEnd);
}

std::vector<SightText> read_sights(const Object& o, Count count) {
    std::vector<SightText> sights;
    for (const Object& s : o.objects("sights", count)) {
        SightText sight;
        sight.condition = named_at(s, "condition");
        if (s.has("has"))
            sight.has = s.texts("has", {1, 8});
        sight.bands = read_bands(s);
        if (s.has("shows"))
            read_shows(s.object("shows"), sight);
        sights.push_back(std::move(sight));
    }
    return sights;
}

void read_look(const Object& o, PartText& part) {
    part.part.look.ticks = static_cast<std::uint32_t>(o.ticks("takes", {0.0, 1800.0, "s"}));
    part.look = read_access(o);
    part.sights = read_sights(o, {0, 8});
}

/// What is measured is kept in the World: its places are few.
void read_bench_test(const Object& o, PartText& part) {
    part.part.bench_test.ticks = static_cast<std::uint32_t>(o.ticks("takes", {1.0, 1800.0, "s"}));
    if (o.has("sights"))
        part.bench_sights = read_sights(o, {1, 4});
    part.bench_elements = named_texts_at(o, "elements", {1, 4});
    if (o.has("apart"))
        for (const Object& pair : o.objects("apart", {1, 2})) {
            std::vector<Named> places = named_texts_at(pair, "between", {2, 2});
            part.apart.push_back({std::move(places[0]), std::move(places[1]), {}});
            if (pair.has("has"))
                part.apart.back().has = pair.texts("has", {1, 8});
        }
}

ServiceText read_service(const Object& o) {
    ServiceText text;
    faults::Service& s = text.service;
    s.kind = o.choice<ServiceKind>("kind", {{"take-off", ServiceKind::take_off},
                                            {"put-back", ServiceKind::put_back},
                                            {"clean", ServiceKind::clean},
                                            {"tighten", ServiceKind::tighten},
                                            {"adjust", ServiceKind::adjust},
                                            {"reset", ServiceKind::reset},
                                            {"replace", ServiceKind::replace}});
    s.tool = o.text_or("tool", "", {1, 120});
    s.hands = static_cast<int>(o.integer_or("hands", 1, 2, 2));
    s.ticks = static_cast<std::uint32_t>(o.ticks("takes", {0.05, 28800.0, "s"}));
    s.cost = o.number_or("cost", {0.0, 1e5}, 0.0);
    s.opens_gas = o.flag_or("opens_gas", false);
    s.resets_rollout = o.flag_or("resets_rollout", false);
    text.access = read_access(o);
    text.restores = named_texts_at(o, "restores", {1, 40});
    if (o.has("sets"))
        for (const Object& set : o.objects("sets", {1, 16}))
            text.sets.push_back({named_at(set, "condition"), set.number("value", kAnyValue)});
    if (const auto turns = o.optional_object("by_turns")) {
        text.adjusts = named_at(*turns, "condition");
        s.per_turn = turns->number("per_turn", kAnyValue);
        s.most_turns = turns->number("most_turns", {0.1, 100.0});
        if (s.per_turn == 0.0)
            throw turns->error("per_turn", "what a turn clockwise adds, not 0");
    }
    return text;
}

PartText read_part(const Object& o) {
    PartText text;
    faults::Part& part = text.part;
    text.pointer = o.pointer();
    part.id = o.text("id", {1, 40});
    part.title = o.text("title", {1, 80});
    part.group = read_group(o);
    part.where = o.choice<Place::Where>("in", {{"burner-compartment", Place::Where::burner_compartment},
                                               {"blower-compartment", Place::Where::blower_compartment},
                                               {"outside", Place::Where::outside},
                                               {"living-room", Place::Where::living_room}});
    text.has = o.texts("has", {0, 16});
    part.has = text.has;
    text.tested_at = named_texts_at(o, "tested_at", {0, 16});
    text.tested_elsewhere = o.has("tested_at");
    part.consumable = o.flag_or("consumable", false);
    part.safety_device = o.flag_or("safety_device", false);
    if (o.has("surface"))
        part.surface = o.choice<Surface>("surface", {{"fire", Surface::fire},
                                                     {"igniter", Surface::igniter},
                                                     {"blower-winding", Surface::blower_winding},
                                                     {"inducer-winding", Surface::inducer_winding}});
    read_look(o.object("look"), text);
    if (const auto test = o.optional_object("bench_test"))
        read_bench_test(*test, text);
    for (const Object& s : o.objects("services", {0, 7})) {
        text.services.push_back(read_service(s));
        for (std::size_t i = 0; i + 1 < text.services.size(); ++i)
            if (text.services[i].service.kind == text.services.back().service.kind)
                throw s.error("kind", "one service of a kind");
    }
    return text;
}

} // namespace

std::vector<PartText> read_parts(const Document& document) {
    const Object root = document.root();
    root.choice<bool>("format", {{"lightoff-parts-1", true}});
    std::vector<PartText> parts;
    for (const Object& o : root.objects("parts", {1, 200}))
        parts.push_back(read_part(o));
    root.finish();
    return parts;
}

std::vector<Named> named_texts_at(const Object& object, std::string_view key, Count count) {
    std::vector<Named> all;
    if (!object.has(key))
        return all;
    const std::string list = pointer_to(object.pointer(), key);
    for (std::string& text : object.texts(key, count))
        all.push_back({std::move(text), pointer_to(list, all.size())});
    return all;
}

Named named_at(const Object& object, std::string_view key) {
    return {object.text(key, {1, 120}), pointer_to(object.pointer(), key)};
}

faults::Group read_group(const Object& object) {
    using faults::Group;
    return object.choice<Group>("group", {{"power", Group::power},
                                          {"call", Group::call},
                                          {"draft", Group::draft},
                                          {"ignition", Group::ignition},
                                          {"gas", Group::gas},
                                          {"flame-sense", Group::flame_sense},
                                          {"heat-and-air", Group::heat_and_air},
                                          {"control", Group::control}});
}

} // namespace lightoff::files
