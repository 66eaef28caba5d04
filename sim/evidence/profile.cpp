// SPDX-License-Identifier: MIT
#include "evidence/profile.hpp"

#include "evidence/doubt.hpp"
#include "evidence/sensed.hpp"
#include "instruments/bag.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <limits>

namespace lightoff::evidence {
namespace {

using instruments::Quantity;

constexpr std::uint64_t kSampleTicks = 20;
constexpr std::uint64_t kOffTicks = 60;
constexpr std::uint64_t kOhmsTicks = 100; ///< till an ohmmeter stands, and motors and coils are at rest
constexpr std::uint64_t kStartTicks = 1800;
constexpr std::uint64_t kWarmTicks = 9600;
constexpr std::uint64_t kEndingTicks = 4800;
constexpr double kColder_k = 280.0; ///< the thermostat turned down: no call
constexpr double kSteps_s = 20.0;   ///< times closer than half of this are one
/// Of what an analyser's cells have still to follow, in a second (docs/instruments.md: 5 to 8 s): a puff at
/// the light-off is gone before they notice.
constexpr double kCellShare = 0.15;
constexpr double kWarmer_k = 4.0; ///< the thermostat turned up so far above the house
constexpr double kInfinite = std::numeric_limits<double>::infinity();

Quantity quantity_of(TestKind kind, std::size_t value) {
    switch (kind) {
    case TestKind::volts:
        return Quantity::ac_volts;
    case TestKind::amps:
        return Quantity::clamp_amps;
    case TestKind::microamps:
        return Quantity::dc_microamps;
    case TestKind::pressure:
        return Quantity::pressure;
    case TestKind::rise:
        return Quantity::temperature_difference;
    case TestKind::flue:
        return value == 0 ? Quantity::oxygen : Quantity::carbon_monoxide;
    case TestKind::ohms:
    case TestKind::apart:
        return Quantity::ohms;
    case TestKind::farads:
        return Quantity::capacitance;
    case TestKind::sniff:
        return Quantity::ticking;
    case TestKind::watch:
    case TestKind::look:
        break;
    }
    return Quantity::none;
}

/// As an instrument shows a value; words are whole numbers with no doubt about them.
Shown shown(TestKind kind, std::size_t value, double si) {
    const Quantity quantity = quantity_of(kind, value);
    if (quantity == Quantity::none)
        return {si, 0.25};
    instruments::Display display;
    instruments::show(display, quantity, si);
    const instruments::Value read = instruments::value_of(display);
    return read.known ? Shown{si, doubt(quantity, read)} : Shown{kInfinite, 0.0};
}

double magnitude(double x) {
    return x < 0.0 ? -x : x;
}

unsigned highest(std::uint32_t bits) {
    return bits == 0 ? 0U : 31U - static_cast<unsigned>(std::countl_zero(bits));
}

class Prober {
public:
    Prober(const bench::Site& site, const std::vector<Test>& tests, const bench::World& found,
           furnace::Workspace& workspace)
        : site_(site), tests_(tests), world_(found), workspace_(workspace) {
        values_.assign(tests.empty() ? 0 : tests.back().first + tests.back().values, 0.0);
    }

    Profile run() {
        look(When::as_it_stands);
        cold();
        furnace::Inputs& in = world_.inputs;
        in.set_point_k = std::max(in.set_point_k, world_.state.heat.temperature.house + kWarmer_k);
        if (in.disconnect_on != 0) {
            in.disconnect_on = 0;
            bench::advance(site_, world_, workspace_, kOffTicks);
            in.disconnect_on = 1;
        }
        for (std::uint64_t i = 0; i < kWarmTicks; i += kSampleTicks) {
            bench::advance(site_, world_, workspace_, kSampleTicks);
            add(sensed_, sense(bench::perceive(site_, world_), world_.state.board.lamp));
            look(When::when_warm);
            time_the_blower();
            if (i < kStartTicks)
                look(When::in_a_start);
            if (i + kSampleTicks == kStartTicks)
                watch(When::in_a_start);
        }
        watch(When::when_warm);
        watch_ending();
        Profile profile;
        for (const Test& test : tests_)
            for (std::size_t i = 0; i < test.values; ++i)
                profile.push_back(shown(test.kind, i, values_[test.first + i]));
        return profile;
    }

private:
    void keep_greatest(const Test& test, std::size_t i, double value) {
        double& kept = values_[test.first + i];
        if (magnitude(value) > magnitude(kept))
            kept = value;
    }

    /// What an instrument left in place would show; of a run, the most of it.
    void look(When when) {
        const furnace::Signals& s = world_.state.signals;
        const electrical::AcSolution ac =
            furnace::solve_ac(site_.model, world_.state, world_.condition, world_.inputs, workspace_);
        electrical::AcVoltages volts{};
        workspace_.network.node_voltages(ac, volts);
        const instruments::Moment now(site_.model, world_.state, world_.condition, world_.inputs, world_.seed,
                                      world_.tick, workspace_);
        const auto v = [&](int node) { return volts[static_cast<std::size_t>(node)]; };
        for (const Test& test : tests_) {
            if (test.when != when)
                continue;
            switch (test.kind) {
            case TestKind::volts:
                keep_greatest(test, 0, units::abs(v(test.a) - v(test.b)));
                break;
            case TestKind::amps:
                keep_greatest(test, 0, units::abs(workspace_.network.element_current(ac, volts, test.a)));
                break;
            case TestKind::microamps:
                keep_greatest(test, 0, s.power.flame_current_a);
                break;
            case TestKind::pressure:
                keep_greatest(test, 0,
                              instruments::gauge_pressure_pa(now, static_cast<instruments::Spot>(test.a)));
                break;
            case TestKind::rise:
                keep_greatest(test, 0, s.heat.supply_air_k - world_.state.heat.temperature.house);
                break;
            case TestKind::sniff:
                keep_greatest(test, 0,
                              instruments::ticking_hz(
                                  instruments::gas_fraction_at(now, static_cast<instruments::Spot>(test.a))));
                break;
            case TestKind::flue: {
                const instruments::FlueSample sample =
                    instruments::flue_sample(now, static_cast<instruments::Spot>(test.a));
                flue_.o2 += kCellShare * (sample.o2 - flue_.o2);
                flue_.co += kCellShare * (sample.co - flue_.co);
                double& o2 = values_[test.first];
                o2 = o2 == 0.0 ? flue_.o2 : std::min(o2, flue_.o2);
                keep_greatest(test, 1, flue_.co);
                break;
            }
            case TestKind::watch:
            case TestKind::ohms:
            case TestKind::apart:
            case TestKind::farads:
            case TestKind::look:
                break;
            }
        }
    }

    /// Parts by themselves: ohms, capacitance, looks.
    void cold() {
        for (const Test& test : tests_) {
            if (test.kind == TestKind::ohms || test.kind == TestKind::farads)
                values_[test.first] = bench::by_itself(site_.model, world_.condition, test.a);
            if (test.kind == TestKind::apart)
                values_[test.first] = ohms_apart(test);
            if (test.kind != TestKind::look)
                continue;
            const faults::Look& look = site_.catalogue.parts[static_cast<std::size_t>(test.a)].look;
            const std::vector<int> bands = faults::describe(look, world_.condition);
            for (std::size_t i = 0; i < bands.size(); ++i)
                values_[test.first + i] = bands[i];
            if (test.values > bands.size())
                values_[test.first + bands.size()] = controls_at(test.a);
        }
    }
    /// By the meter itself, with the power off and the wire in the hand.
    [[nodiscard]] double ohms_apart(const Test& test) const {
        bench::World world = world_;
        const furnace::Terminal& t = site_.model.wiring.terminals[static_cast<std::size_t>(test.terminal)];
        world.inputs.disconnect_on = 0;
        electrical::set_element(world.inputs.parted, t.joint, true);
        world.bag.multimeter.setting = {test.a, test.b, instruments::Function::ohms};
        instruments::connect(world.bag, world.inputs);
        bench::advance(site_, world, workspace_, kOhmsTicks);
        const instruments::Value read = instruments::value_of(world.bag.multimeter.display);
        return read.known ? read.value : static_cast<double>(electrical::kOpenOhm);
    }
    [[nodiscard]] double controls_at(int part) const {
        std::uint8_t mask = 0;
        for (const faults::Fault& f : site_.catalogue.faults)
            if (f.part == part)
                for (const faults::ControlLeft& left : f.controls)
                    mask = static_cast<std::uint8_t>(mask | 1U << static_cast<unsigned>(left.control));
        return static_cast<double>(controls_of(world_.inputs) & mask);
    }

    /// How long burners, inducer and blower go on once the call is over.
    void watch_ending() {
        world_.inputs.set_point_k = kColder_k;
        std::array<double, 3> goes_on_s{};
        for (std::uint64_t i = 0; i < kEndingTicks; i += kSampleTicks) {
            bench::advance(site_, world_, workspace_, kSampleTicks);
            const bench::Heard heard = bench::perceive(site_, world_).heard;
            const std::array<bool, 3> on{heard.roar > 0, heard.inducer_hz > 0, heard.blower_hz > 0};
            for (std::size_t k = 0; k < on.size(); ++k)
                if (on[k])
                    goes_on_s[k] = static_cast<double>(i + kSampleTicks) * units::seconds_per_tick;
            look(When::ending);
        }
        for (const Test& test : tests_)
            if (test.kind == TestKind::watch && test.when == When::ending)
                for (std::size_t k = 0; k < goes_on_s.size(); ++k)
                    values_[test.first + k] = goes_on_s[k] / kSteps_s;
    }

    /// From the burners' roar to the blower's start.
    void time_the_blower() {
        const bench::Heard heard = bench::perceive(site_, world_).heard;
        if (heard.roar == 0 && blower_after_s_ == 0.0)
            return;
        if (heard.blower_hz == 0 && !blower_started_)
            blower_after_s_ += static_cast<double>(kSampleTicks) * units::seconds_per_tick;
        blower_started_ = blower_started_ || heard.blower_hz > 0;
    }

    void watch(When when) {
        const auto top = [&](Channel channel) {
            return static_cast<double>(highest(sensed_[static_cast<std::size_t>(channel)]));
        };
        for (const Test& test : tests_) {
            if (test.kind != TestKind::watch || test.when != when)
                continue;
            double* value = &values_[test.first];
            value[0] = top(Channel::inducer);
            value[1] = top(Channel::roar);
            value[2] = top(Channel::blower);
            value[3] = world_.state.board.lamp.pattern == control::kNoPattern
                           ? 0.0
                           : 1.0 + world_.state.board.lamp.pattern;
            value[4] = world_.state.board.lamp.count;
            value[6] = blower_started_ ? blower_after_s_ / kSteps_s : 0.0;
            const unsigned fifths =
                (highest(sensed_[static_cast<std::size_t>(Channel::register_air)]) + 1) / 2;
            value[5] = fifths;
        }
    }

    const bench::Site& site_;
    const std::vector<Test>& tests_;
    bench::World world_;
    furnace::Workspace& workspace_;
    std::vector<double> values_;
    instruments::FlueSample flue_{combustion::oxygen_in_air, 0.0}; ///< as the cells have it
    Sensed sensed_{};
    double blower_after_s_ = 0.0;
    bool blower_started_ = false;
};

std::string watched_ending(const Shown* value) {
    const auto seconds = [&](int i) {
        return std::to_string(static_cast<int>(value[i].value * kSteps_s)) + " s";
    };
    return "once the call is over fire " + seconds(0) + ", inducer " + seconds(1) + ", blower " + seconds(2);
}

std::string watched(const bench::Site& site, const Shown* value) {
    const auto is = [&](int i, double at_least) { return value[i].value >= at_least; };
    std::string text = is(0, 2.0) ? "inducer runs" : is(0, 1.0) ? "inducer hums" : "no inducer";
    text += is(1, 1.0) ? ", burners light" : ", no fire";
    text += is(2, 2.0) ? ", blower runs" : is(2, 1.0) ? ", blower hums" : ", no blower";
    const auto pattern = static_cast<std::size_t>(value[3].value);
    text += "; lamp: " + (pattern == 0 ? std::string("dark") : site.model.board.pattern_names[pattern - 1]);
    return text + ", " + std::to_string(static_cast<int>(value[4].value));
}

std::string looked(const bench::Site& site, const Test& test, const Shown* value) {
    const auto& sights = site.catalogue.parts[static_cast<std::size_t>(test.a)].look.sights;
    std::string text;
    for (std::size_t i = 0; i < sights.size(); ++i)
        text += (i == 0 ? "" : "; ") + sights[i].bands[static_cast<std::size_t>(value[i].value)].words;
    if (test.values > sights.size())
        text += value[sights.size()].value > 0.0 ? (text.empty() ? "on" : "; on")
                                                 : (text.empty() ? "off" : "; off");
    return text;
}

} // namespace

Profile make_profile(const bench::Site& site, const std::vector<Test>& tests, bench::World found,
                     furnace::Workspace& workspace) {
    return Prober(site, tests, found, workspace).run();
}

bool told_apart(const Test& test, const Profile& a_low, const Profile& a_high, const Profile& b_low,
                const Profile& b_high) {
    for (std::size_t i = test.first; i < test.first + test.values; ++i) {
        const double a_least = std::min(a_low[i].value, a_high[i].value);
        const double a_most = std::max(a_low[i].value, a_high[i].value);
        const double b_least = std::min(b_low[i].value, b_high[i].value);
        const double b_most = std::max(b_low[i].value, b_high[i].value);
        const double reach = std::max(a_low[i].half_width, a_high[i].half_width) +
                             std::max(b_low[i].half_width, b_high[i].half_width);
        if (a_least - reach > b_most || b_least - reach > a_most)
            return true;
    }
    return false;
}

std::string text_of(const bench::Site& site, const Test& test, const Profile& profile) {
    const Shown* value = &profile[test.first];
    if (test.kind == TestKind::watch)
        return test.when == When::ending ? watched_ending(value) : watched(site, value);
    if (test.kind == TestKind::look)
        return looked(site, test, value);
    std::string text;
    for (std::size_t i = 0; i < test.values; ++i) {
        instruments::Display display;
        instruments::show(display, quantity_of(test.kind, i), value[i].value);
        text += (i == 0 ? "" : ", ") + instruments::text(display);
    }
    return text;
}

} // namespace lightoff::evidence
