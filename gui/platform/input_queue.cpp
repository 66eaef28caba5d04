// SPDX-License-Identifier: MIT
#include "gui/platform/input_queue.hpp"

#include <algorithm>
#include <cfloat>
#include <utility>

namespace lightoff::platform {
namespace {

constexpr std::size_t index_of(Key key) {
    return static_cast<std::size_t>(key);
}
constexpr std::size_t index_of(MouseButton button) {
    return static_cast<std::size_t>(button);
}

bool is_modifier(Key key) {
    return key >= Key::ControlLeft && key <= Key::SuperRight;
}

/// Keys that act on text themselves: their order among letters matters.
bool edits_text(Key key) {
    return key >= Key::Escape && key <= Key::Down && key != Key::Space;
}

bool is_printable(char32_t letter) {
    return letter >= 0x20 && letter != 0x7F;
}

void set_modifiers(ImGuiIO& io) {
    const auto either = [&io](Key left, Key right) {
        return io.KeysDown[index_of(left)] || io.KeysDown[index_of(right)];
    };
    io.KeyCtrl = either(Key::ControlLeft, Key::ControlRight);
    io.KeyShift = either(Key::ShiftLeft, Key::ShiftRight);
    io.KeyAlt = either(Key::AltLeft, Key::AltRight);
    io.KeySuper = either(Key::SuperLeft, Key::SuperRight);
}

void release_all(ImGuiIO& io) {
    std::fill(std::begin(io.KeysDown), std::end(io.KeysDown), false);
    std::fill(std::begin(io.MouseDown), std::end(io.MouseDown), false);
    set_modifiers(io);
}

template <class... Visitors>
struct Overloaded : Visitors... {
    using Visitors::operator()...;
};
template <class... Visitors>
Overloaded(Visitors...) -> Overloaded<Visitors...>;

} // namespace

void InputQueue::set_key_map(ImGuiIO& io) {
    constexpr std::array<std::pair<ImGuiKey, Key>, 22> kMap{{{ImGuiKey_Tab, Key::Tab},
                                                             {ImGuiKey_LeftArrow, Key::Left},
                                                             {ImGuiKey_RightArrow, Key::Right},
                                                             {ImGuiKey_UpArrow, Key::Up},
                                                             {ImGuiKey_DownArrow, Key::Down},
                                                             {ImGuiKey_PageUp, Key::PageUp},
                                                             {ImGuiKey_PageDown, Key::PageDown},
                                                             {ImGuiKey_Home, Key::Home},
                                                             {ImGuiKey_End, Key::End},
                                                             {ImGuiKey_Insert, Key::Insert},
                                                             {ImGuiKey_Delete, Key::Delete},
                                                             {ImGuiKey_Backspace, Key::Backspace},
                                                             {ImGuiKey_Space, Key::Space},
                                                             {ImGuiKey_Enter, Key::Enter},
                                                             {ImGuiKey_Escape, Key::Escape},
                                                             {ImGuiKey_KeyPadEnter, Key::KeypadEnter},
                                                             {ImGuiKey_A, Key::A},
                                                             {ImGuiKey_C, Key::C},
                                                             {ImGuiKey_V, Key::V},
                                                             {ImGuiKey_X, Key::X},
                                                             {ImGuiKey_Y, Key::Y},
                                                             {ImGuiKey_Z, Key::Z}}};
    static_assert(ImGuiKey_COUNT == 22, "a key of the library would stay without a number");
    for (const auto& [theirs, ours] : kMap) {
        io.KeyMap[theirs] = static_cast<int>(ours);
    }
}

void InputQueue::feed(ImGuiIO& io) {
    Fed fed;
    while (!waiting_.empty() && fits(waiting_.front(), fed, io)) {
        apply(waiting_.front(), fed, io);
        waiting_.pop_front();
    }
}

bool InputQueue::fits(const InputEvent& event, const Fed& fed, const ImGuiIO& io) {
    return std::visit(
        Overloaded{
            [&](const KeyEvent& e) {
                if (io.KeysDown[index_of(e.key)] == e.down) {
                    return true; // the system's repeat of a held key changes nothing
                }
                const bool same_again = fed.keys[index_of(e.key)];
                const bool shifts_others =
                    is_modifier(e.key) && ((fed.any_key && !fed.modifier) || fed.any_button);
                const bool after_text = fed.text && e.down && (edits_text(e.key) || is_modifier(e.key));
                return !same_again && !shifts_others && !after_text;
            },
            [&](const TextEvent&) { return !fed.editing_key; },
            [&](const PointerEvent&) { return !fed.any_button && !fed.wheel; },
            [&](const ButtonEvent& e) { return !fed.buttons[index_of(e.button)] && !fed.wheel; },
            [&](const WheelEvent&) { return !fed.any_button; },
            [&](const FocusEvent&) { return !fed.any_key && !fed.any_button; },
        },
        event);
}

void InputQueue::apply(const InputEvent& event, Fed& fed, ImGuiIO& io) {
    std::visit(Overloaded{
                   [&](const KeyEvent& e) {
                       if (io.KeysDown[index_of(e.key)] == e.down) {
                           return; // the library repeats held keys by itself
                       }
                       io.KeysDown[index_of(e.key)] = e.down;
                       set_modifiers(io);
                       fed.keys[index_of(e.key)] = true;
                       fed.any_key = true;
                       // Modifiers before other keys may share a frame with them; after them they may not.
                       fed.modifier = is_modifier(e.key);
                       fed.editing_key = fed.editing_key || (e.down && edits_text(e.key));
                   },
                   [&](const TextEvent& e) {
                       if (is_printable(e.letter)) {
                           io.AddInputCharacter(static_cast<unsigned>(e.letter));
                           fed.text = true;
                       }
                   },
                   [&](const PointerEvent& e) {
                       io.MousePos = {e.x, e.y};
                   },
                   [&](const ButtonEvent& e) {
                       io.MouseDown[index_of(e.button)] = e.down;
                       fed.buttons[index_of(e.button)] = true;
                       fed.any_button = true;
                   },
                   [&](const WheelEvent& e) {
                       io.MouseWheel += e.up;
                       io.MouseWheelH += e.right;
                       fed.wheel = true;
                   },
                   [&](const FocusEvent& e) {
                       io.AddFocusEvent(e.gained);
                       if (!e.gained) {
                           release_all(io); // the releases go to another window: a key would hang
                           io.MousePos = {-FLT_MAX, -FLT_MAX};
                       }
                   },
               },
               event);
}

bool key_pressed(Key key, bool repeat) {
    return ImGui::IsKeyPressed(static_cast<int>(key), repeat);
}

} // namespace lightoff::platform
