// SPDX-License-Identifier: MIT
//
// A second furnace, another kind: natural draft with a draft hood, standing pilot, no inducer, no igniter. It
// is data only. Ranges are common practice, no source, unless said.
//
// What the pilot's model leaves out: it lights itself as soon as there is gas, its thermocouple acts at once,
// and the gas that it draws does not pass the meter.
#include "support/rig.hpp"

#include "heat/heat.hpp"

#include <catch2/catch.hpp>

using namespace lightoff;
using namespace lightoff::test;

namespace {

const lightoff::bench::Site& natural_draft_site() {
    static const lightoff::bench::Site site =
        lightoff::test::site_with(files::read_equipment(files::read_document(
            std::string(LIGHTOFF_SOURCE_DIR) + "/scenarios/equipment/natural-draft-standing-pilot.json")));
    return site;
}

const lesson::Scenario& natural_draft_call() {
    static const lesson::Scenario scenario = files::read_scenario(
        files::read_document(std::string(LIGHTOFF_SOURCE_DIR) + "/scenarios/calls/natural-draft-call.json"));
    return scenario;
}

Rig natural_draft_rig() {
    return Rig(0, natural_draft_call(), natural_draft_site());
}

} // namespace

TEST_CASE("natural draft: sequence of a call") {
    Rig rig = natural_draft_rig();
    rig.run(120.0);
    const double call_s = *rig.time_of("thermostat closes R-W");
    CHECK(*rig.time_of("gas valve opens") - call_s < 0.2);
    CHECK(*rig.time_of("all burners are lit") - call_s < 4.0);
    CHECK(*rig.time_of("blower turns") - call_s == Approx(60.0).margin(1.0)); // the board's timer
    CHECK(rig.count_of("inducer turns") == 0);
    CHECK(rig.drives("blower_heat"));
    CHECK(rig.lamp_count() == 3);
}

TEST_CASE("natural draft: the call ends, the blower finishes its delay") {
    Rig rig = natural_draft_rig();
    rig.run(300.0);
    rig.act("thermostat-set 60F");
    rig.run(200.0);
    const double end_s = *rig.time_of("gas valve closes");
    CHECK(*rig.time_of("last burner goes out") - end_s < 1.0);
    CHECK(*rig.time_of("board, blower: Blower off") - end_s == Approx(120.0).margin(1.0));
}

TEST_CASE("natural draft: settled readings") {
    Rig rig = natural_draft_rig();
    rig.run(900.0);
    CHECK(rig.read("input rate") == Approx(60000.0).epsilon(0.02)); // rating plate
    CHECK(rig.read("oxygen") >= 6.0);                               // in the exchanger, before the hood
    CHECK(rig.read("oxygen") <= 9.0);
    CHECK(rig.read("carbon monoxide air-free") < 100.0);
    CHECK(rig.read("vent connector pressure") <= -0.02);
    CHECK(rig.read("vent connector pressure") >= -0.05);
    CHECK(rig.read("temperature rise") >= 40.0);
    CHECK(rig.read("temperature rise") <= 70.0);
    CHECK(rig.read("steady efficiency") >= 77.0);
    CHECK(rig.read("steady efficiency") <= 82.0);
    CHECK(rig.read("control, R-C") >= 24.0);
    CHECK(rig.read("control, R-C") <= 28.0);
    const furnace::Signals& s = rig.world.state.signals;
    CHECK(s.draft.dilution_kg_s > 0.3 * s.draft.flue_kg_s); // the hood takes in room air
    CHECK(s.draft.spillage_kg_s == 0.0);
    CHECK(s.heat.vent_connector_gas_k < s.heat.collector_gas_k - 50.0); // which cools the gas
    // Enthalpy balance of the hood: as much heat behind it as before (published: sensible heat).
    const double before_w = s.draft.flue_kg_s * (s.heat.collector_gas_k - rig.world.inputs.basement_k);
    const double behind_w = s.draft.vent_kg_s * (s.heat.vent_connector_gas_k - rig.world.inputs.basement_k);
    CHECK(behind_w == Approx(before_w).epsilon(0.05)); // cp of both taken alike
}

TEST_CASE("natural draft: a warmer vent draws more, a colder day draws more") {
    Rig cold_start = natural_draft_rig();
    cold_start.run(30.0);
    Rig warm = natural_draft_rig();
    warm.run(600.0);
    CHECK(warm.read("vent connector pressure") < cold_start.read("vent connector pressure"));
    Rig mild = natural_draft_rig();
    mild.world.inputs.outdoor_k = units::fahrenheit_to_k(60.0);
    mild.run(600.0);
    CHECK(mild.read("vent connector pressure") > warm.read("vent connector pressure"));
}

TEST_CASE("natural draft: a blocked vent spills at the hood and opens the spill switch by hand only") {
    Rig rig = natural_draft_rig();
    rig.set("draft.path.vent_blockage", 0.97);
    rig.run(60.0);
    CHECK(rig.world.state.signals.draft.spillage_kg_s > 0.0);
    CHECK(rig.read("vent connector pressure") > -0.005);
    CHECK(rig.read("oxygen") <= 9.0); // the hood keeps the fire from noticing
    rig.run(540.0);
    REQUIRE(rig.time_of("rollout switch opens")); // the thermal switch at the hood
    CHECK(*rig.time_of("rollout switch opens") > 60.0);
    CHECK(rig.read("across the spill switch") > 20.0);
    CHECK(rig.read("across the limit") < 0.2); // its feed is gone
    CHECK(rig.world.state.signals.combustion.heat_released_hhv_w == 0.0);
    rig.set("draft.path.vent_blockage", 0.0);
    rig.run(900.0);
    CHECK(rig.count_of("rollout switch closes") == 0);
    CHECK(rig.world.state.heat.temperature.rollout < units::fahrenheit_to_k(120.0));
    heat::reset_rollout(rig.model.heat, rig.world.condition.heat, rig.world.state.heat);
    rig.run(30.0);
    CHECK(rig.count_of("rollout switch closes") == 1);
    CHECK(rig.world.state.signals.combustion.heat_released_hhv_w > 10000.0);
}

TEST_CASE("natural draft: wind that beats the stack spills") {
    Rig rig = natural_draft_rig();
    rig.run(300.0);
    REQUIRE(rig.world.state.signals.draft.spillage_kg_s == 0.0);
    rig.set("draft.path.wind_exposure", 1.0);
    rig.world.inputs.wind_pa = 60.0;
    rig.run(30.0);
    CHECK(rig.world.state.signals.draft.vent_kg_s < 0.0);
    CHECK(rig.world.state.signals.draft.spillage_kg_s > 0.0);
}

TEST_CASE("natural draft: without airflow the limit opens and closes by itself") {
    Rig rig = natural_draft_rig();
    rig.open("blower.lead_common");
    rig.run(1500.0);
    CHECK(rig.count_of("limit opens") >= 1);
    CHECK(rig.count_of("limit closes") >= 1);
    CHECK(rig.count_of("rollout switch opens") == 0);
    CHECK(*rig.time_of("limit opens") - *rig.time_of("all burners are lit") > 60.0);
}

TEST_CASE(
    "natural draft: without gas for the pilot there is no main flame, and the valve's seat stays shut") {
    Rig rig = natural_draft_rig();
    rig.set("gas.supply_factor", 0.2); // 1.4 in. w.c.: the pilot is out
    rig.run(120.0);
    CHECK(rig.count_of("first burner lights") == 0);
    CHECK(rig.read("gas valve") > 20.0); // 24 V at the valve, and nothing happens
    CHECK(rig.world.state.gas.valve_position == 0.0);
    CHECK(rig.world.state.combustion.fuel_vented_m3 + rig.world.state.combustion.fuel_spilled_m3 == 0.0);
}

TEST_CASE("natural draft: the pilot's heat keeps the idle exchanger warm and drawing") {
    Rig rig = natural_draft_rig();
    rig.world.inputs.set_point_k = units::fahrenheit_to_k(40.0);
    rig.world.inputs.thermostat_mode = control::ThermostatMode::off;
    rig.run(3600.0);
    CHECK(rig.count_of("gas valve opens") == 0);
    CHECK(rig.world.state.heat.temperature.exchanger[0] > rig.world.inputs.basement_k + 3.0);
    CHECK(rig.world.state.signals.draft.flue_kg_s > 0.0);
}

TEST_CASE("natural draft: energy balance over a whole cycle within 0.1 % (conservation of energy)") {
    Rig rig = natural_draft_rig();
    const auto stored_j = [&] {
        return heat::stored_energy_j(rig.model.heat, rig.world.state.heat.temperature);
    };
    const double begin_j = stored_j();
    for (const double blockage : {0.0, 0.97}) { // drawing well, then spilling
        rig.set("draft.path.vent_blockage", blockage);
        rig.run(600.0);
    }
    const heat::Energy& e = rig.world.state.heat.energy;
    const double in_j = e.fuel_hhv + e.electrical;
    const double out_j = e.flue_sensible + e.flue_latent + e.vent_skin + e.cabinet_skin + e.vestibule +
                         e.delivered + (stored_j() - begin_j);
    CHECK(out_j == Approx(in_j).epsilon(0.001));
}
