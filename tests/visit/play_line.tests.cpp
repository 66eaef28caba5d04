// SPDX-License-Identifier: MIT
#include "visit/play_line.hpp"
#include "bench/offers.hpp"
#include "support/rig.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace lightoff;
using visit::PlayLine;

namespace {

PlayLine read(const std::string& text) {
    return visit::parse_play_line(test::reference_site(), text);
}

void check_refused(const std::string& text, const std::string& why) {
    INFO(text);
    CHECK_THROWS_WITH(read(text), Catch::Contains(why));
}

std::vector<std::string> words_after(const std::string& line) {
    return visit::complete(test::reference_site(), line).words;
}

bool holds(const std::vector<std::string>& words, const std::string& word) {
    return std::find(words.begin(), words.end(), word) != words.end();
}

} // namespace

TEST_CASE("lines are read as the manual has them") {
    CHECK(read("").kind == PlayLine::Kind::empty);
    CHECK(read("  # nothing but a remark").kind == PlayLine::Kind::empty);
    const PlayLine act = read("  burner-door   off # to see the burners\r");
    CHECK(act.kind == PlayLine::Kind::act);
    CHECK(act.text == "burner-door off");
    CHECK_FALSE(act.may_be_refused);
    CHECK(read("?burner-door off").may_be_refused);
    CHECK(read("? burner-door off").action == act.action);
    CHECK(read("wait 30s").kind == PlayLine::Kind::act);
    const PlayLine until = read("wait until inducer");
    CHECK(until.kind == PlayLine::Kind::wait_until);
    CHECK(until.about == bench::About::inducer);
    CHECK(until.limit_s == 900);
    CHECK(read("wait until quiet within 5min").limit_s == 300);
    CHECK(read("read").until == visit::Until::settled);
    CHECK(read("help leads").topic == "leads");
    CHECK(read("quit").ask == visit::Ask::quit);
    for (const visit::UntilRow& row : visit::until_rows())
        CHECK(read("wait until " + std::string(row.name)).kind == PlayLine::Kind::wait_until);
}

TEST_CASE("an instrument's name stands for its last reading where a reading's number belongs") {
    const PlayLine named = read("as-found manifold manometer");
    CHECK(named.action.verb == bench::Verb::as_found);
    CHECK(named.last_of >= 0);
    CHECK(named.text == "as-found manifold manometer");
    CHECK(read("as-found manifold 7").last_of == -1);
    CHECK(read("as-found manifold 7").action.value == 7);
    CHECK(read("keep manometer").last_of == -1);
    CHECK(read("strike gas thermometer-t1-t2").last_of >= 0);
    check_refused("as-found manifold manometre", "as-found");
}

TEST_CASE("a mistyped line is told what is nearest or how it goes") {
    check_refused("burnr-door off", "did you mean burner-door?");
    check_refused("leads board.R bord.C", "did you mean board.C?");
    check_refused("look filtr", "did you mean filter?");
    check_refused("wait until induser", "did you mean inducer?");
    check_refused("wait until", "wait until lamp");
    check_refused("wait until lamp within", "within");
    check_refused("burner-door", "burner-door on|off");
    check_refused("help filtr", "did you mean filter?");
    check_refused("quit now", "nothing more");
    check_refused("xyzzy", "allowed: ");
    check_refused("wait 3 weeks", "wait TIME");
}

TEST_CASE("a word is completed by what may stand there") {
    CHECK(words_after("burner-d") == std::vector<std::string>{"burner-door"});
    CHECK(words_after("burner-door ") == std::vector<std::string>{"off", "on"});
    CHECK(words_after("?burner-d") == std::vector<std::string>{"burner-door"});
    CHECK(words_after("?burner-door of") == std::vector<std::string>{"off"});
    CHECK(words_after("wait u") == std::vector<std::string>{"until"});
    CHECK(words_after("wait until ind") == std::vector<std::string>{"inducer"});
    CHECK(words_after("wait until lamp w") == std::vector<std::string>{"within"});
    CHECK(words_after("help lea") == std::vector<std::string>{"leads", "leads-off"});
    CHECK(holds(words_after("leads board.R board."), "board.C"));
    CHECK(holds(words_after("clean "), "pressure_hose"));
    CHECK_FALSE(holds(words_after("clean "), "pressure_switch")); // nothing to clean
    CHECK(words_after("wait ").size() == 1);
    CHECK(words_after("no-such-verb ").empty());
    CHECK(visit::complete(test::reference_site(), "leads board.R bo").start == 14);
    CHECK(visit::common_start({"leads", "leads-off"}) == "leads");
    CHECK(visit::common_start({}).empty());
}

TEST_CASE("every line that completion builds can be read") {
    const bench::Site& site = test::reference_site();
    int lines = 0;
    for (const bench::VerbSpec& spec : bench::verbs()) {
        std::string line = std::string(spec.name) + " ";
        for (std::size_t i = 0; i < spec.word_count(); ++i) {
            std::vector<std::string> words = visit::complete(site, line).words;
            words.erase(std::remove(words.begin(), words.end(), "until"), words.end());
            const bench::Word word = spec.words[i];
            line += words.empty() ? word == bench::Word::seconds       ? "5s"
                                    : word == bench::Word::temperature ? "70F"
                                    : word == bench::Word::turns       ? "+0.5"
                                                                       : "1"
                                  : words[i * (words.size() - 1)]; // two different ones
            line += ' ';
        }
        INFO(line);
        CHECK_NOTHROW(read(line));
        ++lines;
    }
    CHECK(lines > 60);
}
