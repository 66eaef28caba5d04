// SPDX-License-Identifier: MIT
#include "bench/difference.hpp"
#include "gui/explore/way_words.hpp"
#include "gui/explore_session.hpp"

#include <utility>
#include <vector>

// Stepping through the sequence, and going back in time.

using namespace lightoff;
using explore::RunningFurnace;
using explore::StepFacts;
using platform::Key;
using test::call_for_heat;
using Session = test::ExploreSession;

namespace {

/// What a run of its own reports of the board's steps, as `lightoff-cli run` prints it.
std::vector<std::pair<std::uint64_t, std::string>> reported(double seconds) {
    const bench::Site& site = call_for_heat().site;
    const lesson::Scenario& scenario = call_for_heat().scenario;
    bench::World world = lesson::begin_world(site, scenario, 0);
    furnace::Workspace workspace(site.model);
    bench::History history(site, lesson::history_of(site, scenario));
    bench::MilestoneWatch watch(site.model);
    std::vector<bench::Milestone> all;
    watch.look(world, all);
    while (static_cast<double>(world.tick) * site.model.board.tick_s < seconds) {
        history.run(world, workspace, world.tick + 1);
        watch.look(world, all);
    }
    std::vector<std::pair<std::uint64_t, std::string>> steps;
    for (const bench::Milestone& milestone : all) {
        if (milestone.text.starts_with("board, ")) {
            steps.emplace_back(milestone.tick, milestone.text);
        }
    }
    return steps;
}

void run_to(RunningFurnace& furnace, double seconds) {
    while (furnace.now_s() < seconds) {
        furnace.tick();
    }
}

StepFacts facts_at(RunningFurnace& furnace, std::uint64_t tick) {
    furnace.go_to(tick);
    explore::StepReader reader;
    return reader.read(furnace);
}

bool any_holds(const std::vector<std::string>& lines, const std::string& words) {
    return std::any_of(lines.begin(), lines.end(),
                       [&](const std::string& line) { return line.find(words) != std::string::npos; });
}

std::size_t step_called(const RunningFurnace& furnace, const std::string& title) {
    for (std::size_t i = 0; i < furnace.steps().size(); ++i) {
        if (bench::title_of(furnace.model(), furnace.steps()[i]) == title) {
            return i;
        }
    }
    FAIL("no step is called " << title);
    return 0;
}

} // namespace

TEST_CASE("the list of steps is what a run reports, tick by tick and word by word") {
    const lesson::Scenario& scenario = call_for_heat().scenario;
    RunningFurnace furnace(call_for_heat().site, scenario);
    run_to(furnace, 300);
    std::vector<std::pair<std::uint64_t, std::string>> listed;
    for (const bench::SequenceStep& step : furnace.steps()) {
        if (step.by) { // all but the dead board and its power-up
            listed.emplace_back(step.tick, "board, " + furnace.model().board.machines[step.machine].name +
                                               ": " + bench::title_of(furnace.model(), step));
        }
    }
    CHECK(listed.size() > 10);
    const auto expected = reported(300);
    // The start state's own milestone, where it has one, comes with power and by no exit.
    const auto first = std::find(expected.begin(), expected.end(), listed.front());
    CHECK(std::vector(first, expected.end()) == listed);
    CHECK(first - expected.begin() <= 1);
}

TEST_CASE("going back gives the same bits as the first time, and so does running on from there") {
    const lesson::Scenario& scenario = call_for_heat().scenario;
    RunningFurnace furnace(call_for_heat().site, scenario);
    std::vector<bench::World> first_time;
    while (furnace.now_s() < 120) {
        furnace.tick();
        if (furnace.world().tick % 333 == 0) {
            first_time.push_back(furnace.world());
        }
    }
    const bench::World newest = furnace.world();
    const std::vector<double> readings = furnace.timed().readings();
    for (auto then = first_time.rbegin(); then != first_time.rend(); ++then) {
        furnace.go_to(then->tick);
        CHECK(furnace.timed().in_the_past());
        CHECK_FALSE(bench::first_difference(*then, furnace.world()));
    }
    const std::size_t steps = furnace.steps().size();
    const std::size_t cells = furnace.recording().size();
    while (furnace.timed().in_the_past()) {
        furnace.tick();
    }
    CHECK_FALSE(bench::first_difference(newest, furnace.world()));
    CHECK(furnace.timed().readings() == readings);
    CHECK(furnace.steps().size() == steps);
    CHECK(furnace.recording().size() == cells);
}

TEST_CASE("who does another thing in the past has another future, the same as if he had done it at once") {
    const lesson::Scenario& scenario = call_for_heat().scenario;
    RunningFurnace went_back(call_for_heat().site, scenario);
    run_to(went_back, 100);
    went_back.go_to(went_back.tick_at(40));
    CHECK(went_back.act("gas-cock off").empty());
    CHECK_FALSE(went_back.timed().in_the_past());
    CHECK(went_back.recording().newest_s() == Approx(40));
    run_to(went_back, 150);

    RunningFurnace at_once(call_for_heat().site, scenario);
    run_to(at_once, 40);
    CHECK(at_once.act("gas-cock off").empty());
    run_to(at_once, 150);
    CHECK_FALSE(bench::first_difference(at_once.world(), went_back.world()));
    REQUIRE(at_once.steps().size() == went_back.steps().size());
    for (std::size_t i = 0; i < at_once.steps().size(); ++i) {
        CHECK(at_once.steps()[i].tick == went_back.steps()[i].tick);
        CHECK(at_once.steps()[i].state == went_back.steps()[i].state);
    }
    REQUIRE(at_once.events().size() == went_back.events().size());
}

// What changes, what proves it and what should read what is common practice (sequence of operation of an
// induced-draft furnace with hot-surface igniter); no single source.
TEST_CASE("a step says what changed, what proved it, and what should read what where") {
    const lesson::Scenario& scenario = call_for_heat().scenario;
    RunningFurnace furnace(call_for_heat().site, scenario);
    run_to(furnace, 300);
    const auto at_end_of = [&](const std::string& title) {
        return facts_at(furnace, furnace.end_of(step_called(furnace, title)));
    };
    const auto value_of = [&](const StepFacts& facts, const std::string& gauge) {
        const std::size_t index = furnace.gauges().find(gauge);
        for (const explore::GaugeRow& row : facts.rows) {
            if (row.gauge == index) {
                return row;
            }
        }
        FAIL("no row " << gauge);
        return explore::GaugeRow{};
    };

    const StepFacts draft = at_end_of("Prove draft");
    CHECK(any_holds(draft.changed, "board switches on: inducer"));
    CHECK(any_holds(draft.changed, "pressure switch: closed (was open)"));
    CHECK(any_holds(draft.changed, "inducer: turns (was still)"));
    REQUIRE(draft.leads_on.size() == 1);
    CHECK(any_holds(draft.leads_on, "There was 24 V at board.pressure_return (pressure switch, "));
    CHECK_FALSE(draft.going_on);

    const StepFacts warm = at_end_of("Igniter warm-up");
    CHECK(any_holds(warm.leads_on, "This step had lasted 20 s."));
    CHECK(any_holds(warm.changed, "igniter: hot enough to light gas"));
    CHECK(value_of(warm, "igniter plug").now == Approx(120).margin(6));
    CHECK(value_of(warm, "igniter current").now > 3.0);
    CHECK(value_of(warm, "igniter current").changed);
    CHECK(value_of(warm, "manifold pressure").now == Approx(0).margin(0.01));

    const StepFacts trial = at_end_of("Trial for ignition, igniter on");
    CHECK(any_holds(trial.leads_on, "A flame was sensed ("));
    CHECK(any_holds(trial.leads_on, "µA from the rod"));
    CHECK(any_holds(trial.changed, "gas valve's armature: pulled in"));
    CHECK(value_of(trial, "manifold pressure").now == Approx(3.5).margin(0.2));
    CHECK(value_of(trial, "gas valve").now == Approx(25).margin(3));

    // Those that changed stand first.
    const auto unchanged = std::find_if(trial.rows.begin(), trial.rows.end(),
                                        [](const explore::GaugeRow& row) { return !row.changed; });
    CHECK(
        std::none_of(unchanged, trial.rows.end(), [](const explore::GaugeRow& row) { return row.changed; }));

    // What is meant to come stands first in what the board waits for.
    RunningFurnace young(call_for_heat().site, scenario);
    run_to(young, 30);
    const StepFacts waiting = facts_at(young, young.timed().newest_tick());
    CHECK(waiting.title == "Igniter warm-up");
    CHECK(waiting.going_on);
    REQUIRE(waiting.leads_on.size() > 3);
    CHECK(waiting.leads_on.front() ==
          "When this step has lasted 20 s, it goes on to “Trial for ignition, igniter on”.");

    const StepFacts run = facts_at(furnace, furnace.timed().newest_tick());
    CHECK(run.going_on);
    CHECK_FALSE(run.leads_on.empty());
}

TEST_CASE("every way out of every state of both boards is one plain sentence") {
    const files::LoadedBundle natural = files::load_bundle("natural-draft-call");
    for (const files::LoadedBundle* bundle : {&call_for_heat(), &natural}) {
        RunningFurnace furnace(bundle->site, bundle->scenario);
        furnace.tick();
        const control::Board& board = furnace.model().board;
        for (std::size_t m = 0; m < board.machines.size(); ++m) {
            for (std::size_t state = 0; state < board.machines[m].states.size(); ++state) {
                for (const bench::WayOn& way :
                     bench::ways_out(furnace.model(), furnace.world().condition, m, state)) {
                    const std::string on = explore::way_on_words(furnace, way);
                    const std::string back = explore::way_back_words(furnace, way);
                    UNSCOPED_INFO(board.machines[m].state_titles[state] << "\n  " << on << "\n  " << back);
                    CHECK(on.ends_with("it goes on to “" + way.leads_to + "”."));
                    for (const std::string& words : {on, back}) {
                        CHECK((words.front() >= 'A' && words.front() <= 'Z'));
                        CHECK(words.back() == '.');
                        CHECK(words.find('_') >= words.find("board.")); // names of terminals alone have it
                    }
                    const bool asks = !way.sensed.empty() || !way.elsewhere.empty() || !way.counted.empty();
                    CHECK(on.starts_with(asks ? "If " : way.after_s > 0 ? "When " : "At once "));
                }
            }
        }
    }
}

TEST_CASE("keys and buttons go from step to step, and run what has not been yet") {
    Session s{call_for_heat().scenario};
    s.frame();
    std::vector<std::string> titles;
    for (int i = 0; i < 9; ++i) {
        s.tap(Key::Period);
        s.finish_stepping();
        titles.push_back(
            bench::title_of(s.window.furnace().model(),
                            s.window.furnace().steps()[s.window.furnace().step_at(s.world().tick)]));
    }
    CHECK(titles.front() == "No control power");
    CHECK(titles.back() == "Trial for ignition, igniter on");
    CHECK(s.window.paused());
    CHECK(s.shows("Trial for ignition, igniter on"));
    CHECK(s.shows("What proved it to the board and led on"));
    const bench::World trial = s.world();
    s.click("Step back");
    CHECK(s.shows("This step had lasted 20 s."));
    s.tap(Key::Comma);
    CHECK(s.shows("This step had lasted 15 s."));
    s.click("Step on");
    s.tap(Key::Period);
    CHECK_FALSE(s.window.stepping()); // it has been before
    CHECK_FALSE(bench::first_difference(trial, s.world()));
    s.tap(Key::J);
    CHECK(s.world().tick == trial.tick - 20);
    s.tap(Key::K);
    CHECK(s.world().tick == trial.tick);
    s.tap(Key::Space); // runs on from there
    s.let_pass(5);
    CHECK(s.world().tick == trial.tick + 100);
}

TEST_CASE("the list leads to a step, and dragging on the paper to a moment") {
    Session s{call_for_heat().scenario};
    run_to(s.window.furnace(), 60);
    s.window.set_paused(true);
    for (int i = 0; i < 4; ++i) { // the list comes to the step looked at
        s.frame();
    }
    const canvas::LayoutProbe::Text* row = nullptr;
    for (const canvas::LayoutProbe::Text& text : s.ui.probe.texts()) {
        if (text.words.find("  Prepurge") != std::string::npos) {
            row = &text;
        }
    }
    REQUIRE(row != nullptr);
    s.ui.click(row->ink.centre());
    s.frame();
    CHECK(s.world().tick == s.window.furnace().end_of(step_called(s.window.furnace(), "Prepurge")));
    // The paper lies at the foot; its left end is the start.
    const std::uint64_t before = s.world().tick;
    s.ui.queue.push(platform::PointerEvent{1200, 800});
    s.ui.queue.push(platform::ButtonEvent{platform::MouseButton::Left, true});
    s.frame();
    const std::uint64_t pressed = s.world().tick;
    CHECK(pressed != before);
    s.ui.queue.push(platform::PointerEvent{1100, 800});
    s.frame();
    CHECK(s.world().tick < pressed);
    s.ui.queue.push(platform::ButtonEvent{platform::MouseButton::Left, false});
    s.frame();
    s.tap(Key::End);
    CHECK_FALSE(s.window.furnace().timed().in_the_past());
}
