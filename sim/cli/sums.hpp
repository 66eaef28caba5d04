// SPDX-License-Identifier: MIT
#pragma once
#include <functional>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// The sums of the trade that `calc` does, as one table: names, limits and sources here, the arithmetic in
/// the rooms that the furnace itself runs on.
namespace lightoff::cli {

/// A number that a sum takes, or a word out of a list.
struct Given {
    std::string_view name;   ///< without its unit: "pressure"
    std::string_view suffix; ///< unit of limits and default; any unit of that quantity may be typed
    double low = 0.0;        ///< both limits are allowed
    double high = 0.0;
    std::string_view what;
    std::optional<double> otherwise{};     ///< in `suffix`
    bool may_be_missing = false;           ///< what needs it is then left out of the results
    bool whole = false;                    ///< no fractions
    std::vector<std::string_view> words{}; ///< allowed words, the first stands if none is typed
};

/// A result, written in the unit `suffix`.
struct Result {
    std::string_view name;
    std::string_view suffix;
    double si = 0.0;
};

/// What was given, in SI.
class Values {
public:
    [[nodiscard]] double operator[](std::string_view name) const { return numbers_.find(name)->second; }
    [[nodiscard]] bool has(std::string_view name) const { return numbers_.find(name) != numbers_.end(); }
    [[nodiscard]] std::string_view word(std::string_view name) const { return words_.find(name)->second; }
    void set(std::string_view name, double si) { numbers_.insert_or_assign(std::string(name), si); }
    void set_word(std::string_view name, std::string_view word) {
        words_.insert_or_assign(std::string(name), std::string(word));
    }

private:
    std::map<std::string, double, std::less<>> numbers_;
    std::map<std::string, std::string, std::less<>> words_;
};

struct Sum {
    std::string_view name;
    std::string_view what;
    std::string_view formula;
    std::string_view source;
    std::vector<Given> given;
    /// May throw std::invalid_argument for values that do not go together.
    std::function<std::vector<Result>(const Values&)> results;
};

std::vector<Sum> gas_sums();
std::vector<Sum> combustion_sums();
std::vector<Sum> air_sums();
std::vector<Sum> electrical_sums();

/// All of them, in the order of a heating system: gas, fire, air, wires.
const std::vector<Sum>& sums();

} // namespace lightoff::cli
