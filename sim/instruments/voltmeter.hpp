// SPDX-License-Identifier: MIT
#pragma once
#include "furnace/furnace.hpp"

#include <cstddef>
#include <cstdint>

/// A field multimeter on AC volts. It is part of the network: its leads are an attachment of 10 Mohm.
namespace lightoff::instruments {

/// Input resistance on volts (general electronics texts).
inline constexpr double kVoltmeterOhm = 10e6;

/// What stands in its window.
struct VoltmeterDisplay {
    std::int32_t millivolts = 0;     ///< rounded to the resolution; r.m.s., 0 or more
    std::int32_t resolution_mv = 10; ///< 1, 10 or 100: so many decimals
    std::uint32_t on = 0;            ///< its leads are on something
    std::uint32_t overload = 0;      ///< more than the highest range shows: "OL"

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("reading", "mV", self.millivolts);
        visit("resolution", "mV", self.resolution_mv);
        visit("on", "", self.on);
        visit("overload", "", self.overload);
    }
    friend bool operator==(const VoltmeterDisplay&, const VoltmeterDisplay&) = default;
};

/// The display for a voltage: 6,000 counts, ranging by itself: 1 mV up to 6 V, 10 mV up to 60 V, 100 mV up to
/// 600 V (common practice, no source). Leaves out accuracy, settling and drift.
VoltmeterDisplay voltmeter_display(double volts);

/// The same for what the attachment `slot` of the furnace's inputs carries at this moment.
VoltmeterDisplay read_voltmeter(const furnace::Model& model, const furnace::State& state,
                                const furnace::Condition& condition, const furnace::Inputs& inputs,
                                std::size_t slot, furnace::Workspace& workspace);

} // namespace lightoff::instruments
