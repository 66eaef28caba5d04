// SPDX-License-Identifier: MIT
#include "bench/lamp_reader.hpp"

#include <algorithm>
#include <utility>

namespace lightoff::bench {
namespace {

constexpr std::uint32_t kRestTicks = 10;   ///< darkness of half a second parts two groups
constexpr std::uint32_t kGlowTicks = 20;   ///< light of a second is no flash
constexpr std::uint32_t kSteadyTicks = 80; ///< light of four seconds is no glow either
constexpr std::uint32_t kDarkTicks = 90;   ///< darkness longer than any rest
constexpr std::uint32_t kWinkTicks = 3;    ///< a flash so short is a wink
constexpr std::uint32_t kUncountable = 10; ///< flashes without a rest
constexpr std::uint32_t kSecondTicks = 20;

} // namespace

std::string LampReader::words_for(const Group& group) const {
    const bool wink = group.flashes == 1 && !group.glow && group.longest_flash_ticks <= kWinkTicks;
    if (wink)
        return "one short wink every " + std::to_string(group.period_s) + " seconds";
    const std::string flashes = group.flashes == 1 ? "1 flash" : std::to_string(group.flashes) + " flashes";
    if (!group.glow)
        return flashes + ", a rest, and again";
    return group.flashes == 0 ? "one long glow, a rest, and again"
                              : flashes + ", then one long glow, and again";
}

std::optional<std::string> LampReader::say(std::string text) {
    if (text == said_)
        return std::nullopt;
    said_ = text;
    return text;
}

/// At the first flash after a rest: the group before is over.
std::optional<std::string> LampReader::end_group() {
    Group ended = group_;
    const bool counts = whole_ && (ended.flashes > 0 || ended.glow);
    if (ended.flashes == 1 && !ended.glow)
        ended.period_s = (since_start_ + kSecondTicks / 2) / kSecondTicks;
    const bool twice = counts && has_last_ && last_ == ended;
    last_ = ended;
    has_last_ = counts;
    whole_ = true;
    group_ = {};
    since_start_ = 0;
    return twice ? say(words_for(ended)) : std::nullopt;
}

std::optional<std::string> LampReader::look(bool on) {
    std::optional<std::string> said;
    if (on != on_) {
        if (on && lasted_ticks_ >= kRestTicks)
            said = end_group();
        if (!on && lasted_ticks_ >= kGlowTicks)
            group_.glow = true;
        if (!on && lasted_ticks_ < kGlowTicks) {
            ++group_.flashes;
            group_.longest_flash_ticks = std::max(group_.longest_flash_ticks, lasted_ticks_);
        }
        on_ = on;
        lasted_ticks_ = 0;
        if (!on && group_.flashes == kUncountable && !group_.glow)
            said = say("flickers fast, without a rest");
    }
    ++lasted_ticks_;
    ++since_start_;
    if (lasted_ticks_ == (on ? kSteadyTicks : kDarkTicks)) {
        has_last_ = false;
        whole_ = !on;
        group_ = {};
        said = say(on ? "lit, without a break" : "dark");
    }
    return said;
}

} // namespace lightoff::bench
