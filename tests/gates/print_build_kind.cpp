// SPDX-License-Identifier: MIT
#include <cstdio>

/// Prints what differs between builds, to show that the determinism gate sees a difference.
int main() {
#ifdef NDEBUG
    std::puts("optimised");
#else
    std::puts("not optimised");
#endif
}
