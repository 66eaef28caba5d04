// SPDX-License-Identifier: MIT
#pragma once
#include "instruments/display.hpp"
#include "instruments/moment.hpp"
#include "instruments/spots.hpp"
#include <array>

/// Combustion analyser: draws a sample, measures oxygen, CO and two temperatures, works out the rest.
namespace lightoff::instruments {

/// The fuel in its menu. Set wrongly, everything that it works out is wrong, as in life.
enum class AnalyserFuel : std::uint8_t { natural_gas, propane };

struct AnalyserSetting {
    Spot probe = Spot::room; ///< vent connector or room
    AnalyserFuel fuel = AnalyserFuel::natural_gas;
    std::uint8_t on = 0; ///< its pump runs
    std::uint8_t spare = 0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("probe", "", self.probe);
        visit("fuel", "", self.fuel);
        visit("on", "", self.on);
        visit("spare", "", self.spare);
    }
    friend bool operator==(const AnalyserSetting&, const AnalyserSetting&) = default;
};

inline constexpr std::size_t kHoseCells = 4;
inline constexpr std::array<double, kHoseCells> kHoseOfAir{0.2095, 0.2095, 0.2095, 0.2095};

struct AnalyserState {
    std::array<double, kHoseCells> hose_o2 = kHoseOfAir; ///< sample on its way, probe end first
    std::array<double, kHoseCells> hose_co{};
    double o2 = 0.2095; ///< as the cell has it
    double co = 0.0;
    double stack_k = 0.0; ///< 0 before its first use
    double inlet_air_k = 0.0;
    AnalyserSetting seen; ///< in the last tick
    std::uint32_t spare = 0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("hose_o2", "1", self.hose_o2);
        visit("hose_co", "1", self.hose_co);
        visit("o2", "1", self.o2);
        visit("co", "1", self.co);
        visit("stack", "K", self.stack_k);
        visit("inlet_air", "K", self.inlet_air_k);
        visit("seen", self.seen);
        visit("spare", "", self.spare);
    }
};

struct Analyser {
    AnalyserState state;
    AnalyserSetting setting;
    std::uint32_t spare = 0;
    Display oxygen;
    Display carbon_monoxide;
    Display carbon_dioxide; ///< worked out from oxygen and fuel
    Display co_air_free;
    Display stack;
    Display inlet_air; ///< where the furnace stands
    Display net;       ///< stack less inlet air
    Display excess_air;
    Display efficiency;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("state", self.state);
        visit("setting", self.setting);
        visit("spare", "", self.spare);
        visit("oxygen", self.oxygen);
        visit("carbon_monoxide", self.carbon_monoxide);
        visit("carbon_dioxide", self.carbon_dioxide);
        visit("co_air_free", self.co_air_free);
        visit("stack", self.stack);
        visit("inlet_air", self.inlet_air);
        visit("net", self.net);
        visit("excess_air", self.excess_air);
        visit("efficiency", self.efficiency);
    }
};

/// What an analyser makes of its four measurements; fractions and K.
struct WorkedOut {
    double carbon_dioxide = 0.0;
    double co_air_free = 0.0;
    double net_k = 0.0;
    double excess_air = 0.0;
    double efficiency = 0.0; ///< of the higher heating value
    bool burning = false;    ///< else the window shows dashes for all but net: too near to plain air
};
WorkedOut work_out(AnalyserFuel fuel, double o2, double co, double stack_k, double inlet_air_k);

/// Dry fractions at the probe.
struct FlueSample {
    double o2 = 0.0;
    double co = 0.0;
};
FlueSample flue_sample(const Moment& now, Spot spot);

void step(Moment& now, Analyser& meter);

} // namespace lightoff::instruments
