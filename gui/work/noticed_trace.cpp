// SPDX-License-Identifier: MIT
#include "gui/work/noticed_trace.hpp"

#include "bench/captions.hpp"
#include "gui/sheet/figures.hpp"
#include "instruments/bag.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace lightoff::work {
namespace {

constexpr float kNothing = std::numeric_limits<float>::quiet_NaN();
/// Many lanes may come: less fineness than the recorder of explore keeps, still an hour tick by tick.
constexpr std::size_t kCells = std::size_t{1} << 16U;

/// Lanes of the senses, in the order of their columns.
enum Sense : std::size_t { kLamp, kInducer, kBurners, kBlower, kAir, kSenses };

constexpr std::uint8_t kMostTenths = 13; ///< of the ordinary: from there on the words are the same

/// The word of a caption for each value that a lane can have.
std::vector<std::string> words_by_tenths(std::string_view (&words)(std::uint8_t)) {
    std::vector<std::string> all;
    for (std::uint8_t tenths = 0; tenths <= kMostTenths; ++tenths)
        all.emplace_back(words(tenths));
    return all;
}

/// A round span that holds all that was recorded.
void fit_scale(trace::Lane& lane, const trace::Extremes& all) {
    if (all.empty())
        return;
    const float most = std::max({std::abs(all.low), std::abs(all.high), 1e-1F});
    const float step = std::pow(10.0F, std::floor(std::log10(most)));
    lane.high = std::ceil(std::max(all.high, 0.0F) / step) * step;
    lane.low = std::floor(std::min(all.low, 0.0F) / step) * step;
    if (lane.high <= lane.low)
        lane.high = lane.low + step;
}

} // namespace

NoticedTrace::NoticedTrace() : recording_(kSenses, kCells), sample_(kSenses) {}

std::optional<std::size_t> NoticedTrace::find_lane(const Shown& shown) const {
    const auto known = std::find(shown_.begin(), shown_.end(), shown);
    if (known == shown_.end())
        return std::nullopt;
    return kSenses + static_cast<std::size_t>(known - shown_.begin());
}

/// The lane of what a window shows; a new one if it never showed that before.
std::size_t NoticedTrace::lane_of(const Shown& shown) {
    if (const auto known = find_lane(shown))
        return *known;
    shown_.push_back(shown);
    sample_.push_back(kNothing);
    recording_.add_lane();
    return sample_.size() - 1;
}

void NoticedTrace::take(const bench::Percept& percept, double here_s, view::Units units) {
    std::fill(sample_.begin(), sample_.end(), kNothing);
    sample_[kLamp] = percept.seen.lamp_on ? 1.0F : 0.0F;
    sample_[kInducer] = static_cast<float>(percept.heard.inducer_hz);
    sample_[kBurners] = static_cast<float>(percept.heard.roar);
    sample_[kBlower] = static_cast<float>(percept.heard.blower_hz);
    sample_[kAir] = static_cast<float>(percept.felt.register_air);
    for (std::size_t i = 0; i < instruments::kWindows; ++i) {
        const instruments::Display& display = percept.instruments.window[i];
        if (const auto point = sheet::point_of(display, units))
            sample_[lane_of({i, display.quantity, units})] = static_cast<float>(point->value);
    }
    recording_.append(here_s, sample_);
}

/// Tones: up to what the wheels' blades give at the motors' synchronous speed.
std::vector<trace::Lane> NoticedTrace::lanes(const view::Known& known) const {
    std::vector<trace::Lane> lanes{
        {"Lamp", "", 0, 1, 0, true, {"dark", "light"}, {}, {}, kLamp},
        {"Inducer", "Hz", 0, 1500, 0, false, {}, {}, {}, kInducer},
        {"Burners", "", 0, kMostTenths, 0, true, words_by_tenths(bench::roar_words), {}, {}, kBurners},
        {"Blower", "Hz", 0, 900, 0, false, {}, {}, {}, kBlower},
        {"Air", "", 0, kMostTenths, 0, true, words_by_tenths(bench::air_words), {}, {}, kAir},
    };
    const auto windows = instruments::displays(instruments::Bag{});
    for (std::size_t i = 0; i < windows.size(); ++i) {
        const instruments::Display& display = known.percept.instruments.window[i];
        const auto point = sheet::point_of(display, known.units);
        const auto column = find_lane({i, display.quantity, known.units});
        if (!point || !column)
            continue;
        trace::Lane lane;
        lane.name = windows[i].name;
        lane.unit = point->unit;
        lane.decimals = point->decimals;
        lane.column = column;
        fit_scale(lane, recording_.extremes(*column, 0, recording_.size()));
        lanes.push_back(std::move(lane));
    }
    return lanes;
}

void NoticedTrace::draw(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known) {
    for (; done_seen_ < known.done.size(); ++done_seen_) {
        const visit::Visit::Done& done = known.done[done_seen_];
        if (!bench::is_paper(done.action.verb) && done.action.verb != bench::Verb::wait)
            events_.push_back({static_cast<double>(done.tick - known.arrived_tick) * units::seconds_per_tick,
                               std::string(bench::spec_of(done.action.verb).name)});
    }
    chart_.draw(canvas, area, recording_, lanes(known), events_, view_);
}

} // namespace lightoff::work
