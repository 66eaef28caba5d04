// SPDX-License-Identifier: MIT
#include "gui/cutaway/places.hpp"

#include "gui/cutaway/cabinet.hpp"

#include <algorithm>
#include <array>

namespace lightoff::cutaway {
namespace {

using instruments::Spot;

const std::array kParts{
    // Small things first: they lie in front of the large ones.
    PartPlace{"collector_port", {{161, 204}, {183, 222}}},
    PartPlace{"pressure_hose", {{104, 200}, {160, 222}}},
    PartPlace{"pressure_switch", {{62, 218}, {100, 256}}},
    PartPlace{"rollout", {{137, 224}, {159, 240}}},
    PartPlace{"limit", {{197, 93}, {258, 110}}},
    PartPlace{"flame_lead", {{180, 214}, {196, 232}}},
    PartPlace{"flame_rod", {{162, 223}, {180, 262}}},
    PartPlace{"igniter_plug", {{168, 364}, {196, 375}}},
    PartPlace{"igniter_wires", {{132, 364}, {167, 375}}},
    PartPlace{"igniter", {{171, 330}, {194, 364}}},
    PartPlace{"pilot", {{171, 330}, {194, 364}}},
    PartPlace{"burner_ground", {{129, 353}, {168, 364}}},
    PartPlace{"orifices", {{109, 240}, {127, 352}}},
    PartPlace{"burners", {{127, 241}, {168, 353}}},
    PartPlace{"burner_openings", {{168, 262}, {204, 330}}},
    PartPlace{"valve_wires", {{62, 286}, {104, 301}}},
    PartPlace{"gas_valve", {{62, 301}, {106, 353}}},
    PartPlace{"safety_wires", {{62, 262}, {104, 284}}},
    PartPlace{"gas_cock", {{11, 320}, {34, 343}}},
    PartPlace{"gas_supply", kGasMeter},
    PartPlace{"gas_pipe", {{34, 322}, {61, 341}}},
    PartPlace{"inducer_capacitor", kInducerCapacitor},
    PartPlace{"inducer_wires", {{104, 188}, {150, 200}}},
    PartPlace{"inducer_motor", {{93, 145}, {119, 171}}},
    PartPlace{"inducer_wheel", {{74, 126}, {138, 190}}},
    PartPlace{"vent_cap", {{58, 0}, {98, 22}}},
    PartPlace{"vent", {{62, 24}, {94, 124}}},
    PartPlace{"board_fuse", kBoardFuse},
    PartPlace{"thermostat_cable", {{74, 503}, {124, 517}}},
    PartPlace{"board", kBoard},
    PartPlace{"door_switch", {{52, 518}, {79, 543}}},
    PartPlace{"junction_box", kJunctionBox},
    PartPlace{"ground_wire", {{134, 562}, {170, 588}}},
    PartPlace{"disconnect", kDisconnect},
    PartPlace{"supply_cable", {{54, 576}, {84, 590}}},
    PartPlace{"transformer", {{85, 535}, {129, 575}}},
    PartPlace{"blower_capacitor", kBlowerCapacitor},
    PartPlace{"blower_leads", {{214, 558}, {300, 576}}},
    PartPlace{"blower_motor", {{248, 466}, {288, 506}}},
    PartPlace{"blower_wheel", {{206, 424}, {330, 548}}},
    PartPlace{"blower_module", {{202, 380}, {402, 590}}},
    PartPlace{"filter", {{409, 424}, {429, 581}}},
    PartPlace{"coil", kCoil},
    PartPlace{"registers", {{206, 0}, {400, 20}}},
    PartPlace{"ducts", {{206, 21}, {400, 43}}},
    PartPlace{"exchanger", {{204, 112}, {398, 340}}},
};

const std::array kSpots{
    SpotPlace{Spot::room, {20, 440}},
    SpotPlace{Spot::inlet_tap, {68, 344}},
    SpotPlace{Spot::manifold_tap, {115, 300}},
    SpotPlace{Spot::hose_tee_inducer, {153, 212}},
    SpotPlace{Spot::hose_tee_switch, {114, 207}},
    SpotPlace{Spot::vent_connector, {78, 70}},
    SpotPlace{Spot::return_static, {404, 444}},
    SpotPlace{Spot::supply_static, {330, 98}},
    SpotPlace{Spot::return_duct, {454, 300}},
    SpotPlace{Spot::supply_duct, {386, 32}},
    SpotPlace{Spot::supply_plenum, {222, 88}},
    SpotPlace{Spot::outdoors, {110, 11}},
    SpotPlace{Spot::burner_compartment, {146, 290}},
    SpotPlace{Spot::blower_motor_shell, {256, 474}},
    SpotPlace{Spot::inducer_motor_shell, {98, 150}},
    SpotPlace{Spot::transformer_case, {122, 542}},
    SpotPlace{Spot::gas_cock, {22, 331}},
    SpotPlace{Spot::gas_union, {48, 331}},
    SpotPlace{Spot::gas_valve, {92, 336}},
    SpotPlace{Spot::blower_wheel, {268, 540}},
    SpotPlace{Spot::blower_shaft, {268, 486}},
    SpotPlace{Spot::inducer_shaft, {106, 158}},
};

} // namespace

std::span<const PartPlace> part_places() {
    return kParts;
}

const PartPlace* find_part_place(std::string_view part) {
    const auto* found = std::find_if(kParts.begin(), kParts.end(),
                                     [&](const PartPlace& place) { return place.part == part; });
    return found == kParts.end() ? nullptr : found;
}

std::span<const SpotPlace> spot_places() {
    return kSpots;
}

} // namespace lightoff::cutaway
