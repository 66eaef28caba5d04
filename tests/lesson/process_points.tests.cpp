// SPDX-License-Identifier: MIT
#include "evidence/visit.hpp"
#include "files/rubric.hpp"
#include "lesson/begin_of.hpp"
#include "lesson/grade.hpp"
#include "units/random.hpp"

#include <catch2/catch.hpp>

#include <array>
#include <optional>
#include <string>
#include <vector>

// Points for looking, for the stopping step and for isolating follow from what could be known: the same
// decisions on two furnaces that have read the same so far give the same of them, whatever is really wrong
// with each (the project's own rule of marking).

using namespace lightoff;
using namespace lightoff::test;
using lesson::Section;

namespace {

using Round = std::vector<std::string>;

/// What somebody does who looks, switches and measures without changing anything.
const Round kRound{"wait 20s",
                   "stops-at 1",
                   "thermostat-mode off",
                   "disconnect off",
                   "burner-door off",
                   "blower-door off",
                   "look filter",
                   "look thermostat",
                   "disconnect on",
                   "door-switch on",
                   "leads board.R board.C",
                   "wait 5s",
                   "leads disconnect.line_out disconnect.neutral",
                   "wait 5s",
                   "leads board.W board.C",
                   "thermostat-mode heat",
                   "wait 30s",
                   "manometer-a hose-tee-inducer",
                   "leads pressure_switch.in pressure_switch.out",
                   "wait 60s",
                   "stops-at 3",
                   "look igniter",
                   "wait 60s"};
/// What leaves nothing but the pressure switch.
const Round kDraft{"wait 20s",
                   "stops-at 1",
                   "thermostat-mode off",
                   "disconnect off",
                   "burner-door off",
                   "manometer-a hose-tee-switch",
                   "disconnect on",
                   "thermostat-mode heat",
                   "wait 40s",
                   "leads pressure_switch.in pressure_switch.out",
                   "wait 30s"};

/// Two causes with the same first signs, or that nothing on offer tells apart.
struct Twins {
    const char* one;
    const char* other;
    const Round& round;
    bool leaves_out; ///< some lines, at random
};
const std::array kTwins{Twins{"thermostat_contact_open", "thermostat_batteries_flat", kRound, true},
                        Twins{"igniter_open", "igniter_wire_open", kRound, true},
                        Twins{"valve_coil_open", "valve_stuck_shut", kRound, true},
                        Twins{"pressure_switch_stuck_open", "pressure_switch_drifted", kDraft, false}};

struct Alike {
    lesson::Log one, other;
    std::size_t acts = 0;
};

/// The round on both, up to the last act after which nobody could tell one furnace from the other.
std::optional<Alike> work_alike(const Twins& twins, const Call& one, const Call& other, std::uint64_t seed) {
    const bench::Site& site = reference_site();
    furnace::Workspace workspace(site.model);
    bench::World a = lesson::arrive(site, scenario_of(one), one.seed, workspace);
    bench::World b = lesson::arrive(site, scenario_of(other), other.seed, workspace);
    const auto same = [&] { return bench::perceive(site, a) == bench::perceive(site, b); };
    if (!same())
        return std::nullopt;
    Alike alike;
    alike.one.last_tick = a.tick;
    for (std::size_t i = 0; i < twins.round.size(); ++i) {
        if (twins.leaves_out && units::random_bits(seed, 1, i) % 4 == 0)
            continue;
        const bench::Action action = bench::parse_action(site, twins.round[i]);
        const std::uint64_t tick = a.tick;
        const bench::Verdict verdict = bench::begin(site, a, action);
        REQUIRE(bench::begin(site, b, action).reason == verdict.reason);
        while (a.hands.busy != 0 && same()) {
            bench::advance(site, a, workspace, 1);
            bench::advance(site, b, workspace, 1);
        }
        if (!same())
            break;
        if (verdict.allowed)
            alike.one.entries.push_back({tick, action});
        alike.one.last_tick = a.tick;
    }
    alike.acts = alike.one.entries.size();
    alike.other = alike.one;
    alike.one.seed = one.seed;
    alike.other.seed = other.seed;
    return alike;
}

lesson::Grade grade_of(const Call& call, const lesson::Log& log) {
    const bench::Site& site = reference_site();
    lesson::Scenario scenario = scenario_of(call);
    scenario.kind = lesson::Kind::no_heat;
    evidence::Bank bank(site, begin_of(call), lesson::real_faults(site, scenario));
    return lesson::grade(site, scenario, files::read_rubric(files::read_rubric_file()), log, bank);
}

std::vector<lesson::Line> process_lines(const lesson::Grade& grade) {
    std::vector<lesson::Line> lines;
    for (const lesson::Line& line : grade.lines)
        if (line.section == Section::look || line.section == Section::step ||
            line.section == Section::isolate || line.section == Section::parts)
            lines.push_back(line);
    return lines;
}

} // namespace

TEST_CASE("process points: the same decisions on furnaces that read the same earn the same") {
    std::size_t acts = 0;
    int isolated = 0;
    for (std::size_t i = 0; i < kTwins.size(); ++i) {
        const Call one{{{kTwins[i].one}}};
        const Call other{{{kTwins[i].other}}};
        INFO(kTwins[i].one << " and " << kTwins[i].other);
        const auto alike = work_alike(kTwins[i], one, other, i);
        REQUIRE(alike);
        acts += alike->acts;
        const lesson::Grade a = grade_of(one, alike->one);
        const lesson::Grade b = grade_of(other, alike->other);
        isolated += a.isolated_tick ? 1 : 0;
        CHECK(a.isolated_tick == b.isolated_tick);
        CHECK(a.safety == b.safety);
        const auto lines = process_lines(a);
        const auto others = process_lines(b);
        REQUIRE(lines.size() == others.size());
        for (std::size_t k = 0; k < lines.size(); ++k) {
            INFO(lines[k].text << " / " << others[k].text);
            CHECK(lines[k].section == others[k].section);
            CHECK(lines[k].points == others[k].points);
            CHECK(lines[k].of == others[k].of);
            CHECK(lines[k].tick == others[k].tick);
            CHECK(lines[k].text == others[k].text);
        }
    }
    CHECK(acts >= 30);    // they were worth comparing ...
    CHECK(isolated >= 1); // ... and one of them to the end
}
