// SPDX-License-Identifier: MIT
#pragma once
#include "instruments/analyser.hpp"
#include "instruments/attachments.hpp"
#include "instruments/clamp.hpp"
#include "instruments/co_alarm.hpp"
#include "instruments/dial_watch.hpp"
#include "instruments/gas_detector.hpp"
#include "instruments/leak_solution.hpp"
#include "instruments/manometer.hpp"
#include "instruments/multimeter.hpp"
#include "instruments/tachometer.hpp"
#include "instruments/thermometer.hpp"
#include "instruments/voltage_tester.hpp"
#include "instruments/wattmeter.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>
#include <type_traits>

/// The tool bag.
namespace lightoff::instruments {

/// Every instrument that a technician carries, in one plain value. Hands write the settings; step moves the
/// rest.
struct Bag {
    Multimeter multimeter;
    Clamp clamp;
    Wattmeter wattmeter;
    Tachometer tachometer;
    Manometer manometer;
    Thermometer thermometer;
    Analyser analyser;
    GasDetector gas_detector;
    LeakSolution leak_solution;
    VoltageTester voltage_tester;
    DialWatch dial_watch;
    CoAlarm co_alarm;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("multimeter", self.multimeter);
        visit("clamp", self.clamp);
        visit("wattmeter", self.wattmeter);
        visit("tachometer", self.tachometer);
        visit("manometer", self.manometer);
        visit("thermometer", self.thermometer);
        visit("analyser", self.analyser);
        visit("gas_detector", self.gas_detector);
        visit("leak_solution", self.leak_solution);
        visit("voltage_tester", self.voltage_tester);
        visit("dial_watch", self.dial_watch);
        visit("co_alarm", self.co_alarm);
    }
};

static_assert(std::is_trivially_copyable_v<Bag>);
static_assert(sizeof(Bag) <= 1280, "it lives in the World, which must stay small");

/// Puts the meter's leads into the network as they are now. To be called after every change of its setting
/// and after every step (a meter's fuse may have melted).
void connect(const Bag& bag, furnace::Inputs& inputs);

/// One tick of all instruments, at the end of the furnace's tick `tick`. What is not in use costs nothing.
/// `inputs` must hold the attachments as `connect` made them. No allocation, no exception; changes nothing
/// of the furnace. `seed` is the attempt's.
void step(const furnace::Model& model, const furnace::State& state, const furnace::Condition& condition,
          const furnace::Inputs& inputs, std::uint64_t seed, std::uint64_t tick,
          furnace::Workspace& workspace, Bag& bag);

enum class Instrument : std::uint8_t {
    multimeter,
    clamp,
    wattmeter,
    tachometer,
    manometer,
    thermometer,
    analyser,
    gas_detector,
    leak_solution,
    voltage_tester,
    dial_watch,
    co_alarm
};

/// Every window, in a fixed order, with its name ("multimeter", "thermometer T1") and whose it is.
struct NamedDisplay {
    std::string_view name;
    const Display* display = nullptr;
    Instrument instrument = Instrument::multimeter;
};
inline constexpr std::size_t kWindows = 27;
std::array<NamedDisplay, kWindows> displays(const Bag& bag);

} // namespace lightoff::instruments
