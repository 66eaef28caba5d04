// SPDX-License-Identifier: MIT
#pragma once
#include "files/attempt_log.hpp"
#include "files/bundle_loader.hpp"
#include "files/temporary_folder.hpp"
#include "lesson/begin_of.hpp"
#include "lesson/grade.hpp"
#include "support/program.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <filesystem>
#include <map>
#include <set>
#include <string>
#include <vector>

/// Calls worked by scripts through the real program, and their marks.
namespace lightoff::test {

using Lines = std::vector<std::string>;

inline Lines operator+(Lines a, const Lines& b) {
    a.insert(a.end(), b.begin(), b.end());
    return a;
}

/// A model script by its sections, which are introduced by comments: "# look", "# prove", "# mend", "#
/// close".
class ModelScript {
public:
    explicit ModelScript(const std::string& call) {
        std::ifstream file(std::string(LIGHTOFF_SOURCE_DIR) + "/scenarios/scripts/" + call + ".txt");
        INFO("scenarios/scripts/" << call << ".txt");
        REQUIRE(file.good());
        std::string section = "title";
        for (std::string line; std::getline(file, line); whole_.push_back(line))
            if (line.rfind("# ", 0) == 0 && !whole_.empty())
                section = line.substr(2);
            else
                sections_[section].push_back(line);
    }
    [[nodiscard]] const Lines& operator[](const std::string& section) const {
        INFO("section " << section);
        REQUIRE(sections_.count(section) == 1);
        return sections_.at(section);
    }
    [[nodiscard]] const Lines& whole() const { return whole_; }

private:
    std::map<std::string, Lines> sections_;
    Lines whole_;
};

/// Names of the calls of some kinds, in order.
inline Lines calls_of(const std::set<std::string>& kinds) {
    Lines names;
    for (const auto& entry :
         std::filesystem::directory_iterator(std::string(LIGHTOFF_SOURCE_DIR) + "/scenarios/calls"))
        if (kinds.count(nlohmann::json::parse(bytes_of(entry.path()))["kind"]) != 0)
            names.push_back(entry.path().stem());
    std::sort(names.begin(), names.end());
    return names;
}

/// A call whose attempts are marked; its hypothesis furnaces are made once.
class MarkedCall {
public:
    explicit MarkedCall(const std::string& name)
        : name_(name), bundle_(files::load_bundle(std::string(LIGHTOFF_SOURCE_DIR) + "/scenarios/calls/" +
                                                  name + ".json")),
          bank_(bundle_.site, lesson::begin_of(bundle_.site, bundle_.scenario, 0),
                lesson::real_faults(bundle_.site, bundle_.scenario)) {}

    /// The script's attempt. Lines that must not be refused fail the test if they are.
    [[nodiscard]] lesson::Log log(const Lines& script) const {
        const TemporaryFolder folder;
        std::string text;
        for (const std::string& line : script)
            text += line + "\n";
        put_bytes(folder.file("script.txt"), text);
        const std::string attempt = folder.file("attempt.jsonl");
        const Ran ran =
            run_program({LIGHTOFF_CLI, "play", name_, folder.file("script.txt"), "--attempt", attempt},
                        {{"LIGHTOFF_DATA=" + std::string(LIGHTOFF_SOURCE_DIR) + "/scenarios"}});
        INFO(text << ran.out << ran.err);
        REQUIRE(ran.code == 0);
        return files::log_of(files::read_attempt(attempt, furnace::kPhysicsVersion), attempt, bundle_.site);
    }
    /// And marked.
    lesson::Grade mark(const Lines& script) {
        return lesson::grade(bundle_.site, bundle_.scenario, bundle_.rubric, log(script), bank_);
    }
    [[nodiscard]] const lesson::Scenario& scenario() const { return bundle_.scenario; }
    [[nodiscard]] const lesson::Rubric& rubric() const { return bundle_.rubric; }
    [[nodiscard]] evidence::Bank& bank() { return bank_; }
    [[nodiscard]] const bench::Site& site() const { return bundle_.site; }
    [[nodiscard]] std::vector<evidence::RealFault> real() const {
        return lesson::real_faults(bundle_.site, bundle_.scenario);
    }

private:
    std::string name_;
    files::LoadedBundle bundle_;
    evidence::Bank bank_;
};

inline std::string account(const lesson::Grade& grade) {
    std::string text = "mark " + std::to_string(grade.mark) + "\n";
    for (const lesson::Line& line : grade.lines)
        text +=
            "  " + std::to_string(line.points) + " of " + std::to_string(line.of) + "  " + line.text + "\n";
    for (const lesson::Cap& cap : grade.caps)
        text += "  at most " + std::to_string(cap.most) + "  " + cap.text + "\n";
    return text;
}

} // namespace lightoff::test
