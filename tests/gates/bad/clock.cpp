// SPDX-License-Identifier: MIT
#include <chrono>

long long bad_clock() {
    return std::chrono::steady_clock::now().time_since_epoch().count();
}
