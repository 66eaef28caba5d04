// SPDX-License-Identifier: MIT
#pragma once
#include <cstddef>
#include <limits>
#include <span>
#include <vector>

namespace lightoff::trace {

/// The least and the greatest of some samples; empty while nothing was sampled (an instrument not attached).
struct Extremes {
    float low = std::numeric_limits<float>::infinity();
    float high = -std::numeric_limits<float>::infinity();

    bool empty() const { return !(low <= high); }
    /// Takes a sample in; not-a-number leaves it as it is.
    void take(float value);
    void take(const Extremes& other);
    bool operator==(const Extremes&) const = default;
};

/// Samples of several lanes taken at the same moments, kept in bounded memory.
///
/// A cell holds the extremes of `samples_per_cell()` samples in a row: one, until the capacity is reached;
/// then pairs of cells are merged and it doubles. So nothing is ever forgotten but fineness in time, and the
/// extremes over whole cells are exact whatever the length. A pyramid over the cells answers "extremes of
/// these cells" in logarithmic time.
class Recording {
public:
    /// 2^17 cells: 1.8 h at 20 samples a second before the first merging, 1 MiB a lane.
    static constexpr std::size_t kCells = std::size_t{1} << 17;

    /// Capacity must be even and at least 2 (std::invalid_argument).
    explicit Recording(std::size_t lanes, std::size_t capacity = kCells);

    /// Adds one sample a lane at a time not before the last one (seconds); a sample that goes back in time is
    /// refused (false), as is one with another number of lanes.
    bool append(double t_s, std::span<const float> values);
    /// One lane more, behind the others: empty so far.
    void add_lane();
    /// Forgets the cells that begin after `t_s` (an explorer went back in time).
    void clear_after(double t_s);

    std::size_t lanes() const { return lanes_.size(); }
    /// Cells in use, the one being filled included.
    std::size_t size() const { return starts_s_.size(); }
    bool empty() const { return starts_s_.empty(); }
    std::size_t samples_per_cell() const { return per_cell_; }
    /// Time of the first sample in a cell.
    double start_s(std::size_t cell) const { return starts_s_[cell]; }
    /// Time of the newest sample; 0 when empty.
    double newest_s() const { return newest_s_; }
    /// First cell that starts at or after a time; size() if there's none.
    std::size_t cell_from(double t_s) const;
    const Extremes& cell(std::size_t lane, std::size_t index) const { return lanes_[lane].levels[0][index]; }
    /// The newest sample of a lane; not-a-number when there is none.
    float newest(std::size_t lane) const;

    /// Exact extremes of cells first..last-1 of a lane.
    Extremes extremes(std::size_t lane, std::size_t first, std::size_t last) const;

private:
    static constexpr std::size_t kFan = 16; // cells below each block of the pyramid

    struct Lane {
        std::vector<std::vector<Extremes>>
            levels; // [0] the cells, [k] blocks of kFan^k cells, complete ones only
        float newest = std::numeric_limits<float>::quiet_NaN();
    };

    void halve();
    static void rebuild(Lane& lane);
    static void extend(Lane& lane);

    std::size_t capacity_;
    std::size_t per_cell_ = 1;
    std::size_t in_last_ = 0; // samples in the cell being filled
    double newest_s_ = 0;
    std::vector<double> starts_s_;
    std::vector<Lane> lanes_;
};

/// Extremes in each of `count` equal columns of the time from..to (seconds). Each cell is counted in the
/// column in which it starts, so the columns together miss nothing; a column in which none starts, before the
/// newest sample, repeats the cell that is running then. `out` is reused to save allocation.
void fill_columns(const Recording& recording, std::size_t lane, double from_s, double to_s, std::size_t count,
                  std::vector<Extremes>& out);

} // namespace lightoff::trace
