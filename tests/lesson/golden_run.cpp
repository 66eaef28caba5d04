// SPDX-License-Identifier: MIT
#include "golden.hpp"

#include <cstdio>

int main() {
    std::puts(lightoff::test::golden_line().c_str());
    return 0;
}
