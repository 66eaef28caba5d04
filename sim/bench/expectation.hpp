// SPDX-License-Identifier: MIT
#pragma once
#include "bench/history.hpp"
#include "bench/notebook.hpp"

#include <cstdint>
#include <span>
#include <vector>

/// What somebody said that an instrument would read, and what it read. Nothing hangs on it but that one has
/// thought before looking.
namespace lightoff::bench {

struct Expectation {
    std::uint64_t tick = 0; ///< when it was said
    int window = 0;         ///< in the order of instruments::displays
    std::int32_t value = 0; ///< Word::expected
    int reading = 0;        ///< that answered it, from 1: the next one of that window; 0: none yet
    bool came_true = false;
};

/// Of everything that was said and done, in its order. What was said again before an answer counts once, as
/// it was said last.
std::vector<Expectation> expectations(std::span<const TimedAction> said, std::span<const Reading> readings);

/// Whether a window shows what was expected, about: within 15 %, or within what nobody would quarrel about
/// (1 V, 0.5 uA, 0.05 in. w.c., 5 F ...; teaching values).
bool shows_expected(const instruments::Display& display, std::int32_t expected);

} // namespace lightoff::bench
