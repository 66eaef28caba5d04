// SPDX-License-Identifier: MIT
#include "gui/diagram/names.hpp"

#include <algorithm>

namespace lightoff::diagram {
std::string_view owner_of(std::string_view name) {
    return name.substr(0, name.find('.'));
}

std::string_view rest_of(std::string_view name) {
    const std::size_t dot = name.find('.');
    return dot == std::string_view::npos ? name : name.substr(dot + 1);
}

std::string spaced(std::string_view name) {
    std::string words(name);
    std::replace(words.begin(), words.end(), '_', ' ');
    return words;
}

} // namespace lightoff::diagram
