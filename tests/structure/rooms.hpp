// SPDX-License-Identifier: MIT
#pragma once
#include <array>
#include <optional>
#include <string_view>

/// The order of the rooms, in one place: a room includes only itself and rooms of a lower rank. Rooms of one
/// rank are siblings and do not know each other.
namespace structure {

struct Room {
    std::string_view name;
    int rank;
    /// Part of a tick: may hold nothing that differs between machines or runs.
    bool stepping;
};

// clang-format off
inline constexpr std::array<Room, 20> kRooms{{
    {"units", 0, true},
    {"electrical", 1, true},
    {"draft", 1, true},
    {"gas", 1, true},
    {"combustion", 1, true},
    {"air", 1, true},
    {"heat", 1, true},
    {"control", 1, true},
    {"furnace", 2, true},
    {"faults", 3, true},
    {"instruments", 3, true},
    {"bench", 4, true},
    {"evidence", 5, true},
    {"lesson", 6, true},
    {"coach", 7, false},
    {"files", 8, false},
    {"visit", 9, false},
    {"report", 10, false},
    {"cli", 11, false},
    {"gui", 11, false},
}};
// clang-format on

constexpr std::optional<Room> find_room(std::string_view name) {
    for (const Room& room : kRooms)
        if (room.name == name)
            return room;
    return std::nullopt;
}

} // namespace structure
