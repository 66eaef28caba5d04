// SPDX-License-Identifier: MIT
#pragma once
#include "gui/platform/input_events.hpp"
#include "gui/view/things.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace lightoff::work {

/// What a key of its own does while a call is worked. The sheets stand in the order of CallPage::Side, the
/// slots in that of view::Slot.
enum class Command : std::uint8_t {
    order,
    bag,
    notes,
    suspects,
    close,
    noticed, // sheets
    turn,
    hold,
    wait,
    type,
    expect,
    look,
    hear,
    measure,
    undo,
    put_back,
    clean,
    adjust,
    replace // slots of a tag
};
inline constexpr std::size_t kCommands = 19;

/// Which key does what. No key does two things.
class KeyMap {
public:
    KeyMap();

    [[nodiscard]] platform::Key of(Command command) const { return keys_[static_cast<std::size_t>(command)]; }
    [[nodiscard]] std::string name(Command command) const;
    /// That its key may come through as, where somebody can type; 0 if none.
    [[nodiscard]] char letter(Command command) const;
    [[nodiscard]] bool pressed(Command command) const;
    /// Gives a command another key. If that can't be, says why in one sentence and changes nothing.
    std::string set(Command command, platform::Key key);

    /// What differs from the usual, by names: {"bag", "F10"}. For the settings.
    [[nodiscard]] std::vector<std::pair<std::string, std::string>> changes() const;
    /// With such changes; what no command or key is called is left out; if keys clash, all are as usual.
    static KeyMap with(const std::vector<std::pair<std::string, std::string>>& changes);
    friend bool operator==(const KeyMap&, const KeyMap&) = default;

private:
    std::array<platform::Key, kCommands> keys_;
};

/// For people: "Turn to the bag of instruments".
std::string_view title_of(Command command);
Command command_of(view::Slot slot);

} // namespace lightoff::work
