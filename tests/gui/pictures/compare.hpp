// SPDX-License-Identifier: MIT
#pragma once
#include "gui/platform/picture.hpp"

/// Pictures of screens held against those that were looked at and kept.
namespace lightoff::test {

/// Half as wide and high, each pixel the mean of four: small enough to be kept.
platform::Picture halved(const platform::Picture& picture);

struct Difference {
    bool same_size = true;
    double worst_tile = 0; ///< mean over a tile's pixels and channels of what they differ by, 0..255
    unsigned tile_x = 0, tile_y = 0; ///< upper left pixel of that tile
};
Difference difference(const platform::Picture& one, const platform::Picture& other);

/// Tiles are some two lines of text high and a word wide, so that what moves or goes away fills a good part
/// of one and can't hide in the mean over a page.
inline constexpr unsigned kTile = 16; ///< pixels of the halved picture

/// Another renderer, compiler or processor may round a blended pixel by one level up or down, at most: one
/// level everywhere is let pass. A word that stands one pixel of the screen elsewhere changes its tile by
/// more (pictures.tests.cpp).
inline constexpr double kMostApart = 1.0; // levels of 255

bool alike(const Difference& difference);

} // namespace lightoff::test
