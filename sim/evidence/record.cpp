// SPDX-License-Identifier: MIT
#include "evidence/record.hpp"

#include <algorithm>

namespace lightoff::evidence {
namespace {

std::uint8_t bit_of(faults::Control control) {
    return static_cast<std::uint8_t>(1U << static_cast<unsigned>(control));
}

/// Controls that some fault of a part leaves wrong: a look at the part shows how they stand.
std::uint8_t controls_at(const faults::Catalogue& catalogue, int part) {
    std::uint8_t bits = 0;
    for (const faults::Fault& fault : catalogue.faults)
        if (fault.part == part)
            for (const faults::ControlLeft& left : fault.controls)
                bits = static_cast<std::uint8_t>(bits | bit_of(left.control));
    return bits;
}

} // namespace

Stance stance_of(const furnace::Inputs& in) {
    Stance s;
    s.burner_door_on = in.burner_door_on != 0;
    s.blower_door_on = in.blower_door_on != 0;
    s.door_switch_in = in.blower_door_on != 0 || in.door_switch_held != 0;
    s.power_on = in.disconnect_on != 0 && in.breaker_on != 0;
    return s;
}

std::uint8_t controls_of(const furnace::Inputs& in) {
    using faults::Control;
    unsigned bits = 0;
    for (const Control control : {Control::breaker, Control::disconnect, Control::gas_cock,
                                  Control::thermostat_mode, Control::filter})
        bits |= faults::is_on(control, in) ? bit_of(control) : 0U;
    return static_cast<std::uint8_t>(bits);
}

Record::Record(const bench::Site& site, const bench::World& arrived)
    : site_(&site), notebook_(site), arrival_(arrived.tick),
      now_(arrived.tick), stances_{stance_of(arrived.inputs)}, stance_now_(stances_.front()) {
    Observation first;
    first.tick = arrived.tick;
    first.sensed = sense(bench::perceive(site, arrived), arrived.state.board.lamp);
    observations_.push_back(first);
}

void Record::act(const bench::Action& action) {
    actions_.push_back({now_, action});
}

void Record::observe(const bench::World& world) {
    now_ = world.tick;
    stance_now_ = stance_of(world.inputs);
    const std::uint64_t on_site = now_ - arrival_;
    if (on_site % kLookTicks == 0)
        add(stretch_, sense(bench::perceive(*site_, world), world.state.board.lamp));
    if (on_site % kStretchTicks == 0) {
        Observation stretch;
        stretch.tick = now_;
        stretch.sensed = stretch_;
        observations_.push_back(stretch);
        stretch_ = {};
    }
    const std::size_t before = notebook_.readings().size();
    notebook_.observe(world);
    for (std::size_t i = before; i < notebook_.readings().size(); ++i) {
        Observation reading;
        reading.tick = now_;
        reading.reading = static_cast<int>(i) + 1;
        reading.since = std::max(arrival_, world.hands.last_tick + 1);
        const int part = notebook_.readings()[i].part;
        if (notebook_.readings()[i].taken == bench::Taken::looked) {
            reading.controls = controls_of(world.inputs);
            reading.seen_controls = controls_at(site_->catalogue, part);
        }
        observations_.push_back(reading);
        stances_.push_back(stance_now_);
    }
}

} // namespace lightoff::evidence
