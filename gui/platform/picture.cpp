// SPDX-License-Identifier: MIT
#include "gui/platform/picture.hpp"

#include <SFML/Graphics/Image.hpp>

namespace lightoff::platform {

std::optional<Picture> read_picture(const std::string& path) {
    sf::Image image;
    if (!image.loadFromFile(path))
        return std::nullopt;
    Picture picture{image.getSize().x, image.getSize().y, {}};
    for (unsigned y = 0; y < picture.height; ++y)
        for (unsigned x = 0; x < picture.width; ++x) {
            const sf::Color pixel = image.getPixel(x, y);
            picture.rgb.insert(picture.rgb.end(), {pixel.r, pixel.g, pixel.b});
        }
    return picture;
}

bool write_picture(const std::string& path, const Picture& picture) {
    sf::Image image;
    image.create(picture.width, picture.height);
    for (unsigned y = 0; y < picture.height; ++y)
        for (unsigned x = 0; x < picture.width; ++x) {
            const std::size_t at = 3 * (static_cast<std::size_t>(y) * picture.width + x);
            image.setPixel(x, y, {picture.rgb[at], picture.rgb[at + 1], picture.rgb[at + 2]});
        }
    return image.saveToFile(path);
}

} // namespace lightoff::platform
