// SPDX-License-Identifier: MIT
#include "gui/canvas/theme.hpp"

#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <string>
#include <vector>

using namespace lightoff::canvas;

namespace {

using Vec3 = std::array<double, 3>;
using Matrix = std::array<Vec3, 3>;

double to_linear(std::uint8_t channel) {
    const double s = channel / 255.0;
    return s <= 0.04045 ? s / 12.92 : std::pow((s + 0.055) / 1.055, 2.4);
}

Vec3 multiply(const Matrix& m, const Vec3& v) {
    Vec3 out{};
    for (std::size_t r = 0; r < 3; ++r) {
        out[r] = m[r][0] * v[0] + m[r][1] * v[1] + m[r][2] * v[2];
    }
    return out;
}

constexpr Matrix kNormal{{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}};
// Simulation of dichromacy on linear RGB, severity 1.0: Machado, Oliveira, Fernandes, IEEE TVCG 15(6), 2009,
// table 1 (from memory; the rows' sums are checked below).
constexpr Matrix kProtan{
    {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}}};
constexpr Matrix kDeutan{
    {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}};
constexpr Matrix kTritan{
    {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}}};

/// CIE 1976 L*a*b* under D65 of linear sRGB. Source: IEC 61966-2-1 (matrix), CIE 015 (L*a*b*).
Vec3 lab(const Vec3& linear) {
    constexpr Matrix kToXyz{{{0.4124, 0.3576, 0.1805}, {0.2126, 0.7152, 0.0722}, {0.0193, 0.1192, 0.9505}}};
    const Vec3 xyz = multiply(kToXyz, linear);
    const auto f = [](double t) {
        t = std::max(t, 0.0);
        return t > 216.0 / 24389 ? std::cbrt(t) : (24389.0 / 27 * t + 16) / 116;
    };
    const double x = f(xyz[0] / 0.9505);
    const double y = f(xyz[1]);
    const double z = f(xyz[2] / 1.089);
    return {116 * y - 16, 500 * (x - y), 200 * (y - z)};
}

double difference(Colour a, Colour b, const Matrix& eye) {
    const Vec3 one = lab(multiply(eye, {to_linear(a.r), to_linear(a.g), to_linear(a.b)}));
    const Vec3 two = lab(multiply(eye, {to_linear(b.r), to_linear(b.g), to_linear(b.b)}));
    return std::hypot(one[0] - two[0], one[1] - two[1], one[2] - two[2]);
}

} // namespace

TEST_CASE("contrast follows WCAG") {
    // WCAG 2.2: black on white is 21:1. #767676 on white is the well-known least grey that passes 4.5:1,
    // #777777 fails.
    CHECK(contrast(hex(0x000000), hex(0xFFFFFF)) == Approx(21));
    CHECK(contrast(hex(0x767676), hex(0xFFFFFF)) >= 4.5);
    CHECK(contrast(hex(0x777777), hex(0xFFFFFF)) < 4.5);
    CHECK(contrast(hex(0x123456), hex(0xABCDEF)) == contrast(hex(0xABCDEF), hex(0x123456)));
}

TEST_CASE("all words can be read: 4.5:1 at least (WCAG 2.2, 1.4.3 level AA)") {
    for (const ThemeId id : kThemes) {
        const Theme& t = theme(id);
        CAPTURE(t.name);
        for (const Colour beneath : {t.ground, t.panel}) {
            CHECK(contrast(t.ink, beneath) >= 4.5);
            CHECK(contrast(t.pencil, beneath) >= 4.5);
            CHECK(contrast(t.alarm, beneath) >= 4.5);
        }
    }
}

TEST_CASE("energy stands out from the ground: 3.1:1 at least (WCAG 2.2, 1.4.11 asks 3)") {
    for (const ThemeId id : kThemes) {
        const Theme& t = theme(id);
        for (std::size_t i = 0; i < kEnergyCount; ++i) {
            CAPTURE(t.name, name_of(static_cast<Energy>(i)));
            CHECK(contrast(t.energy[i], t.ground) >= 3.1);
        }
        CHECK(contrast(t.igniter, t.chamber) >= 3.1);
        CHECK(contrast(t.blue_flame, t.chamber) >= 3.1);
        CHECK(contrast(t.rule, t.ground) >= 3.0);
    }
}

TEST_CASE("the matrices of colour blindness keep white white") {
    for (const Matrix& m : {kProtan, kDeutan, kTritan}) {
        for (const Vec3& row : m) {
            CHECK(row[0] + row[1] + row[2] == Approx(1).margin(2e-6));
        }
    }
}

TEST_CASE("energies stay apart in every kind of colour vision") {
    // A difference of about 2.3 is just noticeable (Mahy et al. 1994, from memory); we ask several times
    // that, and the patterns differ too.
    for (const ThemeId id : kThemes) {
        const Theme& t = theme(id);
        for (const Matrix& eye : {kNormal, kProtan, kDeutan, kTritan}) {
            for (std::size_t i = 0; i < kEnergyCount; ++i) {
                for (std::size_t k = 0; k < i; ++k) {
                    CAPTURE(t.name, name_of(static_cast<Energy>(i)), name_of(static_cast<Energy>(k)));
                    CHECK(difference(t.energy[i], t.energy[k], eye) > 10);
                }
            }
        }
    }
}

TEST_CASE("colours mix and fade within bounds") {
    CHECK(mix(hex(0x000000), hex(0xFFFFFF), 0.5F) == hex(0x808080));
    CHECK(mix(hex(0x102030), hex(0xFFFFFF), -1) == hex(0x102030));
    CHECK(faded(hex(0x102030), 2).a == 255);
    CHECK(faded(hex(0x102030), 0).a == 0);
    CHECK(packed(hex(0x112233)) == IM_COL32(0x11, 0x22, 0x33, 0xFF));
}
