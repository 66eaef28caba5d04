// SPDX-License-Identifier: MIT
#include "gui/explore/step_facts.hpp"

#include "gui/canvas/lettering.hpp"
#include "gui/explore/readings.hpp"
#include "gui/explore/way_words.hpp"
#include "gui/trace/ticks.hpp"
#include "report/words.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace lightoff::explore {
namespace {

/// The step that a machine takes next; none if it is still in this one.
const bench::SequenceStep* next_of(const RunningFurnace& furnace, std::size_t step) {
    const std::vector<bench::SequenceStep>& steps = furnace.steps();
    for (std::size_t i = step + 1; i < steps.size(); ++i) {
        if (!steps[i].powered || !steps[step].powered || steps[i].machine == steps[step].machine) {
            return &steps[i];
        }
    }
    return nullptr;
}

void add_ways(RunningFurnace& furnace, StepFacts& facts) {
    const bench::SequenceStep& step = furnace.steps()[facts.step];
    const furnace::Condition& condition = furnace.world().condition;
    if (!step.powered) {
        facts.leads_on.push_back("For 24 V between R and C: without them it does nothing.");
        return;
    }
    const bench::SequenceStep* next = next_of(furnace, facts.step);
    facts.going_on = next == nullptr || next->tick > furnace.timed().newest_tick();
    if (next != nullptr && next->by) {
        const bench::WayOn way = bench::way_of(furnace.model(), condition, step.machine, *next->by);
        facts.leads_on.push_back(way_back_words(furnace, way));
        return;
    }
    if (next != nullptr) {
        facts.leads_on.push_back("The board lost its power.");
        return;
    }
    std::vector<bench::WayOn> ways = bench::ways_out(furnace.model(), condition, step.machine, step.state);
    // What is meant to come stands before what always may.
    std::stable_partition(ways.begin(), ways.end(), [](const bench::WayOn& way) { return !way.common; });
    for (const bench::WayOn& way : ways) {
        facts.leads_on.push_back(way_on_words(furnace, way));
    }
}

std::string spoken(std::string name) {
    std::replace(name.begin(), name.end(), '_', ' ');
    return name;
}

std::string drivers_in(const control::Board& board, std::uint16_t bits) {
    std::string names;
    for (std::size_t i = 0; i < board.output_names.size(); ++i) {
        if ((bits >> i & 1U) != 0) {
            names += (names.empty() ? "" : ", ") + spoken(board.output_names[i]);
        }
    }
    return names;
}

void add_changes(RunningFurnace& furnace, StepFacts& facts) {
    const bench::SequenceStep& step = furnace.steps()[facts.step];
    if (const std::string on = drivers_in(furnace.model().board, step.switched_on); !on.empty()) {
        facts.changed.push_back("board switches on: " + on);
    }
    if (const std::string off = drivers_in(furnace.model().board, step.switched_off); !off.empty()) {
        facts.changed.push_back("board switches off: " + off);
    }
    for (const GaugeRow& row : facts.rows) {
        const bench::Gauge& gauge = furnace.gauges().list()[row.gauge];
        if (row.changed && !gauge.words.empty()) {
            facts.changed.push_back(gauge.name + ": " + gauge_text(gauge, row.now) + " (was " +
                                    gauge_text(gauge, row.before) + ")");
        }
    }
}

void add_machines(RunningFurnace& furnace, StepFacts& facts) {
    const bench::SequenceStep& step = furnace.steps()[facts.step];
    const control::BoardState& board = furnace.world().state.board;
    const std::vector<control::Machine>& machines = furnace.model().board.machines;
    for (std::size_t m = 0; m < machines.size() && board.powered != 0; ++m) {
        if (m != step.machine) {
            facts.besides.push_back(machines[m].state_titles[board.state[m]]);
        }
    }
}

} // namespace

const std::vector<double>& StepReader::before(RunningFurnace& furnace, std::size_t step) {
    const std::uint64_t tick =
        step == 0 ? furnace.timed().first_tick() : std::min(furnace.end_of(step - 1), furnace.world().tick);
    const std::uint64_t begun = furnace.steps()[step].tick;
    if (values_.empty() || tick_ != tick || begun_ != begun) {
        const bench::World then = furnace.timed().past().at(tick, furnace.workspace());
        furnace.gauges().read(then, furnace.workspace(), values_);
        tick_ = tick;
        begun_ = begun;
    }
    return values_;
}

StepFacts StepReader::read(RunningFurnace& furnace) {
    StepFacts facts;
    facts.step = furnace.step_at(furnace.world().tick);
    const bench::SequenceStep& step = furnace.steps()[facts.step];
    facts.title = bench::title_of(furnace.model(), step);
    const std::vector<double>& then = before(furnace, facts.step);
    const std::vector<double>& now = furnace.timed().readings();
    for (std::size_t i = 0; i < now.size(); ++i) {
        facts.rows.push_back(
            {i, now[i], then[i], bench::differ(furnace.gauges().list()[i], then[i], now[i])});
    }
    add_changes(furnace, facts);
    std::stable_partition(facts.rows.begin(), facts.rows.end(),
                          [](const GaugeRow& row) { return row.changed; });
    add_ways(furnace, facts);
    add_machines(furnace, facts);
    const bench::SequenceStep* next = next_of(furnace, facts.step);
    const std::uint64_t end = next != nullptr ? next->tick : furnace.timed().newest_tick();
    facts.when = "from " + trace::time_label(furnace.seconds(step.tick)) +
                 (next != nullptr ? " for " : ", so far for ") +
                 seconds_text(furnace.seconds(end) - furnace.seconds(step.tick));
    return facts;
}

std::string gauge_figure(const bench::Gauge& gauge, double value) {
    if (!gauge.words.empty()) {
        const auto index = static_cast<std::size_t>(std::max(0.0, value));
        return gauge.words[std::min(index, gauge.words.size() - 1)];
    }
    const int decimals = bench::decimals_of(gauge.unit);
    return decimals == 0 ? grouped(value) : canvas::figure(value, decimals);
}

std::string gauge_text(const bench::Gauge& gauge, double value) {
    return gauge_figure(gauge, value) +
           (gauge.unit.empty() || !gauge.words.empty() ? "" : " " + report::unit_text(gauge.unit));
}

} // namespace lightoff::explore
