// SPDX-License-Identifier: MIT
#include "gui/pictures/compare.hpp"

#include <algorithm>
#include <cstdlib>

namespace lightoff::test {
namespace {

std::size_t place(const platform::Picture& picture, unsigned x, unsigned y) {
    return 3 * (static_cast<std::size_t>(y) * picture.width + x);
}

double mean_in_tile(const platform::Picture& one, const platform::Picture& other, unsigned x0, unsigned y0) {
    long sum = 0;
    long count = 0;
    for (unsigned y = y0; y < std::min(y0 + kTile, one.height); ++y)
        for (unsigned x = x0; x < std::min(x0 + kTile, one.width); ++x)
            for (std::size_t channel = 0; channel < 3; ++channel, ++count)
                sum += std::abs(one.rgb[place(one, x, y) + channel] - other.rgb[place(one, x, y) + channel]);
    return static_cast<double>(sum) / static_cast<double>(count);
}

} // namespace

platform::Picture halved(const platform::Picture& picture) {
    platform::Picture half{picture.width / 2, picture.height / 2, {}};
    for (unsigned y = 0; y < half.height; ++y)
        for (unsigned x = 0; x < half.width; ++x)
            for (std::size_t channel = 0; channel < 3; ++channel) {
                int sum = 2; // to round
                for (const unsigned dy : {0U, 1U})
                    for (const unsigned dx : {0U, 1U})
                        sum += picture.rgb[place(picture, 2 * x + dx, 2 * y + dy) + channel];
                half.rgb.push_back(static_cast<std::uint8_t>(sum / 4));
            }
    return half;
}

Difference difference(const platform::Picture& one, const platform::Picture& other) {
    Difference found;
    found.same_size = one.width == other.width && one.height == other.height;
    if (!found.same_size)
        return found;
    // Tiles lie over each other by half, or a word on a seam would count half.
    for (unsigned y = 0; y < one.height; y += kTile / 2)
        for (unsigned x = 0; x < one.width; x += kTile / 2)
            if (const double mean = mean_in_tile(one, other, x, y); mean > found.worst_tile)
                found = {true, mean, x, y};
    return found;
}

bool alike(const Difference& difference) {
    return difference.same_size && difference.worst_tile <= kMostApart;
}

} // namespace lightoff::test
