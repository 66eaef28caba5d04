// SPDX-License-Identifier: MIT
#include "lesson/tune_up.hpp"

#include "lesson/account.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <array>
#include <set>

namespace lightoff::lesson {
namespace {

using bench::ReportLine;
using bench::Verb;
using instruments::Quantity;
using instruments::Spot;

constexpr std::size_t kLines = 17;
/// How much a line matters to people's safety (teaching values).
constexpr std::array<double, kLines> kRisk{1, 1, 1, 2, 3, 3, 2, 2, 3, 2, 1, 2, 1, 1, 3, 3, 3};
constexpr double kAsFoundLines = 8.0; ///< that a full as-found record has at least (teaching value)
constexpr double kNeedlessTouch = 3.0;
constexpr int kSafetiesToProve = 3;
constexpr double kSafetyShare = 0.6; ///< of the points for putting back

/// Whether a reading is one of the quantity that a line of the report asks for.
class Fits {
public:
    Fits(const bench::Site& site, const bench::Reading& reading, bool fire)
        : site_(site), r_(reading), fire_(fire), q_(reading.display.quantity),
          value_(instruments::value_of(reading.display)) {}

    [[nodiscard]] bool line(ReportLine line) const {
        switch (line) {
        case ReportLine::line_voltage:
            return q_ == Quantity::ac_volts && in(100.0, 140.0);
        case ReportLine::control_voltage:
            return q_ == Quantity::ac_volts && in(15.0, 35.0);
        case ReportLine::inlet_static:
            return pressure_at(Spot::inlet_tap) && !fire_;
        case ReportLine::inlet_flowing:
            return pressure_at(Spot::inlet_tap) && fire_;
        case ReportLine::manifold:
            return pressure_at(Spot::manifold_tap) && fire_;
        case ReportLine::firing_rate:
            return q_ == Quantity::stopwatch && fire_;
        case ReportLine::rise:
            return q_ == Quantity::temperature_difference && fire_ && at(Spot::return_duct) &&
                   at(Spot::supply_duct);
        case ReportLine::external_static:
            return q_ == Quantity::pressure && at(Spot::return_static) && at(Spot::supply_static);
        case ReportLine::draft:
            return pressure_at(Spot::vent_connector) || pressure_at(Spot::hose_tee_inducer) ||
                   pressure_at(Spot::hose_tee_switch);
        case ReportLine::flame_current:
            return q_ == Quantity::dc_microamps && fire_;
        case ReportLine::igniter_resistance:
            return q_ == Quantity::ohms && touches("igniter");
        case ReportLine::blower_current:
            return q_ == Quantity::clamp_amps && element_of("blower");
        case ReportLine::inducer_current:
            return q_ == Quantity::clamp_amps && element_of("inducer");
        case ReportLine::blower_capacitor:
            return q_ == Quantity::capacitance;
        case ReportLine::oxygen:
            return q_ == Quantity::oxygen && fire_;
        case ReportLine::carbon_monoxide:
            return (q_ == Quantity::carbon_monoxide || q_ == Quantity::co_air_free) && fire_;
        case ReportLine::ambient_carbon_monoxide:
            return q_ == Quantity::ambient_co;
        }
        return false;
    }

private:
    [[nodiscard]] bool in(double low, double high) const {
        return value_.known && value_.value >= low && value_.value <= high;
    }
    [[nodiscard]] bool at(Spot spot) const {
        return r_.place_a == static_cast<int>(spot) || r_.place_b == static_cast<int>(spot);
    }
    [[nodiscard]] bool pressure_at(Spot spot) const { return q_ == Quantity::pressure && at(spot); }
    [[nodiscard]] bool touches(const std::string& part) const {
        const auto& names = site_.model.wiring.netlist.node_names;
        return r_.place_a >= 0 && names[static_cast<std::size_t>(r_.place_a)].find(part) != std::string::npos;
    }
    [[nodiscard]] bool element_of(const std::string& part) const {
        const auto& names = site_.model.wiring.netlist.element_names;
        return r_.place_a >= 0 && names[static_cast<std::size_t>(r_.place_a)].find(part) != std::string::npos;
    }

    const bench::Site& site_;
    const bench::Reading& r_;
    bool fire_;
    Quantity q_;
    instruments::Value value_;
};

/// Judges one tune-up.
class TuneUpJudge {
public:
    TuneUpJudge(const bench::Site& site, const Rubric& rubric, Review& review)
        : site_(site), rubric_(rubric), review_(review) {}

    Grade judge() {
        read_report();
        checks();
        conditions();
        as_found();
        corrected();
        put_back();
        grade_.work_minutes =
            static_cast<double>(review_.last_tick - review_.arrived_tick) / (60.0 * units::ticks_per_second);
        grade_.cause = real_titles();
        if (unmeasured_ >= 2)
            grade_.caps.push_back({rubric_.cap_wrong, review_.last_tick, "Written, not measured."});
        return std::move(grade_);
    }

private:
    void line(Section section, double points, double of, std::uint64_t tick, std::string text) {
        grade_.lines.push_back({section, points, of, tick, std::move(text)});
    }
    [[nodiscard]] std::string real_titles() const {
        std::string all;
        for (const evidence::RealFault& real : review_.real)
            all += (all.empty() ? "" : "; ") +
                   site_.catalogue.faults[static_cast<std::size_t>(real.fault)].title;
        return all.empty() ? "nothing" : all;
    }

    /// The reading that a line of the report rests on, if it is one of the right quantity.
    [[nodiscard]] const bench::Reading* reading_behind(const Statement& said) const {
        const auto& readings = review_.notebook().readings();
        const auto number = static_cast<std::size_t>(said.action.value);
        if (number == 0 || number > readings.size())
            return nullptr;
        const Fits fits(site_, readings[number - 1], review_.fire_at_reading[number - 1] != 0);
        return fits.line(static_cast<ReportLine>(said.action.target)) ? &readings[number - 1] : nullptr;
    }
    void read_report() {
        for (const Statement& said : review_.statements) {
            const bool found = said.action.verb == Verb::as_found;
            if (!found && said.action.verb != Verb::as_left)
                continue;
            const bench::Reading* reading = reading_behind(said);
            if (reading == nullptr) {
                ++unmeasured_;
                line(Section::checks, 0.0, 0.0, said.tick,
                     "A value with no reading of that quantity behind it.");
                continue;
            }
            const auto at = static_cast<std::size_t>(said.action.target);
            measured_[at] = true;
            if (found && reading->tick <= review_.first_change())
                before_[at] = true;
        }
    }

    void checks() {
        double earned = 0.0;
        double all = 0.0;
        int count = 0;
        for (std::size_t i = 0; i < kLines; ++i) {
            all += kRisk[i];
            earned += measured_[i] ? kRisk[i] : 0.0;
            count += measured_[i] ? 1 : 0;
        }
        line(Section::checks, rubric_.checks * earned / all, rubric_.checks, review_.last_tick,
             std::to_string(count) + " of " + std::to_string(kLines) + " values measured, weighed by risk.");
    }
    void conditions() {
        std::set<int> claimed;
        for (const Statement& said : review_.statements)
            if (said.action.verb == Verb::found)
                claimed.insert(said.action.value);
        double hits = 0.0;
        for (const evidence::RealFault& real : review_.real)
            hits += claimed.erase(real.fault) != 0 ? 1.0 : 0.0;
        const auto alarms = static_cast<double>(claimed.size());
        const auto number = static_cast<double>(review_.real.size());
        const double share =
            number > 0.0 ? std::max(0.0, hits - 0.5 * alarms) / number : std::max(0.0, 1.0 - 0.5 * alarms);
        line(Section::conditions, rubric_.conditions * share, rubric_.conditions, review_.last_tick,
             whole(hits) + " of " + whole(number) + " developing conditions reported, " + whole(alarms) +
                 " that were not there.");
    }
    void as_found() {
        const auto taken = static_cast<double>(std::count(before_.begin(), before_.end(), true));
        line(Section::as_found, rubric_.as_found * std::min(1.0, taken / kAsFoundLines), rubric_.as_found,
             review_.first_change(), whole(taken) + " values taken before anything was disturbed.");
    }
    void corrected() {
        double mended = 0.0;
        for (const std::uint8_t broken : review_.was_broken)
            mended += broken == 0 ? 1.0 : 0.0;
        const auto number = static_cast<double>(review_.real.size());
        double points = rubric_.corrected * (number > 0.0 ? mended / number : 1.0);
        for (const ChangeMade& change : review_.changes) {
            const bool invasive =
                change.kind == faults::ServiceKind::replace || change.action.verb == Verb::adjust;
            if (!invasive || change.part < 0 || is_about_a_condition(change) ||
                site_.catalogue.parts[static_cast<std::size_t>(change.part)].consumable)
                continue;
            points -= kNeedlessTouch;
            line(Section::corrected, 0.0, 0.0, change.tick,
                 "You changed or adjusted the " +
                     site_.catalogue.parts[static_cast<std::size_t>(change.part)].title +
                     ", which was in range.");
        }
        line(Section::corrected, std::max(0.0, points), rubric_.corrected, review_.last_tick,
             whole(mended) + " of " + whole(number) + " conditions corrected.");
    }
    [[nodiscard]] bool is_about_a_condition(const ChangeMade& change) const {
        const faults::ServiceRef ref{change.part, change.kind};
        return std::any_of(review_.real.begin(), review_.real.end(), [&](const evidence::RealFault& real) {
            const auto& repairs = site_.catalogue.faults[static_cast<std::size_t>(real.fault)].repairs;
            return std::find(repairs.begin(), repairs.end(), ref) != repairs.end();
        });
    }
    void put_back() {
        const double tidy = (1.0 - kSafetyShare) * rubric_.put_back;
        line(Section::put_back, review_.put_back ? tidy : 0.0, tidy, review_.last_tick,
             review_.put_back ? "Everything is back in its place."
                              : "Something is not in its place: door, wire, part, switch or cock.");
        const auto proved =
            static_cast<int>(std::count(review_.provoked.begin(), review_.provoked.end(), true));
        const double most = kSafetyShare * rubric_.put_back;
        line(Section::put_back, most * std::min(1.0, static_cast<double>(proved) / kSafetiesToProve), most,
             review_.last_tick, std::to_string(proved) + " safeties proved by making them act.");
    }

    const bench::Site& site_;
    const Rubric& rubric_;
    Review& review_;
    Grade grade_;
    std::array<bool, kLines> measured_{};
    std::array<bool, kLines> before_{}; ///< as found, before the first change
    int unmeasured_ = 0;
};

} // namespace

Grade judge_tune_up(const bench::Site& site, const Rubric& rubric, Review& review) {
    return TuneUpJudge(site, rubric, review).judge();
}

} // namespace lightoff::lesson
