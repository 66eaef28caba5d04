// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "bench/captions.hpp"
#include "bench/hazards.hpp"
#include "bench/offers.hpp"
#include "bench/readouts.hpp"
#include "files/bundle_loader.hpp"
#include "files/data_folder.hpp"
#include "lesson/replay.hpp"
#include "support/nature.hpp"
#include "support/random_life.hpp"
#include "support/rig.hpp"

#include <cstdlib>
#include <cstring>
#include <map>
#include <memory>
#include <numeric>

// Whatever is done to whatever furnace: the program goes on, nothing impossible comes of it, and the same
// actions bring the same World.

using lightoff::bench::Verb;
using lightoff::bench::World;
using lightoff::test::Nature;
using lightoff::test::RandomHands;
using lightoff::test::Rig;
namespace bench = lightoff::bench;
namespace files = lightoff::files;
namespace furnace = lightoff::furnace;
namespace lesson = lightoff::lesson;

namespace {

#ifdef NDEBUG
constexpr bool kFast = true;
#else
constexpr bool kFast = false; // unoptimised, or under sanitizers
#endif
constexpr std::uint64_t kActionsOfALife = 1000;
constexpr std::uint64_t kHurryTicks = 5 * 20; ///< longest that somebody in a hurry takes for an action

/// LIGHTOFF_RANDOM_ACTIONS=1000000 searches for longer.
std::uint64_t actions_wanted() {
    const char* wanted = std::getenv("LIGHTOFF_RANDOM_ACTIONS");
    return wanted != nullptr ? std::strtoull(wanted, nullptr, 10) : kFast ? 100000 : 5000;
}

/// Every call in the data folder, read when it is first wanted.
class Calls {
public:
    /// In strides, so that a few lives see calls of many kinds.
    const files::LoadedBundle& of_life(std::uint64_t life) {
        constexpr std::uint64_t stride = 13;
        REQUIRE(std::gcd(stride, names_.size()) == 1);
        const std::size_t i = life * stride % names_.size();
        if (!calls_[i])
            calls_[i] = std::make_unique<files::LoadedBundle>(files::load_bundle(names_[i]));
        return *calls_[i];
    }

private:
    std::vector<std::string> names_ = files::data_names("calls");
    std::map<std::size_t, std::unique_ptr<files::LoadedBundle>> calls_;
};

/// Whoever watches a student's every tick.
struct Watchers {
    explicit Watchers(const files::LoadedBundle& call)
        : captions(call.site), notebook(call.site), hazards(call.site, call.scenario.school_rules) {}
    bench::CaptionWatch captions;
    bench::Notebook notebook;
    bench::HazardWatch hazards;
};

/// An attempt of somebody who does anything, mostly in a hurry and now and then something that takes its
/// time.
class RandomAttempt {
public:
    RandomAttempt(const files::LoadedBundle& call, std::uint64_t seed, bool watched)
        : call_(call), workspace_(call.site.model), other_workspace_(call.site.model),
          world_(lesson::arrive(call.site, call.scenario, seed, workspace_)), nature_(call.site, world_),
          hasty_(seed, {.rests = 0, .patience_ticks = kHurryTicks, .longest_wait_s = 5}),
          thorough_(seed + 1000000,
                    {.rests = 0, .patience_ticks = 20 * 60 * 20, .tries = 40, .verbs = slow_verbs()}) {
        log_.seed = seed;
        if (watched)
            watchers_ = std::make_unique<Watchers>(call);
    }

    /// True as long as nothing impossible has happened.
    bool act() {
        const bench::Action action = next();
        if (watchers_)
            watchers_->hazards.before(world_, action, other_workspace_);
        log_.entries.push_back({world_.tick, action});
        REQUIRE(bench::begin(call_.site, world_, action).allowed);
        while (world_.hands.busy != 0)
            run(1);
        run(hasty_.random(20));
        const std::vector<std::string> broken = nature_.broken_by(world_, other_workspace_);
        for (const std::string& what : broken)
            FAIL_CHECK(call_.name << ", seed " << log_.seed << ", action " << log_.entries.size() << " ("
                                  << bench::format_action(call_.site, action) << "), tick " << world_.tick
                                  << ": " << what);
        return broken.empty();
    }

    /// The record gives the same bits again.
    void replay() {
        log_.last_tick = world_.tick;
        const lesson::ReplayResult again = lesson::replay(call_.site, call_.scenario, log_);
        INFO(call_.name << ", seed " << log_.seed);
        if (again.divergence)
            FAIL_CHECK("at tick " << again.divergence->tick << ": " << again.divergence->what);
        CHECK(again.marks_compared == log_.marks.size());
        CHECK(std::memcmp(&again.world, &world_, sizeof(World)) == 0);
    }

    [[nodiscard]] const lesson::Log& log() const { return log_; }
    [[nodiscard]] const World& world() const { return world_; }
    [[nodiscard]] const Watchers* watchers() const { return watchers_.get(); }

private:
    static std::vector<Verb> slow_verbs() {
        // Twice what needs something else done before.
        std::vector<Verb> slow{Verb::put_back, Verb::lift, Verb::land, Verb::land};
        for (const bench::VerbSpec& spec : bench::verbs())
            if (static_cast<std::uint64_t>(spec.ticks) > kHurryTicks || bench::takes_its_own_time(spec.verb))
                slow.push_back(spec.verb);
        return slow;
    }

    bench::Action next() {
        constexpr std::uint64_t hurries = 25;
        std::optional<bench::Action> action;
        if (hasty_.random(hurries) == 0)
            action = thorough_.choose(call_.site, world_);
        while (!action)
            action = hasty_.choose(call_.site, world_);
        return *action;
    }
    void run(std::uint64_t ticks) {
        for (std::uint64_t i = 0; i < ticks; ++i) {
            bench::advance(call_.site, world_, workspace_, 1);
            if (world_.tick % lesson::kMarkTicks == 0)
                log_.marks.push_back({world_.tick, lesson::world_hash(world_)});
            if (watchers_) {
                watchers_->captions.observe(world_);
                watchers_->notebook.observe(world_);
                watchers_->hazards.observe(world_, watchers_->notebook, other_workspace_);
            }
        }
    }

    const files::LoadedBundle& call_;
    furnace::Workspace workspace_;
    furnace::Workspace other_workspace_; ///< for questions, so that they can't help the ticks along
    World world_;
    Nature nature_;
    RandomHands hasty_;
    RandomHands thorough_;
    lesson::Log log_;
    std::unique_ptr<Watchers> watchers_;
};

bool all_finite(const std::vector<bench::Readout>& readouts) {
    return std::all_of(readouts.begin(), readouts.end(),
                       [](const bench::Readout& r) { return r.value - r.value == 0.0; });
}

} // namespace

TEST_CASE("random actions: nothing breaks, nothing impossible comes of it, the record gives the same bits") {
    Calls calls;
    std::map<Verb, int> done;
    double burnt_m3 = 0.0;
    std::uint64_t ticks = 0;
    std::size_t captions = 0;
    std::size_t readings = 0;
    std::size_t hazards = 0;
    const std::uint64_t lives = (actions_wanted() + kActionsOfALife - 1) / kActionsOfALife;
    for (std::uint64_t life = 0; life < lives; ++life) {
        const files::LoadedBundle& call = calls.of_life(life);
        RandomAttempt attempt(call, life, life % 8 == 0);
        const std::uint64_t arrived = attempt.world().tick;
        for (std::uint64_t i = 0; i < kActionsOfALife && attempt.act(); ++i) {
        }
        attempt.replay();

        furnace::Workspace workspace(call.site.model);
        CHECK(all_finite(bench::readouts(call.site.model, attempt.world(), workspace)));
        for (const lesson::Log::Entry& entry : attempt.log().entries)
            ++done[entry.action.verb];
        ticks += attempt.world().tick - arrived;
        burnt_m3 += attempt.world().state.combustion.fuel_burnt_m3;
        if (const Watchers* watchers = attempt.watchers()) {
            captions += watchers->captions.captions().size();
            readings += watchers->notebook.readings().size();
            hazards += watchers->hazards.events().size();
        }
    }
    WARN(lives << " lives of " << kActionsOfALife << " actions, " << ticks / 72000 << " h with the furnaces, "
               << burnt_m3 << " m3 of gas burnt; in those watched " << captions << " captions, " << readings
               << " readings, " << hazards << " hazards");
    CHECK(burnt_m3 > 0.01 * static_cast<double>(lives));
    CHECK(captions > 100);
    CHECK(readings > 10);
    CHECK(hazards > 10);
    if (lives >= 100)
        for (const bench::VerbSpec& spec : bench::verbs()) {
            INFO(spec.name);
            CHECK((spec.verb == Verb::sign_off || done[spec.verb] > 0));
        }
}

// That the search above can find something.
TEST_CASE("an impossible World is told from a possible one") {
    Rig rig;
    Nature nature(rig.site, rig.world);
    rig.run(200.0);
    REQUIRE(nature.broken_by(rig.world, rig.workspace).empty());
    REQUIRE(rig.board_state() == "run");

    using Damage = std::pair<const char*, void (*)(World&)>;
    for (const auto& [what, damage] : {
             Damage{"finite", [](World& w) { w.state.signals.heat.delivered_w = std::nan(""); }},
             Damage{"plenum's temperature", [](World& w) { w.state.heat.temperature.plenum = 200.0; }},
             Damage{"flame's temperature", [](World& w) { w.state.signals.heat.flame_k = 2300.0; }},
             Damage{"blower winding", [](World& w) { w.state.heat.temperature.blower_winding = 1500.0; }},
             Damage{"relay's travel", [](World& w) { w.state.relays[0].position = 1.001; }},
             Damage{"raw gas in the room", [](World& w) { w.state.gas.room.raw_gas_fraction = -1e-9; }},
             Damage{"oxygen", [](World& w) { w.state.signals.combustion.o2_dry = 0.21; }},
             Damage{"inlet tap", [](World& w) { w.state.signals.gas.inlet_tap_pa = 3000.0; }},
             Damage{"manifold tap", [](World& w) { w.state.signals.gas.manifold_tap_pa = 1800.0; }},
             Damage{"through the meter", [](World& w) { w.state.signals.gas.meter_flow_m3_s = -1e-9; }},
             Damage{"pressure of the draft",
                    [](World& w) { w.state.signals.draft.port_suction_pa = 1000.0; }},
             Damage{"up the vent", [](World& w) { w.state.signals.draft.vent_kg_s = 1.0; }},
             Damage{"house air", [](World& w) { w.state.signals.air.flow_m3_s = 2.0; }},
             Damage{"supply", [](World& w) { w.state.signals.air.supply_static_pa = -1.0; }},
             Damage{"inducer's speed", [](World& w) { w.state.draft.inducer.speed_rad_s = 380.0; }},
             Damage{"gas accounted for", [](World& w) { w.state.combustion.fuel_burnt_m3 += 1e-6; }},
             Damage{"let in at the burners", [](World& w) { w.state.gas.meter_volume_m3 *= 0.99; }},
             Damage{"gas in the room", [](World& w) { w.state.gas.room.raw_gas_fraction = 0.01; }},
             Damage{"went out or stayed", [](World& w) { w.state.heat.temperature.collector += 1e-4; }},
             Damage{"heat of the gas burnt", [](World& w) { w.state.heat.energy.fuel_hhv += 1.0; }},
             Damage{"the house got", [](World& w) { w.state.heat.energy.house_loss += 1.0; }},
         }) {
        World damaged = rig.world;
        damage(damaged);
        Nature unharmed = nature;
        bool told = false;
        for (const std::string& sentence : unharmed.broken_by(damaged, rig.workspace))
            told = told || sentence.find(what) != std::string::npos;
        INFO(what);
        CHECK(told);
    }
}
