// SPDX-License-Identifier: MIT
#include "evidence/sensed.hpp"

#include <algorithm>
#include <bit>

namespace lightoff::evidence {
namespace {

constexpr std::uint8_t kRoarFrom = 3;     ///< tenths: a roar that nobody misses
constexpr std::uint8_t kRoarNotBelow = 1; ///< and silence; between the two either may be said
constexpr unsigned kMost = 30;

std::uint32_t bit(unsigned value) {
    return std::uint32_t{1} << std::min(value, kMost);
}

unsigned running(std::uint8_t loudness, bool hums) {
    return loudness > 0 ? 2U : hums ? 1U : 0U;
}

std::uint32_t roar(std::uint8_t tenths) {
    std::uint32_t said = 0;
    if (tenths < kRoarFrom)
        said |= bit(0);
    if (tenths > kRoarNotBelow)
        said |= bit(1);
    return said;
}

/// How many burners burn; a weak flame may be said to burn or not.
std::uint32_t flames(const bench::Seen& seen) {
    unsigned plain = 0;
    unsigned weak = 0;
    for (const bench::FlamePercept& flame : seen.burner) {
        plain += flame.strength >= 5 ? 1U : 0U;
        weak += flame.strength > 0 && flame.strength < 5 ? 1U : 0U;
    }
    std::uint32_t said = 0;
    for (unsigned n = plain; n <= plain + weak; ++n)
        said |= bit(n);
    return said;
}

bool is_ordered(Channel channel) {
    return channel != Channel::lamp_pattern;
}
/// Neighbouring values of these are easily taken for each other.
bool is_graded(Channel channel) {
    return channel == Channel::register_air || channel == Channel::register_warmth ||
           channel == Channel::gas_smell || channel == Channel::flame_outside;
}

/// All bits from the lowest to the highest that is set.
std::uint32_t filled(std::uint32_t bits) {
    if (bits == 0)
        return 0;
    const std::uint32_t up_to_top = ~std::uint32_t{0} >> std::countl_zero(bits);
    const std::uint32_t below_lowest = (bits & (~bits + 1)) - 1;
    return up_to_top & ~below_lowest;
}

} // namespace

Sensed sense(const bench::Percept& p, const control::LampState& lamp) {
    Sensed now{};
    const auto put = [&now](Channel channel, std::uint32_t bits) {
        now[static_cast<std::size_t>(channel)] = bits;
    };
    put(Channel::lamp_pattern, bit(lamp.pattern == control::kNoPattern ? 0U : 1U + lamp.pattern));
    put(Channel::lamp_count, bit(lamp.count));
    put(Channel::inducer, bit(running(p.heard.inducer_loudness, p.heard.inducer_hum)));
    put(Channel::blower, bit(running(p.heard.blower_loudness, p.heard.blower_hum)));
    put(Channel::roar, roar(p.heard.roar));
    put(Channel::flames, flames(p.seen));
    put(Channel::flame_outside, bit(p.seen.flame_outside / 2U));
    put(Channel::igniter, bit(p.seen.igniter_glow_k > 0 ? 1U : 0U));
    put(Channel::gas_smell, bit(p.smelt.gas));
    put(Channel::winding_smell, bit(p.smelt.hot_winding ? 1U : 0U));
    put(Channel::register_air, bit(p.felt.register_air / 4U));
    put(Channel::register_warmth, bit(p.felt.register_warmth / 2U));
    return now;
}

void add(Sensed& stretch, const Sensed& moment) {
    for (std::size_t i = 0; i < kChannels; ++i)
        stretch[i] |= moment[i];
}

bool alike(const Sensed& seen, const Sensed& low, const Sensed& high) {
    for (std::size_t i = 0; i < kChannels; ++i) {
        const auto channel = static_cast<Channel>(i);
        std::uint32_t shown = low[i] | high[i];
        if (is_ordered(channel))
            shown = filled(shown);
        if (is_graded(channel))
            shown |= shown << 1U | shown >> 1U;
        if ((seen[i] & shown) == 0)
            return false;
    }
    return true;
}

} // namespace lightoff::evidence
