// SPDX-License-Identifier: MIT
#pragma once
#include <cstdint>
#include <optional>
#include <string>

namespace lightoff::bench {

/// Reads a lamp as a person does: counts the flashes between two rests and believes a count that comes twice
/// running. It knows nothing of what the lamp may show. Times are teaching values of the eye.
class LampReader {
public:
    /// One tick. A sentence when it has become clear that the lamp shows something else than before:
    /// "4 flashes, then one long glow".
    std::optional<std::string> look(bool on);

private:
    /// What stands between two rests.
    struct Group {
        std::uint32_t flashes = 0;
        std::uint32_t longest_flash_ticks = 0;
        bool glow = false;
        std::uint32_t period_s = 0; ///< of a single wink: from one to the next
        friend bool operator==(const Group&, const Group&) = default;
    };
    [[nodiscard]] std::string words_for(const Group& group) const;
    std::optional<std::string> say(std::string text);
    std::optional<std::string> end_group();

    Group group_;
    Group last_;                     ///< the whole group before
    bool has_last_ = false;          ///< there is one
    bool whole_ = false;             ///< group_ began after a rest
    bool on_ = false;                ///< in the tick before
    std::uint32_t lasted_ticks_ = 0; ///< the lamp has been as it is for so long
    std::uint32_t since_start_ = 0;  ///< ticks since the group began
    std::string said_;
};

} // namespace lightoff::bench
