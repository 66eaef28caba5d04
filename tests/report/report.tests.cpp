// SPDX-License-Identifier: MIT
#include "files/temporary_folder.hpp"
#include "report/html.hpp"
#include "report/pdf.hpp"
#include "report/pictures.hpp"
#include "report/words.hpp"
#include "support/program.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace lightoff;
using namespace lightoff::report;

namespace {

const files::LoadedBundle& bundle() {
    static const files::LoadedBundle kBundle =
        files::load_bundle(std::string(LIGHTOFF_SOURCE_DIR) + "/scenarios/calls/plugged-hose.json");
    return kBundle;
}

int part(const std::string& id) {
    return bundle().site.catalogue.find_part(id);
}

/// A debrief made up by hand: two readings, one change, one grave hazard.
lesson::Debrief made_up() {
    lesson::Debrief d;
    d.story.arrived_tick = 1000;
    d.story.last_tick = 1000 + 10 * 60 * 20;
    bench::Reading look;
    look.tick = 1600;
    look.taken = bench::Taken::looked;
    look.part = part("pressure_hose");
    d.story.readings = {look, look};
    d.story.readings[1].tick = 1000 + 400 * 20;
    lesson::ChangeMade change;
    change.tick = 1000 + 310 * 20;
    change.part = part("pressure_switch");
    change.kind = faults::ServiceKind::replace;
    d.story.changes = {change};
    d.story.hazards = {{1000 + 65 * 20, bench::Hazard::worked_live, "board.line", 0}};
    d.has_staircase = true;
    d.fitting_on_arrival = 20;
    d.grade.staircase = {{1600, 1, {{1, -1}, {2, -1}}, 18}, {1000 + 400 * 20, 2, {{3, -1}}, 1}};
    d.grade.lines = {{lesson::Section::proof, 20.0, 20.0, 1600, "A line with <signs> & \"marks\"."}};
    d.grade.mark = 61.3;
    d.grade.cause = "Hose of the pressure switch plugged";
    d.knew = lesson::Knew{1000 + 400 * 20, 2};
    d.coach = {{1.5, "a test", 9}, {3.0, "another test", 1}};
    d.story.tracks.lanes = {{"inducer speed", "rpm", "draft"}, {"flame current", "uA", "gas and flame"}};
    for (std::uint64_t t = 1000; t <= d.story.last_tick; t += 10) {
        d.story.tracks.ticks.push_back(t);
        d.story.tracks.values.push_back(static_cast<float>(t % 3200));
        d.story.tracks.values.push_back(2.5F);
    }
    return d;
}

std::string words_of_pdf(const std::string& pdf) {
    const TemporaryFolder folder;
    put_bytes(folder.file("report.pdf"), pdf);
    const test::Ran ran = test::run_program({PDFTOTEXT, "-layout", folder.file("report.pdf"), "-"});
    INFO(ran.err);
    REQUIRE(ran.code == 0);
    return ran.out;
}

std::size_t times(const std::string& text, const std::string& what) {
    std::size_t n = 0;
    for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1))
        ++n;
    return n;
}

} // namespace

TEST_CASE("what was known when is said in one sentence, whatever came first") {
    lesson::Debrief d = made_up();
    const bench::Site& site = bundle().site;
    CHECK(knew_text(site, d) ==
          "You knew enough only at 6:40 (reading 2). You changed the pressure switch at 5:10.");
    d.story.changes[0].tick = 1000 + 410 * 20;
    CHECK(knew_text(site, d) ==
          "You knew enough at 6:40 (reading 2). You changed the pressure switch at 6:50.");
    d.knew->reading = 0;
    d.story.changes.clear();
    CHECK(knew_text(site, d) == "You knew enough at 6:40.");
    d.knew.reset();
    CHECK(knew_text(site, d) == "Your readings never left the cause alone.");
}

TEST_CASE("answers to a test are told by what differs") {
    evidence::Offer offer;
    offer.meanings = {{"dry; cracked; on both ports", {{1, -1}}},
                      {"dry; supple; on both ports", {{2, -1}, {3, -1}}}};
    CHECK(answers_of(offer) == std::vector<std::string>{"cracked", "dry; supple; on both ports"});
    offer.meanings = {{"24.0 V", {}}};
    CHECK(answers_of(offer) == std::vector<std::string>{"24.0 V"});
}

TEST_CASE("places of a test are told in words, numbers are left alone") {
    CHECK(test_text("ohms, cabinet.ground_screw to rod.tip, cabinet.ground_screw lifted, as it stands") ==
          "ohms, cabinet ground screw to rod tip, cabinet ground screw lifted, as it stands");
    CHECK(test_text("after 1.5 min. Volts, board.W") == "after 1.5 min. Volts, board W");
}

TEST_CASE("statements are told in words") {
    const lesson::Debrief d = made_up();
    const auto said = [&](const std::string& line) {
        return statement_text(bundle().site, d.story, bench::parse_action(bundle().site, line));
    };
    CHECK(said("cause hose_plugged") == "Cause named: Hose of the pressure switch plugged");
    CHECK(said("stops-at 1") == "The sequence stops after step 1");
    CHECK(said("tell repaired") == "Told the customer: repaired");
    CHECK_THAT(said("strike gas 1"), Catch::StartsWith("Struck out: gas (reading 1, "));
    CHECK(said("sign-off") == "Signed off");
}

TEST_CASE("scales of pictures go by round steps") {
    CHECK(round_step(10, 5) == Approx(2));
    CHECK(round_step(0.9, 5) == Approx(0.2));
    CHECK(minute_step(7, 10) == 1);
    CHECK(minute_step(16, 10) == 2);
    CHECK(minute_step(140, 10) == 15);
}

TEST_CASE("a report says the same as a page and as a PDF, and neither runs or fetches anything") {
    Origin origin;
    origin.file = "attempt.jsonl";
    origin.header.scenario = "plugged-hose";
    origin.header.seed = 77;
    const Document document = make_document(bundle(), made_up(), origin);
    const std::string html = to_html(document);
    const std::string pdf = to_pdf(document);
    CHECK(html == to_html(document));
    CHECK(pdf == to_pdf(document));

    CHECK(times(html, "<svg") == 2);
    CHECK(times(html, "</svg>") == 2);
    for (const char* foreign :
         {"<script", "<link", "<img", "http:", "https:", "url(", "@import", "onclick", "<iframe"})
        CHECK(html.find(foreign) == std::string::npos);
    CHECK_THAT(html, Catch::Contains("prefers-color-scheme:dark") && Catch::Contains("@media print"));
    CHECK_THAT(html, Catch::Contains("A line with &lt;signs&gt; &amp; &quot;marks&quot;."));

    const std::string text = words_of_pdf(pdf);
    for (const char* words :
         {"Mrs Odell", "You knew enough only at 6:40", "the coach's", "61.3 of 100", "Hazards", "board.line",
          "These actions earn this grade. Replay does not prove who did them.", "This is for training only",
          "seed 77", "inducer speed", "Hose of the pressure switch plugged"}) {
        INFO(words);
        CHECK_THAT(text, Catch::Contains(words));
        CHECK_THAT(html, Catch::Contains(words));
    }
    CHECK_THAT(text, Catch::Contains("A line with <signs> & \"marks\"."));
    // The score comes after what could be known.
    CHECK(text.find("You knew enough") < text.find("61.3 of 100"));
}

TEST_CASE("a stop-work comes first in a report") {
    lesson::Debrief d = made_up();
    int grave = -1;
    for (std::size_t i = 0; i < bundle().site.hazards.size(); ++i)
        if (bundle().site.hazards[i].gravity == bench::Gravity::stop_work)
            grave = static_cast<int>(i);
    REQUIRE(grave >= 0);
    CHECK(to_html(make_document(bundle(), d, {})).find("Stop work at") == std::string::npos);
    d.story.hazards.push_back({2000, static_cast<bench::Hazard>(grave), "there", 0});
    const std::string html = to_html(make_document(bundle(), d, {}));
    REQUIRE(html.find("Stop work at 0:50") != std::string::npos);
    CHECK(html.find("Stop work at 0:50") < html.find("What could be known"));
}

TEST_CASE("signs find their place in the PDF's letters") {
    CHECK(in_western("72 °F") == "72 \xB0"
                                 "F");
    CHECK(in_western("−5 µA") == "\x96"
                                 "5 \xB5"
                                 "A");
    CHECK(in_western("“é”…") == "\x93\xE9\x94\x85");
    CHECK(in_western("10 Ω") == "10 ohm");
    CHECK(in_western("火") == "?");
    CHECK(in_western("\xF0\x9F\x94\xA5!") == "?!");
    CHECK(in_western("\xC3") == "?"); // cut off
}
