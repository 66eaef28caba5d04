// SPDX-License-Identifier: MIT
#pragma once
#include "gui/cutaway/scene.hpp"

#include <algorithm>

namespace lightoff::cutaway {

/// A thing on its way between two places: it may turn round at any moment.
class Way {
public:
    static constexpr double kLongest_s = 0.35; ///< from one end to the other

    void go_on(bool away, double wall_s) {
        const auto by = static_cast<float>(wall_s / kLongest_s);
        target_ = away ? 1.0F : 0.0F;
        share_ = away ? std::min(1.0F, share_ + by) : std::max(0.0F, share_ - by);
    }
    void jump(bool away) { share_ = target_ = away ? 1.0F : 0.0F; }
    [[nodiscard]] bool moves() const { return share_ != target_; }
    /// 0 to 1, slow at both ends.
    [[nodiscard]] float eased() const { return share_ * share_ * (3 - 2 * share_); }

private:
    float share_ = 0, target_ = 0;
};

/// A lamp shown with at most three flashes in any second of the wall, however fast simulated time goes:
/// WCAG 2.2, 2.3.1 Three Flashes or Below Threshold.
class ShownLamp {
public:
    static constexpr double kLeast_s = 1.0 / 6; ///< that it stays on or off

    void go_on(bool lamp, double wall_s) {
        held_s_ += wall_s;
        waits_ = lamp != on_;
        if (waits_ && held_s_ >= kLeast_s)
            jump(lamp);
    }
    void jump(bool lamp) {
        if (lamp != on_)
            held_s_ = 0;
        on_ = lamp;
        waits_ = false;
    }
    [[nodiscard]] bool on() const { return on_; }
    /// It is to change as soon as it may.
    [[nodiscard]] bool waits() const { return waits_; }

private:
    double held_s_ = kLeast_s;
    bool on_ = false, waits_ = false;
};

/// How things stand that take time of the wall to come to their place on the drawing.
struct Standing {
    bool burner_door_on = true, blower_door_on = true, blower_module_in = true;
    bool lamp_on = false;
};
Standing standing_of(const bench::Site& site, const bench::Percept& percept);

struct Motion {
    Way burner_door, blower_door, blower_module;
    ShownLamp lamp;

    /// Lets wall time go by. Without movement all is at once where it belongs; the lamp is slowed all the
    /// same.
    void go_on(const Standing& now, double wall_s, bool moves);
    /// All is where it belongs.
    void jump(const Standing& now);
    [[nodiscard]] bool moves() const {
        return burner_door.moves() || blower_door.moves() || blower_module.moves() || lamp.waits();
    }
    /// Puts it into a scene.
    void show_in(CutawayScene& scene) const;
};

} // namespace lightoff::cutaway
