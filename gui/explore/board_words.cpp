// SPDX-License-Identifier: MIT
#include "gui/explore/board_words.hpp"

namespace lightoff::explore {

std::string board_step(const furnace::Model& model, const bench::World& world, std::size_t machine) {
    const control::BoardState& board = world.state.board;
    if (board.powered == 0) {
        return "No control power";
    }
    return model.board.machines[machine].state_titles[board.state[machine]];
}

std::string lamp_words(const furnace::Model& model, const bench::World& world) {
    const control::LampState& lamp = world.state.board.lamp;
    if (world.state.board.powered == 0 || lamp.pattern >= model.board.patterns.size()) {
        return "dark";
    }
    std::string words = model.board.pattern_names[lamp.pattern];
    if (model.board.patterns[lamp.pattern].counted) {
        words += " " + std::to_string(lamp.count);
    }
    return words;
}

} // namespace lightoff::explore
