// SPDX-License-Identifier: MIT
#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace lightoff::platform {

/// A picture in memory, row by row from the top, red, green, blue of each pixel.
struct Picture {
    unsigned width = 0, height = 0;
    std::vector<std::uint8_t> rgb;
};

/// Of a PNG file; nothing if it can't be read.
std::optional<Picture> read_picture(const std::string& path);
/// As a PNG file; false if it can't be written.
bool write_picture(const std::string& path, const Picture& picture);

} // namespace lightoff::platform
