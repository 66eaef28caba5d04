// SPDX-License-Identifier: MIT
#pragma once
#include "bench/bench.hpp"
#include "combustion/fuel.hpp"
#include "furnace/network_now.hpp"
#include "units/atmosphere.hpp"
#include "units/constants.hpp"
#include "units/field_checks.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

/// What no furnace can be, whatever is wrong with it and whatever is done to it: the laws that bound it, and
/// the accounts of gas, heat and current.
namespace lightoff::test {

class Nature {
public:
    /// The accounts are kept from `begin` on.
    Nature(const bench::Site& site, const bench::World& begin)
        : model_(site.model), begin_(begin), coldest_k_(coldest_k()), densest_kg_m3_(densest_kg_m3()) {}

    /// What is impossible about a World after a whole tick, one sentence each; empty if nothing is.
    std::vector<std::string> broken_by(const bench::World& world, furnace::Workspace& workspace) {
        broken_.clear();
        if (const auto field = units::first_nonfinite(world))
            broken_.push_back(*field + " is no finite number");
        temperatures(world.state);
        shares(world.state);
        gas(world);
        draft(world);
        air(world.state);
        wheels(world.state);
        fuel_account(world);
        heat_account(world);
        house_account(world.state.heat);
        power_account(world, workspace);
        return broken_;
    }

private:
    /// Methane in air, the hottest that a flame of it can be: 1,963 C (handbooks, from memory).
    static constexpr double kFlame_k = 2236.0;
    static constexpr double kCopperMelts_k = 1358.0;         ///< 1,085 C (handbooks, from memory)
    static constexpr double kSiliconCarbideFails_k = 3100.0; ///< 2,830 C, where it decomposes (the same)
    static constexpr double kOxygenInAir = 0.2095;           ///< dry (standard atmosphere)
    /// The accounts are sums over the same steps as the states, so only rounding may be missing: 1e5
    /// additions with 1e-16 each, and ten times as much to spare.
    static constexpr double kRounding = 1e-10;
    static constexpr double kPowerWithin = 1e-6; ///< of a solved network

    void within(const std::string& what, double value, double low, double high) {
        if (!(value >= low && value <= high))
            broken_.push_back(what + " is " + units::text_of(value) + ", possible is " + units::text_of(low) +
                              " to " + units::text_of(high));
    }
    void equal(const std::string& what, double left, double right, double scale) {
        if (!(std::fabs(left - right) <= kRounding * (scale + 1.0)))
            broken_.push_back(what + ": " + units::text_of(left) + " is not " + units::text_of(right));
    }

    /// Nothing in a furnace cools (second law): it stays above the coldest thing that it stands in.
    [[nodiscard]] double coldest_k() const {
        double least = std::min(begin_.inputs.outdoor_k, begin_.inputs.basement_k);
        units::for_each_value(begin_.state.heat.temperature,
                              [&](const double& t) { least = std::min(least, t); });
        return least - 0.01;
    }
    [[nodiscard]] double densest_kg_m3() const {
        return units::dry_air_density_kg_m3(begin_.inputs.barometric_pa, coldest_k_);
    }

    void temperatures(const furnace::State& s) {
        const heat::Nodes& t = s.heat.temperature;
        const heat::Outputs& out = s.signals.heat;
        for (std::size_t i = 0; i < t.exchanger.size(); ++i)
            within("exchanger's temperature", t.exchanger[i], coldest_k_, kFlame_k);
        for (const auto& [what, kelvin] : {std::pair{"plenum's temperature", t.plenum},
                                           {"limit's temperature", t.limit},
                                           {"rollout switch's temperature", t.rollout},
                                           {"collector's temperature", t.collector},
                                           {"vent's temperature", t.vent},
                                           {"house's temperature", t.house},
                                           {"exchanger gas's temperature", out.exchanger_gas_mean_k},
                                           {"collector gas's temperature", out.collector_gas_k},
                                           {"vent gas's temperature", out.vent_gas_mean_k},
                                           {"supply air's temperature", out.supply_air_k},
                                           {"vestibule's temperature", out.vestibule_k}})
            within(what, kelvin, coldest_k_, kFlame_k);
        within("flame's temperature", out.flame_k, coldest_k_, kFlame_k);
        within("igniter's temperature", t.igniter, coldest_k_, kSiliconCarbideFails_k);
        within("blower winding's temperature", t.blower_winding, coldest_k_, kCopperMelts_k);
        within("inducer winding's temperature", t.inducer_winding, coldest_k_, kCopperMelts_k);
        within("transformer's temperature", t.transformer, coldest_k_, kCopperMelts_k);
    }

    void shares(const furnace::State& s) {
        for (const electrical::RelayState& relay : s.relays)
            within("relay's travel", relay.position, 0.0, 1.0);
        for (const electrical::FuseState& fuse : s.fuses)
            within("fuse's heat", fuse.heat, 0.0, 1.0);
        within("gas valve's travel", s.gas.valve_position, 0.0, 1.0);
        within("raw gas in the room", s.gas.room.raw_gas_fraction, 0.0, 1.0);
        within("carbon monoxide in the room", s.gas.room.co_fraction, 0.0, 1.0);
        const combustion::Outputs& fire = s.signals.combustion;
        for (std::size_t i = 0; i < s.combustion.flame.size(); ++i) {
            within("flame", s.combustion.flame[i], 0.0, 1.0);
            within("kindling", s.combustion.kindling[i], 0.0, 1.0);
            within("gathered gas", s.combustion.unburnt_m3[i], 0.0, model_.combustion.cell_volume_m3);
        }
        within("oxygen in the flue gas", fire.o2_dry, 0.0, kOxygenInAir * (1.0 + kRounding));
        within("carbon monoxide in the flue gas", fire.co_dry, 0.0, 1.0);
        within("carbon dioxide in the flue gas", fire.co2_dry, 0.0,
               combustion::ultimate_co2(model_.combustion.fuel) * (1.0 + kRounding));
        within("latent heat", fire.latent_w, 0.0, fire.heat_released_hhv_w);
    }

    /// Pressure falls along the pipe, which lets pass what its square law allows.
    void gas(const bench::World& world) {
        const gas::Outputs& out = world.state.signals.gas;
        const double supply_pa = model_.gas.supply_static_pa * world.condition.gas.supply_factor;
        held_gas_pa_ = std::max(held_gas_pa_, supply_pa); // a pipe shut off keeps what it had
        within("pressure at the inlet tap", out.inlet_tap_pa, 0.0, held_gas_pa_ * (1.0 + kRounding));
        within("pressure at the manifold tap", out.manifold_tap_pa, 0.0,
               out.inlet_tap_pa * (1.0 + kRounding));
        for (const double flow : out.burner_flow_m3_s)
            within("gas to a burner", flow, 0.0, out.burners_total_m3_s);
        const double most_m3_s =
            std::sqrt(held_gas_pa_ / (model_.gas.pipe_resistance + model_.gas.cock_resistance));
        const double others_m3_s = world.inputs.other_gas_m3_s;
        within("gas to the burners", out.burners_total_m3_s, 0.0, most_m3_s);
        within("gas leaking at the inlet", out.inlet_leak_m3_s, 0.0, most_m3_s);
        within("gas leaking at the outlet", out.outlet_leak_m3_s, 0.0, most_m3_s);
        within("gas through the meter", out.meter_flow_m3_s, others_m3_s, others_m3_s + most_m3_s);
    }

    /// No pressure beyond what the fan does at synchronous speed in the coldest air (fan laws), the columns
    /// of hot gas and the wind; no flow faster than that pressure drives it through the bare vent
    /// (Bernoulli).
    void draft(const bench::World& world) {
        const draft::Outputs& out = world.state.signals.draft;
        const draft::PathParams& path = model_.draft.path;
        const double wind_pa = std::fabs(world.inputs.wind_pa) *
                               (std::fabs(path.cap_wind_factor) + world.condition.draft.path.wind_exposure);
        const double columns_pa =
            units::gravity_m_s2 * densest_kg_m3_ * (path.exchanger_height_m + path.vent_height_m);
        const double most_pa =
            columns_pa + wind_pa +
            (path.draft_hood != 0 ? 0.0
                                  : most_pressure_pa(model_.draft.inducer.fan, model_.wiring.inducer_motor));
        for (const double suction : {out.port_suction_pa, out.inducer_side_suction_pa,
                                     out.switch_side_suction_pa, out.vent_connector_pa})
            within("pressure of the draft", suction, -most_pa, most_pa);
        const double vent_m2 = 0.25 * units::pi * path.vent_diameter_m * path.vent_diameter_m;
        const double most_kg_s = vent_m2 * std::sqrt(2.0 * densest_kg_m3_ * most_pa);
        within("flow up the vent", out.vent_kg_s, -most_kg_s, most_kg_s);
        within("flow of flue gas", out.flue_kg_s, -most_kg_s, most_kg_s);
        within("combustion air", out.combustion_air_kg_s, 0.0, most_kg_s);
        within("dilution air", out.dilution_kg_s, 0.0, most_kg_s);
    }

    /// No more than the blower's free delivery and its highest pressure at synchronous speed (fan laws).
    void air(const furnace::State& s) {
        const air::Outputs& out = s.signals.air;
        const units::FanCurve& fan = model_.air.blower.fan;
        const double most_pa = most_pressure_pa(fan, model_.wiring.blower_motor);
        const double free_m3_s =
            units::falling_root(fan.shutoff_pa, fan.slope_pa_s_m3, fan.curvature_pa_s2_m6) *
            synchronous_rad_s(model_.wiring.blower_motor) / fan.speed_rad_s;
        within("house air", out.flow_m3_s, 0.0, free_m3_s);
        within("air at the registers", out.register_flow_kg_s, 0.0, out.flow_kg_s * (1.0 + kRounding));
        within("static pressure of the return", out.return_static_pa, -most_pa, 0.0);
        within("static pressure of the supply", out.supply_static_pa, 0.0, most_pa);
        within("external static pressure", out.external_static_pa, 0.0, most_pa);
        // First law; the last turn of a wheel that has just stopped still moves air.
        within("power in the air", out.air_power_w, 0.0, out.shaft_power_w + 1e-6);
    }

    /// An induction motor pulls no wheel above its field's speed.
    void wheels(const furnace::State& s) {
        within("blower's speed", s.air.blower.speed_rad_s, 0.0,
               synchronous_rad_s(model_.wiring.blower_motor));
        within("inducer's speed", s.draft.inducer.speed_rad_s, 0.0,
               synchronous_rad_s(model_.wiring.inducer_motor));
    }
    [[nodiscard]] double synchronous_rad_s(int motor) const {
        return motor < 0 ? 0.0
                         : model_.wiring.netlist.motors[static_cast<std::size_t>(motor)].synchronous_rad_s;
    }
    [[nodiscard]] double most_pressure_pa(const units::FanCurve& fan, int motor) const {
        const double at_crest = fan.slope_pa_s_m3 > 0.0
                                    ? 0.25 * fan.slope_pa_s_m3 * fan.slope_pa_s_m3 / fan.curvature_pa_s2_m6
                                    : 0.0;
        const double speed = synchronous_rad_s(motor) / fan.speed_rad_s;
        return (fan.shutoff_pa + at_crest) * speed * speed * densest_kg_m3_ / fan.density_kg_m3;
    }

    /// What came in at the burners was burnt, went up the vent, spilled or is still there; and the meter has
    /// passed all of it, and what is in the room, too. A pipe shut off holds a little that it gives again.
    void fuel_account(const bench::World& world) {
        const combustion::State& fire = world.state.combustion;
        double gathered_m3 = 0.0;
        for (const double cell : fire.unburnt_m3)
            gathered_m3 += cell;
        equal("gas let in and gas accounted for", fire.fuel_in_m3,
              fire.fuel_burnt_m3 + fire.fuel_vented_m3 + fire.fuel_spilled_m3 + gathered_m3, fire.fuel_in_m3);

        const double pressure = world.inputs.barometric_pa / units::standard_pressure_pa;
        const double held_m3 = model_.gas.inlet_pipe_volume_m3 * held_gas_pa_ / units::standard_pressure_pa;
        const bool shut = world.inputs.gas_cock_open == 0 || world.condition.gas.cock_open <= 0.0 ||
                          world.condition.gas.pipe_restriction >= 1.0;
        pipe_filled_ += was_shut_ && !shut ? 1.0 : 0.0;
        was_shut_ = shut;
        const double passed_m3 =
            world.state.gas.meter_volume_m3 * pressure * (1.0 + kRounding) + pipe_filled_ * held_m3;
        within("gas let in at the burners", fire.fuel_in_m3, 0.0, passed_m3);
        within("gas in the room", world.state.gas.room.raw_gas_fraction * model_.gas.room_volume_m3, 0.0,
               passed_m3);
    }

    /// First law for the furnace: in is out and stored.
    void heat_account(const bench::World& world) {
        const heat::Energy& now = world.state.heat.energy;
        const heat::Energy& then = begin_.state.heat.energy;
        const auto stored = [&](const bench::World& w) {
            return heat::stored_energy_j(model_.heat, w.state.heat.temperature);
        };
        const auto gone = [](const heat::Energy& j) {
            return j.flue_sensible + j.flue_latent + j.vent_skin + j.cabinet_skin + j.vestibule + j.delivered;
        };
        const auto come = [](const heat::Energy& j) { return j.fuel_hhv + j.electrical; };
        equal("heat that came in and heat that went out or stayed", come(now) - come(then),
              gone(now) - gone(then) + stored(world) - stored(begin_), come(now) + stored(world));

        const double burnt_j =
            (world.state.combustion.fuel_burnt_m3 - begin_.state.combustion.fuel_burnt_m3) *
            combustion::hhv_j_m3(model_.combustion.fuel);
        const double seconds = static_cast<double>(world.tick - begin_.tick) * model_.board.tick_s;
        const double pilot_j = model_.standing_pilot ? model_.pilot_hhv_w * seconds : 0.0;
        const double slack_j = kRounding * (burnt_j + pilot_j + 1.0);
        within("heat of the gas burnt", now.fuel_hhv - then.fuel_hhv, burnt_j - slack_j,
               burnt_j + pilot_j + slack_j);
    }

    /// First law for the house.
    void house_account(const heat::State& s) {
        const auto got = [](const heat::Energy& j) { return j.delivered + j.house_gain - j.house_loss; };
        const double capacity_j_k = model_.heat.capacity_j_k.house;
        equal("heat that the house got and that it holds", got(s.energy) - got(begin_.state.heat.energy),
              capacity_j_k * (s.temperature.house - begin_.state.heat.temperature.house),
              capacity_j_k * s.temperature.house);
    }

    /// Tellegen: the power of all branches together is nothing. And only sources give any.
    void power_account(const bench::World& world, furnace::Workspace& workspace) {
        const electrical::AcSolution ac =
            furnace::solve_ac(model_, world.state, world.condition, world.inputs, workspace);
        electrical::AcVoltages volts{};
        workspace.network.node_voltages(ac, volts);
        const auto volt = [&](int node) { return volts[static_cast<std::size_t>(node)]; };
        double given_w = 0.0;
        double used_w = 0.0;
        const electrical::Netlist& netlist = model_.wiring.netlist;
        for (int e = 0; e < netlist.element_count(); ++e) {
            const electrical::Element& element = netlist.elements[static_cast<std::size_t>(e)];
            const units::Complex amps = workspace.network.element_current(ac, volts, e);
            const double watts = ((volt(element.a) - volt(element.b)) * units::conj(amps)).re;
            using Kind = electrical::ElementKind;
            if (element.kind == Kind::source)
                given_w -= watts;
            else
                used_w += watts;
            if (element.kind != Kind::source && element.kind != Kind::winding && watts < -1e-6)
                broken_.push_back(netlist.element_names[static_cast<std::size_t>(e)] + " gives " +
                                  units::text_of(-watts) + " W");
        }
        for (std::size_t i = 0; i < world.inputs.attachments.size(); ++i) {
            const electrical::Attachment& lead = world.inputs.attachments[i];
            if (lead.a != lead.b)
                used_w += (workspace.network.ac_attachment_v(ac, static_cast<int>(i)) *
                           units::conj(workspace.network.ac_attachment_a(ac, static_cast<int>(i))))
                              .re;
        }
        for (int node = 1; node < netlist.node_count(); ++node)
            if (netlist.is_field[static_cast<std::size_t>(node)] == 0)
                used_w += units::norm(volt(node)) / netlist.strays[static_cast<std::size_t>(node)].ohm;
        for (const electrical::Bridge& bridge : world.condition.wiring.bridges)
            if (bridge.a != bridge.b)
                used_w += units::norm(volt(bridge.a) - volt(bridge.b)) / static_cast<double>(bridge.ohm);
        if (!(std::fabs(given_w - used_w) <= kPowerWithin * (std::fabs(given_w) + std::fabs(used_w)) + 1e-9))
            broken_.push_back("power given is " + units::text_of(given_w) + " W, used is " +
                              units::text_of(used_w) + " W");
    }

    const furnace::Model& model_;
    const bench::World begin_;
    double coldest_k_;
    double densest_kg_m3_;
    double held_gas_pa_ = 0.0;
    double pipe_filled_ = 1.0; ///< times
    bool was_shut_ = false;
    std::vector<std::string> broken_;
};

} // namespace lightoff::test
