// SPDX-License-Identifier: MIT
#include "bench/offers.hpp"
#include "cli/exit_codes.hpp"
#include "cli/json_output.hpp"
#include "cli/lists.hpp"
#include "cli/text_layout.hpp"
#include "files/bundle_loader.hpp"
#include "units/constants.hpp"

#include <optional>

namespace lightoff::cli {
namespace {

constexpr std::size_t kPatternWidth = 36;

double seconds_of(const bench::VerbSpec& spec) {
    return static_cast<double>(spec.ticks) * units::seconds_per_tick;
}

std::string time_text(const bench::VerbSpec& spec) {
    if (spec.verb == bench::Verb::wait)
        return "as long as you say";
    if (bench::takes_its_own_time(spec.verb))
        return "each part its own time";
    return (spec.ticks > 0 ? fixed(seconds_of(spec), 0) + " s" : "no time") +
           (spec.hands == 2   ? ", both hands"
            : spec.hands == 1 ? ", one hand"
                              : "");
}

OrderedJson word_json(const bench::Site* site, const bench::VerbSpec& spec, std::size_t word) {
    OrderedJson json{{"word", bench::placeholder(spec.words[word])}};
    if (const std::string_view range = bench::range_of(spec.words[word]); !range.empty())
        json["range"] = range;
    else if (site != nullptr) {
        OrderedJson names = OrderedJson::array();
        for (const bench::Choice& choice : bench::offered(*site, spec.verb, word))
            names.push_back(choice.name);
        json["names"] = std::move(names);
    }
    return json;
}

OrderedJson verb_json(const bench::Site* site, const bench::VerbSpec& spec, std::string_view group) {
    OrderedJson words = OrderedJson::array();
    for (std::size_t i = 0; i < spec.word_count(); ++i)
        words.push_back(word_json(site, spec, i));
    return {{"verb", spec.name},          {"group", group},      {"words", words},
            {"time_s", seconds_of(spec)}, {"hands", spec.hands}, {"help", spec.help}};
}

/// Lists of names that several verbs share are printed once, below.
void write_names(Output& out, const bench::Site& site) {
    std::vector<std::pair<std::string, std::string>> shown; ///< pattern of the word, names
    for (const bench::VerbSpec& spec : bench::verbs())
        for (std::size_t i = 0; i < spec.word_count(); ++i) {
            const std::string word(bench::placeholder(spec.words[i]));
            if (!bench::range_of(spec.words[i]).empty() || word.find('|') != std::string::npos)
                continue;
            std::string names;
            for (const bench::Choice& choice : bench::offered(site, spec.verb, i))
                names += (names.empty() ? "" : ", ") + choice.name;
            std::string title = std::string(spec.name) + " " + word;
            bool is_shown = false;
            for (auto& [titles, all] : shown)
                if (all == names) {
                    if (titles.find(title) == std::string::npos)
                        titles += ", " + title;
                    is_shown = true;
                }
            if (!is_shown)
                shown.emplace_back(std::move(title), std::move(names));
        }
    for (const auto& [titles, names] : shown) {
        out.line();
        out.line(out.heading(titles));
        write_wrapped(out, names, 2);
    }
}

} // namespace

int list_actions(Output& out, const std::string& scenario, bool as_json) {
    std::optional<files::LoadedBundle> bundle;
    if (!scenario.empty())
        bundle = files::load_bundle(scenario);
    const bench::Site* site = bundle ? &bundle->site : nullptr;
    OrderedJson json = OrderedJson::array();
    bool first = true;
    for (const bench::VerbGroup& group : bench::verb_groups()) {
        if (!as_json) {
            if (!first)
                out.line();
            out.line(out.heading(group.title));
        }
        first = false;
        for (const bench::Verb verb : group.verbs) {
            const bench::VerbSpec& spec = bench::spec_of(verb);
            if (as_json)
                json.push_back(verb_json(site, spec, group.title));
            else
                write_labelled(out, "  " + bench::pattern_of(spec), kPatternWidth,
                               std::string(spec.help) + " (" + time_text(spec) + ")");
        }
    }
    if (as_json)
        out.line(json_text(json));
    else if (site != nullptr)
        write_names(out, *site);
    return kDone;
}

} // namespace lightoff::cli
