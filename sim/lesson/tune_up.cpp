// SPDX-License-Identifier: MIT
#include "lesson/tune_up.hpp"

#include "lesson/account.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <array>
#include <cmath>
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

/// Burning for so long, temperatures and flue gas say what they will say (teaching value).
constexpr std::uint64_t kSteadyTicks = 5 * 60 * 20;
constexpr std::uint64_t kRunsThrough = 3 * 60 * 20; ///< ticks of fire that prove a run
constexpr std::ptrdiff_t kReadingsAsLeft = 2;
/// What a meter in series with a flame shows at least while the board holds the valve open; less was not in
/// series (teaching value).
constexpr double kLeastFlame_a = 0.2e-6;

/// Whether a reading is the value that a line of the report asks for: the right quantity, at a place where it
/// can be read, while the furnace ran as it must for that.
class Fits {
public:
    Fits(const bench::Site& site, const bench::Reading& reading, const Running& running)
        : site_(site), r_(reading), run_(running), q_(reading.display.quantity),
          value_(instruments::value_of(reading.display)) {}

    [[nodiscard]] bool line(ReportLine line) const {
        return r_.window >= 0 && instruments::is_settled(r_.display) && fits(line);
    }

private:
    [[nodiscard]] bool fits(ReportLine line) const {
        switch (line) {
        case ReportLine::line_voltage:
            return q_ == Quantity::ac_volts && in(60.0, 150.0);
        case ReportLine::control_voltage:
            return q_ == Quantity::ac_volts && in(8.0, 45.0);
        case ReportLine::inlet_static:
            return pressure_at(Spot::inlet_tap) && !burns() && run_.gas_open;
        case ReportLine::inlet_flowing:
            return pressure_at(Spot::inlet_tap) && burns();
        case ReportLine::manifold:
            return pressure_at(Spot::manifold_tap) && burns();
        case ReportLine::firing_rate:
            return q_ == Quantity::stopwatch && burns() && run_.alone_on_gas;
        case ReportLine::rise:
            return q_ == Quantity::temperature_difference && at(Spot::return_duct) && at(Spot::supply_duct) &&
                   is_steady() && moves_its_air();
        case ReportLine::external_static:
            return q_ == Quantity::pressure && at(Spot::return_static) && at(Spot::supply_static) &&
                   moves_its_air();
        case ReportLine::draft:
            return run_.inducer &&
                   (pressure_at(Spot::vent_connector) || pressure_at(Spot::hose_tee_inducer) ||
                    pressure_at(Spot::hose_tee_switch));
        case ReportLine::flame_current:
            return q_ == Quantity::dc_microamps && burns() && on_flame_lead(r_.place_a) &&
                   on_flame_lead(r_.place_b) && std::abs(value_.value) >= kLeastFlame_a;
        case ReportLine::igniter_resistance:
            return q_ == Quantity::ohms && touches("igniter");
        case ReportLine::blower_current:
            return q_ == Quantity::clamp_amps && round_wire_of("blower") && moves_its_air();
        case ReportLine::inducer_current:
            return q_ == Quantity::clamp_amps && round_wire_of("inducer") && run_.inducer;
        case ReportLine::blower_capacitor:
            return q_ == Quantity::capacitance && touches("blower_capacitor");
        case ReportLine::oxygen:
            return q_ == Quantity::oxygen && is_flue_gas();
        case ReportLine::carbon_monoxide:
            return (q_ == Quantity::carbon_monoxide || q_ == Quantity::co_air_free) && is_flue_gas();
        case ReportLine::ambient_carbon_monoxide:
            return q_ == Quantity::ambient_co;
        }
        return false;
    }
    [[nodiscard]] bool in(double low, double high) const {
        return value_.value >= low && value_.value <= high;
    }
    [[nodiscard]] bool burns() const { return run_.fire_ticks > 0; }
    [[nodiscard]] bool is_steady() const { return run_.fire_ticks >= kSteadyTicks; }
    [[nodiscard]] bool moves_its_air() const { return run_.blower && run_.air_closed; }
    [[nodiscard]] bool is_flue_gas() const { return is_steady() && at(Spot::vent_connector); }
    [[nodiscard]] bool at(Spot spot) const {
        return r_.place_a == static_cast<int>(spot) || r_.place_b == static_cast<int>(spot);
    }
    [[nodiscard]] bool pressure_at(Spot spot) const { return q_ == Quantity::pressure && at(spot); }

    [[nodiscard]] const std::string& node(int place) const {
        return site_.model.wiring.netlist.node_names[static_cast<std::size_t>(place)];
    }
    /// Both leads on terminals or plugs of a part.
    [[nodiscard]] bool touches(const std::string& part) const {
        return r_.place_a >= 0 && r_.place_b >= 0 && node(r_.place_a).find(part) != std::string::npos &&
               node(r_.place_b).find(part) != std::string::npos;
    }
    [[nodiscard]] bool on_flame_lead(int place) const {
        return place >= 0 && (node(place).rfind("rod.", 0) == 0 || node(place).rfind("board.flame", 0) == 0);
    }
    /// A wire that carries the motor's current, not its capacitor's.
    [[nodiscard]] bool round_wire_of(const std::string& motor) const {
        if (r_.place_a < 0)
            return false;
        const std::string& wire =
            site_.model.wiring.netlist.element_names[static_cast<std::size_t>(r_.place_a)];
        return wire.find(motor) != std::string::npos && wire.find("capacitor") == std::string::npos;
    }

    const bench::Site& site_;
    const bench::Reading& r_;
    const Running& run_;
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
        caps();
        return std::move(grade_);
    }

private:
    void caps() {
        if (unmeasured_ >= 2)
            grade_.caps.push_back({rubric_.cap_wrong, review_.last_tick, "Written, not measured."});
        const bool ran = review_.fire_since_change >= kRunsThrough &&
                         review_.readings_of_fire_since_change() >= kReadingsAsLeft;
        if (!review_.changes.empty() && !ran)
            grade_.caps.push_back({rubric_.cap_unverified, review_.last_tick,
                                   "Not run through and measured after the last work."});
    }

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

    [[nodiscard]] std::string name_of_line(std::uint16_t target) const {
        for (const bench::Choice& choice : bench::choices(site_, bench::Word::line))
            if (choice.value == target)
                return choice.name;
        return {};
    }
    /// The reading that a line of the report rests on, if it is one of the right quantity.
    [[nodiscard]] const bench::Reading* reading_behind(const Statement& said) const {
        const auto& readings = review_.notebook().readings();
        const auto number = static_cast<std::size_t>(said.action.value);
        if (number == 0 || number > readings.size())
            return nullptr;
        const Fits fits(site_, readings[number - 1], review_.at_reading[number - 1]);
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
                     name_of_line(said.action.target) +
                         ": no reading behind it, or one taken where or when it cannot be that value.");
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
