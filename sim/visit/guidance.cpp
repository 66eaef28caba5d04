// SPDX-License-Identifier: MIT
#include "visit/guidance.hpp"

#include "visit/papers.hpp"

#include <algorithm>

namespace lightoff::visit {
namespace {

using Kind = lesson::GuideUntil::Kind;

/// The last act of that verb decides: a door taken off and put on again is not off.
bool was_done(const lesson::GuideUntil& until, const Visit& visit) {
    const auto& done = visit.done();
    if (visit.world().hands.busy != 0 && visit.world().hands.action.verb == until.action.verb)
        return false; // it is in hand
    const auto last = std::find_if(done.rbegin(), done.rend(), [&](const Visit::Done& one) {
        return one.action.verb == until.action.verb;
    });
    return last != done.rend() && (until.any_words || last->action == until.action);
}

bool was_read(const lesson::GuideUntil& until, const Visit& visit) {
    const auto& readings = visit.notebook().readings();
    return std::any_of(readings.begin(), readings.end(), [&](const bench::Reading& reading) {
        return reading.window == 0 &&
               std::minmax(reading.place_a, reading.place_b) == std::minmax(until.red, until.black);
    });
}

} // namespace

bool Guidance::is_done(const lesson::GuideUntil& until, const Visit& visit) const {
    switch (until.kind) {
    case Kind::did:
        return was_done(until, visit);
    case Kind::noticed:
        return std::any_of(visit.captions().begin() + static_cast<std::ptrdiff_t>(captions_before_),
                           visit.captions().end(),
                           [&](const bench::Caption& caption) { return caption.about == until.about; });
    case Kind::read:
        return was_read(until, visit);
    case Kind::struck: {
        const Papers papers = papers_of(visit.done());
        return std::any_of(papers.struck.begin(), papers.struck.end(),
                           [](const auto& block) { return block.has_value(); });
    }
    case Kind::proved_dead:
        return visit.proved_dead_tick().has_value();
    case Kind::fire:
        return visit.percept().heard.roar > 0;
    }
    return false;
}

void Guidance::look(const Visit& visit) {
    while (at_ < guide_.steps.size() && is_done(guide_.steps[at_].until, visit)) {
        ++at_;
        captions_before_ = visit.captions().size();
    }
}

} // namespace lightoff::visit
