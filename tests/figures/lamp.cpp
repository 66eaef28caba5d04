// SPDX-License-Identifier: MIT
#include "figures/figures.hpp"

#include "control/lamp.hpp"
#include "support/rig.hpp"

namespace lightoff::figures {
namespace {

struct Row {
    const char* pattern;
    std::uint8_t count;
    const char* words;
};

} // namespace

std::vector<Drawing> lamp_figures() {
    const std::vector<Row> rows{{"wink", 0, "standby: one short wink"},
                                {"count", 1, "1 step passed"},
                                {"count", 3, "3 steps passed"},
                                {"count", 5, "5 steps passed"},
                                {"held", 3, "held after 3 steps: long glow"},
                                {"flutter", 0, "an input that should not be there"},
                                {"steady", 0, "the board failed its own check"},
                                {"dark", 0, "no control power"}};
    constexpr double row_height = 32.0;
    constexpr double seconds = 9.0;
    const control::Board& board = test::reference_model().board;
    Figure figure(
        "What the progress lamp shows", row_height * static_cast<double>(rows.size()) + 70.0,
        "From the table that drives the board (scenarios/equipment). The lamp says how far a call has come, "
        "never why it stopped. Never more than 3 flashes a second.");
    const double bottom = static_cast<double>(rows.size());
    Chart chart(figure.svg, figure.box(250, 24, 8, 54), {"seconds", 0.0, seconds, every(0.0, seconds, 1.0)},
                {"", 0.0, bottom, {}});
    double y = bottom;
    for (const Row& row : rows) {
        const Point name = chart.at(0.0, y - 0.5);
        figure.svg.text({name.x - 12.0, name.y + 5.0}, row.words, {.anchor = Anchor::end});
        std::uint8_t index = 0;
        while (board.pattern_names.at(index) != row.pattern)
            ++index;
        control::LampState lamp;
        double on_since_s = -1.0;
        chart.block(0.0, seconds, y - 0.75, y - 0.25, kPanel, 1.0);
        for (double t = 0.0; t < seconds + 0.5 * board.tick_s; t += board.tick_s) {
            control::step_lamp(lamp, &board.patterns[index], index, row.count, 0);
            const bool lit = lamp.on != 0 && t < seconds - 0.5 * board.tick_s;
            if (lit && on_since_s < 0.0)
                on_since_s = t;
            if (!lit && on_since_s >= 0.0) {
                chart.block(on_since_s, t, y - 0.75, y - 0.25, kGas, 1.0);
                on_since_s = -1.0;
            }
        }
        y -= 1.0;
    }
    return {{"lamp.svg", figure.finish()}};
}

} // namespace lightoff::figures
