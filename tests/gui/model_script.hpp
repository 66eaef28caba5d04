// SPDX-License-Identifier: MIT
#pragma once
#include "files/disk.hpp"

#include <sstream>
#include <string>
#include <vector>

namespace lightoff::test {

/// The lines of a model script, without comments: to be typed one after another.
inline std::vector<std::string> script(const std::string& name) {
    std::istringstream in(
        files::read_file(std::string(LIGHTOFF_SOURCE_DIR) + "/scenarios/scripts/" + name + ".txt"));
    std::vector<std::string> lines;
    for (std::string line; std::getline(in, line);) {
        line = line.substr(0, line.find('#'));
        line.erase(line.find_last_not_of(' ') + 1);
        if (!line.empty())
            lines.push_back(line);
    }
    return lines;
}

} // namespace lightoff::test
