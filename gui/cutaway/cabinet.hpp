// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/geometry.hpp"

#include <array>
#include <cstddef>
#include <vector>

/// Where everything stands in our cabinet, in units of the drawing (about 2 mm), y downwards. A section from
/// the service side at the left to the return at the right: burners one above the other, each firing into its
/// own hairpin cell; the hairpins lie within each other and end in the collector box above the burners; the
/// inducer hangs on the box, the vent goes up behind the burner door. Air comes down the return drop, through
/// filter and blower, and rises past the cells into the supply duct.
namespace lightoff::cutaway {

using canvas::Rect;

inline const Rect kDrawing{{0, 0}, {480, 604}};
inline const Rect kCabinet{{52, 92}, {410, 592}};
inline constexpr float kDeck = 376;  ///< between exchanger and blower
inline constexpr float kSheet = 196; ///< tube sheet between burner compartment and exchanger

inline constexpr float kBurnerDoorX = 52;
inline const Rect kBurnerDoor{{44, 96}, {50, 372}};
inline const Rect kBlowerDoor{{44, 382}, {50, 588}};

inline const Rect kVent{{66, -400}, {90, 150}};
inline const ImVec2 kInducer{106, 158};
inline constexpr float kInducerRadius = 30;
inline const Rect kCollector{{158, 106}, {196, 210}};

inline const Rect kFireBox{{166, 238}, {196, 352}}; ///< dark: between burner mouths and tube sheet
inline constexpr float kBurnerBack = 128, kBurnerMouth = 168;
inline constexpr float kFlameLength = 104; ///< at the rating
inline const ImVec2 kHairpin{284, 225};    ///< centre of all bends

inline const Rect kGasValve{{66, 312}, {102, 350}};
inline constexpr float kManifoldX = 115;
inline constexpr float kGasPipeY = 331;
inline const ImVec2 kGasCock{22, 331};
inline const ImVec2 kIgniterFoot{182, 352};
inline constexpr float kIgniterHeight = 19;
inline const ImVec2 kPressureSwitch{80, 236};
inline constexpr float kPressureSwitchRadius = 17;
inline const ImVec2 kRollout{148, 228};
inline const ImVec2 kLimit{206, 101};

inline const ImVec2 kBlower{268, 486};
inline constexpr float kBlowerRadius = 60;
inline const Rect kFilter{{412, 424}, {426, 580}};
inline const Rect kReturn{{430, -400}, {478, 584}};
inline const Rect kSupply{{206, -400}, {400, 92}};

inline const Rect kBoard{{74, 396}, {152, 502}};
inline const ImVec2 kLamp{90, 413};
inline const ImVec2 kDoorSwitch{60, 530};
inline const Rect kTransformer{{86, 536}, {128, 574}};

inline const Rect kCoil{{214, 46}, {392, 82}};
inline const Rect kGasMeter{{0, 350}, {38, 390}};
inline const Rect kDisconnect{{6, 464}, {32, 512}};
inline const Rect kToggle{{14, 476}, {24, 500}}; ///< of the disconnect
inline const Rect kInducerCapacitor{{140, 112}, {152, 138}};
inline const Rect kBlowerCapacitor{{174, 520}, {196, 558}};
inline const Rect kJunctionBox{{136, 520}, {162, 546}};
inline const Rect kBoardFuse{{98, 480}, {122, 489}};
/// Behind the doors.
inline const Rect kBurnerCompartment{{53, 96}, {196, 374}};
inline const Rect kBlowerCompartment{{53, 379}, {408, 590}};

/// Radius of the hairpin of burner i; the lowest burner fires into the outermost.
float hairpin_radius(std::size_t burner, std::size_t count);
/// Height of a burner and of the firing leg of its cell.
float burner_y(std::size_t burner, std::size_t count);
/// Half the width of a cell.
float cell_half(std::size_t count);
/// Middle line of a cell from its burner's mouth round the bend to the collector box.
std::vector<ImVec2> cell_path(std::size_t burner, std::size_t count);

} // namespace lightoff::cutaway
