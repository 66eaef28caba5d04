// SPDX-License-Identifier: MIT
// The progress lamp by itself. Expected: the rules of the design, spelt out.
#include "control/lamp.hpp"

#include <catch2/catch.hpp>
#include <string>

using namespace lightoff::control;

namespace {

LampPattern pattern(std::uint32_t on, std::uint32_t off, std::uint32_t flashes, std::uint32_t glow,
                    std::uint32_t rest, bool counted = false) {
    LampPattern p;
    p.on_ticks = on;
    p.flash_ticks = on + off;
    p.flashes = flashes;
    p.glow_ticks = glow;
    p.rest_ticks = rest;
    p.counted = counted;
    return p;
}

std::string film(LampState& lamp, const LampPattern& p, std::uint8_t index, std::uint8_t count, int ticks) {
    std::string frames;
    for (int i = 0; i < ticks; ++i) {
        step_lamp(lamp, &p, index, count, 2);
        frames += lamp.on != 0 ? '#' : '.';
    }
    return frames;
}

} // namespace

TEST_CASE("count, glow and rest follow each other, after a dark start") {
    LampState lamp;
    const LampPattern held = pattern(1, 2, 0, 4, 3, true);
    CHECK(film(lamp, held, 1, 2, 2 + 13 + 13) == ".."
                                                 "#..#..####..."
                                                 "#..#..####...");
    CHECK(film(lamp, held, 1, 3, 2 + 9) == ".."
                                           "#..#..#.."); // another count starts anew
    CHECK(film(lamp, held, 1, 0, 2 + 7) == ".."
                                           "####..."); // nothing passed: the glow alone
}

TEST_CASE("steady never goes dark, dark never lights") {
    LampState lamp;
    CHECK(film(lamp, pattern(0, 0, 0, 5, 0), 1, 0, 14) == "..############");
    CHECK(film(lamp, pattern(0, 0, 0, 0, 4), 2, 0, 10) == "..........");
}

TEST_CASE("registers: the interrupted count shows until the new trial ends or passes it") {
    LampRegisters r;
    r.reach(1);
    r.reach(2);
    r.reach(3);
    CHECK(r.shown() == 3);
    r.end_trial();
    CHECK(r.shown() == 3);
    r.reach(1);
    r.reach(2);
    CHECK(r.shown() == 3); // still the old one
    SECTION("passes it") {
        r.reach(3);
        r.reach(4);
        CHECK(r.shown() == 4);
    }
    SECTION("ends short of it") {
        r.end_trial();
        CHECK(r.shown() == 2);
        r.end_trial(); // an end without a step passed changes nothing
        CHECK(r.shown() == 2);
    }
    r.new_call();
    CHECK(r.shown() == 0);
}
