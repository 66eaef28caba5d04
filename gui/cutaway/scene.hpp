// SPDX-License-Identifier: MIT
#pragma once
#include "bench/percept.hpp"
#include "bench/world.hpp"

#include <array>
#include <cstddef>
#include <string_view>
#include <vector>

namespace lightoff::cutaway {

/// How far marks that show a movement have come. Simulated time alone moves them, so that the same run gives
/// the same picture.
struct Travel {
    double inducer_rad = 0.0; ///< angle at which the wheel is shown
    double blower_rad = 0.0;
    double air_s = 0.0;  ///< seconds at the rated flow: half the flow comes half as far
    double flue_s = 0.0; ///< the same for combustion air and flue gas
    double gas_s = 0.0;  ///< the same for gas
};

/// Wheels stand at their own angle at rest.
Travel travel_at_rest(const bench::World& world);

/// Moves the marks by one tick. `pace` is simulated seconds for one second on the wall: when time is rushed,
/// marks move at most four times as fast, or the eye would see them stand or run back.
void move(Travel& travel, const furnace::Model& model, const bench::World& world, double tick_s,
          double pace = 1.0);

/// Speed in rad/s at which a wheel is shown. A slow wheel turns at its own speed; a fast one is slowed,
/// always less than the display can follow and always faster than a slower one.
double shown_speed(double speed_rad_s);

struct Flame {
    float strength = 0; ///< 0 none .. 1 full
    float yellow = 0;   ///< 0 blue .. 1 yellow
    float length = 0;   ///< 1 at the rating
    float lift = 0;     ///< 0 seated .. 1 off the burner
    float softness = 0; ///< 0 crisp .. 1 lazy
    float touch = 0;    ///< 0 free .. 1 all of it strikes metal
};

struct Wheel {
    float angle_rad = 0;
    float speed_rad_s = 0; ///< its true one
};

/// Dirt and the like on a part.
struct WearMark {
    std::string_view part; ///< as in the catalogue
    faults::Wear wear = faults::Wear::dirt;
    int step = 0; ///< 1 .. faults::kWearSteps
};
std::vector<WearMark> marks_of(const bench::Site& site, const bench::WornParts& worn);
/// Parts on which somebody has left something, as in the catalogue.
std::vector<std::string_view> traces_of(const bench::Site& site, const bench::WornParts& worn);

/// All that the cutaway shows, as plain numbers: the drawing knows no furnace, the furnace no drawing.
struct CutawayScene {
    std::array<Flame, combustion::kMaxBurners> burner{};
    std::size_t burner_count = 0;
    float flame_outside_w = 0; ///< rolls out of the burner openings
    float igniter_k = 293;
    Wheel inducer, blower;

    bool pressure_switch_closed = false;
    bool limit_closed = true, rollout_closed = true;
    bool door_switch_closed = true; ///< by the door or by hand
    bool has_inducer = true;
    bool as_seen = false; ///< doors hide what lies behind them, and nobody sees gas
    bool burner_door_on = true, blower_door_on = true, filter_in = true;
    bool gas_cock_open = true, disconnect_on = true;
    bool lamp_on = false;
    float gas_valve = 0; ///< stroke, 0 shut .. 1 open

    float suction = 0; ///< at the switch, over that which makes it
    float air = 0;     ///< flow over the rated one
    float flue = 0;    ///< the same
    float gas = 0;     ///< the same
    float warmth = 0;  ///< supply air over return air, in rated temperature rises
    float flame_k = 293, exchanger_k = 293, collector_k = 293; ///< flue gas along its way

    std::vector<WearMark> wear;           ///< what is seen of it
    std::vector<std::string_view> traces; ///< the same

    /// Doors and blower module on their way: 0 in place, 1 taken away.
    float burner_door_away = 0, blower_door_away = 0, blower_module_away = 0;

    Travel travel;
    float time_s = 0;   ///< simulated; flames flicker by it
    bool still = false; ///< nothing is to move: what flows is marked by chevrons instead
};

CutawayScene make_scene(const furnace::Model& model, const bench::World& world, const Travel& travel);

/// The same as somebody before the furnace sees it: nothing behind a door, no gas, no air, no contact's
/// state, no energy that can't be seen. `travel` moves the wheels' marks.
CutawayScene scene_of(const bench::Site& site, const bench::Percept& percept, const Travel& travel);
/// Takes all movement out of it.
void stand_still(CutawayScene& scene);
/// Moves the marks of what is seen to turn by one tick.
void move(Travel& travel, const bench::Percept& percept, double tick_s);

} // namespace lightoff::cutaway
