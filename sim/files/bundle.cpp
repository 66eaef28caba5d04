// SPDX-License-Identifier: MIT
#include "files/bundle.hpp"
#include "files/hash.hpp"

namespace lightoff::files {

std::uint64_t bundle_hash(const Bundle& bundle) {
    std::string all;
    const auto add = [&](std::string_view name, const std::string& text) {
        all += name;
        all += ' ' + std::to_string(text.size()) + '\n' + text + '\n';
    };
    add("scenario", bundle.scenario);
    add("profile", bundle.profile);
    add("catalogue", bundle.catalogue);
    add("lamp table", bundle.lamp_table);
    add("school", bundle.school);
    const Digest digest = digest_of(all);
    std::uint64_t hash = 0;
    for (std::size_t i = 0; i < 8; ++i)
        hash = (hash << 8U) | digest[i];
    return hash;
}

} // namespace lightoff::files
