// SPDX-License-Identifier: MIT
#include "files/hash.hpp"
#include <sodium.h>
#include <stdexcept>

namespace lightoff::files {
namespace {

constexpr std::string_view kDigits = "0123456789abcdef";

void add(crypto_generichash_state& state, std::string_view text) {
    crypto_generichash_update(&state, reinterpret_cast<const unsigned char*>(text.data()), text.size());
}

} // namespace

Digest digest_of(std::string_view first, std::string_view second) {
    if (sodium_init() < 0)
        throw std::runtime_error("libsodium could not start");
    crypto_generichash_state state;
    Digest digest{};
    crypto_generichash_init(&state, nullptr, 0, digest.size());
    add(state, first);
    add(state, second);
    crypto_generichash_final(&state, digest.data(), digest.size());
    return digest;
}

std::string hex(const Digest& digest) {
    std::string text;
    for (const std::uint8_t byte : digest) {
        text += kDigits[byte >> 4U];
        text += kDigits[byte & 15U];
    }
    return text;
}

std::string hex(std::uint64_t number) {
    std::string text(16, '0');
    for (std::size_t i = text.size(); i-- > 0; number >>= 4U)
        text[i] = kDigits[number & 15U];
    return text;
}

bool parse_hex(std::string_view text, std::uint64_t& number) {
    if (text.size() != 16)
        return false;
    number = 0;
    for (const char c : text) {
        const std::size_t digit = kDigits.find(c);
        if (digit == std::string_view::npos)
            return false;
        number = (number << 4U) | digit;
    }
    return true;
}

} // namespace lightoff::files
