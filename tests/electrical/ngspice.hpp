// SPDX-License-Identifier: MIT
#pragma once
#include <complex>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <memory>
#include <stdexcept>
#include <string>
#include <unistd.h>
#include <vector>

namespace lightoff::test {

/// A folder that goes away with the object.
class TemporaryFolder {
public:
    TemporaryFolder() {
        std::string pattern = (std::filesystem::temp_directory_path() / "lightoff-XXXXXX").string();
        if (mkdtemp(pattern.data()) == nullptr)
            throw std::runtime_error("no temporary folder");
        path_ = pattern;
    }
    ~TemporaryFolder() { std::filesystem::remove_all(path_); }
    TemporaryFolder(const TemporaryFolder&) = delete;
    TemporaryFolder& operator=(const TemporaryFolder&) = delete;
    [[nodiscard]] const std::filesystem::path& path() const { return path_; }

private:
    std::filesystem::path path_;
};

/// What `ngspice -b` says about a deck.
inline std::string run_ngspice(const std::string& deck) {
    const TemporaryFolder folder;
    const auto file = folder.path() / "deck.cir";
    std::ofstream(file) << deck;
    const std::string command = "ngspice -b " + file.string() + " 2>&1";
    const std::unique_ptr<FILE, int (*)(FILE*)> pipe(popen(command.c_str(), "r"), pclose);
    if (!pipe)
        throw std::runtime_error("ngspice does not start");
    std::string text;
    char buffer[4096];
    while (std::fgets(buffer, sizeof buffer, pipe.get()) != nullptr)
        text += buffer;
    return text;
}

/// The value in the line "name = re,im" or "name = re".
inline std::complex<double> printed_value(const std::string& text, const std::string& name) {
    const std::string key = "\n" + name + " = ";
    const auto at = text.find(key);
    if (at == std::string::npos)
        throw std::runtime_error("ngspice printed no " + name + ":\n" + text);
    const char* from = text.c_str() + at + key.size();
    char* after = nullptr;
    const double re = std::strtod(from, &after);
    return {re, *after == ',' ? std::strtod(after + 1, nullptr) : 0.0};
}

/// Every node voltage of an exported deck, by node index; [0] is 0.
inline std::vector<std::complex<double>> node_voltages_by_ngspice(const std::string& deck, int node_count) {
    const std::string text = run_ngspice(deck);
    std::vector<std::complex<double>> volts(1);
    for (int i = 1; i < node_count; ++i)
        volts.push_back(printed_value(text, "v(n" + std::to_string(i) + ")"));
    return volts;
}

} // namespace lightoff::test
