// SPDX-License-Identifier: MIT
#include "cli.hpp"

#include <cstdlib>
#include <poll.h>
#include <pty.h>
#include <regex>

using namespace lightoff::test;

namespace {

/// A no-heat call with the hose of the pressure switch plugged, worked with nothing but what play prints.
const char* const kPluggedHose = "wait until lamp\n"
                                 "thermostat-mode off\n"
                                 "disconnect off\n"
                                 "burner-door off\n"
                                 "look pressure_hose\n"
                                 "manometer-a hose-tee-switch\n"
                                 "disconnect on\n"
                                 "thermostat-mode heat\n"
                                 "wait until inducer   # rises\n"
                                 "wait until inducer   # steady\n"
                                 "keep manometer\n"
                                 "manometer-a hose-tee-inducer\n"
                                 "read\n"
                                 "leads pressure_switch.in pressure_switch.out\n"
                                 "read\n"
                                 "stops-at 1\n"
                                 "thermostat-mode off\n"
                                 "disconnect off\n"
                                 "leads-off\n";
const char* const kCleared = "take-off pressure_hose\n"
                             "clean pressure_hose\n"
                             "put-back pressure_hose\n"
                             "manometer-a hose-tee-switch\n"
                             "disconnect on\n"
                             "thermostat-mode heat\n"
                             "wait until igniter\n"
                             "wait until valve\n"
                             "wait until burners\n"
                             "wait until blower\n"
                             "wait until blower\n"
                             "manometer-a off\n"
                             "burner-door on\n"
                             "wait 5min\n"
                             "cause hose_plugged\n"
                             "tell repaired\n"
                             "sign-off\n";

Ran shell(const std::string& command) {
    return run_program({"/bin/bash", "-c",
                        "export LIGHTOFF_DATA='" + kScenarios + "'\nlightoff_cli() { '" +
                            std::string(LIGHTOFF_CLI) + "' \"$@\"; }\n" + command});
}

/// The number of the first reading whose line holds `place`.
double reading_at(const std::string& page, const std::string& place, const std::string& after = "") {
    const std::size_t from = after.empty() ? 0 : page.find(after);
    REQUIRE(from != std::string::npos);
    std::istringstream lines(page.substr(from));
    const std::regex number(R"(\] [a-z]+ (-?[0-9.]+) )");
    for (std::string line; std::getline(lines, line);) {
        std::smatch found;
        if (line.find(place) != std::string::npos && std::regex_search(line, found, number))
            return std::stod(found[1]);
    }
    FAIL("no reading at " + place);
    return 0.0;
}

bool in_order(const std::string& page, const std::vector<std::string>& parts) {
    std::size_t at = 0;
    for (const std::string& part : parts) {
        at = page.find(part, at);
        INFO(part);
        CHECK(at != std::string::npos);
        if (at == std::string::npos)
            return false;
    }
    return true;
}

std::string last_mark(const std::string& attempt) {
    const std::size_t at = attempt.rfind("{\"mark\"");
    return attempt.substr(at, attempt.find(",\"chain\"", at) - at);
}

} // namespace

// Chain "plugged hose" (common practice, no source): inducer runs, full control voltage across the switch,
// the manometer finds nothing on the switch's side of the plug and full suction on the inducer's, no igniter,
// count 1.
TEST_CASE("a plugged hose is found, cleared and proved in the terminal") {
    const TemporaryFolder folder;
    put_bytes(folder.file("s.txt"), std::string(kPluggedHose) + kCleared);
    const std::string page =
        cli_out({"play", "plugged-hose", folder.file("s.txt"), "--attempt", folder.file("a.jsonl")});
    INFO(page);
    CHECK(
        in_order(page, {"Work order: ", "rating plate", "training only", "Lamp: 1 flash, then one long glow",
                        "Inducer: a whirr rises", "Inducer: a steady whirr, full", "stops-at 1",
                        "Pressure switch's hose: cleaned.", "Igniter: glows", "The gas valve clicks.",
                        "The burners light", "Blower: a steady whirr, full.", "Lamp: 5 flashes",
                        "The work order is signed.", "a.jsonl: "}));
    CHECK(page.find("Igniter: glows") > page.find("hose: cleaned")); // not before
    CHECK(std::abs(reading_at(page, "pressure switch side")) < 0.02);
    CHECK(reading_at(page, "inducer side") < -0.6);
    CHECK(reading_at(page, "red on pressure_switch.in") > 24.0);
    CHECK(reading_at(page, "pressure switch side", "Igniter: glows") < -0.5);
    CHECK_THAT(cli_out({"replay", folder.file("a.jsonl")}), Catch::StartsWith("same: "));
}

TEST_CASE("an attempt worked in two sittings comes to the same bits as in one") {
    const TemporaryFolder folder;
    put_bytes(folder.file("1.txt"), kPluggedHose);
    put_bytes(folder.file("2.txt"), kCleared);
    put_bytes(folder.file("both.txt"), std::string(kPluggedHose) + kCleared);
    CHECK_THAT(cli_out({"play", "plugged-hose", folder.file("1.txt"), "--attempt", folder.file("a")}),
               Catch::Contains("left open"));
    CHECK_THAT(cli_out({"replay", folder.file("a")}), Catch::Contains("abandoned"));
    CHECK_THAT(cli_out({"play", "plugged-hose", folder.file("2.txt"), "--attempt", folder.file("a")}),
               Catch::Contains("Continued after "));
    cli_out({"play", "plugged-hose", folder.file("both.txt"), "--attempt", folder.file("b")});
    CHECK(last_mark(bytes_of(folder.file("a"))) == last_mark(bytes_of(folder.file("b"))));
    check_refused({"play", "plugged-hose", folder.file("2.txt"), "--attempt", folder.file("a")},
                  {"signed off", "nothing was overwritten"});
    check_refused({"play", "call-for-heat", folder.file("2.txt"), "--attempt", folder.file("a")}, {"ended"});
}

TEST_CASE("what stops all work ends the call, and is told") {
    const TemporaryFolder folder;
    put_bytes(folder.file("s.txt"), "burner-door off\nreplace gas_valve\nburner-door on\n");
    const std::string page =
        cli_out({"play", "plugged-hose", folder.file("s.txt"), "--attempt", folder.file("a")});
    CHECK(in_order(page, {"replace gas_valve", "stop work at ", "gas joint with the cock open",
                          "This call is over.", "2 actions"}));
    CHECK(page.find("left open") == std::string::npos);
    check_refused({"play", "plugged-hose", folder.file("s.txt"), "--attempt", folder.file("a")},
                  {"stop work", "nothing was overwritten"});
    CHECK_THAT(cli_out({"replay", folder.file("a")}), Catch::StartsWith("same: "));
}

TEST_CASE("an attempt cut at any byte goes on and loses nothing but the unfinished line") {
    const TemporaryFolder folder;
    put_bytes(folder.file("s.txt"), "burner-door off\nwait 25s\nthermostat-set 70F\nwait 1s\n");
    cli_out({"play", "call-for-heat", folder.file("s.txt"), "--attempt", folder.file("a")});
    const std::string whole = bytes_of(folder.file("a"));
    put_bytes(folder.file("quit.txt"), "look filter\n");
    for (std::size_t keep = 0; keep < whole.size();
         keep += keep < 40 || keep + 40 > whole.size() ? 3U : 41U) {
        INFO("cut after " << keep << " bytes of " << whole.size());
        put_bytes(folder.file("cut"), whole.substr(0, keep));
        cli_out({"play", "call-for-heat", folder.file("quit.txt"), "--attempt", folder.file("cut")});
        const std::string after = bytes_of(folder.file("cut"));
        const std::string kept = whole.substr(0, whole.rfind('\n', keep == 0 ? 0 : keep - 1) + 1);
        if (whole.find('\n') < keep)
            CHECK(after.compare(0, kept.size(), kept) == 0);
        CHECK_THAT(after, Catch::Contains("look filter"));
        CHECK_THAT(cli_out({"replay", folder.file("cut")}), Catch::Contains("same: "));
    }
    put_bytes(folder.file("other"), "my notes, without a line end");
    CHECK(cli({"play", "call-for-heat", folder.file("quit.txt"), "--attempt", folder.file("other")}).code ==
          2);
    CHECK(bytes_of(folder.file("other")) == "my notes, without a line end");
}

TEST_CASE("Ctrl-C in a long wait leaves an attempt that can be replayed and continued") {
    const TemporaryFolder folder;
    put_bytes(folder.file("s.txt"), "wait 24h\nwait 24h\nwait 24h\nwait 24h\nwait 24h\n");
    Surroundings around;
    around.interrupt_after_s = 0.4;
    const Ran ran =
        cli({"play", "call-for-heat", folder.file("s.txt"), "--attempt", folder.file("a")}, around);
    CHECK(ran.code == 130);
    CHECK_THAT(ran.out, Catch::Contains("left open"));
    CHECK_THAT(cli_out({"replay", folder.file("a")}), Catch::Contains("same: "));
}

TEST_CASE("a script stops at a refusal unless the line begins with a question mark") {
    const TemporaryFolder folder;
    put_bytes(folder.file("s.txt"), "?door-switch on\nburner-door off\nburner-door off\nwait 5s\n");
    const Ran ran = cli({"play", "call-for-heat", folder.file("s.txt")});
    CHECK(ran.code == 1);
    CHECK_THAT(ran.out, Catch::Contains("refused (line 1): The door switch is behind") &&
                            Catch::Contains("refused (line 3): The burner compartment door is already off."));
    CHECK(ran.out.find("wait 5s") == std::string::npos);
    put_bytes(folder.file("s.txt"), "wait until smell within 5s\n");
    CHECK(cli({"play", "call-for-heat", folder.file("s.txt")}).code == 1);
    put_bytes(folder.file("s.txt"), "wait 1s\n\nburnr-door off\n");
    check_refused({"play", "call-for-heat", folder.file("s.txt")}, {"line 3", "did you mean burner-door?"});
    check_refused({"play", "no-such-call"}, {"no-such-call"});
}

TEST_CASE("lines from a pipe are done without a prompt; mistakes are told and passed over") {
    const Ran ran = shell(
        "printf 'status\\nburner-door of\\nhelp clean\\nwait until lamp\\nundo\\nnotes\\n"
        "burner-door off\\nundo\\nchart\\norder\\nquit\\nwait 1h\\n' | lightoff_cli play call-for-heat");
    INFO(ran.out << ran.err);
    CHECK(ran.code == 1); // one was refused
    CHECK(in_order(ran.out, {"thermostat          heat", "refused: ", "pressure_hose",
                             "Lamp: one short wink every 3 seconds.", "nothing to undo", "CO alarm 0 ppm",
                             "is undone by: burner-door on", "What the lamp shows", "Work order"}));
    CHECK(ran.out.find("wait 1h") == std::string::npos);
    CHECK(ran.out.find("\x1b") == std::string::npos);
    CHECK(shell("lightoff_cli play call-for-heat < /dev/null").code == 0);

    const Ran closed = shell("lightoff_cli play call-for-heat <&-");
    CHECK(closed.code == 2);
    CHECK_THAT(closed.err, Catch::Contains("standard input can't be read"));
    CHECK(shell("echo 'wait 1min' | lightoff_cli play call-for-heat > /dev/full").code == 2);
    CHECK(shell("echo 'wait 1min' | lightoff_cli play call-for-heat --attempt /dev/full").code == 2);
}

TEST_CASE("on a terminal there is a prompt with the time, TAB completes, Ctrl-C empties the line") {
    setenv("LIGHTOFF_DATA", kScenarios.c_str(), 1);
    setenv("TERM", "xterm", 1);
    setenv("LSAN_OPTIONS", "suppressions=" LIGHTOFF_SOURCE_DIR "/tests/cli/libedit.leaks", 1);
    int terminal = -1;
    const pid_t child = forkpty(&terminal, nullptr, nullptr, nullptr);
    if (child == 0) {
        execl(LIGHTOFF_CLI, LIGHTOFF_CLI, "play", "call-for-heat", static_cast<char*>(nullptr));
        _exit(127);
    }
    std::string seen;
    const auto wait_for = [&](const std::string& text) {
        const std::size_t from = seen.size();
        while (seen.find(text, from > text.size() ? from - text.size() : 0) == std::string::npos) {
            pollfd ready{terminal, POLLIN, 0};
            char buffer[4096];
            if (poll(&ready, 1, 20000) <= 0)
                return false;
            const ssize_t got = read(terminal, buffer, sizeof buffer);
            if (got <= 0)
                return false;
            seen.append(buffer, static_cast<std::size_t>(got));
        }
        return true;
    };
    const auto type = [&](const std::string& text) {
        REQUIRE(write(terminal, text.data(), text.size()) == static_cast<ssize_t>(text.size()));
    };
    INFO(seen);
    CHECK(wait_for("0:00.0> "));
    type("thermostat-se\t"); // completed: the editor has the keyboard now
    CHECK(wait_for("t "));
    type("20\x03");
    CHECK(wait_for("`quit` leaves"));
    type("burner-d\tof\t\n");
    CHECK(wait_for("Burner door off"));
    CHECK(wait_for("0:05.0> "));
    type("quit\n");
    while (wait_for("\x01never"))
        continue;
    int status = 0;
    waitpid(child, &status, 0);
    close(terminal);
    INFO(seen);
    CHECK(WIFEXITED(status));
    CHECK(WEXITSTATUS(status) == 0);
}

TEST_CASE("actions lists every verb with its words") {
    const auto plain = cli_json({"actions", "--json"});
    const auto here = cli_json({"actions", "call-for-heat", "--json"});
    CHECK(plain.size() == here.size());
    CHECK(plain.size() > 60);
    bool leads = false;
    for (const auto& row : here) {
        for (const char* key : {"verb", "group", "words", "time_s", "hands", "help"})
            CHECK(row.contains(key));
        if (row["verb"] != "leads")
            continue;
        leads = true;
        CHECK(row["words"].size() == 2);
        CHECK(row["words"][0]["names"].size() > 50);
        CHECK(row["hands"] == 1);
    }
    CHECK(leads);
    CHECK_THAT(cli_out({"actions", "call-for-heat"}),
               Catch::Contains("leads POINT POINT") && Catch::Contains("pressure_hose"));
}

TEST_CASE("an instrument's name in a script stands for its last reading") {
    const TemporaryFolder folder;
    put_bytes(folder.file("none"), "as-found line-voltage multimeter\n");
    const Ran none = cli({"play", "call-for-heat", folder.file("none")});
    CHECK(none.code == 1);
    CHECK_THAT(none.out, Catch::Contains("Nothing has been read from that instrument yet."));

    put_bytes(folder.file("kept"),
              "wait 5s\nkeep co-alarm\nwait 5s\nkeep co-alarm\nas-found ambient-carbon-monoxide co-alarm\n");
    const std::string page =
        cli_out({"play", "call-for-heat", folder.file("kept"), "--attempt", folder.file("a")});
    const std::size_t bracket = page.rfind("] CO alarm");
    REQUIRE(bracket != std::string::npos);
    const std::size_t number = page.rfind('[', bracket) + 1;
    CHECK_THAT(bytes_of(folder.file("a")), Catch::Contains("as-found ambient-carbon-monoxide " +
                                                           page.substr(number, bracket - number) + "\""));
}
