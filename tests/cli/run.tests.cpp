// SPDX-License-Identifier: MIT
#include "cli.hpp"
#include "support/csv.hpp"

#include <set>

using namespace lightoff::test;

TEST_CASE("run tells the sequence and the settled readings") {
    const std::string page = cli_out({"run", "call-for-heat"});
    // Order of the sequence: common practice, no source.
    std::size_t at = 0;
    for (const char* step : {"thermostat closes R-W", "inducer turns", "pressure switch closes", "Prepurge",
                             "Igniter warm-up", "gas valve opens", "first burner lights", "blower turns"}) {
        const std::size_t found = page.find(step, at);
        INFO(step);
        REQUIRE(found != std::string::npos);
        at = found;
    }
    CHECK_THAT(page, Catch::Contains("State at 900.00 s") && Catch::Contains("Electrical") &&
                         Catch::Contains("temperature rise") && Catch::Contains("°F"));
    CHECK(page.find('\x1b') == std::string::npos); // colour is for terminals
}

TEST_CASE("run's page fits 80 columns") {
    std::istringstream lines(cli_out({"run", "call-for-heat"}));
    for (std::string line; std::getline(lines, line);) {
        std::size_t columns = 0;
        for (const char c : line)
            columns += (static_cast<unsigned char>(c) & 0xC0U) != 0x80U ? 1U : 0U;
        INFO(line);
        CHECK(columns <= 80);
    }
}

TEST_CASE("run --json has every reading under a key that ends in its unit") {
    const auto json = cli_json({"run", "call-for-heat", "--json"});
    CHECK(json["time_s"] == 900.0);
    CHECK(json["interrupted"] == false);
    CHECK(json["milestones"].size() > 10);
    CHECK(json["milestones"][0].contains("time_s"));
    const std::set<std::string> suffixes{"V",   "A",    "uA", "W",   "inwc", "rpm", "cfh",
                                         "cfm", "Btuh", "s",  "pct", "ppm",  "F",   "F_difference"};
    std::set<std::string> keys;
    for (const auto& [group, readings] : json["readings"].items())
        for (const auto& [key, value] : readings.items()) {
            INFO(key);
            CHECK(value.is_number());
            const auto ends_in = [&key = key](const std::string& s) {
                return key.size() > s.size() + 1 && key.substr(key.size() - s.size() - 1) == "_" + s;
            };
            CHECK(std::any_of(suffixes.begin(), suffixes.end(), ends_in));
            CHECK(keys.insert(key).second);
        }
    // Settled targets of the reference furnace (teaching values): the program shows the furnace, not
    // something else.
    CHECK(json["readings"]["gas_and_flame"]["manifold_pressure_inwc"].get<double>() ==
          Approx(3.5).margin(0.05));
    CHECK(json["readings"]["air_and_heat"]["temperature_rise_F_difference"].get<double>() ==
          Approx(52.5).margin(4));
}

TEST_CASE("the trace has a unit in every heading that needs one, and a row every half second") {
    const TemporaryFolder folder;
    const std::string file = folder.file("t.csv");
    cli_out({"run", "call-for-heat", "--for=60", "--trace", file});
    std::istringstream first(bytes_of(file));
    std::string head;
    std::getline(first, head);
    const std::vector<std::string> names = split_csv_line(head);
    REQUIRE(names.size() > 60);
    CHECK(names[0] == "time (s)");
    const auto has = [&](const std::string& name) {
        return std::find(names.begin(), names.end(), name) != names.end();
    };
    CHECK(has("temperature rise (°F)"));
    CHECK(has("suction at the port (in. w.c.)"));
    CHECK(has("draft.port_suction (Pa)"));
    CHECK(has("power.flame_current (A)"));
    CHECK(std::set<std::string>(names.begin(), names.end()).size() == names.size());

    const std::vector<CsvRow> rows = read_csv(file);
    REQUIRE(rows.size() == 121); // 0, 0.5 ... 60
    CHECK(rows[1].at("time (s)") == "0.5");
    CHECK(rows.back().at("time (s)") == "60");
    // The same quantity in trade units and in SI: 1 in. w.c. = 249.08891 Pa (NIST SP 811).
    const CsvRow& row = rows[60];
    CHECK(std::stod(row.at("draft.port_suction (Pa)")) ==
          Approx(249.08891 * std::stod(row.at("suction at the port (in. w.c.)"))).epsilon(1e-6));
    // Written again, it replaces what was there.
    cli_out({"run", "call-for-heat", "--for=10", "--trace", file, "--trace-every=5"});
    CHECK(read_csv(file).size() == 3);
}

TEST_CASE("the way a run is looked at does not change it") {
    const TemporaryFolder folder;
    const auto plain = cli_json({"run", "call-for-heat", "--for=120", "--json"});
    const auto traced = cli_json({"run", "call-for-heat", "--for=120", "--json",
                                  "--trace=" + folder.file("t.csv"), "--trace-every=0.05"});
    CHECK(plain == traced);
    CHECK(cli_out({"hash", "call-for-heat", "--for=120"}) == plain["world_hash"].get<std::string>() + "\n");
}

TEST_CASE("a seed gives parts of its own, always the same") {
    const std::string nominal = cli_out({"hash", "call-for-heat", "--for=60"});
    const std::string seven = cli_out({"hash", "call-for-heat", "--for=60", "--seed=7"});
    CHECK(nominal != seven);
    CHECK(seven == cli_out({"hash", "call-for-heat", "--for=60", "--seed=7"}));
    CHECK(seven != cli_out({"hash", "call-for-heat", "--for=60", "--seed=8"}));
}

TEST_CASE("Ctrl-C ends a run with what there is so far") {
    const TemporaryFolder folder;
    const std::string file = folder.file("t.csv");
    const Ran ran = cli({"run", "call-for-heat", "--for=604800", "--trace", file}, {{}, {}, 0.5});
    CHECK(ran.code == 130);
    CHECK(ran.err.empty());
    CHECK_THAT(ran.out, Catch::Contains("Stopped by hand at") && Catch::Contains("outdoors"));
    CHECK(bytes_of(file).substr(bytes_of(file).size() - 2) == "\r\n"); // no half row
}

TEST_CASE("on a terminal a status line is drawn and taken away again") {
    const Ran ran = run_program({"/usr/bin/script", "-qec",
                                 std::string("stty cols 80; LIGHTOFF_DATA='") + kScenarios + "' '" +
                                     LIGHTOFF_CLI + "' run call-for-heat --for 60",
                                 "/dev/null"},
                                {{"TERM=xterm"}, {}, 0.0});
    REQUIRE(ran.code == 0);
    CHECK_THAT(ran.out,
               Catch::Contains("\x1b[1mSequence") && Catch::Contains("█") && Catch::Contains("lamp count 1"));
    // Each drawing begins at the left edge with the line wiped, stays below 80 columns, and never ends in a
    // line feed.
    std::size_t drawings = 0;
    const std::string bar = "░";
    std::size_t start = 0;
    for (std::size_t end; (end = ran.out.find("\r\x1b[K", start)) != std::string::npos; start = end + 4) {
        const std::string part = ran.out.substr(start, end - start);
        if (part.find(bar) == std::string::npos)
            continue;
        ++drawings;
        CHECK(part.find('\n') == std::string::npos);
        std::size_t columns = 0;
        for (std::size_t i = 0; i < part.size(); ++i) {
            if (part[i] == '\x1b')
                i = part.find('m', i);
            else
                columns += (static_cast<unsigned char>(part[i]) & 0xC0U) != 0x80U ? 1U : 0U;
        }
        CHECK(columns < 80);
    }
    CHECK(drawings > 20);
    // Colours can be had off.
    const Ran grey = run_program(
        {"/usr/bin/script", "-qec",
         std::string("LIGHTOFF_DATA='") + kScenarios + "' '" + LIGHTOFF_CLI + "' run call-for-heat --for 1",
         "/dev/null"},
        {{"TERM=xterm", "NO_COLOR=1"}, {}, 0.0});
    CHECK(grey.out.find("\x1b[1m") == std::string::npos);
}
