// SPDX-License-Identifier: MIT
#include "gui/diagram/layout/boxes.hpp"

#include "gui/diagram/names.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <set>

namespace lightoff::diagram {
namespace {

using canvas::Rect;

std::string part_of(const furnace::Model& model, const Symbol& symbol) {
    return std::string(
        owner_of(model.wiring.netlist.element_names[static_cast<std::size_t>(symbol.element)]));
}

void widen(Rect& box, ImVec2 p) {
    box.min = {std::min(box.min.x, p.x), std::min(box.min.y, p.y)};
    box.max = {std::max(box.max.x, p.x), std::max(box.max.y, p.y)};
}

using RowBoxes = std::map<float, Rect>; ///< by y

void widen(RowBoxes& rows, ImVec2 p) {
    widen(rows.try_emplace(p.y, Rect{p, p}).first->second, p);
}

/// Round the pins of a part of the supply; none if they lie in one row.
std::optional<Rect> box_over_rows(const Ladder& ladder, const std::string& owner) {
    Rect box{{1e9F, 1e9F}, {-1e9F, -1e9F}};
    std::set<int> rows;
    for (const Spot& spot : ladder.spots)
        if (spot.owner == owner && !spot.lug && spot.row < static_cast<int>(Supply::kRows)) {
            widen(box, spot.at);
            rows.insert(spot.row);
        }
    return rows.size() < 2 ? std::nullopt : std::optional(box);
}

} // namespace

std::vector<Block> boxes_of_supply(const Ladder& ladder, const Circuits& circuits, const Supply& supply) {
    constexpr float kPad = 14;
    std::vector<Block> blocks;
    for (const std::string& owner : supply.columns)
        if (owner != circuits.board())
            if (const std::optional<Rect> box = box_over_rows(ladder, owner))
                blocks.push_back({Block::Kind::room,
                                  spaced(owner),
                                  {{{box->min.x - kPad, box->min.y - kRowHalf},
                                    {box->max.x + kPad, box->max.y + kRowHalf}}}});
    return blocks;
}

std::vector<Block> boxes_of_rooms(const Ladder& ladder, const furnace::Model& model) {
    constexpr float kLeftPad = 12, kRightPad = 6;
    std::map<std::string, RowBoxes> rooms; // by part
    for (const Spot& spot : ladder.spots)
        if (spot.where == furnace::Place::Where::living_room)
            widen(rooms[spot.owner], spot.at);
    for (const Symbol& symbol : ladder.symbols)
        if (const auto room = rooms.find(part_of(model, symbol)); room != rooms.end())
            for (const ImVec2 end : {symbol.from, symbol.to})
                widen(room->second, end);
    std::vector<Block> blocks;
    for (const auto& [owner, rows] : rooms) {
        Block block{Block::Kind::room, spaced(owner) + ", living room", {}};
        for (const auto& [y, box] : rows)
            block.pieces.push_back(
                {{box.min.x - kLeftPad, y - kRowHalf}, {box.max.x + kRightPad, y + kRowHalf}});
        blocks.push_back(std::move(block));
    }
    return blocks;
}

std::vector<Block> casings_of_motors(const Ladder& ladder, const furnace::Model& model) {
    constexpr float kPad = 5, kDown = 1;              // off the edge of the board's rows
    std::map<std::string, std::vector<Rect>> casings; // by part
    for (const Symbol& symbol : ladder.symbols)
        if (symbol.kind == SymbolKind::winding || symbol.kind == SymbolKind::overload) {
            const float y = symbol.from.y;
            casings[part_of(model, symbol)].push_back(
                {{std::min(symbol.from.x, symbol.to.x) - kPad, y - kRowHalf + kDown},
                 {std::max(symbol.from.x, symbol.to.x) + kPad, y + kRowHalf + kDown}});
        }
    std::vector<Block> blocks;
    for (auto& [owner, pieces] : casings)
        blocks.push_back({Block::Kind::casing, spaced(owner) + " motor", std::move(pieces)});
    return blocks;
}

} // namespace lightoff::diagram
