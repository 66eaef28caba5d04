// SPDX-License-Identifier: MIT
#include "files/attempt.hpp"
#include "files/attempt_line.hpp"
#include "files/error.hpp"
#include "files/json_text.hpp"
#include "files/utf8.hpp"
#include <nlohmann/json.hpp>
#include <stdexcept>

namespace lightoff::files {
namespace {

std::string text_of(std::string_view text) {
    return canonical_text(Json(text));
}

std::string text_of(const char* what, std::string_view text, std::size_t longest) {
    const bool clean = find_bad_utf8(text) == std::string_view::npos &&
                       find_control_character(text) == std::string_view::npos;
    if (!clean || text.empty() || character_count(text) > longest)
        throw std::invalid_argument(std::string(what) + " " + in_quotes(text) + "; allowed 1 to " +
                                    std::to_string(longest) + " characters of UTF-8");
    return text_of(text);
}

std::string action_text(std::string_view action_json) {
    const Json action = parse_json(action_json, "action");
    if (!action.is_object())
        throw std::invalid_argument("an action must be a JSON object, not " + describe(action));
    return canonical_text(action);
}

std::string content_of(const AttemptHeader& header) {
    return R"({"format":)" + text_of(kAttemptFormat) + R"(,"scenario":)" +
           text_of("scenario", header.scenario, kLongestScenario) + R"(,"physics_version":)" +
           std::to_string(header.physics_version) + R"(,"bundle":")" + hex(header.bundle_hash) +
           R"(","seed":")" + hex(header.seed) + '"';
}

AppendFile create(const std::string& path, const AttemptHeader& header) {
    if (header.physics_version < 0 || header.physics_version > INT32_MAX)
        throw std::invalid_argument("physics version " + std::to_string(header.physics_version) +
                                    "; allowed 0 to " + std::to_string(INT32_MAX));
    static_cast<void>(content_of(header)); // throws before there is a file
    return AppendFile::create(path);
}

} // namespace

AttemptWriter::AttemptWriter(const std::string& path, const AttemptHeader& header)
    : AttemptWriter(create(path, header)) {
    chain_ = first_chain();
    line(content_of(header), AppendFile::Sync::to_disk);
}

AttemptWriter AttemptWriter::resume(const std::string& path, std::int64_t physics_version, Attempt& so_far) {
    so_far = read_attempt(path, physics_version);
    if (so_far.end)
        throw Error({path, "", "an attempt that has ended: " + in_quotes(so_far.end->reason),
                     "an abandoned one", "begin a new attempt"});
    AttemptWriter writer(AppendFile::reopen(path, so_far.whole_bytes));
    writer.chain_ = so_far.chain;
    writer.entries_ = static_cast<std::int64_t>(so_far.entries.size());
    writer.last_tick_ = so_far.last_tick;
    return writer;
}

void AttemptWriter::check_tick(std::int64_t tick) const {
    if (tick < last_tick_ || tick > kLastTick)
        throw std::invalid_argument("tick " + std::to_string(tick) + " after tick " +
                                    std::to_string(last_tick_));
}

void AttemptWriter::line(const std::string& content, AppendFile::Sync sync) {
    if (ended_)
        throw std::logic_error("the attempt has ended; nothing can follow");
    Digest chain = chain_;
    file_.append(sealed_line(content, chain) + '\n', sync);
    chain_ = chain; // only now: a line that could not be written may be tried again
}

void AttemptWriter::entry(std::int64_t tick, std::string_view by, std::string_view action_json) {
    check_tick(tick);
    line(R"({"n":)" + std::to_string(entries_ + 1) + R"(,"tick":)" + std::to_string(tick) + R"(,"by":)" +
             text_of("by", by, kLongestActor) + R"(,"action":)" + action_text(action_json),
         AppendFile::Sync::to_disk);
    ++entries_;
    last_tick_ = tick;
}

void AttemptWriter::mark(std::int64_t tick, std::uint64_t world_hash) {
    check_tick(tick);
    line(R"({"mark":")" + hex(world_hash) + R"(","tick":)" + std::to_string(tick),
         AppendFile::Sync::to_system);
    last_tick_ = tick;
}

void AttemptWriter::end(std::string_view reason) {
    line(R"({"end":)" + text_of("reason", reason, kLongestReason) + R"(,"count":)" + std::to_string(entries_),
         AppendFile::Sync::to_disk);
    ended_ = true;
}

} // namespace lightoff::files
