// SPDX-License-Identifier: MIT
#include "files/equipment_wiring.hpp"

namespace lightoff::files {
namespace {

using furnace::PartDescription;
using furnace::PartKind;
using furnace::WiringDescription;

constexpr Range kSmallOhm{1e-6, 1e3, "ohm"};
constexpr Range kAnyOhm{1e-6, 1e12, "ohm"};

void read_switches(const Object& wiring, WiringDescription& d) {
    for (const auto& [name, s] : wiring.members("switches", {1, 64})) {
        furnace::SwitchDescription out;
        out.name = name;
        out.driven_by = s.text("driven_by");
        if (out.driven_by == "board")
            out.detail = s.text("output");
        if (out.driven_by == "relay")
            out.detail = s.text("coil");
        d.switches.push_back(std::move(out));
    }
}

void read_terminals(const Object& wiring, WiringDescription& d) {
    for (const auto& [name, t] : wiring.members("terminals", {1, 90}))
        d.terminals.push_back({name, t.text_or("pin", "")});
}

void read_wires(const Object& wiring, WiringDescription& d) {
    for (const Object& w : wiring.objects("wires", {1, 120})) {
        furnace::WireDescription out;
        out.name = w.text("name");
        out.from = w.text("from");
        out.to = w.text("to");
        out.colour = w.text("colour");
        out.awg = static_cast<int>(w.integer("awg", 4, 30));
        out.length_m = w.number("length", {0.01, 200.0, "m"});
        d.wires.push_back(std::move(out));
    }
    for (const Object& c : wiring.objects("cables", {0, 16})) {
        furnace::CableDescription out;
        out.name = c.text("name");
        out.wires = c.texts("wires", {2, 8});
        out.farad_per_m = c.number("capacitance", {0.1, 1000.0, "pF_per_m"});
        out.length_m = c.number("length", {0.01, 200.0, "m"});
        d.cables.push_back(std::move(out));
    }
}

void read_cores(const Object& wiring, WiringDescription& d) {
    for (const auto& [name, c] : wiring.members("transformer_cores", {0, 4}))
        d.transformer_cores.push_back(
            {name, c.number("magnetising_reactance", kAnyOhm), c.number("iron_loss_resistance", kAnyOhm)});
    for (const auto& [name, c] : wiring.members("motor_cores", {0, 2})) {
        furnace::MotorCoreDescription out;
        out.name = name;
        out.magnetising_ohm = c.number("magnetising_reactance", kAnyOhm);
        out.rotor_ohm = c.number("rotor_resistance", kAnyOhm);
        out.rotor_reactance_ohm = c.number("rotor_reactance", kAnyOhm);
        out.iron_loss_ohm = c.number("iron_loss_resistance", kAnyOhm);
        out.synchronous_rad_s = c.number("synchronous_speed", {60.0, 3600.0, "rpm"});
        d.motor_cores.push_back(std::move(out));
    }
}

void read_coil(const Object& p, PartDescription& out) {
    out.ohm = p.number("resistance", kAnyOhm);
    out.henry = p.number("inductance", {0.0, 100.0, "H"});
    out.pull_in_v = p.number_or("pull_in", {1.0, 300.0, "V"}, 0.0);
    if (out.pull_in_v <= 0.0)
        return;
    out.drop_out_v = p.number("drop_out", {0.1, 300.0, "V"});
    out.travel_s = p.number("travel", {1.0, 50.0, "ms"});
    if (out.drop_out_v >= out.pull_in_v)
        throw p.error("drop_out_V", "less than the pull-in voltage");
}

void read_winding(const Object& p, PartDescription& out) {
    out.core = p.text("core");
    out.start_axis = p.choice_or<bool>("axis", {{"main", false}, {"start", true}}, false);
    out.turns = p.number("turns", {0.001, 100.0});
    out.ohm = p.number("resistance", kSmallOhm);
    out.leakage_ohm = p.number("leakage_reactance", {0.0, 1e4, "ohm"});
}

PartDescription read_part(const Object& p) {
    PartDescription out;
    out.name = p.text("name");
    out.from = p.text("from");
    out.to = p.text("to");
    out.kind = p.choice<PartKind>("kind", {{"resistor", PartKind::resistor},
                                           {"fuse", PartKind::fuse},
                                           {"coil", PartKind::coil},
                                           {"capacitor", PartKind::capacitor},
                                           {"contact", PartKind::contact},
                                           {"source", PartKind::source},
                                           {"winding", PartKind::winding},
                                           {"igniter", PartKind::igniter},
                                           {"flame", PartKind::flame}});
    switch (out.kind) {
    case PartKind::resistor:
        out.ohm = p.number("resistance", kAnyOhm);
        break;
    case PartKind::fuse:
        out.ohm = p.number("resistance", kSmallOhm);
        out.rating_a = p.number("rating", {0.1, 30.0, "A"});
        break;
    case PartKind::coil:
        read_coil(p, out);
        break;
    case PartKind::capacitor:
        out.farad = p.number("capacitance", {1e-6, 200.0, "uF"});
        break;
    case PartKind::contact:
        out.switch_name = p.text("switch");
        out.closed_at_rest = p.flag_or("closed_at_rest", false);
        out.ohm = p.number("closed_resistance", kSmallOhm);
        break;
    case PartKind::source:
        out.ac_v = p.number_or("ac", {0.0, 300.0, "V"}, 0.0);
        out.dc_v = p.number_or("dc", {0.0, 50.0, "V"}, 0.0);
        out.ohm = p.number("resistance", kSmallOhm);
        break;
    case PartKind::winding:
        read_winding(p, out);
        break;
    case PartKind::igniter:
    case PartKind::flame:
        break;
    }
    out.thermal_group = p.text_or("thermal_group", "");
    return out;
}

} // namespace

furnace::WiringDescription read_wiring(const Object& wiring) {
    WiringDescription d;
    d.stray_farad = wiring.number("stray_capacitance", {0.1, 1000.0, "pF"});
    d.stray_ohm = wiring.number("stray_resistance", {1.0, 1e6, "Mohm"});
    d.joint_ohm = wiring.number("joint_resistance", {0.01, 1000.0, "mohm"});
    d.common = wiring.text("common");
    d.gas_valve_coil = wiring.text_or("gas_valve_coil", "");
    d.flame_current = wiring.text_or("flame_current", "");
    d.call_wire = wiring.text_or("call_wire", "");
    d.thermostat_supply = wiring.text_or("thermostat_supply", "");
    d.nodes = wiring.texts("nodes", {0, 100});
    read_switches(wiring, d);
    read_terminals(wiring, d);
    read_wires(wiring, d);
    read_cores(wiring, d);
    for (const Object& p : wiring.objects("parts", {1, 120}))
        d.parts.push_back(read_part(p));
    return d;
}

} // namespace lightoff::files
