// SPDX-License-Identifier: MIT
#include <cmath>

double bad_exp(double x) {
    return std::exp(x);
}
