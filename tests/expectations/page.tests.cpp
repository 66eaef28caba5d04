// SPDX-License-Identifier: MIT
#define CATCH_CONFIG_EXTERNAL_INTERFACES
#include "expectations/page.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string_view>
#include <utility>

namespace {

using lightoff::test::Statement;

struct Chapter {
    std::string_view group;
    std::string_view title;
};
constexpr std::array kChapters{
    Chapter{"healthy", "A furnace that is sound"},
    Chapter{"power", "Power and 24 volts"},
    Chapter{"call", "Thermostat and its cable"},
    Chapter{"draft", "Draft"},
    Chapter{"ignition", "Ignition"},
    Chapter{"gas", "Gas"},
    Chapter{"flame sense", "Flame sensing"},
    Chapter{"air", "Heat and air"},
    Chapter{"limits", "Limit and rollout"},
    Chapter{"meters", "What meters do and what is done to them"},
};
constexpr std::string_view kOfThePage = "page"; ///< cases about the page, no statements
constexpr std::string_view kPractice = "common practice, no source";
constexpr std::string_view kPublished = "published: ";

bool is_source(const std::string& tag) {
    return tag == kPractice || tag.rfind(kPublished, 0) == 0;
}

Statement statement_of(const Catch::TestCaseInfo& info) {
    Statement s;
    s.text = info.name;
    for (const std::string& tag : info.tags)
        (is_source(tag) ? s.source : s.group) = tag;
    if (info.tags.size() != 2 || s.source.empty() || s.group.empty())
        throw std::invalid_argument('"' + s.text + "\" needs a chapter and a source as its two tags");
    return s;
}

} // namespace

namespace lightoff::test {

std::vector<Statement> statements() {
    std::vector<Catch::TestCaseInfo> infos;
    for (const Catch::TestCase& test : Catch::getRegistryHub().getTestCaseRegistry().getAllTests())
        if (std::find(test.tags.begin(), test.tags.end(), kOfThePage) == test.tags.end())
            infos.push_back(test.getTestCaseInfo());
    std::sort(infos.begin(), infos.end(), [](const auto& a, const auto& b) {
        return std::pair<std::string, std::size_t>(a.lineInfo.file, a.lineInfo.line) <
               std::pair<std::string, std::size_t>(b.lineInfo.file, b.lineInfo.line);
    });
    std::vector<Statement> all;
    for (const Catch::TestCaseInfo& info : infos)
        all.push_back(statement_of(info));
    return all;
}

std::string page() {
    const std::vector<Statement> all = statements();
    std::ostringstream out;
    out << "# What a technician would expect\n\n"
        << all.size()
        << " statements on the reference furnace: a situation, and what is then read, seen or heard. Each is "
           "a test of"
           " the same\nname in `tests/expectations/`. It arrives at the furnace, works with hands and "
           "instruments as"
           " anybody can, and reads the\ninstruments' windows, the lamp and the captions, nothing else.\n\n"
           "The tests make this page: `bin/test_expectations page` in the build folder prints it, and a test "
           "fails"
           " when it differs.\n";
    for (const Chapter& chapter : kChapters) {
        out << "\n## " << chapter.title << "\n\n| situation: reading | source |\n|---|---|\n";
        for (const Statement& s : all)
            if (s.group == chapter.group)
                out << "| " << s.text << " | " << s.source << " |\n";
    }
    return out.str();
}

} // namespace lightoff::test

using namespace lightoff::test;

TEST_CASE("docs/expectations.md lists the statements", "[page]") {
    std::ifstream file(std::string(LIGHTOFF_SOURCE_DIR) + "/docs/expectations.md");
    std::ostringstream text;
    text << file.rdbuf();
    CHECK(text.str() == page());
}

TEST_CASE("at least eighty statements, each in a chapter of the page", "[page]") {
    const std::vector<Statement> all = statements();
    CHECK(all.size() >= 80);
    for (const Statement& s : all) {
        INFO(s.text);
        CHECK(std::any_of(kChapters.begin(), kChapters.end(),
                          [&](const Chapter& chapter) { return chapter.group == s.group; }));
    }
}
