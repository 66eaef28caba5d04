// SPDX-License-Identifier: MIT
#pragma once

/// Elementary functions whose bits are the same on every machine. The C library's differ between
/// versions and processors, so an attempt recorded on one machine would not replay on another.
/// Built from + - * / only. A bound in ulp (units in the last place of the result) is the largest error
/// that tests/units/pinned_math.tests.cpp allows; a NaN argument gives NaN.
namespace lightoff::units {

/// e^x within 0.52 ulp (0.76 where the result is subnormal); +infinity above 709.79, 0 below -745.14.
double exp(double x);
/// Natural logarithm within 0.53 ulp; -infinity at 0, NaN below.
double log(double x);
/// base^exponent within 0.53 ulp (0.76 where the result is subnormal) for base >= 0; NaN for a negative base.
/// Costs about five times an exp: where the exponent is a small whole number, multiply.
double pow(double base, double exponent);
/// Within 0.82 ulp for |radians| <= 1e6; NaN beyond, where an angle has lost its meaning.
double sin(double radians);
/// Within 0.82 ulp for |radians| <= 1e6; NaN beyond.
double cos(double radians);
/// Angle of the point (x, y) from the x axis, radians in [-pi, pi], within 1.5 ulp; signs of zeros as in ISO
/// C.
double atan2(double y, double x);
/// Within 3 ulp.
double tanh(double x);
/// Real cube root within 0.68 ulp.
double cbrt(double x);

} // namespace lightoff::units
