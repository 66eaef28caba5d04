// SPDX-License-Identifier: MIT
#include "lesson/grade.hpp"

#include "bench/expectation.hpp"
#include "bench/hand_words.hpp"
#include "lesson/account.hpp"
#include "lesson/justified.hpp"
#include "lesson/review.hpp"
#include "lesson/tune_up.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <array>
#include <set>

namespace lightoff::lesson {
namespace {

using bench::Verb;
using evidence::Cause;

constexpr std::uint64_t kLooksFor = 8 * 20;         ///< ticks of standing there before anything is touched
constexpr std::uint64_t kWatchesFor = 20 * 20;      ///< ticks of a sequence, or of a call that starts none
constexpr std::uint64_t kRunsThrough = 3 * 60 * 20; ///< ticks of fire that prove a run
constexpr std::ptrdiff_t kReadingsAsLeft = 2;       ///< of the fire that the customer is left with
constexpr int kRunsThroughSteps = 6;                ///< bench::Word::step
constexpr double kVerifyMinutes = 15.0;             ///< of a par: a full cycle
/// Nobody is hurried while looking, proving dead and getting at the places (teaching value).
constexpr double kLeastMinutes = 3.0;

std::string causes(std::size_t count) {
    return std::to_string(count) + (count == 1 ? " cause" : " causes");
}

std::vector<Cause> sorted(std::vector<Cause> causes) {
    std::sort(causes.begin(), causes.end());
    return causes;
}

/// Judges a call that has something, or nothing, wrong with it.
class CallJudge {
public:
    CallJudge(const bench::Site& site, const Scenario& scenario, const Rubric& rubric, Review& review)
        : site_(site), scenario_(scenario), rubric_(rubric), review_(review),
          evidence_(*review.investigation), justification_(site, rubric, review) {
        for (std::size_t i = 0; i < review_.real.size(); ++i)
            (is_behind(i) ? behind_ : faults_).push_back(review_.real[i].fault);
        std::sort(faults_.begin(), faults_.end());
        truth_ = faults_.empty()       ? evidence::kNothingWrong
                 : faults_.size() == 1 ? Cause{faults_[0], -1}
                                       : Cause{faults_[0], faults_[1]};
        group_ = sorted(evidence_.group_of(truth_));
        if (group_.empty())
            group_.push_back(truth_);
    }

    Grade judge() {
        find_isolation();
        look();
        step();
        isolate();
        proof();
        repair();
        verify();
        parts();
        time();
        caps();
        grade_.staircase = evidence_.staircase();
        grade_.coach_minutes = expected_;
        grade_.isolated_tick = isolated_;
        grade_.cause = title_of(site_, truth_);
        grade_.truth = truth_;
        if (mending_ != nullptr)
            grade_.mending_tick = mending_->tick;
        return std::move(grade_);
    }

private:
    /// A fault that brought another one of the call about.
    [[nodiscard]] bool is_behind(std::size_t which) const {
        const faults::Fault& fault = fault_at(review_.real[which].fault);
        return std::any_of(review_.real.begin(), review_.real.end(), [&](const evidence::RealFault& other) {
            return std::find(fault.damages.begin(), fault.damages.end(), other.fault) != fault.damages.end();
        });
    }
    [[nodiscard]] const faults::Fault& fault_at(int fault) const {
        return site_.catalogue.faults[static_cast<std::size_t>(fault)];
    }
    void line(Section section, double points, double of, std::uint64_t tick, std::string text) {
        grade_.lines.push_back({section, points, of, tick, std::move(text)});
    }
    [[nodiscard]] double minutes_since_arrival(std::uint64_t tick) const {
        return static_cast<double>(tick - review_.arrived_tick) / (60.0 * units::ticks_per_second);
    }

    /// A cause without what was behind it: that may be known by then, or not.
    [[nodiscard]] Cause without_behind(Cause cause) const {
        const auto was_behind = [&](int fault) {
            return fault >= 0 && std::find(behind_.begin(), behind_.end(), fault) != behind_.end();
        };
        if (was_behind(cause.with))
            return {cause.fault, -1};
        return cause.with >= 0 && was_behind(cause.fault) ? Cause{cause.with, -1} : cause;
    }
    [[nodiscard]] bool nothing_else_fits(std::uint64_t tick) {
        const std::vector<Cause> fitting = evidence_.fitting_at(tick);
        return !fitting.empty() && std::all_of(fitting.begin(), fitting.end(), [&](const Cause& cause) {
            return std::binary_search(group_.begin(), group_.end(), without_behind(cause));
        });
    }
    /// Whether what was read leaves the cause open, alone or among others.
    [[nodiscard]] bool still_fits(std::uint64_t tick) {
        const std::vector<Cause> fitting = evidence_.fitting_at(tick);
        return std::any_of(fitting.begin(), fitting.end(), [&](const Cause& cause) {
            return std::binary_search(group_.begin(), group_.end(), without_behind(cause));
        });
    }
    [[nodiscard]] bool mends_the_cause(const ChangeMade& change) const {
        const faults::ServiceRef ref{change.part, change.kind};
        return std::any_of(faults_.begin(), faults_.end(), [&](int fault) {
            const auto& repairs = fault_at(fault).repairs;
            return std::find(repairs.begin(), repairs.end(), ref) != repairs.end();
        });
    }

    /// When nothing was left but the cause, and whether that was before the change that mended it.
    void find_isolation() {
        for (const ChangeMade& change : review_.changes)
            if (behind_.empty() ? change.mended : mends_the_cause(change))
                mending_ = &change;
        if (nothing_else_fits(review_.arrived_tick))
            isolated_ = review_.arrived_tick;
        for (const evidence::Step& step : evidence_.staircase()) {
            if (isolated_)
                break;
            if (nothing_else_fits(step.tick))
                isolated_ = step.tick;
        }
        if (mending_ == nullptr)
            return;
        proved_first_ =
            (isolated_ && *isolated_ <= mending_->tick) || nothing_else_fits(mending_->tick) ||
            (still_fits(mending_->tick) && justification_.ground_of(*mending_) >= Ground::cornered);
        if (proved_first_ && (!isolated_ || *isolated_ > mending_->tick))
            isolated_ = mending_->tick;
    }

    void look() {
        const std::uint64_t touched =
            review_.first_touch_tick != 0 ? review_.first_touch_tick : review_.last_tick;
        const bool looked = touched >= review_.arrived_tick + kLooksFor;
        const bool watched =
            review_.watched_ticks >= kWatchesFor || review_.powered_call_ticks >= kWatchesFor;
        const double most = rubric_.look;
        if (looked)
            line(Section::look, 0.4 * most, 0.4 * most, touched,
                 "You looked and listened before you touched anything.");
        else
            line(Section::look, 0.0, 0.4 * most, touched,
                 "You touched the furnace at once: lamp and sounds before a door goes off.");
        const std::uint64_t changed = review_.first_change();
        if (watched || dead_on_arrival())
            line(Section::look, 0.6 * most, 0.6 * most, changed,
                 "You saw for yourself what the furnace does on a call.");
        else
            line(Section::look, 0.0, 0.6 * most, changed,
                 "You changed something before you had seen the furnace try.");
    }
    /// No power or no call: there is no sequence to watch.
    [[nodiscard]] bool dead_on_arrival() const {
        return review_.powered_call_ticks == 0 && minutes_since_arrival(review_.first_change()) > 0.3;
    }

    void step() {
        const double most = rubric_.step;
        for (std::size_t i = review_.statements.size(); i-- > 0;) {
            const Statement& said = review_.statements[i];
            if (said.action.verb != Verb::stops_at || said.tick > review_.first_change())
                continue;
            const int shown = review_.steps_at_statement[i];
            const int claimed = said.action.value;
            const bool right = claimed == shown || claimed == review_.steps_on_arrival ||
                               claimed == review_.reached_at_statement[i] ||
                               (claimed == kRunsThroughSteps && shown >= 4);
            line(Section::step, right ? most : 0.0, most, said.tick,
                 right ? "You said where the sequence stops, and it does."
                       : "The sequence does not stop where you said; the lamp counts the steps passed.");
            return;
        }
        line(Section::step, 0.0, most, review_.first_change(),
             "You did not say where the sequence stops before your first change.");
    }

    void isolate() {
        const double most = rubric_.isolate;
        const auto troubles = static_cast<double>(std::max<std::size_t>(1, faults_.size()));
        expected_ = troubles * std::max({kLeastMinutes, evidence_.expected_minutes(), way_to_the_truth()});
        if (!isolated_ || (mending_ != nullptr && !proved_first_)) {
            line(Section::isolate, 0.0, most, isolated_.value_or(review_.last_tick), still_open());
            return;
        }
        const double taken = minutes_since_arrival(*isolated_);
        const double share = std::clamp((rubric_.none_from * expected_ - taken) /
                                            ((rubric_.none_from - rubric_.full_to) * expected_),
                                        0.0, 1.0);
        line(Section::isolate, share * most, most, *isolated_,
             "Nothing but the cause was left after " + whole(taken) + " min; the coach's way takes " +
                 whole(expected_) + ".");
    }
    /// Some causes take more than the average of those that could be there; two at once have no way. The
    /// longest of those that nothing tells apart: which of them it was must not show in the points.
    [[nodiscard]] double way_to_the_truth() {
        double minutes = 0.0;
        for (const Cause& cause : group_)
            if (cause.with < 0)
                minutes = std::max(minutes, evidence_.route_to(cause).minutes);
        return minutes;
    }
    [[nodiscard]] std::string still_open() {
        const std::uint64_t tick = mending_ != nullptr ? mending_->tick : review_.last_tick;
        const std::size_t left = evidence_.fitting_at(tick).size();
        return (mending_ != nullptr ? "When you changed it " : "At the end ") + causes(left) +
               " still fitted what you had read.";
    }

    [[nodiscard]] const Statement* last_said(Verb verb) const {
        for (auto said = review_.statements.rbegin(); said != review_.statements.rend(); ++said)
            if (said->action.verb == verb)
                return &*said;
        return nullptr;
    }
    [[nodiscard]] bool told(bench::Topic topic) const {
        return (review_.told >> static_cast<unsigned>(topic) & 1U) != 0;
    }

    void proof() {
        const double most = rubric_.proof;
        const Statement* named = last_said(Verb::cause);
        if (faults_.empty()) {
            named_right_ = named == nullptr && told(bench::Topic::nothing_wrong);
            const bool proved = named_right_ && isolated_.has_value();
            line(Section::proof, proved ? most : 0.0, most, review_.last_tick,
                 proved ? "You found nothing wrong, and had measured what it takes to say so."
                        : "Nothing was wrong with this furnace; say so when the readings do.");
            return;
        }
        if (named == nullptr) {
            line(Section::proof, 0.0, most, review_.last_tick, "You named no cause.");
            return;
        }
        named_right_ = names_the_cause(named->action.value);
        if (!named_right_) {
            line(Section::proof, 0.0, most, named->tick,
                 "You named another cause than the one that was there.");
            return;
        }
        if (proved_first_ || mending_ == nullptr) {
            const bool proved = isolated_ && *isolated_ <= named->tick;
            line(Section::proof, proved ? most : 0.0, most, named->tick,
                 proved ? "Your readings had left no other cause when you named it."
                        : "Right, but other causes still fitted when you named it.");
            return;
        }
        const bool later = tested_old_part(named->tick) && left_only_what_it_cures(named->tick);
        line(Section::proof, later ? 0.5 * most : 0.0, most, named->tick,
             later ? "Proved only by the old part on the bench: half."
                   : "Right, but a guess: you changed it before your readings had cleared the others.");
    }
    /// The cause itself, or one that nothing told from it.
    [[nodiscard]] bool names_the_cause(int fault) const {
        return std::any_of(group_.begin(), group_.end(),
                           [&](const Cause& cause) { return cause.fault == fault || cause.with == fault; });
    }
    /// By then no steady cause fitted but what really was there and what the part that was changed cures,
    /// alone or with another beside it.
    [[nodiscard]] bool left_only_what_it_cures(std::uint64_t tick) {
        const auto is_cured = [&](int fault) {
            return fault >= 0 && (is_cured_at(fault, mending_->part) ||
                                  std::find(faults_.begin(), faults_.end(), fault) != faults_.end());
        };
        const std::vector<Cause> fitting = evidence_.fitting_at(tick);
        return std::all_of(fitting.begin(), fitting.end(), [&](const Cause& cause) {
            return is_cured(cause.fault) || is_cured(cause.with) ||
                   (cause.fault >= 0 && evidence_.bank().comes_and_goes(cause).has_value());
        });
    }
    [[nodiscard]] bool is_cured_at(int fault, int part) const {
        const auto& repairs = fault_at(fault).repairs;
        return std::any_of(repairs.begin(), repairs.end(),
                           [&](const faults::ServiceRef& repair) { return repair.part == part; });
    }
    /// The part that the change took out, on the bench, before the cause was named.
    [[nodiscard]] bool tested_old_part(std::uint64_t tick) const {
        const auto& readings = review_.notebook().readings();
        return std::any_of(readings.begin(), readings.end(), [&](const bench::Reading& reading) {
            return reading.taken == bench::Taken::old_part && reading.part == mending_->part &&
                   reading.tick > mending_->tick && reading.tick <= tick;
        });
    }

    /// A furnace that must not run, shut off, tagged and said so, is as good as mended.
    [[nodiscard]] bool made_safe() const {
        return scenario_.kind == Kind::smell_or_alarm && review_.tagged && told(bench::Topic::unsafe);
    }
    [[nodiscard]] bool is_mended(bool behind) const {
        for (std::size_t i = 0; i < review_.real.size(); ++i)
            if (is_behind(i) == behind && review_.was_broken[i] != 0)
                return false;
        return true;
    }

    void repair() {
        mended_ = is_mended(false) || made_safe();
        behind_mended_ = behind_.empty() || is_mended(true) || made_safe();
        const bool left_alone = faults_.empty() && !review_.changes.empty();
        const std::uint64_t tick = mending_ != nullptr ? mending_->tick : review_.last_tick;
        line(Section::repair, mended_ && !left_alone ? rubric_.repair : 0.0, rubric_.repair, tick,
             left_alone ? "There was nothing to mend, and you changed something."
             : mended_
                 ? made_safe() ? "Shut off, tagged, and the customer told." : "What was wrong is put right."
                 : "What was wrong is still there.");
        const bool behind = mended_ && behind_mended_;
        line(Section::behind, behind ? rubric_.behind : 0.0, rubric_.behind, tick,
             behind ? behind_.empty() ? "Nothing was left behind it." : "And so is what had brought it about."
                    : "What brought it about is still there; it will come back.");
    }

    void verify() {
        const double most = rubric_.verify;
        if (made_safe()) {
            verified_ = true;
            line(Section::verify, most, most, review_.last_tick, "Nothing to run: it is out of service.");
            return;
        }
        verified_ = review_.fire_since_change >= kRunsThrough;
        line(Section::verify, verified_ ? 0.5 * most : 0.0, 0.5 * most, review_.last_tick,
             verified_ ? "You ran it through after your last change."
                       : "You did not see it run for three minutes after your last change.");
        const bool ended = verified_ && review_.cycle_ended;
        line(Section::verify, ended ? 0.15 * most : 0.0, 0.15 * most, review_.last_tick,
             ended ? "And let it end its cycle by the thermostat." : "You did not see the cycle end.");
        const bool read = verified_ && review_.readings_of_fire_since_change() >= kReadingsAsLeft;
        line(Section::verify, read ? 0.2 * most : 0.0, 0.2 * most, review_.last_tick,
             read ? "You measured it as you left it."
                  : "No two readings of the running furnace as you left it.");
        line(Section::verify, review_.put_back ? 0.15 * most : 0.0, 0.15 * most, review_.last_tick,
             review_.put_back ? "Doors, wires and switches are as they belong."
                              : "Something is not in its place: door, wire, part, switch or cock.");
    }

    /// Of parts from the van. One that was bad, and whose place the new one holds, was a guess and no
    /// needless part; but nobody changes a safety device on a guess.
    void parts() {
        double taken = 0.0;
        for (const ChangeMade& change : review_.changes) {
            if (change.kind != faults::ServiceKind::replace || change.part < 0)
                continue;
            const faults::Part& part = site_.catalogue.parts[static_cast<std::size_t>(change.part)];
            const bool wanted =
                change.mended || replaces_a_cause(change) || (change.was_bad && !change.spoilt);
            if ((wanted && !part.safety_device) || justification_.is_justified(change))
                continue;
            const double off = std::min(rubric_.needless_part, rubric_.needless_most - taken);
            taken += off;
            line(Section::parts, -off, 0.0, change.tick, unjustified(part, change, wanted));
        }
        for (const Statement& said : review_.statements)
            if (said.action.verb == Verb::tag && said.action.value > 0)
                judge_tag(said);
    }
    [[nodiscard]] std::string unjustified(const faults::Part& part, const ChangeMade& change, bool wanted) {
        const std::string changed = "You changed the " + bench::in_sentence(part) + "; ";
        if (!wanted && part.consumable)
            return changed + "what spoils a new one still fitted what you had read.";
        if (wanted && justification_.ground_of(change) == Ground::none)
            return changed + "a safety device wants a failed test of its own first.";
        if (wanted)
            return changed + "you had not asked why it opened.";
        const std::size_t left = evidence_.fitting_at(change.tick).size();
        return changed + causes(left) + " still fitted, and it was sound.";
    }
    /// No points hang on a tag: what condemns a part is found again from what was read.
    void judge_tag(const Statement& tag) {
        const faults::Part& part = site_.catalogue.parts[tag.action.target];
        if (!justification_.failed_at(part, tag.action.value))
            line(Section::parts, 0.0, 0.0, tag.tick,
                 "The tag of the " + bench::in_sentence(part) + ": reading " +
                     std::to_string(tag.action.value) +
                     " does not condemn it; a sound one gives it, too, or another place was read.");
    }
    [[nodiscard]] bool replaces_a_cause(const ChangeMade& change) const {
        const faults::ServiceRef ref{change.part, change.kind};
        return std::any_of(review_.real.begin(), review_.real.end(), [&](const evidence::RealFault& real) {
            const auto& repairs = fault_at(real.fault).repairs;
            return std::find(repairs.begin(), repairs.end(), ref) != repairs.end();
        });
    }

    void time() {
        double repair_minutes = 0.0;
        for (const evidence::RealFault& real : review_.real)
            repair_minutes += fault_at(real.fault).repair_minutes;
        grade_.par_minutes = expected_ + repair_minutes + kVerifyMinutes;
        grade_.work_minutes = minutes_since_arrival(review_.last_tick);
        const double over = grade_.work_minutes - rubric_.par_free * grade_.par_minutes;
        if (over <= 0.0)
            return;
        const double off = std::min(rubric_.time_most,
                                    rubric_.ten_minutes * static_cast<double>(static_cast<int>(over / 10.0)));
        if (off > 0.0)
            line(Section::time, -off, 0.0, review_.last_tick,
                 whole(grade_.work_minutes) + " work minutes; par is " + whole(grade_.par_minutes) + ".");
    }

    void cap(double most, std::uint64_t tick, std::string text) {
        grade_.caps.push_back({most, tick, std::move(text)});
    }
    void caps() {
        const std::uint64_t end = review_.last_tick;
        const Statement* named = last_said(Verb::cause);
        const bool wrong_name = named != nullptr && !named_right_;
        if (!mended_ || wrong_name)
            cap(rubric_.cap_wrong, end,
                !mended_ ? "The cause is still there." : "The cause named is another.");
        if (mended_ && !behind_mended_)
            cap(rubric_.cap_behind, end, "What was behind it is still there.");
        if (mending_ != nullptr && !proved_first_)
            cap(rubric_.cap_guessed, mending_->tick, "Changed before it was proved.");
        if (!verified_ && !review_.changes.empty())
            cap(rubric_.cap_unverified, end, "Not run through after the last change.");
    }

    const bench::Site& site_;
    const Scenario& scenario_;
    const Rubric& rubric_;
    Review& review_;
    evidence::Investigation& evidence_;
    Justification justification_;
    Grade grade_;
    std::vector<int> faults_; ///< what the call is about ...
    std::vector<int> behind_; ///< ... and what had brought that about
    Cause truth_;
    std::vector<Cause> group_;
    const ChangeMade* mending_ = nullptr;
    std::optional<std::uint64_t> isolated_;
    bool proved_first_ = false;
    bool named_right_ = false;
    bool mended_ = false;
    bool behind_mended_ = false;
    bool verified_ = false;
    double expected_ = 0.0;
};

bool counts_as_left(bench::Hazard hazard) {
    return hazard == bench::Hazard::left_bypass || hazard == bench::Hazard::left_leak_untested;
}

/// The safety mark, which stands apart; stop-work and things left behind also cap the other one.
void judge_safety(const bench::Site& site, const Rubric& rubric, const Review& review, Grade& grade) {
    std::array<int, static_cast<std::size_t>(bench::Hazard::count)> times{};
    double mark = 100.0;
    for (const bench::HazardEvent& event : review.hazards()) {
        const auto i = static_cast<std::size_t>(event.hazard);
        const bench::HazardRow& row = site.hazards[i];
        double off = row.gravity == bench::Gravity::slip ? rubric.slip : rubric.serious;
        if (row.gravity == bench::Gravity::stop_work) {
            off = 100.0 - rubric.cap_stop_work;
            grade.stopped = true;
            grade.caps.push_back({rubric.cap_stop_work, event.tick, "Stop work: " + row.title + "."});
        } else if (times[i]++ > 0) {
            off *= 2.0;
        }
        const double lasted_s = static_cast<double>(event.ended_tick - event.tick) / units::ticks_per_second;
        if (event.ended_tick != 0 && lasted_s <= rubric.undone_s)
            off *= 0.5;
        if (counts_as_left(event.hazard))
            grade.caps.push_back({rubric.cap_left, event.tick, row.title + "."});
        mark -= off;
        grade.lines.push_back({Section::safety, -off, 0.0, event.tick, row.title + ": " + event.about + "."});
    }
    grade.safety = std::max(0.0, mark);
}

/// Whoever says beforehand what a reading will be learns from every one of them; points would only make
/// people careful.
void tell_expectations(const Review& review, Grade& grade) {
    const auto all = bench::expectations(review.statements, review.notebook().readings());
    const auto answered =
        std::count_if(all.begin(), all.end(), [](const auto& one) { return one.reading > 0; });
    if (answered == 0)
        return;
    const auto true_ones =
        std::count_if(all.begin(), all.end(), [](const auto& one) { return one.came_true; });
    grade.lines.push_back({Section::expected, 0.0, 0.0, all.front().tick,
                           "Of " + std::to_string(answered) + " readings that you said beforehand, " +
                               std::to_string(true_ones) + " came out so."});
}

} // namespace

std::string_view name_of(Section section) {
    static constexpr std::array<std::string_view, 16> kNames{
        "look", "step",   "isolate",    "proof",    "repair",    "behind",   "verify",   "parts",
        "time", "checks", "conditions", "as-found", "corrected", "put-back", "expected", "safety"};
    return kNames[static_cast<std::size_t>(section)];
}

Grade grade(const bench::Site& site, const Scenario& scenario, const Rubric& rubric, const Log& log,
            evidence::Bank& bank) {
    Review review(site, scenario, bank);
    play(site, scenario, log, review);
    return judge(site, scenario, rubric, review);
}

Grade judge(const bench::Site& site, const Scenario& scenario, const Rubric& rubric, Review& review) {
    Grade grade = scenario.kind == Kind::tune_up ? judge_tune_up(site, rubric, review)
                                                 : CallJudge(site, scenario, rubric, review).judge();
    tell_expectations(review, grade);
    judge_safety(site, rubric, review, grade);
    grade.arrived_tick = review.arrived_tick;
    grade.last_tick = review.last_tick;
    grade.readings = review.notebook().readings().size();
    double sum = 0.0;
    for (const Line& line : grade.lines)
        if (line.section != Section::safety)
            sum += line.points;
    std::stable_sort(grade.caps.begin(), grade.caps.end(),
                     [](const Cap& a, const Cap& b) { return a.most < b.most; });
    const double most = grade.caps.empty() ? 100.0 : grade.caps.front().most;
    grade.mark = std::clamp(sum, 0.0, most);
    return grade;
}

} // namespace lightoff::lesson
