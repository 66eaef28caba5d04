// SPDX-License-Identifier: MIT
#pragma once
#include "files/catalogue_text.hpp"
#include "files/equipment.hpp"
#include "files/hazard_table.hpp"
#include "files/rubric.hpp"
#include "files/scenario.hpp"
#include "files/schema_recorder.hpp"
#include <algorithm>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

/// The kinds of bundled files, how each is loaded, and the schema that the loader's requests make.
struct BundledKind {
    std::string folder; ///< below scenarios/
    std::string schema; ///< file name in scenarios/schema/
    std::string title;
    void (*load)(const lightoff::files::Document&);
    std::string only = {};   ///< the one file of this kind in the folder
    std::string except = {}; ///< the one file that is of another kind
};

inline std::vector<BundledKind> bundled_kinds() {
    using namespace lightoff::files;
    return {
        {"equipment", "equipment.schema.json", "Lightoff equipment",
         [](const Document& d) { read_equipment(d); }},
        {"calls", "scenario.schema.json", "Lightoff scenario", [](const Document& d) { read_scenario(d); }},
        {"faults",
         "parts.schema.json",
         "Lightoff parts",
         [](const Document& d) { read_parts(d); },
         "parts.json",
         {}},
        {"faults",
         "faults.schema.json",
         "Lightoff faults",
         [](const Document& d) { read_faults(d, 0); },
         {},
         "parts.json"},
        {"school",
         "hazards.schema.json",
         "Lightoff hazards",
         [](const Document& d) { read_hazards(d); },
         "hazards.json",
         {}},
        {"school",
         "rubric.schema.json",
         "Lightoff rubric",
         [](const Document& d) { read_rubric(d); },
         "rubric.json",
         {}},
    };
}

/// Paths of the files of a kind, sorted.
inline std::vector<std::string> bundled_files(const std::string& scenarios, const BundledKind& kind) {
    std::vector<std::string> paths;
    for (const auto& entry : std::filesystem::directory_iterator(scenarios + "/" + kind.folder))
        if (entry.path().extension() == ".json" &&
            (kind.only.empty() || entry.path().filename() == kind.only) &&
            entry.path().filename() != kind.except)
            paths.push_back(entry.path().string());
    std::sort(paths.begin(), paths.end());
    return paths;
}

inline std::string recorded_schema(const std::string& scenarios, const BundledKind& kind) {
    lightoff::files::SchemaRecorder recorder;
    for (const std::string& path : bundled_files(scenarios, kind)) {
        const auto document = lightoff::files::read_document(path);
        document.record(&recorder);
        kind.load(document);
    }
    return recorder.schema(kind.title);
}
