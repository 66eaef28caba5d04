// SPDX-License-Identifier: MIT
#include "evidence/bank.hpp"

#include "bench/fault_onsets.hpp"
#include "evidence/on_all_cores.hpp"
#include "furnace/condition_paths.hpp"

#include <algorithm>

namespace lightoff::evidence {
namespace {

/// Stretches of an intermittent fault that a visit may last without it showing: by chance, one visit in 256.
constexpr std::uint64_t kGoodStretches = 8;

const faults::Fault& fault_at(const bench::Site& site, int fault) {
    return site.catalogue.faults[static_cast<std::size_t>(fault)];
}

bool may(const faults::Fault& fault, faults::Trigger trigger) {
    return std::find(fault.triggers.begin(), fault.triggers.end(), trigger) != fault.triggers.end();
}

bool is_graded(const faults::Fault& fault) {
    return std::any_of(fault.changes.begin(), fault.changes.end(),
                       [](const faults::Change& c) { return c.least != c.most; }) ||
           std::any_of(fault.bridges.begin(), fault.bridges.end(),
                       [](const faults::BridgeChange& c) { return c.least_ohm != c.most_ohm; });
}

/// The fault waits for heat from tick 0 on.
void lay_when_hot(const faults::Catalogue& catalogue, const faults::Fault& fault, double severity,
                  bench::World& world) {
    const auto in_use = static_cast<std::ptrdiff_t>(world.onset_count);
    std::vector<bench::Onset> onsets(world.onsets.begin(), world.onsets.begin() + in_use);
    bench::lay_waiting(catalogue, fault, severity, faults::Trigger::when_hot, 0, world.condition, onsets);
    bench::set_onsets(world, onsets);
}

/// Lives through what was before the visit, with what the senses had of the last stretch before the door
/// opened.
void live_until_found(const bench::Site& site, const Begin& begin, Found& found,
                      furnace::Workspace& workspace) {
    bench::History history(site, begin.history);
    const auto look = [&] {
        evidence::add(found.first.sensed,
                      sense(bench::perceive(site, found.world), found.world.state.board.lamp));
    };
    while (found.world.tick < begin.arrive_after_ticks) {
        const std::uint64_t left = begin.arrive_after_ticks - found.world.tick;
        if (left <= kStretchTicks && left % kLookTicks == 0)
            look();
        history.run(found.world, workspace, found.world.tick + 1);
    }
    look();
}

} // namespace

Bank::Bank(const bench::Site& site, const Begin& begin, std::optional<std::vector<RealFault>> real,
           const Pulse& pulse)
    : site_(&site), begin_(begin), real_(std::move(real)), tests_(tests_on_offer(site)),
      workspace_(site.model) {
    variants_.resize(site.catalogue.faults.size() + 1);
    const std::size_t healthy = lay({});
    variants_[0].push_back({healthy, healthy, Way::always});
    std::vector<Gone> gone;
    for (std::size_t i = 0; i < site.catalogue.faults.size(); ++i)
        lay_fault(static_cast<int>(i), gone);
    on_all_cores(
        site.model, furnaces_.size(),
        [&](std::size_t i, furnace::Workspace& workspace) {
            live_until_found(site, begin_, furnaces_[i], workspace);
        },
        [&](std::size_t begun) {
            if (pulse)
                pulse(static_cast<double>(begun) / static_cast<double>(furnaces_.size()));
        });
    for (const Gone& g : gone)
        add_gone(g);
    profiles_.resize(furnaces_.size());
}

/// Of a single cause or none, as it was before its history.
std::size_t Bank::lay(const std::vector<RealFault>& faults) {
    bench::World world = begin_.world;
    for (const RealFault& f : faults)
        faults::apply(site_->catalogue, fault_at(*site_, f.fault), f.severity, world.condition, world.inputs);
    furnaces_.push_back({world, {}, faults.empty() ? 0.0 : faults.front().severity});
    return furnaces_.size() - 1;
}

std::size_t Bank::halfway(Cause cause, std::size_t low, std::size_t high) {
    const auto known = halfway_.find({low, high});
    if (known != halfway_.end())
        return known->second;
    const double severity = 0.5 * (furnaces_[low].severity + furnaces_[high].severity);
    const std::size_t place = lay({{cause.fault, severity}});
    live_until_found(*site_, begin_, furnaces_[place], workspace_);
    profiles_.resize(furnaces_.size());
    halfway_.emplace(std::pair{low, high}, place);
    return place;
}

/// What has gone for now is added when the others have been found.
void Bank::lay_fault(int index, std::vector<Gone>& gone) {
    const faults::Fault& fault = fault_at(*site_, index);
    std::vector<Variant>& variants = variants_[static_cast<std::size_t>(index) + 1];
    std::vector<std::size_t> grid;
    if (is_graded(fault))
        for (const double severity : kSeverities)
            grid.push_back(lay({{index, severity}}));
    else
        grid.push_back(lay({{index, 1.0}}));
    if (grid.size() == 1)
        variants.push_back({grid[0], grid[0], Way::always});
    for (std::size_t i = 0; i + 1 < grid.size(); ++i)
        variants.push_back({grid[i], grid[i + 1], Way::always});

    if (may(fault, faults::Trigger::when_hot)) {
        bench::World world = begin_.world;
        lay_when_hot(site_->catalogue, fault, 1.0, world);
        furnaces_.push_back({world, {}, 0.0});
        variants.push_back({furnaces_.size() - 1, furnaces_.size() - 1, Way::when_hot});
    }
    if (may(fault, faults::Trigger::now_and_then))
        gone.push_back({index, grid});
}

/// Furnaces that a fault has left when the visit begins, and the one where it has not shown yet.
void Bank::add_gone(const Gone& gone) {
    const faults::Fault& fault = fault_at(*site_, gone.fault);
    std::vector<Variant>& variants = variants_[static_cast<std::size_t>(gone.fault) + 1];
    const std::uint64_t lasts = kGoodStretches * fault.stretch_ticks;
    for (const std::size_t from : gone.grid) {
        Found found = furnaces_[from];
        for (const faults::Change& c : fault.changes)
            furnace::set_condition_field(found.world.condition, c.field,
                                         furnace::condition_value(begin_.world.condition, c.field));
        if (!fault.bridges.empty())
            found.world.condition.wiring.bridges = begin_.world.condition.wiring.bridges;
        furnaces_.push_back(found);
        variants.push_back({furnaces_.size() - 1, furnaces_.size() - 1, Way::gone_for_now, lasts});
    }
    variants.push_back({0, 0, Way::not_yet, lasts});
}

const std::vector<Variant>& Bank::variants_of(Cause cause) const {
    return variants_[static_cast<std::size_t>(cause.fault + 1)];
}

std::optional<Variant> Bank::comes_and_goes(Cause cause) const {
    std::optional<Variant> found;
    for (const Variant& v : variants_of(cause)) {
        if (v.way == Way::always)
            found = Variant{v.high, v.high, Way::comes_and_goes};
        if (v.way == Way::gone_for_now)
            found->low = v.low;
    }
    const bool may_come_and_go =
        cause.fault >= 0 && may(fault_at(*site_, cause.fault), faults::Trigger::now_and_then);
    return may_come_and_go ? found : std::nullopt;
}

bool Bank::real_comes_and_goes() const {
    return real_ &&
           std::any_of(real_->begin(), real_->end(), [](const RealFault& f) { return f.comes_and_goes; });
}

bool Bank::is_real(Cause cause) const {
    if (!real_)
        return false;
    std::vector<int> named;
    for (const int fault : {cause.fault, cause.with})
        if (fault >= 0)
            named.push_back(fault);
    std::vector<int> real;
    for (const RealFault& f : *real_)
        real.push_back(f.fault);
    std::sort(named.begin(), named.end());
    std::sort(real.begin(), real.end());
    return named == real;
}

Found Bank::find_pair(Cause pair, double severity, double severity_with,
                      furnace::Workspace& workspace) const {
    bench::World world = begin_.world;
    faults::apply(site_->catalogue, fault_at(*site_, pair.fault), severity, world.condition, world.inputs);
    faults::apply(site_->catalogue, fault_at(*site_, pair.with), severity_with, world.condition,
                  world.inputs);
    Found found{world, {}, 0.0};
    live_until_found(*site_, begin_, found, workspace);
    return found;
}

const Profile& Bank::profile(std::size_t furnace) {
    if (profiles_[furnace].empty())
        make_profiles({furnace});
    return profiles_[furnace];
}

void Bank::make_profiles(const std::vector<std::size_t>& furnaces) {
    const auto tell = [&](std::size_t begun) {
        if (pulse_)
            pulse_(static_cast<double>(profiles_made_ + begun) / static_cast<double>(furnaces_.size()));
    };
    on_all_cores(
        site_->model, furnaces.size(),
        [&](std::size_t i, furnace::Workspace& workspace) {
            profiles_[furnaces[i]] = make_profile(*site_, tests_, furnaces_[furnaces[i]].world, workspace);
        },
        tell);
    profiles_made_ += furnaces.size();
}

/// All that are wanting at once.
void Bank::make_profiles_of(const std::vector<Suspect>& suspects) {
    std::vector<std::size_t> wanting;
    for (const Suspect& s : suspects)
        for (const std::size_t furnace : {s.low, s.high})
            if (profiles_[furnace].empty())
                wanting.push_back(furnace);
    std::sort(wanting.begin(), wanting.end());
    wanting.erase(std::unique(wanting.begin(), wanting.end()), wanting.end());
    if (!wanting.empty())
        make_profiles(wanting);
}

bool Bank::tells_apart(int test, const Suspect& a, const Suspect& b) {
    for (const std::size_t furnace : {a.low, a.high, b.low, b.high})
        profile(furnace);
    return told_apart(tests_[static_cast<std::size_t>(test)], profiles_[a.low], profiles_[a.high],
                      profiles_[b.low], profiles_[b.high]);
}

Rating Bank::rate(int test, const std::vector<Suspect>& suspects, const Stance& stance) {
    make_profiles_of(suspects);
    Rating rating{test, 0, minutes_of(*site_, tests_[static_cast<std::size_t>(test)], stance)};
    for (std::size_t i = 0; i < suspects.size(); ++i)
        for (std::size_t j = i + 1; j < suspects.size(); ++j)
            rating.pairs += tells_apart(test, suspects[i], suspects[j]) ? 1 : 0;
    return rating;
}

Rating Bank::best_test(const std::vector<Suspect>& suspects, const Stance& stance) {
    const unsigned bits = (stance.burner_door_on ? 1U : 0U) | (stance.blower_door_on ? 2U : 0U) |
                          (stance.door_switch_in ? 4U : 0U) | (stance.power_on ? 8U : 0U);
    const Question question{suspects, bits};
    if (const auto known = best_.find(question); known != best_.end())
        return known->second;
    Rating best;
    for (std::size_t test = 0; test < tests_.size(); ++test) {
        const Rating rating = rate(static_cast<int>(test), suspects, stance);
        if (rating.pairs > 0 && rating.pairs_a_minute() > best.pairs_a_minute())
            best = rating;
    }
    best_.emplace(question, best);
    return best;
}

Rating Bank::best_test_about(const Suspect& suspect, const std::vector<Suspect>& others,
                             const Stance& stance) {
    Rating best;
    for (std::size_t i = 0; i < tests_.size(); ++i) {
        const auto test = static_cast<int>(i);
        Rating rating{test, 0, minutes_of(*site_, tests_[i], stance)};
        for (const Suspect& other : others)
            rating.pairs += tells_apart(test, suspect, other) ? 1 : 0;
        if (rating.pairs_a_minute() > best.pairs_a_minute())
            best = rating;
    }
    return best;
}

std::size_t Bank::bytes() const {
    std::size_t bytes = furnaces_.size() * sizeof(Found);
    for (const Profile& p : profiles_)
        bytes += p.size() * sizeof(Shown);
    return bytes;
}

} // namespace lightoff::evidence
