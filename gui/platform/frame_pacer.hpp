// SPDX-License-Identifier: MIT
#pragma once

namespace lightoff::platform {

/// Says how long to wait for input before the next frame, so that an unchanging page costs next to nothing.
/// Pure: the clock is the caller's.
class FramePacer {
public:
    static constexpr double kFrame_s = 1.0 / 60;
    // Nothing waits longer, whatever was asked: the window library tells nobody that a covered window lies
    // open again, so it is drawn anew now and then.
    static constexpr double kLongest_s = 4.0;
    static constexpr double kBlink_s = 0.1; // while a text cursor blinks
    static constexpr int kSettling = 3;     // frames after input: hovering and layout need more than one

    /// Input came (or the window changed): draw some frames at full rate.
    void wake() { settling_ = kSettling; }
    /// Seconds to wait for input from now. `since_start_s` is the time since the last frame began,
    /// `wanted_in_s` what the app asked for (0: full rate), `typing` whether a text field has the cursor. A
    /// frame at full rate only waits out the rest of its sixtieth; input does not cut that short.
    double wait_s(double since_start_s, double wanted_in_s, bool typing) const;
    /// Whether the wait may end early when input comes.
    bool idle(double wanted_in_s) const { return settling_ == 0 && wanted_in_s > kFrame_s; }
    /// A frame was drawn.
    void drew();

private:
    int settling_ = kSettling;
};

} // namespace lightoff::platform
