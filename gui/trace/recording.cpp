// SPDX-License-Identifier: MIT
#include "gui/trace/recording.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string>

namespace lightoff::trace {

void Extremes::take(float value) {
    if (std::isnan(value)) {
        return;
    }
    low = std::min(low, value);
    high = std::max(high, value);
}

void Extremes::take(const Extremes& other) {
    low = std::min(low, other.low);
    high = std::max(high, other.high);
}

Recording::Recording(std::size_t lanes, std::size_t capacity) : capacity_(capacity), lanes_(lanes) {
    if (capacity < 2 || capacity % 2 != 0) {
        throw std::invalid_argument("a recording's capacity must be even and at least 2, not " +
                                    std::to_string(capacity));
    }
    for (Lane& lane : lanes_) {
        lane.levels.resize(1);
    }
}

bool Recording::append(double t_s, std::span<const float> values) {
    if (values.size() != lanes_.size() || (!empty() && t_s < newest_s_)) {
        return false;
    }
    if (empty() || in_last_ == per_cell_) {
        for (Lane& lane : lanes_) {
            extend(lane); // the last cell is full: it may now be counted into blocks
        }
        if (size() == capacity_) {
            halve();
        }
        // Halving leaves full cells only, so a new cell begins either way.
        starts_s_.push_back(t_s);
        for (Lane& lane : lanes_) {
            lane.levels[0].emplace_back();
        }
        in_last_ = 0;
    }
    for (std::size_t i = 0; i < values.size(); ++i) {
        lanes_[i].levels[0].back().take(values[i]);
        lanes_[i].newest = values[i];
    }
    ++in_last_;
    newest_s_ = t_s;
    return true;
}

void Recording::add_lane() {
    Lane& lane = lanes_.emplace_back();
    lane.levels.resize(1);
    lane.levels[0].resize(size()); // counted into blocks when the next cell begins, as in every lane
}

void Recording::clear_after(double t_s) {
    const auto after = std::upper_bound(starts_s_.begin(), starts_s_.end(), t_s);
    if (after == starts_s_.end()) {
        return;
    }
    starts_s_.erase(after, starts_s_.end());
    in_last_ = per_cell_; // what is left is closed: the next sample starts a cell
    newest_s_ = empty() ? 0 : starts_s_.back();
    for (Lane& lane : lanes_) {
        lane.levels[0].resize(size());
        lane.newest = empty() ? std::numeric_limits<float>::quiet_NaN() : lane.levels[0].back().high;
        rebuild(lane);
    }
}

std::size_t Recording::cell_from(double t_s) const {
    return static_cast<std::size_t>(std::lower_bound(starts_s_.begin(), starts_s_.end(), t_s) -
                                    starts_s_.begin());
}

float Recording::newest(std::size_t lane) const {
    return lanes_[lane].newest;
}

Extremes Recording::extremes(std::size_t lane, std::size_t first, std::size_t last) const {
    const std::vector<std::vector<Extremes>>& levels = lanes_[lane].levels;
    Extremes all;
    last = std::min(last, size());
    std::size_t at = first;
    while (at < last) {
        // The biggest complete block that begins here and ends in range.
        std::size_t level = 0;
        std::size_t block = 1;
        while (level + 1 < levels.size() && at % (block * kFan) == 0 && at + block * kFan <= last &&
               at / (block * kFan) < levels[level + 1].size()) {
            block *= kFan;
            ++level;
        }
        all.take(levels[level][at / block]);
        at += block;
    }
    return all;
}

void Recording::halve() {
    const std::size_t half = size() / 2;
    for (std::size_t i = 0; i < half; ++i) {
        starts_s_[i] = starts_s_[2 * i];
    }
    starts_s_.resize(half);
    for (Lane& lane : lanes_) {
        std::vector<Extremes>& cells = lane.levels[0];
        for (std::size_t i = 0; i < half; ++i) {
            Extremes both = cells[2 * i];
            both.take(cells[2 * i + 1]);
            cells[i] = both;
        }
        cells.resize(half);
        rebuild(lane);
    }
    per_cell_ *= 2;
}

void Recording::rebuild(Lane& lane) {
    lane.levels.resize(1);
    extend(lane);
}

void Recording::extend(Lane& lane) {
    for (std::size_t level = 0; lane.levels[level].size() >= kFan; ++level) {
        if (level + 1 == lane.levels.size()) {
            lane.levels.emplace_back();
        }
        const std::vector<Extremes>& below = lane.levels[level];
        std::vector<Extremes>& blocks = lane.levels[level + 1];
        while ((blocks.size() + 1) * kFan <= below.size()) {
            Extremes all;
            for (std::size_t i = blocks.size() * kFan; i < (blocks.size() + 1) * kFan; ++i) {
                all.take(below[i]);
            }
            blocks.push_back(all);
        }
    }
}

void fill_columns(const Recording& recording, std::size_t lane, double from_s, double to_s, std::size_t count,
                  std::vector<Extremes>& out) {
    out.assign(count, Extremes{});
    std::size_t first = recording.cell_from(from_s);
    for (std::size_t i = 0; i < count; ++i) {
        const double edge_s =
            from_s + (to_s - from_s) * static_cast<double>(i + 1) / static_cast<double>(count);
        const std::size_t last = recording.cell_from(edge_s);
        const bool running = first == last && first > 0 && edge_s <= recording.newest_s();
        out[i] = running ? recording.cell(lane, first - 1) : recording.extremes(lane, first, last);
        first = last;
    }
}

} // namespace lightoff::trace
