// SPDX-License-Identifier: MIT
#pragma once
#include "files/reader.hpp"
#include <string_view>

/// A small kind of file that uses every feature of the reader, for tests of the reader and the schemas.
inline constexpr std::string_view kSampleFile = R"({
  "$schema": "sample.schema.json",
  "title": "Reference",
  "fuel": "natural-gas",
  "gas": {
    "note": "three orifices are enough here",
    "manifold_pressure_inwc": 3.5,
    "orifices": [{"diameter_in": 0.082}, {"diameter_mm": 2.1, "plugged_pct": 10}, {"diameter_in": 0.08}],
    "trials": 3,
    "propane": false
  },
  "timers": {"prepurge_s": 15, "warm_up_ticks": 400},
  "fan_curve": {"flow_cfm": [0, 20, 40], "suction_inwc": [1.3, 1.1, 0.7]},
  "nodes": ["R", "C", "W"],
  "parts": {"limit": {"resistance_mohm": 30}, "rod": {"resistance_kohm": 2, "outdoor_F": 20}},
  "extra": {"anything": [1, 2, {"deep": null}]}
})";

inline void load_sample(const lightoff::files::Document& document) {
    using namespace lightoff::files;
    const Object root = document.root();
    root.text("title", {1, 80});
    root.choice<int>("fuel", {{"natural-gas", 0}, {"propane", 1}});
    const Object gas = root.object("gas");
    gas.number("manifold_pressure", {0.5, 14.0, "inwc"});
    for (const Object& orifice : gas.objects("orifices", {1, 8})) {
        orifice.number("diameter", {0.01, 0.3, "in"});
        orifice.number_or("plugged", {0.0, 100.0, "pct"}, 0.0);
    }
    gas.integer("trials", 1, 9);
    gas.flag("propane");
    const Object timers = root.object("timers");
    timers.ticks("prepurge", {0, 600, "s"});
    timers.ticks("warm_up", {0, 600, "s"});
    root.curve("fan_curve", {"flow", {0, 200, "cfm"}}, {"suction", {0, 3, "inwc"}}, Trend::falling);
    root.texts("nodes", {1, 20});
    for (const auto& [name, part] : root.members("parts", {1, 50})) {
        part.number("resistance", {0, 1e9, "ohm"});
        part.number_or("outdoor", {-60, 120, "F"}, 293.15);
    }
    if (const auto house = root.optional_object("house"))
        house->number("floor", {10, 1000, "m2"});
    root.raw("extra");
    root.finish();
}
