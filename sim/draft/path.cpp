// SPDX-License-Identifier: MIT
#include "draft/path.hpp"

#include <algorithm>
#include <cmath>

#include "units/constants.hpp"
#include "units/convert.hpp"

namespace lightoff::draft {
namespace {

constexpr double kAirGasConstant = units::gas_constant_j_mol_k / units::molar_mass_air_kg_mol;
constexpr double kDischargeCoefficient = 0.6;
constexpr double kTightestOpenFraction = 1e-3;

double open_fraction(double blockage) {
    return std::clamp(1.0 - blockage, kTightestOpenFraction, 1.0);
}

double signed_square(double x) {
    return x * std::fabs(x);
}

/// Resistance of an opening to air at 1 kg/m3, Pa s2/kg2 times kg/m3.
double opening(double area_m2, double blockage) {
    return units::resistance_per_m4(area_m2 * open_fraction(blockage));
}

/// Sum of the vent's loss coefficients, on its velocity head.
double vent_loss(const PathParams& params, const PathCondition& condition) {
    const double open = open_fraction(condition.vent_blockage);
    const double contraction = 0.63 + 0.37 * open * open * open;
    const double through_blockage = 1.0 / (contraction * open) - 1.0;
    const double length = params.vent_length_m + condition.vent_extra_length_m;
    return params.vent_friction_factor * length / params.vent_diameter_m + params.vent_fittings_loss +
           through_blockage * through_blockage;
}

/// drive + slope m - rest m|m| - inlet (m - added)|m - added|, which falls as m grows.
struct Balance {
    double drive = 0.0;
    double slope = 0.0;
    double rest = 0.0;
    double inlet = 0.0;
    double added = 0.0;

    [[nodiscard]] double at(double flow) const {
        return drive + slope * flow - rest * signed_square(flow) - inlet * signed_square(flow - added);
    }

    [[nodiscard]] double root() const {
        const double low = std::min(0.0, added);
        const double high = std::max(0.0, added);
        double flow_sign = 1.0;
        double inlet_sign = 1.0;
        if (at(high) < 0.0) {
            const bool between = at(low) >= 0.0;
            flow_sign = between && added > 0.0 ? 1.0 : -1.0;
            inlet_sign = between && added < 0.0 ? 1.0 : -1.0;
        }
        const double signed_inlet = inlet_sign * inlet;
        return units::falling_root(drive - signed_inlet * added * added, slope + 2.0 * signed_inlet * added,
                                   flow_sign * rest + signed_inlet);
    }
};

} // namespace

double air_density_kg_m3(double pressure_pa, double temperature_k) {
    return pressure_pa * (1.0 / kAirGasConstant) / temperature_k;
}

double crack_flow_kg_s(double crack_area_m2, double outside_pa, double burner_end_suction_pa,
                       double density_kg_m3) {
    const double drop = outside_pa + burner_end_suction_pa;
    const double flow =
        kDischargeCoefficient * crack_area_m2 * std::sqrt(2.0 * density_kg_m3 * std::fabs(drop));
    return drop < 0.0 ? -flow : flow;
}

PathFlow solve_path(const PathParams& params, const PathCondition& condition, const PathDrive& drive,
                    const units::FanNow& fan) {
    // Specific volume of air is volume_per_k times temperature.
    const double volume_per_k = kAirGasConstant / drive.barometric_pa;
    const double density_k = drive.barometric_pa * (1.0 / kAirGasConstant);
    const double room_density = density_k / drive.room_k;
    const double door =
        drive.door_on ? units::resistance_per_m4(params.door_area_m2) * volume_per_k * drive.room_k : 0.0;
    const double inlet =
        door + opening(params.burner_area_m2, condition.burner_blockage) * volume_per_k * drive.room_k;
    const double exchanger =
        opening(params.exchanger_area_m2, condition.exchanger_blockage) * volume_per_k *
            drive.exchanger_gas_k +
        opening(params.outlet_area_m2, condition.exchanger_blockage) * volume_per_k * drive.collector_gas_k;
    const double vent_area = 0.25 * units::pi * params.vent_diameter_m * params.vent_diameter_m;
    const double vent_head = units::resistance_per_m4(vent_area) * volume_per_k * drive.vent_gas_k;
    const double vent = vent_loss(params, condition) * vent_head;

    const double exchanger_lift =
        units::gravity_m_s2 * params.exchanger_height_m * (room_density - density_k / drive.exchanger_gas_k);
    const double stack = units::gravity_m_s2 * params.vent_height_m *
                         (density_k / drive.outdoor_k - density_k / drive.vent_gas_k);
    const double wind = drive.wind_pa * (params.cap_wind_factor + condition.wind_exposure);

    PathFlow flow;
    if (params.draft_hood != 0) {
        const double entry = params.hood_entry_loss * vent_head;
        flow.flue_kg_s = Balance{exchanger_lift, 0.0, exchanger, inlet, drive.added_kg_s}.root();
        flow.vent_kg_s = Balance{stack - wind, 0.0, vent + entry, 0.0, 0.0}.root();
        flow.dilution_kg_s = flow.vent_kg_s - flow.flue_kg_s;
        flow.connector_pa = -entry * signed_square(flow.vent_kg_s);
    } else {
        flow.flue_kg_s = Balance{fan.shutoff_pa + exchanger_lift + stack - wind, fan.slope_pa_s_kg,
                                 fan.curvature_pa_s2_kg2 + exchanger + vent, inlet, drive.added_kg_s}
                             .root();
        flow.vent_kg_s = flow.flue_kg_s;
        flow.connector_pa = vent * signed_square(flow.vent_kg_s) - stack + wind;
    }
    flow.burner_kg_s = flow.flue_kg_s - drive.added_kg_s;
    flow.compartment_suction_pa = door * signed_square(flow.burner_kg_s);
    flow.burner_end_suction_pa = inlet * signed_square(flow.burner_kg_s);
    flow.port_suction_pa =
        flow.burner_end_suction_pa + exchanger * signed_square(flow.flue_kg_s) - exchanger_lift;
    return flow;
}

} // namespace lightoff::draft
