// SPDX-License-Identifier: MIT
#pragma once
#include "gui/explore/running_furnace.hpp"

#include <string>
#include <vector>

namespace lightoff::explore {

/// A gauge at a moment, beside what it showed at the end of the step before.
struct GaugeRow {
    std::size_t gauge = 0;
    double now = 0, before = 0;
    bool changed = false;
};

/// All that is to be said of a step of the sequence, from the board's table, the run and the gauges.
struct StepFacts {
    std::size_t step = 0;
    std::string title;
    std::string when;                 ///< "0:24 to 0:39, 15 s"
    std::vector<std::string> besides; ///< what the board's other machines are at
    std::vector<std::string> changed; ///< since the step before: contacts, valves, wheels, flame, lamp
    bool going_on = false;
    std::vector<std::string> leads_on; ///< what led on; while it goes on, what would
    std::vector<GaugeRow> rows;        ///< those that changed first
};

/// Works them out for the moment that the furnace is looked at; keeps what is dear to find again.
class StepReader {
public:
    StepFacts read(RunningFurnace& furnace);

private:
    const std::vector<double>& before(RunningFurnace& furnace, std::size_t step);

    std::uint64_t tick_ = 0; ///< of `values_`
    std::uint64_t begun_ = 0;
    std::vector<double> values_;
};

/// "24.6 V", "closed".
std::string gauge_text(const bench::Gauge& gauge, double value);
/// The number alone, or the word.
std::string gauge_figure(const bench::Gauge& gauge, double value);

} // namespace lightoff::explore
