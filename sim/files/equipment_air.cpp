// SPDX-License-Identifier: MIT
#include "files/equipment_fan.hpp"
#include "files/equipment_rooms.hpp"

namespace lightoff::files {
namespace {

air::BlowerParams read_blower(const Object& o) {
    air::BlowerParams b;
    b.fan = read_fan(o);
    b.rotor_inertia_kg_m2 = o.number("rotor_inertia", {1e-5, 10.0, "kg_m2"});
    b.bearing_drag_nm = o.number("bearing_drag", {0.0, 10.0, "Nm"});
    b.unbalance_kg_m = o.number("unbalance", {0.0, 0.1, "kg_m"});
    b.packing_unbalance_kg_m = o.number("packing_unbalance", {0.0, 0.1, "kg_m"});
    b.shaken_mass_kg = o.number("shaken_mass", {0.1, 100.0, "kg"});
    return b;
}

/// Pieces are written as the drop they take at one flow of standard air, as a technician would measure them.
air::DuctParams read_ducts(const Object& o) {
    const double flow = o.number("reference_flow", {50.0, 5000.0, "cfm"});
    const double density = o.number("reference_density", {0.5, 2.0, "kg_per_m3"});
    const auto area = [&](std::string_view name) {
        return units::effective_area_m2(o.number(name, {0.001, 3.0, "inwc"}), flow, density);
    };
    air::DuctParams d;
    d.return_duct_area_m2 = area("return_duct_drop");
    d.filter_area_m2 = area("filter_drop");
    d.cabinet_area_m2 = area("cabinet_drop");
    d.exchanger_area_m2 = area("exchanger_drop");
    d.coil_area_m2 = area("coil_drop");
    d.supply_duct_area_m2 = area("supply_duct_drop");
    d.registers_area_m2 = area("registers_drop");
    d.blower_door_area_m2 = o.number("blower_door_effective_area", {1e-3, 2.0, "m2"});
    return d;
}

} // namespace

air::Params read_air(const Object& section) {
    air::Params p;
    p.blower = read_blower(section.object("blower"));
    p.ducts = read_ducts(section.object("ducts"));
    return p;
}

} // namespace lightoff::files
