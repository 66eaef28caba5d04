// SPDX-License-Identifier: MIT
#pragma once
#include "instruments/bag.hpp"
#include "support/rig.hpp"

#include <stdexcept>
#include <string>

/// The reference furnace with the bag of instruments at it. It steps furnace and instruments by
/// itself: nothing happens but what a test does.
namespace lightoff::test {

using namespace lightoff::instruments;

class Desk {
public:
    /// The furnace `at_s` seconds into the golden call (the call comes at 5 s).
    explicit Desk(double at_s = 3.0, std::uint64_t instrument_seed = 1) : rig(0), seed(instrument_seed) {
        rig.run(at_s);
    }

    void ticks(std::uint64_t count) {
        bench::World& w = rig.world;
        for (std::uint64_t i = 0; i < count; ++i) {
            connect(bag, w.inputs);
            furnace::tick(rig.model, w.state, w.condition, w.inputs, rig.workspace);
            ++w.tick;
            step(rig.model, w.state, w.condition, w.inputs, seed, w.tick, rig.workspace, bag);
        }
        connect(bag, w.inputs);
    }
    void seconds(double s) { ticks(static_cast<std::uint64_t>(s * units::ticks_per_second + 0.5)); }

    [[nodiscard]] int node(const std::string& place) const {
        const int found = rig.model.find_test_point(place);
        if (found < 0)
            throw std::invalid_argument("there is no place " + place);
        return found;
    }
    [[nodiscard]] int element(const std::string& name) const {
        return rig.model.wiring.netlist.element(name);
    }

    void leads(Function function, const std::string& red, const std::string& black) {
        bag.multimeter.setting = {node(red), node(black), function};
    }
    /// Puts the meter in series where a wire has been pulled off its terminal.
    void in_series(Function function, const std::string& terminal) {
        lift(terminal);
        leads(function, terminal + ".pin", terminal + ".lug");
    }
    void lift(const std::string& terminal, bool parted = true) {
        electrical::set_element(rig.world.inputs.parted, rig.model.wiring.joint_of_terminal(terminal),
                                parted);
    }
    /// What the meter shows after 5 s.
    Value measure(Function function, const std::string& red, const std::string& black) {
        leads(function, red, black);
        seconds(5.0);
        return value_of(bag.multimeter.display);
    }
    [[nodiscard]] std::string window() const { return text(bag.multimeter.display); }

    /// Everything without power: breaker off, motors run down.
    void power_off() {
        rig.world.inputs.breaker_on = 0;
        seconds(60.0);
    }

    Rig rig;
    Bag bag;
    std::uint64_t seed;
};

/// A value lies within what a reading allows.
inline bool fits(const Value& reading, double true_value) {
    return reading.known && std::abs(reading.value - true_value) <= reading.half_width;
}

} // namespace lightoff::test
