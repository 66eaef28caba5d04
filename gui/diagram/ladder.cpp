// SPDX-License-Identifier: MIT
#include "gui/diagram/ladder.hpp"

#include "gui/diagram/layout/board_outline.hpp"
#include "gui/diagram/layout/boxes.hpp"
#include "gui/diagram/layout/loose.hpp"
#include "gui/diagram/layout/pushing.hpp"
#include "gui/diagram/layout/rail_lines.hpp"
#include "gui/diagram/layout/rungs.hpp"
#include "gui/diagram/names.hpp"

#include <iterator>
#include <set>

namespace lightoff::diagram {
namespace {

constexpr float kMargin = 42; ///< left and right of the rails
constexpr float kFoot = 16;   ///< below the last row

void add(std::vector<Block>& blocks, std::vector<Block> more) {
    blocks.insert(blocks.end(), std::move_iterator(more.begin()), std::move_iterator(more.end()));
}

/// A box that has a part's name says it for the symbol inside.
void drop_doubled_names(Ladder& ladder) {
    for (Symbol& symbol : ladder.symbols)
        for (const Block& block : ladder.blocks)
            if (symbol.name == block.name)
                symbol.name.clear();
}

/// A terminal of a part that neither symbol nor box names says whose it is.
void name_nameless(Ladder& ladder, const furnace::Model& model, const std::string& board) {
    std::set<std::string> named{board};
    for (const Symbol& symbol : ladder.symbols)
        if (!symbol.name.empty())
            named.insert(std::string(
                owner_of(model.wiring.netlist.element_names[static_cast<std::size_t>(symbol.element)])));
    for (const Block& block : ladder.blocks)
        named.insert(block.name);
    for (Spot& spot : ladder.spots)
        if (spot.terminal >= 0 && !spot.plug && named.count(spot.owner) == 0 &&
            named.count(spaced(spot.owner)) == 0)
            spot.name = spaced(spot.owner) + " " + spot.name;
}

/// The screw that people park the black lead on; of several the one with the shortest name: "C".
int common_spot(const Ladder& ladder, const furnace::Model& model) {
    const furnace::Terminal* best = nullptr;
    int spot = -1;
    for (std::size_t t = 0; t < model.wiring.terminals.size(); ++t) {
        const furnace::Terminal& terminal = model.wiring.terminals[t];
        if (terminal.pin == model.wiring.common &&
            (best == nullptr || terminal.name.size() < best->name.size())) {
            best = &terminal;
            spot = ladder.pin_spot[t];
        }
    }
    return spot;
}

} // namespace

Ladder lay_out(const furnace::Model& model) {
    const Circuits circuits = read_circuits(model);
    const Lengths lengths(model, circuits);
    const float width = width_of_drawing(circuits, lengths);
    Positions positions(circuits.graph.vertices.size());
    LadderBuilder builder(model, circuits);

    const Supply supply = place_supply(circuits, lengths, width, positions);
    draw_supply(model, circuits, supply, positions, builder);
    const Stack stack = stack_circuits(model, circuits, lengths, width, supply.depth(), positions);
    draw_rungs(circuits, stack, positions, width, builder);
    const Depth depth = draw_loose(circuits, width, stack.depth, positions, builder);

    Ladder ladder = builder.finish();
    ladder.bounds = {{-kMargin, 0}, {width + kMargin, depth.y + kFoot}};
    ladder.common_spot = common_spot(ladder, model);
    ladder.rails = rail_lines(circuits, supply, stack, positions, width);
    add(ladder.blocks, board_outline(circuits, supply, stack, positions, width));
    add(ladder.blocks, boxes_of_supply(ladder, circuits, supply));
    add(ladder.blocks, boxes_of_rooms(ladder, model));
    add(ladder.blocks, casings_of_motors(ladder, model));
    drop_doubled_names(ladder);
    name_nameless(ladder, model, circuits.board());
    return ladder;
}

int Ladder::spot_of_node(int node) const {
    for (std::size_t i = 0; i < spots.size(); ++i)
        if (spots[i].node == node)
            return static_cast<int>(i);
    return -1;
}

} // namespace lightoff::diagram
