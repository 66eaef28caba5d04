// SPDX-License-Identifier: MIT
#include "gui/desk/calls.hpp"

#include "files/data_folder.hpp"
#include "files/error.hpp"
#include "files/scenario.hpp"
#include "furnace/furnace.hpp"

#include <algorithm>
#include <cctype>
#include <cstdio>
#include <sstream>

namespace lightoff::desk {
namespace {

std::string lower(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return text;
}

Call read_call(const std::string& name) {
    const lesson::Scenario scenario =
        files::read_scenario(files::read_document(files::find_data_file(name, files::kCallsFolder)));
    return {name, scenario.title, scenario.complaint, scenario.kind, scenario.difficulty, {}};
}

} // namespace

const files::KeptAttempt* Call::open_attempt() const {
    const auto last = std::find_if(attempts.rbegin(), attempts.rend(), [](const files::KeptAttempt& kept) {
        return !kept.ended && kept.problem.empty();
    });
    return last == attempts.rend() ? nullptr : &*last;
}

std::optional<double> Call::best() const {
    std::optional<double> best;
    for (const files::KeptAttempt& kept : attempts)
        if (kept.mark && (!best || *kept.mark > *best))
            best = kept.mark;
    return best;
}

std::string Call::how_it_went() const {
    if (open_attempt() != nullptr)
        return "left open";
    if (const auto mark = best()) {
        std::array<char, 32> text{};
        std::snprintf(text.data(), text.size(), "best %.0f", *mark);
        return text.data();
    }
    const bool worked = std::any_of(attempts.begin(), attempts.end(),
                                    [](const files::KeptAttempt& kept) { return kept.ended; });
    return worked ? "finished" : "new";
}

std::vector<Call> all_calls(const std::string& attempts_folder, std::vector<std::string>& problems) {
    std::vector<Call> calls;
    for (const std::string& name : files::data_names(files::kCallsFolder)) {
        try {
            calls.push_back(read_call(name));
        } catch (const files::Error& error) {
            problems.emplace_back(error.what());
        }
    }
    for (const files::KeptAttempt& kept : files::kept_attempts(attempts_folder, furnace::kPhysicsVersion)) {
        const auto call =
            std::find_if(calls.begin(), calls.end(), [&](const Call& c) { return c.name == kept.call; });
        if (call != calls.end())
            call->attempts.push_back(kept);
        else if (!kept.problem.empty())
            problems.push_back(kept.problem);
    }
    std::stable_sort(calls.begin(), calls.end(), [](const Call& a, const Call& b) {
        return std::tuple(a.kind == lesson::Kind::explore, a.difficulty, a.title) <
               std::tuple(b.kind == lesson::Kind::explore, b.difficulty, b.title);
    });
    return calls;
}

bool fits(const Call& call, const Wish& wish) {
    if ((wish.kind && *wish.kind != call.kind) || (wish.difficulty && *wish.difficulty != call.difficulty))
        return false;
    const bool open = call.open_attempt() != nullptr;
    const bool finished = std::any_of(call.attempts.begin(), call.attempts.end(),
                                      [](const files::KeptAttempt& kept) { return kept.ended; });
    if ((wish.done == Wish::Done::open && !open) || (wish.done == Wish::Done::finished && !finished) ||
        (wish.done == Wish::Done::fresh && !call.attempts.empty()))
        return false;
    const std::string text = lower(call.title + " " + call.complaint);
    std::istringstream words(lower(wish.words));
    for (std::string word; words >> word;)
        if (text.find(word) == std::string::npos)
            return false;
    return true;
}

std::string difficulty_text(lesson::Difficulty difficulty) {
    switch (difficulty) {
    case lesson::Difficulty::easy:
        return "easy";
    case lesson::Difficulty::medium:
        return "medium";
    case lesson::Difficulty::hard:
        return "hard";
    }
    return {};
}

} // namespace lightoff::desk
