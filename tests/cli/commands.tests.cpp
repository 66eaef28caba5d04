// SPDX-License-Identifier: MIT
#include "cli.hpp"

using namespace lightoff::test;

TEST_CASE("help and version") {
    CHECK_THAT(cli_out({"--help"}),
               Catch::Contains("run") && Catch::Contains("calc") && Catch::Contains("replay"));
    CHECK_THAT(cli_out({"run", "--help"}), Catch::Contains("--trace"));
    CHECK_THAT(cli_out({"--version"}), Catch::StartsWith("lightoff-cli "));
}

TEST_CASE("conditions lists what a scenario may set, and a scenario that sets it is obeyed") {
    const auto list = cli_json({"conditions", "call-for-heat", "--json"});
    const auto find = [](const nlohmann::json& all, const std::string& name) {
        for (const auto& row : all)
            if (row["condition"] == name)
                return row;
        return nlohmann::json();
    };
    CHECK(list.size() > 300);
    CHECK(find(list, "gas.cock_open")["value"] == 1.0);
    CHECK(find(list, "heat.limit_set_point_shift")["unit"] == "K");
    CHECK(find(list, "wiring/board.R.joint/series_resistance")["unit"] == "ohm");
    for (const auto& row : list)
        CHECK(row["condition"].get<std::string>().rfind("wiring.series_resistance[", 0) != 0); // all by name

    const TemporaryFolder folder;
    std::string text = bytes_of(kScenarios + "/calls/call-for-heat.json");
    const std::string none = "\"overrides\": []";
    text.replace(text.find(none), none.size(),
                 R"("overrides": [{"condition": "gas.orifice_plugging[1]", "value": 0.25},)"
                 R"({"condition": "wiring/board.R.joint/series_resistance", "value": 12.5}])");
    put_bytes(folder.file("call.json"), text);
    const auto changed = cli_json({"conditions", folder.file("call.json"), "--json"});
    CHECK(find(changed, "gas.orifice_plugging[1]")["value"] == 0.25);
    CHECK(find(changed, "wiring/board.R.joint/series_resistance")["value"] == 12.5);
    CHECK_THAT(cli_out({"conditions", folder.file("call.json")}),
               Catch::Contains("12.5  ohm") && Catch::Contains("wiring/board.R.joint/series_resistance"));
}

TEST_CASE("hash is 16 digits") {
    const std::string text = cli_out({"hash", "call-for-heat", "--for=5"});
    REQUIRE(text.size() == 17);
    CHECK(text.find_first_not_of("0123456789abcdef") == 16);
}

TEST_CASE("chart is the same by the scenario's name, the equipment's name and either path") {
    const std::string chart = cli_out({"chart", "call-for-heat"});
    CHECK_THAT(chart, Catch::Contains("sensed") && Catch::Contains("timed") && Catch::Contains("commanded"));
    CHECK(chart == cli_out({"chart", "reference-80k-induced-draft"}));
    CHECK(chart == cli_out({"chart", kScenarios + "/calls/call-for-heat.json"}));
    CHECK(chart == cli_out({"chart", kScenarios + "/equipment/reference-80k-induced-draft.json"}));
}
