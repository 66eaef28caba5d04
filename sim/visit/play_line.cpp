// SPDX-License-Identifier: MIT
#include "visit/play_line.hpp"

#include "bench/offers.hpp"
#include "files/error.hpp"

#include <algorithm>
#include <stdexcept>

namespace lightoff::visit {
namespace {

using bench::About;

constexpr std::int32_t kUsualLimit_s = 900;

std::vector<std::string> words_of(std::string_view text) {
    std::vector<std::string> words;
    for (std::size_t i = 0; i < text.size();) {
        const std::size_t start = text.find_first_not_of(" \t\r\n", i);
        if (start == std::string_view::npos)
            break;
        const std::size_t end = std::min(text.find_first_of(" \t\r\n", start), text.size());
        words.emplace_back(text.substr(start, end - start));
        i = end;
    }
    return words;
}

template <class Rows>
std::vector<std::string> names_in(const Rows& rows) {
    std::vector<std::string> names;
    for (const auto& row : rows)
        names.emplace_back(row.name);
    return names;
}

std::vector<std::string> first_words() {
    std::vector<std::string> names = names_in(bench::verbs());
    for (std::string& name : names_in(ask_rows()))
        names.push_back(std::move(name));
    names.emplace_back("read");
    std::sort(names.begin(), names.end());
    return names;
}

[[noreturn]] void refuse(const std::string& what, const std::string& found,
                         const std::vector<std::string>& allowed) {
    const std::string near = files::nearest(found, allowed);
    throw std::invalid_argument(
        "there is no " + what + " " + files::in_quotes(found) + "; " +
        (near.empty() ? "allowed: " + files::listed(allowed) : "did you mean " + near + "?"));
}

template <class Rows>
const typename Rows::value_type* find_row(const Rows& rows, std::string_view name) {
    const auto row = std::find_if(rows.begin(), rows.end(), [&](const auto& r) { return r.name == name; });
    return row == rows.end() ? nullptr : &*row;
}

/// A time, read as the word of a `wait`.
std::int32_t seconds_in(const bench::Site& site, const std::string& word) {
    return bench::parse_action(site, "wait " + word).value;
}

PlayLine wait_until(const bench::Site& site, const std::vector<std::string>& words) {
    PlayLine line;
    line.kind = PlayLine::Kind::wait_until;
    line.limit_s = kUsualLimit_s;
    const bool within = words.size() == 5 && words[3] == "within";
    if (words.size() != 3 && !within)
        throw std::invalid_argument("`wait until` takes one thing to wait for, as `wait until lamp` or `wait "
                                    "until quiet within 5min`; allowed: " +
                                    files::listed(names_in(until_rows())));
    const UntilRow* row = find_row(until_rows(), words[2]);
    if (row == nullptr)
        refuse("thing to wait for", words[2], names_in(until_rows()));
    line.until = row->until;
    line.about = row->about;
    if (within)
        line.limit_s = seconds_in(site, words[4]);
    return line;
}

/// A name that is in none of the lists that a word is out of: says which is nearest.
void name_nearest(const bench::Site& site, const bench::VerbSpec& spec,
                  const std::vector<std::string>& words) {
    for (std::size_t i = 0; i + 1 < words.size() && i < spec.word_count(); ++i) {
        std::vector<std::string> names;
        for (const bench::Choice& choice : bench::choices(site, spec.words[i]))
            names.push_back(choice.name);
        const std::string& word = words[i + 1];
        if (names.empty() || std::find(names.begin(), names.end(), word) != names.end())
            continue;
        if (spec.words[i] == bench::Word::point && site.model.find_test_point(word) >= 0)
            continue;
        const std::string near = files::nearest(word, names);
        if (!near.empty())
            throw std::invalid_argument(std::string(spec.name) + ": there is no " + files::in_quotes(word) +
                                        "; did you mean " + near + "?");
    }
}

/// The window that is named where the number of a reading belongs; -1 if none is.
int window_named(const bench::Site& site, const bench::VerbSpec& spec,
                 const std::vector<std::string>& words) {
    if (spec.words[spec.word_count() - 1] != bench::Word::reading)
        return -1;
    const std::vector<bench::Choice> windows = bench::choices(site, bench::Word::instrument);
    const auto named = std::find_if(windows.begin(), windows.end(),
                                    [&](const bench::Choice& choice) { return choice.name == words.back(); });
    return named == windows.end() ? -1 : named->value;
}

PlayLine action_line(const bench::Site& site, const std::vector<std::string>& words) {
    const auto verbs = bench::verbs();
    const auto spec =
        std::find_if(verbs.begin(), verbs.end(), [&](const auto& v) { return v.name == words[0]; });
    if (spec == verbs.end())
        refuse("verb", words[0], first_words());
    if (words.size() != spec->word_count() + 1)
        throw std::invalid_argument("it goes: " + bench::pattern_of(*spec));
    name_nearest(site, *spec, words);
    PlayLine line;
    line.kind = PlayLine::Kind::act;
    line.last_of = spec->word_count() > 0 ? window_named(site, *spec, words) : -1;
    std::string text;
    for (const std::string& word : words)
        text += (text.empty() ? "" : " ") + (line.last_of >= 0 && &word == &words.back() ? "0" : word);
    line.action = bench::parse_action(site, text);
    return line;
}

PlayLine ask_line(const AskRow& row, const std::vector<std::string>& words) {
    PlayLine line;
    line.kind = PlayLine::Kind::ask;
    line.ask = row.ask;
    const std::size_t most = row.ask == Ask::help ? 2 : 1;
    if (words.size() > most)
        throw std::invalid_argument("`" + std::string(row.name) + "` takes " +
                                    (most == 1 ? "nothing more" : "one verb at most"));
    if (words.size() == 2) {
        const std::vector<std::string> known = first_words();
        if (std::find(known.begin(), known.end(), words[1]) == known.end())
            refuse("verb", words[1], known);
        line.topic = words[1];
    }
    return line;
}

} // namespace

std::optional<bench::Action> action_of(const PlayLine& line, std::span<const bench::Reading> readings) {
    bench::Action action = line.action;
    if (line.last_of < 0)
        return action;
    const auto last = std::find_if(readings.rbegin(), readings.rend(), [&](const bench::Reading& reading) {
        return reading.window == line.last_of;
    });
    if (last == readings.rend())
        return std::nullopt;
    action.value = static_cast<std::int32_t>(readings.rend() - last);
    return action;
}

const std::vector<AskRow>& ask_rows() {
    static const std::vector<AskRow> rows{
        {Ask::order, "order", "the work order again"},
        {Ask::chart, "chart", "the chart inside the door: what the lamp shows"},
        {Ask::status, "status", "doors, switches, leads, windows, time: as you left them"},
        {Ask::notes, "notes", "the readings taken so far"},
        {Ask::undo, "undo", "tells the act that undoes the last one"},
        {Ask::help, "help", "help; help VERB"},
        {Ask::quit, "quit", "leave; an attempt stays open to be continued"},
    };
    return rows;
}

const std::vector<UntilRow>& until_rows() {
    static const std::vector<UntilRow> rows{
        {"lamp", Until::about, About::lamp, "the lamp shows something else"},
        {"inducer", Until::about, About::inducer, "the inducer's sound changes"},
        {"blower", Until::about, About::blower, "the blower's sound changes"},
        {"burners", Until::about, About::burners, "flames or their roar change"},
        {"igniter", Until::about, About::igniter, "its glow changes (burner door off)"},
        {"click", Until::about, About::click, "a relay clicks"},
        {"valve", Until::about, About::valve, "the gas valve clicks"},
        {"air", Until::about, About::air, "the air at the registers changes"},
        {"smell", Until::about, About::smell, "a smell comes or goes"},
        {"shaking", Until::about, About::shaking, "the cabinet shakes more or less"},
        {"beep", Until::about, About::beep, "an instrument beeps or stops"},
        {"anything", Until::anything, About::lamp, "any of these, clicks aside"},
        {"quiet", Until::quiet, About::lamp, "no sound from the furnace"},
        {"settled", Until::settled, About::lamp, "every number in a window has stood for 2 s"},
        {"reading", Until::reading, About::lamp, "one more reading is taken"},
    };
    return rows;
}

PlayLine parse_play_line(const bench::Site& site, std::string_view text) {
    std::vector<std::string> words = words_of(text.substr(0, text.find('#')));
    bool may_be_refused = false;
    if (!words.empty() && words[0].front() == '?') {
        may_be_refused = true;
        words[0].erase(0, 1);
        if (words[0].empty())
            words.erase(words.begin());
    }
    PlayLine line;
    if (!words.empty()) {
        if (words[0] == "wait" && words.size() > 1 && words[1] == "until")
            line = wait_until(site, words);
        else if (words[0] == "read")
            line = words.size() == 1
                       ? wait_until(site, {"wait", "until", "settled"})
                       : throw std::invalid_argument("`read` takes nothing more; it waits until settled");
        else if (const AskRow* ask = find_row(ask_rows(), words[0]))
            line = ask_line(*ask, words);
        else
            line = action_line(site, words);
    }
    line.may_be_refused = may_be_refused;
    for (const std::string& word : words)
        line.text += (line.text.empty() ? "" : " ") + word;
    return line;
}

std::string common_start(const std::vector<std::string>& words) {
    if (words.empty())
        return {};
    std::string start = words.front();
    for (const std::string& word : words) {
        std::size_t same = 0;
        while (same < start.size() && same < word.size() && start[same] == word[same])
            ++same;
        start.erase(same);
    }
    return start;
}

Completion complete(const bench::Site& site, std::string_view line) {
    Completion completion;
    const std::size_t space = line.find_last_of(" \t");
    completion.start = space == std::string_view::npos ? 0 : space + 1;
    std::vector<std::string> before = words_of(line.substr(0, completion.start));
    if (before.empty() && completion.start < line.size() && line[completion.start] == '?')
        ++completion.start;
    if (!before.empty() && before[0] == "?")
        before.erase(before.begin());
    const std::string_view begun = line.substr(completion.start);

    std::vector<std::string> all;
    if (before.empty()) {
        all = first_words();
    } else if (before[0] == "help") {
        if (before.size() == 1)
            all = first_words();
    } else if (before.size() >= 2 && before[0] == "wait" && before[1] == "until") {
        all = before.size() == 2 ? names_in(until_rows())
                                 : std::vector<std::string>(before.size() == 3 ? 1 : 0, "within");
    } else {
        for (const bench::VerbSpec& spec : bench::verbs())
            if (spec.name == before[0].substr(before[0].front() == '?' ? 1 : 0))
                for (const bench::Choice& choice : bench::offered(site, spec.verb, before.size() - 1))
                    all.push_back(choice.name);
        if (before.size() == 1 && before[0] == "wait")
            all.emplace_back("until");
    }
    for (std::string& name : all)
        if (name.compare(0, begun.size(), begun) == 0)
            completion.words.push_back(std::move(name));
    std::sort(completion.words.begin(), completion.words.end());
    return completion;
}

} // namespace lightoff::visit
