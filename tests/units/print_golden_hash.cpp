// SPDX-License-Identifier: MIT
#include "golden_hash.hpp"

#include <cinttypes>
#include <cstdio>

int main() {
    std::printf("%016" PRIx64 "\n", units_golden_hash());
}
