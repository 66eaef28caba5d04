// SPDX-License-Identifier: MIT
#include "cli/exit_codes.hpp"
#include "cli/playthrough.hpp"
#include "cli/replay_attempt.hpp"
#include "cli/text_layout.hpp"
#include "cli/usage_error.hpp"
#include "files/attempt_log.hpp"
#include "files/data_folder.hpp"
#include "files/disk.hpp"
#include "files/error.hpp"
#include "files/json_text.hpp"

#include <vector>

namespace lightoff::cli {
namespace {

struct Step {
    std::size_t line = 0;
    bench::Action action;
};

/// One action a line; empty lines and what follows a '#' are passed over.
std::vector<Step> read_script(const std::string& path, const bench::Site& site) {
    const std::string text = files::read_file(path);
    files::check_text(text, path);
    std::vector<Step> steps;
    std::size_t line = 0;
    for (std::size_t start = 0; start < text.size();) {
        const std::size_t end = std::min(text.find('\n', start), text.size());
        std::string words = text.substr(start, end - start);
        words.erase(std::min(words.find('#'), words.size()));
        words.erase(words.find_last_not_of(" \t\r") + 1);
        ++line;
        start = end + 1;
        if (words.find_first_not_of(" \t") == std::string::npos)
            continue;
        try {
            steps.push_back({line, bench::parse_action(site, words)});
        } catch (const std::invalid_argument& error) {
            throw files::Error(
                {path, "line " + std::to_string(line), files::in_quotes(words), "an action", error.what()});
        }
    }
    return steps;
}

/// A World that writes down what happens to it.
class Recording {
public:
    Recording(const files::LoadedBundle& bundle, const std::string& path, std::uint64_t seed)
        : site_(bundle.site), workspace_(bundle.site.model),
          world_(lesson::arrive(bundle.site, bundle.scenario, seed, workspace_)),
          writer_(path, {bundle.name, furnace::kPhysicsVersion, bundle.site.model.bundle_hash, seed}) {}

    /// Begins an action and lets time pass till it is done; the reason if it is refused.
    std::string act(const bench::Action& action) {
        const bench::Verdict verdict = bench::begin(site_, world_, action);
        if (!verdict.allowed)
            return verdict.reason;
        writer_.entry(tick(), "script", files::action_json(site_, action));
        while (world_.hands.busy != 0) {
            bench::advance(site_, world_, workspace_, 1);
            if (world_.tick % lesson::kMarkTicks == 0)
                mark();
        }
        return {};
    }
    void end(std::string_view reason) {
        if (world_.tick != marked_tick_)
            mark();
        writer_.end(reason);
    }
    [[nodiscard]] const bench::World& world() const { return world_; }

private:
    [[nodiscard]] std::int64_t tick() const { return static_cast<std::int64_t>(world_.tick); }
    void mark() {
        marked_tick_ = world_.tick;
        writer_.mark(tick(), lesson::world_hash(world_));
    }

    const bench::Site& site_;
    furnace::Workspace workspace_;
    bench::World world_;
    files::AttemptWriter writer_;
    std::uint64_t marked_tick_ = ~std::uint64_t{0};
};

} // namespace

int play_script(Output& out, const PlayOptions& options) {
    const std::uint64_t seed = whole_number_in("--seed", options.seed);
    const files::LoadedBundle bundle = files::load_bundle(options.scenario);
    const std::vector<Step> steps = read_script(options.script, bundle.site);
    Recording recording(bundle, options.attempt, seed);
    for (const Step& step : steps) {
        const double begun_s = seconds_of(recording.world().tick);
        const std::string refusal = recording.act(step.action);
        const std::string text = bench::format_action(bundle.site, step.action);
        out.line("  " + out.styled(Style::quiet, padded_left(fixed(begun_s, 2), 10) + " s") + "  " + text);
        if (!refusal.empty()) {
            out.line(out.styled(Style::bad, "refused") + " (line " + std::to_string(step.line) +
                     "): " + refusal);
            recording.end("an action of the script was refused");
            return kNegative;
        }
    }
    recording.end("end of the script");
    out.line(options.attempt + ": " + std::to_string(steps.size()) +
             (steps.size() == 1 ? " action, " : " actions, ") + fixed(seconds_of(recording.world().tick), 2) +
             " s");
    return kDone;
}

} // namespace lightoff::cli
