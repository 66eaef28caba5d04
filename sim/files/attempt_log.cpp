// SPDX-License-Identifier: MIT
#include "files/attempt_log.hpp"
#include "files/reader.hpp"
#include <nlohmann/json.hpp>

namespace lightoff::files {
namespace {

bench::Action action_of(const AttemptEntry& entry, const std::string& file, const bench::Site& site) {
    const std::string place = "entry " + std::to_string(entry.n);
    const Object object = parse_document(entry.action_json, file + ": " + place).root();
    const std::string text = object.text("do", {1, 200});
    object.finish();
    try {
        return bench::parse_action(site, text);
    } catch (const std::invalid_argument& error) {
        throw Error({file, place, in_quotes(text), "an action of this furnace", error.what()});
    }
}

} // namespace

std::string action_json(const bench::Site& site, const bench::Action& action) {
    return canonical_text(Json{{"do", bench::format_action(site, action)}});
}

lesson::Log log_of(const Attempt& attempt, const std::string& file, const bench::Site& site) {
    lesson::Log log;
    log.seed = attempt.header.seed;
    for (const AttemptEntry& entry : attempt.entries)
        log.entries.push_back({static_cast<std::uint64_t>(entry.tick), action_of(entry, file, site)});
    for (const AttemptMark& mark : attempt.marks)
        log.marks.push_back({static_cast<std::uint64_t>(mark.tick), mark.world_hash});
    log.last_tick = static_cast<std::uint64_t>(attempt.last_tick);
    return log;
}

} // namespace lightoff::files
