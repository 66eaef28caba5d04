// SPDX-License-Identifier: MIT
#include "evidence/furnace.hpp"

#include "evidence/doubt.hpp"
#include "instruments/bag.hpp"

#include <algorithm>
#include <limits>

namespace lightoff::evidence {
namespace {

constexpr double kInfinite = std::numeric_limits<double>::infinity();

void see(const instruments::Display& display, Prediction& p) {
    if (!display.has(instruments::kOn))
        return;
    const instruments::Value value = instruments::value_of(display);
    const double si = value.known ? value.value : kInfinite;
    const bool first = p.low > p.high;
    p.low = first ? si : std::min(p.low, si);
    p.high = first ? si : std::max(p.high, si);
    if (value.known)
        p.half_width = std::max(p.half_width, doubt(display.quantity, value));
}

} // namespace

Numbers numbers_of(const instruments::Display& display) {
    if (!display.has(instruments::kOn))
        return {};
    const instruments::Value value = instruments::value_of(display);
    return value.known ? Numbers{value.value, value.value, doubt(display.quantity, value)}
                       : Numbers{kInfinite, kInfinite, 0.0};
}

/// Keeps what stands in the windows, for as long as a stretch.
void Furnace::glance() {
    if (world_.tick % kGlanceTicks != 0)
        return;
    constexpr std::size_t kKept = kStretchTicks / kGlanceTicks + 1;
    const std::size_t place = world_.tick / kGlanceTicks % kKept;
    if (glances_.empty())
        glances_.resize(kKept);
    Glance& now = glances_[place];
    now.tick = world_.tick;
    const auto displays = instruments::displays(world_.bag);
    for (std::size_t i = 0; i < displays.size(); ++i)
        now.window[i] = *displays[i].display;
}

/// Every number that stood settled in the window within the stretch before the reading, and the one that
/// stands there now.
void Furnace::read_window(const Observation& o, std::size_t window, Prediction& into) const {
    const std::uint64_t from = std::max(o.since, o.tick - std::min(o.tick, kStretchTicks));
    for (const Glance& g : glances_)
        if (g.tick >= from && g.tick <= o.tick &&
            g.window[window].ticks_settled >= instruments::kSettledTicks)
            see(g.window[window], into);
    see(*instruments::displays(world_.bag)[window].display, into);
}

/// Nothing lies there where the part could not have been replaced.
void Furnace::test_old(const bench::Site& site, int part, Prediction& into) const {
    const bench::OldPart* old = bench::find_old(world_.old_parts, part);
    if (old == nullptr)
        return;
    into.band = old->band;
    const std::vector<instruments::Display> values = bench::measured(site, *old);
    for (std::size_t i = 0; i < values.size(); ++i)
        into.bench[i] = numbers_of(values[i]);
}

Prediction Furnace::predict(const bench::Site& site, const Record& record, const Observation& o) {
    Prediction p;
    p.possible = possible_;
    if (o.reading == 0) {
        p.sensed = stretch_;
        stretch_ = {};
        return p;
    }
    const bench::Reading& reading = record.notebook().readings()[static_cast<std::size_t>(o.reading) - 1];
    if (reading.part < 0) {
        read_window(o, static_cast<std::size_t>(reading.window), p);
        return p;
    }
    if (reading.taken == bench::Taken::old_part) {
        test_old(site, reading.part, p);
        return p;
    }
    const std::vector<int> bands =
        faults::describe(site.catalogue.parts[static_cast<std::size_t>(reading.part)].look, world_.condition);
    for (std::size_t i = 0; i < bands.size() && i < p.band.size(); ++i)
        p.band[i] = static_cast<std::uint8_t>(bands[i]);
    p.controls = controls_of(world_.inputs);
    return p;
}

void Furnace::follow(const bench::Site& site, const Record& record, furnace::Workspace& workspace,
                     std::size_t observations) {
    const std::vector<Observation>& all = record.observations();
    const std::vector<TimedAction>& actions = record.actions();
    while (said_.size() < observations) {
        while (next_action_ < actions.size() && actions[next_action_].tick <= world_.tick)
            possible_ = bench::begin(site, world_, actions[next_action_++].action).allowed && possible_;
        bench::advance(site, world_, workspace, 1);
        if ((world_.tick - record.arrival()) % kLookTicks == 0)
            add(stretch_, sense(bench::perceive(site, world_), world_.state.board.lamp));
        glance();
        while (said_.size() < observations && all[said_.size()].tick <= world_.tick)
            said_.push_back(predict(site, record, all[said_.size()]));
    }
}

} // namespace lightoff::evidence
