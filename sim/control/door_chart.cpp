// SPDX-License-Identifier: MIT
#include "control/door_chart.hpp"

#include "control/plain_number.hpp"

namespace lightoff::control {
namespace {

std::string seconds(double tick_s, std::uint32_t ticks) {
    return plain_number(tick_s * ticks) + " s";
}

std::string signal(const LampPattern& p, double tick_s) {
    const bool flashing = p.counted || p.flashes > 0;
    if (!flashing && p.glow_ticks == 0)
        return "dark";
    if (!flashing && p.rest_ticks == 0)
        return "steady";
    std::string text;
    if (flashing) {
        text = p.counted ? "the count: flashes of "
                         : std::to_string(p.flashes) + (p.flashes == 1 ? " flash of " : " flashes of ");
        text += seconds(tick_s, p.on_ticks);
        if (p.counted || p.flashes > 1 || p.rest_ticks == 0)
            text += ", one every " + seconds(tick_s, p.flash_ticks);
    }
    if (p.glow_ticks > 0)
        text += (text.empty() ? "" : ", then ") + std::string("one long glow of ") +
                seconds(tick_s, p.glow_ticks);
    if (p.rest_ticks > 0)
        text += ", then dark " + seconds(tick_s, p.rest_ticks);
    return text + ", repeating";
}

const char* word(Proof proof) {
    switch (proof) {
    case Proof::sensed:
        return "sensed";
    case Proof::timed:
        return "timed";
    case Proof::commanded:
        return "commanded";
    }
    return "";
}

} // namespace

DoorChart door_chart(const Board& board) {
    DoorChart chart;
    chart.board = board.name;
    chart.signals.reserve(board.patterns.size());
    for (std::size_t i = 0; i < board.patterns.size(); ++i)
        chart.signals.push_back({signal(board.patterns[i], board.tick_s), board.pattern_meanings[i]});
    chart.steps.reserve(board.steps.size());
    for (std::size_t i = 0; i < board.steps.size(); ++i) {
        const CountedStep& step = board.steps[i];
        chart.steps.push_back(
            {static_cast<int>(i) + 1, step.step, word(step.proof), step.inputs, step.measure});
    }
    return chart;
}

} // namespace lightoff::control
