// SPDX-License-Identifier: MIT
#include "files/attempt_line.hpp"
#include "files/attempt.hpp"

namespace lightoff::files {
namespace {

constexpr std::string_view kSeal = R"(,"chain":")";
constexpr std::string_view kClose = "\"}";
constexpr std::size_t kHashDigits = 2 * std::tuple_size_v<Digest>;
constexpr std::size_t kTail = kSeal.size() + kHashDigits + kClose.size();

std::string sealed(std::string_view content, const Digest& chain) {
    std::string line{content};
    line += kSeal;
    line += hex(chain);
    line += kClose;
    return line;
}

Digest next(const Digest& chain, std::string_view content) {
    return digest_of(hex(chain), content);
}

} // namespace

Digest first_chain() {
    return digest_of(kAttemptFormat);
}

std::string sealed_line(std::string_view content, Digest& chain) {
    chain = next(chain, content);
    return sealed(content, chain);
}

std::string_view up_to_seal(std::string_view text) {
    const std::size_t seal = text.find(kSeal);
    return seal == std::string_view::npos ? text : text.substr(0, seal + kTail);
}

bool follows_chain(std::string_view line, Digest& chain) {
    if (line.size() <= kTail)
        return false;
    const std::string_view content = line.substr(0, line.size() - kTail);
    const Digest expected = next(chain, content);
    if (sealed(content, expected) != line)
        return false;
    chain = expected;
    return true;
}

} // namespace lightoff::files
