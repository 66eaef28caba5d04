// SPDX-License-Identifier: MIT
#include "grades/attempts.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <set>

/// Where the marks of well-known ways to work must fall. The bands are the project's own (teaching values):
/// 100 expert, about 87 careful but slow, 75 tests everything, 75 unverified, 45 lucky then proved, 35 lucky,
/// at most 40 with a jumper left or work that had to be stopped, at most 15 for changing parts until it runs.
using namespace lightoff;
using namespace lightoff::test;

namespace {

constexpr double kAbout = 6.0;

std::string minutes(double count) {
    return "wait " + std::to_string(static_cast<int>(count * 60.0) + 1) + "s";
}

std::string first_word(std::string line) {
    line.erase(0, line.find_first_not_of("? "));
    return line.substr(0, line.find_first_of(" #"));
}

/// Lines of the ending that put back, say and sign, without a run.
Lines without_a_run(const Lines& close) {
    static const std::set<std::string> kStay{
        "disconnect",      "breaker",   "burner-door", "blower-door", "gas-cock",
        "thermostat-mode", "leads-off", "manometer-a", "put-back",    "seat",
        "cause",           "tell",      "sign-off",    "filter",      "plug-in"};
    Lines lines;
    for (const std::string& line : close)
        if (kStay.count(first_word(line)) != 0)
            lines.push_back(line[0] == '?' ? line : "? " + line);
    return lines;
}

const Lines kOpenUp{"? thermostat-mode off", "? disconnect off", "? leads-off", "? burner-door off",
                    "? blower-door off"};
const Lines kCloseUp{"? burner-door on", "? blower-door on", "? disconnect on", "? thermostat-mode heat"};

/// Everything that a tester of everything tries, with what it takes to find the furnace as before.
const Lines kThoroughRound = kOpenUp +
                             Lines{"? look igniter",
                                   "? look flame_rod",
                                   "? look burners",
                                   "? look board",
                                   "? look blower_wheel",
                                   "? disconnect on",
                                   "? door-switch on",
                                   "? meter ac-volts",
                                   "? leads board.R board.C",
                                   "? wait 4s",
                                   "? leads board.line board.blower_neutral",
                                   "? wait 4s",
                                   "? leads-off",
                                   "? door-switch off"} +
                             kCloseUp;

/// Three sound parts that are neither a remedy nor consumable.
Lines needless_parts(const MarkedCall& call) {
    const std::vector<evidence::RealFault> real = call.real();
    Lines lines = kOpenUp;
    for (const char* id : {"pressure_switch", "limit", "transformer", "inducer_motor", "flame_rod"}) {
        const int part = call.site().catalogue.find_part(id);
        const bool heals = std::any_of(real.begin(), real.end(), [&](const evidence::RealFault& r) {
            const auto& repairs = call.site().catalogue.faults[static_cast<std::size_t>(r.fault)].repairs;
            return std::any_of(repairs.begin(), repairs.end(),
                               [&](const auto& repair) { return repair.part == part; });
        });
        if (!heals && lines.size() < kOpenUp.size() + 3)
            lines.push_back("replace " + std::string(id));
    }
    return lines + kCloseUp;
}

/// Of the parts that the mending replaces because of a real fault; none if another one is mended otherwise.
Lines tests_of_old_parts(const MarkedCall& call, const Lines& mend) {
    const faults::Catalogue& catalogue = call.site().catalogue;
    Lines tests;
    for (const evidence::RealFault& real : call.real())
        for (const auto& repair : catalogue.faults[static_cast<std::size_t>(real.fault)].repairs) {
            const faults::Part& part = catalogue.parts[static_cast<std::size_t>(repair.part)];
            const bool replaced = std::any_of(mend.begin(), mend.end(), [&](const std::string& line) {
                const std::size_t verb = line.find_first_not_of("? ");
                return verb != std::string::npos && line.substr(verb) == "replace " + part.id;
            });
            if (replaced && repair.kind == faults::ServiceKind::replace && part.bench_test.ticks > 0)
                tests.push_back("test-old " + part.id);
        }
    return tests.size() == call.real().size() ? tests : Lines{};
}

Lines before_naming(const Lines& close, const Lines& added) {
    const auto naming = std::find_if(close.begin(), close.end(),
                                     [](const std::string& line) { return first_word(line) == "cause"; });
    return Lines(close.begin(), naming) + added + Lines(naming, close.end());
}

/// Every number written down twice more.
Lines with_repeats(const Lines& prove) {
    Lines lines;
    for (const std::string& line : prove) {
        lines.push_back(line);
        if (first_word(line) == "read" || first_word(line) == "keep")
            for (int i = 0; i < 2; ++i)
                lines = lines + Lines{"? keep multimeter", "? keep manometer"};
    }
    return lines;
}

const Lines kJumperLeft = kOpenUp + Lines{"jumper board.R board.W"} + kCloseUp;
const Lines kRolloutBridged = kOpenUp +
                              Lines{"jumper rollout.in rollout.out", "? burner-door on", "? blower-door on",
                                    "disconnect on", "wait 2s"} +
                              kOpenUp + Lines{"jumper-off"} + kCloseUp;

void check_bands(const std::string& name) {
    MarkedCall call(name);
    const ModelScript model(name);
    const Lines& look = model["look"];
    const Lines& prove = model["prove"];
    const Lines& mend = model["mend"];
    const Lines& close = model["close"];
    const auto mark = [&](const char* who, const Lines& lines) {
        const lesson::Grade grade = call.mark(lines);
        UNSCOPED_INFO(who << ": " << account(grade));
        return grade.mark;
    };

    const lesson::Grade expert = call.mark(model.whole());
    {
        INFO(account(expert));
        CHECK(expert.mark >= 99.5);
        CHECK(expert.safety == 100.0);
        REQUIRE(expert.isolated_tick);
    }
    const double coach = std::max(1.0, expert.coach_minutes);
    const double taken =
        static_cast<double>(*expert.isolated_tick - expert.arrived_tick) / (60.0 * units::ticks_per_second);

    CHECK(mark("slow", look + Lines{minutes(2.75 * coach - taken)} + prove + mend + close) ==
          Approx(87.5).margin(kAbout));
    CHECK(mark("tests everything", look + Lines{minutes(4.0 * coach)} + kThoroughRound + prove + mend +
                                       close) == Approx(75.0).margin(kAbout));
    CHECK(mark("unverified", look + prove + mend + without_a_run(close)) == Approx(75.0).margin(kAbout));
    const double lucky = mark("lucky", look + mend + close);
    CHECK(lucky == Approx(35.0).margin(kAbout));
    // Half the proof is in the old part, where the mending leaves one that can be tested; in no other
    // reading.
    if (const Lines test = tests_of_old_parts(call, mend); !test.empty()) {
        const double proved = mark("lucky, then proved", look + mend + before_naming(close, test));
        CHECK(proved == Approx(45.0).margin(kAbout));
        CHECK(proved == Approx(lucky + 0.5 * call.rubric().proof));
    }
    CHECK(mark("lucky, then read", look + mend + before_naming(close, {"keep co-alarm"})) <= lucky);
    CHECK(mark("jumper left", look + prove + mend + before_naming(close, kJumperLeft)) <= 40.0);
    CHECK(mark("unsafe", look + prove + kRolloutBridged + mend + close) <= 40.0);
    CHECK(mark("parts-changer", needless_parts(call) + mend + close) <= 15.0);

    // What never raises a mark.
    CHECK(mark("expert, needless part", look + prove + needless_parts(call) + mend + close) < expert.mark);
    CHECK(mark("expert, repeats", look + with_repeats(prove) + mend + close) <= expert.mark);
    CHECK(mark("lucky, needless part", look + needless_parts(call) + mend + close) <= lucky);
    CHECK(mark("lucky, hazard", look + kRolloutBridged + mend + close) <= lucky);
}

} // namespace

// A section for each call: -c NAME runs that one.
TEST_CASE("bands") {
    const std::string name = GENERATE(from_range(calls_of({"no-heat"})));
    DYNAMIC_SECTION(name) {
        check_bands(name);
    }
}

TEST_CASE("model scripts") {
    const std::string name = GENERATE(from_range(
        calls_of({"poor-heat", "noise", "smell-or-alarm", "nothing-wrong", "callback", "tune-up"})));
    DYNAMIC_SECTION(name) {
        const lesson::Grade grade = MarkedCall(name).mark(ModelScript(name).whole());
        INFO(account(grade));
        CHECK(grade.mark >= 99.5);
        CHECK(grade.safety == 100.0);
    }
}
