// SPDX-License-Identifier: MIT
#include "gui/platform/key_names.hpp"

#include <array>

namespace lightoff::platform {
namespace {

/// In the order of Key.
constexpr std::array<std::string_view, kKeyCount> kNames{
    "A",    "B",     "C",     "D",     "E",  "F",         "G",   "H",   "I",    "J",   "K",       "L",
    "M",    "N",     "O",     "P",     "Q",  "R",         "S",   "T",   "U",    "V",   "W",       "X",
    "Y",    "Z",     "0",     "1",     "2",  "3",         "4",   "5",   "6",    "7",   "8",       "9",
    "F1",   "F2",    "F3",    "F4",    "F5", "F6",        "F7",  "F8",  "F9",   "F10", "F11",     "F12",
    "Esc",  "Tab",   "Space", "Enter", "",   "Backspace", "Del", "Ins", "Home", "End", "Page up", "Page down",
    "Left", "Right", "Up",    "Down",  "/",  ",",         ".",   "−",   "=",    "[",   "]"};

} // namespace

std::string_view name_of(Key key) {
    return kNames[static_cast<std::size_t>(key)];
}

std::optional<Key> key_called(std::string_view name) {
    for (std::size_t i = 0; i < kKeyCount && !name.empty(); ++i)
        if (kNames[i] == name)
            return static_cast<Key>(i);
    return std::nullopt;
}

} // namespace lightoff::platform
