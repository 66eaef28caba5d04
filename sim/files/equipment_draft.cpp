// SPDX-License-Identifier: MIT
#include "files/equipment_fan.hpp"
#include "files/equipment_rooms.hpp"

namespace lightoff::files {
namespace {

constexpr Range kArea{0.01, 1e5, "cm2"};

draft::PathParams read_path(const Object& o) {
    draft::PathParams p;
    p.door_area_m2 = o.number("burner_door_effective_area", kArea);
    p.burner_area_m2 = o.number("burner_openings_effective_area", kArea);
    p.exchanger_area_m2 = o.number("exchanger_effective_area", kArea);
    p.outlet_area_m2 = o.number("exchanger_outlets_effective_area", kArea);
    p.exchanger_height_m = o.number("exchanger_rise", {0.0, 5.0, "m"});
    p.vent_diameter_m = o.number("vent_diameter", {1.0, 24.0, "in"});
    p.vent_height_m = o.number("vent_height", {0.0, 50.0, "m"});
    p.vent_length_m = o.number("vent_length", {0.1, 100.0, "m"});
    p.vent_friction_factor = o.number("vent_friction_factor", {0.001, 1.0});
    p.vent_fittings_loss = o.number("vent_fittings_loss", {0.0, 100.0});
    p.cap_wind_factor = o.number("cap_wind_factor", {-1.0, 1.0});
    p.draft_hood = o.flag("draft_hood") ? 1 : 0;
    if (p.draft_hood != 0)
        p.hood_entry_loss = o.number("hood_entry_loss", {0.0, 100.0});
    return p;
}

draft::InducerParams read_inducer(const Object& o) {
    draft::InducerParams p;
    p.fan = read_fan(o);
    p.rotor_inertia_kg_m2 = o.number("rotor_inertia", {1e-6, 1.0, "kg_m2"});
    p.bearing_drag_nm = o.number("bearing_drag", {0.0, 1.0, "Nm"});
    p.unbalance_kg_m = o.number("unbalance", {0.0, 0.01, "kg_m"});
    p.shaken_mass_kg = o.number("shaken_mass", {0.1, 50.0, "kg"});
    return p;
}

draft::SenseLineParams read_sense_line(const Object& o) {
    draft::SenseLineParams p;
    p.port_resistance_pa_s_m3 = o.number("port_resistance", {1e3, 1e12, "Pa_s_per_m3"});
    p.hose_resistance_pa_s_m3 = o.number("hose_resistance", {1e3, 1e12, "Pa_s_per_m3"});
    p.hose_compliance_m3_pa = o.number("hose_compliance", {1e-13, 1e-6, "m3_per_Pa"});
    p.switch_compliance_m3_pa = o.number("switch_compliance", {1e-13, 1e-6, "m3_per_Pa"});
    p.hose_bore_area_m2 = o.number("hose_bore_area", {0.1, 1000.0, "mm2"});
    p.make_pa = o.number("switch_make", {0.01, 10.0, "inwc"});
    p.break_pa = o.number("switch_break", {0.005, 10.0, "inwc"});
    if (p.break_pa >= p.make_pa)
        throw o.error("switch_break_inwc", "less than the suction at which the switch makes");
    return p;
}

} // namespace

draft::Params read_draft(const Object& section) {
    draft::Params p;
    p.path = read_path(section.object("path"));
    if (const auto inducer = section.optional_object("inducer"))
        p.inducer = read_inducer(*inducer);
    if (const auto line = section.optional_object("sense_line"))
        p.sense_line = read_sense_line(*line);
    return p;
}

} // namespace lightoff::files
