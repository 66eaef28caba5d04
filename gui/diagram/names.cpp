// SPDX-License-Identifier: MIT
#include "gui/diagram/names.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace lightoff::diagram {
namespace {

// Common practice on wiring diagrams, no source.
constexpr std::array<std::pair<std::string_view, std::string_view>, 15> kLetters{{{"black", "BK"},
                                                                                  {"white", "W"},
                                                                                  {"red", "R"},
                                                                                  {"yellow", "Y"},
                                                                                  {"green", "G"},
                                                                                  {"blue", "BL"},
                                                                                  {"brown", "BR"},
                                                                                  {"orange", "O"},
                                                                                  {"grey", "GY"},
                                                                                  {"gray", "GY"},
                                                                                  {"violet", "V"},
                                                                                  {"purple", "PR"},
                                                                                  {"pink", "PK"},
                                                                                  {"bare", "bare"},
                                                                                  {"screw", ""}}};

} // namespace

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

std::string ferrule_letters(std::string_view colour) {
    for (const auto& [name, letters] : kLetters)
        if (name == colour)
            return std::string(letters);
    return std::string(colour);
}

} // namespace lightoff::diagram
