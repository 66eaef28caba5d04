// SPDX-License-Identifier: MIT
#pragma once
#include "furnace/model.hpp"
#include "gui/canvas/geometry.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// A furnace's wiring as a ladder, in drawing units, y downwards. Made from the netlist alone: another
/// furnace gives another ladder with no change here.
namespace lightoff::diagram {

/// A test point's place. A terminal has two: its pin, and the lug of its wire close by.
struct Spot {
    int node = 0;
    int terminal = -1; ///< Wiring::terminals; -1: bare metal
    bool lug = false;
    ImVec2 at{0, 0};
    ImVec2 outward{1, 0};  ///< from the pin to its lug, along the wire
    int row = 0;           ///< counted from the top
    bool plug = false;     ///< one of a plug's, which come apart together
    bool wired = false;    ///< a wire ends there, or at its lug
    std::string name;      ///< short: "W", "line in"
    std::string full_name; ///< as it is typed: "board.W", "board.W.lug"
    std::string owner;     ///< part
    furnace::Place::Where where = furnace::Place::Where::outside;
};

struct Wire {
    int element = 0;
    std::string name;    ///< "harness.limit_out"
    std::string colour;  ///< of the insulation: "yellow"
    std::string letters; ///< on its ferrule: "Y"
    std::vector<ImVec2> path;
    ImVec2 ferrule{0, 0};
    int from = -1, to = -1; ///< spots at its ends; -1: it ends in a splice
    int from_node = 0, to_node = 0;
};

/// Symbols as the trade draws them, at rest: no power, no call, everything cold.
enum class SymbolKind : std::uint8_t {
    resistor,
    conductor, ///< a strap, metal on metal
    reads,     ///< the board's own input
    fuse,
    relay_contact,
    breaker,
    disconnect,
    door_switch,
    heat_call,
    fan_switch,
    temperature_switch,
    reset_switch, ///< the same, put back by hand
    pressure_switch,
    overload,
    driver, ///< the control's own switch
    relay_coil,
    valve_coil,
    winding,
    transformer_winding,
    capacitor,
    igniter,
    flame,
    source
};

struct Symbol {
    SymbolKind kind = SymbolKind::resistor;
    int element = 0;
    ImVec2 from{0, 0}, to{0, 0};
    std::string name;       ///< "limit"
    std::string short_name; ///< where there is less room: "K1" of "K1 inducer"
    bool closed_at_rest = false;
    bool core_below = false; ///< transformer: which side its iron is on
};

/// A plain line with nothing to clamp: a track, a splice, a joint that can come apart.
struct Track {
    std::vector<ImVec2> path;
    int joint = -1; ///< element, if it is one
    int from_node = -1, to_node = -1;
};

struct Mark {
    enum class Kind : std::uint8_t { ground, earth, reads, branch };
    Kind kind = Kind::branch;
    ImVec2 at{0, 0};
};

/// A boundary: the board round its terminals, what is not at the furnace, a motor.
struct Block {
    enum class Kind : std::uint8_t { unit, room, casing };
    Kind kind = Kind::unit;
    std::string name;
    std::vector<canvas::Rect> pieces; ///< those of neighbouring rows touch
};

struct RailLine {
    std::string name; ///< "L"
    std::vector<ImVec2> path;
    ImVec2 head{0, 0}; ///< where the name stands
    int node = -1;
};

struct Ladder {
    canvas::Rect bounds;
    std::vector<Spot> spots;
    std::vector<Wire> wires;
    std::vector<Symbol> symbols;
    std::vector<Track> tracks;
    std::vector<Mark> marks;
    std::vector<Block> blocks;
    std::vector<RailLine> rails;
    std::vector<int> pin_spot, lug_spot;   ///< by terminal
    std::vector<std::vector<int>> runs;    ///< spots in the order in which they are walked, left to right
    std::vector<std::uint8_t> low_voltage; ///< by node: it is fed by the transformer's secondary
    int common_node = 0;
    int neutral_node = -1; ///< -1: there is none
    int common_spot = -1;

    [[nodiscard]] const Spot& spot(int i) const { return spots[static_cast<std::size_t>(i)]; }
    [[nodiscard]] const Wire& wire(int i) const { return wires[static_cast<std::size_t>(i)]; }
    [[nodiscard]] const Symbol& symbol(int i) const { return symbols[static_cast<std::size_t>(i)]; }
    /// Spots of a terminal.
    [[nodiscard]] int pin_of(int terminal) const { return pin_spot[static_cast<std::size_t>(terminal)]; }
    [[nodiscard]] int lug_of(int terminal) const { return lug_spot[static_cast<std::size_t>(terminal)]; }
    /// A node's place, the first one where it has several; -1: it can't be touched.
    [[nodiscard]] int spot_of_node(int node) const;
};

/// What a conductor carries: for pages that show all.
enum class Carried : std::uint8_t { nothing, volts_24, volts_120 };

/// Pure: the same model gives the same ladder. Every terminal gets two spots, every other touchable node one,
/// every wire one line.
Ladder lay_out(const furnace::Model& model);

enum class Direction : std::uint8_t { left, right, up, down };
/// Whether a step goes from terminal to terminal, or by pin and lug.
enum class Stride : std::uint8_t { terminals, ends };

/// The spot next to one: left and right along its run and on through the run that it ends on, up and down to
/// the nearest of the next row.
std::optional<int> next_spot_along(const Ladder& ladder, int spot, Direction direction,
                                   Stride stride = Stride::terminals);
/// The same for nodes; never the node itself.
std::optional<int> next_point_along(const Ladder& ladder, int node, Direction direction);

} // namespace lightoff::diagram
