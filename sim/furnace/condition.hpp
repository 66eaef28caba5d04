// SPDX-License-Identifier: MIT
#pragma once
#include "air/air.hpp"
#include "combustion/combustion.hpp"
#include "control/board.hpp"
#include "control/thermostat.hpp"
#include "draft/draft.hpp"
#include "electrical/network_inputs.hpp"
#include "electrical/relay.hpp"
#include "gas/gas.hpp"
#include "heat/heat.hpp"

#include <array>

namespace lightoff::furnace {

inline constexpr int kMaxRelays = 8;

/// How every part IS: written by faults, wear, cleaning, adjusting and repair. The default is healthy.
struct Condition {
    electrical::Condition wiring;
    std::array<electrical::RelayCondition, kMaxRelays> relays{}; ///< in the order of Wiring::relays
    draft::Condition draft;
    gas::Condition gas;
    combustion::Condition combustion;
    air::Condition air;
    heat::Condition heat;
    control::BoardCondition board;
    control::ThermostatCondition thermostat;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("wiring", self.wiring);
        visit("relays", "", self.relays);
        visit("draft", self.draft);
        visit("gas", self.gas);
        visit("combustion", self.combustion);
        visit("air", self.air);
        visit("heat", self.heat);
        visit("board", self.board);
        visit("thermostat", self.thermostat);
    }
};

} // namespace lightoff::furnace
