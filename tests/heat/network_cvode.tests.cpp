// SPDX-License-Identifier: MIT
// The heat network against SUNDIALS CVODE. The right-hand side below is written from the equations in
// heat/network.hpp, sharing only the numbers in Params with the program; gas temperatures come from a
// Newton iteration on the enthalpy, not from the closed form.
#include "heat/cycle.hpp"

#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>

using namespace heat_test;

namespace {

constexpr double kSigma = 5.670374419e-8; // CODATA 2018
constexpr double kCpAir = 1006.0;         // J/(kg K), as documented

enum Unknown {
    X1,
    X2,
    X3,
    PLENUM,
    LIMIT,
    ROLLOUT,
    COLLECTOR,
    VENT,
    IGNITER,
    BLOWER,
    INDUCER,
    TRANSFORMER,
    HOUSE,
    J_DELIVERED,
    J_FLUE,
    J_VENT_SKIN,
    J_CABINET,
    J_VESTIBULE,
    kUnknowns
};

struct Problem {
    heat::Params p;
    heat::Condition c;
    heat::Inputs in;
};

double gas_h(const heat::Inputs& in, double from, double to) {
    return in.cp_c0_j_kg_k * (to - from) + in.cp_c1_j_kg_k2 * (to * to - from * from) / 2.0;
}

double gas_t(const heat::Inputs& in, double from, double h) {
    double t = from;
    for (int i = 0; i < 50; ++i)
        t -= (gas_h(in, from, t) - h) / (in.cp_c0_j_kg_k + in.cp_c1_j_kg_k2 * t);
    return t;
}

double plus(double x) {
    return std::fmax(x, 0.0);
}

void rates(const Problem& problem, const double* y, double* w) {
    const auto& [p, c, in] = problem;
    std::fill(w, w + kUnknowns, 0.0);

    // Air, counterflow: passes 3, 2, 1.
    const double metal = (y[X1] + y[X2] + y[X3]) / 3.0;
    const double blower = in.supply_air_kg_s;
    const double kt = p.free_convection.thermosiphon_kg_s_sqrt_k;
    const double kp = p.free_convection.plume_kg_s_sqrt_k;
    const double fresh =
        std::fmax(std::sqrt(blower * blower + kt * kt * plus(y[PLENUM] - y[HOUSE])), in.exchanger_leak_kg_s);
    const double local = std::sqrt(fresh * fresh + kp * kp * plus(metal - y[PLENUM]) + 1e-10);
    const double ratio = local / p.exchanger.air_reference_flow_kg_s;
    const double growth = p.exchanger.air_still_fraction + (1.0 - p.exchanger.air_still_fraction) * ratio;
    const double ca = local * kCpAir;
    double air = (fresh * y[HOUSE] + (local - fresh) * y[PLENUM]) / local;
    double from_metal = 0.0;
    for (int pass : {2, 1, 0}) {
        const double ua =
            p.exchanger.air_conductance_w_k[static_cast<std::size_t>(pass)] * growth * c.air_side_conductance;
        const double q = ca * ua / (ca + ua) * (y[X1 + pass] - air);
        w[X1 + pass] -= q;
        air += q / ca;
        from_metal += q;
    }
    const double limit_g =
        p.limit.air_w_k * (p.limit.still_fraction + (1.0 - p.limit.still_fraction) * ratio);
    const double limit_q = limit_g * (air - y[LIMIT]);
    const double limit_r = p.limit.view_m2 * kSigma * (std::pow(metal, 4) - std::pow(y[LIMIT], 4));
    w[LIMIT] = limit_q + limit_r;
    for (int pass : {0, 1, 2})
        w[X1 + pass] -= limit_r / 3.0;

    // Gas.
    const double m = std::fmax(in.flue_mass_flow_kg_s + in.exchanger_leak_kg_s, 1e-4);
    const double leak_w = in.exchanger_leak_kg_s * kCpAir * (y[PLENUM] - y[HOUSE]);
    const double fire = in.heat_released_hhv_w - in.latent_w - in.rollout_w;
    const double radiant = p.exchanger.flame_radiant_fraction;
    const double cp800 = in.cp_c0_j_kg_k + in.cp_c1_j_kg_k2 * p.exchanger.gas_property_temperature_k;
    const double gs = p.exchanger.gas_still_fraction;
    const double ua_gas = p.exchanger.gas_conductance_w_k * c.gas_side_conductance *
                          (gs + (1.0 - gs) * m / p.exchanger.gas_reference_flow_kg_s);
    const double passed = std::exp(-ua_gas / 3.0 / (m * cp800));
    double gas = gas_t(in, in.basement_k, ((1.0 - radiant) * fire + leak_w) / m);
    for (int pass : {0, 1, 2}) {
        const double out = y[X1 + pass] + (gas - y[X1 + pass]) * passed;
        w[X1 + pass] += m * gas_h(in, out, gas);
        gas = out;
    }
    const double c440 = m * (in.cp_c0_j_kg_k + in.cp_c1_j_kg_k2 * p.vent.property_temperature_k);
    const double collected = y[COLLECTOR] + (gas - y[COLLECTOR]) * c440 / (c440 + p.vent.collector_w_k);
    w[COLLECTOR] += m * gas_h(in, collected, gas);
    const double connector = gas_t(in, collected, (in.inducer_electrical_w - in.inducer_loss_w) / m);
    const double outlet = y[VENT] + (connector - y[VENT]) * c440 / (c440 + p.vent.gas_w_k);
    w[J_VENT_SKIN] = p.vent.skin_w_k * (y[VENT] - in.basement_k);
    w[VENT] = m * gas_h(in, outlet, connector) - w[J_VENT_SKIN];
    w[J_FLUE] = m * gas_h(in, in.basement_k, outlet);

    // Igniter.
    const auto& ig = p.igniter;
    const double glow =
        ig.area_m2 * (ig.emissivity * kSigma * (std::pow(y[IGNITER], 4) - std::pow(in.basement_k, 4)) +
                      ig.convection_w_m2_k * (y[IGNITER] - in.basement_k));
    w[IGNITER] = in.igniter_w - glow;
    w[X1] += radiant * fire + glow;

    // Burner compartment.
    const double gw = p.inducer_motor.shell_w_k + p.inducer_motor.openings_w_k *
                                                      (1.0 - c.inducer_openings_blocked) *
                                                      in.inducer_speed_ratio;
    const double gc = p.jacket.collector_to_vestibule_w_k;
    const double gr = p.rollout.air_w_k;
    const double gb = p.jacket.vestibule_to_basement_w_k;
    const double struck = p.rollout.struck_fraction * in.rollout_w;
    const double vestibule =
        (gc * y[COLLECTOR] + gr * y[ROLLOUT] + gw * y[INDUCER] + gb * in.basement_k + in.rollout_w - struck) /
        (gc + gr + gw + gb);
    w[COLLECTOR] += gc * (vestibule - y[COLLECTOR]);
    w[ROLLOUT] = struck + gr * (vestibule - y[ROLLOUT]);
    w[INDUCER] = in.inducer_loss_w + gw * (vestibule - y[INDUCER]);
    w[J_VESTIBULE] = gb * (vestibule - in.basement_k);

    // Blower compartment, plenum, house.
    const double gm = p.blower_motor.shell_w_k + p.blower_motor.openings_w_k *
                                                     (1.0 - c.blower_openings_blocked) * blower /
                                                     p.exchanger.air_reference_flow_kg_s;
    const double winding = gm * (y[BLOWER] - y[HOUSE]);
    const double transformer = p.transformer.cooling_w_k * (y[TRANSFORMER] - y[HOUSE]);
    w[BLOWER] = in.blower_loss_w - winding;
    w[TRANSFORMER] = in.transformer_loss_w - transformer;
    const double jacket =
        p.jacket.insulated_w_k + c.insulation_missing * (p.jacket.bare_w_k - p.jacket.insulated_w_k);
    w[J_CABINET] = jacket * (y[PLENUM] - in.basement_k);
    w[J_DELIVERED] = (fresh - in.exchanger_leak_kg_s) * kCpAir * (y[PLENUM] - y[HOUSE]);
    w[PLENUM] = from_metal - limit_q - leak_w - w[J_DELIVERED] - w[J_CABINET] + winding + transformer +
                (in.blower_electrical_w - in.blower_loss_w);
    w[HOUSE] = w[J_DELIVERED] + p.jacket.to_house_fraction * (w[J_CABINET] + w[J_VESTIBULE]) -
               p.house.loss_w_k * (y[HOUSE] - in.outdoor_k);

    const heat::Nodes& cap = p.capacity_j_k;
    const std::array<double, J_DELIVERED> capacity{
        cap.exchanger[0],    cap.exchanger[1], cap.exchanger[2], cap.plenum,  cap.limit,
        cap.rollout,         cap.collector,    cap.vent,         cap.igniter, cap.blower_winding,
        cap.inducer_winding, cap.transformer,  cap.house};
    for (std::size_t i = 0; i < capacity.size(); ++i)
        w[i] /= capacity[i];
}

int cvode_rhs(realtype, N_Vector y, N_Vector ydot, void* user) {
    rates(*static_cast<const Problem*>(user), N_VGetArrayPointer(y), N_VGetArrayPointer(ydot));
    return 0;
}

/// CVODE (BDF, Newton, dense) over one problem that is switched between stretches.
class Cvode {
public:
    Cvode(Problem problem, double start_k) : problem_(std::move(problem)) {
        SUNContext_Create(nullptr, &context_);
        y_ = N_VNew_Serial(kUnknowns, context_);
        for (int i = 0; i < kUnknowns; ++i)
            at(i) = i < J_DELIVERED ? start_k : 0.0;
        matrix_ = SUNDenseMatrix(kUnknowns, kUnknowns, context_);
        solver_ = SUNLinSol_Dense(y_, matrix_, context_);
        memory_ = CVodeCreate(CV_BDF, context_);
        REQUIRE(CVodeInit(memory_, cvode_rhs, 0.0, y_) == CV_SUCCESS);
        REQUIRE(CVodeSStolerances(memory_, 1e-9, 1e-7) == CV_SUCCESS);
        REQUIRE(CVodeSetUserData(memory_, &problem_) == CV_SUCCESS);
        REQUIRE(CVodeSetLinearSolver(memory_, solver_, matrix_) == CV_SUCCESS);
        REQUIRE(CVodeSetMaxNumSteps(memory_, 200000) == CV_SUCCESS);
    }
    Cvode(const Cvode&) = delete;
    Cvode& operator=(const Cvode&) = delete;
    ~Cvode() {
        CVodeFree(&memory_);
        SUNLinSolFree(solver_);
        SUNMatDestroy(matrix_);
        N_VDestroy(y_);
        SUNContext_Free(&context_);
    }
    void switch_to(const heat::Inputs& in) {
        problem_.in = in;
        REQUIRE(CVodeReInit(memory_, time_, y_) == CV_SUCCESS);
    }
    void advance(double seconds) {
        REQUIRE(CVodeSetStopTime(memory_, time_ + seconds) == CV_SUCCESS);
        const double end = time_ + seconds;
        REQUIRE(CVode(memory_, end, y_, &time_, CV_NORMAL) >= 0);
        time_ = end;
    }
    double& at(int i) { return N_VGetArrayPointer(y_)[i]; }

private:
    Problem problem_;
    SUNContext context_ = nullptr;
    N_Vector y_ = nullptr;
    SUNMatrix matrix_ = nullptr;
    SUNLinearSolver solver_ = nullptr;
    void* memory_ = nullptr;
    double time_ = 0.0;
};

std::array<double, J_DELIVERED> temperatures(const heat::Nodes& t) {
    return {t.exchanger[0],    t.exchanger[1], t.exchanger[2], t.plenum,  t.limit,
            t.rollout,         t.collector,    t.vent,         t.igniter, t.blower_winding,
            t.inducer_winding, t.transformer,  t.house};
}

void compare(const std::vector<Stretch>& cycle, const heat::Condition& condition, double dt) {
    const heat::Params params;
    heat::State state = heat::at_rest(kRoomK);
    Cvode reference({params, condition, cycle.front().in}, kRoomK);
    double worst_k = 0.0;
    for (const Stretch& stretch : cycle) {
        reference.switch_to(stretch.in);
        for (double t = 0.0; t < stretch.seconds - 1e-9; t += 5.0) {
            reference.advance(5.0);
            for (int i = 0; i < static_cast<int>(5.0 / dt + 0.5); ++i)
                heat::step(params, condition, state, stretch.in, dt);
            const auto ours = temperatures(state.temperature);
            for (int i = 0; i < J_DELIVERED; ++i)
                worst_k = std::max(worst_k, std::abs(ours[static_cast<std::size_t>(i)] - reference.at(i)));
        }
        INFO("after " << stretch.name);
        REQUIRE(worst_k < 0.1);
    }
    CAPTURE(worst_k);
    CHECK(worst_k < 0.1);
    CHECK(state.energy.delivered == Approx(reference.at(J_DELIVERED)).epsilon(1e-4));
    CHECK(state.energy.flue_sensible == Approx(reference.at(J_FLUE)).epsilon(1e-4));
    CHECK(state.energy.vent_skin == Approx(reference.at(J_VENT_SKIN)).epsilon(1e-4));
    CHECK(state.energy.cabinet_skin == Approx(reference.at(J_CABINET)).epsilon(1e-4));
    CHECK(state.energy.vestibule == Approx(reference.at(J_VESTIBULE)).epsilon(1e-4));
}

} // namespace

TEST_CASE("the network follows CVODE through a healthy cycle") {
    compare(whole_cycle(), {}, 0.05);
    compare(whole_cycle(), {}, 0.01);
}

TEST_CASE("the network follows CVODE with leak, rollout, dirt and a bare jacket") {
    compare(troubled_cycle(), troubled_condition(), 0.05);
}

TEST_CASE("the network follows CVODE when the air stands still") {
    std::vector<Stretch> cycle = whole_cycle();
    for (Stretch& stretch : cycle) {
        stretch.in.supply_air_kg_s = 0.0;
        stretch.in.blower_electrical_w = stretch.in.blower_loss_w;
    }
    compare(cycle, {}, 0.05);
}
