// SPDX-License-Identifier: MIT
#include "figures/page_check.hpp"

#include <algorithm>
#include <array>
#include <fstream>
#include <sstream>
#include <string_view>

namespace lightoff::figures {
namespace {

namespace fs = std::filesystem;

/// What stands between `open` and `close`, each time.
std::vector<std::string> between(const std::string& text, std::string_view open, char close) {
    std::vector<std::string> out;
    for (std::size_t at = text.find(open); at != std::string::npos; at = text.find(open, at)) {
        const std::size_t from = at + open.size();
        const std::size_t to = text.find(close, from);
        if (to == std::string::npos)
            break;
        out.push_back(text.substr(from, to - from));
        at = to + 1;
    }
    return out;
}

bool is_path(const std::string& word) {
    constexpr std::array<std::string_view, 5> tops{"sim/", "gui/", "tests/", "scenarios/", "docs/"};
    return word.find(' ') == std::string::npos &&
           std::any_of(tops.begin(), tops.end(), [&](auto top) { return word.rfind(top, 0) == 0; });
}

/// The same words with one space between them: a name may be broken over two lines of the page.
std::string joined(const std::string& words) {
    std::string out;
    std::istringstream in(words);
    std::string word;
    while (in >> word)
        out += (out.empty() ? "" : " ") + word;
    return out;
}

/// Files that the words of a figure name.
std::vector<std::string> files_in(const std::string& svg) {
    std::vector<std::string> out;
    for (const std::string& words : between(svg, "<desc>", '<')) {
        std::istringstream in(words);
        std::string word;
        while (in >> word) {
            const std::size_t from = word.find_first_not_of('(');
            const std::size_t to = word.find_last_not_of(".,:;)");
            if (from == std::string::npos || to == std::string::npos || to < from)
                continue;
            const std::string file = word.substr(from, to - from + 1);
            if (is_path(file))
                out.push_back(file);
        }
    }
    return out;
}

/// Whether one of the page's sources has a test case of that name.
bool is_test_case(const fs::path& source, const std::vector<std::string>& files, const std::string& name) {
    return std::any_of(files.begin(), files.end(), [&](const std::string& file) {
        if (file.find(".tests.cpp") == std::string::npos)
            return false;
        return text_of(source / file).find("TEST_CASE(\"" + name + "\"") != std::string::npos;
    });
}

} // namespace

std::string text_of(const fs::path& path) {
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

std::vector<std::string> missing_from_page(const fs::path& source, const std::string& page,
                                           const std::vector<Drawing>& figures) {
    std::vector<std::string> out;
    if (page.empty())
        return {"is empty or not there"};
    std::vector<std::string> files;
    for (const std::string& word : between(page, "`", '`'))
        if (is_path(word))
            files.push_back(word);
    for (const std::string& file : files)
        if (!fs::exists(source / file))
            out.push_back("names " + file + ", which is not there");
    for (const std::string& link : between(page, "](", ')'))
        if (link.rfind("http", 0) != 0 && link.rfind('#', 0) != 0 && !fs::exists(source / "docs" / link))
            out.push_back("links to " + link + ", which is not there");
    for (const std::string& words : between(page, "*test: ", '*')) {
        const std::string name = joined(words);
        if (!is_test_case(source, files, name))
            out.push_back("names a test case \"" + name + "\" that no test file it names has");
    }
    for (const Drawing& figure : figures) {
        for (const std::string& file : files_in(figure.svg))
            if (!fs::exists(source / file))
                out.push_back("shows figures/" + figure.name + ", which names " + file +
                              ", which is not there");
        if (page.find("(figures/" + figure.name + ")") == std::string::npos)
            out.push_back("does not show figures/" + figure.name);
    }
    return out;
}

std::vector<std::string> stale(const std::vector<Drawing>& figures, const fs::path& folder) {
    std::vector<std::string> out;
    std::vector<std::string> drawn;
    for (const Drawing& figure : figures) {
        drawn.push_back(figure.name);
        if (text_of(folder / figure.name) != figure.svg)
            out.push_back(figure.name + " is not what the program draws now");
    }
    if (fs::is_directory(folder))
        for (const auto& entry : fs::directory_iterator(folder)) {
            const std::string name = entry.path().filename().string();
            if (std::find(drawn.begin(), drawn.end(), name) == drawn.end())
                out.push_back(name + " is drawn by nobody");
        }
    return out;
}

} // namespace lightoff::figures
