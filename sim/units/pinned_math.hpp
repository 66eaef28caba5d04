// SPDX-License-Identifier: MIT
#pragma once

/// Elementary functions whose bits are the same on every machine. The C library's differ between
/// versions and processors, so an attempt recorded on one machine would not replay on another.
/// Built from + - * / and sqrt only; errors are given in units in the last place, as tested.
namespace lightoff::units {

double exp(double x);                    ///< e^x, 1 ulp; 0 below -745, +infinity above 709.78
double log(double x);                    ///< natural logarithm, 1 ulp; x > 0, else NaN (-infinity at 0)
double pow(double base, double exponent); ///< base > 0 (or 0 with exponent > 0), 4 ulp over the ranges used
double sin(double radians);              ///< 2 ulp for |x| < 1e5
double cos(double radians);              ///< 2 ulp for |x| < 1e5
double atan2(double y, double x);        ///< angle in radians, 2 ulp
double tanh(double x);                   ///< 3 ulp
double cbrt(double x);                   ///< real cube root, 2 ulp

} // namespace lightoff::units
