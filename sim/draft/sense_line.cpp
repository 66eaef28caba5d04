// SPDX-License-Identifier: MIT
#include "draft/sense_line.hpp"

#include <algorithm>
#include <cmath>

#include "units/constants.hpp"

namespace lightoff::draft {
namespace {

constexpr double kWaterDensity_kg_m3 = 1000.0; // handbook value at 4 C, from memory
// 0.6 sqrt(2 / (1.2 kg/m3 * 150 Pa)): flow = coefficient * area * sqrt(2 dp / density), as a chord at 150 Pa.
constexpr double kLeakConductance_m_pa_s = 0.06325;

/// Conductance of a passage whose bore is filled to `plug` (m3/s each Pa); 0 if sealed.
double conductance(double resistance_pa_s_m3, double plug, double added_pa_s_m3 = 0.0) {
    const double open = std::clamp(1.0 - plug, 0.0, 1.0);
    const double open_square = open * open;
    return open_square / (resistance_pa_s_m3 + added_pa_s_m3 * open_square);
}

/// The two chambers at the end of the step: storage and passages, suctions as unknowns.
struct Chambers {
    double inducer_side_gain = 0.0; // storage / dt + conductances to fixed suctions
    double switch_side_gain = 0.0;
    double inducer_side_source = 0.0;
    double switch_side_source = 0.0;

    /// Solves with air passing between them at `hose` times (difference - offset).
    void join(double hose, double offset_pa, SenseLineState& state) const {
        const double a = inducer_side_gain + hose;
        const double b = switch_side_gain + hose;
        const double u = inducer_side_source + hose * offset_pa;
        const double v = switch_side_source - hose * offset_pa;
        const double determinant = a * b - hose * hose;
        state.inducer_side_suction_pa = (u * b + hose * v) / determinant;
        state.switch_side_suction_pa = (v * a + hose * u) / determinant;
    }
};

bool follow(const SenseLineParams& params, const SenseLineCondition& condition, bool closed,
            double suction_pa) {
    if (condition.stuck != SwitchStuck::kFree)
        return condition.stuck == SwitchStuck::kClosed;
    const double threshold_pa =
        closed ? params.break_pa * condition.break_factor : params.make_pa * condition.make_factor;
    return suction_pa >= threshold_pa;
}

} // namespace

void step_sense_line(const SenseLineParams& params, const SenseLineCondition& condition,
                     SenseLineState& state, double port_suction_pa, double compartment_suction_pa,
                     double dt_s) {
    const double per_step = 1.0 / dt_s;
    const double port = conductance(params.port_resistance_pa_s_m3, condition.port_plug);
    const double hose =
        conductance(params.hose_resistance_pa_s_m3, condition.hose_plug, condition.kink_pa_s_m3);
    const double off_area = condition.hose_off != 0 ? params.hose_bore_area_m2 : 0.0;
    const double inducer_side_leak = kLeakConductance_m_pa_s * condition.inducer_side_crack_m2;
    const double switch_side_leak =
        kLeakConductance_m_pa_s * (condition.switch_side_crack_m2 + condition.cavity_leak_m2 + off_area);
    const double inducer_side_store = params.hose_compliance_m3_pa * per_step;
    const double switch_side_store = params.switch_compliance_m3_pa * per_step;

    const Chambers chambers{
        inducer_side_store + port + inducer_side_leak, switch_side_store + switch_side_leak,
        inducer_side_store * state.inducer_side_suction_pa + port * port_suction_pa +
            inducer_side_leak * compartment_suction_pa,
        switch_side_store * state.switch_side_suction_pa + switch_side_leak * compartment_suction_pa};

    const double slug_pa = kWaterDensity_kg_m3 * units::gravity_m_s2 * condition.water_slug_m;
    if (slug_pa > 0.0) {
        chambers.join(0.0, 0.0, state);
        const double difference_pa = state.inducer_side_suction_pa - state.switch_side_suction_pa;
        if (std::fabs(difference_pa) > slug_pa)
            chambers.join(hose, difference_pa > 0.0 ? slug_pa : -slug_pa, state);
    } else {
        chambers.join(hose, 0.0, state);
    }

    const double across_pa = state.switch_side_suction_pa - compartment_suction_pa;
    state.closed = follow(params, condition, state.closed != 0, across_pa) ? 1 : 0;
}

} // namespace lightoff::draft
