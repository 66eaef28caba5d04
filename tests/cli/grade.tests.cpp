// SPDX-License-Identifier: MIT
#include "cli.hpp"

#include <algorithm>
#include <filesystem>

using namespace lightoff::test;

namespace {

std::size_t lines_in(const std::string& text) {
    return static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n'));
}

} // namespace

TEST_CASE("attempts are marked, what can't be used is passed over, and all go into the gradebook") {
    const TemporaryFolder folder;
    const std::string whole = folder.file("whole.jsonl");
    put_bytes(folder.file("visit.txt"), "wait 20s\ntell nothing-wrong\nsign-off\n");
    cli_out({"play", "call-for-heat", folder.file("visit.txt"), "--attempt", whole});
    const std::string text = bytes_of(whole);
    const std::string cut = folder.file("cut.jsonl");
    put_bytes(cut, text.substr(0, text.size() - 20));
    std::string other = text;
    other.replace(other.find("wait 20s"), 8, "wait 21s");
    const std::string edited = folder.file("edited.jsonl");
    put_bytes(edited, other);
    const std::string book = folder.file("book.csv");

    const Ran ran = cli({"grade", whole, cut, edited, "--csv", book, "--json"});
    CHECK(ran.code == 2);
    const auto list = nlohmann::json::parse(ran.out);
    REQUIRE(list.size() == 3);
    CHECK(list[0]["abandoned"] == false);
    CHECK(list[1]["abandoned"] == true);
    CHECK_THAT(list[2]["error"].get<std::string>(), Catch::Contains("edited"));
    for (const char* key : {"mark", "safety", "lines", "caps", "staircase", "work_minutes", "par_minutes",
                            "coach_minutes", "cause"})
        CHECK(list[0].contains(key));
    // Nothing was measured, so the right word earns no proof.
    double sum = 0.0;
    for (const auto& line : list[0]["lines"]) {
        if (line["section"] == "proof")
            CHECK(line["points"] == 0.0);
        if (line["section"] != "safety")
            sum += line["points"].get<double>();
        const std::string words = line["text"];
        CHECK(std::count(words.begin(), words.end(), ' ') < 25);
    }
    CHECK(list[0]["mark"].get<double>() <= sum + 1e-9);
    CHECK(lines_in(bytes_of(book)) == 3); // heading and two attempts
}

TEST_CASE("one attempt is reported as a page and as a PDF, each whole or not at all") {
    check_refused({"grade", "one.jsonl", "two.jsonl", "--pdf", "report.pdf"}, {"--pdf", "one attempt"});
    const TemporaryFolder folder;
    const std::string attempt = folder.file("visit.jsonl");
    put_bytes(folder.file("visit.txt"), "wait 20s\ntell nothing-wrong\nsign-off\n");
    cli_out({"play", "call-for-heat", folder.file("visit.txt"), "--attempt", attempt});
    const std::string html = folder.file("report.html");
    const std::string pdf = folder.file("report.pdf");
    put_bytes(html, "an older report");
    const std::string told = cli_out({"grade", attempt, "--html", html, "--pdf", pdf});
    CHECK_THAT(told, Catch::Contains("visit.jsonl") && Catch::Contains("of 100"));
    CHECK_THAT(bytes_of(html), Catch::StartsWith("<!DOCTYPE html>") && Catch::Contains("visit.jsonl") &&
                                   Catch::Contains("Replay does not prove who did them."));
    CHECK_THAT(bytes_of(pdf), Catch::StartsWith("%PDF-"));
    CHECK_FALSE(std::filesystem::exists(html + ".part"));

    check_refused({"grade", attempt, "--html", folder.file("nowhere/report.html")},
                  {"nowhere/report.html", "folder"});
}

TEST_CASE("grade and check refuse what they can't use in one line") {
    check_refused({"grade"}, {"ATTEMPT"});
    const TemporaryFolder folder;
    const Ran none = cli({"grade", folder.file("none.jsonl")});
    CHECK(none.code == 2);
    CHECK_THAT(none.out, Catch::Contains("not graded") && Catch::Contains("none.jsonl"));
    const Ran wrong = cli({"check", "no-such-call"});
    CHECK(wrong.code == 2);
    CHECK_THAT(wrong.out, Catch::Contains("not checked") && Catch::Contains("no-such-call"));
}

TEST_CASE("a call nobody complains of has nothing to prove but that") {
    const auto found = cli_json({"check", "call-for-heat", "--json"});
    REQUIRE(found.size() == 1);
    CHECK(found[0]["complaint_occurs"] == true);
    CHECK(found[0]["solvable"] == true);
    CHECK(found[0]["proof"].size() > 5);
}
