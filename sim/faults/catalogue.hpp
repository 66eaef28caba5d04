// SPDX-License-Identifier: MIT
#pragma once
#include "faults/service.hpp"
#include "furnace/condition.hpp"
#include "furnace/inputs.hpp"
#include "furnace/model.hpp"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

/// What there is to handle and what can go wrong with it, as data resolved for one furnace.
namespace lightoff::faults {

/// The eight blocks of the suspects sheet, in the order of the sequence.
enum class Group : std::uint8_t { power, call, draft, ignition, gas, flame_sense, heat_and_air, control };
inline constexpr int kGroups = 8;
std::string_view name_of(Group group); ///< "flame-sense"

/// Two nodes of the wiring, the lower one first.
struct NodePair {
    int a = 0;
    int b = 0;
    friend bool operator==(const NodePair&, const NodePair&) = default;
};

/// What a part that was taken out for a new one is tested for on the bench, besides a look: by mouth, hand
/// and battery, seen as sights, and by the meter.
struct BenchTest {
    std::uint32_t ticks = 0; ///< 0: there is no test for it
    std::vector<Sight> sights;
    std::vector<int> elements;   ///< of the netlist: ohms, or capacitance, by itself
    std::vector<NodePair> pairs; ///< conductors that should not touch: ohms between them
};

/// What a hand would burn itself on.
enum class Surface : std::uint8_t { cool, fire, igniter, blower_winding, inducer_winding };

/// A thing that has a name on the work order: whatever can be looked at, handled or replaced.
struct Part {
    std::string id; ///< "pressure_hose"
    std::string title;
    Group group = Group::power;
    furnace::Place::Where where = furnace::Place::Where::outside;
    std::vector<std::string> has;       ///< places and elements of the wiring that belong to it
    std::vector<std::string> tested_at; ///< places and elements of the wiring, and spots, where it is tested
    bool consumable = false;            ///< filter, battery, fuse: may be changed as a matter of course
    bool safety_device = false;         ///< ask why it opened
    Surface surface = Surface::cool;
    Look look;
    BenchTest bench_test;
    std::vector<Service> services; ///< at most one of a kind
};

/// How far a fault moves one number: from `least` at severity 0 to `most` at severity 1.
struct Change {
    std::uint64_t field = 0; ///< furnace::condition_field
    double least = 0.0;
    double most = 0.0;
    bool logarithmic = false; ///< else linear
};

/// A path that should not be: two nodes touch, through ohms that go (logarithmically) from least to most.
struct BridgeChange {
    int bridge = 0; ///< place in Catalogue::bridges
    double least_ohm = 0.0;
    double most_ohm = 0.0;
};

/// A switch, cock or mode as somebody left it: no defect, and put right by the same hand.
enum class Control : std::uint8_t { breaker, disconnect, gas_cock, thermostat_mode, filter };
struct ControlLeft {
    Control control = Control::breaker;
    bool on = false;
};

/// What a fault sets in by.
enum class Trigger : std::uint8_t {
    from_start,
    at_tick,
    when_hot,    ///< while a node of the heat network is above a temperature
    now_and_then ///< comes and goes by itself, from the seed
};

struct ServiceRef {
    int part = 0;
    ServiceKind kind = ServiceKind::replace;
    friend bool operator==(const ServiceRef&, const ServiceRef&) = default;
};

/// Another fault that no reading of the standard sheet tells from this one, and why.
struct LookAlike {
    int fault = 0;
    std::string because;
};

/// A reading that moves one way as the fault gets worse, for as long as the sequence does not change.
struct Move {
    enum class Moment : std::uint8_t { standby, purge, warm_up, hot };
    std::string reading; ///< name of a readout: "suction at the port"
    Moment moment = Moment::hot;
    bool up = false;
};

struct Fault {
    std::string id; ///< "hose_plugged"
    std::string title;
    Group group = Group::power;
    int part = 0;
    std::vector<Change> changes;
    std::vector<BridgeChange> bridges;
    std::vector<ControlLeft> controls;
    std::vector<Trigger> triggers;   ///< that make sense for it
    int hot_node = -1;               ///< when_hot: place in the field list of heat::Nodes
    double hot_above_k = 0.0;        ///< and the temperature that it sets in above
    std::uint32_t stretch_ticks = 0; ///< now_and_then: how long it is there or not there at a time
    std::vector<ServiceRef> repairs; ///< any one of them puts it right; none if hands left a control so
    std::vector<ServiceRef> seeming; ///< look like repairs for a while
    double prior = 1.0;              ///< relative frequency
    bool prior_assumed = true;       ///< no source for it
    double repair_minutes = 0.0;     ///< for the books; teaching value
    double repair_cost = 0.0;
    std::vector<int> damages; ///< faults that it may bring about if left
    std::vector<LookAlike> look_alikes;
    std::vector<Move> moves;
};

struct Catalogue {
    std::vector<Part> parts;
    std::vector<Fault> faults;
    std::vector<NodePair> bridges; ///< every short that some fault makes

    /// Index by id; -1 if this furnace has none.
    [[nodiscard]] int find_part(std::string_view id) const;
    [[nodiscard]] int find_fault(std::string_view id) const;
    /// The service of that kind; nullptr if the part has none.
    [[nodiscard]] const Service* find_service(ServiceRef ref) const;
};

/// The numbers that a fault sets at a severity 0 to 1, in the order of its changes:
///     linear       v = least + (most - least) s
///     logarithmic  v = least (most/least)^s
/// Its ends are exact. std::invalid_argument for a severity outside.
std::vector<Setting> settings_at(const Fault& fault, double severity);

/// The shorts that it makes, likewise; always logarithmic.
std::vector<electrical::Bridge> bridges_at(const Catalogue& catalogue, const Fault& fault, double severity);

/// Number of the first free bridge of a wiring; -1 if all are taken.
int free_bridge(const electrical::Condition& wiring);

/// Breaks: settings, shorts (in free bridges) and controls at once. Of two faults that set the same number
/// the later one wins. std::invalid_argument if no bridge is free.
void apply(const Catalogue& catalogue, const Fault& fault, double severity, furnace::Condition& condition,
           furnace::Inputs& inputs);

/// How a control stands.
bool is_on(Control control, const furnace::Inputs& inputs);

/// Puts one control as it was left or, with `healthy`, as it should be.
void set_control(const ControlLeft& left, bool healthy, furnace::Inputs& inputs);

/// What a service does, once its time has passed. `as_built` is furnace::as_built of the World's seed.
void perform(const Catalogue& catalogue, const Service& service, const furnace::Condition& as_built,
             furnace::Condition& condition);

/// Whether a service has to do with a number of the Condition, so that what made it come and go is gone, too:
/// one that it restores or sets, or one of a bridge that it clears. To be asked BEFORE `perform`.
bool touches(const Catalogue& catalogue, const Service& service, const furnace::Condition& condition,
             std::uint64_t field);

/// Place in the Condition's field list of a bridge's first end; its second end and its ohms follow.
std::uint64_t bridge_field(int bridge);

/// Throws std::invalid_argument, in a sentence, for a fault that cannot be used: nothing that changes, no
/// repair, a repair that the part does not offer, a logarithm of 0, a whole number that would have to be
/// broken, a trigger without its data.
void check(const Catalogue& catalogue, const Fault& fault);

} // namespace lightoff::faults
