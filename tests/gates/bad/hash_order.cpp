// SPDX-License-Identifier: MIT
#include <unordered_map>

int bad_hash_order(std::unordered_map<int, int>& map) {
    return ++map[3];
}
