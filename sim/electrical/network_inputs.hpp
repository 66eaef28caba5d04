// SPDX-License-Identifier: MIT
#pragma once
#include "electrical/netlist.hpp"
#include <array>
#include <cstdint>

namespace lightoff::electrical {

inline constexpr int kMaxBridges = 16;
inline constexpr int kMaxAttachments = 16;

/// Ohms that stand for "no longer connected": a cut conductor, a melted fuse, a lifted wire.
inline constexpr float kOpenOhm = 1e13F;

/// One bit for each element of a netlist.
using ElementBits = std::array<std::uint64_t, kMaxElements / 64>;
constexpr bool has_element(const ElementBits& bits, int element) {
    const auto i = static_cast<unsigned>(element);
    return (bits[i / 64U] >> (i % 64U) & 1U) != 0;
}
constexpr void set_element(ElementBits& bits, int element, bool on) {
    const auto i = static_cast<unsigned>(element);
    const std::uint64_t bit = std::uint64_t{1} << (i % 64U);
    bits[i / 64U] = on ? bits[i / 64U] | bit : bits[i / 64U] & ~bit;
}

/// A path between two nodes that the drawing does not have: a short, a chafed wire, a leak.
/// None while a == b.
struct Bridge {
    std::int16_t a = 0;
    std::int16_t b = 0;
    float ohm = 0.0F; ///< > 0

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("a", "", self.a);
        visit("b", "", self.b);
        visit("resistance", "ohm", self.ohm);
    }
};

/// How the wiring IS. Defaults: as drawn.
struct Condition {
    std::array<float, kMaxElements> series_ohm{}; ///< added in series: burnt terminal 1..1000, open kOpenOhm
    /// On the main value: ohms of resistor, fuse, winding, igniter and of a closed contact; farads;
    /// impedance of a coil and source (shorted turns, weak supply). > 0, a capacitor's may be 0.
    std::array<float, kMaxElements> factor{};
    std::array<Bridge, kMaxBridges> bridges{};

    Condition() { factor.fill(1.0F); }

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("series_resistance", "ohm", self.series_ohm);
        visit("factor", "", self.factor);
        visit("bridges", self.bridges);
    }
};

/// Something connected by hand: a meter (10 Mohm on volts, a shunt on amps, a test source on ohms)
/// or a jumper. None while a == b. The source drives current out of a.
struct Attachment {
    std::int32_t a = 0;
    std::int32_t b = 0;
    double ohm = 0.0;  ///< > 0
    double ac_v = 0.0; ///< r.m.s., phase 0
    double dc_v = 0.0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("a", "", self.a);
        visit("b", "", self.b);
        visit("resistance", "ohm", self.ohm);
        visit("ac_source", "V", self.ac_v);
        visit("dc_source", "V", self.dc_v);
    }
};

/// What decides the network besides its condition. A change costs a full solve.
struct NetworkInputs {
    std::uint64_t switches = 0; ///< bit i: switch i is made (a relay pulled in)
    ElementBits parted{}; ///< pulled apart by hand: open, whatever its condition, as long as the bit is set
    std::array<double, kMaxSources> source_factor{};             ///< on the EMF of each source; line voltage
    std::array<double, kMaxThermalGroups> group_temperature_k{}; ///< of copper; felt in steps of 2 K
    std::array<Attachment, kMaxAttachments> attachments{};

    NetworkInputs() {
        source_factor.fill(1.0);
        group_temperature_k.fill(293.15);
    }

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("switches", "", self.switches);
        visit("parted", "", self.parted);
        visit("source_factor", "", self.source_factor);
        visit("group_temperature", "K", self.group_temperature_k);
        visit("attachments", self.attachments);
    }
};

/// What stands in series with an element at the moment, ohm.
inline double series_ohm(const Condition& condition, const ElementBits& parted, int element) {
    return static_cast<double>(
        has_element(parted, element) ? kOpenOhm : condition.series_ohm[static_cast<std::size_t>(element)]);
}

/// What changes every tick and costs a port solve only.
struct PortInputs {
    std::array<double, kMaxMotors> rotor_rad_s{};          ///< by motor
    std::array<double, kMaxPorts> igniter_ohm{};           ///< by port; > 0 where the port is an igniter
    std::array<double, kMaxPorts> flame_forward_siemens{}; ///< by port; rod positive; 0 without flame
    std::array<double, kMaxPorts> flame_reverse_siemens{}; ///< by port; rod negative
};

} // namespace lightoff::electrical
