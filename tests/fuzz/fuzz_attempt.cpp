// SPDX-License-Identifier: MIT
#include "files/attempt.hpp"
#include "files/attempt_line.hpp"
#include "files/error.hpp"
#include "files/utf8.hpp"
#include "fuzz/fuzz_one.hpp"
#include <stdexcept>

using namespace lightoff::files;

namespace {

constexpr std::int64_t kPhysics = 3;

void check_message(std::string_view message) {
    if (message.find('\n') != std::string_view::npos)
        throw std::logic_error("a message of several lines");
    if (find_bad_utf8(message) != std::string_view::npos)
        throw std::logic_error("a message that is not UTF-8");
}

void check(const Attempt& attempt, std::size_t size) {
    if (attempt.whole_bytes + attempt.unfinished_bytes != size)
        throw std::logic_error("bytes were lost");
    if (attempt.end && attempt.end->count != static_cast<std::int64_t>(attempt.entries.size()))
        throw std::logic_error("a wrong count of entries");
    std::int64_t tick = 0;
    for (const AttemptEntry& entry : attempt.entries) {
        if (entry.tick < tick)
            throw std::logic_error("a tick that falls");
        tick = entry.tick;
    }
}

void parse(std::string_view text) {
    try {
        check(parse_attempt(text, "input", kPhysics), text.size());
    } catch (const Error& error) {
        check_message(error.what());
    }
}

/// The same lines with the hashes that belong there: a fuzzer finds no hashes by itself.
std::string sealed(std::string_view input) {
    std::string text;
    Digest chain = first_chain();
    while (!input.empty()) {
        const std::size_t feed = input.find('\n');
        std::string_view line = input.substr(0, feed);
        const bool whole = feed != std::string_view::npos;
        input.remove_prefix(whole ? feed + 1 : input.size());
        const std::size_t seal = line.rfind(",\"chain\"");
        if (seal != std::string_view::npos)
            line = line.substr(0, seal);
        text += whole ? sealed_line(line, chain) + '\n' : std::string(line);
    }
    return text;
}

} // namespace

void fuzz_attempt(std::string_view input) {
    parse(input);
    parse(sealed(input));
}
