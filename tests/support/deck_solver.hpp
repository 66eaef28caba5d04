// SPDX-License-Identifier: MIT
#pragma once
#include <cmath>
#include <complex>
#include <cstdlib>
#include <map>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace lightoff::test {

/// Solves an exported deck by modified nodal analysis (C.-W. Ho, A. Ruehli, P. Brennan 1975, from memory) in
/// long double, 11 bits more than ngspice has. On a piece of wire that hangs on picofarads only, ngspice
/// loses its digits: the hundreds of siemens of a joint stand in one sum with the billionth of a siemens of a
/// stray. This solver says who is right there.
class DeckSolver {
public:
    using Number = std::complex<long double>;

    DeckSolver(const std::string& deck, bool ac) : ac_(ac) {
        std::istringstream text(deck);
        for (std::string line; std::getline(text, line) && line != ".control";)
            if (!line.empty() && line[0] != '*' && line[0] != '.')
                read(line);
        for (std::size_t i = 0; i < lines_.size(); ++i) // currents of voltage sources come after the nodes
            if (kind(i) == 'V' || kind(i) == 'E')
                branch_[lines_[i][0]] = nodes_.size() + branch_.size();
        const std::size_t n = nodes_.size() + branch_.size();
        a_.assign(n, std::vector<Number>(n + 1));
        for (std::size_t i = 0; i < lines_.size(); ++i)
            stamp(i);
        eliminate();
    }

    [[nodiscard]] std::complex<double> volts(const std::string& node) const {
        const Number x = a_[nodes_.at(node)].back();
        return {static_cast<double>(x.real()), static_cast<double>(x.imag())};
    }

private:
    [[nodiscard]] char kind(std::size_t i) const { return lines_[i][0][0]; }
    [[nodiscard]] long double value(std::size_t i) const {
        return std::strtold(lines_[i].back().c_str(), nullptr);
    }

    void read(const std::string& line) {
        std::istringstream words(line);
        std::vector<std::string> split;
        for (std::string word; words >> word;)
            split.push_back(word);
        const std::size_t ends = split[0][0] == 'E' || split[0][0] == 'G' ? 4 : 2;
        for (std::size_t k = 1; k <= ends; ++k)
            if (split[k] != "0")
                nodes_.emplace(split[k], nodes_.size());
        lines_.push_back(std::move(split));
    }

    /// Adds to row and column of two nodes or branches; ground has neither.
    void add(const std::string& row, const std::string& column, Number y) {
        if (row != "0" && column != "0")
            a_[nodes_.at(row)][nodes_.at(column)] += y;
    }
    void add_right(const std::string& row, Number y) {
        if (row != "0")
            a_[nodes_.at(row)].back() += y;
    }
    void stamp_admittance(const std::vector<std::string>& w, Number y) {
        add(w[1], w[1], y);
        add(w[2], w[2], y);
        add(w[1], w[2], -y);
        add(w[2], w[1], -y);
    }
    /// Current of branch `column` flows from a through the branch to b.
    void stamp_current(const std::string& a, const std::string& b, std::size_t column, Number share) {
        if (a != "0")
            a_[nodes_.at(a)][column] += share;
        if (b != "0")
            a_[nodes_.at(b)][column] -= share;
    }
    void stamp_difference(std::size_t row, const std::string& a, const std::string& b, Number share) {
        if (a != "0")
            a_[row][nodes_.at(a)] += share;
        if (b != "0")
            a_[row][nodes_.at(b)] -= share;
    }

    void stamp(std::size_t i) {
        constexpr long double omega = 2.0L * 3.14159265358979323846264338327950288L * 60.0L;
        const std::vector<std::string>& w = lines_[i];
        switch (w[0][0]) {
        case 'R':
            return stamp_admittance(w, 1.0L / value(i));
        case 'C':
            return stamp_admittance(w, Number(0.0L, omega * value(i)));
        case 'L':
            return stamp_admittance(w, Number(0.0L, -1.0L / (omega * value(i))));
        case 'I': // drives current from its first node through itself to the second
            add_right(w[1], -value(i));
            return add_right(w[2], value(i));
        case 'G':
            add(w[1], w[3], value(i));
            add(w[1], w[4], -value(i));
            add(w[2], w[3], -value(i));
            return add(w[2], w[4], value(i));
        case 'F':
            return stamp_current(w[1], w[2], branch_.at(w[3]), value(i));
        case 'V':
        case 'E': {
            const std::size_t row = branch_.at(w[0]);
            stamp_current(w[1], w[2], row, 1.0L);
            stamp_difference(row, w[1], w[2], 1.0L);
            if (w[0][0] == 'E')
                stamp_difference(row, w[3], w[4], -value(i));
            else
                a_[row].back() = source(w);
            return;
        }
        default:
            throw std::runtime_error("no such element: " + w[0]);
        }
    }

    /// "V a b DC 1" or "V a b DC 0 AC 120 90".
    [[nodiscard]] Number source(const std::vector<std::string>& w) const {
        if (!ac_)
            return std::strtold(w[4].c_str(), nullptr);
        if (w.size() < 8)
            return 0.0L;
        const long double size = std::strtold(w[6].c_str(), nullptr);
        return w[7] == "90" ? Number(0.0L, size) : Number(size);
    }

    void eliminate() {
        const std::size_t n = a_.size();
        for (std::size_t c = 0; c < n; ++c) {
            std::size_t best = c;
            for (std::size_t r = c + 1; r < n; ++r)
                if (std::norm(a_[r][c]) > std::norm(a_[best][c]))
                    best = r;
            std::swap(a_[c], a_[best]);
            for (std::size_t r = 0; r < n; ++r) {
                if (r == c || a_[r][c] == Number())
                    continue;
                const Number share = a_[r][c] / a_[c][c];
                for (std::size_t k = c; k <= n; ++k)
                    if (a_[c][k] != Number())
                        a_[r][k] -= share * a_[c][k];
            }
        }
        for (std::size_t r = 0; r < n; ++r)
            a_[r].back() /= a_[r][r];
    }

    bool ac_;
    std::vector<std::vector<std::string>> lines_;
    std::map<std::string, std::size_t> nodes_;
    std::map<std::string, std::size_t> branch_;
    std::vector<std::vector<Number>> a_;
};

} // namespace lightoff::test
