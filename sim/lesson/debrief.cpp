// SPDX-License-Identifier: MIT
#include "lesson/debrief.hpp"

#include "bench/readouts.hpp"
#include "lesson/begin_of.hpp"
#include "units/constants.hpp"

#include <algorithm>

namespace lightoff::lesson {
namespace {

constexpr std::uint64_t kTellEveryTicks = 400;
constexpr double kPoor = 0.6; ///< of the best test on offer: below it there was a better one worth naming

/// Looks on while the attempt runs again: the facts for the judge, and everything for the line of time.
class Recorder : public Onlooker {
public:
    Recorder(const bench::Site& site, const Scenario& scenario, evidence::Bank& bank, const Log& log,
             const DebriefProgress& progress)
        : review(site, scenario, bank), site_(&site), progress_(&progress), workspace_(site.model),
          captions_(site), milestones_(site.model), expected_last_(log.last_tick) {
        story_.film = Film(log.entries);
    }

    void arrived(const bench::World& world) override {
        review.arrived(world);
        story_.arrived_tick = world.tick;
        see(world);
    }
    void before(const bench::World& world, const bench::Action& action) override {
        review.before(world, action);
    }
    void tick(const bench::World& world) override {
        review.tick(world);
        see(world);
        if (*progress_ && world.tick % kTellEveryTicks == 0)
            (*progress_)(DebriefStage::replay, share(world.tick));
    }

    Story take_story() {
        story_.last_tick = review.last_tick;
        story_.readings = review.notebook().readings();
        story_.captions = captions_.captions();
        story_.hazards = review.hazards();
        story_.changes = review.changes;
        story_.statements = review.statements;
        return std::move(story_);
    }

    Review review;

private:
    [[nodiscard]] double share(std::uint64_t tick) const {
        const double all =
            static_cast<double>(expected_last_ - std::min(expected_last_, story_.arrived_tick));
        const double gone = static_cast<double>(tick - story_.arrived_tick);
        return all > 0.0 ? std::min(1.0, gone / all) : 1.0;
    }
    void see(const bench::World& world) {
        captions_.observe(world);
        milestones_.look(world, story_.milestones);
        story_.film.see(world);
        if ((world.tick - story_.arrived_tick) % Tracks::kEveryTicks == 0)
            sample(world);
    }
    void sample(const bench::World& world) {
        Tracks& tracks = story_.tracks;
        const std::vector<bench::Readout> all = bench::readouts(site_->model, world, workspace_);
        if (tracks.lanes.empty())
            for (const bench::Readout& r : all)
                tracks.lanes.push_back({r.name, r.unit, r.group});
        tracks.ticks.push_back(world.tick);
        for (const bench::Readout& r : all)
            tracks.values.push_back(static_cast<float>(r.value));
    }

    const bench::Site* site_;
    const DebriefProgress* progress_;
    furnace::Workspace workspace_;
    bench::CaptionWatch captions_;
    bench::MilestoneWatch milestones_;
    std::uint64_t expected_last_;
    Story story_;
};

/// Lends the bank an ear for as long as it lives.
class Listening {
public:
    Listening(evidence::Bank& bank, const DebriefProgress& progress) : bank_(&bank) {
        const auto tell = [&progress](double share) {
            if (progress)
                progress(DebriefStage::judging, share);
        };
        tell(0.0);
        bank.set_pulse(tell);
    }
    ~Listening() { bank_->set_pulse({}); }
    Listening(const Listening&) = delete;
    Listening& operator=(const Listening&) = delete;

private:
    evidence::Bank* bank_;
};

/// Once the cause is known no test is owed.
std::uint64_t searched_until(const Story& story, const Grade& grade) {
    return grade.isolated_tick.value_or(story.last_tick);
}

std::vector<evidence::Worth> worths_of(evidence::Investigation& investigation, const Story& story,
                                       const Grade& grade) {
    std::vector<evidence::Worth> worths;
    for (std::size_t i = 0; i < story.readings.size(); ++i) {
        if (story.readings[i].tick > searched_until(story, grade))
            break;
        worths.push_back(investigation.worth_of(static_cast<int>(i) + 1));
    }
    return worths;
}

std::size_t fitting_on_arrival(evidence::Investigation& investigation, const Story& story,
                               const Grade& grade) {
    if (grade.staircase.empty())
        return investigation.fitting_at(story.arrived_tick).size();
    const evidence::Step& first = grade.staircase.front();
    return first.tick <= story.arrived_tick ? first.still_fitting
                                            : first.still_fitting + first.ruled_out.size();
}

std::optional<Knew> knew(const Grade& grade) {
    if (!grade.isolated_tick)
        return std::nullopt;
    Knew found{*grade.isolated_tick, 0};
    for (const evidence::Step& step : grade.staircase)
        if (step.tick == found.tick)
            found.reading = std::max(found.reading, step.reading);
    return found;
}

std::vector<CoachStep> coach_of(evidence::Investigation& investigation, const Grade& grade) {
    std::vector<CoachStep> steps;
    if (grade.truth.with >= 0)
        return steps;
    const evidence::Route route = investigation.route_to(grade.truth);
    for (std::size_t i = 0; i < route.tests.size(); ++i)
        steps.push_back({route.done_minutes[i],
                         investigation.bank().tests()[static_cast<std::size_t>(route.tests[i])].what,
                         route.still_fitting[i]});
    return steps;
}

bool tells_too_little(const evidence::Worth& worth) {
    using evidence::Word;
    return worth.word == Word::idle || worth.word == Word::repeat;
}

/// The first reading, alone or with others of one test, that told little while something better was on offer;
/// if there is none, the one that fell furthest behind.
std::optional<BetterTest> poor_reading(const Story& story, const std::vector<evidence::Worth>& worths) {
    std::optional<BetterTest> found;
    double least = kPoor;
    for (std::size_t i = 0; i < worths.size(); ++i) {
        const evidence::Worth& worth = worths[i];
        const bool last_of_test = i + 1 == worths.size() || worths[i + 1].test != worth.test;
        if (!last_of_test || worth.best <= 0.0)
            continue;
        BetterTest choice;
        choice.tick = worth.from_tick;
        choice.reading = static_cast<int>(i) + 1;
        choice.made_tick = story.readings[i].tick;
        choice.worth = worth;
        if (tells_too_little(worth))
            return choice;
        const double share = worth.pairs_a_minute / worth.best;
        if (worth.word == evidence::Word::narrower && share < least) {
            least = share;
            found = choice;
        }
    }
    return found;
}

/// A part changed while more than the cause fitted.
std::optional<BetterTest> early_change(const Story& story, const Grade& grade) {
    for (std::size_t i = 0; i < story.changes.size(); ++i) {
        const ChangeMade& change = story.changes[i];
        if (change.part < 0 || change.tick >= searched_until(story, grade))
            continue;
        BetterTest choice;
        choice.tick = change.tick;
        choice.change = i;
        choice.made_tick = change.tick;
        return choice;
    }
    return std::nullopt;
}

} // namespace

std::optional<BetterTest> find_better(evidence::Investigation& investigation, const Story& story,
                                      const Grade& grade, const std::vector<evidence::Worth>& worths) {
    std::optional<BetterTest> found = poor_reading(story, worths);
    const std::optional<BetterTest> change = early_change(story, grade);
    if (change && (!found || change->made_tick < found->made_tick || !tells_too_little(found->worth)))
        found = change;
    if (!found)
        return std::nullopt;
    const std::vector<evidence::Offer> offers = investigation.best_tests_at(found->tick, 1);
    if (offers.empty())
        return std::nullopt;
    found->offer = offers.front();
    found->still_fitting = investigation.fitting_at(found->tick).size();
    return found;
}

Debrief make_debrief(const bench::Site& site, const Scenario& scenario, const Rubric& rubric, const Log& log,
                     evidence::Bank& bank, const DebriefProgress& progress) {
    Recorder recorder(site, scenario, bank, log, progress);
    play(site, scenario, log, recorder);
    const Listening listening(bank, progress);
    Debrief debrief;
    debrief.grade = judge(site, scenario, rubric, recorder.review);
    debrief.twin = scenario.twin;
    debrief.has_staircase = scenario.kind != Kind::tune_up;
    debrief.story = recorder.take_story();
    if (debrief.has_staircase) {
        evidence::Investigation& investigation = *recorder.review.investigation;
        debrief.fitting_on_arrival = fitting_on_arrival(investigation, debrief.story, debrief.grade);
        debrief.coach = coach_of(investigation, debrief.grade);
        debrief.knew = knew(debrief.grade);
        debrief.worths = worths_of(investigation, debrief.story, debrief.grade);
        debrief.better = find_better(investigation, debrief.story, debrief.grade, debrief.worths);
    }
    return debrief;
}

} // namespace lightoff::lesson
