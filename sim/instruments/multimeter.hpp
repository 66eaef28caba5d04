// SPDX-License-Identifier: MIT
#pragma once
#include "electrical/network_inputs.hpp"
#include "instruments/display.hpp"
#include "instruments/moment.hpp"

#include <array>
#include <cstdint>
#include <string_view>
#include <vector>

/// Digital multimeter. It is part of the network: what its leads are on feels it.
namespace lightoff::instruments {

enum class Function : std::uint32_t {
    off,
    ac_volts,
    low_z_volts,
    dc_volts,
    ohms,
    continuity,
    capacitance,
    dc_microamps, ///< in series
    ac_amps,      ///< in series
    count
};

/// What a function is to the network and how it settles.
struct FunctionRow {
    Function function = Function::off;
    std::string_view id;    ///< "ac-volts"
    std::string_view title; ///< for people
    Quantity quantity = Quantity::none;
    double ohm = 0.0;       ///< between the leads
    double dc_v = 0.0;      ///< test source behind it
    double lag_s = 0.0;     ///< first-order
    int update_ticks = 5;   ///< between two numbers
    bool in_series = false; ///< meant to carry the current, not to lie across a voltage
};
/// By the enumeration.
const FunctionRow& function_row(Function function);
/// All of them, in the order of the enumeration.
std::vector<FunctionRow> functions();
/// Function::count if there is none of this id.
Function find_function(std::string_view id);

struct MultimeterSetting {
    std::int32_t red = 0;   ///< node; leads are off while red == black
    std::int32_t black = 0; ///< node
    Function function = Function::off;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("red", "", self.red);
        visit("black", "", self.black);
        visit("function", "", self.function);
    }
    friend bool operator==(const MultimeterSetting&, const MultimeterSetting&) = default;
};

struct MultimeterState {
    double filtered = 0.0;           ///< V or A, as the converter has it
    double microamp_fuse_heat = 0.0; ///< 0 cold, 1 melting
    double amp_fuse_heat = 0.0;
    MultimeterSetting seen; ///< in the last tick
    std::uint8_t microamp_fuse_blown = 0;
    std::uint8_t amp_fuse_blown = 0;
    std::uint8_t protecting = 0; ///< the diodes across the microamp shunt conduct
    std::uint8_t spare = 0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("filtered", "", self.filtered);
        visit("microamp_fuse_heat", "", self.microamp_fuse_heat);
        visit("amp_fuse_heat", "", self.amp_fuse_heat);
        visit("seen", self.seen);
        visit("microamp_fuse_blown", "", self.microamp_fuse_blown);
        visit("amp_fuse_blown", "", self.amp_fuse_blown);
        visit("protecting", "", self.protecting);
        visit("spare", "", self.spare);
    }
};

struct Multimeter {
    MultimeterState state;
    MultimeterSetting setting;
    float stored_v =
        0.0F; ///< DC held by what the leads are across: a charged capacitor; whoever moves the leads sets it
    Display display;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("state", self.state);
        visit("setting", self.setting);
        visit("stored", "V", self.stored_v);
        visit("display", self.display);
    }
};

/// The meter as the network feels it at this moment: none while its leads are off or it is off.
electrical::Attachment attachment_of(const Multimeter& meter);

/// New fuses for both current inputs.
void fit_new_fuses(Multimeter& meter);

void step(Moment& now, Multimeter& meter);

} // namespace lightoff::instruments
