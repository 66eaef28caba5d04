// SPDX-License-Identifier: MIT
#include "gui/platform/sfml_events.hpp"

#include <array>
#include <cfloat>
#include <utility>

namespace lightoff::platform {
namespace {

using SfKey = sf::Keyboard;

constexpr std::array<std::pair<SfKey::Key, Key>, 43> kKeys{{
    {SfKey::Escape, Key::Escape},
    {SfKey::Tab, Key::Tab},
    {SfKey::Space, Key::Space},
    {SfKey::Enter, Key::Enter},
    {SfKey::Backspace, Key::Backspace},
    {SfKey::Delete, Key::Delete},
    {SfKey::Insert, Key::Insert},
    {SfKey::Home, Key::Home},
    {SfKey::End, Key::End},
    {SfKey::PageUp, Key::PageUp},
    {SfKey::PageDown, Key::PageDown},
    {SfKey::Left, Key::Left},
    {SfKey::Right, Key::Right},
    {SfKey::Up, Key::Up},
    {SfKey::Down, Key::Down},
    {SfKey::Slash, Key::Slash},
    {SfKey::Divide, Key::Slash},
    {SfKey::Comma, Key::Comma},
    {SfKey::Period, Key::Period},
    {SfKey::Hyphen, Key::Minus},
    {SfKey::Subtract, Key::Minus},
    {SfKey::Equal, Key::Equal},
    {SfKey::LBracket, Key::BracketLeft},
    {SfKey::RBracket, Key::BracketRight},
    {SfKey::LControl, Key::ControlLeft},
    {SfKey::RControl, Key::ControlRight},
    {SfKey::LShift, Key::ShiftLeft},
    {SfKey::RShift, Key::ShiftRight},
    {SfKey::LAlt, Key::AltLeft},
    {SfKey::RAlt, Key::AltRight},
    {SfKey::LSystem, Key::SuperLeft},
    {SfKey::RSystem, Key::SuperRight},
    {SfKey::Numpad0, Key::Digit0},
    {SfKey::Numpad1, Key::Digit1},
    {SfKey::Numpad2, Key::Digit2},
    {SfKey::Numpad3, Key::Digit3},
    {SfKey::Numpad4, Key::Digit4},
    {SfKey::Numpad5, Key::Digit5},
    {SfKey::Numpad6, Key::Digit6},
    {SfKey::Numpad7, Key::Digit7},
    {SfKey::Numpad8, Key::Digit8},
    {SfKey::Numpad9, Key::Digit9},
    {SfKey::Add, Key::Equal},
}};

Key shifted(Key first, int by) {
    return static_cast<Key>(static_cast<int>(first) + by);
}

std::optional<Key> key_of(SfKey::Key key) {
    if (key >= SfKey::A && key <= SfKey::Z) {
        return shifted(Key::A, key - SfKey::A);
    }
    if (key >= SfKey::Num0 && key <= SfKey::Num9) {
        return shifted(Key::Digit0, key - SfKey::Num0);
    }
    if (key >= SfKey::F1 && key <= SfKey::F12) {
        return shifted(Key::F1, key - SfKey::F1);
    }
    for (const auto& [theirs, ours] : kKeys) {
        if (theirs == key) {
            return ours;
        }
    }
    return std::nullopt;
}

std::optional<InputEvent> key_event(SfKey::Key key, bool down) {
    const std::optional<Key> ours = key_of(key);
    return ours ? std::optional<InputEvent>(KeyEvent{*ours, down}) : std::nullopt;
}

std::optional<InputEvent> button_event(sf::Mouse::Button button, bool down) {
    switch (button) {
    case sf::Mouse::Left:
        return ButtonEvent{MouseButton::Left, down};
    case sf::Mouse::Right:
        return ButtonEvent{MouseButton::Right, down};
    case sf::Mouse::Middle:
        return ButtonEvent{MouseButton::Middle, down};
    default:
        return std::nullopt;
    }
}

InputEvent wheel_event(const sf::Event::MouseWheelScrollEvent& wheel) {
    return wheel.wheel == sf::Mouse::VerticalWheel ? WheelEvent{wheel.delta, 0} : WheelEvent{0, wheel.delta};
}

} // namespace

std::optional<InputEvent> translated(const sf::Event& event) {
    switch (event.type) {
    case sf::Event::KeyPressed:
        return key_event(event.key.code, true);
    case sf::Event::KeyReleased:
        return key_event(event.key.code, false);
    case sf::Event::TextEntered:
        return TextEvent{static_cast<char32_t>(event.text.unicode)};
    case sf::Event::MouseMoved:
        return PointerEvent{static_cast<float>(event.mouseMove.x), static_cast<float>(event.mouseMove.y)};
    case sf::Event::MouseLeft:
        return PointerEvent{-FLT_MAX, -FLT_MAX}; // nowhere, as the library has it: nothing stays hovered
    case sf::Event::MouseButtonPressed:
        return button_event(event.mouseButton.button, true);
    case sf::Event::MouseButtonReleased:
        return button_event(event.mouseButton.button, false);
    case sf::Event::MouseWheelScrolled:
        return wheel_event(event.mouseWheelScroll);
    case sf::Event::GainedFocus:
        return FocusEvent{true};
    case sf::Event::LostFocus:
        return FocusEvent{false};
    default:
        return std::nullopt;
    }
}

} // namespace lightoff::platform
