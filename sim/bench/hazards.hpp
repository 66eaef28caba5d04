// SPDX-License-Identifier: MIT
#pragma once
#include "bench/hazard_table.hpp"
#include "bench/notebook.hpp"
#include "bench/school_rules.hpp"
#include "bench/site.hpp"
#include "bench/world.hpp"
#include "furnace/furnace.hpp"

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

/// What can hurt somebody, found from the state of things and what is being done. What a hazard is called,
/// how grave it is and why stands in the school's table (HazardTable); how it is found, here.
namespace lightoff::bench {

struct HazardEvent {
    std::uint64_t tick = 0;
    Hazard hazard = Hazard::switch_in_gas;
    std::string about;            ///< the part, wire or place
    std::uint64_t ended_tick = 0; ///< of one that lasts; 0 while it does
};

/// Watches a World tick by tick. Exposure counts, not bad luck: a live part is a hazard whether or not the
/// hand slips.
class HazardWatch {
public:
    HazardWatch(const Site& site, const SchoolRules& rules);

    /// Before an action begins, on the World as it stands.
    void before(const World& world, const Action& action, furnace::Workspace& workspace);
    /// After every tick; `notebook` has seen the tick.
    void observe(const World& world, const Notebook& notebook, furnace::Workspace& workspace);

    [[nodiscard]] const std::vector<HazardEvent>& events() const { return events_; }
    /// Whether the supply has been measured dead, with a meter that had shown a live one, since it was last
    /// switched.
    [[nodiscard]] bool proved_dead() const { return proved_dead_; }

private:
    void note(std::uint64_t tick, Hazard hazard, std::string about);
    void note_once(const World& world, bool is_so, Hazard hazard, const std::string& about);
    void before_handling(const World& world, const Action& action, furnace::Workspace& workspace);
    void before_sign_off(const World& world);
    void read(const World& world, const Notebook& notebook);
    void watch_bypass(const World& world, furnace::Workspace& workspace);
    void watch_air(const World& world);
    void watch_meter(const World& world);
    void watch_switches(const World& world);

    const Site* site_;
    SchoolRules rules_;
    std::vector<std::uint8_t> line_node_; ///< by node: 120 V to earth in a sound furnace at rest
    std::vector<HazardEvent> events_;
    std::array<std::uint8_t, static_cast<std::size_t>(Hazard::count)> open_{}; ///< lasting ones that last
    std::size_t readings_seen_ = 0;
    std::uint32_t switches_ = ~std::uint32_t{0}; ///< disconnect, breaker, doors as they were
    std::uint64_t bypass_ticks_ = 0;
    std::uint64_t co_ticks_ = 0;
    bool meter_saw_live_ = false;
    bool proved_dead_ = false;
    bool joint_opened_ = false; ///< a gas joint, and not tested since
};

} // namespace lightoff::bench
