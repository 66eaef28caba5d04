// SPDX-License-Identifier: MIT
#include "gui/platform/frame_pacer.hpp"

#include <catch2/catch.hpp>

using lightoff::platform::FramePacer;

TEST_CASE("a running page gets sixty frames a second, less the time the frame took") {
    const FramePacer pacer;
    CHECK(pacer.wait_s(0, 0, false) == Approx(1.0 / 60));
    CHECK(pacer.wait_s(0.010, 0, false) == Approx(1.0 / 60 - 0.010));
    CHECK(pacer.wait_s(0.050, 0, false) == 0);
}

TEST_CASE("an unchanging page waits as long as the app likes, but never over four seconds") {
    FramePacer pacer;
    for (int i = 0; i < FramePacer::kSettling; ++i) {
        CHECK_FALSE(pacer.idle(1e9));
        pacer.drew();
    }
    CHECK(pacer.idle(1e9));
    CHECK(pacer.wait_s(0, 1e9, false) == FramePacer::kLongest_s);
    CHECK(pacer.wait_s(1, 1e9, false) == FramePacer::kLongest_s - 1); // and that is the end of it
    CHECK(pacer.wait_s(0, 0.2, false) == Approx(0.2));
}

TEST_CASE("input brings some frames at full rate; a text cursor goes on blinking") {
    FramePacer pacer;
    for (int i = 0; i < FramePacer::kSettling; ++i) {
        pacer.drew();
    }
    CHECK(pacer.wait_s(0, 1e9, true) == FramePacer::kBlink_s);
    pacer.wake();
    CHECK(pacer.wait_s(0, 1e9, false) == Approx(1.0 / 60));
}
