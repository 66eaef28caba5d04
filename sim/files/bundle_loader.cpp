// SPDX-License-Identifier: MIT
#include "files/bundle_loader.hpp"
#include "files/bundle.hpp"
#include "files/data_folder.hpp"
#include "files/equipment.hpp"
#include "files/fault_catalogue.hpp"
#include "files/hazard_table.hpp"
#include "files/rubric.hpp"
#include "files/scenario.hpp"

namespace lightoff::files {
namespace {

/// A profile's name is its file's name, nothing that could lead elsewhere.
void require_plain_name(const Document& scenario, const std::string& name) {
    if (name.find('/') == std::string::npos && name.find('\\') == std::string::npos)
        return;
    throw scenario.root().error("equipment", "the name of a file in equipment/, without folder and ending");
}

std::string equipment_file(const Document& scenario, const std::string& name) {
    require_plain_name(scenario, name);
    try {
        return find_data_file(name, kEquipmentFolder);
    } catch (const Error& error) {
        throw scenario.root().error("equipment", error.finding.allowed, error.finding.advice);
    }
}

} // namespace

LoadedBundle load_bundle(const std::string& scenario) {
    LoadedBundle bundle;
    bundle.scenario_file = find_data_file(scenario, kCallsFolder);
    bundle.name = data_name_of(bundle.scenario_file);
    const Document document = read_document(bundle.scenario_file);
    bundle.scenario = read_scenario(document);
    bundle.equipment_file = equipment_file(document, bundle.scenario.equipment);
    const Document equipment = read_document(bundle.equipment_file);
    bundle.site.model = read_equipment(equipment);
    const CatalogueFiles catalogue = read_catalogue_files();
    bundle.site.catalogue = read_catalogue(catalogue, bundle.site.model);
    const Document hazards = read_hazard_file();
    bundle.site.hazards = read_hazards(hazards);
    const Document rubric = read_rubric_file();
    bundle.rubric = read_rubric(rubric);
    for (const auto& [name, weight] : bundle.scenario.rubric_weights)
        if (!lesson::set_weight(bundle.rubric, name, weight))
            throw document.root().error("rubric_weights", "lines that school/rubric.json has",
                                        "there is no \"" + name + "\"");
    bundle.site.traces = read_traces(document, bundle.scenario, bundle.site.catalogue);
    check_scenario(document, bundle.scenario, bundle.site);
    Bundle texts;
    texts.scenario = document.canonical();
    texts.profile = equipment.canonical();
    texts.catalogue = catalogue.canonical();
    texts.school = hazards.canonical() + rubric.canonical();
    bundle.site.model.bundle_hash = bundle_hash(texts);
    return bundle;
}

furnace::Model load_equipment(const std::string& equipment) {
    return read_equipment(read_document(find_data_file(equipment, kEquipmentFolder)));
}

} // namespace lightoff::files
