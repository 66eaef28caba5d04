// SPDX-License-Identifier: MIT
#pragma once
#include "furnace/condition.hpp"

#include <cstdint>
#include <limits>
#include <string>
#include <string_view>
#include <vector>

/// What hands can do to a part, what eyes make of it, and what that takes: data of the catalogue. A service
/// never asks what is wrong. It sets numbers of the Condition: back to how the furnace was built, or to what
/// the act itself makes of them (a hose pulled off lets its water run out).
namespace lightoff::faults {

enum class ServiceKind : std::uint8_t {
    take_off, ///< the part comes out or off and lies beside the furnace
    put_back,
    clean,
    tighten, ///< screws and plugs made fast, wires put where they belong
    adjust,  ///< by turns of a screw, or to what the rating plate says
    reset,   ///< its button
    replace
};
inline constexpr int kServiceKinds = 7;
std::string_view name_of(ServiceKind kind); ///< "take-off"

/// A number of the Condition, and the value that it takes.
struct Setting {
    std::uint64_t field = 0; ///< furnace::condition_field
    double value = 0.0;
};

/// What must be so before a service or a look is possible. All of them can be known by whoever stands there.
struct Access {
    bool burner_door_off = false;
    bool blower_door_off = false;
    std::vector<int> off; ///< parts that must have been taken off first
    std::vector<int> on;  ///< parts that must be in place
};

struct Service {
    ServiceKind kind = ServiceKind::clean;
    std::string tool;        ///< in words, "nut driver, 1/4 in."; empty: bare hands
    int hands = 2;           ///< 1 or 2
    std::uint32_t ticks = 0; ///< elapsed time at the furnace (teaching values)
    double cost = 0.0;       ///< of material, in the school's currency; 0 for work alone
    Access access;
    std::vector<std::uint64_t> restores; ///< fields that it puts back to how the furnace was built, ascending
    std::vector<int> clears_bridges;     ///< places in Catalogue::bridges: shorts that it removes, ascending
    std::vector<Setting> sets;           ///< what the act itself does
    std::uint64_t adjusts = 0;   ///< adjust by turns: field, and what a full turn clockwise adds to it
    double per_turn = 0.0;       ///< 0: not by turns
    double most_turns = 0.0;     ///< either way from how it was found
    bool opens_gas = false;      ///< a gas joint comes apart and is made again
    bool resets_rollout = false; ///< the rollout switch closes again if it has cooled: heat::reset_rollout
};

/// One sentence for what is seen while a number lies below `below`; the last band has no upper end.
struct Band {
    double below = 0.0;
    std::string words; ///< describes, never diagnoses: "grey with dust, light still shows through"
};

/// What a condition looks like from where one stands, before anything is looked at closely.
enum class Wear : std::uint8_t { dirt, soot, rust, water, burnt, corrosion, coat };
inline constexpr int kWears = 7;
inline constexpr int kWearSteps = 5;
std::string_view name_of(Wear wear); ///< "dirt"

/// What a look at a part shows of one number.
struct Sight {
    std::uint64_t field = 0;
    std::vector<Band> bands; ///< one at least, `below` rising
    Wear wear = Wear::dirt;  ///< how it shows
    /// From which value on it shows by how much, rising; or falling, where less is worse: below which. Empty:
    /// it does not show so.
    std::vector<double> steps;
    double until = std::numeric_limits<double>::infinity(); ///< from there on it does not show so either
};

struct Look {
    std::uint32_t ticks = 0;
    Access access;
    std::vector<Sight> sights;
};

/// For each sight of a look, in order, the band that the number lies in.
std::vector<int> describe(const Look& look, const furnace::Condition& condition);

/// How much of it shows, in steps from 0 (nothing) to kWearSteps.
int step_of(const Sight& sight, const furnace::Condition& condition);

/// What `turns` clockwise of an adjusting screw do; nothing if the service is not by turns.
void turn(const Service& service, double turns, furnace::Condition& condition);

} // namespace lightoff::faults
