// SPDX-License-Identifier: MIT
#include "cli.hpp"

#include <filesystem>

using namespace lightoff::test;

namespace {

/// The golden scenario with one text in it replaced.
std::string edited(const TemporaryFolder& folder, const std::string& what, const std::string& by) {
    std::string text = bytes_of(kScenarios + "/calls/call-for-heat.json");
    const auto at = text.find(what);
    REQUIRE(at != std::string::npos);
    put_bytes(folder.file("call.json"), text.replace(at, what.size(), by));
    return folder.file("call.json");
}

} // namespace

TEST_CASE("a command that is missing, unknown or badly used is refused") {
    check_refused({}, {"command is missing"});
    check_refused({"circiut"}, {"did you mean circuit?"});
    check_refused({"xyzzy"}, {"allowed run, circuit"});
    check_refused({"--bogus"}, {"--bogus"});
    check_refused({"run"}, {"SCENARIO"});
    check_refused({"run", "call-for-heat", "--bogus"}, {"--bogus"});
    check_refused({"run", "call-for-heat", "second"}, {"second"});
    check_refused({"circuit", "call-for-heat"}, {"--at"});
    check_refused({"play", "call-for-heat", "script.txt"}, {"script.txt"});
}

TEST_CASE("times and seeds are numbers within limits") {
    for (const char* bad : {"-1", "nan", "inf", "1e99", "ten", "10 s", "0.03"})
        check_refused({"run", "call-for-heat", std::string("--for=") + bad}, {"--for: found"});
    check_refused({"run", "call-for-heat", "--for="}, {"--for"});
    check_refused({"run", "call-for-heat", "--for", "-1"}, {"allowed 0 to 604800 s"});
    check_refused({"run", "call-for-heat", "--trace-every=0"}, {"--trace-every"});
    check_refused({"run", "call-for-heat", "--seed=-1"}, {"--seed"});
    check_refused({"run", "call-for-heat", "--seed=18446744073709551616"}, {"--seed"});
    check_refused({"circuit", "call-for-heat", "--at=-5"}, {"--at"});
    check_refused({"hash", "call-for-heat", "--for=0.01"}, {"whole steps of 0.05 s"});
}

TEST_CASE("a scenario that is not there or not one is refused by every command that takes one") {
    const TemporaryFolder folder;
    const std::string missing = folder.file("nothing.json");
    put_bytes(folder.file("bad.json"), "{\"format\": ");
    const std::vector<std::vector<std::string>> commands{
        {"run", ""}, {"circuit", "", "--at=1"}, {"conditions", ""}, {"hash", ""}, {"chart", ""}};
    for (std::vector<std::string> words : commands) {
        words[1] = missing;
        check_refused(words, {missing, "No such file"});
        words[1] = folder.path().string() + "/";
        check_refused(words, {"a folder"});
        words[1] = folder.file("bad.json");
        check_refused(words, {"bad.json: 1:"});
        words[1] = "call-for-haet";
        check_refused(words, {"did you mean call-for-heat?"});
        words[1] = "";
        check_refused(words, {});
    }
}

TEST_CASE("what is wrong inside a scenario is named with its place") {
    const TemporaryFolder folder;
    check_refused({"run", edited(folder, "\"kind\"", "\"knid\"")}, {"knid"});
    check_refused(
        {"run", edited(folder, "\"equipment\": \"reference-80k-induced-draft\"", "\"equipment\": \"none\"")},
        {"/equipment", "none", "reference-80k-induced-draft"});
    check_refused({"run", edited(folder, "\"reference-80k-induced-draft\"", "\"../../etc/passwd\"")},
                  {"/equipment", "without folder"});
    check_refused({"run", edited(folder, "\"overrides\": []",
                                 "\"overrides\": [{\"condition\": \"draft.nonsense\", \"value\": 1}]")},
                  {"/overrides/0/condition", "draft.nonsense"});
    check_refused({"run", edited(folder, "thermostat-set 72F", "thermostat-set 720F")},
                  {"/history/0/do", "40F to 95F"});
}

TEST_CASE("an environment that names another data folder is obeyed") {
    const TemporaryFolder folder;
    std::filesystem::copy(kScenarios, folder.path() / "data", std::filesystem::copy_options::recursive);
    std::filesystem::rename(folder.path() / "data/calls/call-for-heat.json",
                            folder.path() / "data/calls/mine.json");
    const Surroundings there{{"LIGHTOFF_DATA=" + folder.file("data")}, {}, 0.0};
    CHECK(cli({"run", "mine", "--for=1"}, there).code == 0);
    check_refused({"run", "call-for-heat"}, {"mine"}, there);
    check_refused({"run", "mine"}, {"/nowhere"}, {{"LIGHTOFF_DATA=/nowhere"}, {}, 0.0});
}

TEST_CASE("output that can't be written is an error, not silence") {
    const TemporaryFolder folder;
    const Surroundings full{{}, "/dev/full", 0.0};
    const std::vector<std::vector<std::string>> commands{{"run", "call-for-heat", "--for=10"},
                                                         {"run", "call-for-heat", "--for=10", "--json"},
                                                         {"circuit", "call-for-heat", "--at=10"},
                                                         {"conditions", "call-for-heat"},
                                                         {"hash", "call-for-heat", "--for=1"},
                                                         {"chart", "call-for-heat"},
                                                         {"calc", "--list"},
                                                         {"--help"},
                                                         {"--version"}};
    for (const auto& words : commands)
        check_refused(words, {"standard output can't be written", "No space left"}, full);
    check_refused({"run", "call-for-heat", "--for=1", "--trace=/dev/full"}, {"/dev/full", "No space left"});
    check_refused({"run", "call-for-heat", "--trace=" + folder.path().string()}, {folder.path().string()});
    check_refused({"run", "call-for-heat", "--trace=" + folder.file("none/t.csv")},
                  {"none/t.csv", "No such file"});
    check_refused({"circuit", "call-for-heat", "--at=1", "--spice=" + folder.file("none/d.cir")},
                  {"No such file"});
}

TEST_CASE("a pipe whose reader has gone is an error, not a silent death") {
    const Ran ran =
        run_program({"/bin/bash", "-c",
                     "export LIGHTOFF_DATA='" + kScenarios +
                         "'; { '" LIGHTOFF_CLI "' conditions call-for-heat; echo $? >&2; } | sleep 0"});
    CHECK_THAT(ran.err,
               Catch::Contains("standard output can't be written: Broken pipe") && Catch::Contains("2\n"));
}

TEST_CASE("closed standard streams are noticed, and no file takes their place") {
    const TemporaryFolder folder;
    const Ran ran = run_program({"/bin/bash", "-c",
                                 "export LIGHTOFF_DATA='" + kScenarios +
                                     "'; '" LIGHTOFF_CLI "' run call-for-heat --for 1 --trace '" +
                                     folder.file("t.csv") + "' >&-; echo $? >&2"});
    CHECK_THAT(ran.err, Catch::Contains("standard output can't be written") && Catch::Contains("2\n"));
    CHECK(bytes_of(folder.file("t.csv")).find("Sequence") == std::string::npos);
}

TEST_CASE("a weight that the rubric does not have is refused by name") {
    const TemporaryFolder folder;
    const std::string file = edited(folder, "\"rubric_weights\": []",
                                    "\"rubric_weights\": [{\"line\": \"proofs\", \"weight\": 3}]");
    check_refused({"run", file, "--for=1"}, {"/rubric_weights", "proofs"});
}
