// SPDX-License-Identifier: MIT
#pragma once
#include "bench/site.hpp"
#include "evidence/record.hpp"
#include "instruments/spots.hpp"

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace lightoff::evidence {

enum class TestKind : std::uint8_t {
    watch,     ///< the sequence: lamp, sounds, flame, air
    volts,     ///< between two nodes
    amps,      ///< clamp round a wire
    microamps, ///< in series with the flame rod
    pressure,  ///< manometer at a spot
    rise,      ///< thermometer in supply and return
    flue,      ///< analyser: oxygen and carbon monoxide
    ohms,      ///< an element by itself, power off and its wire lifted
    apart,     ///< ohms between two conductors that should not touch, power off and the wire of one lifted
    farads,    ///< a capacitor likewise
    sniff,     ///< combustible-gas detector at a joint
    look       ///< at a part
};

enum class When : std::uint8_t {
    as_it_stands,
    in_a_start, ///< power off and on, and the sequence watched
    when_warm,  ///< after eight minutes of it
    ending      ///< then the call ends, and four minutes are watched
};

/// A test that the trade would make, and what of it the furnace decides.
struct Test {
    TestKind kind = TestKind::watch;
    When when = When::as_it_stands;
    int a = 0;             ///< node, element, spot or part
    int b = 0;             ///< node
    std::size_t first = 0; ///< of its values in a Profile
    std::size_t values = 1;
    double look_up_s = 0.0; ///< to find the place on the diagram
    std::string what;
    int terminal = -1; ///< apart: whose wire is lifted
};

/// Every test there is at this furnace, from its own data: terminals, named readings, taps, parts with
/// something to see.
std::vector<Test> tests_on_offer(const bench::Site& site);

/// Work minutes of a test from how things stand: doors, power, putting the instrument on, the wait.
double minutes_of(const bench::Site& site, const Test& test, const Stance& stance);
/// How things stand after it.
Stance stance_after(const bench::Site& site, const Test& test, Stance stance);

} // namespace lightoff::evidence
