// SPDX-License-Identifier: MIT
#include "files/equipment_rooms.hpp"

namespace lightoff::files {
namespace {

constexpr Range kCapacity{0.1, 1e9, "J_per_K"};
constexpr Range kConductance{1e-3, 1e5, "W_per_K"};
constexpr Range kShare{0.0, 1.0, "fraction"};

void read_exchanger(const Object& o, heat::Params& p) {
    heat::ExchangerParams& e = p.exchanger;
    const std::vector<double> capacity =
        o.numbers("pass_capacity", kCapacity, {heat::kPasses, heat::kPasses});
    const std::vector<double> to_air =
        o.numbers("pass_air_conductance", kConductance, {heat::kPasses, heat::kPasses});
    for (std::size_t i = 0; i < heat::kPasses; ++i) {
        p.capacity_j_k.exchanger[i] = capacity[i];
        e.air_conductance_w_k[i] = to_air[i];
    }
    e.gas_conductance_w_k = o.number("gas_conductance", kConductance);
    e.gas_reference_flow_kg_s = o.number("gas_reference_flow", {1e-4, 1.0, "kg_per_s"});
    e.gas_still_fraction = o.number("gas_still", kShare);
    e.gas_property_temperature_k = o.number("gas_property_temperature", {300.0, 2000.0, "K"});
    e.flame_radiant_fraction = o.number("flame_radiant", kShare);
    e.air_reference_flow_kg_s = o.number("air_reference_flow", {1e-3, 10.0, "kg_per_s"});
    e.air_still_fraction = o.number("air_still", kShare);
}

heat::ThermalSwitch read_switch(const Object& o, Range range) {
    heat::ThermalSwitch s{};
    s.opens_k = o.number("opens", range);
    if (o.flag_or("manual_reset", false))
        return s;
    s.closes_k = o.number("closes", range);
    if (s.closes_k >= s.opens_k)
        throw o.error("closes_" + std::string(range.unit), "less than the temperature at which it opens");
    return s;
}

heat::MotorParams read_motor(const Object& o, double& capacity_j_k) {
    capacity_j_k = o.number("capacity", kCapacity);
    heat::MotorParams m{};
    m.shell_w_k = o.number("shell", kConductance);
    m.openings_w_k = o.number("openings", {0.0, 1e3, "W_per_K"});
    m.overload = {o.number("overload_opens", {40.0, 250.0, "C"}),
                  o.number("overload_closes", {0.0, 250.0, "C"})};
    if (m.overload.closes_k >= m.overload.opens_k)
        throw o.error("overload_closes_C", "less than the temperature at which it opens");
    return m;
}

void read_limit(const Object& o, heat::Params& p) {
    p.limit.contact = read_switch(o, {80.0, 400.0, "F"});
    p.capacity_j_k.limit = o.number("capacity", kCapacity);
    p.limit.air_w_k = o.number("air", kConductance);
    p.limit.still_fraction = o.number("still", kShare);
    p.limit.view_m2 = o.number("view", {0.0, 0.1, "m2"});
}

void read_rollout(const Object& o, heat::Params& p) {
    p.rollout.contact = read_switch(o, {100.0, 600.0, "F"});
    p.capacity_j_k.rollout = o.number("capacity", kCapacity);
    p.rollout.air_w_k = o.number("air", kConductance);
    p.rollout.struck_fraction = o.number("struck", kShare);
}

void read_vent(const Object& section, heat::Params& p) {
    const Object collector = section.object("collector");
    p.capacity_j_k.collector = collector.number("capacity", kCapacity);
    p.vent.collector_w_k = collector.number("gas", kConductance);
    const Object vent = section.object("vent");
    p.capacity_j_k.vent = vent.number("capacity", kCapacity);
    p.vent.gas_w_k = vent.number("gas", kConductance);
    p.vent.skin_w_k = vent.number("skin", kConductance);
    p.vent.property_temperature_k = vent.number("property_temperature", {300.0, 1000.0, "K"});
}

void read_igniter(const Object& o, heat::Params& p) {
    p.capacity_j_k.igniter = o.number("capacity", kCapacity);
    p.igniter.cold_ohm = o.number("cold", {1.0, 1000.0, "ohm"});
    p.igniter.floor_ohm = o.number("floor", {1.0, 1000.0, "ohm"});
    p.igniter.softening_k = o.number("softening", {1.0, 5000.0, "K_difference"});
    p.igniter.area_m2 = o.number("area", {0.1, 100.0, "cm2"});
    p.igniter.emissivity = o.number("emissivity", {0.01, 1.0});
    p.igniter.convection_w_m2_k = o.number("convection", {0.0, 1000.0, "W_per_m2K"});
    p.igniter.crack_differential_k = o.number("crack_differential", {1.0, 1000.0, "K_difference"});
}

} // namespace

heat::Params read_heat(const Object& section) {
    heat::Params p;
    read_exchanger(section.object("exchanger"), p);
    const Object free = section.object("free_convection");
    p.free_convection.plume_kg_s_sqrt_k = free.number("plume", {0.0, 1.0, "kg_per_s_sqrtK"});
    p.free_convection.thermosiphon_kg_s_sqrt_k = free.number("thermosiphon", {0.0, 1.0, "kg_per_s_sqrtK"});
    p.capacity_j_k.plenum = section.object("plenum").number("capacity", kCapacity);
    const Object jacket = section.object("jacket");
    p.jacket.insulated_w_k = jacket.number("insulated", kConductance);
    p.jacket.bare_w_k = jacket.number("bare", kConductance);
    p.jacket.collector_to_vestibule_w_k = jacket.number("collector_to_vestibule", kConductance);
    p.jacket.vestibule_to_basement_w_k = jacket.number("vestibule_to_basement", kConductance);
    p.jacket.to_house_fraction = jacket.number("to_house", kShare);
    read_limit(section.object("limit"), p);
    read_rollout(section.object("rollout"), p);
    read_vent(section, p);
    if (const auto igniter = section.optional_object("igniter"))
        read_igniter(*igniter, p);
    p.blower_motor = read_motor(section.object("blower_motor"), p.capacity_j_k.blower_winding);
    if (const auto inducer = section.optional_object("inducer_motor"))
        p.inducer_motor = read_motor(*inducer, p.capacity_j_k.inducer_winding);
    const Object transformer = section.object("transformer");
    p.capacity_j_k.transformer = transformer.number("capacity", kCapacity);
    p.transformer.cooling_w_k = transformer.number("cooling", kConductance);
    const Object house = section.object("house");
    p.capacity_j_k.house = house.number("capacity", kCapacity);
    p.house.loss_w_k = house.number("loss", kConductance);
    return p;
}

} // namespace lightoff::files
