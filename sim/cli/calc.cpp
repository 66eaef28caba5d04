// SPDX-License-Identifier: MIT
#include "cli/calc.hpp"

#include "cli/exit_codes.hpp"
#include "cli/given_values.hpp"
#include "cli/json_output.hpp"
#include "cli/sums.hpp"
#include "cli/text_layout.hpp"
#include "cli/usage_error.hpp"
#include "files/error.hpp"

#include <cmath>

namespace lightoff::cli {
namespace {

using files::unit_of;

const Sum& find_sum(const std::string& name) {
    std::vector<std::string> names;
    for (const Sum& sum : sums()) {
        if (sum.name == name)
            return sum;
        names.emplace_back(sum.name);
    }
    const std::string near = files::nearest(name, names);
    throw UsageError("there is no sum " + files::in_quotes(name) + "; " +
                     (near.empty() ? "`lightoff-cli calc --list` names them" : "did you mean " + near + "?"));
}

std::string key_of(const Result& result) {
    return files::key_in(result.name, unit_of(result.suffix));
}

std::vector<std::string> suffixes_of(const Given& given) {
    std::vector<std::string> suffixes;
    for (const files::Unit& unit : files::units_like(unit_of(given.suffix)))
        suffixes.emplace_back(unit.suffix);
    return suffixes;
}

/// A sum run on values inside its limits, for the names of what it gives.
std::vector<Result> sample_results(const Sum& sum) {
    Values values;
    for (const Given& given : sum.given) {
        if (given.words.empty())
            values.set(given.name, files::to_si(unit_of(given.suffix), given.otherwise.value_or(given.low)));
        else
            values.set_word(given.name, given.words.front());
    }
    return sum.results(values);
}

OrderedJson describe_given(const Given& given) {
    OrderedJson json;
    json["what"] = given.what;
    if (!given.words.empty()) {
        std::vector<std::string> words(given.words.begin(), given.words.end());
        json["allowed"] = words;
        json["default"] = words.front();
        return json;
    }
    json["lowest"] = given.low;
    json["highest"] = given.high;
    if (given.otherwise)
        json["default"] = *given.otherwise;
    json["required"] = !given.otherwise && !given.may_be_missing;
    if (given.whole)
        json["whole"] = true;
    if (!given.suffix.empty())
        json["units"] = suffixes_of(given);
    return json;
}

OrderedJson describe(const Sum& sum) {
    OrderedJson json;
    json["sum"] = sum.name;
    json["what"] = sum.what;
    json["keys"] = OrderedJson::object();
    for (const Given& given : sum.given)
        json["keys"][files::key_in(given.name, unit_of(given.suffix))] = describe_given(given);
    json["results"] = OrderedJson::array();
    for (const Result& result : sample_results(sum))
        json["results"].push_back(key_of(result));
    json["formula"] = sum.formula;
    json["source"] = sum.source;
    return json;
}

std::string plain(double number) {
    return std::abs(number) >= 1e4 ? fixed(number, 0) : files::rounded_text(number);
}

std::string range_of(const Given& given) {
    if (!given.words.empty()) {
        std::string text;
        for (const std::string_view word : given.words)
            text += (text.empty() ? "" : " | ") + std::string(word);
        return text;
    }
    return plain(given.low) + " to " + plain(given.high);
}

std::string default_of(const Given& given) {
    if (!given.words.empty())
        return " [" + std::string(given.words.front()) + "]";
    if (given.otherwise)
        return " [" + plain(*given.otherwise) + "]";
    return given.may_be_missing ? " [none]" : "";
}

void write_for_people(Output& out, const Sum& sum) {
    out.line();
    write_labelled(out, out.heading(sum.name), 26, sum.what);
    for (const Given& given : sum.given) {
        const std::string key = files::key_in(given.name, unit_of(given.suffix));
        const std::string about =
            range_of(given) + default_of(given) + (given.what.empty() ? "" : "; " + std::string(given.what));
        write_labelled(out, "  " + key, 26, about);
    }
    std::string gives;
    for (const Result& result : sample_results(sum))
        gives += (gives.empty() ? "" : ", ") + key_of(result);
    write_labelled(out, "  gives", 26, gives);
    write_labelled(out, out.styled(Style::quiet, "  formula"), 26, std::string(sum.formula));
    write_labelled(out, out.styled(Style::quiet, "  source"), 26, std::string(sum.source));
}

} // namespace

int calc(Output& out, const std::string& name, const std::vector<std::string>& given_texts) {
    const Sum& sum = find_sum(name);
    const GivenValues given = read_given(sum, given_texts);
    OrderedJson json;
    json["sum"] = sum.name;
    json["given"] = OrderedJson::object();
    for (const GivenText& text : given.texts) {
        if (text.word.empty())
            json["given"][text.key] = text.written;
        else
            json["given"][text.key] = text.word;
    }
    json["results"] = OrderedJson::object();
    try {
        for (const Result& result : sum.results(given.values))
            json["results"][key_of(result)] = files::from_si(unit_of(result.suffix), result.si);
    } catch (const std::invalid_argument& error) {
        throw UsageError(name + ": " + error.what());
    }
    json["formula"] = sum.formula;
    json["source"] = sum.source;
    out.line(json_text(json));
    return kDone;
}

int list_sums(Output& out, bool as_json) {
    if (as_json) {
        OrderedJson all = OrderedJson::array();
        for (const Sum& sum : sums())
            all.push_back(describe(sum));
        out.line(json_text(all));
        return kDone;
    }
    write_wrapped(
        out, "Sums of the trade: lightoff-cli calc NAME key=value ...  Any unit of the same quantity may "
             "stand in a key (pressure_Pa for pressure_inwc). [ ] holds the default.");
    for (const Sum& sum : sums())
        write_for_people(out, sum);
    return kDone;
}

} // namespace lightoff::cli
