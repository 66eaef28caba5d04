// SPDX-License-Identifier: MIT
#pragma once
#include "gui/debrief/model.hpp"
#include "support/worked_call.hpp"

#include <memory>
#include <utility>

/// Attempts to be talked over.
namespace lightoff::test {

/// The attempt of somebody who changed a part first and measured afterwards; made once, it takes seconds.
inline const debrief::Model& guessed() {
    static const debrief::Model kModel = [] {
        WorkedCall call("plugged-hose");
        lesson::Debrief made = call.debrief(call.log(kGuessing));
        const auto bundle = std::make_shared<const files::LoadedBundle>(call.bundle());
        return debrief::make_model(bundle, std::move(made),
                                   {"deaf-board", "A twin", "Somebody: It is cold."});
    }();
    return kModel;
}

/// The same with a grave hazard in its middle.
inline debrief::Model stopped() {
    debrief::Model model = guessed();
    for (std::size_t i = 0; i < model.site().hazards.size(); ++i)
        if (model.site().hazards[i].gravity == bench::Gravity::stop_work)
            model.debrief.story.hazards.push_back({model.story().arrived_tick + 4000,
                                                   static_cast<bench::Hazard>(i), "the board's line terminal",
                                                   0});
    return model;
}

} // namespace lightoff::test
