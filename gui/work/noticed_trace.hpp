// SPDX-License-Identifier: MIT
#pragma once
#include "gui/trace/recording.hpp"
#include "gui/trace/strip_chart.hpp"
#include "gui/view/known.hpp"

#include <optional>
#include <vector>

namespace lightoff::work {

/// The recorder of a call: lanes for what can be seen, heard and felt, and one for each quantity that a
/// window of an instrument has shown a number of. Nothing else is ever recorded.
class NoticedTrace {
public:
    NoticedTrace();

    /// After every tick.
    void take(const bench::Percept& percept, double here_s, view::Units units);
    void draw(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known);

private:
    /// What a lane behind those of the senses holds: volts and ohms of one meter are two.
    struct Shown {
        std::size_t window;
        instruments::Quantity quantity;
        view::Units units;
        bool operator==(const Shown&) const = default;
    };

    [[nodiscard]] std::optional<std::size_t> find_lane(const Shown& shown) const;
    std::size_t lane_of(const Shown& shown);
    [[nodiscard]] std::vector<trace::Lane> lanes(const view::Known& known) const;

    trace::Recording recording_;
    trace::StripChart chart_;
    trace::ChartView view_;
    std::vector<trace::Event> events_;
    std::vector<Shown> shown_;
    std::vector<float> sample_;
    std::size_t done_seen_ = 0;
};

} // namespace lightoff::work
