// SPDX-License-Identifier: MIT
#include "gui/pictures/compare.hpp"

#include <cstdio>
#include <string>
#include <vector>

/// lightoff_pictures keep SHOT KEPT          halves a picture of the screen and keeps it
/// lightoff_pictures check SHOT KEPT FOUND   holds it against the kept one; writes what was found if they
/// differ
int main(int argc, char** argv) {
    using namespace lightoff;
    const std::vector<std::string> words(argv + 1, argv + argc);
    if (words.size() < 3 || (words[0] == "check" && words.size() < 4))
        return 2;
    const auto shot = platform::read_picture(words[1]);
    if (!shot) {
        std::fprintf(stderr, "%s can't be read\n", words[1].c_str());
        return 2;
    }
    const platform::Picture now = test::halved(*shot);
    if (words[0] == "keep")
        return platform::write_picture(words[2], now) ? 0 : 2;
    const auto kept = platform::read_picture(words[2]);
    const test::Difference apart = kept ? test::difference(*kept, now) : test::Difference{false, 0, 0, 0};
    if (test::alike(apart)) {
        std::printf("%s: worst tile %.3f of 255\n", words[2].c_str(), apart.worst_tile);
        return 0;
    }
    platform::write_picture(words[3], now);
    if (!apart.same_size)
        std::fprintf(stderr, "%s is missing or of another size; found %s\n", words[2].c_str(),
                     words[3].c_str());
    else
        std::fprintf(stderr, "%s differs by %.2f of 255 round pixel %u,%u (allowed %.2f); found %s\n",
                     words[2].c_str(), apart.worst_tile, apart.tile_x + test::kTile / 2,
                     apart.tile_y + test::kTile / 2, test::kMostApart, words[3].c_str());
    return 1;
}
