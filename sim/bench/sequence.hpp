// SPDX-License-Identifier: MIT
#pragma once
#include "bench/world.hpp"
#include "furnace/model.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// The sequence of operation as it goes by: the states of the board's own table, one after the other.
namespace lightoff::bench {

/// A stretch of a run in which a machine of the board is in one state, or the board has no power.
struct SequenceStep {
    std::uint64_t tick = 0; ///< of the first World that is in it
    bool powered = true;    ///< false: the board is dead, the rest says nothing
    std::size_t machine = 0;
    std::size_t state = 0;
    std::size_t from = 0;            ///< the state before
    std::uint16_t switched_on = 0;   ///< drivers that went on with it, as bits
    std::uint16_t switched_off = 0;  ///< and off
    std::optional<control::Exit> by; ///< the way by which the table came here; none at power-up
};

/// Looks at one World after the other and tells steps as they begin. The first look tells the step that
/// everything starts from. Where two machines move in one tick, the one that stands first in the table comes
/// first.
class SequenceWatch {
public:
    explicit SequenceWatch(const furnace::Model& model) : model_(&model) {}

    void look(const World& world, std::vector<SequenceStep>& out);
    /// Goes on from this World without telling anything: after a jump in time.
    void resume(const World& world) { seen_ = world.state.board; }

private:
    const furnace::Model* model_;
    std::optional<control::BoardState> seen_;
};

/// What the table calls it; "No control power".
std::string title_of(const furnace::Model& model, const SequenceStep& step);

/// What one exit of the table asks for.
struct WayOn {
    struct Sensed {
        std::size_t input = 0;
        bool wanted = true;
    };
    /// What another machine must be at, or must not.
    struct Elsewhere {
        std::string machine;
        std::vector<std::string> titles;
        bool in = true;
    };
    struct Counted {
        std::string counter;
        int at_least = 0;
    };
    std::vector<Sensed> sensed;
    double after_s = 0.0; ///< since the step began; 0: at once
    std::vector<Elsewhere> elsewhere;
    std::vector<Counted> counted;
    std::string leads_to; ///< title
    bool common = false;  ///< several states have it in common: how things go wrong, as a rule
};
WayOn way_of(const furnace::Model& model, const furnace::Condition& condition, std::size_t machine,
             const control::Exit& exit);

/// All ways out of a state, in the order in which the board tries them.
std::vector<WayOn> ways_out(const furnace::Model& model, const furnace::Condition& condition,
                            std::size_t machine, std::size_t state);

} // namespace lightoff::bench
