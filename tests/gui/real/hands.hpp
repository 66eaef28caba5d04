// SPDX-License-Identifier: MIT
#pragma once
#include <memory>
#include <string>
#include <string_view>

namespace lightoff::test {

/// A person's hands at a display: a pointer that moves, buttons and keys, by way of the X server itself, so
/// that the window gets them as it gets everybody's.
class Hands {
public:
    /// At the display of the environment. Throws std::runtime_error where there is none, or none that lets
    /// tests move its pointer.
    Hands();
    ~Hands();
    Hands(const Hands&) = delete;
    Hands& operator=(const Hands&) = delete;

    /// Looks for the window of that title; false while it is not there or not to be seen.
    bool find(const std::string& title);
    /// As a window manager does when a window opens.
    void give_keyboard();

    void point(int x, int y); ///< pixels from the window's upper left corner
    void point_away();        ///< to where no window is
    void button(bool down);   ///< the left one
    void wheel(int up);       ///< notches; negative: down
    /// A key by its name as xev shows it: "Return", "F4", "slash", "a".
    void key(const std::string& name, bool down);
    /// Letters of ASCII, with Shift where they need it.
    void type(std::string_view letters);
    /// Drags the window's edges, as it were.
    void resize(unsigned width, unsigned height);

private:
    struct Display;
    std::unique_ptr<Display> display_;
};

} // namespace lightoff::test
