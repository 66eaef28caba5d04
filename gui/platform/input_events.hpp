// SPDX-License-Identifier: MIT
#pragma once
#include <cstddef>
#include <variant>

namespace lightoff::platform {

/// Keys by their place or meaning; also the index into ImGuiIO::KeysDown. Text comes as TextEvent, never from
/// these.
// clang-format off
enum class Key : int {
    A, B, C, D, E, F, G, H, I, J, K, L, M, N, O, P, Q, R, S, T, U, V, W, X, Y, Z, Digit0, Digit1, Digit2,
    Digit3, Digit4, Digit5, Digit6, Digit7, Digit8, Digit9, F1, F2, F3, F4, F5, F6, F7, F8, F9, F10, F11,
    F12, Escape, Tab, Space, Enter, KeypadEnter, Backspace, Delete, Insert, Home, End, PageUp, PageDown,
    Left, Right, Up, Down, Slash, Comma, Period, Minus, Equal, BracketLeft, BracketRight, ControlLeft,
    ControlRight, ShiftLeft, ShiftRight, AltLeft, AltRight, SuperLeft, SuperRight, Count
};
// clang-format on
inline constexpr std::size_t kKeyCount = static_cast<std::size_t>(Key::Count);

enum class MouseButton : int { Left, Right, Middle };

struct KeyEvent {
    Key key;
    bool down;
};
struct TextEvent {
    char32_t letter;
};
struct PointerEvent {
    float x, y; // pixels from the window's upper left corner
};
struct ButtonEvent {
    MouseButton button;
    bool down;
};
struct WheelEvent {
    float up, right; // notches
};
struct FocusEvent {
    bool gained;
};

using InputEvent = std::variant<KeyEvent, TextEvent, PointerEvent, ButtonEvent, WheelEvent, FocusEvent>;

} // namespace lightoff::platform
