// SPDX-License-Identifier: MIT
//
// How many attempts a core grades in a second: 20 work minutes with 60 actions on a plugged hose and on a
// dirty filter, replayed only and with evidence (sets after every reading, worth of every reading, the
// coach's expected cost). And what the bank of hypothesis furnaces costs. User time of this process.
#include "evidence/scripts.hpp"
#include "evidence/visit.hpp"

#include <algorithm>
#include <cstdio>
#include <limits>
#include <sys/resource.h>

namespace {

using namespace lightoff;
using namespace lightoff::test;

constexpr double kWork_s = 1200.0;
constexpr double kReplayGoal = 50.0;
constexpr double kEvidenceGoal = 5.0;
constexpr int kRounds = 10;

double user_seconds() {
    rusage used{};
    getrusage(RUSAGE_SELF, &used);
    return static_cast<double>(used.ru_utime.tv_sec) + 1e-6 * static_cast<double>(used.ru_utime.tv_usec);
}

/// User time of the quickest of some rounds, s: others may share the machine.
template <class Round>
double best_of(int rounds, Round round) {
    double best = std::numeric_limits<double>::infinity();
    for (int i = 0; i < rounds; ++i) {
        const double start = user_seconds();
        round();
        best = std::min(best, user_seconds() - start);
    }
    return best;
}

/// Sixty actions: a thorough round, then waits and looks till the time is over.
std::vector<std::string> sixty_actions() {
    std::vector<std::string> script = thorough_round();
    const std::vector<std::string> more{"look pressure_hose", "leads board.R board.C", "wait 9s",
                                        "leads board.W board.C", "wait 9s"};
    for (std::size_t i = 0; script.size() < 60; ++i)
        script.push_back(more[i % more.size()]);
    return script;
}

void replay_only(const Call& call, furnace::Workspace& workspace, const bench::World& arrived) {
    bench::World world = arrived;
    const auto end = world.tick + static_cast<std::uint64_t>(kWork_s * 20.0);
    for (const std::string& line : sixty_actions()) {
        bench::begin(reference_site(), world, bench::parse_action(reference_site(), line));
        bench::finish_action(reference_site(), world, workspace);
    }
    if (world.tick < end)
        bench::advance(reference_site(), world, workspace, end - world.tick);
    static_cast<void>(call);
}

struct Graded {
    int readings = 0;
    std::size_t left = 0;
};

Graded with_evidence(const Call& call, evidence::Bank& bank, furnace::Workspace& workspace,
                     const bench::World& arrived) {
    bench::World world = arrived;
    evidence::Investigation investigation(bank, world);
    const auto tick = [&] {
        bench::advance(reference_site(), world, workspace, 1);
        investigation.observe(world);
    };
    const auto end = world.tick + static_cast<std::uint64_t>(kWork_s * 20.0);
    for (const std::string& line : sixty_actions()) {
        const bench::Action action = bench::parse_action(reference_site(), line);
        if (!bench::begin(reference_site(), world, action).allowed)
            continue;
        investigation.act(action);
        while (world.hands.busy != 0)
            tick();
    }
    while (world.tick < end)
        tick();
    Graded graded;
    graded.readings = static_cast<int>(investigation.readings().size());
    for (int r = 1; r <= graded.readings; ++r)
        static_cast<void>(investigation.worth_of(r));
    static_cast<void>(investigation.staircase());
    static_cast<void>(investigation.expected_minutes());
    graded.left = investigation.fitting().size();
    static_cast<void>(call);
    return graded;
}

void measure(const char* id, double severity) {
    Call call;
    call.faults = {{id, severity, faults::Trigger::from_start, 0}};
    furnace::Workspace workspace(reference_model());
    const bench::World arrived = lesson::arrive(reference_site(), scenario_of(call), call.seed, workspace);

    double start = user_seconds();
    evidence::Bank bank(reference_site(), begin_of(call),
                        std::vector<evidence::RealFault>{{fault_index(id), severity}});
    std::printf("%s at %.2f\n  bank: %zu furnaces, %zu tests, %.1f s for %.0f s of history each\n", id,
                severity, bank.furnaces().size(), bank.tests().size(), user_seconds() - start,
                call.arrive_after_s);
    start = user_seconds();
    with_evidence(call, bank, workspace, arrived);
    std::printf("  first attempt, what the tests would show worked out: %.2f s; bank then %.1f MB\n",
                user_seconds() - start, 1e-6 * static_cast<double>(bank.bytes()));

    const double replayed = 1.0 / best_of(kRounds, [&] { replay_only(call, workspace, arrived); });
    Graded graded;
    const double evident =
        1.0 / best_of(kRounds, [&] { graded = with_evidence(call, bank, workspace, arrived); });
    std::printf("  replay only      %6.1f attempts/s, goal %.0f: %s\n", replayed, kReplayGoal,
                replayed >= kReplayGoal ? "met" : "MISSED");
    std::printf("  evidence-graded  %6.1f attempts/s, goal %.0f: %s (%d readings, %zu causes left)\n",
                evident, kEvidenceGoal, evident >= kEvidenceGoal ? "met" : "MISSED", graded.readings,
                graded.left);
}

} // namespace

int main() {
    measure("hose_plugged", 1.0);
    measure("igniter_open", 1.0);
    measure("filter_dirty", 0.863);
    return 0;
}
