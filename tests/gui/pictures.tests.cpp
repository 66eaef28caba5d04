// SPDX-License-Identifier: MIT
#include "gui/pictures/compare.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <string>

using namespace lightoff;
using platform::Picture;

namespace {

Picture kept(const std::string& name) {
    const auto picture =
        platform::read_picture(std::string(LIGHTOFF_SOURCE_DIR) + "/tests/gui/pictures/" + name);
    REQUIRE(picture);
    return *picture;
}

std::size_t place(const Picture& picture, unsigned x, unsigned y) {
    return 3 * (static_cast<std::size_t>(y) * picture.width + x);
}

struct Box {
    unsigned x, y, width, height;
};

/// What stands in the box, half a pixel (one of the screen) further to the right.
Picture moved(const Picture& picture, Box box) {
    Picture other = picture;
    for (unsigned y = box.y; y < box.y + box.height; ++y)
        for (unsigned x = box.x + 1; x < box.x + box.width; ++x)
            for (std::size_t c = 0; c < 3; ++c)
                other.rgb[place(picture, x, y) + c] = static_cast<std::uint8_t>(
                    (picture.rgb[place(picture, x, y) + c] + picture.rgb[place(picture, x - 1, y) + c] + 1) /
                    2);
    return other;
}

/// The box painted over in the colour of its corner: something is not there.
Picture without(const Picture& picture, Box box) {
    Picture other = picture;
    for (unsigned y = box.y; y < box.y + box.height; ++y)
        for (unsigned x = box.x; x < box.x + box.width; ++x)
            std::copy_n(picture.rgb.begin() + static_cast<std::ptrdiff_t>(place(picture, box.x, box.y)), 3,
                        other.rgb.begin() + static_cast<std::ptrdiff_t>(place(picture, x, y)));
    return other;
}

/// Every other pixel a level lighter, the rest a level darker.
Picture rounded_otherwise(Picture picture) {
    for (std::size_t i = 0; i < picture.rgb.size(); ++i)
        picture.rgb[i] = static_cast<std::uint8_t>(i / 3 % 2 == 0 ? std::min(255, picture.rgb[i] + 1)
                                                                  : std::max(0, picture.rgb[i] - 1));
    return picture;
}

} // namespace

TEST_CASE("a word that moves by one pixel of the screen, or a part that is missing, is seen; rounding is not",
          "[pictures]") {
    struct Case {
        const char* name;
        Box label, part; // "Gas valve"; the pressure switch, the flames
    };
    for (const Case& one : {Case{"furnace-paper.png", {124, 145, 36, 11}, {188, 112, 20, 18}},
                            Case{"fire-basement.png", {124, 213, 36, 11}, {221, 188, 42, 36}}}) {
        INFO(one.name);
        const Picture picture = kept(one.name);
        const test::Difference shifted = test::difference(picture, moved(picture, one.label));
        const test::Difference missing = test::difference(picture, without(picture, one.part));
        INFO("moved " << shifted.worst_tile << ", missing " << missing.worst_tile);
        CHECK_FALSE(test::alike(shifted));
        CHECK_FALSE(test::alike(missing));
        CHECK(test::alike(test::difference(picture, picture)));
        CHECK(test::alike(test::difference(picture, rounded_otherwise(picture))));
    }
}

TEST_CASE("pictures are halved by means of four, and pictures of different sizes are never alike",
          "[pictures]") {
    const Picture small{2, 2, {0, 0, 0, 100, 0, 0, 0, 200, 0, 100, 200, 255}};
    const Picture half = test::halved(small);
    REQUIRE(half.rgb.size() == 3);
    CHECK(half.rgb == std::vector<std::uint8_t>{50, 100, 64});
    CHECK_FALSE(test::alike(test::difference(small, half)));
}
