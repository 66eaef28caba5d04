// SPDX-License-Identifier: MIT
#include "cli/board_text.hpp"

namespace lightoff::cli {

std::vector<std::string> board_steps(const furnace::Model& model, const bench::World& world) {
    const control::BoardState& state = world.state.board;
    std::vector<std::string> steps;
    for (std::size_t m = 0; m < model.board.machines.size(); ++m)
        steps.push_back(state.powered != 0 ? model.board.machines[m].state_titles[state.state[m]]
                                           : "no control power");
    return steps;
}

std::string lamp_text(const furnace::Model& model, const bench::World& world) {
    const control::LampState& lamp = world.state.board.lamp;
    if (world.state.board.powered == 0 || lamp.pattern >= model.board.patterns.size())
        return "dark";
    std::string text = model.board.pattern_names[lamp.pattern];
    if (model.board.patterns[lamp.pattern].counted)
        text += " " + std::to_string(lamp.count);
    return text;
}

} // namespace lightoff::cli
