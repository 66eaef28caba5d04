// SPDX-License-Identifier: MIT
#include "cli.hpp"
#include "cli/world_dump.hpp"
#include "files/attempt_line.hpp"

using namespace lightoff::test;

namespace {

const char* const kScript = "thermostat-set 70F\n"
                            "wait 60s   # the sequence begins\n"
                            "\n"
                            "burner-door off\n"
                            "wait 45s\n"
                            "sign-off\n";

/// A short attempt, written by the program itself.
struct Attempt {
    TemporaryFolder folder;
    std::string file = folder.file("attempt.jsonl");
    std::string said;

    explicit Attempt(const std::string& script = kScript) {
        put_bytes(folder.file("script.txt"), script);
        said = cli_out({"play", "call-for-heat", folder.file("script.txt"), "--attempt", file, "--seed=3"});
    }
    [[nodiscard]] std::string text() const { return bytes_of(file); }
    std::string with(const std::string& text_of_file) {
        put_bytes(folder.file("other.jsonl"), text_of_file);
        return folder.file("other.jsonl");
    }
};

std::string replaced(std::string text, const std::string& what, const std::string& by) {
    const auto at = text.find(what);
    REQUIRE(at != std::string::npos);
    return text.replace(at, what.size(), by);
}

} // namespace

TEST_CASE("an attempt that was played comes out the same") {
    Attempt attempt;
    CHECK_THAT(attempt.said, Catch::Contains("burner-door off") && Catch::Contains("5 actions"));
    const std::string said = cli_out({"replay", attempt.file});
    CHECK_THAT(said, Catch::StartsWith("same: ") && Catch::Contains("marks compared, 5 actions"));
    check_refused({"play", "call-for-heat", attempt.folder.file("script.txt"), "--attempt", attempt.file},
                  {"nothing was overwritten"});
}

TEST_CASE("a script's mistakes are named by their line before anything is written") {
    const TemporaryFolder folder;
    const std::string file = folder.file("a.jsonl");
    put_bytes(folder.file("s.txt"), "wait 1s\nburner-dor off\n");
    check_refused({"play", "call-for-heat", folder.file("s.txt"), "--attempt", file},
                  {"s.txt: line 2", "burner-dor"});
    CHECK(bytes_of(file).empty());
    check_refused({"play", "call-for-heat", folder.file("none.txt"), "--attempt", file}, {"none.txt"});

    // Refused at the furnace: what was done so far stays, and is honest about it.
    put_bytes(folder.file("s.txt"), "wait 1s\nburner-door on\n");
    const Ran ran = cli({"play", "call-for-heat", folder.file("s.txt"), "--attempt", file});
    CHECK(ran.code == 1);
    CHECK_THAT(ran.out, Catch::Contains("refused (line 2)"));
    CHECK_THAT(cli_out({"replay", file}), Catch::Contains("1 action,"));
}

TEST_CASE("an edited attempt is refused with its line") {
    Attempt attempt;
    check_refused({"replay", attempt.with(replaced(attempt.text(), "wait 45s", "wait 46s"))}, {"edited"});
    check_refused({"replay", attempt.with(replaced(attempt.text(), "burner-door off", "burner-door on"))},
                  {"edited"});
    check_refused({"replay", attempt.with("")}, {"an empty file"});
    check_refused({"replay", attempt.with("{}\n")}, {"line 1"});
    check_refused({"replay", attempt.folder.file("none.jsonl")}, {"No such file"});
}

TEST_CASE("an attempt that was cut is replayed as far as it goes") {
    Attempt attempt;
    const std::string text = attempt.text();
    const Ran ran = cli({"replay", attempt.with(text.substr(0, text.rfind("{\"end\"") + 10))});
    CHECK(ran.code == 0);
    CHECK_THAT(ran.out, Catch::Contains("the last line was cut") && Catch::Contains("abandoned") &&
                            Catch::Contains("same: "));
    // Cut before the first mark there is nothing that a replay could prove.
    const Ran early = cli({"replay", attempt.with(text.substr(0, text.find("{\"mark\"")))});
    CHECK(early.code == 1);
    CHECK_THAT(early.out, Catch::Contains("holds no mark"));
}

TEST_CASE("an attempt of other data or another scenario is refused by its bundle") {
    Attempt attempt;
    std::string scenario = bytes_of(kScenarios + "/calls/call-for-heat.json");
    put_bytes(attempt.folder.file("call.json"),
              replaced(scenario, "\"outdoor_temperature_F\": 25", "\"outdoor_temperature_F\": 26"));
    check_refused({"replay", attempt.file, "--scenario", attempt.folder.file("call.json")}, {attempt.file});
    put_bytes(attempt.folder.file("call.json"), scenario);
    CHECK(cli({"replay", attempt.file, "--scenario", attempt.folder.file("call.json")}).code == 0);
}

namespace {

/// The attempt with one mark's hash changed and the chain computed anew, as a run on a machine that computes
/// otherwise would have written it.
std::string with_other_mark(const std::string& text, std::size_t mark) {
    std::string out;
    lightoff::files::Digest chain = lightoff::files::first_chain();
    std::istringstream lines(text);
    std::size_t marks = 0;
    for (std::string line; std::getline(lines, line);) {
        std::string content = line.substr(0, line.find(",\"chain\":\""));
        if (content.rfind("{\"mark\":\"", 0) == 0 && marks++ == mark)
            content[9] = content[9] == '0' ? '1' : '0';
        out += lightoff::files::sealed_line(content, chain) + "\n";
    }
    return out;
}

} // namespace

TEST_CASE("a mark that differs is named with its tick, both hashes and the way to the field") {
    Attempt attempt;
    const Ran ran = cli({"replay", attempt.with(with_other_mark(attempt.text(), 2))});
    INFO(ran.out << ran.err);
    CHECK(ran.code == 1);
    CHECK_THAT(ran.out, Catch::Contains("different: at tick 600 (30.00 s)") && Catch::Contains("recorded") &&
                            Catch::Contains("replayed") && Catch::Contains("--dump") &&
                            Catch::Contains("--compare"));
}

TEST_CASE("a dump compared with its own attempt is the same; a dump of another run names tick, part, field, "
          "both values") {
    Attempt attempt;
    const std::string dump = attempt.folder.file("dump.jsonl");
    cli_out({"replay", attempt.file, "--dump", dump});
    CHECK_THAT(cli_out({"replay", attempt.file, "--compare", dump}),
               Catch::Contains("the same in every field"));
    std::istringstream lines(bytes_of(dump));
    std::string first;
    std::getline(lines, first);
    const auto json = nlohmann::json::parse(first);
    CHECK(json["tick"] == 200);
    CHECK(json["world"]["tick"] == 200);
    CHECK(json["world"].size() > 1000);

    // A dump as a machine would write it whose igniter came out a bit warmer at the third mark.
    std::string elsewhere;
    lightoff::cli::DumpReader reader(dump);
    for (int mark = 0; auto world = reader.next(); ++mark) {
        if (mark >= 2)
            world->state.heat.temperature.igniter = 300.25;
        elsewhere += lightoff::cli::dump_line(*world);
    }
    const Ran ran = cli({"replay", attempt.file, "--compare", attempt.with(elsewhere)});
    CHECK(ran.code == 1);
    CHECK_THAT(ran.out, Catch::Contains("same: ") && Catch::Contains("first difference") &&
                            Catch::Contains("at tick 600 (30.00 s)") &&
                            Catch::Contains("part    state.heat.temperature\n") &&
                            Catch::Contains("field   igniter\n") && Catch::Contains("there   300.25 K\n") &&
                            Catch::Contains("here    "));

    // Another attempt's dump is refused.
    put_bytes(attempt.folder.file("script.txt"), kScript);
    const std::string other = attempt.folder.file("seed4.jsonl");
    cli_out({"play", "call-for-heat", attempt.folder.file("script.txt"), "--attempt", other, "--seed=4"});
    const std::string dump4 = attempt.folder.file("dump4.jsonl");
    cli_out({"replay", other, "--dump", dump4});
    check_refused({"replay", attempt.file, "--compare", dump4}, {"seed 4", "another attempt"});

    // A field that was changed by hand is not taken for a measurement.
    std::string edited = bytes_of(dump);
    check_refused(
        {"replay", attempt.file, "--compare", attempt.with(replaced(edited, "\"seed\":3", "\"seed\":4"))},
        {"line 1", "hash"});
    check_refused(
        {"replay", attempt.file, "--compare", attempt.with(replaced(edited, "\"seed\":3", "\"seed\":-3"))},
        {"line 1", "seed"});
    check_refused({"replay", attempt.file, "--compare", attempt.with(replaced(edited, "\"seed\":3,", ""))},
                  {"line 1", "seed"});
    check_refused({"replay", attempt.file, "--compare", attempt.with(first + "\n")},
                  {"ends before tick 400"});
    check_refused({"replay", attempt.file, "--compare", attempt.with("[1]\n")}, {"line 1"});
    check_refused({"replay", attempt.file, "--dump", "/dev/full"}, {"/dev/full"});
}
