// SPDX-License-Identifier: MIT
#include "grades/attempts.hpp"

#include <algorithm>

// What a tune-up earns and what costs points: the school's rules (teaching values), by the model scripts and
// by scripts that do one thing worse. A mark of 99.5 and more is full marks.

using namespace lightoff;
using namespace lightoff::test;
using lesson::Grade;
using lesson::Section;

namespace {

constexpr double kFull = 99.5;
/// Of the weights of all lines of the report; 3 of them are the manifold's.
constexpr double kAllRisk = 34.0;

/// A tune-up's model script, of which single lines and sections can be changed.
class TuneUp {
public:
    explicit TuneUp(const std::string& name) : call_(name) {
        const ModelScript model(name);
        for (const char* section : {"look", "as found", "mend", "prove", "close"})
            lines_ = lines_ + model[section];
    }
    /// In place of the first line that begins so.
    TuneUp& instead(const std::string& line, const Lines& others) {
        const auto at = find(line, lines_.begin());
        const auto then = lines_.erase(at);
        lines_.insert(then, others.begin(), others.end());
        return *this;
    }
    TuneUp& after(const std::string& line, const Lines& others) {
        lines_.insert(find(line, lines_.begin()) + 1, others.begin(), others.end());
        return *this;
    }
    /// Without what stands from one line to another, both included.
    TuneUp& without(const std::string& first, const std::string& last) {
        const auto from = find(first, lines_.begin());
        lines_.erase(from, find(last, from) + 1);
        return *this;
    }
    Grade mark() { return call_.mark(lines_); }

private:
    Lines::iterator find(const std::string& line, Lines::iterator from) {
        const auto at =
            std::find_if(from, lines_.end(), [&](const std::string& l) { return l.rfind(line, 0) == 0; });
        INFO(line);
        REQUIRE(at != lines_.end());
        return at;
    }

    MarkedCall call_;
    Lines lines_;
};

double points(const Grade& grade, Section section) {
    double sum = 0.0;
    for (const lesson::Line& line : grade.lines)
        if (line.section == section)
            sum += line.points;
    return sum;
}

bool says(const Grade& grade, const std::string& words) {
    return std::any_of(grade.lines.begin(), grade.lines.end(),
                       [&](const lesson::Line& line) { return line.text.find(words) != std::string::npos; });
}

double lost(const Grade& grade) {
    UNSCOPED_INFO(account(grade));
    return 100.0 - grade.mark;
}

} // namespace

TEST_CASE("tune-up: the model script of the healthy unit has full marks") {
    const Grade grade = TuneUp("tune-up-maple").mark();
    INFO(account(grade));
    CHECK(grade.mark >= kFull);
    CHECK(grade.safety == 100.0);
    CHECK(grade.caps.empty());
}

TEST_CASE("tune-up: the model scripts of units with conditions have full marks") {
    for (const char* name : {"tune-up-depot", "tune-up-parsonage", "tune-up-kennels"}) {
        const Grade grade = TuneUp(name).mark();
        INFO(name << ", " << account(grade));
        CHECK(grade.mark >= kFull);
        CHECK(grade.safety == 100.0);
    }
}

TEST_CASE("tune-up: a false alarm costs half of what there was to find, shared by the conditions") {
    CHECK(lost(TuneUp("tune-up-maple").after("look burner_openings", {"found burners_dirty"}).mark()) ==
          Approx(12.5));
    CHECK(lost(TuneUp("tune-up-depot").after("look burner_openings", {"found burners_dirty"}).mark()) ==
          Approx(0.5 * 25.0 / 2.0));
}

TEST_CASE("tune-up: a condition that is not reported, or not corrected, costs its share") {
    CHECK(lost(TuneUp("tune-up-depot").instead("found filter_dirty", {}).mark()) == Approx(12.5));
    CHECK(lost(TuneUp("tune-up-depot").instead("replace filter", {}).mark()) == Approx(7.5));
}

TEST_CASE("tune-up: a value written without a reading earns nothing on its line") {
    const Grade grade =
        TuneUp("tune-up-maple").instead("as-found manifold manometer", {"as-found manifold 0"}).mark();
    CHECK(lost(grade) == Approx(30.0 * 3.0 / kAllRisk));
    CHECK(says(grade, "manifold: no reading behind it"));
    CHECK(grade.caps.empty());
}

TEST_CASE("tune-up: a reading of another quantity, place or moment is no value") {
    // The inlet's pressure for the manifold's, a rise when the blower has just started, a flame current with
    // the fire out: two and more are written, not measured.
    TuneUp wrong("tune-up-maple");
    wrong.instead("as-found manifold manometer", {})
        .after("as-found inlet-flowing manometer", {"as-found manifold manometer"});
    const Grade one = wrong.mark();
    CHECK(lost(one) == Approx(30.0 * 3.0 / kAllRisk));
    CHECK(says(one, "manifold: no reading behind it"));
    wrong.after("stopwatch on", {"keep thermometer-t1-t2", "as-found rise thermometer-t1-t2"})
        .after("wait until quiet", {"keep multimeter", "as-found flame-current multimeter"});
    const Grade three = wrong.mark();
    CHECK(three.mark <= 50.0);
    CHECK(says(three, "rise: no reading behind it"));
    CHECK(says(three, "flame-current: no reading behind it"));
}

TEST_CASE("tune-up: two values without a reading are written, not measured") {
    const Grade grade = TuneUp("tune-up-maple")
                            .instead("as-found manifold manometer", {"as-found manifold 0"})
                            .instead("as-found draft manometer", {"as-found draft 1"})
                            .mark();
    UNSCOPED_INFO(account(grade));
    CHECK(grade.mark == Approx(50.0));
    REQUIRE(grade.caps.size() == 1);
    CHECK(grade.caps.front().text == "Written, not measured.");
}

TEST_CASE("tune-up: touching what was in range costs, part or screw") {
    const Grade part = TuneUp("tune-up-maple").after("look igniter", {"replace igniter"}).mark();
    CHECK(lost(part) == Approx(3.0));
    CHECK(says(part, "Hot-surface igniter, which was in range"));
    CHECK(lost(TuneUp("tune-up-maple")
                   .after("look exchanger", {"adjust gas_valve +0.125", "adjust gas_valve -0.125"})
                   .mark()) == Approx(6.0));
}

TEST_CASE("tune-up: as-found values that were taken after the first work are none") {
    // The hose is blown clear before anything but line, control voltage and ambient CO has been measured.
    const Grade grade = TuneUp("tune-up-maple")
                            .after("unplug igniter_plug", {"take-off pressure_hose", "clean pressure_hose",
                                                           "put-back pressure_hose"})
                            .mark();
    UNSCOPED_INFO(account(grade));
    CHECK(points(grade, Section::as_found) == Approx(15.0 * 3.0 / 8.0));
    CHECK(lost(grade) == Approx(15.0 * 5.0 / 8.0));
}

TEST_CASE("tune-up: each of three safeties that is not proved costs a third of their points") {
    // Left are the limit and the door switch.
    TuneUp two("tune-up-maple");
    two.without("take-off pressure_hose          # the valve",
                "blower-door off                 # door switch")
        .after("wait until burners within 5min", {"wait 10s", "blower-door off"})
        .without("lift rollout.in", "seat rollout.in");
    const Grade grade = two.mark();
    CHECK(lost(grade) == Approx(3.0));
    CHECK(says(grade, "2 safeties proved"));
}

TEST_CASE("tune-up: a thermostat left at another temperature is not put back") {
    CHECK(lost(TuneUp("tune-up-maple").instead("thermostat-set 66F", {}).mark()) == Approx(6.0));
}

TEST_CASE("tune-up: work after which it was not run is unverified") {
    const Grade grade = TuneUp("tune-up-maple").without("wait 8min", "as-left carbon-monoxide").mark();
    UNSCOPED_INFO(account(grade));
    CHECK(grade.mark == Approx(75.0));
}
