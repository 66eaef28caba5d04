// SPDX-License-Identifier: MIT
#include "gui/work/key_map.hpp"

#include "gui/platform/input_queue.hpp"
#include "gui/platform/key_names.hpp"

namespace lightoff::work {
namespace {

using platform::Key;

struct Row {
    std::string_view id; ///< in the settings' file
    std::string_view title;
    Key usual;
};

constexpr std::array<Row, kCommands> kRows{{{"order", "Work order", Key::F1},
                                            {"bag", "Bag of instruments", Key::F2},
                                            {"notes", "Notes", Key::F3},
                                            {"suspects", "Suspects", Key::F4},
                                            {"close", "Close: diagnosis, report", Key::F5},
                                            {"noticed", "What was noticed", Key::F6},
                                            {"turn", "Furnace, diagram, trace", Key::F7},
                                            {"hold", "Hold time", Key::F8},
                                            {"wait", "Wait for what can be noticed", Key::F9},
                                            {"type", "Type an action", Key::Slash},
                                            {"expect", "Say what will be read", Key::E},
                                            {"look", "Look", Key::L},
                                            {"hear", "Hear", Key::H},
                                            {"measure", "Measure", Key::M},
                                            {"undo", "Undo", Key::U},
                                            {"put-back", "Put back", Key::P},
                                            {"clean", "Clean", Key::C},
                                            {"adjust", "Adjust", Key::A},
                                            {"replace", "Replace", Key::R}}};

/// Keys that mean something everywhere, and what.
std::string_view why_taken(Key key) {
    switch (key) {
    case Key::Escape:
        return "goes back, everywhere";
    case Key::Enter:
    case Key::KeypadEnter:
    case Key::Space:
        return "presses what the keyboard is on";
    case Key::Tab:
    case Key::Left:
    case Key::Right:
    case Key::Up:
    case Key::Down:
        return "walks from thing to thing";
    case Key::Home:
    case Key::Equal:
    case Key::Minus:
        return "zooms the diagram";
    case Key::K:
        return "walks the wire on the diagram";
    default:
        break;
    }
    if (key >= Key::Digit0 && key <= Key::Digit9)
        return "chooses from what a slot spreads out";
    return {};
}

const Row& row_of(Command command) {
    return kRows[static_cast<std::size_t>(command)];
}

} // namespace

KeyMap::KeyMap() : keys_{} {
    for (std::size_t i = 0; i < kCommands; ++i)
        keys_[i] = kRows[i].usual;
}

std::string KeyMap::name(Command command) const {
    return std::string(platform::name_of(of(command)));
}

char KeyMap::letter(Command command) const {
    const std::string name = this->name(command);
    if (name.size() != 1)
        return 0;
    const bool capital = name[0] >= 'A' && name[0] <= 'Z';
    return capital ? static_cast<char>(name[0] - 'A' + 'a') : name[0];
}

bool KeyMap::pressed(Command command) const {
    return platform::key_pressed(of(command));
}

std::string KeyMap::set(Command command, Key key) {
    const std::string name(platform::name_of(key));
    if (name.empty())
        return "That key can't be used by itself.";
    if (const std::string_view why = why_taken(key); !why.empty())
        return name + " " + std::string(why) + "; choose another key.";
    for (std::size_t i = 0; i < kCommands; ++i)
        if (keys_[i] == key && static_cast<Command>(i) != command)
            return name + " is the key of \"" + std::string(kRows[i].title) +
                   "\"; give that another key first.";
    keys_[static_cast<std::size_t>(command)] = key;
    return {};
}

std::vector<std::pair<std::string, std::string>> KeyMap::changes() const {
    std::vector<std::pair<std::string, std::string>> all;
    for (std::size_t i = 0; i < kCommands; ++i)
        if (keys_[i] != kRows[i].usual)
            all.emplace_back(kRows[i].id, platform::name_of(keys_[i]));
    return all;
}

KeyMap KeyMap::with(const std::vector<std::pair<std::string, std::string>>& changes) {
    KeyMap map;
    for (const auto& [command, name] : changes)
        for (std::size_t i = 0; i < kCommands; ++i)
            if (const auto key = platform::key_called(name);
                key && kRows[i].id == command && why_taken(*key).empty())
                map.keys_[i] = *key;
    // Two may have changed places, so that clashes show only now.
    for (std::size_t i = 0; i < kCommands; ++i)
        for (std::size_t k = 0; k < i; ++k)
            if (map.keys_[i] == map.keys_[k])
                return KeyMap();
    return map;
}

std::string_view title_of(Command command) {
    return row_of(command).title;
}

Command command_of(view::Slot slot) {
    return static_cast<Command>(static_cast<std::size_t>(Command::look) + static_cast<std::size_t>(slot));
}

} // namespace lightoff::work
