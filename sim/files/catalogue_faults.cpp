// SPDX-License-Identifier: MIT
#include "files/catalogue_text.hpp"

#include "heat/nodes.hpp"
#include "units/fields.hpp"

#include <algorithm>
#include <array>

namespace lightoff::files {
namespace {

using faults::Control;
using faults::Move;
using faults::ServiceKind;
using faults::Trigger;

constexpr Range kAnyValue{-1e15, 1e15};
constexpr Range kOhm{1e-6, 1e13, "ohm"};

ChangeText read_change(const Object& o) {
    ChangeText text;
    text.condition = named_at(o, "condition");
    if (o.has("value")) {
        text.change.least = o.number("value", kAnyValue);
        text.change.most = text.change.least;
        return text;
    }
    text.change.least = o.number("least", kAnyValue);
    text.change.most = o.number("most", kAnyValue);
    text.change.logarithmic = o.choice_or<bool>("scale", {{"linear", false}, {"logarithmic", true}}, false);
    return text;
}

/// A wire, winding or contact that no longer conducts.
ChangeText opened(const Named& element) {
    ChangeText text;
    text.condition = {"wiring/" + element.name + "/series_resistance", element.pointer};
    text.change.least = static_cast<double>(electrical::kOpenOhm);
    text.change.most = text.change.least;
    return text;
}

BridgeText read_bridge(const Object& o) {
    const std::vector<Named> ends = named_texts_at(o, "between", {2, 2});
    if (ends.empty())
        throw o.error("between", "the two places that touch");
    return {ends[0], ends[1], o.number("least", kOhm), o.number("most", kOhm)};
}

/// "clean pressure_hose".
ServiceRefText service_ref(const Object& o, std::string_view key, const Named& text) {
    const std::size_t space = text.name.find(' ');
    const std::string kind = text.name.substr(0, space);
    for (int i = 0; i < faults::kServiceKinds; ++i)
        if (space != std::string::npos && kind == name_of(static_cast<ServiceKind>(i)))
            return {static_cast<ServiceKind>(i), {text.name.substr(space + 1), text.pointer}};
    throw o.error(key, "a service and a part, \"clean pressure_hose\"", "look at " + in_quotes(text.name));
}

std::vector<ServiceRefText> service_refs(const Object& o, std::string_view key) {
    std::vector<ServiceRefText> refs;
    for (const Named& text : named_texts_at(o, key, {1, 12}))
        refs.push_back(service_ref(o, key, text));
    return refs;
}

void read_triggers(const Object& o, faults::Fault& fault) {
    constexpr std::array<std::string_view, 4> kNames{"from-start", "at", "when-hot", "now-and-then"};
    for (const Named& text : named_texts_at(o, "triggers", {1, 4})) {
        const auto* const it = std::find(kNames.begin(), kNames.end(), text.name);
        if (it == kNames.end())
            throw o.error("triggers", "from-start, at, when-hot, now-and-then");
        fault.triggers.push_back(static_cast<Trigger>(it - kNames.begin()));
    }
    if (fault.triggers.empty())
        fault.triggers = {Trigger::from_start, Trigger::at_tick};
    if (const auto hot = o.optional_object("when_hot")) {
        const std::string node = hot->text("node", {1, 40});
        int at = 0;
        const heat::Nodes nodes;
        units::for_each_field(nodes, [&](const std::string& name, std::string_view, const double&) {
            if (name == node)
                fault.hot_node = at;
            ++at;
        });
        if (fault.hot_node < 0)
            throw hot->error("node", "a node of the heat network: \"igniter\", \"blower_winding\"");
        fault.hot_above_k = hot->number("above", {0.0, 2000.0, "C"});
    }
    if (const auto sometimes = o.optional_object("now_and_then"))
        fault.stretch_ticks = static_cast<std::uint32_t>(sometimes->ticks("stretch", {0.05, 7200.0, "s"}));
}

void read_what_changes(const Object& o, FaultText& text) {
    if (o.has("changes"))
        for (const Object& change : o.objects("changes", {1, 16}))
            text.changes.push_back(read_change(change));
    for (const Named& element : named_texts_at(o, "opens", {1, 8}))
        text.changes.push_back(opened(element));
    if (o.has("bridges"))
        for (const Object& bridge : o.objects("bridges", {1, 4}))
            text.bridges.push_back(read_bridge(bridge));
    if (o.has("left"))
        for (const Object& left : o.objects("left", {1, 4}))
            text.fault.controls.push_back(
                {left.choice<Control>("control", {{"breaker", Control::breaker},
                                                  {"disconnect", Control::disconnect},
                                                  {"gas-cock", Control::gas_cock},
                                                  {"thermostat-mode", Control::thermostat_mode},
                                                  {"filter", Control::filter}}),
                 left.flag("on")});
}

void read_relations(const Object& o, FaultText& text) {
    text.repairs = service_refs(o, "repairs");
    text.seeming = service_refs(o, "seeming");
    text.damages = named_texts_at(o, "damages", {1, 4});
    if (o.has("look_alikes"))
        for (const Object& other : o.objects("look_alikes", {1, 24}))
            text.look_alikes.push_back({named_at(other, "fault"), other.text("because", {1, 300})});
    if (o.has("moves"))
        for (const Object& move : o.objects("moves", {1, 12}))
            text.fault.moves.push_back({move.text("reading", {1, 64}),
                                        move.choice_or<Move::Moment>("when",
                                                                     {{"standby", Move::Moment::standby},
                                                                      {"purge", Move::Moment::purge},
                                                                      {"warm-up", Move::Moment::warm_up},
                                                                      {"hot", Move::Moment::hot}},
                                                                     Move::Moment::hot),
                                        move.choice<bool>("direction", {{"up", true}, {"down", false}})});
}

FaultText read_fault(const Object& o, faults::Group group) {
    FaultText text;
    faults::Fault& fault = text.fault;
    text.pointer = o.pointer();
    fault.id = o.text("id", {1, 40});
    fault.title = o.text("title", {1, 120});
    fault.group = group;
    text.part = named_at(o, "part");
    if (o.has("has"))
        text.has = o.texts("has", {1, 8});
    read_what_changes(o, text);
    read_triggers(o, fault);
    read_relations(o, text);
    fault.prior = o.number("prior", {0.01, 1000.0});
    fault.prior_assumed = o.text_or("prior_source", "", {1, 300}).empty();
    fault.repair_minutes = o.number("repair", {0.1, 600.0, "min"}) / 60.0;
    fault.repair_cost = o.number("repair_cost", {0.0, 1e5});
    return text;
}

} // namespace

std::vector<FaultText> read_faults(const Document& document, std::size_t file) {
    const Object root = document.root();
    root.choice<bool>("format", {{"lightoff-faults-1", true}});
    const faults::Group group = read_group(root);
    std::vector<FaultText> all;
    for (const Object& o : root.objects("faults", {1, 200})) {
        all.push_back(read_fault(o, group));
        all.back().file = file;
    }
    root.finish();
    return all;
}

} // namespace lightoff::files
