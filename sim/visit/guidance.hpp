// SPDX-License-Identifier: MIT
#pragma once
#include "lesson/guide.hpp"
#include "visit/visit.hpp"

#include <cstddef>

namespace lightoff::visit {

/// How far somebody has come in a guided call. Steps are done in their order; what had come about before a
/// step was reached counts for it if it still stands (a switch), or if it was read.
class Guidance {
public:
    explicit Guidance(lesson::Guide guide) : guide_(std::move(guide)) {}

    /// Looks at how things stand now.
    void look(const Visit& visit);

    [[nodiscard]] const lesson::GuideStep* step() const {
        return at_ < guide_.steps.size() ? &guide_.steps[at_] : nullptr;
    }
    [[nodiscard]] std::size_t number() const { return at_ + 1; }
    [[nodiscard]] std::size_t count() const { return guide_.steps.size(); }

private:
    [[nodiscard]] bool is_done(const lesson::GuideUntil& until, const Visit& visit) const;

    lesson::Guide guide_;
    std::size_t at_ = 0;
    std::size_t captions_before_ = 0; ///< that were there when the step was reached
};

} // namespace lightoff::visit
