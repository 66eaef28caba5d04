// SPDX-License-Identifier: MIT
#include "cli/live_view.hpp"

#include "cli/board_text.hpp"
#include "cli/playthrough.hpp"
#include "cli/text_layout.hpp"
#include "units/convert.hpp"

#include <algorithm>
#include <string>
#include <vector>

namespace lightoff::cli {
namespace {

constexpr std::uint64_t kRedrawsInARun = 200;
constexpr std::uint64_t kLeastTicks = 20;
constexpr std::size_t kBarWidth = 8;
constexpr std::size_t kStepWidth = 19;
constexpr std::size_t kLampWidth = 9;

std::string bar(std::uint64_t done, std::uint64_t all) {
    const std::size_t full = all == 0 ? kBarWidth : static_cast<std::size_t>(done * kBarWidth / all);
    std::string text;
    for (std::size_t i = 0; i < kBarWidth; ++i)
        text += i < full ? "█" : "░";
    return text;
}

} // namespace

LiveView::LiveView(Output& out, const furnace::Model& model, std::uint64_t last_tick)
    : out_(&out), model_(&model), last_tick_(last_tick),
      every_ticks_(std::max(kLeastTicks, last_tick / kRedrawsInARun)) {}

LiveView::~LiveView() {
    try {
        clear();
    } catch (const OutputError&) {
        // Whoever writes next meets it again.
    }
}

std::string LiveView::status(const bench::World& world) const {
    const furnace::Signals& s = world.state.signals;
    const std::string step = board_steps(*model_, world).front();
    const double rise_k = s.heat.supply_air_k - world.state.heat.temperature.house;
    const std::vector<std::string> parts{
        padded_left(fixed(seconds_of(world.tick), 0), 7) + " s " + bar(world.tick, last_tick_),
        padded(clipped(step, kStepWidth), kStepWidth),
        "lamp " + padded(clipped(lamp_text(*model_, world), kLampWidth), kLampWidth),
        padded_left(fixed(units::pa_to_inwc(s.draft.port_suction_pa), 2), 5) + " in. " +
            padded_left(fixed(1e6 * s.power.flame_current_a, 1), 4) + " µA " +
            padded_left(fixed(std::max(0.0, units::k_difference_to_fahrenheit(rise_k)), 0), 3) + " °F"};
    std::string line;
    for (const std::string& part : parts)
        line += (line.empty() ? "" : " ") + part;
    return line;
}

void LiveView::look(const bench::World& world) {
    if (!out_->is_terminal() || world.tick < next_tick_)
        return;
    next_tick_ = world.tick + every_ticks_;
    // A line that reaches the edge would wrap, and what is wrapped can't be taken back.
    const std::string text = clipped(status(world), out_->width() - 1);
    out_->write("\r\x1b[K" + out_->styled(Style::quiet, text));
    out_->flush();
    drawn_ = true;
}

void LiveView::clear() {
    if (!drawn_)
        return;
    drawn_ = false;
    out_->write("\r\x1b[K");
    next_tick_ = 0; // and drawn again below what is written now
}

} // namespace lightoff::cli
