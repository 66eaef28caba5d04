// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/trace/recording.hpp"

#include <optional>
#include <string>
#include <vector>

namespace lightoff::trace {

/// How one lane of a recording is written.
struct Lane {
    std::string name;
    std::string unit;
    float low = 0, high = 1;                // values at the lane's lower and upper edge, in `unit`
    int decimals = 0;                       // of the values shown
    bool step_like = false;                 // holds its value till the next sample: a relay, a valve, a count
    std::vector<std::string> words;         // step_like lanes: the word for 0, 1, 2 ... in place of a figure
    std::optional<canvas::Energy> energy;   // its colour; else ink
    std::vector<float> levels = {};         // values worth a line across: where a switch makes and breaks
    std::optional<std::size_t> column = {}; // of the recording; else the lane's own place in the list
    float tolerance = 0;                    // two runs that are no further apart count as the same
};

/// Something that happened at a moment, flagged on the time axis.
struct Event {
    double t_s = 0;
    std::string name;
};

/// A stretch of time with a name, along the foot of the paper: a step of the sequence.
struct Stretch {
    double from_s = 0, to_s = 0;
    std::string name;
};

/// What else is drawn along the same time.
struct Beside {
    std::vector<Stretch> stretches = {};
    /// The same lanes of another run: a second line, and a mark where it differs from the first by more than
    /// the lane's `tolerance`.
    const Recording* other = nullptr;
    std::string other_name = {}; ///< over its column of values
};

/// Which stretch of time is shown.
struct ChartView {
    double end_s = 0;
    double span_s = 300;
    bool follow = true;         // the right edge stays at the newest sample
    std::size_t first_lane = 0; // uppermost one shown, where not all have room
    int flag_rows = 3;          // of names of events, one above the other
    // A moment that is marked, for whoever looks back: pressing and dragging moves the mark, not the paper.
    std::optional<double> marker_s = {};

    double from_s() const { return end_s - span_s; }
};

/// Keeps the right edge at the newest sample while following; a short recording starts at the left edge. The
/// chart calls it in each frame.
void follow_newest(ChartView& view, double newest_s);
/// Moves the view; looking back stops following, reaching the newest sample again resumes it.
void pan(ChartView& view, double by_s, double newest_s);
/// Zooms by a factor (> 1 shows less time) about a moment, between 5 s and a week.
void zoom(ChartView& view, double about_s, double factor);

/// A recorder's paper: lanes one above the other, named at the left, the newest value (or that under the
/// cursor) at the right, events as flags on top, time below.
class StripChart {
public:
    /// Draws into a box of the ImGui window now being built, and takes its wheel (zoom), drag (pan) and,
    /// while it has the keyboard, the characters + and - (zoom), [ and ] (pan), the keys End (newest), Page
    /// Up and Page Down (other lanes, where not all have room); with a marker the arrows left and right move
    /// it. The wheel with Shift pans. Without columns of their own, `lanes` are those of the recording in
    /// their order.
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
    struct Layout;

    Layout lay_out(const canvas::Canvas& canvas, canvas::Rect area, const std::vector<Lane>& lanes,
                   const Beside& beside, ChartView& view) const;
    void take_keys(const Layout& layout, double newest_s, ChartView& view) const;
    static void draw_stretches(const canvas::Canvas& canvas, const Layout& layout, const Beside& beside,
                               const ChartView& view);
    /// A lane's value at the moment shown; not-a-number if there is none.
    float value_at(const Recording& recording, std::size_t column, const ChartView& view) const;
    void draw_values(const canvas::Canvas& canvas, const Layout& layout, std::size_t index,
                     const Recording& recording, const Lane& lane, const Beside& beside,
                     const ChartView& view) const;
    void draw_other(const canvas::Canvas& canvas, canvas::Rect box, const Recording& recording,
                    const Recording& other, std::size_t column, const Lane& lane, const ChartView& view);
    void handle_input(const Layout& layout, const Recording& recording, ChartView& view);
    void draw_times(const canvas::Canvas& canvas, const Layout& layout, const ChartView& view,
                    float free_from, canvas::Rect cursor) const;
    void draw_events(const canvas::Canvas& canvas, const Layout& layout, const std::vector<Event>& events,
                     const ChartView& view) const;
    /// Returns the right end of what it wrote.
    float draw_lane_count(const canvas::Canvas& canvas, const Layout& layout, std::size_t lanes) const;
    void draw_lane(const canvas::Canvas& canvas, const Layout& layout, std::size_t index,
                   const Recording& recording, const Lane& lane, const Beside& beside, const ChartView& view);
    void draw_samples(const canvas::Canvas& canvas, canvas::Rect box, const Recording& recording,
                      std::size_t index, const Lane& lane, const ChartView& view);
    void draw_columns(const canvas::Canvas& canvas, canvas::Rect box, const Recording& recording,
                      std::size_t index, const Lane& lane, const ChartView& view);
    static canvas::Rect cursor_tag(const canvas::Canvas& canvas, const Layout& layout, const ChartView& view,
                                   double at_s);
    static void draw_cursor(const canvas::Canvas& canvas, const Layout& layout, const ChartView& view,
                            double at_s, canvas::Rect tag);

    /// What the values belong to: the pointer's moment, else the marked one.
    std::optional<double> shown_s(const ChartView& view) const {
        return cursor_s_ ? cursor_s_ : view.marker_s;
    }

    std::optional<double> cursor_s_;
    canvas::Rect plot_;
    bool takes_keys_ = false;
    // Kept from frame to frame to save allocation.
    std::vector<Extremes> columns_, other_columns_;
    std::vector<ImVec2> upper_, lower_;
};

} // namespace lightoff::trace
