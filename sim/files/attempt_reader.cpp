// SPDX-License-Identifier: MIT
#include "files/attempt.hpp"
#include "files/attempt_line.hpp"
#include "files/reader.hpp"

namespace lightoff::files {
namespace {

class Parser {
public:
    Parser(const std::string& file, std::int64_t physics_version)
        : file_(file), physics_version_(physics_version) {}

    Attempt attempt;

    void line(std::string_view text) {
        ++line_;
        if (attempt.end)
            refuse("a line after the end of the attempt", "nothing");
        if (line_ == 1) {
            // The format comes first: another one may have another chain.
            read_header(text);
            check_chain(text);
            check_physics();
            return;
        }
        check_chain(text);
        const Document document = parse_document(text, place());
        const Object object = document.root();
        object.text("chain");
        if (object.has("n"))
            read_entry(object);
        else if (object.has("mark"))
            read_mark(object);
        else if (object.has("end"))
            read_end(object);
        else
            refuse("a line of unknown kind", "an entry, a mark or an end");
        object.finish();
    }

    /// The rest behind the last line feed. A program that dies leaves a part of a line, or all of it but
    /// its end; a whole line and more is an end that was edited.
    void unfinished(std::string_view rest) {
        ++line_;
        Digest chain = attempt.chain;
        const std::string_view first = up_to_seal(rest);
        if (first.size() < rest.size() && follows_chain(first, chain))
            refuse("a whole line that does not end in a line feed", "the file as it was written",
                   "it was edited");
        if (attempt.end && !rest.empty())
            refuse("text after the end of the attempt", "nothing");
        attempt.unfinished_bytes = rest.size();
    }

private:
    void check_chain(std::string_view text) {
        if (!follows_chain(text, attempt.chain))
            refuse("a line that does not follow from the lines before it", "the file as it was written",
                   "it was edited, here or by leaving out a line; no grade can be computed from it");
    }

    void read_header(std::string_view text) {
        const Document document = parse_document(text, place());
        const Object object = document.root();
        const std::string format = object.text("format", {1, 64});
        if (format != kAttemptFormat)
            refuse("the format " + in_quotes(format), in_quotes(kAttemptFormat));
        AttemptHeader& header = attempt.header;
        header.scenario = object.text("scenario", {1, kLongestScenario});
        header.physics_version = object.integer("physics_version", 0, INT32_MAX);
        header.bundle_hash = hash_at(object, "bundle");
        header.seed = hash_at(object, "seed");
        object.text("chain");
        object.finish();
        attempt.chain = first_chain();
    }

    void check_physics() const {
        const std::int64_t version = attempt.header.physics_version;
        if (version == physics_version_)
            return;
        refuse("physics version " + std::to_string(version), "version " + std::to_string(physics_version_),
               "replay it with the program that recorded it");
    }

    void read_entry(const Object& object) {
        AttemptEntry entry;
        entry.n = object.integer("n", 1, INT32_MAX);
        const auto expected = static_cast<std::int64_t>(attempt.entries.size()) + 1;
        if (entry.n != expected)
            throw object.error("n", std::to_string(expected));
        entry.tick = read_tick(object);
        entry.by = object.text("by", {1, kLongestActor});
        entry.action_json = object.raw("action");
        if (entry.action_json.front() != '{')
            throw object.error("action", "an object");
        attempt.entries.push_back(std::move(entry));
    }

    void read_mark(const Object& object) {
        AttemptMark mark;
        mark.world_hash = hash_at(object, "mark");
        mark.tick = read_tick(object);
        mark.entries_before = static_cast<std::int64_t>(attempt.entries.size());
        attempt.marks.push_back(mark);
    }

    void read_end(const Object& object) {
        AttemptEnd end{object.text("end", {1, kLongestReason}), object.integer("count", 0, INT32_MAX)};
        const auto entries = static_cast<std::int64_t>(attempt.entries.size());
        if (end.count != entries)
            throw object.error("count", std::to_string(entries) + ", the entries above");
        attempt.end = std::move(end);
    }

    std::int64_t read_tick(const Object& object) {
        return attempt.last_tick = object.integer("tick", attempt.last_tick, kLastTick);
    }

    static std::uint64_t hash_at(const Object& object, std::string_view key) {
        std::uint64_t hash = 0;
        if (!parse_hex(object.text(key, {1, 64}), hash))
            throw object.error(key, "16 digits 0-9 a-f");
        return hash;
    }

    [[nodiscard]] std::string place() const { return file_ + ": line " + std::to_string(line_); }
    [[noreturn]] void refuse(std::string found, std::string allowed, std::string advice = "") const {
        throw Error({file_, "line " + std::to_string(line_), std::move(found), std::move(allowed),
                     std::move(advice)});
    }

    const std::string& file_;
    std::int64_t physics_version_;
    std::size_t line_ = 0;
};

} // namespace

Attempt parse_attempt(std::string_view text, const std::string& file, std::int64_t physics_version) {
    Parser parser(file, physics_version);
    std::size_t start = 0;
    for (std::size_t feed; (feed = text.find('\n', start)) != std::string_view::npos; start = feed + 1)
        parser.line(text.substr(start, feed - start));
    if (start == 0)
        throw Error({file, "", text.empty() ? "an empty file" : "a file that was cut in its first line",
                     "an attempt", "nothing of the attempt is left"});
    parser.attempt.whole_bytes = start;
    parser.unfinished(text.substr(start));
    return std::move(parser.attempt);
}

Attempt read_attempt(const std::string& path, std::int64_t physics_version) {
    return parse_attempt(read_file(path, kLargestAttempt), path, physics_version);
}

void check_bundle(const Attempt& attempt, const std::string& file, std::uint64_t bundle_hash) {
    if (attempt.header.bundle_hash == bundle_hash)
        return;
    throw Error(
        {file, "line 1", "the bundle " + hex(attempt.header.bundle_hash), hex(bundle_hash),
         "the scenario " + in_quotes(attempt.header.scenario) +
             ", its profile or a catalogue has changed since; replay it with the files it was made with"});
}

} // namespace lightoff::files
