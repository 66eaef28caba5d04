// SPDX-License-Identifier: MIT
#include "report/words.hpp"

#include "bench/hand_words.hpp"
#include "lesson/account.hpp"
#include "units/constants.hpp"
#include "visit/words.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <charconv>

namespace lightoff::report {
namespace {

using bench::Verb;

std::string name_among(const bench::Site& site, bench::Word word, std::int32_t value) {
    for (const bench::Choice& choice : bench::choices(site, word))
        if (choice.value == value)
            return choice.name;
    return std::to_string(value);
}

/// "flame-current" as people write it.
std::string spaced(std::string name) {
    std::replace(name.begin(), name.end(), '-', ' ');
    return name;
}

std::string capital(std::string words) {
    if (!words.empty())
        words[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(words[0])));
    return words;
}

std::string by_reading(const bench::Site& site, const lesson::Story& story, std::int32_t number) {
    if (number <= 0 || static_cast<std::size_t>(number) > story.readings.size())
        return "no reading";
    return "reading " + std::to_string(number) + ", " +
           visit::value_text(site, story.readings[static_cast<std::size_t>(number) - 1]);
}

std::string fault_title(const bench::Site& site, std::int32_t fault) {
    return lesson::title_of(site, {fault, -1});
}

std::string stop_text(const bench::Site& site, std::int32_t step) {
    constexpr std::int32_t kRunsThrough = 6;
    if (step == kRunsThrough)
        return "The sequence runs through";
    return "The sequence stops after step " + name_among(site, bench::Word::step, step);
}

std::string many(std::size_t count, const std::string& one, const std::string& more) {
    return std::to_string(count) + " " + (count == 1 ? one : more);
}

std::vector<std::string> clauses_of(const std::string& text) {
    std::vector<std::string> clauses;
    for (std::size_t from = 0; from <= text.size();) {
        const std::size_t to = std::min(text.find("; ", from), text.size());
        clauses.push_back(text.substr(from, to - from));
        from = to + 2;
    }
    return clauses;
}

std::string reading_of(const bench::Site& site, const lesson::Story& story, int number) {
    return visit::reading_text(site, story.readings[static_cast<std::size_t>(number) - 1],
                               static_cast<std::size_t>(number));
}

} // namespace

std::string clock(const lesson::Story& story, std::uint64_t tick) {
    const std::uint64_t since = tick - std::min(tick, story.arrived_tick);
    const auto seconds = static_cast<std::uint64_t>(static_cast<double>(since) * units::seconds_per_tick);
    const std::string rest = std::to_string(seconds % 60);
    return std::to_string(seconds / 60) + (rest.size() < 2 ? ":0" : ":") + rest;
}

std::string decimal(double value, int decimals) {
    std::array<char, 48> buffer{};
    const double size = value < 0.0 ? -value : value;
    const auto end =
        std::to_chars(buffer.data(), buffer.data() + buffer.size(), size, std::chars_format::fixed, decimals);
    const std::string digits(buffer.data(), end.ptr);
    const bool is_zero = digits.find_first_of("123456789") == std::string::npos;
    return value < 0.0 && !is_zero ? "−" + digits : digits;
}

std::string unit_text(std::string_view unit) {
    constexpr std::array<std::array<std::string_view, 2>, 4> kWritten{
        {{"F", "°F"}, {"F difference", "°F"}, {"uA", "µA"}, {"ft3/h", "ft³/h"}}};
    for (const auto& [plain, written] : kWritten)
        if (unit == plain)
            return std::string(written);
    return std::string(unit);
}

std::string test_text(std::string_view test) {
    std::string words(test);
    const auto is_letter = [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); };
    for (std::size_t i = 0; i < words.size(); ++i) {
        const bool between_names = words[i] == '.' && i > 0 && i + 1 < words.size() &&
                                   is_letter(words[i - 1]) && is_letter(words[i + 1]);
        if (words[i] == '_' || between_names)
            words[i] = ' ';
    }
    return words;
}

std::string points_text(double points) {
    return (points > 0.0 ? "+" : "") + decimal(points, 1);
}

std::string change_text(const bench::Site& site, const lesson::ChangeMade& change) {
    if (change.part < 0)
        return "moved a wire";
    constexpr std::array<const char*, faults::kServiceKinds> kDone{
        "took off", "put back", "cleaned", "tightened or set right", "adjusted", "reset", "changed"};
    return std::string(kDone[static_cast<std::size_t>(change.kind)]) + " the " +
           bench::in_sentence(site.catalogue.parts[static_cast<std::size_t>(change.part)]);
}

std::string statement_text(const bench::Site& site, const lesson::Story& story, const bench::Action& action) {
    const auto struck = [&](const std::string& what) {
        return "Struck out: " + what + " (" + by_reading(site, story, action.value) + ")";
    };
    const auto value_of_line = [&](const char* when) {
        return std::string(when) + ", " + spaced(name_among(site, bench::Word::line, action.target)) + ": " +
               by_reading(site, story, action.value);
    };
    switch (action.verb) {
    case Verb::stops_at:
        return stop_text(site, action.value);
    case Verb::cause:
        return "Cause named: " + fault_title(site, action.value);
    case Verb::cause_behind:
        return "Behind it: " + fault_title(site, action.value);
    case Verb::found:
        return "Found: " + fault_title(site, action.value);
    case Verb::strike:
        return struck(spaced(name_among(site, bench::Word::block, action.target)));
    case Verb::strike_part:
        return struck(bench::part_title(site, action.target));
    case Verb::unstrike:
        return "Taken back: " + spaced(name_among(site, bench::Word::block, action.value));
    case Verb::tag:
        return "Tag of the " +
               bench::in_sentence(site.catalogue.parts[static_cast<std::size_t>(action.target)]) +
               ": condemned by " + by_reading(site, story, action.value);
    case Verb::expect:
        return "Said beforehand: " + spaced(name_among(site, bench::Word::instrument, action.target)) + " " +
               bench::expected_text(action.value);
    case Verb::tell:
        return "Told the customer: " + spaced(name_among(site, bench::Word::topic, action.value));
    case Verb::as_found:
        return value_of_line("As found");
    case Verb::as_left:
        return value_of_line("As left");
    case Verb::shut_off:
        return "Shut off and tagged";
    case Verb::sign_off:
        return "Signed off";
    default:
        return capital(bench::format_action(site, action));
    }
}

std::string causes_text(const bench::Site& site, const std::vector<evidence::Cause>& causes,
                        std::size_t most) {
    std::string text;
    for (std::size_t i = 0; i < causes.size() && i < most; ++i)
        text += (i == 0 ? "" : "; ") +
                (causes[i] == evidence::kNothingWrong ? "nothing wrong" : lesson::title_of(site, causes[i]));
    if (causes.size() > most)
        text += "; and " + std::to_string(causes.size() - most) + " more";
    return text;
}

std::string knew_text(const bench::Site& site, const lesson::Debrief& debrief) {
    const lesson::Story& story = debrief.story;
    std::string text;
    const bool changed = !story.changes.empty();
    const bool late = debrief.knew && changed && debrief.knew->tick > story.changes.front().tick;
    if (debrief.knew)
        text =
            std::string("You knew enough ") + (late ? "only at " : "at ") + clock(story, debrief.knew->tick) +
            (debrief.knew->reading > 0 ? " (reading " + std::to_string(debrief.knew->reading) + ")." : ".");
    else
        text = "Your readings never left the cause alone.";
    if (changed)
        text += " You " + change_text(site, story.changes.front()) + " at " +
                clock(story, story.changes.front().tick) + ".";
    return text;
}

std::string choice_text(const bench::Site& site, const lesson::Debrief& debrief) {
    const lesson::BetterTest& better = *debrief.better;
    const lesson::Story& story = debrief.story;
    const std::string left = many(better.still_fitting, "cause", "causes") +
                             (better.still_fitting == 1 ? " fitted" : " still fitted");
    if (better.reading == 0)
        return "At " + clock(story, better.made_tick) + " you " +
               change_text(site, story.changes[better.change]) + ". " + left + " what you had read.";
    return "At " + clock(story, better.made_tick) + " you read " + reading_of(site, story, better.reading) +
           ". " + left + " before it, and it could part " +
           (better.worth.pairs == 0 ? "none of them." : "few of them.");
}

std::string offer_text(const lesson::BetterTest& better) {
    return decimal(better.offer.minutes, 1) + " min, " +
           many(better.offer.meanings.size(), "answer", "different answers") + ": " +
           test_text(better.offer.what) + ".";
}

std::vector<std::string> answers_of(const evidence::Offer& offer) {
    const auto usual =
        std::max_element(offer.meanings.begin(), offer.meanings.end(),
                         [](const auto& a, const auto& b) { return a.causes.size() < b.causes.size(); });
    std::vector<std::string> answers;
    for (auto it = offer.meanings.begin(); it != offer.meanings.end(); ++it) {
        std::string text;
        if (it != usual) {
            const std::vector<std::string> known = clauses_of(usual->shows);
            for (const std::string& clause : clauses_of(it->shows))
                if (std::find(known.begin(), known.end(), clause) == known.end())
                    text += (text.empty() ? "" : "; ") + clause;
        }
        answers.push_back(text.empty() ? it->shows : text);
    }
    return answers;
}

std::string step_text(const bench::Site& site, const lesson::Debrief& debrief, const evidence::Step& step) {
    const lesson::Story& story = debrief.story;
    if (step.reading > 0)
        return reading_of(site, story, step.reading);
    if (step.tick <= story.arrived_tick)
        return "what is plain on arrival";
    const auto noticed =
        std::find_if(story.captions.rbegin(), story.captions.rend(), [&](const bench::Caption& c) {
            return c.tick <= step.tick && c.about != bench::About::hands && c.about != bench::About::window;
        });
    if (noticed == story.captions.rend() || noticed->tick + evidence::kStretchTicks < step.tick)
        return "eyes, ears, nose or hand: nothing changes";
    return std::string(bench::name_of(noticed->sense)) + ": " + noticed->text;
}

const bench::HazardEvent* frozen_moment(const bench::Site& site, const lesson::Story& story) {
    for (const bench::HazardEvent& event : story.hazards)
        if (site.hazards[static_cast<std::size_t>(event.hazard)].gravity == bench::Gravity::stop_work)
            return &event;
    return nullptr;
}

std::string_view gravity_text(bench::Gravity gravity) {
    switch (gravity) {
    case bench::Gravity::slip:
        return "slip";
    case bench::Gravity::serious:
        return "serious";
    case bench::Gravity::stop_work:
        return "stop work";
    }
    return {};
}

std::string worth_text(const lesson::Debrief& debrief, std::size_t reading) {
    if (reading >= debrief.worths.size())
        return {};
    constexpr std::array<const char*, 6> kWords{"splitter", "narrower", "confirmer",
                                                "repeat",   "idle",     "safety"};
    return kWords[static_cast<std::size_t>(debrief.worths[reading].word)];
}

} // namespace lightoff::report
