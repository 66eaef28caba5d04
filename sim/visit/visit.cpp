// SPDX-License-Identifier: MIT
#include "visit/visit.hpp"

#include "files/attempt_log.hpp"
#include "files/error.hpp"
#include "lesson/log.hpp"

#include <algorithm>

namespace lightoff::visit {
namespace {

bool is_grave(const bench::Site& site, bench::Hazard hazard) {
    return site.hazards[static_cast<std::size_t>(hazard)].gravity == bench::Gravity::stop_work;
}

constexpr std::uint64_t kAskEveryTicks = 64; ///< whether to leave off

} // namespace

Visit::Visit(const files::LoadedBundle& bundle, std::uint64_t seed)
    : bundle_(&bundle), site_(&bundle.site), workspace_(bundle.site.model), seed_(seed),
      world_(lesson::arrive(bundle.site, bundle.scenario, seed, workspace_)), notebook_(bundle.site),
      watch_(bundle.site), hazards_(bundle.site, bundle.scenario.school_rules), arrived_tick_(world_.tick) {}

void Visit::record(const std::string& path) {
    writer_.emplace(
        path, files::AttemptHeader{bundle_->name, furnace::kPhysicsVersion, site_->model.bundle_hash, seed_});
}

void Visit::pass() {
    bench::advance(*site_, world_, workspace_, 1);
    notebook_.observe(world_);
    watch_.observe(world_);
    hazards_.observe(world_, notebook_, workspace_);
    if (!hazards_.proved_dead())
        proved_dead_tick_.reset();
    else if (!proved_dead_tick_)
        proved_dead_tick_ = world_.tick;
}

void Visit::mark() {
    // A mark shows the World before what begins in its tick.
    const bool begun_now = !done_.empty() && done_.back().tick == world_.tick;
    if (!writer_ || world_.tick == marked_tick_ || begun_now)
        return;
    marked_tick_ = world_.tick;
    writer_->mark(static_cast<std::int64_t>(world_.tick), lesson::world_hash(world_));
}

void Visit::remember(const bench::Action& action, const bench::Percept& before) {
    if (undo_ && undo_->inverse == action) {
        undo_.reset();
        return;
    }
    if (const auto inverse = bench::inverse_of(action, before); inverse && bench::is_known(*site_, *inverse))
        undo_ = Undo{action, *inverse};
}

void Visit::follow(const lesson::Log& log, const std::string& path, std::uint64_t to_tick) {
    const auto differs = [&](const std::string& what) {
        return files::Error({path, "", what, "an attempt that comes out the same here",
                             "it was recorded by another program or machine; `replay` says more"});
    };
    std::size_t at = 0;
    const auto run_to = [&](std::uint64_t tick) {
        while (true) {
            for (; at < log.marks.size() && log.marks[at].tick <= world_.tick; ++at) {
                if (log.marks[at].tick < world_.tick ||
                    log.marks[at].world_hash != lesson::world_hash(world_))
                    throw differs("a mark at tick " + std::to_string(log.marks[at].tick) + " that differs");
                marked_tick_ = world_.tick;
            }
            if (world_.tick >= tick)
                return;
            pass();
        }
    };
    for (const lesson::Log::Entry& entry : log.entries) {
        if (entry.tick > to_tick)
            break;
        run_to(entry.tick);
        const bench::Percept before = percept();
        const bench::Verdict verdict = check(entry.action);
        if (!verdict.allowed)
            throw differs("an action that is refused: " + verdict.reason);
        hazards_.before(world_, entry.action, workspace_);
        bench::begin(*site_, world_, entry.action);
        remember(entry.action, before);
        done_.push_back({entry.tick, entry.action});
    }
    run_to(std::min(to_tick, log.last_tick));
}

void Visit::resume(const std::string& path) {
    files::Attempt so_far;
    files::AttemptWriter writer = files::AttemptWriter::resume(path, furnace::kPhysicsVersion, so_far);
    files::check_bundle(so_far, path, site_->model.bundle_hash);
    const lesson::Log log = files::log_of(so_far, path, *site_);
    follow(log, path, log.last_tick);
    writer_.emplace(std::move(writer));
    while (world_.hands.busy != 0)
        tick();
}

bench::Verdict Visit::check(const bench::Action& action) const {
    return bench::check(*site_, world_, action);
}

std::string Visit::begin(const bench::Action& action, const char* by) {
    const bench::Percept before = percept();
    const std::uint64_t begun_tick = world_.tick;
    if (bench::Verdict verdict = check(action); !verdict.allowed)
        return verdict.reason;
    if (writer_) // before anything is done: what can't be written down is not done
        writer_->entry(static_cast<std::int64_t>(begun_tick), by, files::action_json(*site_, action));
    hazards_.before(world_, action, workspace_);
    bench::begin(*site_, world_, action);
    done_.push_back({begun_tick, action});
    remember(action, before);
    return {};
}

void Visit::tick() {
    pass();
    if (world_.tick % lesson::kMarkTicks == 0)
        mark();
}

std::string Visit::act(const bench::Action& action, const char* by, const Listener& listener) {
    std::size_t captions = watch_.captions().size();
    std::size_t readings = notebook_.readings().size();
    if (std::string why = begin(action, by); !why.empty())
        return why;
    while (world_.hands.busy != 0) {
        tick();
        for (; captions < watch_.captions().size(); ++captions)
            listener.caption(watch_.captions()[captions]);
        for (; readings < notebook_.readings().size(); ++readings)
            listener.reading(notebook_.readings()[readings], readings + 1);
        if (world_.tick % kAskEveryTicks == 0 && listener.stop())
            break;
    }
    return {};
}

std::optional<std::int32_t> Visit::seconds_until(const std::function<bool(const Ahead&)>& done,
                                                 std::int32_t limit_s, const std::function<bool()>& stop) {
    bench::World world = world_;
    bench::Notebook notebook = notebook_;
    bench::CaptionWatch watch = watch_;
    const std::size_t captions = watch.captions().size();
    const std::size_t readings = notebook.readings().size();
    constexpr std::int32_t kTicksPerSecond = 20;
    for (std::int32_t tick = 1; tick <= limit_s * kTicksPerSecond; ++tick) {
        bench::advance(*site_, world, workspace_, 1);
        notebook.observe(world);
        const bench::Percept percept = bench::perceive(*site_, world);
        watch.observe(percept);
        if (done({percept, watch.captions(), captions, notebook.readings().size() - readings, tick}))
            return (tick + kTicksPerSecond - 1) / kTicksPerSecond;
        if (static_cast<std::uint64_t>(tick) % kAskEveryTicks == 0 && stop())
            break;
    }
    return std::nullopt;
}

const bench::HazardEvent* Visit::stopped() const {
    const auto& events = hazards_.events();
    const auto grave = std::find_if(events.begin(), events.end(), [&](const bench::HazardEvent& event) {
        return is_grave(*site_, event.hazard);
    });
    return grave == events.end() ? nullptr : &*grave;
}

std::optional<bench::Hazard> Visit::would_stop(const bench::Action& action) {
    if (!check(action).allowed)
        return std::nullopt;
    bench::HazardWatch ahead = hazards_;
    const std::size_t known = ahead.events().size();
    ahead.before(world_, action, workspace_);
    for (std::size_t i = known; i < ahead.events().size(); ++i)
        if (is_grave(*site_, ahead.events()[i].hazard))
            return ahead.events()[i].hazard;
    return std::nullopt;
}

void Visit::leave() {
    if (!writer_)
        return;
    mark();
    if (signed_off())
        writer_->end("signed off");
    else if (stopped() != nullptr)
        writer_->end("stop work");
    writer_.reset();
}

} // namespace lightoff::visit
