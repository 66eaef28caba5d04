// SPDX-License-Identifier: MIT
#include <cmath>

double bad_fma(double a, double b, double c) {
    return std::fma(a, b, c);
}
