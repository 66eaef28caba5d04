// SPDX-License-Identifier: MIT
#include "cli/given_values.hpp"

#include "cli/usage_error.hpp"
#include "files/error.hpp"

#include <cmath>

namespace lightoff::cli {
namespace {

using files::Unit;

std::string default_key(const Given& given) {
    return files::key_in(given.name, files::unit_of(given.suffix));
}

/// What may be typed for one value: pressure_inwc, pressure_Pa ...
std::vector<std::string> keys_of(const Given& given) {
    if (!given.words.empty())
        return {std::string(given.name)};
    std::vector<std::string> keys;
    for (const Unit& unit : files::units_like(files::unit_of(given.suffix)))
        keys.push_back(files::key_in(given.name, unit));
    return keys;
}

struct Match {
    std::size_t index = 0;
    Unit unit{};
};

[[noreturn]] void refuse_key(const Sum& sum, const std::string& key) {
    std::vector<std::string> wanted;
    std::vector<std::string> all;
    for (const Given& given : sum.given) {
        wanted.push_back(default_key(given));
        for (const std::string& k : keys_of(given)) {
            if (given.name == key)
                throw UsageError(std::string(sum.name) + ": " + files::in_quotes(key) +
                                 " needs its unit; allowed " + files::listed(keys_of(given)));
            all.push_back(k);
        }
    }
    const std::string near = files::nearest(key, all);
    throw UsageError(std::string(sum.name) + ": takes no " + files::in_quotes(key) + "; " +
                     (near.empty() ? "it takes " + files::listed(wanted) : "did you mean " + near + "?"));
}

Match match_key(const Sum& sum, const std::string& key) {
    for (std::size_t i = 0; i < sum.given.size(); ++i) {
        const Given& given = sum.given[i];
        if (!given.words.empty()) {
            if (key == given.name)
                return {i, {}};
            continue;
        }
        for (const Unit& unit : files::units_like(files::unit_of(given.suffix)))
            if (key == files::key_in(given.name, unit))
                return {i, unit};
    }
    refuse_key(sum, key);
}

/// A limit or default, written in another unit of the same quantity.
double in_unit(const Given& given, double written, const Unit& unit) {
    return files::from_si(unit, files::to_si(files::unit_of(given.suffix), written));
}

std::string checked_word(const Given& given, const std::string& text) {
    std::vector<std::string> words;
    for (const std::string_view word : given.words) {
        if (word == text)
            return text;
        words.emplace_back(word);
    }
    throw UsageError(std::string(given.name) + ": found " + files::in_quotes(text) + "; allowed " +
                     files::listed(words));
}

double checked_number(const Given& given, const Unit& unit, const std::string& key, const std::string& text) {
    const double written = number_in(key, text);
    const double plain = files::from_si(files::unit_of(given.suffix), files::to_si(unit, written));
    // A limit typed in another unit is off by a rounding.
    const double slack = 1e-9 * (std::abs(given.low) + std::abs(given.high));
    const bool own_unit = unit.suffix == given.suffix;
    const bool inside = own_unit ? written >= given.low && written <= given.high
                                 : plain >= given.low - slack && plain <= given.high + slack;
    if (!inside)
        throw UsageError(key + ": found " + text + "; allowed " +
                         files::rounded_text(in_unit(given, given.low, unit)) + " to " +
                         files::rounded_text(in_unit(given, given.high, unit)));
    if (given.whole && written != std::round(written))
        throw UsageError(key + ": found " + text + "; allowed whole numbers");
    return written;
}

/// The default where nothing was typed; false if there is none.
bool fill_in(const Given& given, GivenText& text) {
    text.key = default_key(given);
    if (!given.words.empty()) {
        text.word = given.words.front();
        return true;
    }
    if (given.otherwise)
        text.written = *given.otherwise;
    return given.otherwise.has_value();
}

} // namespace

GivenValues read_given(const Sum& sum, const std::vector<std::string>& texts) {
    std::vector<std::optional<GivenText>> typed(sum.given.size());
    std::vector<Unit> units(sum.given.size());
    for (const std::string& text : texts) {
        const std::size_t equals = text.find('=');
        if (equals == std::string::npos)
            throw UsageError(std::string(sum.name) + ": found " + files::in_quotes(text) +
                             "; allowed key=value, such as " + default_key(sum.given.front()) + "=...");
        const std::string key = text.substr(0, equals);
        const std::string value = text.substr(equals + 1);
        const Match match = match_key(sum, key);
        const Given& given = sum.given[match.index];
        std::optional<GivenText>& place = typed[match.index];
        if (place)
            throw UsageError(std::string(sum.name) + ": found " + place->key + " and " + key +
                             "; allowed one of them, once");
        units[match.index] = match.unit;
        place = given.words.empty() ? GivenText{key, checked_number(given, match.unit, key, value), {}}
                                    : GivenText{key, 0.0, checked_word(given, value)};
    }

    GivenValues result;
    for (std::size_t i = 0; i < sum.given.size(); ++i) {
        const Given& given = sum.given[i];
        if (!typed[i]) {
            GivenText text;
            if (!fill_in(given, text)) {
                if (given.may_be_missing)
                    continue;
                throw UsageError(std::string(sum.name) + ": " + default_key(given) + " is missing (" +
                                 std::string(given.what) + ")");
            }
            units[i] = files::unit_of(given.suffix);
            typed[i] = text;
        }
        if (given.words.empty())
            result.values.set(given.name, files::to_si(units[i], typed[i]->written));
        else
            result.values.set_word(given.name, typed[i]->word);
        result.texts.push_back(*typed[i]);
    }
    return result;
}

} // namespace lightoff::cli
