// SPDX-License-Identifier: MIT
// A window that misses something: letters, room, a disk.
#include "gui/real/acts.hpp"

#include <catch2/catch.hpp>

using namespace lightoff;
using test::In;
using test::Visitor;

TEST_CASE("without any typeface the window says so, and a call can be worked", "[real][missing]") {
    const TemporaryFolder folder;
    platform::WindowOptions options;
    options.fonts = {"/nowhere/Sans.otf", "/nowhere/Strong.otf", "/nowhere/Signs.ttf", "/nowhere/Mono.ttf"};
    Visitor visitor(test::later(folder), options);
    CHECK(visitor.window().font_messages().size() == 4);
    CHECK(visitor.shows_part("Typeface not found"));
    CHECK(visitor.shows_part("fonts-inter"));
    visitor.press("No heat at 14 Quarry Lane");
    visitor.press("Take the call");
    visitor.press_state_of("Disconnect");
    CHECK(visitor.last_done() == "disconnect off");
    visitor.press("−5", In::strip);
    CHECK(visitor.last_done().substr(0, 14) == "thermostat-set");
}

TEST_CASE("a tiny window says what it needs, and holds time; larger again it goes on", "[real][missing]") {
    const TemporaryFolder folder;
    Visitor visitor(test::later(folder));
    visitor.program().take_call("plugged-hose");
    visitor.settle();
    visitor.press("Bag", In::side);
    visitor.hands().resize(400, 300);
    visitor.until("a small window", [&] { return visitor.window().size().x == 400; });
    visitor.frame();
    CHECK(visitor.shows_part("too small to work in: 400 × 300"));
    CHECK(visitor.probe().problems().empty());
    const std::uint64_t tick = visitor.call().visit().ticks_here();
    for (int i = 0; i < 10; ++i)
        visitor.frame();
    CHECK(visitor.call().visit().ticks_here() == tick);
    visitor.hands().resize(1280, 720);
    visitor.until("a large window", [&] { return visitor.window().size().x == 1280; });
    visitor.frame();
    visitor.press_state_of("Disconnect");
    CHECK(visitor.last_done() == "disconnect off");
    CHECK(visitor.call().visit().ticks_here() > tick);
}

TEST_CASE("a home that can't be written to: said at once, and the call is worked to its end",
          "[real][missing]") {
    desk::Own own;
    own.attempts_folder = "/proc/nowhere/attempts";
    own.settings_file = "/proc/nowhere/settings.json";
    own.settings.sound = false;
    Visitor visitor(std::move(own));
    visitor.press("Lift the tag");
    CHECK(visitor.shows_part("Settings can't be kept"));
    visitor.press("No heat at 14 Quarry Lane");
    visitor.press("Take the call");
    CHECK(visitor.shows_part("This attempt can't be kept"));
    visitor.press_state_of("Disconnect");
    CHECK(visitor.last_done() == "disconnect off");
    visitor.press("Close", In::side);
    visitor.press("Customer's copy", In::side);
    visitor.scroll_and_press("Sign the work order", In::side);
    visitor.scroll_and_press("Sign it and leave", In::side);
    CHECK(visitor.program().at_the_desk());
    CHECK(visitor.shows_part("Nothing of it could be kept"));
}
