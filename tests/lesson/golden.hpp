// SPDX-License-Identifier: MIT
#pragma once
#include "furnace/furnace.hpp"
#include "lesson/replay.hpp"
#include "support/rig.hpp"

#include <cstdint>
#include <cstdio>
#include <string>

/// The golden run: one call whose last World's hash stands in tests/reference/golden_hash.txt. It rises with
/// furnace::kPhysicsVersion, in the same commit, and never otherwise.
namespace lightoff::test {

inline constexpr double kGolden_s = 900.0;

/// "physics 1, call-for-heat, seed 0, 900 s: 0123456789abcdef".
inline std::string golden_line() {
    Rig rig;
    rig.run(kGolden_s);
    char hash[17];
    std::snprintf(hash, sizeof hash, "%016llx",
                  static_cast<unsigned long long>(lesson::world_hash(rig.world)));
    return "physics " + std::to_string(furnace::kPhysicsVersion) + ", call-for-heat, seed 0, 900 s: " + hash;
}

} // namespace lightoff::test
