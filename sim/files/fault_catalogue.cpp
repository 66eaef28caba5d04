// SPDX-License-Identifier: MIT
#include "files/fault_catalogue.hpp"

#include "files/catalogue_text.hpp"
#include "files/data_folder.hpp"
#include "furnace/condition_paths.hpp"
#include "instruments/spots.hpp"

#include <algorithm>
#include <map>
#include <set>

namespace lightoff::files {
namespace {

using faults::Catalogue;
using faults::Fault;
using faults::NodePair;
using faults::Part;
using faults::Service;

template <class T>
void sort_out(std::vector<T>& list) {
    std::sort(list.begin(), list.end());
    list.erase(std::unique(list.begin(), list.end()), list.end());
}

/// What a furnace has, by name.
class Furnace {
public:
    explicit Furnace(const furnace::Model& model) : model_(model) {
        const std::vector<furnace::ConditionPath> paths = furnace::condition_paths(model);
        for (std::size_t i = 0; i < paths.size(); ++i)
            if (paths[i].in_use)
                fields_.emplace(paths[i].path, i);
        for (const std::string& name : model.wiring.netlist.element_names)
            add_name(name);
        for (const std::string& name : model.wiring.netlist.node_names)
            add_name(name);
        for (const furnace::Terminal& terminal : model.wiring.terminals)
            add_name(terminal.name);
        if (model.standing_pilot)
            names_.insert("standing-pilot");
        if (model.thermostat.anticipator_a > 0.0)
            names_.insert("anticipator");
    }

    [[nodiscard]] bool has_all(const std::vector<std::string>& names) const {
        return std::all_of(names.begin(), names.end(),
                           [&](const std::string& name) { return names_.count(name) != 0; });
    }
    [[nodiscard]] std::uint64_t field(const Named& path, const Document& document) const {
        const auto it = fields_.find(path.name);
        if (it == fields_.end())
            throw document.error_at(path.pointer, model_.name + " has no condition \"" + path.name +
                                                      "\"; they are listed by `lightoff-cli conditions`");
        return it->second;
    }
    [[nodiscard]] int node(const Named& place, const Document& document) const {
        const int node = model_.find_test_point(place.name);
        if (node < 0)
            throw document.error_at(place.pointer, model_.name + " has no place of this name");
        return node;
    }

    [[nodiscard]] int element(const Named& name, const Document& document) const {
        const std::vector<std::string>& names = model_.wiring.netlist.element_names;
        const auto it = std::find(names.begin(), names.end(), name.name);
        if (it == names.end())
            throw document.error_at(name.pointer, model_.name + " has no element of this name");
        return static_cast<int>(it - names.begin());
    }

private:
    /// "board.R.lug": "board.R.lug", "board.R" and "board".
    void add_name(const std::string& name) {
        names_.insert(name);
        for (std::size_t dot = name.find('.'); dot != std::string::npos; dot = name.find('.', dot + 1))
            names_.insert(name.substr(0, dot));
    }

    const furnace::Model& model_;
    std::map<std::string, std::uint64_t, std::less<>> fields_;
    std::set<std::string, std::less<>> names_;
};

constexpr int kLeftOut = -1;

/// Looks every name of the files up.
class Resolver {
public:
    Resolver(const CatalogueFiles& files, const furnace::Model& model) : files_(files), furnace_(model) {}

    Catalogue resolve() {
        std::vector<PartText> parts = read_parts(files_.parts);
        std::vector<FaultText> faults;
        for (std::size_t i = 0; i < files_.faults.size(); ++i)
            for (FaultText& fault : read_faults(files_.faults[i], i))
                faults.push_back(std::move(fault));
        number(parts);
        number(faults);
        for (PartText& part : parts)
            if (part_index_[part.part.id] != kLeftOut)
                add(part);
        for (FaultText& fault : faults)
            if (fault_index_[fault.fault.id] != kLeftOut)
                add(fault);
        for (Fault& fault : catalogue_.faults)
            teach_services(fault);
        for (const FaultText& fault : faults)
            if (fault_index_[fault.fault.id] != kLeftOut)
                judge(fault);
        return std::move(catalogue_);
    }

private:
    void number(const std::vector<PartText>& parts) {
        int next = 0;
        for (const PartText& part : parts) {
            const int index = furnace_.has_all(part.has) ? next++ : kLeftOut;
            if (!part_index_.emplace(part.part.id, index).second)
                throw files_.parts.error_at(pointer_to(part.pointer, "id"),
                                            "a part of that name came before");
        }
    }
    void number(const std::vector<FaultText>& faults) {
        int next = 0;
        for (const FaultText& fault : faults) {
            const bool left_out =
                find_part(fault.part, file(fault)) == kLeftOut || !furnace_.has_all(fault.has);
            if (!fault_index_.emplace(fault.fault.id, left_out ? kLeftOut : next++).second)
                throw file(fault).error_at(pointer_to(fault.pointer, "id"),
                                           "a fault of that name came before");
        }
    }
    [[nodiscard]] const Document& file(const FaultText& fault) const { return files_.faults[fault.file]; }

    [[nodiscard]] static int find(const std::map<std::string, int>& index, const Named& name,
                                  const Document& document, const std::string& what) {
        const auto it = index.find(name.name);
        if (it == index.end())
            throw document.error_at(name.pointer, "there is no " + what + " " + in_quotes(name.name));
        return it->second;
    }
    [[nodiscard]] int find_part(const Named& name, const Document& document) const {
        return find(part_index_, name, document, "part");
    }

    [[nodiscard]] std::vector<int> parts_of(const std::vector<Named>& names) const {
        std::vector<int> all;
        for (const Named& name : names)
            if (const int part = find_part(name, files_.parts); part != kLeftOut)
                all.push_back(part);
        return all;
    }
    [[nodiscard]] faults::Access access_of(const AccessText& text) const {
        return {text.burner_door_off, text.blower_door_off, parts_of(text.off), parts_of(text.on)};
    }

    [[nodiscard]] std::vector<std::string> names_of(const std::vector<Named>& places) const {
        std::vector<std::string> names;
        for (const Named& place : places) {
            if (!furnace_.has_all({place.name}) &&
                instruments::find_spot(place.name) == instruments::Spot::count)
                throw files_.parts.error_at(place.pointer, "there is no place or spot of this name");
            names.push_back(place.name);
        }
        return names;
    }

    void add(PartText& text) {
        const Document& document = files_.parts;
        Part part = std::move(text.part);
        part.look.access = access_of(text.look);
        part.tested_at = text.tested_elsewhere ? names_of(text.tested_at) : part.has;
        part.look.sights = sights_of(text.sights);
        part.bench_test.sights = sights_of(text.bench_sights);
        for (const Named& element : text.bench_elements)
            part.bench_test.elements.push_back(furnace_.element(element, document));
        for (const ApartText& apart : text.apart)
            if (furnace_.has_all(apart.has))
                part.bench_test.pairs.push_back(between(apart.a, apart.b, document));
        for (ServiceText& from : text.services) {
            Service service = std::move(from.service);
            service.access = access_of(from.access);
            for (const Named& path : from.restores)
                service.restores.push_back(furnace_.field(path, document));
            for (const SettingText& set : from.sets)
                service.sets.push_back({furnace_.field(set.condition, document), set.value});
            if (service.per_turn != 0.0)
                service.adjusts = furnace_.field(from.adjusts, document);
            sort_out(service.restores);
            part.services.push_back(std::move(service));
        }
        catalogue_.parts.push_back(std::move(part));
    }

    [[nodiscard]] std::vector<faults::Sight> sights_of(std::vector<SightText>& texts) const {
        std::vector<faults::Sight> sights;
        for (SightText& sight : texts)
            if (furnace_.has_all(sight.has))
                sights.push_back({furnace_.field(sight.condition, files_.parts), std::move(sight.bands),
                                  sight.wear, std::move(sight.steps), sight.until});
        return sights;
    }

    [[nodiscard]] NodePair between(const Named& a_place, const Named& b_place,
                                   const Document& document) const {
        const int a = furnace_.node(a_place, document);
        const int b = furnace_.node(b_place, document);
        if (a == b)
            throw document.error_at(b_place.pointer, "two places, not one");
        return {std::min(a, b), std::max(a, b)};
    }

    int bridge(const BridgeText& text, const Document& document) {
        const NodePair nodes = between(text.a, text.b, document);
        auto& all = catalogue_.bridges;
        const auto it = std::find(all.begin(), all.end(), nodes);
        const auto place = static_cast<int>(it - all.begin());
        if (it == all.end())
            all.push_back(nodes);
        return place;
    }

    [[nodiscard]] std::vector<faults::ServiceRef> refs_of(const std::vector<ServiceRefText>& texts,
                                                          const Document& document) const {
        std::vector<faults::ServiceRef> refs;
        for (const ServiceRefText& text : texts)
            if (const int part = find_part(text.part, document); part != kLeftOut)
                refs.push_back({part, text.kind});
        return refs;
    }

    void add(FaultText& text) {
        const Document& document = file(text);
        Fault fault = text.fault;
        fault.part = find_part(text.part, document);
        for (const ChangeText& change : text.changes) {
            fault.changes.push_back(change.change);
            fault.changes.back().field = furnace_.field(change.condition, document);
        }
        for (const BridgeText& b : text.bridges)
            fault.bridges.push_back({bridge(b, document), b.least_ohm, b.most_ohm});
        fault.repairs = refs_of(text.repairs, document);
        fault.seeming = refs_of(text.seeming, document);
        for (const Named& damage : text.damages)
            if (const int other = find(fault_index_, damage, document, "fault"); other != kLeftOut)
                fault.damages.push_back(other);
        for (const LookAlikeText& like : text.look_alikes)
            if (const int other = find(fault_index_, like.fault, document, "fault"); other != kLeftOut)
                fault.look_alikes.push_back({other, like.because});
        catalogue_.faults.push_back(std::move(fault));
    }

    /// A service puts right whatever it is named as a repair of; a screw that is turned does not: how far it
    /// is turned is up to the hand.
    void teach_services(const Fault& fault) {
        for (const faults::ServiceRef& ref : fault.repairs)
            for (Service& service : catalogue_.parts[static_cast<std::size_t>(ref.part)].services) {
                if (service.kind != ref.kind || service.per_turn != 0.0)
                    continue;
                for (const faults::Change& change : fault.changes)
                    service.restores.push_back(change.field);
                for (const faults::BridgeChange& b : fault.bridges)
                    service.clears_bridges.push_back(b.bridge);
                sort_out(service.restores);
                sort_out(service.clears_bridges);
            }
    }

    void judge(const FaultText& text) const {
        try {
            faults::check(
                catalogue_,
                catalogue_.faults[static_cast<std::size_t>(fault_index_.find(text.fault.id)->second)]);
        } catch (const std::invalid_argument& error) {
            throw file(text).error_at(pointer_to(text.pointer, "id"), error.what());
        }
    }

    const CatalogueFiles& files_;
    Furnace furnace_;
    std::map<std::string, int> part_index_; ///< by id; kLeftOut
    std::map<std::string, int> fault_index_;
    Catalogue catalogue_;
};

} // namespace

std::string CatalogueFiles::canonical() const {
    std::string all = parts.canonical();
    for (const Document& document : faults)
        all += '\n' + document.canonical();
    return all;
}

CatalogueFiles read_catalogue_files() {
    CatalogueFiles files{read_document(find_data_file("parts", kFaultsFolder)), {}};
    for (int i = 0; i < faults::kGroups; ++i) {
        const std::string name(faults::name_of(static_cast<faults::Group>(i)));
        files.faults.push_back(read_document(find_data_file(name, kFaultsFolder)));
    }
    return files;
}

faults::Catalogue read_catalogue(const CatalogueFiles& files, const furnace::Model& model) {
    return Resolver(files, model).resolve();
}

faults::Catalogue load_catalogue(const furnace::Model& model) {
    return read_catalogue(read_catalogue_files(), model);
}

} // namespace lightoff::files
