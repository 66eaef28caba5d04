// SPDX-License-Identifier: MIT
#pragma once
#include <cstdint>

namespace lightoff::heat {

/// What has become of a thermal switch's contact.
enum class ContactFault : std::uint16_t { works = 0, stuck_open = 1, stuck_closed = 2 };

/// A bimetal switch that opens when it gets hot.
struct ThermalSwitch {
    double opens_k;
    double closes_k; // below opens_k; 0 K for a switch that never closes by itself (manual reset)
};

/// New value of "open" for a contact whose element is at `element_k`: opens at or above `opens_k`, closes at
/// or below `closes_k`, else stays. `shift_k` moves both points (a weak switch: negative).
constexpr std::uint8_t next_open(std::uint8_t open, const ThermalSwitch& contact, double shift_k,
                                 double element_k) {
    if (element_k >= contact.opens_k + shift_k)
        return 1;
    if (element_k <= contact.closes_k + shift_k)
        return 0;
    return open;
}

/// Whether current can pass, given where the bimetal stands and what has become of the contact.
constexpr bool is_closed(std::uint8_t open, ContactFault fault) {
    if (fault == ContactFault::works)
        return open == 0;
    return fault == ContactFault::stuck_closed;
}

} // namespace lightoff::heat
