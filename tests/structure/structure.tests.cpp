// SPDX-License-Identifier: MIT
#include "structure/rooms.hpp"
#include "structure/rules.hpp"
#include "structure/source_text.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

namespace fs = std::filesystem;
using namespace structure;

namespace {

const fs::path kSource = LIGHTOFF_SOURCE_DIR;

bool exists_here(std::string_view path) {
    return fs::is_regular_file(kSource / path);
}
bool always(std::string_view) {
    return true;
}

std::string read(const fs::path& path) {
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

std::vector<fs::path> sources_below(const fs::path& folder) {
    std::vector<fs::path> found;
    for (const auto& entry : fs::recursive_directory_iterator(folder))
        if (entry.path().extension() == ".hpp" || entry.path().extension() == ".cpp")
            found.push_back(entry.path());
    std::sort(found.begin(), found.end());
    return found;
}

/// How many rules one line breaks in a file of that path.
std::size_t count(std::string_view path, std::string_view line) {
    return breaches(path, line, always).size();
}

} // namespace

TEST_CASE("every source file keeps the rules of its room") {
    std::size_t files = 0;
    for (const char* top : {"sim", "gui"})
        for (const fs::path& file : sources_below(kSource / top)) {
            ++files;
            const std::string path = fs::relative(file, kSource).generic_string();
            for (const std::string& breach : breaches(path, read(file), exists_here))
                FAIL_CHECK(breach);
        }
    CHECK(files > 10); // an empty walk would prove nothing
}

TEST_CASE("every folder of sim is a known room") {
    for (const auto& entry : fs::directory_iterator(kSource / "sim"))
        if (entry.is_directory()) {
            INFO(entry.path());
            CHECK(find_room(entry.path().filename().string()));
        }
}

TEST_CASE("a room includes itself and what lies below") {
    CHECK(count("sim/draft/path.cpp", "#include \"draft/path.hpp\"\n#include \"units/convert.hpp\"") == 0);
    CHECK(count("sim/furnace/tick.cpp", "#include \"draft/path.hpp\"") == 0);
    CHECK(count("sim/coach/coach.cpp", "#include \"lesson/report.hpp\"") == 0);
    CHECK(count("gui/desk/desk.cpp", "#include \"gui/canvas/canvas.hpp\"\n#include \"files/bundle.hpp\"") ==
          0);
}

TEST_CASE("a room does not include siblings or what lies above") {
    CHECK(count("sim/units/convert.hpp", "#include \"draft/path.hpp\"") == 1);
    CHECK(count("sim/draft/path.cpp", "#include \"gas/gas.hpp\"") == 1);
    CHECK(count("sim/draft/path.cpp", "#  include \"furnace/state.hpp\"") == 1);
    CHECK(count("sim/furnace/tick.cpp", "#include \"faults/catalogue.hpp\"") == 1);
    CHECK(count("sim/instruments/meter.cpp", "#include \"faults/catalogue.hpp\"") == 1);
    CHECK(count("sim/bench/world.hpp", "#include \"evidence/causes.hpp\"") == 1);
    CHECK(count("sim/lesson/report.cpp", "#include \"gui/canvas/canvas.hpp\"") == 1);
    CHECK(count("gui/desk/desk.cpp", "#include \"cli/main.hpp\"") == 1);
    CHECK(count("sim/cellar/a.cpp", "") == 1);
}

TEST_CASE("an include goes by a room's name") {
    CHECK(count("sim/draft/path.cpp", "#include \"../gas/gas.hpp\"") == 1);
    CHECK(count("sim/draft/path.cpp", "#include \"path.hpp\"") == 1);
    CHECK(count("sim/draft/path.cpp", "#include PATH_HEADER") == 1);
    CHECK(breaches("sim/draft/path.cpp", "#include \"draft/none.hpp\"", [](auto) { return false; }).size() ==
          1);
}

TEST_CASE("headers that bring graphics, clocks, disks or foreign bits are refused where they must not be") {
    CHECK(count("sim/bench/world.hpp", "#include <SFML/Window.hpp>") == 1);
    CHECK(count("gui/canvas/canvas.cpp", "#include <SFML/Window.hpp>") == 1);
    CHECK(count("gui/platform/window.cpp", "#include <SFML/Window.hpp>") == 0);
    CHECK(count("gui/canvas/canvas.cpp", "#include <imgui/imgui.h>") == 0);
    CHECK(count("sim/bench/world.hpp", "#include <imgui.h>") == 1);
    CHECK(count("sim/cli/main.cpp", "#include <GL/gl.h>") == 1);
    CHECK(count("sim/cli/main.cpp", "#include <chrono>") == 1);
    CHECK(count("sim/lesson/attempt.cpp", "#include <fstream>") == 1);
    CHECK(count("sim/files/disk.cpp", "#include <fstream>\n#include <filesystem>") == 0);
    CHECK(count("sim/files/disk.cpp", "#include <iostream>") == 1);
    CHECK(count("sim/coach/coach.cpp", "#include <random>") == 1);
    CHECK(count("sim/evidence/causes.cpp", "#include <unordered_map>") == 1);
    CHECK(count("sim/files/reader.cpp", "#include <unordered_map>") == 0);
}

TEST_CASE("names that bring them are refused too") {
    CHECK(count("sim/draft/path.cpp", "double y = std::exp(x);") == 1);
    CHECK(count("sim/draft/path.cpp", "double y = ::std::fma(x, x, x);") == 1);
    CHECK(count("sim/draft/path.cpp", "double y = units::exp(std::sqrt(x)) + std::abs(x);") == 0);
    CHECK(count("sim/cli/main.cpp", "auto t = std::chrono::steady_clock::now();") == 1);
    CHECK(count("sim/gas/gas.cpp", "std::mt19937 g;") == 1);
    CHECK(count("gui/desk/desk.cpp", "sf::Window w;") == 1);
    CHECK(count("sim/bench/world.cpp", "std::unordered_map<int, int> m;") == 1);
}

TEST_CASE("comments and texts do not count") {
    CHECK(count("sim/draft/path.cpp", "// #include <chrono>\n/* std::exp\n#include <chrono> */") == 0);
    CHECK(count("sim/draft/path.cpp", "auto s = \"std::exp // not a comment\"; auto n = 65'536;") == 0);
    CHECK(count("sim/draft/path.cpp", "auto s = \"//\"; double y = std::exp(x);") == 1);
    CHECK(count("sim/draft/path.cpp", "auto s = R\"(\" std::exp)\"; double y = std::log(x);") == 1);
    CHECK(count("sim/draft/path.cpp", "auto c = '\"'; double y = std::exp(x);") == 1);
}
