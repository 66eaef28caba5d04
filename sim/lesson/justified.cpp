// SPDX-License-Identifier: MIT
#include "lesson/justified.hpp"

#include "bench/access.hpp"
#include "units/constants.hpp"

#include <algorithm>

namespace lightoff::lesson {
namespace {

using evidence::Cause;
using faults::ServiceKind;

bool is_spot(int place, const std::string& name) {
    const instruments::Spot spot = instruments::find_spot(name);
    return spot != instruments::Spot::count && place == static_cast<int>(spot);
}

bool contains(const std::vector<int>& list, int value) {
    return std::find(list.begin(), list.end(), value) != list.end();
}

} // namespace

bool Justification::repairs(const ChangeMade& change, int fault) const {
    if (fault < 0)
        return false;
    const auto& all = site_->catalogue.faults[static_cast<std::size_t>(fault)].repairs;
    return std::find(all.begin(), all.end(), faults::ServiceRef{change.part, change.kind}) != all.end();
}

bool Justification::is_inside(const ChangeMade& change, const Cause& cause) const {
    return repairs(change, cause.fault) || repairs(change, cause.with);
}

bool Justification::was_repaired_before(int fault, std::uint64_t tick) const {
    return std::any_of(review_->changes.begin(), review_->changes.end(), [&](const ChangeMade& other) {
        return other.tick < tick && other.part >= 0 && repairs(other, fault);
    });
}

bool Justification::does_for_all(const ChangeMade& change) {
    const std::vector<Cause> fitting = evidence_->fitting_at(change.tick);
    return !fitting.empty() && std::all_of(fitting.begin(), fitting.end(),
                                           [&](const Cause& cause) { return is_inside(change, cause); });
}

/// A look at the part, or an instrument at one of the places where it is tested.
bool Justification::is_of(const faults::Part& part, const bench::Reading& reading) const {
    if (reading.taken == bench::Taken::old_part)
        return false; // it condemns nothing that is in place now
    if (reading.part >= 0)
        return &site_->catalogue.parts[static_cast<std::size_t>(reading.part)] == &part;
    const furnace::Model& model = site_->model;
    const auto windows = instruments::displays(instruments::Bag{});
    const instruments::Instrument instrument = windows[static_cast<std::size_t>(reading.window)].instrument;
    const auto is_at = [&](const std::string& name) {
        switch (instrument) {
        case instruments::Instrument::multimeter: {
            const std::vector<int> nodes = bench::nodes_of(model, name);
            return contains(nodes, reading.place_a) || contains(nodes, reading.place_b);
        }
        case instruments::Instrument::clamp: {
            const std::vector<int> nodes = bench::nodes_of(model, name);
            const electrical::Element& wire =
                model.wiring.netlist.elements[static_cast<std::size_t>(reading.place_a)];
            return contains(nodes, wire.a) || contains(nodes, wire.b);
        }
        default:
            return is_spot(reading.place_a, name) || is_spot(reading.place_b, name);
        }
    };
    return std::any_of(part.tested_at.begin(), part.tested_at.end(), is_at);
}

std::vector<int> Justification::own_readings(const ChangeMade& change) const {
    const faults::Part& part = site_->catalogue.parts[static_cast<std::size_t>(change.part)];
    const std::vector<bench::Reading>& readings = evidence_->readings();
    std::vector<int> own;
    for (std::size_t i = 0; i < readings.size() && readings[i].tick <= change.tick; ++i)
        if (is_of(part, readings[i]))
            own.push_back(static_cast<int>(i) + 1);
    return own;
}

bool Justification::failed_at(const faults::Part& part, int reading) {
    const std::vector<bench::Reading>& readings = evidence_->readings();
    return reading >= 1 && static_cast<std::size_t>(reading) <= readings.size() &&
           is_of(part, readings[static_cast<std::size_t>(reading) - 1]) &&
           !evidence_->gives_readings(evidence::kNothingWrong, {reading});
}

bool Justification::has_failed(const ChangeMade& change) {
    const std::vector<int> own = own_readings(change);
    return std::any_of(own.begin(), own.end(), [&](int reading) {
        return failed_at(site_->catalogue.parts[static_cast<std::size_t>(change.part)], reading);
    });
}

/// What is known beside may leave more than one trouble: only the part's own readings count.
bool Justification::is_condemned(const ChangeMade& change) {
    const std::vector<int> own = own_readings(change);
    const std::vector<Cause> fitting = evidence_->fitting_at(change.tick);
    const bool another_fits = std::any_of(fitting.begin(), fitting.end(), [&](const Cause& cause) {
        return cause.with < 0 && !is_inside(change, cause);
    });
    if (own.empty() || another_fits || !has_failed(change))
        return false;
    for (std::size_t i = 0; i < site_->catalogue.faults.size(); ++i) {
        const Cause other{static_cast<int>(i), -1};
        if (!is_inside(change, other) && evidence_->gives_readings(other, own))
            return false;
    }
    return true;
}

/// A test costs its minutes of work, a change its own and its part.
bool Justification::no_cheaper_test(const ChangeMade& change) {
    std::vector<Cause> inside;
    std::vector<Cause> outside;
    for (const Cause& cause : evidence_->fitting_at(change.tick))
        (is_inside(change, cause) ? inside : outside).push_back(cause);
    const faults::Service* service = site_->catalogue.find_service({change.part, change.kind});
    const bool pairs =
        std::any_of(outside.begin(), outside.end(), [](const Cause& c) { return c.with >= 0; });
    if (inside.empty() || pairs || service == nullptr)
        return false;
    const double change_minutes = static_cast<double>(service->ticks) * units::seconds_per_tick / 60.0 +
                                  service->cost / std::max(rubric_->work_minute, 1e-3);
    return evidence_->cheapest_between(inside, outside, change.tick) >= change_minutes;
}

/// Faults that bring about what the change repairs, as far as they were not put right before it.
std::vector<int> Justification::spoilers(const ChangeMade& change) const {
    const std::vector<faults::Fault>& all = site_->catalogue.faults;
    std::vector<int> found;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const auto fault = static_cast<int>(i);
        const bool spoils = std::any_of(all[i].damages.begin(), all[i].damages.end(),
                                        [&](int damaged) { return repairs(change, damaged); });
        if (spoils && !repairs(change, fault) && !was_repaired_before(fault, change.tick))
            found.push_back(fault);
    }
    return found;
}

bool Justification::is_cheap(const ChangeMade& change) {
    if (!site_->catalogue.parts[static_cast<std::size_t>(change.part)].consumable)
        return false;
    const std::vector<Cause> fitting = evidence_->fitting_at(change.tick);
    const std::vector<int> open = spoilers(change);
    return std::none_of(fitting.begin(), fitting.end(), [&](const Cause& cause) {
        return contains(open, cause.fault) || contains(open, cause.with);
    });
}

Ground Justification::ground_of(const ChangeMade& change) {
    if (change.part < 0)
        return Ground::none;
    const bool fitted_new = change.kind == ServiceKind::replace;
    if (fitted_new && is_condemned(change))
        return Ground::condemned;
    const bool safety_device = site_->catalogue.parts[static_cast<std::size_t>(change.part)].safety_device;
    const bool cornered = does_for_all(change) || (fitted_new && no_cheaper_test(change));
    if (cornered && (!fitted_new || !safety_device || has_failed(change)))
        return Ground::cornered;
    return fitted_new && is_cheap(change) ? Ground::cheap : Ground::none;
}

/// What wore the device out is open as long as the readings go with it as well as without it.
bool Justification::asked_why(const ChangeMade& change) {
    if (change.part < 0 || !site_->catalogue.parts[static_cast<std::size_t>(change.part)].safety_device)
        return true;
    for (const int spoiler : spoilers(change))
        for (const int fault : site_->catalogue.faults[static_cast<std::size_t>(spoiler)].damages) {
            const Cause both{std::min(spoiler, fault), std::max(spoiler, fault)};
            if (repairs(change, fault) && evidence_->fits_at({fault, -1}, change.tick) &&
                evidence_->pair_fits_at(both, change.tick))
                return false;
        }
    return true;
}

} // namespace lightoff::lesson
