// SPDX-License-Identifier: MIT
#pragma once
#include "bench/captions.hpp"
#include "bench/hazards.hpp"
#include "bench/history.hpp"
#include "bench/inverse.hpp"
#include "bench/notebook.hpp"
#include "files/attempt.hpp"
#include "files/bundle_loader.hpp"
#include "lesson/log.hpp"

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace lightoff::visit {

/// One call being worked: a World with the notebook, the captions and, if wanted, the attempt's file.
class Visit {
public:
    /// Something that has just been perceived or read, as it happens.
    struct Listener {
        std::function<void(const bench::Caption&)> caption;
        std::function<void(const bench::Reading&, std::size_t number)> reading;
        std::function<bool()> stop; ///< true: leave off now; the act in hand stays unfinished
    };

    /// Arrives at the call. `bundle` must outlive the session.
    Visit(const files::LoadedBundle& bundle, std::uint64_t seed);

    /// Begins a new attempt's file from here on. Throws files::Error if there is one of that name.
    void record(const std::string& path);
    /// Takes up an attempt that has no end: does again, silently, all that is in the file, finishes the act
    /// that it was left in, and writes on behind it. Throws files::Error if it has ended, was made with other
    /// data, or does not come out the same. The session's seed must be the attempt's.
    void resume(const std::string& path);

    /// Does again, silently, what a log holds up to a tick, from arrival on; to go on from there otherwise.
    /// Throws files::Error, naming `path`, if it does not come out the same.
    void follow(const lesson::Log& log, const std::string& path, std::uint64_t to_tick);

    /// Whether an action may be done now, and why not.
    [[nodiscard]] bench::Verdict check(const bench::Action& action) const;
    /// Sets it going; the reason if it is refused, else empty. Throws files::Error, and nothing is done, if
    /// it can't be written down.
    std::string begin(const bench::Action& action, const char* by);
    /// A tick passes, hands busy or not. Throws files::Error after the tick if a mark can't be written down.
    void tick();
    /// Does it and lets time pass till it is done; the reason if it is refused, else empty.
    std::string act(const bench::Action& action, const char* by, const Listener& listener);

    /// Seconds of waiting until `done` is first true of the World, its captions and readings; none if that
    /// takes longer than `limit_s`. Looks at what can be perceived only. Changes nothing.
    struct Ahead {
        const bench::Percept& percept;
        const std::vector<bench::Caption>& captions; ///< all; the first `captions_before` are known already
        std::size_t captions_before;
        std::size_t new_readings;
        std::int32_t ticks; ///< ahead of now
    };
    std::optional<std::int32_t> seconds_until(const std::function<bool(const Ahead&)>& done,
                                              std::int32_t limit_s, const std::function<bool()>& stop);

    /// Something that was done or said, and when it began.
    using Done = bench::TimedAction;
    [[nodiscard]] const std::vector<Done>& done() const { return done_; }
    [[nodiscard]] const std::vector<bench::Caption>& captions() const { return watch_.captions(); }

    /// What somebody could have been hurt by, so far.
    [[nodiscard]] const std::vector<bench::HazardEvent>& hazards() const { return hazards_.events(); }
    /// The first of the gravest kind: it ends the call. Null while there was none.
    [[nodiscard]] const bench::HazardEvent* stopped() const;
    /// The hazard that ends the call which an action would be if it began now; none if it would not. Changes
    /// nothing.
    std::optional<bench::Hazard> would_stop(const bench::Action& action);
    /// When the supply was proved dead, if nothing has been switched on since.
    [[nodiscard]] std::optional<std::uint64_t> proved_dead_tick() const { return proved_dead_tick_; }

    /// Leaves off: writes down the time, and the end if the work order is signed or the call was stopped.
    void leave();

    [[nodiscard]] const bench::Site& site() const { return *site_; }
    [[nodiscard]] const bench::World& world() const { return world_; }
    [[nodiscard]] const bench::Notebook& notebook() const { return notebook_; }
    [[nodiscard]] bench::Percept percept() const { return bench::perceive(*site_, world_); }
    [[nodiscard]] bool signed_off() const { return world_.handiwork.signed_off != 0; }
    [[nodiscard]] std::size_t actions() const { return done_.size(); }
    [[nodiscard]] bool recording() const { return writer_.has_value(); }
    /// Since arrival.
    [[nodiscard]] std::uint64_t ticks_here() const { return world_.tick - arrived_tick_; }
    [[nodiscard]] std::uint64_t arrived_tick() const { return arrived_tick_; }
    /// The act that undoes the last one that can be undone and was not; with it the last one's text.
    struct Undo {
        bench::Action done;
        bench::Action inverse;
    };
    [[nodiscard]] const std::optional<Undo>& undo() const { return undo_; }

private:
    void pass();
    void mark();
    void remember(const bench::Action& action, const bench::Percept& before);

    const files::LoadedBundle* bundle_;
    const bench::Site* site_;
    furnace::Workspace workspace_;
    std::uint64_t seed_;
    bench::World world_;
    bench::Notebook notebook_;
    bench::CaptionWatch watch_;
    bench::HazardWatch hazards_;
    std::optional<std::uint64_t> proved_dead_tick_;
    std::optional<files::AttemptWriter> writer_;
    std::uint64_t arrived_tick_;
    std::uint64_t marked_tick_ = ~std::uint64_t{0};
    std::vector<Done> done_;
    std::optional<Undo> undo_;
};

} // namespace lightoff::visit
