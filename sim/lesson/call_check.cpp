// SPDX-License-Identifier: MIT
#include "lesson/call_check.hpp"

#include "evidence/bank.hpp"
#include "evidence/investigation.hpp"
#include "instruments/co_alarm.hpp"
#include "lesson/account.hpp"
#include "lesson/begin_of.hpp"
#include "units/constants.hpp"

#include <algorithm>

namespace lightoff::lesson {
namespace {

using evidence::Cause;

// When a household calls (teaching values).
constexpr std::uint64_t kStaysTicks = 20 * 60 * 20; ///< after the visit would have begun
constexpr double kColder_k = 1.0;                   ///< than the thermostat is set to
constexpr double kColdFor_s = 240.0;                ///< longer than with a sound furnace: "no heat"
constexpr double kLessWarm = 0.92;                  ///< of a sound furnace's warmth: "it hardly heats"
constexpr int kLouder = 3;                          ///< tenths over a sound furnace's light-off: "a thump"
constexpr int kShakesMore = 2;                      ///< mm/s over a sound furnace
constexpr double kLongerRunUp = 1.5;                ///< times a sound furnace's: "a howl"
constexpr double kHums_s = 3.0;

constexpr double kTick_s = units::seconds_per_tick;

/// Longest stretch of something, in seconds.
class Longest {
public:
    void tick(bool on) {
        now_ = on ? now_ + kTick_s : 0.0;
        longest_ = std::max(longest_, now_);
    }
    [[nodiscard]] double seconds() const { return longest_; }

private:
    double now_ = 0.0;
    double longest_ = 0.0;
};

/// How long the inducer's tone rises after it has set in; the longest such rise.
class RunUp {
public:
    void tick(int hz) {
        if (hz == 0) {
            rising_ = true;
            rises_s_ = since_rise_s_ = 0.0;
            top_hz_ = 0;
            return;
        }
        rises_s_ += kTick_s;
        since_rise_s_ = hz > top_hz_ ? 0.0 : since_rise_s_ + kTick_s;
        top_hz_ = std::max(top_hz_, hz);
        if (rising_ && since_rise_s_ >= kSteady_s) {
            rising_ = false;
            longest_s_ = std::max(longest_s_, rises_s_ - kSteady_s);
        }
    }
    [[nodiscard]] double seconds() const { return longest_s_; }

private:
    static constexpr double kSteady_s = 1.0;
    bool rising_ = true;
    int top_hz_ = 0;
    double rises_s_ = 0.0;
    double since_rise_s_ = 0.0;
    double longest_s_ = 0.0;
};

bool wants_heat(const bench::World& world) {
    return world.inputs.thermostat_mode == control::ThermostatMode::heat &&
           world.inputs.set_point_k > world.state.heat.temperature.house + kColder_k;
}

bool is_cold(const Lived& it, const Lived& sound) {
    return it.longest_wait_s >= sound.longest_wait_s + kColdFor_s;
}
bool heats_poorly(const Lived& it, const Lived& sound) {
    return it.fire_s > 0.0 && (it.warmth < kLessWarm * sound.warmth || it.lights > sound.lights);
}
bool is_noisy(const Lived& it, const Lived& sound) {
    return it.bang >= sound.bang + kLouder || it.shaking >= sound.shaking + kShakesMore ||
           it.run_up_s >= kLongerRunUp * sound.run_up_s || it.hum_s >= kHums_s;
}
bool smells_or_alarms(const Lived& it) {
    return it.gas_smell > 0 || 1e-6 * it.room_co_ppm >= instruments::kActCo;
}

bool complaint_occurs(Kind kind, const Lived& it, const Lived& sound) {
    switch (kind) {
    case Kind::no_heat:
        return is_cold(it, sound);
    case Kind::poor_heat:
        return heats_poorly(it, sound);
    case Kind::noise:
        return is_noisy(it, sound);
    case Kind::smell_or_alarm:
        return smells_or_alarms(it);
    case Kind::callback:
        return is_cold(it, sound) || heats_poorly(it, sound);
    case Kind::nothing_wrong:
        return !is_cold(it, sound) && !heats_poorly(it, sound) && !is_noisy(it, sound) &&
               !smells_or_alarms(it);
    case Kind::tune_up:
    case Kind::explore:
        return true; // nobody complains
    }
    return true;
}

std::string minutes(double seconds) {
    return tenths(seconds / 60.0) + " min";
}

std::string sentence(const Lived& it, const Lived& sound) {
    const auto beside = [](const std::string& own, const std::string& other) {
        return own + " (sound: " + other + ")";
    };
    return "heat wanted " + minutes(it.wanted_s) + ", fire " +
           beside(minutes(it.fire_s), minutes(sound.fire_s)) + ", longest wait " +
           beside(minutes(it.longest_wait_s), minutes(sound.longest_wait_s)) + ", lit " +
           beside(std::to_string(it.lights), std::to_string(sound.lights)) + " times, warmth " +
           whole(sound.warmth > 0.0 ? 100.0 * it.warmth / sound.warmth : 100.0) + " %, light-off " +
           beside(std::to_string(it.bang), std::to_string(sound.bang)) + ", shaking " +
           beside(std::to_string(it.shaking), std::to_string(sound.shaking)) + ", inducer runs up " +
           beside(tenths(it.run_up_s) + " s", tenths(sound.run_up_s) + " s") + ", hum " + tenths(it.hum_s) +
           " s, gas smell " + std::to_string(it.gas_smell) + ", CO " + whole(it.room_co_ppm) + " ppm";
}

/// A fault that may be there and not show at the moment.
bool may_hide(const bench::Site& site, Cause cause) {
    if (cause.fault < 0)
        return false;
    const auto& triggers = site.catalogue.faults[static_cast<std::size_t>(cause.fault)].triggers;
    return std::any_of(triggers.begin(), triggers.end(), [](faults::Trigger trigger) {
        return trigger == faults::Trigger::when_hot || trigger == faults::Trigger::now_and_then;
    });
}

/// Of a call with one cause, or none: the coach's way to it.
void find_proof(const bench::Site& site, Cause truth, evidence::Bank& bank, evidence::Investigation& visit,
                CallCheck& found) {
    const evidence::Route route = visit.route_to(truth);
    found.minutes = route.minutes;
    for (const int test : route.tests)
        found.proof.push_back(bank.tests()[static_cast<std::size_t>(test)].what);
    found.solvable = true;
    for (const Cause cause : route.group) {
        if (cause == truth)
            continue;
        if (may_hide(site, cause)) {
            ++found.may_come_and_go;
            continue;
        }
        found.look_alikes.push_back(title_of(site, cause));
        found.solvable = found.solvable && cause.fault >= 0;
    }
}

/// Of several conditions at once: for each, the test that tells it best from a sound furnace.
void find_signs(const bench::Site& site, const std::vector<evidence::RealFault>& real, evidence::Bank& bank,
                CallCheck& found) {
    const evidence::Variant sound = bank.variants_of(evidence::kNothingWrong).front();
    found.solvable = true;
    for (const evidence::RealFault& fault : real) {
        const Cause cause{fault.fault, -1};
        const evidence::Variant worst = bank.variants_of(cause).back();
        const evidence::Suspect its{cause, worst.low, worst.high};
        const evidence::Rating best =
            bank.best_test_about(its, {{evidence::kNothingWrong, sound.low, sound.high}}, {});
        found.minutes += best.minutes;
        if (best.test < 0) {
            found.solvable = false;
            found.look_alikes.push_back(title_of(site, cause) + ": nothing shows it");
        } else {
            found.proof.push_back(title_of(site, cause) + ": " +
                                  bank.tests()[static_cast<std::size_t>(best.test)].what);
        }
    }
}

} // namespace

Lived live(const bench::Site& site, const Scenario& scenario, furnace::Workspace& workspace) {
    bench::World world = begin_world(site, scenario, 0);
    bench::History history(site, history_of(site, scenario));
    Lived lived;
    Longest wait;
    RunUp run_up;
    bool fire_before = false;
    while (world.tick < scenario.arrive_after_ticks + kStaysTicks) {
        history.run(world, workspace, world.tick + 1);
        const bench::Percept p = bench::perceive(site, world);
        const bool fire = p.heard.roar > 0;
        const bool wants = wants_heat(world);
        lived.wanted_s += wants ? kTick_s : 0.0;
        lived.fire_s += fire ? kTick_s : 0.0;
        wait.tick(wants && !fire);
        lived.lights += fire && !fire_before ? 1 : 0;
        fire_before = fire;
        run_up.tick(p.heard.inducer_hz);
        lived.warmth += static_cast<double>(p.felt.register_air) * p.felt.register_warmth * kTick_s;
        lived.hum_s += p.heard.inducer_hum || p.heard.blower_hum ? kTick_s : 0.0;
        lived.bang = std::max<int>(lived.bang, p.heard.ignition);
        lived.shaking = std::max<int>(lived.shaking, p.felt.cabinet_vibration);
        lived.gas_smell = std::max<int>(lived.gas_smell, p.smelt.gas);
        lived.room_co_ppm = std::max(lived.room_co_ppm, world.state.gas.room.co_fraction * 1e6);
    }
    lived.longest_wait_s = wait.seconds();
    lived.run_up_s = run_up.seconds();
    return lived;
}

CallCheck check_call(const bench::Site& site, const Scenario& scenario) {
    furnace::Workspace workspace(site.model);
    Scenario sound = scenario;
    sound.faults.clear();
    sound.overrides.clear();
    sound.onsets.clear();
    const Lived lived = live(site, scenario, workspace);
    const Lived sound_lived = live(site, sound, workspace);
    CallCheck found;
    found.complaint_occurs = complaint_occurs(scenario.kind, lived, sound_lived);
    found.lived = sentence(lived, sound_lived);

    Scenario shown = scenario;
    for (FaultUse& use : shown.faults)
        if (use.onset == faults::Trigger::now_and_then)
            use.onset = faults::Trigger::from_start;
    const std::vector<evidence::RealFault> real = real_faults(site, shown);
    evidence::Bank bank(site, begin_of(site, shown, 0), real);
    if (real.size() > 1 || scenario.kind == Kind::tune_up) {
        find_signs(site, real, bank, found);
        return found;
    }
    evidence::Investigation visit(bank, arrive(site, shown, 0, workspace));
    find_proof(site, real.empty() ? evidence::kNothingWrong : Cause{real[0].fault, -1}, bank, visit, found);
    return found;
}

} // namespace lightoff::lesson
