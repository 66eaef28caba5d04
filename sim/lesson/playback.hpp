// SPDX-License-Identifier: MIT
#pragma once
#include "lesson/log.hpp"
#include "lesson/scenario.hpp"

namespace lightoff::lesson {

/// Whoever looks on while an attempt runs again.
class Onlooker {
public:
    virtual ~Onlooker() = default;
    /// The student stands before the furnace.
    virtual void arrived(const bench::World& world) = 0;
    /// An action is about to begin; it has been found allowed.
    virtual void before(const bench::World& world, const bench::Action& action) = 0;
    /// A tick has passed.
    virtual void tick(const bench::World& world) = 0;
};

/// Runs a recorded attempt again, from its scenario to its last tick. Throws std::invalid_argument if a
/// recorded action is refused: then it was recorded otherwise.
void play(const bench::Site& site, const Scenario& scenario, const Log& log, Onlooker& onlooker);

} // namespace lightoff::lesson
