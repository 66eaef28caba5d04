// SPDX-License-Identifier: MIT
#include "lesson/review.hpp"

#include "furnace/condition_paths.hpp"
#include "furnace/tolerance.hpp"
#include "lesson/begin_of.hpp"

#include <algorithm>
#include <cmath>

namespace lightoff::lesson {
namespace {

using bench::Verb;

/// A number that has come three quarters of its way back counts as put right: a regulator within a quarter of
/// its drift is within a technician's tolerance (teaching value).
constexpr double kPutRight = 0.25;
constexpr std::uint64_t kFireDies = 20; ///< ticks without flame that end a fire
constexpr double kBlowerTurns_rad_s = 30.0;
constexpr double kInducerTurns_rad_s = 100.0;
constexpr double kSameSetPoint_k = 0.3; ///< half a degree on a Fahrenheit dial

std::optional<ChangeMade> change_of(const bench::Action& action) {
    using faults::ServiceKind;
    ChangeMade change;
    change.action = action;
    if (action.verb == Verb::land)
        return change;
    const std::optional<faults::ServiceRef> service = bench::service_of(action);
    if (!service || service->kind == ServiceKind::take_off || service->kind == ServiceKind::put_back)
        return std::nullopt;
    change.part = service->part;
    change.kind = service->kind;
    return change;
}

bool is_statement(Verb verb) {
    return bench::is_paper(verb) || verb == Verb::shut_off || verb == Verb::sign_off;
}

/// Hands on doors, power, wires or parts: not eyes, paper or thermostat.
bool touches(Verb verb) {
    return !is_statement(verb) && verb != Verb::wait && verb != Verb::look && verb != Verb::keep &&
           verb != Verb::thermostat_set && verb != Verb::thermostat_mode && verb != Verb::thermostat_fan;
}

bool has_fire(const bench::World& world) {
    return world.state.signals.combustion.heat_released_hhv_w > 1000.0;
}

bool is_waiting(const bench::World& world, std::uint64_t field) {
    return std::any_of(
        world.onsets.begin(), world.onsets.begin() + static_cast<std::ptrdiff_t>(world.onset_count),
        [&](const bench::Onset& onset) {
            const bool to_come = onset.trigger != bench::OnsetTrigger::from_tick || onset.tick > world.tick;
            return onset.field == field && to_come;
        });
}

} // namespace

Review::Review(const bench::Site& site, const Scenario& scenario, evidence::Bank& bank)
    : real(real_faults(site, scenario)), site_(&site), workspace_(site.model), notebook_(site),
      watch_(site, scenario.school_rules), bank_(&bank) {}

bool Review::is_broken(const bench::World& world, std::size_t which) const {
    const faults::Fault& fault = site_->catalogue.faults[static_cast<std::size_t>(real[which].fault)];
    for (const faults::Setting& setting : faults::settings_at(fault, real[which].severity)) {
        if (is_waiting(world, setting.field))
            return true;
        const double built = furnace::condition_value(built_, setting.field);
        const double now = furnace::condition_value(world.condition, setting.field);
        if (std::abs(now - built) > kPutRight * std::abs(setting.value - built))
            return true;
    }
    for (const electrical::Bridge& wanted : faults::bridges_at(site_->catalogue, fault, real[which].severity))
        for (const electrical::Bridge& bridge : world.condition.wiring.bridges)
            if (bridge.a == wanted.a && bridge.b == wanted.b && bridge.a != bridge.b)
                return true;
    return std::any_of(fault.controls.begin(), fault.controls.end(), [&](const faults::ControlLeft& left) {
        return faults::is_on(left.control, world.inputs) == left.on;
    });
}

bool Review::all_mended(const bench::World& world) const {
    for (std::size_t i = 0; i < real.size(); ++i)
        if (is_broken(world, i))
            return false;
    return true;
}

void Review::arrived(const bench::World& world) {
    built_ = furnace::as_built(site_->model, world.seed);
    found_ = world.inputs;
    investigation.emplace(*bank_, world);
    arrived_tick = world.tick;
    steps_on_arrival = world.state.board.lamp.count;
    count_steps(steps_on_arrival);
    broken_before_ = !all_mended(world);
    if (!broken_before_)
        mended_tick = world.tick;
}

/// Whether anything that a new part puts right is not as built.
bool Review::is_bad(const bench::World& world, const ChangeMade& change) const {
    const faults::Service* service = site_->catalogue.find_service({change.part, change.kind});
    return service != nullptr &&
           std::any_of(service->restores.begin(), service->restores.end(), [&](std::uint64_t field) {
               return furnace::condition_value(world.condition, field) !=
                      furnace::condition_value(built_, field);
           });
}

void Review::watch_new_parts(const bench::World& world) {
    for (ChangeMade& change : changes)
        if (change.was_bad && !change.spoilt)
            change.spoilt = is_bad(world, change);
}

void Review::before(const bench::World& world, const bench::Action& action) {
    watch_.before(world, action, workspace_);
    investigation->act(action);
    watch_new_parts(world);
    if (std::optional<ChangeMade> change = change_of(action)) {
        change->tick = world.tick;
        change->was_bad = change->kind == faults::ServiceKind::replace && is_bad(world, *change);
        changes.push_back(*change);
        readings_at_last_change = notebook_.readings().size();
        fire_since_change = fire_ticks_ = 0;
        cycle_ended = false;
        pending_change_ = true;
    }
    if (is_statement(action.verb)) {
        statements.push_back({world.tick, action});
        steps_at_statement.push_back(world.state.board.lamp.count);
        reached_at_statement.push_back(steps_reached_);
    }
    if (touches(action.verb) && first_touch_tick == 0)
        first_touch_tick = world.tick;
}

void Review::count_steps(int lamp_count) {
    if (lamp_count > 0)
        steps_reached_ = steps_now_ == 0 ? lamp_count : std::max(steps_reached_, lamp_count);
    steps_now_ = lamp_count;
}

void Review::watch_sequence(const bench::World& world) {
    count_steps(world.state.board.lamp.count);
    const bool fire = has_fire(world);
    const bool call = world.state.thermostat_heat_closed != 0;
    fire_ticks_ = fire ? fire_ticks_ + 1 : no_fire_ticks_ < kFireDies ? fire_ticks_ : 0;
    no_fire_ticks_ = fire ? 0 : no_fire_ticks_ + 1;
    const bool was_long = fire_since_change >= fire_ticks_ && fire_since_change > 0;
    fire_since_change = std::max(fire_since_change, fire_ticks_);
    if (was_long && !fire && !call && world.state.board.powered != 0 && world.state.board.outputs == 0)
        cycle_ended = true;
    if (changes.empty()) {
        watched_ticks += world.state.board.outputs != 0 ? 1U : 0U;
        powered_call_ticks += call && world.state.board.powered != 0 ? 1U : 0U;
    }
}

void Review::watch_safeties(const bench::World& world) {
    if (has_fire(world) || no_fire_ticks_ != 1 || world.hands.last.verb == Verb::none)
        return; // the fire has just gone out: by what?
    const auto seen = [&](Provoked what) { provoked[static_cast<std::size_t>(what)] = true; };
    const bench::Action& last = world.hands.last;
    const auto lifted = [&](const std::string& part) {
        return last.verb == Verb::lift &&
               site_->model.wiring.terminals[static_cast<std::size_t>(last.value)].is_at(part);
    };
    const int hose = site_->catalogue.find_part("pressure_hose");
    if (last.verb == Verb::take_off && last.value == hose)
        seen(Provoked::hose_off);
    if (lifted("rod"))
        seen(Provoked::rod_off);
    if (lifted("rollout"))
        seen(Provoked::rollout_off);
    if (last.verb == Verb::blower_door || last.verb == Verb::door_switch)
        seen(Provoked::door_switch);
    if (world.state.heat.limit_open != 0)
        seen(Provoked::airflow_blocked);
}

Running Review::running(const bench::World& world) const {
    const furnace::Inputs& in = world.inputs;
    Running now;
    now.fire_ticks = has_fire(world) ? std::max<std::uint64_t>(1, fire_ticks_) : 0;
    now.blower = world.state.air.blower.speed_rad_s > kBlowerTurns_rad_s;
    now.inducer = world.state.draft.inducer.speed_rad_s > kInducerTurns_rad_s;
    now.air_closed = in.blower_door_on != 0 && in.filter_in != 0;
    now.gas_open = in.gas_cock_open != 0;
    now.alone_on_gas = in.other_gas_m3_s <= 0.0;
    return now;
}

/// Doors, wires, parts, switches and gas as they should be; the thermostat as the customer had it, but on
/// heat.
bool Review::is_as_it_belongs(const bench::World& world) const {
    const furnace::Inputs& in = world.inputs;
    return in.burner_door_on != 0 && in.blower_door_on != 0 && in.filter_in != 0 && in.breaker_on != 0 &&
           in.disconnect_on != 0 && in.gas_cock_open != 0 &&
           in.thermostat_mode == control::ThermostatMode::heat &&
           in.thermostat_fan == found_.thermostat_fan &&
           std::abs(in.set_point_k - found_.set_point_k) <= kSameSetPoint_k &&
           world.handiwork.door_switch_taped == 0 && world.handiwork.appliances_off == 0 &&
           std::all_of(in.parted.begin(), in.parted.end(), [](auto bits) { return bits == 0; }) &&
           std::all_of(world.handiwork.parts_off.begin(), world.handiwork.parts_off.end(),
                       [](auto bits) { return bits == 0; });
}

void Review::tick(const bench::World& world) {
    notebook_.observe(world);
    watch_.observe(world, notebook_, workspace_);
    investigation->observe(world);
    while (at_reading.size() < notebook_.readings().size())
        at_reading.push_back(running(world));
    watch_sequence(world);
    watch_safeties(world);
    const bool just_done = world.hands.last_tick + 1 == world.tick;
    if (just_done) {
        const bool mended = all_mended(world);
        if (mended && broken_before_) {
            mended_tick = world.tick;
            if (pending_change_)
                changes.back().mended = true;
        }
        if (!mended)
            mended_tick.reset();
        broken_before_ = !mended;
        pending_change_ = false;
    }
    if (just_done || was_broken.size() != real.size()) {
        was_broken.resize(real.size());
        for (std::size_t i = 0; i < real.size(); ++i)
            was_broken[i] = is_broken(world, i) ? 1 : 0;
    }
    put_back = is_as_it_belongs(world);
    tagged = world.handiwork.tagged != 0;
    told = world.handiwork.told;
    last_tick = world.tick;
}

} // namespace lightoff::lesson
