// SPDX-License-Identifier: MIT
#include "evidence/investigation.hpp"

#include "evidence/fit.hpp"

#include <algorithm>
#include <limits>

namespace lightoff::evidence {
namespace {

constexpr double kSplitter = 0.6;
constexpr double kNarrower = 0.2;

/// What comes and goes may show numbers this far beyond those with and without it, as a part of what lies
/// between the two (teaching value).
constexpr double kFickleShare = 0.1;
constexpr double kFiniteSpan = 1e30;

/// Two faults at once: the single causes that lasted longest are paired with every other part's faults.
constexpr std::size_t kPairLeads = 2;
constexpr double kPairSeverity = 0.75;
constexpr std::size_t kFirstPair = std::size_t{1} << 32U; ///< their furnaces are numbered from here on

/// How often a span of severities is halved whose ends a reading and the senses tear apart: to 1/128 of all.
constexpr int kHalvings = 5;

/// Waiting and paper work change neither furnace nor instruments.
bool is_idle(bench::Verb verb) {
    using bench::Verb;
    return verb == Verb::wait || verb == Verb::keep || verb == Verb::sign_off || bench::is_paper(verb);
}

/// Shows at once what the furnace does; a temperature tells of minutes before.
bool is_quick(instruments::Quantity quantity) {
    using instruments::Quantity;
    return quantity == Quantity::ac_volts || quantity == Quantity::low_z_volts ||
           quantity == Quantity::clamp_amps || quantity == Quantity::dc_microamps ||
           quantity == Quantity::pressure;
}

bool is_safety(instruments::Quantity quantity) {
    using instruments::Quantity;
    return quantity == Quantity::ambient_co || quantity == Quantity::bubble || quantity == Quantity::glow ||
           quantity == Quantity::explosive_limit || quantity == Quantity::ticking;
}

} // namespace

Investigation::Investigation(Bank& bank, const bench::World& arrived)
    : bank_(&bank), record_(bank.site(), arrived), workspace_(bank.site().model) {}

void Investigation::act(const bench::Action& action) {
    record_.act(action);
}

void Investigation::observe(const bench::World& world) {
    record_.observe(world);
}

// ---- sets

std::size_t Investigation::observed_at(std::uint64_t tick) const {
    const std::vector<Observation>& all = record_.observations();
    const auto after = std::upper_bound(all.begin(), all.end(), tick,
                                        [](std::uint64_t t, const Observation& o) { return t < o.tick; });
    return static_cast<std::size_t>(after - all.begin());
}

std::size_t Investigation::place_of(int reading) const {
    const std::vector<Observation>& all = record_.observations();
    const auto it = std::find_if(all.begin(), all.end(),
                                 [reading](const Observation& o) { return o.reading == reading; });
    return static_cast<std::size_t>(it - all.begin());
}

std::vector<Cause> Investigation::fitting_at(std::uint64_t tick) {
    return fitting_first(observed_at(tick));
}

std::vector<Cause> Investigation::fitting_before(int reading) {
    return fitting_first(place_of(reading));
}

std::vector<Cause> Investigation::fitting_after(int reading) {
    return fitting_first(place_of(reading) + 1);
}

bool Investigation::no_single_cause_fits(std::uint64_t tick) {
    const std::size_t observations = observed_at(tick);
    return singles_first(observations).empty() && fickle_first(observations).empty();
}

std::vector<Cause> Investigation::single_causes() const {
    std::vector<Cause> all{kNothingWrong};
    for (std::size_t i = 0; i < bank_->site().catalogue.faults.size(); ++i)
        all.push_back({static_cast<int>(i), -1});
    return all;
}

std::vector<Cause> Investigation::singles_first(std::size_t observations) {
    std::vector<Cause> fitting;
    for (const Cause cause : single_causes())
        if (fits_first(cause, observations))
            fitting.push_back(cause);
    return fitting;
}

std::vector<Cause> Investigation::fitting_first(std::size_t observations) {
    std::vector<Cause> fitting = singles_first(observations);
    if (fitting.empty())
        fitting = fickle_first(observations);
    return fitting.empty() ? pairs_first(observations) : fitting;
}

/// Causes that give everything if they come and go as they like.
std::vector<Cause> Investigation::fickle_first(std::size_t observations) {
    std::vector<Cause> fitting;
    for (const Cause cause : single_causes()) {
        const std::optional<Variant> variant = bank_->comes_and_goes(cause);
        if (!variant)
            continue;
        Candidate& candidate = fickle_.emplace(cause, Candidate{*variant}).first->second;
        if ((bank_->is_real(cause) && bank_->real_comes_and_goes()) || gives(cause, candidate, observations))
            fitting.push_back(cause);
    }
    return fitting;
}

std::vector<Cause> Investigation::pairs_first(std::size_t observations) {
    open_pairs(observations);
    std::vector<Cause> fitting;
    for (const Cause pair : pairs_)
        if (fits_first(pair, observations))
            fitting.push_back(pair);
    return fitting;
}

/// What is known to be really wrong fits: its furnace is the one that was observed. If it comes and goes, it
/// stands with its like.
bool Investigation::fits_first(Cause cause, std::size_t observations) {
    return (bank_->is_real(cause) && !bank_->real_comes_and_goes()) || left_at(cause, observations) == kNever;
}

std::size_t Investigation::left_at(Cause cause, std::size_t observations) {
    std::size_t last = 0;
    for (Candidate& candidate : candidates_of(cause)) {
        if (gives(cause, candidate, observations))
            return kNever;
        last = std::max(last, left_at(cause, candidate, observations));
    }
    return last;
}

/// Of one that does not give the first so many.
std::size_t Investigation::left_at(Cause cause, Candidate& candidate, std::size_t observations) {
    if (candidate.torn_at == kNever)
        return candidate.left_at;
    std::size_t last = candidate.torn_at;
    for (Candidate& half : candidate.halves)
        if (!gives(cause, half, observations))
            last = std::max(last, left_at(cause, half, observations));
    return last;
}

bool Investigation::gives_readings(Cause cause, const std::vector<int>& readings) {
    std::vector<Variant> variants = bank_->variants_of(cause);
    if (const std::optional<Variant> fickle = bank_->comes_and_goes(cause))
        variants.push_back(*fickle);
    return std::any_of(variants.begin(), variants.end(), [&](const Variant& variant) {
        return std::all_of(readings.begin(), readings.end(),
                           [&](int reading) { return gives_one(variant, place_of(reading)); });
    });
}

bool Investigation::pair_fits_at(Cause pair, std::uint64_t tick) {
    add_pair(pair);
    return fits_first(pair, observed_at(tick));
}

double Investigation::cheapest_between(const std::vector<Cause>& some, const std::vector<Cause>& others,
                                       std::uint64_t tick) {
    const std::size_t now = observed_at(tick);
    const std::vector<Suspect> these = suspects(some, now);
    const std::vector<Suspect> those = suspects(others, now);
    int before = 0;
    for (std::size_t i = 0; i < now; ++i)
        before = std::max(before, record_.observations()[i].reading);
    const Stance& stance = record_.stance_at(before);
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < bank_->tests().size(); ++i) {
        const double minutes = minutes_of(bank_->site(), bank_->tests()[i], stance);
        const auto tells = [&](const Suspect& a) {
            return std::any_of(those.begin(), those.end(), [&](const Suspect& b) {
                return bank_->tells_apart(static_cast<int>(i), a, b);
            });
        };
        if (minutes < least && std::any_of(these.begin(), these.end(), tells))
            least = minutes;
    }
    return least;
}

// ---- furnaces

const Found& Investigation::found(std::size_t furnace) const {
    return furnace < kFirstPair ? bank_->furnaces()[furnace] : pairs_found_[furnace - kFirstPair];
}

std::vector<Investigation::Candidate>& Investigation::candidates_of(Cause cause) {
    const auto known = candidates_.find(cause);
    if (known != candidates_.end())
        return known->second;
    std::vector<Candidate>& candidates = candidates_[cause];
    if (cause.with < 0)
        for (const Variant& variant : bank_->variants_of(cause))
            candidates.push_back({variant});
    return candidates;
}

/// Pairs that could explain what no single cause does: one of the two explained more of it than the others.
void Investigation::open_pairs(std::size_t observations) {
    if (pairs_open_)
        return;
    pairs_open_ = true;
    const std::vector<faults::Fault>& all = bank_->site().catalogue.faults;
    std::vector<std::pair<std::size_t, int>> lasted;
    for (std::size_t i = 0; i < all.size(); ++i)
        lasted.push_back({left_at({static_cast<int>(i), -1}, observations), static_cast<int>(i)});
    std::stable_sort(lasted.begin(), lasted.end(),
                     [](const auto& a, const auto& b) { return a.first > b.first; });
    for (std::size_t lead = 0; lead < std::min(kPairLeads, lasted.size()); ++lead)
        for (std::size_t i = 0; i < all.size(); ++i) {
            const int first = lasted[lead].second;
            const auto second = static_cast<int>(i);
            const Cause pair{std::min(first, second), std::max(first, second)};
            if (all[static_cast<std::size_t>(first)].part == all[i].part)
                continue;
            add_pair(pair);
            pairs_.push_back(pair);
        }
    if (bank_->real() && bank_->real()->size() == 2) {
        const int a = bank_->real()->front().fault;
        const int b = bank_->real()->back().fault;
        pairs_.push_back({std::min(a, b), std::max(a, b)});
    }
    std::sort(pairs_.begin(), pairs_.end());
    pairs_.erase(std::unique(pairs_.begin(), pairs_.end()), pairs_.end());
}

void Investigation::add_pair(Cause pair) {
    if (candidates_.count(pair) != 0)
        return;
    const std::size_t place = kFirstPair + pairs_found_.size();
    pairs_found_.push_back(bank_->find_pair(pair, kPairSeverity, kPairSeverity, workspace_));
    candidates_[pair].push_back({{place, place, Way::always}});
}

const bench::Reading* Investigation::reading_of(const Observation& o) const {
    return o.reading == 0 ? nullptr : &readings()[static_cast<std::size_t>(o.reading) - 1];
}

/// A furnace that has given all before runs on to the observation; on arrival none has to.
const Prediction& Investigation::said(std::size_t furnace, std::size_t observation) {
    if (observation == 0)
        return found(furnace).first;
    auto it = running_.find(furnace);
    if (it == running_.end())
        it = running_.emplace(furnace, Furnace(found(furnace).world, found(furnace).first)).first;
    it->second.follow(bank_->site(), record_, workspace_, observation + 1);
    return it->second.said()[observation];
}

bool Investigation::gives(Cause cause, Candidate& candidate, std::size_t observations) {
    return giving(cause, candidate, observations) != nullptr;
}

/// The span, or the part of it, that gives the first so many. What does not fit is dropped: nobody asks its
/// furnaces any more.
const Investigation::Candidate* Investigation::giving(Cause cause, Candidate& candidate,
                                                      std::size_t observations) {
    const std::vector<Observation>& all = record_.observations();
    while (candidate.left_at == kNever && candidate.torn_at == kNever && candidate.checked < observations) {
        const std::size_t now = candidate.checked++;
        const std::uint64_t on_site = all[now].tick - record_.arrival();
        if (on_site > candidate.variant.lasts_ticks || !gives_one(candidate.variant, now) ||
            flickers(cause, candidate.variant, now))
            candidate.left_at = now;
        else if (all[now].reading == 0 && is_torn(candidate.variant, now))
            (candidate.halvings < kHalvings ? candidate.torn_at : candidate.left_at) = now;
    }
    if (candidate.torn_at >= observations)
        return candidate.left_at >= observations ? &candidate : nullptr;
    if (candidate.halves.empty())
        halve(cause, candidate);
    for (Candidate& half : candidate.halves)
        if (const Candidate* part = giving(cause, half, observations))
            return part;
    return nullptr;
}

void Investigation::halve(Cause cause, Candidate& candidate) {
    const Variant& whole = candidate.variant;
    const std::size_t middle = bank_->halfway(cause, whole.low, whole.high);
    candidate.halves.push_back({{whole.low, middle, whole.way}, candidate.halvings + 1});
    candidate.halves.push_back({{middle, whole.high, whole.way}, candidate.halvings + 1});
}

Investigation::Ends Investigation::ends_giving(const Variant& variant, std::size_t observation) {
    const Observation& o = record_.observations()[observation];
    const Prediction& low = said(variant.low, observation);
    const Prediction& high = said(variant.high, observation);
    bool away = fits(o, reading_of(o), low, low);
    if (!away && variant.way == Way::comes_and_goes) {
        const Prediction& sound = said(0, observation);
        away = fits(o, reading_of(o), sound, sound);
    }
    return {away, fits(o, reading_of(o), high, high)};
}

/// Ohms: of a wire by itself and of nothing that was before, for the power is off.
bool Investigation::is_of_a_wire(std::size_t observation) const {
    using instruments::Quantity;
    const bench::Reading* reading = reading_of(record_.observations()[observation]);
    return reading != nullptr && reading->part < 0 &&
           (reading->display.quantity == Quantity::ohms || reading->display.quantity == Quantity::continuity);
}

/// What comes and goes stays, or stays away, for a stretch of its time at least. So it does not give ohms
/// that it has only while it is there between two that it has only while it is away, all within a stretch;
/// nor the other way round.
bool Investigation::flickers(Cause cause, const Variant& variant, std::size_t observation) {
    if (variant.way != Way::comes_and_goes || !is_of_a_wire(observation))
        return false;
    const std::vector<Observation>& all = record_.observations();
    const Ends now = ends_giving(variant, observation);
    const std::uint64_t stretch =
        bank_->site().catalogue.faults[static_cast<std::size_t>(cause.fault)].stretch_ticks;
    bool otherwise = false;
    for (std::size_t i = observation; i-- > 0 && all[observation].tick - all[i].tick < stretch;) {
        if (now.low == now.high || !is_of_a_wire(i))
            continue;
        const Ends then = ends_giving(variant, i);
        if (then == now && otherwise)
            return true;
        otherwise = otherwise || (then.low != then.high && then.low != now.low);
    }
    return false;
}

/// A furnace between two severities is, within seconds, like one of them. So it is none that gives what only
/// the one gives to the senses, and what only the other gives to an instrument: between "switch closed, runs
/// on" and "switch open, waits" there is no furnace with its switch closed that waits. To be free of edges,
/// the stretches before and around the reading have to agree.
bool Investigation::is_torn(const Variant& variant, std::size_t senses) {
    if (variant.way != Way::always || variant.low == variant.high || senses == 0)
        return false;
    const std::vector<Observation>& all = record_.observations();
    std::size_t before = senses - 1;
    while (all[before].reading != 0)
        --before;
    if (before + 1 == senses)
        return false; // nothing was read
    const Ends now = ends_giving(variant, senses);
    if (now.low == now.high || !(ends_giving(variant, before) == now))
        return false;
    for (std::size_t i = before + 1; i < senses; ++i) {
        const bench::Reading* reading = reading_of(all[i]);
        if (reading == nullptr || reading->part >= 0 || !is_quick(reading->display.quantity))
            continue;
        const Ends it = ends_giving(variant, i);
        if (it.low != it.high && it.low != now.low)
            return true;
    }
    return false;
}

bool Investigation::gives_one(const Variant& variant, std::size_t observation) {
    const Observation& o = record_.observations()[observation];
    const Prediction& low = said(variant.low, observation);
    if (fits(o, reading_of(o), low, low))
        return true; // the other end is not run till it is needed
    const Prediction& high = said(variant.high, observation);
    if (variant.way != Way::comes_and_goes)
        return fits(o, reading_of(o), low, high);
    // `high` has the fault, `low` lost it when the visit began; a third never had it.
    const Prediction& sound = said(0, observation);
    const Prediction all = either(either(high, low), sound);
    Prediction with = either(high, all);
    Prediction without = either(sound, all);
    // When it came and went is not known, so neither is what has warmed or draws current meanwhile.
    const double span = all.high - all.low;
    if (span > 0.0 && span < kFiniteSpan)
        with.half_width = all.half_width + kFickleShare * span;
    return fits(o, reading_of(o), with, without);
}

// ---- how the set fell

std::vector<Step> Investigation::staircase() {
    const std::vector<Observation>& all = record_.observations();
    std::map<std::size_t, std::vector<Cause>> leaving;
    std::size_t fitting = 0;
    for (const Cause cause : single_causes()) {
        const bool known = bank_->is_real(cause) && !bank_->real_comes_and_goes();
        const std::size_t at = known ? kNever : left_at(cause, all.size());
        ++fitting;
        if (at != kNever)
            leaving[at].push_back(cause);
    }
    std::vector<Step> steps;
    for (const auto& [at, causes] : leaving) {
        fitting -= causes.size();
        steps.push_back({all[at].tick, all[at].reading, causes, fitting});
    }
    return steps;
}

std::optional<Step> Investigation::ruled_out_by(Cause cause) {
    for (const Step& step : staircase())
        if (std::binary_search(step.ruled_out.begin(), step.ruled_out.end(), cause))
            return step;
    return std::nullopt;
}

// ---- worth

/// By the span of severities that still fits. One that is real and between the grid goes by all of it.
Suspect Investigation::suspect(Cause cause, std::size_t observations) {
    std::vector<Candidate>& candidates = candidates_of(cause);
    for (Candidate& c : candidates)
        if (const Candidate* part = giving(cause, c, observations))
            return {cause, part->variant.low, part->variant.high};
    if (candidates.empty())
        return {cause, 0, 0};
    const auto longest =
        std::max_element(candidates.begin(), candidates.end(), [&](Candidate& a, Candidate& b) {
            return left_at(cause, a, observations) < left_at(cause, b, observations);
        });
    return {cause, longest->variant.low, longest->variant.high};
}

std::vector<Suspect> Investigation::suspects(const std::vector<Cause>& causes, std::size_t observations) {
    std::vector<Suspect> list;
    for (const Cause cause : causes)
        if (cause.with < 0)
            list.push_back(suspect(cause, observations));
    return list;
}

/// Observations before the test that a reading belongs to: all up to the last reading before the last thing
/// that hands did for it.
std::size_t Investigation::test_began(int reading) const {
    const std::vector<Observation>& all = record_.observations();
    const std::uint64_t taken = all[place_of(reading)].tick;
    std::uint64_t did = record_.arrival();
    for (const TimedAction& a : record_.actions())
        if (a.tick < taken && !is_idle(a.action.verb))
            did = a.tick;
    std::size_t began = 1;
    for (std::size_t i = 0; i < all.size() && all[i].tick <= did && all[i].tick < taken; ++i)
        if (all[i].reading != 0)
            began = i + 1;
    return began;
}

bool Investigation::showed_apart(const Suspect& a, const Suspect& b, std::size_t from, std::size_t to) {
    const std::vector<Observation>& all = record_.observations();
    for (std::size_t i = from; i < to; ++i)
        if (told_apart(all[i], {&said(a.low, i), &said(a.high, i)}, {&said(b.low, i), &said(b.high, i)}))
            return true;
    return false;
}

/// In a test before this one.
bool Investigation::was_read_before(int reading, std::size_t from) const {
    const bench::Reading& now = readings()[static_cast<std::size_t>(reading) - 1];
    for (std::size_t i = 0; i < from; ++i) {
        const bench::Reading* r = reading_of(record_.observations()[i]);
        if (r != nullptr && r->window == now.window && r->part == now.part && r->where == now.where)
            return true;
    }
    return false;
}

Worth Investigation::worth_of(int reading) {
    const std::size_t from = test_began(reading);
    const std::size_t to = place_of(reading) + 1;
    const std::vector<Observation>& all = record_.observations();
    const std::vector<Cause> causes = fitting_first(from);
    const std::vector<Suspect> list = suspects(causes, from);
    Worth worth;
    worth.minutes = std::max(kLeastTestMinutes, static_cast<double>(all[to - 1].tick - all[from - 1].tick) *
                                                    units::seconds_per_tick / 60.0);
    worth.from_tick = all[from - 1].tick;
    worth.test = reading;
    for (std::size_t i = to - 1; i >= from; --i)
        if (all[i].reading != 0)
            worth.test = all[i].reading;
    const Cause first = leader(causes);
    for (std::size_t i = 0; i < list.size(); ++i)
        for (std::size_t j = i + 1; j < list.size(); ++j)
            if (showed_apart(list[i], list[j], from, to)) {
                ++worth.pairs;
                worth.against_leader =
                    worth.against_leader || list[i].cause == first || list[j].cause == first;
            }
    if (worth.pairs == 0 && first.with < 0 && first != kNothingWrong)
        worth.against_leader = showed_apart(suspect(first, from), {kNothingWrong, 0, 0}, to - 1, to);
    worth.pairs_a_minute = worth.pairs / worth.minutes;
    const int before = all[from - 1].reading;
    worth.best = bank_->best_test(list, record_.stance_at(before)).pairs_a_minute();
    if (worth.pairs > 0 && worth.pairs_a_minute >= kSplitter * worth.best)
        worth.word = Word::splitter;
    else if (worth.pairs > 0 && worth.pairs_a_minute >= kNarrower * worth.best)
        worth.word = Word::narrower;
    else if (is_safety(readings()[static_cast<std::size_t>(reading) - 1].display.quantity))
        worth.word = Word::safety;
    else if (worth.pairs == 0 && was_read_before(reading, from))
        worth.word = Word::repeat;
    else if (worth.against_leader)
        worth.word = Word::confirmer;
    return worth;
}

Offer Investigation::offer(const Rating& rating, const std::vector<Suspect>& list) {
    const Test& test = bank_->tests()[static_cast<std::size_t>(rating.test)];
    Offer offer{rating.test, test.what, rating.pairs, rating.minutes, rating.pairs_a_minute(), {}};
    std::vector<Suspect> heads;
    for (const Suspect& s : list) {
        std::size_t i = 0;
        while (i < heads.size() && bank_->tells_apart(rating.test, heads[i], s))
            ++i;
        if (i == heads.size()) {
            heads.push_back(s);
            offer.meanings.push_back({text_of(bank_->site(), test, bank_->profile(s.low)), {}});
        }
        offer.meanings[i].causes.push_back(s.cause);
    }
    return offer;
}

std::vector<Offer> Investigation::best_tests(std::size_t most) {
    return best_tests(record_.observations().size(), record_.stance_now(), most);
}

std::vector<Offer> Investigation::best_tests_at(std::uint64_t tick, std::size_t most) {
    const std::size_t observations = observed_at(tick);
    int last_reading = 0;
    for (std::size_t i = 0; i < observations; ++i)
        last_reading = std::max(last_reading, record_.observations()[i].reading);
    return best_tests(observations, record_.stance_at(last_reading), most);
}

std::vector<Offer> Investigation::best_tests(std::size_t observations, const Stance& stance,
                                             std::size_t most) {
    const std::vector<Suspect> list = suspects(fitting_first(observations), observations);
    std::vector<Rating> ratings;
    for (std::size_t i = 0; i < bank_->tests().size(); ++i)
        if (const Rating r = bank_->rate(static_cast<int>(i), list, stance); r.pairs > 0)
            ratings.push_back(r);
    std::stable_sort(ratings.begin(), ratings.end(), [](const Rating& a, const Rating& b) {
        return a.pairs_a_minute() > b.pairs_a_minute();
    });
    ratings.resize(std::min(most, ratings.size()));
    std::vector<Offer> offers;
    for (const Rating& r : ratings)
        offers.push_back(offer(r, list));
    return offers;
}

Offer Investigation::judge(int test) {
    const std::size_t now = record_.observations().size();
    const std::vector<Suspect> list = suspects(fitting_first(now), now);
    return offer(bank_->rate(test, list, record_.stance_now()), list);
}

// ---- the coach's way

std::vector<Cause> Investigation::group_of(Cause cause) {
    if (cause.with >= 0)
        return {cause}; // pairs have no tests on offer
    const std::size_t now = record_.observations().size();
    const Suspect its = suspect(cause, now);
    std::vector<Cause> group;
    for (const Cause other : fitting_first(now)) {
        if (other.with >= 0)
            continue;
        if (other == cause || has_double(other, its, now))
            group.push_back(other);
    }
    return group;
}

/// Whether any span of the cause that gives everything shows in all tests what `its` shows.
bool Investigation::has_double(Cause cause, const Suspect& its, std::size_t observations) {
    for (Candidate& candidate : candidates_of(cause)) {
        const Candidate* part = giving(cause, candidate, observations);
        if (part == nullptr)
            continue;
        const Suspect s{cause, part->variant.low, part->variant.high};
        bool apart = false;
        for (std::size_t i = 0; i < bank_->tests().size() && !apart; ++i)
            apart = bank_->tells_apart(static_cast<int>(i), its, s);
        if (!apart)
            return true;
    }
    return false;
}

Route Investigation::route_to(Cause cause) {
    const Suspect its = suspect(cause, 1);
    std::vector<Suspect> list = suspects(singles_first(1), 1);
    Stance stance = record_.stance_at(0);
    Route route;
    while (true) {
        Rating best = bank_->best_test(list, stance);
        if (best.test < 0)
            break;
        const auto cleared = [&](const Suspect& s) { return bank_->tells_apart(best.test, its, s); };
        if (std::none_of(list.begin(), list.end(), cleared)) {
            best = bank_->best_test_about(its, list, stance);
            if (best.test < 0)
                break; // what is left differs among itself, but none of it from this cause
        }
        std::erase_if(list, cleared);
        route.minutes += best.minutes;
        route.tests.push_back(best.test);
        route.done_minutes.push_back(route.minutes);
        route.still_fitting.push_back(list.size());
        stance = stance_after(bank_->site(), bank_->tests()[static_cast<std::size_t>(best.test)], stance);
    }
    for (const Suspect& s : list)
        route.group.push_back(s.cause);
    return route;
}

double Investigation::expected_minutes() {
    double minutes = 0.0;
    double weight = 0.0;
    for (const Cause cause : singles_first(1)) {
        const double prior =
            cause == kNothingWrong
                ? 1.0
                : bank_->site().catalogue.faults[static_cast<std::size_t>(cause.fault)].prior;
        minutes += prior * route_to(cause).minutes;
        weight += prior;
    }
    return weight > 0.0 ? minutes / weight : 0.0;
}

Cause Investigation::leader(const std::vector<Cause>& causes) const {
    const auto prior = [&](Cause cause) {
        double p = 1.0;
        for (const int fault : {cause.fault, cause.with})
            if (fault >= 0)
                p *= bank_->site().catalogue.faults[static_cast<std::size_t>(fault)].prior;
        return p;
    };
    return causes.empty() ? kNothingWrong
                          : *std::max_element(causes.begin(), causes.end(),
                                              [&](Cause a, Cause b) { return prior(a) < prior(b); });
}

} // namespace lightoff::evidence
