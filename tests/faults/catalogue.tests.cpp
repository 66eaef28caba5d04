// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "broken.hpp"
#include "files/bundle_loader.hpp"
#include "files/disk.hpp"
#include "files/message_of.hpp"

#include <array>

// The catalogue as it is written: complete, and refused with its place when it is wrong.

using namespace lightoff;
using namespace lightoff::test;

namespace {

/// Message of the loader when `from` in one of the files reads `to` instead.
std::string refusal(std::size_t file, const std::string& from, const std::string& to) {
    files::CatalogueFiles all = files::read_catalogue_files();
    files::Document& document = file == 0 ? all.parts : all.faults[file - 1];
    std::string text = files::read_file(document.file());
    const std::size_t at = text.find(from);
    REQUIRE(at != std::string::npos);
    text.replace(at, from.size(), to);
    document = files::parse_document(text, "f.json");
    return message_of([&] { files::read_catalogue(all, reference_model()); });
}

constexpr std::size_t kParts = 0;
constexpr std::size_t kDraft = 3; ///< its place among the groups, from 1

} // namespace

TEST_CASE("at least fifty faults, some in every group, each with a part, a prior and a way to set in") {
    std::array<int, faults::kGroups> in_group{};
    for (const faults::Fault& fault : catalogue().faults) {
        INFO(fault.id);
        ++in_group[static_cast<std::size_t>(fault.group)];
        CHECK(fault.prior > 0.0);
        CHECK_FALSE(fault.triggers.empty());
        CHECK(fault.repair_minutes > 0.0);
    }
    CHECK(catalogue().faults.size() >= 50);
    for (const int count : in_group)
        CHECK(count >= 5);
}

TEST_CASE("words of a look describe and never name a cause") {
    for (const faults::Part& part : catalogue().parts)
        for (const faults::Sight& sight : part.look.sights)
            for (const faults::Band& band : sight.bands)
                for (const faults::Fault& fault : catalogue().faults) {
                    CHECK(band.words.find(fault.id) == std::string::npos);
                    CHECK(band.words.find("fault") == std::string::npos);
                    CHECK(band.words.find("defect") == std::string::npos);
                }
}

TEST_CASE("a look sees a number in the band that it lies in") {
    const auto& look = catalogue().parts[static_cast<std::size_t>(catalogue().find_part("filter"))].look;
    const auto seen = [&](double loading) {
        Rig rig;
        rig.set("air.ducts.filter_loading", loading);
        return look.sights[0]
            .bands[static_cast<std::size_t>(faults::describe(look, rig.world.condition)[0])]
            .words;
    };
    CHECK(seen(1.0).find("white") != std::string::npos);
    CHECK(seen(5.0).find("no light") != std::string::npos);
    CHECK(seen(1.6) == seen(3.9)); // a band begins at the end of the one before
    CHECK(seen(1.59) != seen(1.6));
    CHECK(seen(1e9) == seen(12.0));
}

TEST_CASE("a furnace without an inducer has no fault of one, and nothing refers to what it lacks") {
    const files::LoadedBundle natural = files::load_bundle("natural-draft-call");
    const faults::Catalogue& c = natural.site.catalogue;
    for (const char* id : {"inducer_seized", "igniter_open", "hose_plugged", "rod_coated", "rollout_open"})
        CHECK(c.find_fault(id) == -1);
    for (const char* id : {"filter_dirty", "anticipator_high", "valve_coil_open", "transformer_primary_open"})
        CHECK(c.find_fault(id) >= 0);
    CHECK(catalogue().find_fault("anticipator_high") == -1); // the reference furnace's is electronic
    for (const faults::Fault& fault : c.faults) {
        INFO(fault.id);
        CHECK_NOTHROW(faults::check(c, fault));
    }
}

TEST_CASE("on the furnace without an inducer too, the right repair brings it back bit for bit") {
    const files::LoadedBundle natural = files::load_bundle("natural-draft-call");
    const faults::Catalogue& c = natural.site.catalogue;
    const furnace::Condition as_built = furnace::as_built(natural.site.model, 9);
    for (const faults::Fault& fault : c.faults)
        for (const faults::ServiceRef& repair : fault.repairs) {
            if (c.find_service(repair)->per_turn != 0.0)
                continue;
            INFO(fault.id);
            furnace::Condition condition = as_built;
            furnace::Inputs inputs;
            faults::apply(c, fault, 0.7, condition, inputs);
            CHECK(hash_of(condition) != hash_of(as_built));
            faults::perform(c, *c.find_service(repair), as_built, condition);
            CHECK(hash_of(condition) == hash_of(as_built));
        }
}

TEST_CASE("what is wrong in the files is refused with its place") {
    CHECK(refusal(kDraft, "\"draft.sense_line.hose_plug\"", "\"draft.sense_line.hose_plugg\"")
              .rfind("f.json: /faults/0/changes/0/condition: ", 0) == 0);
    CHECK(refusal(kDraft, "\"part\": \"pressure_hose\"", "\"part\": \"hose\"")
              .rfind("f.json: /faults/0/part: ", 0) == 0);
    CHECK(refusal(kDraft, "\"clean pressure_hose\"", "\"wash pressure_hose\"")
              .rfind("f.json: /faults/0/repairs", 0) == 0);
    CHECK(refusal(kDraft, "\"clean pressure_hose\"", "\"reset pressure_hose\"")
              .rfind("f.json: /faults/0/", 0) == 0);
    CHECK(refusal(kDraft, "\"id\": \"hose_off\"", "\"id\": \"hose_plugged\"")
              .rfind("f.json: /faults/1/id: ", 0) == 0);
    CHECK(refusal(kDraft, "\"value\": 1}", "\"least\": 0, \"most\": 1, \"scale\": \"logarithmic\"}")
              .rfind("f.json: /faults/0/", 0) == 0);
    CHECK(refusal(kDraft, "\"prior\": 6", "\"prior\": 0").rfind("f.json: /faults/0/prior: ", 0) == 0);
    CHECK(refusal(kDraft, "\"prior\": 6", "\"pryor\": 6").rfind("f.json: /faults/0", 0) == 0);
    CHECK(refusal(kParts, "\"restores\": [\"wiring/panel.breaker/series_resistance\"]",
                  "\"restores\": [\"wiring/panel.braker/series_resistance\"]")
              .rfind("f.json: /parts/1/services/0/restores/0: ", 0) == 0);
    CHECK(refusal(kParts, "\"below\": 20,", "\"below\": 0.5,")
              .rfind("f.json: /parts/2/look/sights/0/bands/1/below: ", 0) == 0);
}
