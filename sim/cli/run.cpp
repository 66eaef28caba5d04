// SPDX-License-Identifier: MIT
#include "cli/run.hpp"

#include "bench/milestones.hpp"
#include "bench/readouts.hpp"
#include "cli/board_text.hpp"
#include "cli/exit_codes.hpp"
#include "cli/interrupt.hpp"
#include "cli/live_view.hpp"
#include "cli/playthrough.hpp"
#include "cli/readout_text.hpp"
#include "cli/text_layout.hpp"
#include "cli/trace.hpp"
#include "cli/usage_error.hpp"
#include "files/hash.hpp"
#include "lesson/log.hpp"

#include <algorithm>
#include <optional>

namespace lightoff::cli {
namespace {

constexpr std::uint64_t kCallTicks = 900 * 20; // from cold to steady in a good 10 minutes
constexpr std::uint64_t kAskEvery = 20;        // ticks between two looks for Ctrl-C

/// What a run tells while it goes on.
class Story {
public:
    virtual ~Story() = default;
    virtual void begin() = 0;
    virtual void milestone(const bench::Milestone& milestone) = 0;
    virtual void at(const bench::World&) {}
    virtual void end(Playthrough& run, bool interrupted) = 0;
};

class PageStory : public Story {
public:
    PageStory(Output& out, const files::LoadedBundle& bundle, std::uint64_t last_tick)
        : out_(out), bundle_(bundle), view_(out, bundle.site.model, last_tick) {}

    void begin() override {
        out_.line(out_.heading(bundle_.scenario.title));
        write_wrapped(out_, bundle_.site.model.title);
        out_.line();
        out_.line(out_.heading("Sequence"));
    }
    void milestone(const bench::Milestone& m) override {
        view_.clear();
        out_.line("  " + out_.styled(Style::quiet, padded_left(fixed(seconds_of(m.tick), 2), 10) + " s") +
                  "  " + m.text);
    }
    void at(const bench::World& world) override { view_.look(world); }
    void end(Playthrough& run, bool interrupted) override {
        view_.clear();
        const std::string time = fixed(seconds_of(run.world().tick), 2) + " s";
        out_.line();
        if (interrupted)
            out_.line(out_.styled(Style::warm, "Stopped by hand at " + time + "."));
        out_.line(out_.heading("State at " + time));
        const std::vector<std::string> steps = board_steps(run.model(), run.world());
        for (std::size_t m = 0; m < steps.size(); ++m)
            write_labelled(out_, "  board, " + run.model().board.machines[m].name, 34, steps[m]);
        write_labelled(out_, "  lamp", 34, lamp_text(run.model(), run.world()));
        write_readouts(out_, bench::readouts(run.model(), run.world(), run.workspace()));
    }

private:
    Output& out_;
    const files::LoadedBundle& bundle_;
    LiveView view_;
};

class JsonStory : public Story {
public:
    JsonStory(Output& out, const files::LoadedBundle& bundle, std::uint64_t seed)
        : out_(out), bundle_(bundle), seed_(seed) {}

    void begin() override {
        json_["scenario"] = bundle_.name;
        json_["title"] = bundle_.scenario.title;
        json_["equipment"] = bundle_.site.model.name;
        json_["bundle"] = files::hex(bundle_.site.model.bundle_hash);
        json_["physics_version"] = furnace::kPhysicsVersion;
        json_["seed"] = seed_;
        json_["milestones"] = OrderedJson::array();
    }
    void milestone(const bench::Milestone& m) override {
        json_["milestones"].push_back({{"time_s", seconds_of(m.tick)}, {"event", m.text}});
    }
    void end(Playthrough& run, bool interrupted) override {
        json_["interrupted"] = interrupted;
        json_["time_s"] = seconds_of(run.world().tick);
        json_["board"] = OrderedJson::object();
        const std::vector<std::string> steps = board_steps(run.model(), run.world());
        for (std::size_t m = 0; m < steps.size(); ++m)
            json_["board"][run.model().board.machines[m].name] = steps[m];
        json_["lamp"] = lamp_text(run.model(), run.world());
        json_["readings"] = readouts_json(bench::readouts(run.model(), run.world(), run.workspace()));
        json_["world_hash"] = files::hex(lesson::world_hash(run.world()));
        out_.line(json_text(json_));
    }

private:
    Output& out_;
    const files::LoadedBundle& bundle_;
    std::uint64_t seed_;
    OrderedJson json_;
};

std::unique_ptr<Story> story_of(Output& out, const files::LoadedBundle& bundle, const RunOptions& options,
                                std::uint64_t last_tick, std::uint64_t seed) {
    if (options.json)
        return std::make_unique<JsonStory>(out, bundle, seed);
    return std::make_unique<PageStory>(out, bundle, last_tick);
}

/// False if Ctrl-C ended it.
bool play(Playthrough& run, Story& story, Trace* trace, std::uint64_t trace_every, std::uint64_t last_tick) {
    const Interrupt interrupt;
    bench::MilestoneWatch watch(run.model());
    std::vector<bench::Milestone> news;
    watch.look(run.world(), news);
    if (trace != nullptr)
        trace->row(run);
    while (run.world().tick < last_tick) {
        run.run_to(run.world().tick + 1);
        watch.look(run.world(), news);
        for (const bench::Milestone& milestone : news)
            story.milestone(milestone);
        news.clear();
        if (trace != nullptr && run.world().tick % trace_every == 0)
            trace->row(run);
        story.at(run.world());
        if (run.world().tick % kAskEvery == 0 && interrupt.asked())
            return false;
    }
    return true;
}

} // namespace

std::uint64_t run_ticks(const std::string& for_s, std::uint64_t arrive_after_ticks) {
    return for_s.empty() ? std::max(kCallTicks, arrive_after_ticks) : ticks_in("--for", for_s);
}

int run(Output& out, const RunOptions& options) {
    const std::uint64_t seed = whole_number_in("--seed", options.seed);
    const std::uint64_t trace_every = ticks_in("--trace-every", options.trace_every_s);
    if (trace_every == 0)
        throw UsageError("--trace-every: found 0; allowed 0.05 s and more");
    const files::LoadedBundle bundle = files::load_bundle(options.scenario);
    const std::uint64_t last_tick = run_ticks(options.for_s, bundle.scenario.arrive_after_ticks);
    Playthrough playthrough(bundle, seed);
    std::optional<Trace> trace;
    if (!options.trace.empty())
        trace.emplace(options.trace, playthrough);
    const std::unique_ptr<Story> story = story_of(out, bundle, options, last_tick, seed);
    story->begin();
    const bool finished = play(playthrough, *story, trace ? &*trace : nullptr, trace_every, last_tick);
    story->end(playthrough, !finished);
    return finished ? kDone : kInterrupted;
}

int hash(Output& out, const HashOptions& options) {
    const std::uint64_t seed = whole_number_in("--seed", options.seed);
    const files::LoadedBundle bundle = files::load_bundle(options.scenario);
    Playthrough playthrough(bundle, seed);
    playthrough.run_to(run_ticks(options.for_s, bundle.scenario.arrive_after_ticks));
    out.line(files::hex(lesson::world_hash(playthrough.world())));
    return kDone;
}

} // namespace lightoff::cli
