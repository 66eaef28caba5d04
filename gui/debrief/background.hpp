// SPDX-License-Identifier: MIT
#pragma once
#include "gui/debrief/model.hpp"

#include <memory>
#include <mutex>
#include <string>
#include <thread>

namespace lightoff::debrief {

/// Makes the model of an attempt's file in a thread of its own: it takes seconds, and the window goes on
/// drawing. Destroying it breaks the work off.
class Background {
public:
    explicit Background(std::string attempt_path);

    /// The model, once, when it is done.
    std::unique_ptr<Model> take();
    /// Why there will be none; empty while there may be one.
    [[nodiscard]] std::string failure() const;
    /// What is being done now: "Running the attempt again, 40 %".
    [[nodiscard]] std::string progress() const;

private:
    void work(const std::stop_token& stop, const std::string& path);
    void tell(const std::stop_token& stop, lesson::DebriefStage stage, double share);

    mutable std::mutex mutex_;
    std::string progress_;
    std::string failure_;
    std::unique_ptr<Model> model_;
    std::jthread thread_; ///< last: it is joined before the rest goes
};

} // namespace lightoff::debrief
