// SPDX-License-Identifier: MIT
#include "report/of_attempt.hpp"

#include "files/error.hpp"
#include "furnace/furnace.hpp"

#include <string>

namespace lightoff::report {
namespace {

std::string title_of_call(const std::string& name) {
    try {
        return name.empty() ? std::string() : files::load_bundle(name).scenario.title;
    } catch (const files::Error&) {
        return {};
    }
}

} // namespace

Document document_of(const files::LoadedBundle& bundle, const std::string& file,
                     const lesson::Debrief& debrief) {
    const files::Attempt attempt = files::read_attempt(file, furnace::kPhysicsVersion);
    Origin origin;
    origin.file = file.substr(file.rfind('/') + 1);
    origin.header = attempt.header;
    origin.chain = attempt.chain;
    if (attempt.end)
        origin.end = attempt.end->reason;
    origin.twin_title = title_of_call(debrief.twin);
    return make_document(bundle, debrief, origin);
}

} // namespace lightoff::report
