// SPDX-License-Identifier: MIT
#include "gui/trace/chart.hpp"

#include "gui/canvas/lettering.hpp"

#include <algorithm>
#include <cmath>

namespace lightoff::trace {
namespace {

constexpr double kLeastSpan_s = 5;
constexpr double kMostSpan_s = 7 * 86400.0;

} // namespace

void follow_newest(ChartView& view, double newest_s) {
    if (view.follow) {
        view.end_s = std::max(newest_s, view.span_s);
    }
}

void pan(ChartView& view, double by_s, double newest_s) {
    const double latest_s = std::max(newest_s, view.span_s);
    view.end_s = std::clamp(view.end_s + by_s, view.span_s, latest_s);
    view.follow = view.end_s >= latest_s;
}

void zoom(ChartView& view, double about_s, double factor) {
    const double span_s = std::clamp(view.span_s / factor, kLeastSpan_s, kMostSpan_s);
    if (!view.follow) {
        view.end_s = about_s + (view.end_s - about_s) * span_s / view.span_s;
    }
    view.span_s = span_s;
}

std::string words_for(const Lane& lane, float value) {
    if (std::isnan(value)) {
        return "–";
    }
    if (!lane.words.empty()) {
        const auto index = static_cast<std::size_t>(std::max(0.0F, std::round(value)));
        return lane.words[std::min(index, lane.words.size() - 1)];
    }
    return canvas::figure(static_cast<double>(value), lane.decimals);
}

std::string limit_words(const Lane& lane, float value) {
    std::string words = canvas::figure(static_cast<double>(value), lane.decimals);
    if (lane.decimals > 0) {
        words.erase(words.find_last_not_of('0') + 1);
        if (words.back() == '.') {
            words.pop_back();
        }
    }
    return words;
}

} // namespace lightoff::trace
