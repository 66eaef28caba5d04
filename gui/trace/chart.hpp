// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/theme.hpp"
#include "gui/trace/recording.hpp"

#include <optional>
#include <string>
#include <vector>

/// What stands on a recorder's paper, and which stretch of time of it is shown.
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

/// A lane's value in words or figures, without its unit; a dash for what was not read.
std::string words_for(const Lane& lane, float value);
/// A limit of a lane's scale, as short as it can be: 200, −1, 0.5.
std::string limit_words(const Lane& lane, float value);

} // namespace lightoff::trace
