// SPDX-License-Identifier: MIT
#pragma once
#include "bench/action.hpp"
#include "bench/captions.hpp"
#include "bench/notebook.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// The lines of `play`: actions, waits for something to happen, and questions that cost no time.
namespace lightoff::visit {

/// What can be waited for besides the things that captions are about.
enum class Until : std::uint8_t {
    about,    ///< the next caption about PlayLine::about
    anything, ///< the next caption, clicks aside
    quiet,    ///< no sound from the furnace
    settled,  ///< every number in a window has stood for two seconds
    reading   ///< the notebook has one more
};

enum class Ask : std::uint8_t { order, chart, status, notes, undo, help, quit };

struct PlayLine {
    enum class Kind : std::uint8_t { empty, act, wait_until, ask };
    Kind kind = Kind::empty;
    bool may_be_refused = false; ///< began with '?'
    bench::Action action;
    int last_of = -1; ///< window whose last reading is meant; its number goes into action.value
    Until until = Until::about;
    bench::About about = bench::About::lamp;
    std::int32_t limit_s = 0;
    Ask ask = Ask::help;
    std::string topic; ///< of help; empty: in general
    std::string text;  ///< as it was typed, without comment and needless space
};

/// Reads a line:
///
///     line       = [ "?" ] ( action | "wait until" THING [ "within" TIME ] | "read" | question ) [ "#"
///     comment ] THING      = lamp | inducer | ... | anything | quiet | settled | reading question   = order
///     | chart | status | notes | undo | help [ VERB ] | quit
///
/// Where an action takes the number of a reading, the name of an instrument stands for its last one.
/// Throws std::invalid_argument that says what was found and what is allowed.
PlayLine parse_play_line(const bench::Site& site, std::string_view text);

/// The action of a line, the name of an instrument replaced by the number of its last reading; none if
/// nothing has been read from it.
std::optional<bench::Action> action_of(const PlayLine& line, std::span<const bench::Reading> readings);

struct AskRow {
    Ask ask = Ask::help;
    std::string_view name;
    std::string_view help;
};
const std::vector<AskRow>& ask_rows();

struct UntilRow {
    std::string_view name;
    Until until = Until::about;
    bench::About about = bench::About::lamp;
    std::string_view help;
};
const std::vector<UntilRow>& until_rows();

/// How a word at the end of a line may go on: names that begin with what stands there.
struct Completion {
    std::size_t start = 0; ///< of the last word in the line
    std::vector<std::string> words;
};
Completion complete(const bench::Site& site, std::string_view line);

/// What all of `words` begin with.
std::string common_start(const std::vector<std::string>& words);

} // namespace lightoff::visit
