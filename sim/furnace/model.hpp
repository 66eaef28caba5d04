// SPDX-License-Identifier: MIT
#pragma once
#include "air/air.hpp"
#include "combustion/combustion.hpp"
#include "control/board.hpp"
#include "control/thermostat.hpp"
#include "draft/draft.hpp"
#include "furnace/wiring.hpp"
#include "gas/gas.hpp"
#include "heat/heat.hpp"

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace lightoff::furnace {

/// The flame as a conductor between rod and burner at full strength, rod well in it.
struct FlameConduction {
    double forward_siemens = 0.0; ///< rod positive
    double reverse_siemens = 0.0; ///< rod negative
};

/// A part, where it is, and so which door is in the way.
struct Place {
    enum class Where : std::uint8_t { burner_compartment, blower_compartment, outside, living_room };
    std::string part; ///< the name before the first dot of its terminals
    Where where = Where::outside;
    bool plug = false; ///< its terminals come apart together, in one pull
};

/// A quantity of the wiring that is worth a name: volts between two nodes, or amps through an element.
struct Reading {
    enum class Kind : std::uint8_t { volts, amps, flame_amps };
    std::string name;
    Kind kind = Kind::volts;
    int a = 0; ///< node, or element
    int b = 0; ///< node
};

/// How far a number of the Condition lies from its nominal value in a healthy furnace: uniform, +- spread.
struct Tolerance {
    std::string path;
    double nominal = 1.0;
    double spread = 0.0;
    std::uint64_t field = 0; ///< the path's place in the Condition's field list
};

/// What the rating plate says.
struct RatingPlate {
    double input_w = 0.0;
    double manifold_pa = 0.0;
    double rise_low_k = 0.0;
    double rise_high_k = 0.0;
    double external_static_pa = 0.0;
    double blower_full_load_a = 0.0;
    std::string gas; ///< "natural gas", "propane"
};

/// The furnace as it was built: immutable, shared by every World of the same bundle.
struct Model {
    std::string name;
    std::string title;
    RatingPlate rating;
    std::vector<Place> places;
    Wiring wiring;
    std::vector<std::uint8_t> touchable; ///< by node: a pin, a lug or bare metal that a probe can be put on
    std::vector<Reading> readings;
    std::vector<Tolerance> tolerances;
    FlameConduction flame;
    draft::Params draft;
    gas::Params gas;
    combustion::Params combustion;
    air::Params air;
    heat::Params heat;
    control::Board board;
    control::ThermostatParams thermostat;
    double gas_kg_m3 = 0.7;             ///< fuel at standard conditions
    bool standing_pilot = false;        ///< a pilot burns at the first burner while there is gas
    double pilot_lowest_pa = 0.0;       ///< inlet pressure below which the pilot goes out
    double pilot_hhv_w = 0.0;           ///< its heat, which keeps the exchanger warm and drawing
    double pilot_latent_w = 0.0;        ///< the part of it that leaves in water vapour
    double nominal_line_v = 120.0;      ///< that the wiring's source is written for
    double inducer_running_rad_s = 1.0; ///< healthy running speed, for its cooling fan
    std::uint64_t bundle_hash = 0;

    /// Node of a test point by name ("board.R", "limit.in.lug", "cabinet.metal"); -1 if there is none.
    [[nodiscard]] int find_test_point(std::string_view place) const { return wiring.find_place(place); }
    /// A node's own name.
    [[nodiscard]] const std::string& test_point_name(int node) const {
        return wiring.netlist.node_names[static_cast<std::size_t>(node)];
    }
};

} // namespace lightoff::furnace
