// SPDX-License-Identifier: MIT
#include "cli.hpp"

using namespace lightoff::test;

/// docs/terminal.md shows commands and what they print. In its blocks a line "$ ..." is run by a shell in an
/// empty folder, one after the other; the lines below it must be what it prints, "..." standing for any
/// number of lines.
namespace {

struct Example {
    std::string command;
    std::vector<std::string> output;
};

std::vector<Example> examples_of(const std::string& text) {
    std::vector<Example> examples;
    std::istringstream lines(text);
    bool inside = false;
    for (std::string line; std::getline(lines, line);) {
        if (line.rfind("```", 0) == 0) {
            inside = line == "```console";
        } else if (inside && line.rfind("$ ", 0) == 0) {
            examples.push_back({line.substr(2), {}});
        } else if (inside && !examples.empty()) {
            examples.back().output.push_back(line);
        }
    }
    return examples;
}

/// Whether `got` is `wanted`, in which "..." stands for any lines.
bool matches(const std::vector<std::string>& wanted, const std::vector<std::string>& got, std::size_t w = 0,
             std::size_t g = 0) {
    if (w == wanted.size())
        return g == got.size();
    if (wanted[w] == "...") {
        for (std::size_t skip = g; skip <= got.size(); ++skip)
            if (matches(wanted, got, w + 1, skip))
                return true;
        return false;
    }
    return g < got.size() && wanted[w] == got[g] && matches(wanted, got, w + 1, g + 1);
}

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> all;
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);)
        all.push_back(line);
    return all;
}

} // namespace

TEST_CASE("the examples of docs/terminal.md print what the page says") {
    const std::vector<Example> examples =
        examples_of(bytes_of(std::string(LIGHTOFF_SOURCE_DIR) + "/docs/terminal.md"));
    REQUIRE(examples.size() >= 10);
    const TemporaryFolder folder;
    const std::string program_folder =
        std::string(LIGHTOFF_CLI).substr(0, std::string(LIGHTOFF_CLI).rfind('/'));
    for (const Example& example : examples) {
        const Ran ran = run_program({"/bin/bash", "-c",
                                     "cd '" + folder.path().string() + "' && PATH='" + program_folder +
                                         "':$PATH && export LIGHTOFF_DATA='" + kScenarios + "'\n" +
                                         "exec 2>&1\n" + example.command});
        INFO("$ " << example.command << "\n" << ran.out);
        CHECK(matches(example.output, lines_of(ran.out)));
    }
}

TEST_CASE("every command and every sum is in docs/terminal.md") {
    const std::string page = bytes_of(std::string(LIGHTOFF_SOURCE_DIR) + "/docs/terminal.md");
    for (const char* command : {"run", "circuit", "calc", "actions", "play", "grade", "check", "replay",
                                "conditions", "chart", "hash"}) {
        INFO(command);
        CHECK(page.find("lightoff-cli " + std::string(command)) != std::string::npos);
    }
    for (const auto& sum : cli_json({"calc", "--list", "--json"})) {
        INFO(sum["sum"]);
        CHECK(page.find("`" + sum["sum"].get<std::string>() + "`") != std::string::npos);
    }
}
