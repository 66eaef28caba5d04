// SPDX-License-Identifier: MIT
#pragma once
#include "files/temporary_folder.hpp"
#include "support/program.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <string>
#include <vector>

/// The real program, started as a user starts it.
namespace lightoff::test {

inline const std::string kScenarios = std::string(LIGHTOFF_SOURCE_DIR) + "/scenarios";

inline Ran cli(std::vector<std::string> words, Surroundings around = {}) {
    words.insert(words.begin(), LIGHTOFF_CLI);
    around.environment.push_back("LIGHTOFF_DATA=" + kScenarios);
    return run_program(std::move(words), around);
}

/// Runs it, wants success and silence on standard error.
inline std::string cli_out(const std::vector<std::string>& words) {
    const Ran ran = cli(words);
    INFO(ran.err);
    CHECK(ran.err.empty());
    REQUIRE(ran.code == 0);
    return ran.out;
}

inline nlohmann::json cli_json(const std::vector<std::string>& words) {
    return nlohmann::json::parse(cli_out(words));
}

/// Wants exit status 2 and one line on standard error that holds all of `parts`.
inline void check_refused(const std::vector<std::string>& words, const std::vector<std::string>& parts,
                          const Surroundings& around = {}) {
    const Ran ran = cli(words, around);
    std::string shown;
    for (const std::string& word : words)
        shown += " " + word;
    INFO(shown << "\n" << ran.err);
    CHECK(ran.code == 2);
    CHECK(ran.err.rfind("lightoff-cli: ", 0) == 0);
    CHECK(ran.err.find('\n') == ran.err.size() - 1);
    for (const std::string& part : parts)
        CHECK_THAT(ran.err, Catch::Contains(part));
}

/// A result of `calc`.
inline double calc(std::vector<std::string> words, const std::string& result) {
    words.insert(words.begin(), "calc");
    const nlohmann::json json = cli_json(words);
    INFO(json.dump());
    REQUIRE(json["results"].contains(result));
    return json["results"][result].get<double>();
}

} // namespace lightoff::test
