// SPDX-License-Identifier: MIT
#pragma once
#include "evidence/investigation.hpp"
#include "support/rig.hpp"

#include <map>
#include <memory>
#include <set>
#include <stdexcept>
#include <string>
#include <tuple>
#include <vector>

/// Visits to broken furnaces, with an investigation that looks on.
namespace lightoff::test {

/// A call for heat some while ago; the furnace is found as it was left.
struct Call {
    std::vector<lesson::FaultUse> faults;
    std::uint64_t seed = 0;
    double arrive_after_s = 400.0;
    double house_k = 289.0;
};

inline lesson::Scenario scenario_of(const Call& call) {
    lesson::Scenario s = call_for_heat();
    s.history = {{100, "thermostat-set 75F"}};
    s.house_k = call.house_k;
    s.arrive_after_ticks = static_cast<std::uint64_t>(call.arrive_after_s * 20.0);
    s.faults = call.faults;
    return s;
}

inline evidence::Begin begin_of(const Call& call) {
    lesson::Scenario s = scenario_of(call);
    s.faults.clear();
    evidence::Begin begin;
    begin.world = lesson::begin_world(reference_site(), s, call.seed);
    for (const lesson::HistoryAction& h : s.history)
        begin.history.push_back({h.tick, bench::parse_action(reference_site(), h.action)});
    begin.arrive_after_ticks = s.arrive_after_ticks;
    return begin;
}

/// Bank of a call by its grid alone, built once for each way to begin.
inline evidence::Bank& grid_bank(const Call& call) {
    static std::map<std::tuple<std::uint64_t, double, double>, std::unique_ptr<evidence::Bank>> banks;
    auto& bank = banks[{call.seed, call.arrive_after_s, call.house_k}];
    if (!bank)
        bank = std::make_unique<evidence::Bank>(reference_site(), begin_of(call));
    return *bank;
}

inline int fault_index(const std::string& id) {
    const int index = reference_site().catalogue.find_fault(id);
    if (index < 0)
        throw std::invalid_argument("there is no fault " + id);
    return index;
}

inline std::string id_of(evidence::Cause cause) {
    const auto id = [](int fault) {
        return reference_site().catalogue.faults[static_cast<std::size_t>(fault)].id;
    };
    if (cause == evidence::kNothingWrong)
        return "nothing";
    return cause.with < 0 ? id(cause.fault) : id(cause.fault) + "+" + id(cause.with);
}

inline std::set<std::string> ids_of(const std::vector<evidence::Cause>& causes) {
    std::set<std::string> ids;
    for (const evidence::Cause cause : causes)
        ids.insert(id_of(cause));
    return ids;
}

inline std::string listed(const std::vector<evidence::Cause>& causes) {
    std::string text;
    for (const evidence::Cause cause : causes)
        text += (text.empty() ? "" : " ") + id_of(cause);
    return text;
}

class Visit {
public:
    Visit(const Call& call, evidence::Bank& bank)
        : workspace(reference_model()),
          world(lesson::arrive(reference_site(), scenario_of(call), call.seed, workspace)),
          investigation(bank, world) {}
    explicit Visit(const Call& call) : Visit(call, grid_bank(call)) {}

    void wait(double seconds) { run(static_cast<std::uint64_t>(seconds * 20.0)); }

    /// False if it is refused.
    bool try_act(const bench::Action& action) {
        if (!bench::begin(reference_site(), world, action).allowed)
            return false;
        investigation.act(action);
        while (world.hands.busy != 0)
            run(1);
        return true;
    }
    /// One action a line of a script; a refusal is a failure.
    void act(const std::string& text) {
        if (!try_act(bench::parse_action(reference_site(), text)))
            throw std::invalid_argument(text + " is refused");
    }
    void follow(const std::vector<std::string>& script) {
        for (const std::string& line : script)
            act(line);
    }

    std::set<std::string> fitting() { return ids_of(investigation.fitting()); }
    /// Number of the last reading.
    [[nodiscard]] int last() const { return static_cast<int>(investigation.readings().size()); }

    furnace::Workspace workspace;
    bench::World world;
    evidence::Investigation investigation;

private:
    void run(std::uint64_t ticks) {
        for (std::uint64_t i = 0; i < ticks; ++i) {
            bench::advance(reference_site(), world, workspace, 1);
            investigation.observe(world);
        }
    }
};

} // namespace lightoff::test
