// SPDX-License-Identifier: MIT
#pragma once
#include <memory>
#include <string>

namespace lightoff::platform {

/// A connection to the display, tried before SFML tries: SFML ends the whole process when it can't connect.
/// Keep it until the window is open, for a display server may restart itself when its only client leaves.
class DisplayProbe {
public:
    DisplayProbe();
    ~DisplayProbe();
    DisplayProbe(const DisplayProbe&) = delete;
    DisplayProbe& operator=(const DisplayProbe&) = delete;

    /// Why no window can be opened here, in one sentence; empty when one can.
    const std::string& refusal() const { return refusal_; }

private:
    struct Connection;
    std::unique_ptr<Connection> connection_;
    std::string refusal_;
};

} // namespace lightoff::platform
