// SPDX-License-Identifier: MIT
#include "lesson/justified.hpp"
#include "grades/attempts.hpp"

#include <algorithm>
#include <utility>

// When a part may be changed: the school's rules (teaching values), each by work that satisfies it and by
// work that just misses it.

using namespace lightoff;
using namespace lightoff::test;
using lesson::Ground;
using lesson::Section;

namespace {

/// The changes of an attempt and what each stands on.
struct Judged {
    std::vector<std::pair<std::string, Ground>> grounds; ///< "replace limit"
    lesson::Grade grade;

    [[nodiscard]] Ground of(const std::string& change) const {
        for (const auto& [name, ground] : grounds)
            if (name == change)
                return ground;
        FAIL("there was no " << change);
        return Ground::none;
    }
};

Judged judge(MarkedCall& call, const Lines& script) {
    const lesson::Log log = call.log(script);
    lesson::Review review(call.site(), call.scenario(), call.bank());
    lesson::play(call.site(), call.scenario(), log, review);
    lesson::Justification justification(call.site(), call.rubric(), review);
    Judged judged;
    for (const lesson::ChangeMade& change : review.changes) {
        judged.grounds.emplace_back(bench::format_action(call.site(), change.action),
                                    justification.ground_of(change));
    }
    judged.grade = lesson::grade(call.site(), call.scenario(), call.rubric(), log, call.bank());
    UNSCOPED_INFO(account(judged.grade));
    return judged;
}

bool says(const lesson::Grade& grade, const std::string& words) {
    return std::any_of(grade.lines.begin(), grade.lines.end(), [&](const lesson::Line& line) {
        return line.section == Section::parts && line.text.find(words) != std::string::npos;
    });
}

Lines without(Lines lines, const std::string& begin) {
    lines.erase(std::remove_if(lines.begin(), lines.end(),
                               [&](const std::string& line) { return line.rfind(begin, 0) == 0; }),
                lines.end());
    return lines;
}

} // namespace

TEST_CASE("justified: a safety device that failed its own test, and why it opened is known") {
    MarkedCall call("tired-limit");
    const ModelScript model("tired-limit");
    const Judged well = judge(call, model.whole());
    CHECK(well.of("replace limit") >= Ground::cornered);
    CHECK(well.of("replace filter") >= Ground::cheap);
    CHECK_FALSE(says(well.grade, "You changed"));

    // Why it opened was not asked: the filter was not looked at.
    const Judged no_why = judge(call, without(model.whole(), "look filter"));
    CHECK(no_why.of("replace limit") >= Ground::cornered);
    CHECK(says(no_why.grade, "why it opened"));

    // No test of its own.
    const Judged guessed = judge(call, model["look"] + Lines{"look filter"} + model["mend"] + model["close"]);
    CHECK(guessed.of("replace limit") == Ground::none);
    CHECK(says(guessed.grade, "failed test of its own"));
}

TEST_CASE("justified: a consumable once what would spoil the new one is cleared") {
    MarkedCall call("shorted-cable");
    const ModelScript model("shorted-cable");
    CHECK(judge(call, model.whole()).of("replace board_fuse") == Ground::cheap);
    // A new fuse while the short is not cleared.
    const Lines fuse{"? disconnect off", "? blower-door off", "replace board_fuse", "blower-door on",
                     "disconnect on"};
    const Judged early = judge(call, model["look"] + fuse + model["prove"] + model["mend"] + model["close"]);
    CHECK(early.grounds.front().second == Ground::none);
    CHECK(says(early.grade, "what spoils a new one"));
}

TEST_CASE("justified: of two troubles, the part that its own readings condemn") {
    MarkedCall call("two-troubles");
    const ModelScript model("two-troubles");
    Lines mend = model["mend"];
    for (std::string& line : mend)
        if (line == "clean flame_rod")
            line = "replace flame_rod";
    const Judged well = judge(call, model["look"] + model["prove"] + mend + model["close"]);
    CHECK(well.of("replace flame_rod") == Ground::condemned);
    // The look and the microamps are what condemned it.
    const Lines blind{"look thermostat_batteries"};
    CHECK(judge(call, model["look"] + blind + mend + model["close"]).of("replace flame_rod") == Ground::none);
}

TEST_CASE("justified: a board whose inputs are right and whose output is wrong") {
    MarkedCall call("deaf-board");
    const ModelScript model("deaf-board");
    const Judged well = judge(call, model.whole());
    CHECK(well.of("replace board") >= Ground::cornered);
    CHECK_FALSE(says(well.grade, "You changed"));
    CHECK(judge(call, model["look"] + model["mend"] + model["close"]).of("replace board") == Ground::none);

    // A tag that names the reading of another place is told so; it costs nothing.
    Lines tagged = model.whole();
    const auto change = std::find(tagged.begin(), tagged.end(), "replace board");
    tagged.insert(change, {"tag flame_rod 1"});
    const Judged wrong = judge(call, tagged);
    CHECK(says(wrong.grade, "does not condemn it"));
    CHECK(wrong.grade.mark == well.grade.mark);
}
