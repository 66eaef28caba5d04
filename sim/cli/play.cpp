// SPDX-License-Identifier: MIT
#include "cli/play.hpp"

#include "cli/exit_codes.hpp"
#include "cli/interrupt.hpp"
#include "cli/line_editor.hpp"
#include "cli/lists.hpp"
#include "cli/play_text.hpp"
#include "cli/usage_error.hpp"
#include "files/disk.hpp"
#include "files/error.hpp"
#include "files/json_text.hpp"
#include "visit/play_line.hpp"
#include "visit/until.hpp"
#include "visit/visit.hpp"
#include "visit/words.hpp"

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <filesystem>
#include <stdexcept>
#include <system_error>
#include <unistd.h>
#include <vector>

namespace lightoff::cli {
namespace {

using visit::Ask;
using visit::clock_text;
using visit::parse_play_line;
using visit::PlayLine;
using visit::reading_text;
using visit::Until;
using visit::Visit;

struct Numbered {
    std::size_t number = 0;
    PlayLine line;
};

/// A whole script, so that its mistakes are told before anything is done.
std::vector<Numbered> read_script(const std::string& path, const bench::Site& site) {
    const std::string text = files::read_file(path);
    files::check_text(text, path);
    std::vector<Numbered> lines;
    std::size_t number = 0;
    for (std::size_t start = 0; start < text.size();) {
        const std::size_t end = std::min(text.find('\n', start), text.size());
        const std::string line = text.substr(start, end - start);
        start = end + 1;
        ++number;
        try {
            lines.push_back({number, parse_play_line(site, line)});
        } catch (const std::invalid_argument& error) {
            throw files::Error(
                {path, "line " + std::to_string(number), files::in_quotes(line), "an action", error.what()});
        }
    }
    return lines;
}

/// A line of standard input; none at its end.
std::optional<std::string> read_standard_input() {
    std::string line;
    int c = 0;
    while ((c = std::getc(stdin)) != EOF && c != '\n')
        line += static_cast<char>(c);
    if (c == EOF && std::ferror(stdin) != 0)
        throw UsageError("standard input can't be read: " + std::generic_category().message(errno));
    if (c == EOF && line.empty())
        return std::nullopt;
    return line;
}

/// Whether a file holds no more than a part of an attempt's first line: nothing has been done in it.
bool is_cut_in_first_line(const std::string& text) {
    const std::string begins = R"({"format":")" + std::string(files::kAttemptFormat) + '"';
    return text.find('\n') == std::string::npos &&
           (text.size() < begins.size() ? begins.compare(0, text.size(), text) == 0
                                        : text.compare(0, begins.size(), begins) == 0);
}

/// What is in the attempt's file already, if it is to be continued.
std::optional<files::Attempt> begun_attempt(const PlayOptions& options) {
    std::error_code none;
    if (options.attempt.empty() || !std::filesystem::exists(options.attempt, none))
        return std::nullopt;
    if (std::filesystem::is_regular_file(options.attempt, none) &&
        is_cut_in_first_line(files::read_file(options.attempt, files::kLargestAttempt))) {
        std::filesystem::remove(options.attempt, none);
        return std::nullopt;
    }
    files::Attempt attempt = files::read_attempt(options.attempt, furnace::kPhysicsVersion);
    if (attempt.end)
        throw files::Error({options.attempt, "",
                            "an attempt that has ended: " + files::in_quotes(attempt.end->reason),
                            "one without an end, or no file of that name", "nothing was overwritten"});
    if (!options.seed.empty() && whole_number_in("--seed", options.seed) != attempt.header.seed)
        throw UsageError("--seed: found " + options.seed + "; allowed " +
                         std::to_string(attempt.header.seed) + ", which " + options.attempt +
                         " was begun with");
    return attempt;
}

/// Lines done one after the other, and what came of them.
class Player {
public:
    Player(Output& out, const files::LoadedBundle& bundle, Visit& visit, const char* by, bool echo)
        : out_(out), bundle_(bundle), visit_(visit), by_(by),
          echo_(echo), listener_{[this](const bench::Caption& caption) { tell(caption); },
                                 [this](const bench::Reading& reading, std::size_t number) {
                                     tell(reading, number);
                                 },
                                 [this] {
                                     interrupted_ = interrupt_ && interrupt_->asked();
                                     return interrupted_;
                                 }} {}

    /// Why it could not be done, else empty.
    std::string take(const PlayLine& line) {
        interrupt_.emplace();
        std::string why = taken(line);
        interrupt_.reset();
        return why;
    }
    [[nodiscard]] bool interrupted() const { return interrupted_; }
    [[nodiscard]] bool over() const {
        return left_ || interrupted_ || visit_.signed_off() || visit_.stopped() != nullptr;
    }

private:
    std::string taken(const PlayLine& line) {
        switch (line.kind) {
        case PlayLine::Kind::empty:
            return {};
        case PlayLine::Kind::ask:
            if (echo_)
                now(">", line.text);
            answer(line);
            return {};
        case PlayLine::Kind::wait_until:
            if (echo_)
                now(">", line.text);
            return wait_until(line);
        case PlayLine::Kind::act:
            if (echo_)
                now(">", line.text);
            return act(line);
        }
        return {};
    }
    std::string act(const PlayLine& line) {
        const auto action = visit::action_of(line, visit_.notebook().readings());
        return action ? visit_.act(*action, by_, listener_)
                      : "Nothing has been read from that instrument yet.";
    }
    void now(std::string_view what, const std::string& text) {
        write_event(out_, visit_.ticks_here(), what, text);
    }
    void tell(const bench::Caption& caption) {
        // A look stands in the notebook, with its number.
        const bool of_look = caption.about == bench::About::hands &&
                             (visit_.world().hands.last.verb == bench::Verb::look ||
                              visit_.world().hands.last.verb == bench::Verb::test_old) &&
                             visit_.world().hands.last_tick + 1 == caption.tick;
        if (!of_look || caption.sense != bench::Sense::seen)
            write_event(out_, caption.tick - visit_.arrived_tick(), bench::name_of(caption.sense),
                        caption.text);
    }
    void tell(const bench::Reading& reading, std::size_t number) {
        write_event(out_, reading.tick - visit_.arrived_tick(), reading.window < 0 ? "seen" : "read",
                    reading_text(visit_.site(), reading, number));
    }

    std::string wait_until(const PlayLine& line) {
        if (line.until == Until::quiet && visit::is_quiet(visit_.percept())) {
            now("", "It is quiet.");
            return {};
        }
        const bench::Verdict verdict = visit_.check({bench::Verb::wait, 0, 1});
        if (!verdict.allowed)
            return verdict.reason;
        const auto seconds = visit_.seconds_until(
            [&](const Visit::Ahead& ahead) { return visit::has_come_about(line, ahead); }, line.limit_s,
            listener_.stop);
        if (interrupted_)
            return {};
        std::string why = visit_.act({bench::Verb::wait, 0, seconds.value_or(line.limit_s)}, by_, listener_);
        if (why.empty() && !seconds && !interrupted_)
            why = "nothing of the kind within " + clock_text(static_cast<std::uint64_t>(line.limit_s) * 20);
        return why;
    }
    void answer(const PlayLine& line) {
        switch (line.ask) {
        case Ask::order:
            return write_work_order(out_, bundle_);
        case Ask::chart:
            return write_chart(out_, visit_.site().model.board);
        case Ask::status:
            return write_status(out_, visit_);
        case Ask::notes:
            return write_notes(out_, visit_);
        case Ask::help:
            return write_help(out_, visit_.site(), line.topic);
        case Ask::undo:
            if (const auto& undo = visit_.undo())
                return out_.line("  " + bench::format_action(visit_.site(), undo->done) +
                                 " is undone by: " + bench::format_action(visit_.site(), undo->inverse));
            return out_.line("  nothing to undo");
        case Ask::quit:
            left_ = true;
        }
    }

    Output& out_;
    const files::LoadedBundle& bundle_;
    Visit& visit_;
    const char* by_;
    bool echo_;
    std::optional<Interrupt> interrupt_; ///< while something is being done
    Visit::Listener listener_;
    bool left_ = false;
    bool interrupted_ = false;
};

void write_stop_work(Output& out, const Visit& visit, const bench::HazardEvent& event) {
    const bench::HazardRow& row = visit.site().hazards[static_cast<std::size_t>(event.hazard)];
    out.line(out.styled(Style::bad, "stop work") + " at " + clock_text(event.tick - visit.arrived_tick()) +
             ": " + row.title + ": " + event.about + ". " + row.why + " This call is over.");
}

/// What has become of the call, and how to go on.
int close(Output& out, const PlayOptions& options, Visit& visit, const Player& player, bool refused) {
    visit.leave();
    if (const bench::HazardEvent* event = visit.stopped())
        write_stop_work(out, visit, *event);
    const std::string what = std::to_string(visit.actions()) +
                             (visit.actions() == 1 ? " action, " : " actions, ") +
                             clock_text(visit.ticks_here());
    if (!options.attempt.empty())
        out.line(options.attempt + ": " + what +
                 (visit.signed_off() || visit.stopped() != nullptr ? "" : ", left open"));
    if (player.interrupted())
        return kInterrupted;
    return refused ? kNegative : kDone;
}

int play_script(Output& out, const PlayOptions& options, const files::LoadedBundle& bundle, Visit& visit,
                const std::vector<Numbered>& lines) {
    Player player(out, bundle, visit, "script", true);
    for (const Numbered& step : lines) {
        const std::string why = player.take(step.line);
        if (!why.empty())
            out.line(out.styled(Style::bad, "refused") + " (line " + std::to_string(step.number) +
                     "): " + why);
        if (!why.empty() && !step.line.may_be_refused)
            return close(out, options, visit, player, true);
        if (player.over())
            break;
    }
    return close(out, options, visit, player, false);
}

int play_by_hand(Output& out, const PlayOptions& options, const files::LoadedBundle& bundle, Visit& visit) {
    const bench::Site& site = bundle.site;
    std::optional<LineEditor> editor;
    if (isatty(STDIN_FILENO) == 1)
        editor.emplace([&site](std::string_view line) { return visit::complete(site, line); });
    bool refused = false;
    Player player(out, bundle, visit, "student", !editor);
    while (!player.over()) {
        out.flush();
        const std::optional<std::string> text =
            editor ? editor->read(clock_text(visit.ticks_here()) + "> ") : read_standard_input();
        if (!text)
            break;
        bool may_be_refused = false;
        std::string why;
        try {
            const PlayLine line = parse_play_line(site, *text);
            may_be_refused = line.may_be_refused;
            why = player.take(line);
        } catch (const std::invalid_argument& error) {
            why = error.what();
        }
        if (!why.empty())
            out.line(out.styled(Style::bad, "refused") + ": " + why);
        refused = refused || (!editor && !why.empty() && !may_be_refused);
    }
    return close(out, options, visit, player, refused);
}

} // namespace

int play(Output& out, const PlayOptions& options) {
    const std::uint64_t seed = options.seed.empty() ? 0 : whole_number_in("--seed", options.seed);
    const files::LoadedBundle bundle = files::load_bundle(options.scenario);
    std::vector<Numbered> lines;
    if (!options.script.empty())
        lines = read_script(options.script, bundle.site);
    const std::optional<files::Attempt> begun = begun_attempt(options);
    if (begun)
        files::check_bundle(*begun, options.attempt, bundle.site.model.bundle_hash);
    Visit visit(bundle, begun ? begun->header.seed : seed);
    if (begun)
        visit.resume(options.attempt);
    else if (!options.attempt.empty())
        visit.record(options.attempt);
    write_work_order(out, bundle);
    if (begun)
        out.line("Continued after " + std::to_string(visit.actions()) +
                 (visit.actions() == 1 ? " action" : " actions") + ", " + clock_text(visit.ticks_here()) +
                 "; `notes` and `status` say how things stand.");
    return options.script.empty() ? play_by_hand(out, options, bundle, visit)
                                  : play_script(out, options, bundle, visit, lines);
}

} // namespace lightoff::cli
