// SPDX-License-Identifier: MIT
#include "cli/fault_lists.hpp"

#include "cli/exit_codes.hpp"
#include "cli/json_output.hpp"
#include "cli/text_layout.hpp"
#include "files/bundle_loader.hpp"
#include "lesson/look_alikes.hpp"

#include <array>
#include <string_view>
#include <vector>

namespace lightoff::cli {
namespace {

using faults::Catalogue;
using faults::Fault;

std::string text_of(const Catalogue& catalogue, const faults::ServiceRef& ref) {
    return std::string(faults::name_of(ref.kind)) + " " +
           catalogue.parts[static_cast<std::size_t>(ref.part)].id;
}

std::vector<std::string> texts_of(const Catalogue& catalogue, const std::vector<faults::ServiceRef>& refs) {
    std::vector<std::string> texts;
    for (const faults::ServiceRef& ref : refs)
        texts.push_back(text_of(catalogue, ref));
    return texts;
}

std::string_view name_of(faults::Trigger trigger) {
    constexpr std::array<std::string_view, 4> kNames{"from-start", "at", "when-hot", "now-and-then"};
    return kNames[static_cast<std::size_t>(trigger)];
}

std::string joined(const std::vector<std::string>& texts) {
    std::string all;
    for (const std::string& text : texts)
        all += (all.empty() ? "" : ", ") + text;
    return all;
}

OrderedJson to_json(const Catalogue& catalogue, const Fault& fault,
                    const std::vector<furnace::ConditionPath>& paths) {
    OrderedJson changes = OrderedJson::array();
    for (const faults::Change& c : fault.changes) {
        const furnace::ConditionPath& path = paths[static_cast<std::size_t>(c.field)];
        changes.push_back(
            {{"condition", path.path}, {"unit", path.unit}, {"least", c.least}, {"most", c.most}});
    }
    OrderedJson triggers = OrderedJson::array();
    for (const faults::Trigger trigger : fault.triggers)
        triggers.push_back(name_of(trigger));
    OrderedJson damages = OrderedJson::array();
    for (const int damage : fault.damages)
        damages.push_back(catalogue.faults[static_cast<std::size_t>(damage)].id);
    return {{"fault", fault.id},
            {"title", fault.title},
            {"group", faults::name_of(fault.group)},
            {"part", catalogue.parts[static_cast<std::size_t>(fault.part)].id},
            {"changes", changes},
            {"shorts", fault.bridges.size()},
            {"onset", triggers},
            {"repairs", texts_of(catalogue, fault.repairs)},
            {"seeming_repairs", texts_of(catalogue, fault.seeming)},
            {"prior", fault.prior},
            {"prior_assumed", fault.prior_assumed},
            {"repair_min", fault.repair_minutes},
            {"repair_cost", fault.repair_cost},
            {"damages", damages}};
}

void write(Output& out, const Catalogue& catalogue, const Fault& fault) {
    out.line();
    out.line("  " + out.heading(fault.id) + "  " + fault.title);
    const std::string repairs = joined(texts_of(catalogue, fault.repairs));
    write_labelled(out, "      repair", 15, repairs.empty() ? "put the switch or cock right" : repairs);
    if (!fault.seeming.empty())
        write_labelled(out, "      seeming", 15, joined(texts_of(catalogue, fault.seeming)));
}

std::string reason_of(const Catalogue& catalogue, const lesson::Imitation& pair) {
    for (const faults::LookAlike& other : catalogue.faults[static_cast<std::size_t>(pair.fault)].look_alikes)
        if (other.fault == pair.by)
            return other.because;
    return "The catalogue gives no reason.";
}

} // namespace

int list_faults(Output& out, const std::string& scenario, bool as_json) {
    const files::LoadedBundle bundle = files::load_bundle(scenario);
    const Catalogue& catalogue = bundle.site.catalogue;
    if (as_json) {
        const std::vector<furnace::ConditionPath> paths = furnace::condition_paths(bundle.site.model);
        OrderedJson list = OrderedJson::array();
        for (const Fault& fault : catalogue.faults)
            list.push_back(to_json(catalogue, fault, paths));
        out.line(json_text(list));
        return kDone;
    }
    out.line(std::to_string(catalogue.faults.size()) + " faults of " + bundle.site.model.title);
    for (int group = 0; group < faults::kGroups; ++group) {
        out.line();
        out.line(out.heading(faults::name_of(static_cast<faults::Group>(group))));
        for (const Fault& fault : catalogue.faults)
            if (fault.group == static_cast<faults::Group>(group))
                write(out, catalogue, fault);
    }
    return kDone;
}

int list_look_alikes(Output& out, const std::string& scenario, bool as_json) {
    const files::LoadedBundle bundle = files::load_bundle(scenario);
    const Catalogue& catalogue = bundle.site.catalogue;
    OrderedJson list = OrderedJson::array();
    for (const lesson::Imitation& pair : lesson::find_imitations(bundle.site, bundle.scenario)) {
        const std::string& fault = catalogue.faults[static_cast<std::size_t>(pair.fault)].id;
        const std::string& by = catalogue.faults[static_cast<std::size_t>(pair.by)].id;
        if (as_json) {
            list.push_back({{"fault", fault},
                            {"looks_like", by},
                            {"at_severity", pair.severity},
                            {"because", reason_of(catalogue, pair)}});
            continue;
        }
        out.line(out.heading(fault) + " looks like " + out.heading(by) + " at severity " +
                 fixed(pair.severity, 2));
        write_wrapped(out, reason_of(catalogue, pair), 4);
    }
    if (as_json)
        out.line(json_text(list));
    return kDone;
}

} // namespace lightoff::cli
