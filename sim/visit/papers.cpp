// SPDX-License-Identifier: MIT
#include "visit/papers.hpp"

#include <algorithm>

namespace lightoff::visit {
namespace {

void enter(Papers& papers, const bench::Action& action) {
    using bench::Verb;
    const auto line = static_cast<bench::ReportLine>(action.target);
    switch (action.verb) {
    case Verb::strike:
        papers.struck.at(action.target) = action.value;
        break;
    case Verb::unstrike:
        papers.struck.at(static_cast<std::size_t>(action.value)).reset();
        break;
    case Verb::strike_part:
        papers.struck_parts[action.target] = action.value;
        break;
    case Verb::tag:
        papers.tags[action.target] = action.value;
        break;
    case Verb::stops_at:
        papers.stops_at = action.value;
        break;
    case Verb::cause:
        papers.cause = action.value;
        break;
    case Verb::cause_behind:
        papers.cause_behind = action.value;
        break;
    case Verb::as_found:
        papers.as_found[line] = action.value;
        break;
    case Verb::as_left:
        papers.as_left[line] = action.value;
        break;
    case Verb::found:
        if (std::find(papers.found.begin(), papers.found.end(), action.value) == papers.found.end())
            papers.found.push_back(action.value);
        break;
    default:
        break;
    }
}

} // namespace

Papers papers_of(std::span<const Visit::Done> done) {
    Papers papers;
    for (const Visit::Done& one : done)
        enter(papers, one.action);
    return papers;
}

} // namespace lightoff::visit
