// SPDX-License-Identifier: MIT
#include "cli.hpp"

using namespace lightoff::test;

TEST_CASE("calc takes any unit of a quantity") {
    const double inwc = calc({"orifice-flow", "diameter_in=0.082", "pressure_inwc=3.5"}, "flow_cfh");
    CHECK(calc({"orifice-flow", "diameter_mm=2.0828", "pressure_Pa=871.8111850000001"}, "flow_cfh") ==
          Approx(inwc).epsilon(1e-9)); // 1 in. w.c. = 249.08891 Pa (NIST SP 811)
    CHECK(calc({"fan-laws", "speed_before_rpm=1000", "speed_after_rpm=500"}, "flow_ratio") == 0.5);
}

TEST_CASE("calc says what it was given, defaults too, and whose formula it is") {
    const auto json = cli_json({"calc", "orifice-flow", "diameter_in=0.082", "pressure_inwc=3.5"});
    CHECK(json["given"]["pressure_inwc"] == 3.5);
    CHECK(json["given"]["discharge_coefficient"] == 0.9);
    CHECK_THAT(json["formula"].get<std::string>(), Catch::Contains("1658.5"));
    CHECK_FALSE(json["source"].get<std::string>().empty());
    // What was not given and has no default is left out, with all that needs it.
    const auto laws = cli_json({"calc", "fan-laws", "speed_before_rpm=1", "speed_after_rpm=2"});
    CHECK_FALSE(laws["given"].contains("flow_cfm"));
    CHECK_FALSE(laws["results"].contains("flow_cfm"));
}

TEST_CASE("calc --list --json tells all there is to know of each sum") {
    const auto list = cli_json({"calc", "--list", "--json"});
    CHECK(list.size() >= 20);
    for (const auto& sum : list) {
        INFO(sum.dump());
        CHECK_FALSE(sum["what"].get<std::string>().empty());
        CHECK_FALSE(sum["formula"].get<std::string>().empty());
        CHECK_FALSE(sum["source"].get<std::string>().empty());
        CHECK_FALSE(sum["keys"].empty());
        CHECK_FALSE(sum["results"].empty());
        for (const auto& [key, about] : sum["keys"].items()) {
            if (about.contains("allowed"))
                continue;
            CHECK(about["lowest"] < about["highest"]);
            if (!about.contains("units")) // a pure number
                continue;
            // The key ends in one of its units.
            bool ends = false;
            for (const auto& unit : about["units"])
                ends = ends ||
                       (key.size() > unit.get<std::string>().size() &&
                        key.substr(key.size() - unit.get<std::string>().size()) == unit.get<std::string>());
            CHECK(ends);
        }
    }
}

TEST_CASE("every sum runs at the edges of its own limits, and its results are those that the list names") {
    for (const auto& sum : cli_json({"calc", "--list", "--json"}))
        for (const char* edge : {"lowest", "highest"}) {
            std::vector<std::string> words{"calc", sum["sum"].get<std::string>()};
            for (const auto& [key, about] : sum["keys"].items()) {
                if (about.contains("allowed"))
                    words.push_back(key + "=" + about["default"].get<std::string>());
                else
                    words.push_back(key + "=" + about[edge].dump());
            }
            const Ran ran = cli(words);
            INFO(sum["sum"] << " " << edge << " " << ran.err);
            // Limits of one value can be impossible together with those of another; that is then said.
            if (ran.code == 2) {
                CHECK_THAT(ran.err, Catch::Contains("allowed"));
                continue;
            }
            REQUIRE(ran.code == 0);
            const auto json = nlohmann::json::parse(ran.out);
            CHECK(json["results"].size() == sum["results"].size());
            for (const auto& name : sum["results"]) {
                REQUIRE(json["results"].contains(name.get<std::string>()));
                CHECK(
                    json["results"][name.get<std::string>()].is_number()); // JSON has no number for infinity
            }
        }
}

TEST_CASE("the list for people fits 80 columns") {
    const std::string page = cli_out({"calc", "--list"});
    CHECK_THAT(page, Catch::Contains("orifice-flow") && Catch::Contains("capacitance_uF"));
    std::istringstream lines(page);
    for (std::string line; std::getline(lines, line);) {
        INFO(line);
        CHECK(line.size() <= 80);
    }
}

TEST_CASE("calc refuses what it can't use, and says what is allowed") {
    const std::string drill = "diameter_in=0.082";
    check_refused({"calc"}, {"missing", "--list"});
    check_refused({"calc", "--list", "orifice-flow"}, {"takes no name"});
    check_refused({"calc", "orifice-flwo"}, {"no sum \"orifice-flwo\"", "did you mean orifice-flow?"});
    check_refused({"calc", "zzz"}, {"--list"});
    check_refused({"calc", "orifice-flow", drill, "presure_inwc=3"}, {"did you mean pressure_inwc?"});
    check_refused({"calc", "orifice-flow", drill, "colour=3"}, {"it takes diameter_in, pressure_inwc"});
    check_refused({"calc", "orifice-flow", drill, "pressure=3"}, {"needs its unit", "pressure_inwc"});
    check_refused({"calc", "orifice-flow", drill, "pressure_in=3"}, {"takes no \"pressure_in\""});
    check_refused({"calc", "orifice-flow", drill, "pressure_inwc"}, {"key=value"});
    check_refused({"calc", "orifice-flow", drill}, {"pressure_inwc is missing"});
    check_refused({"calc", "orifice-flow", drill, "pressure_inwc=3", "pressure_inwc=3"}, {"once"});
    check_refused({"calc", "orifice-flow", drill, "pressure_inwc=3", "pressure_Pa=3"}, {"once"});
    for (const char* bad : {"", "x", "3.5x", "3,5", "nan", "inf", "-inf", "1e999", " 3", "0x10", "3.5.1"})
        check_refused({"calc", "orifice-flow", drill, std::string("pressure_inwc=") + bad},
                      {"pressure_inwc: found"});
    check_refused({"calc", "orifice-flow", drill, "pressure_inwc=-1"}, {"found -1", "allowed 0 to 30"});
    check_refused({"calc", "orifice-flow", drill, "pressure_psi=2"},
                  {"pressure_psi: found 2", "allowed 0 to 1.08"});
    check_refused({"calc", "co-air-free", "carbon_monoxide_ppm=50", "oxygen_pct=20.9"},
                  {"allowed 0 to 20.8"});
    check_refused({"calc", "flue-gas", "fuel=coal", "excess_air_pct=10"}, {"coal", "natural-gas"});
    check_refused({"calc", "excess-air-from-co2", "carbon_dioxide_pct=13"}, {"11.9"});
    check_refused({"calc", "flue-loss", "oxygen_pct=7", "flue_F=60", "air_F=70"}, {"colder"});
    check_refused({"calc", "conductor-resistance", "gauge=18.5", "length_ft=1"}, {"whole"});
    check_refused({"calc", "meter-clocking", "dial_ft3=2", "turn_s=0"}, {"allowed 0.1"});
}
