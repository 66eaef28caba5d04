// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "bench/expectation.hpp"
#include "bench/offers.hpp"
#include "support/rig.hpp"
#include "units/convert.hpp"

#include <string>
#include <vector>

// Saying what a reading will be before it is taken. How near counts as right is a teaching value.

using namespace lightoff;
using namespace lightoff::bench;
using instruments::Quantity;

namespace {

const Site& site() {
    return test::reference_site();
}

int window_of(const std::string& word) {
    for (const Choice& choice : choices(site(), Word::instrument))
        if (choice.name == word)
            return choice.value;
    FAIL("there is no window " << word);
    return -1;
}

instruments::Display showing(Quantity quantity, double value_si) {
    instruments::Display display;
    instruments::show(display, quantity, value_si);
    return display;
}

Reading reading(const std::string& window, std::uint64_t tick, const instruments::Display& display) {
    Reading one;
    one.tick = tick;
    one.window = window_of(window);
    one.display = display;
    return one;
}

TimedAction said(std::uint64_t tick, const std::string& text) {
    return {tick, parse_action(site(), text)};
}

std::int32_t number(const std::string& text) {
    return parse_action(site(), "expect multimeter " + text).value;
}

} // namespace

TEST_CASE("expect: a number comes back from its text") {
    for (const std::string text : {"24", "-0.95", "0", "0.003", "2000000", "-2000000", "OL"}) {
        const std::string line = "expect multimeter " + text;
        CHECK(format_action(site(), parse_action(site(), line)) == line);
    }
    CHECK(number("24.0005") == 24001);
    for (const std::string wrong : {"24V", "much", "2000001", "nan", "ol"})
        CHECK_THROWS_WITH(number(wrong), Catch::Contains(wrong));
}

TEST_CASE("expect: right is what a technician would call right") {
    const auto right = [](Quantity quantity, double value_si, const std::string& text) {
        return shows_expected(showing(quantity, value_si), number(text));
    };
    CHECK(right(Quantity::ac_volts, 26.3, "24"));
    CHECK_FALSE(right(Quantity::ac_volts, 0.1, "24"));
    CHECK(right(Quantity::ac_volts, 0.1, "0")); // across a closed switch
    CHECK_FALSE(right(Quantity::ac_volts, 12.0, "0"));
    CHECK(right(Quantity::dc_microamps, 3.6e-6, "4"));
    CHECK_FALSE(right(Quantity::dc_microamps, 0.4e-6, "4"));
    CHECK(right(Quantity::pressure, -0.72 * units::pascals_per_inwc, "-0.75"));
    CHECK_FALSE(right(Quantity::pressure, 0.0, "-0.75"));
    CHECK(right(Quantity::ohms, 1.02e3, "1000")); // shown in kilohms
    CHECK(right(Quantity::capacitance, 7.4e-6, "7.5"));
    CHECK(right(Quantity::temperature, units::fahrenheit_to_k(122.0), "120"));

    instruments::Display open;
    instruments::show_overload(open, Quantity::ohms);
    CHECK(shows_expected(open, number("OL")));
    CHECK_FALSE(shows_expected(open, number("60")));
    CHECK_FALSE(right(Quantity::ohms, 60.0, "OL"));
    CHECK_FALSE(shows_expected({}, number("OL"))); // nothing stands in the window
}

TEST_CASE("expect: the next reading of that instrument answers, once") {
    const std::vector<Reading> readings{
        reading("multimeter", 50, showing(Quantity::ac_volts, 26.0)),
        reading("manometer", 150, showing(Quantity::pressure, 0.0)),
        reading("multimeter", 250, showing(Quantity::ac_volts, 26.0)),
        reading("multimeter", 350, showing(Quantity::ac_volts, 0.0)),
    };
    const std::vector<TimedAction> lines{
        said(50, "expect multimeter 120"),  said(60, "look filter"),
        said(100, "expect multimeter 24"), // thought again
        said(100, "expect manometer -0.9"), said(260, "expect multimeter 24"),
        said(400, "expect multimeter 24")};
    const std::vector<Expectation> all = expectations(lines, readings);
    REQUIRE(all.size() == 4);
    CHECK((all[0].tick == 100 && all[0].reading == 3 && all[0].came_true));
    CHECK((all[1].reading == 2 && !all[1].came_true));
    CHECK((all[2].reading == 4 && !all[2].came_true));
    CHECK((all[3].reading == 0 && !all[3].came_true));
}

TEST_CASE("expect: paper only: no time, no hands, nothing that the furnace feels") {
    test::Rig rig;
    World world = rig.world;
    const Verdict verdict = begin(site(), world, parse_action(site(), "expect multimeter 24"));
    CHECK(verdict.allowed);
    CHECK(verdict.duration_ticks == 0);
    CHECK(is_paper(Verb::expect));
}
