// SPDX-License-Identifier: MIT
#pragma once
#include <cstdint>

namespace lightoff::draft {

/// Hose from the collector box to the pressure switch, and the switch. Suctions are against the room.
struct SenseLineParams {
    double port_resistance_pa_s_m3 = 0.0; ///< restrictor in the collector port
    double hose_resistance_pa_s_m3 = 0.0;
    double hose_compliance_m3_pa = 0.0;   ///< hose volume / absolute pressure
    double switch_compliance_m3_pa = 0.0; ///< chamber and diaphragm
    double hose_bore_area_m2 = 0.0;
    double make_pa = 0.0;  ///< suction at which the switch closes
    double break_pa = 0.0; ///< and opens again; below make
};

enum class SwitchStuck : std::uint32_t { kFree = 0, kOpen = 1, kClosed = 2 };

/// How the line is. Dirt in port or hose only delays; a fraction of 1 seals.
struct SenseLineCondition {
    double port_plug = 0.0;             ///< fraction of the port's bore filled, 0 to 1
    double hose_plug = 0.0;             ///< fraction of the hose's bore filled, 0 to 1, between the two tees
    double kink_pa_s_m3 = 0.0;          ///< added flow resistance of a kink
    double water_slug_m = 0.0;          ///< height of water standing in the hose
    double inducer_side_crack_m2 = 0.0; ///< opening in the hose before plug, kink and slug
    double switch_side_crack_m2 = 0.0;  ///< opening in the hose behind them
    double cavity_leak_m2 = 0.0;        ///< leak of the switch's chamber or diaphragm
    double make_factor = 1.0;           ///< drift of the set points
    double break_factor = 1.0;
    std::uint32_t hose_off = 0; ///< 1: pulled off the switch, both ends open to the room
    SwitchStuck stuck = SwitchStuck::kFree;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("port_plug", "", self.port_plug);
        visit("hose_plug", "", self.hose_plug);
        visit("kink", "Pa s/m3", self.kink_pa_s_m3);
        visit("water_slug", "m", self.water_slug_m);
        visit("inducer_side_crack", "m2", self.inducer_side_crack_m2);
        visit("switch_side_crack", "m2", self.switch_side_crack_m2);
        visit("cavity_leak", "m2", self.cavity_leak_m2);
        visit("make_factor", "", self.make_factor);
        visit("break_factor", "", self.break_factor);
        visit("hose_off", "", self.hose_off);
        visit("stuck", "", self.stuck);
    }
};

/// Suction held in the two ends of the hose (a sealed end keeps it), and the contact.
struct SenseLineState {
    double inducer_side_suction_pa = 0.0;
    double switch_side_suction_pa = 0.0; ///< also in the switch's chamber
    std::uint64_t closed = 0;            ///< 64 bits so that the struct has no hole

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("inducer_side_suction", "Pa", self.inducer_side_suction_pa);
        visit("switch_side_suction", "Pa", self.switch_side_suction_pa);
        visit("closed", "", self.closed);
    }
};

/// Moves air through port and hose for `dt_s` and lets the switch follow. Two chambers, every passage a
/// linear resistance (slow flow), one implicit Euler step, stable for any plug. Dirt raises a resistance by
/// 1 / open^2 (Hagen-Poiseuille by area). A water slug lets air bubble past only where the suctions differ by
/// more than its height (hydrostatics), so it subtracts that height from a rising suction. A leak is a sharp
/// opening of coefficient 0.6 made linear at 150 Pa, the neighbourhood of the set point. The switch compares
/// its chamber with the burner compartment. Leaves out the air that a leak lets into the collector box.
void step_sense_line(const SenseLineParams& params, const SenseLineCondition& condition,
                     SenseLineState& state, double port_suction_pa, double compartment_suction_pa,
                     double dt_s);

} // namespace lightoff::draft
