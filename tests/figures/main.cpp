// SPDX-License-Identifier: MIT
#include "figures/figures.hpp"
#include "figures/page_check.hpp"

#include <exception>
#include <filesystem>
#include <fstream>
#include <iostream>

/// figures write FOLDER: draws every figure of docs/physics.md into it.
/// figures check FOLDER: draws them there, compares them with docs/figures byte for byte, and checks that
/// what docs/physics.md names is there.
namespace {

namespace fs = std::filesystem;
using namespace lightoff::figures;

std::vector<Drawing> every_figure() {
    std::vector<Drawing> all;
    for (const auto& some : {gas_and_flue_figures(), air_figures(), electrical_figures(), motor_figures(),
                             igniter_figures(), call_figures(), lamp_figures()})
        all.insert(all.end(), some.begin(), some.end());
    return all;
}

void write(const std::vector<Drawing>& figures, const fs::path& folder) {
    fs::create_directories(folder);
    for (const Drawing& figure : figures)
        std::ofstream(folder / figure.name, std::ios::binary) << figure.svg;
}

int check(const fs::path& folder) {
    const fs::path source = LIGHTOFF_SOURCE_DIR;
    const std::vector<Drawing> figures = every_figure();
    write(figures, folder);
    std::vector<std::string> wrong = stale(figures, source / "docs/figures");
    if (!wrong.empty())
        wrong.push_back("to bring docs/figures up to date: bin/figures write " +
                        (source / "docs/figures").string() + " (in the build folder)");
    for (const std::string& name : missing_from_page(source, text_of(source / "docs/physics.md"), figures))
        wrong.push_back("docs/physics.md: " + name);
    for (const std::string& line : wrong)
        std::cerr << line << '\n';
    if (wrong.empty())
        std::cout << figures.size() << " figures are up to date\n";
    return wrong.empty() ? 0 : 1;
}

} // namespace

int main(int argc, char** argv) {
    const std::vector<std::string> words(argv, argv + argc);
    try {
        if (words.size() == 3 && words[1] == "write") {
            write(every_figure(), words[2]);
            return 0;
        }
        if (words.size() == 3 && words[1] == "check")
            return check(words[2]);
    } catch (const std::exception& error) {
        std::cerr << error.what() << '\n';
        return 1;
    }
    std::cerr << "figures write FOLDER | figures check FOLDER\n";
    return 2;
}
