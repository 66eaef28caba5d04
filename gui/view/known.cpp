// SPDX-License-Identifier: MIT
#include "gui/view/known.hpp"

namespace lightoff::view {

Known known_of(const visit::Visit& visit, const lesson::Scenario& scenario, Units units) {
    Known known;
    known.site = &visit.site();
    known.scenario = &scenario;
    known.percept = bench::perceive_with_wear(visit.site(), visit.world());
    known.readings = visit.notebook().readings();
    known.captions = visit.captions();
    known.done = visit.done();
    known.papers = visit::papers_of(visit.done());
    known.expectations = bench::expectations(visit.done(), visit.notebook().readings());
    known.arrived_tick = visit.arrived_tick();
    known.proved_dead_tick = visit.proved_dead_tick();
    known.check = [&visit](const bench::Action& action) { return visit.check(action); };
    known.units = units;
    return known;
}

} // namespace lightoff::view
