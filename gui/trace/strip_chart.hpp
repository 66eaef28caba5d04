// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/trace/chart.hpp"
#include "gui/trace/curves.hpp"

#include <optional>
#include <vector>

namespace lightoff::trace {

struct ChartLayout;

/// A recorder's paper: lanes one above the other, named at the left, the newest value (or that under the
/// cursor) at the right, events as flags on top, time below.
class StripChart {
public:
    /// Draws into a box of the ImGui window now being built, and takes its wheel (zoom), drag (pan) and,
    /// while it has the keyboard, the characters + and - (zoom), [ and ] (pan), the keys End (newest), Page
    /// Up and Page Down (other lanes, where not all have room: pressing the count of them shows others, too);
    /// with a marker the arrows left and right move it. The wheel with Shift pans. Without columns of their
    /// own, `lanes` are those of the recording in their order.
    void draw(const canvas::Canvas& canvas, canvas::Rect area, const Recording& recording,
              const std::vector<Lane>& lanes, const std::vector<Event>& events, ChartView& view,
              const Beside& beside = {});

    /// Moment under the pointer in the last frame, if it was over the chart.
    std::optional<double> cursor_s() const { return cursor_s_; }
    /// Whether it takes keys: the last thing pressed or reached by Tab.
    bool takes_keys() const { return takes_keys_; }
    /// The box of the curves in the last frame, for whoever lays more along the same time.
    canvas::Rect plot() const { return plot_; }

private:
    void handle_input(const ChartLayout& layout, const Recording& recording, ChartView& view);
    static void take_keys(const ChartLayout& layout, double newest_s, ChartView& view);
    void draw_curves(const canvas::Canvas& canvas, canvas::Rect row, std::size_t index,
                     const Recording& recording, const Lane& lane, const Beside& beside,
                     const ChartView& view);

    std::optional<double> cursor_s_;
    canvas::Rect plot_;
    bool takes_keys_ = false;
    Curves curves_;
};

} // namespace lightoff::trace
