// SPDX-License-Identifier: MIT
#pragma once
#include "gui/trace/recording.hpp"
#include "gui/trace/strip_chart.hpp"
#include "gui/view/known.hpp"

#include <vector>

namespace lightoff::work {

/// The recorder of a call: lanes for what can be seen, heard and felt, and one for each window that an
/// instrument shows a number in. Nothing else is ever recorded.
class NoticedTrace {
public:
    NoticedTrace();

    /// After every tick.
    void take(const bench::Percept& percept, double here_s);
    void draw(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known);

private:
    [[nodiscard]] std::vector<trace::Lane> lanes(const view::Known& known) const;

    trace::Recording recording_;
    trace::StripChart chart_;
    trace::ChartView view_;
    std::vector<trace::Event> events_;
    std::vector<float> sample_;
    std::size_t done_seen_ = 0;
};

} // namespace lightoff::work
