// SPDX-License-Identifier: MIT
#pragma once
#include "bench/notebook.hpp"
#include "evidence/bank.hpp"
#include "evidence/cause.hpp"
#include "evidence/offer.hpp"
#include "evidence/record.hpp"

#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <vector>

/// Which causes still fit what was read, what each reading was worth, and what would have been worth more.
/// Proof is computed: hypothesis furnaces do what the student does and show what they would show.
namespace lightoff::evidence {

/// Something seen or read that ruled causes out.
struct Step {
    std::uint64_t tick = 0;
    int reading = 0;               ///< number in the notebook, counted from 1; 0: eyes, ears, nose, hand
    std::vector<Cause> ruled_out;  ///< ascending
    std::size_t still_fitting = 0; ///< causes, after it
};

/// What a reading was worth before it was taken.
enum class Word : std::uint8_t {
    splitter,  ///< at least 60 % of the best test's pairs a minute
    narrower,  ///< at least 20 %
    confirmer, ///< could have refuted the leader
    repeat,    ///< of a reading under the same setting that could not have come out otherwise
    idle,
    safety ///< CO, leaks, live or dead: never idle
};

struct Worth {
    Word word = Word::idle;
    std::uint64_t from_tick = 0; ///< the reading before it, or arrival: what it is judged from
    int test = 0;                ///< the first reading of the same test: nothing was done between
    int pairs = 0;               ///< of fitting causes that it tells apart
    double minutes = 0.0;        ///< of work since the last reading before
    double pairs_a_minute = 0.0; ///< of this one
    double best = 0.0;           ///< of the best test on offer then
    bool against_leader = false; ///< it could have refuted the likeliest cause
};

/// The coach's way from arrival, test after test by pairs a minute.
struct Route {
    double minutes = 0.0;                   ///< of work
    std::vector<int> tests;                 ///< places in Bank::tests
    std::vector<double> done_minutes;       ///< by test: minutes of work when it is done
    std::vector<std::size_t> still_fitting; ///< by test: causes, after it
    std::vector<Cause> group;               ///< what is left: causes that nothing on offer tells apart
};

/// Observes an attempt. `bank` must outlive it. Everything asked of it depends on the begin and on what was
/// perceived and done, not on what is really wrong.
class Investigation {
public:
    /// At the moment of arrival.
    Investigation(Bank& bank, const bench::World& arrived);

    /// An action has just begun, at the tick of the World last observed.
    void act(const bench::Action& action);
    /// After every tick.
    void observe(const bench::World& world);

    [[nodiscard]] const Bank& bank() const { return *bank_; }
    /// The notebook: reading `n` is at `n - 1`.
    [[nodiscard]] const std::vector<bench::Reading>& readings() const {
        return record_.notebook().readings();
    }

    /// Causes that give everything seen and read so far, ascending: single ones; if none does, those that
    /// come and go; if none of them does either, pairs.
    std::vector<Cause> fitting() { return fitting_at(record_.now()); }
    /// The same as it was after everything up to and including `tick`.
    std::vector<Cause> fitting_at(std::uint64_t tick);
    /// Of one cause, single or a pair, without asking for the others.
    bool fits_at(Cause cause, std::uint64_t tick) { return fits_first(cause, observed_at(tick)); }
    /// Whether some furnace with this single cause gives all of the readings (from 1), whatever else was
    /// seen.
    bool gives_readings(Cause cause, const std::vector<int>& readings);
    /// Whether two faults at once give everything up to `tick`, though a single one may do so, too.
    bool pair_fits_at(Cause pair, std::uint64_t tick);
    /// Work minutes of the cheapest test on offer that tells one of some causes from one of the others, as
    /// the doors and the power stood at `tick`; infinite if there is none. Pairs count for nothing.
    double cheapest_between(const std::vector<Cause>& some, const std::vector<Cause>& others,
                            std::uint64_t tick);
    /// Just before and just after a reading (from 1).
    std::vector<Cause> fitting_before(int reading);
    std::vector<Cause> fitting_after(int reading);
    /// Whether no single cause (nor "nothing wrong") gives everything up to `tick`.
    bool no_single_cause_fits(std::uint64_t tick);

    /// How the set fell, from arrival on; single causes only.
    std::vector<Step> staircase();
    /// What ruled a single cause out; none while it fits.
    std::optional<Step> ruled_out_by(Cause cause);

    Worth worth_of(int reading);
    /// Tests on offer now, best first, at most `most`.
    std::vector<Offer> best_tests(std::size_t most);
    /// The same after everything up to and including `tick`, the doors and the power as at the last reading.
    std::vector<Offer> best_tests_at(std::uint64_t tick, std::size_t most);
    /// A test of the list, judged now.
    Offer judge(int test);

    /// Causes that no test of the list tells from this one, itself included.
    std::vector<Cause> group_of(Cause cause);
    /// The coach's way from arrival if this were the cause.
    Route route_to(Cause cause);
    /// Mean work minutes of those ways over the causes that fit on arrival, weighted by the catalogue's
    /// priors.
    double expected_minutes();

    /// Of the causes, the likeliest by the catalogue's priors; the first of equals. `causes` not empty.
    [[nodiscard]] Cause leader(const std::vector<Cause>& causes) const;

private:
    static constexpr std::size_t kNever = ~std::size_t{0};
    /// A span of severities on its way through the observations.
    struct Candidate {
        Variant variant;
        int halvings = 0;                ///< of a span of the grid
        std::size_t left_at = kNever;    ///< the observation that it does not give
        std::size_t torn_at = kNever;    ///< the one from which on only its halves count
        std::size_t checked = 0;         ///< observations that it has been held against
        std::vector<Candidate> halves{}; ///< once torn
    };
    /// Which ends of a span give an observation by themselves; of what comes and goes: when it is away, when
    /// it is there.
    struct Ends {
        bool low = false;
        bool high = false;
        friend bool operator==(const Ends&, const Ends&) = default;
    };

    // Sets after the first so many observations.
    [[nodiscard]] std::size_t observed_at(std::uint64_t tick) const;
    [[nodiscard]] std::size_t place_of(int reading) const;
    std::vector<Cause> fitting_first(std::size_t observations);
    std::vector<Cause> singles_first(std::size_t observations);
    std::vector<Cause> fickle_first(std::size_t observations);
    std::vector<Cause> pairs_first(std::size_t observations);
    bool fits_first(Cause cause, std::size_t observations);
    /// The observation that ruled a cause out, of the first so many; kNever if none did.
    std::size_t left_at(Cause cause, std::size_t observations);

    // Hypothesis furnaces.
    [[nodiscard]] const Found& found(std::size_t furnace) const;
    [[nodiscard]] std::vector<Cause> single_causes() const;
    std::vector<Candidate>& candidates_of(Cause cause);
    void open_pairs(std::size_t observations);
    void add_pair(Cause pair);
    bool gives(Cause cause, Candidate& candidate, std::size_t observations);
    const Candidate* giving(Cause cause, Candidate& candidate, std::size_t observations);
    std::size_t left_at(Cause cause, Candidate& candidate, std::size_t observations);
    bool gives_one(const Variant& variant, std::size_t observation);
    Ends ends_giving(const Variant& variant, std::size_t observation);
    bool is_torn(const Variant& variant, std::size_t senses);
    bool flickers(Cause cause, const Variant& variant, std::size_t observation);
    [[nodiscard]] bool is_of_a_wire(std::size_t observation) const;
    void halve(Cause cause, Candidate& candidate);
    const Prediction& said(std::size_t furnace, std::size_t observation);
    [[nodiscard]] const bench::Reading* reading_of(const Observation& observation) const;

    // Worth.
    bool has_double(Cause cause, const Suspect& its, std::size_t observations);
    Suspect suspect(Cause cause, std::size_t observations);
    std::vector<Suspect> suspects(const std::vector<Cause>& causes, std::size_t observations);
    std::size_t test_began(int reading) const;
    bool showed_apart(const Suspect& a, const Suspect& b, std::size_t from, std::size_t to);
    bool was_read_before(int reading, std::size_t from) const;
    std::vector<Offer> best_tests(std::size_t observations, const Stance& stance, std::size_t most);
    Offer offer(const Rating& rating, const std::vector<Suspect>& suspects);

    Bank* bank_;
    Record record_;
    furnace::Workspace workspace_;
    std::map<std::size_t, Furnace> running_; ///< by place in the bank; pairs come after it
    std::map<Cause, std::vector<Candidate>> candidates_;
    std::map<Cause, Candidate> fickle_; ///< now with the fault, now without
    std::vector<Found> pairs_found_;
    std::vector<Cause> pairs_;
    bool pairs_open_ = false;
};

} // namespace lightoff::evidence
