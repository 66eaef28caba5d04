// SPDX-License-Identifier: MIT
#pragma once
#include "gui/platform/input_events.hpp"

#include <array>
#include <deque>
#include <imgui.h>

namespace lightoff::platform {

/// Feeds input to Dear ImGui in the order in which it came, as much of it in one frame as the library can
/// tell apart: it looks at keys, buttons and pointer once a frame, so that a press and its release fed
/// together would be lost, and a click would land where the pointer went afterwards. The rest waits for the
/// next frame. Knows no window.
class InputQueue {
public:
    void push(const InputEvent& event) { waiting_.push_back(event); }
    /// Nothing is waiting for a later frame.
    bool empty() const { return waiting_.empty(); }

    /// Tells the library our key numbers. Once, after its context was made.
    static void set_key_map(ImGuiIO& io);
    /// Call once a frame, before ImGui::NewFrame.
    void feed(ImGuiIO& io);

private:
    /// What was fed in the frame so far.
    struct Fed {
        std::array<bool, kKeyCount> keys{};
        std::array<bool, 3> buttons{};
        bool any_key = false, any_button = false, modifier = false, editing_key = false, text = false,
             wheel = false;
    };

    static bool fits(const InputEvent& event, const Fed& fed, const ImGuiIO& io);
    static void apply(const InputEvent& event, Fed& fed, ImGuiIO& io);

    std::deque<InputEvent> waiting_;
};

/// Whether the key went down in this frame (repeats included on request).
bool key_pressed(Key key, bool repeat = false);

} // namespace lightoff::platform
