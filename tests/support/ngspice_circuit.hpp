// SPDX-License-Identifier: MIT
#pragma once
#include <complex>
#include <malloc.h>
#include <map>
#include <ngspice/sharedspice.h>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace lightoff::test {

/// libngspice in this process: one circuit at a time, loaded once and altered from one solution to the next.
/// It takes the decks that electrical::spice_deck writes.
class NgspiceCircuit {
public:
    NgspiceCircuit() {
        // Every command clears and frees a large table; do not give it back to the system each time.
        mallopt(M_TRIM_THRESHOLD, 256 << 20);
        mallopt(M_MMAP_THRESHOLD, 256 << 20);
        static const int started =
            ngSpice_Init(take_text, take_text, take_exit, nullptr, nullptr, nullptr, nullptr);
        if (started != 0)
            throw std::runtime_error("ngspice does not start");
    }

    void load(const std::string& deck) {
        if (loaded_)
            command("remcirc");
        values_ = values_of(deck);
        std::vector<std::string> lines = circuit_lines(deck);
        std::vector<char*> pointers;
        for (std::string& line : lines)
            pointers.push_back(line.data());
        pointers.push_back(nullptr);
        if (ngSpice_Circ(pointers.data()) != 0)
            throw std::runtime_error("ngspice refuses the deck: " + said());
        loaded_ = true;
    }

    /// Makes the loaded circuit the one of another deck that differs in values only; the number of values
    /// that had to be altered. Throws if anything else differs.
    int alter_to(const std::string& deck) {
        const Values wanted = values_of(deck);
        if (wanted.size() != values_.size())
            throw std::runtime_error("the decks have different elements");
        int altered = 0;
        auto now = values_.begin();
        for (const auto& [element, value] : wanted) {
            if (now->first != element)
                throw std::runtime_error("\"" + element + "\" stands where \"" + now->first + "\" stood");
            if (now->second != value) {
                command("alter " + element.substr(0, element.find(' ')) + " = " + value);
                now->second = value;
                ++altered;
            }
            ++now;
        }
        return altered;
    }

    /// Voltages of n1 ... n<count - 1>; [0] is 0.
    std::vector<std::complex<double>> ac(int count) { return run("ac lin 1 60 60", count); }
    std::vector<std::complex<double>> dc(int count) { return run("op", count); }

    /// Alters one value and solves at 60 Hz, nothing read (for benchmarks).
    void ac_with(const std::string& element, const std::string& value) {
        command("alter " + element + " = " + value);
        command("ac lin 1 60 60");
        command("destroy all");
    }

private:
    /// "name node node ... " and the last word, in order of the names.
    using Values = std::map<std::string, std::string>;

    static std::vector<std::string> circuit_lines(const std::string& deck) {
        std::vector<std::string> lines;
        std::istringstream text(deck);
        bool control = false;
        for (std::string line; std::getline(text, line);) {
            control = control || line == ".control";
            if (!control && line != ".end")
                lines.push_back(line);
            control = control && line != ".endc";
        }
        lines.emplace_back(".end");
        return lines;
    }

    static Values values_of(const std::string& deck) {
        Values values;
        for (const std::string& line : circuit_lines(deck)) {
            if (line.empty() || line[0] == '*' || line[0] == '.')
                continue;
            const auto last = line.rfind(' ');
            values[line.substr(0, last)] = line.substr(last + 1);
        }
        return values;
    }

    std::vector<std::complex<double>> run(const std::string& analysis, int count) {
        said().clear();
        command(analysis);
        std::vector<std::complex<double>> volts(1);
        for (int i = 1; i < count; ++i) {
            std::string name = "n" + std::to_string(i);
            const vector_info* vector = ngGet_Vec_Info(name.data());
            if (vector == nullptr || vector->v_length < 1)
                throw std::runtime_error("ngspice has no " + name + ": " + said());
            if (vector->v_compdata != nullptr)
                volts.emplace_back(vector->v_compdata[0].cx_real, vector->v_compdata[0].cx_imag);
            else
                volts.emplace_back(vector->v_realdata[0]);
        }
        command("destroy all");
        return volts;
    }

    static void command(std::string text) {
        if (ngSpice_Command(text.data()) != 0)
            throw std::runtime_error("ngspice refuses \"" + text + "\": " + said());
    }

    static std::string& said() {
        static std::string text;
        return text;
    }
    static int take_text(char* text, int, void*) {
        said() += std::string(text) + "\n";
        return 0;
    }
    static int take_exit(int, NG_BOOL, NG_BOOL, int, void*) { return 0; }

    Values values_;
    bool loaded_ = false;
};

} // namespace lightoff::test
