// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/cutaway/scene.hpp"
#include "gui/debrief/model.hpp"

#include <optional>

namespace lightoff::debrief {

/// The furnace at the moment looked at; worked out when the moment changes.
class Now {
public:
    const cutaway::CutawayScene& scene(const Model& model, std::uint64_t tick);
    void stand_still(bool still) { still_ = still; }

private:
    std::optional<furnace::Workspace> workspace_;
    std::optional<std::uint64_t> tick_;
    cutaway::CutawayScene scene_;
    bool still_ = false;
};

/// The open furnace at that moment, and the last that was done, read and noticed by then.
void draw_now(const canvas::Canvas& canvas, canvas::Rect area, const Model& model, Now& now,
              std::uint64_t tick);

} // namespace lightoff::debrief
