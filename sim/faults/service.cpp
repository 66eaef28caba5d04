// SPDX-License-Identifier: MIT
#include "faults/service.hpp"

#include "furnace/condition_paths.hpp"

#include <algorithm>
#include <array>

namespace lightoff::faults {
namespace {

int band_of(const Sight& sight, double value) {
    const std::size_t last = sight.bands.size() - 1;
    std::size_t band = 0;
    while (band < last && value >= sight.bands[band].below)
        ++band;
    return static_cast<int>(band);
}

} // namespace

std::string_view name_of(ServiceKind kind) {
    constexpr std::array<std::string_view, kServiceKinds> kNames{"take-off", "put-back", "clean",  "tighten",
                                                                 "adjust",   "reset",    "replace"};
    return kNames[static_cast<std::size_t>(kind)];
}

std::string_view name_of(Wear wear) {
    constexpr std::array<std::string_view, kWears> kNames{"dirt",  "soot",      "rust", "water",
                                                          "burnt", "corrosion", "coat"};
    return kNames[static_cast<std::size_t>(wear)];
}

int step_of(const Sight& sight, const furnace::Condition& condition) {
    if (sight.steps.empty())
        return 0;
    const double value = furnace::condition_value(condition, sight.field);
    if (value >= sight.until)
        return 0;
    const bool falling = sight.steps.front() > sight.steps.back();
    return static_cast<int>(std::count_if(sight.steps.begin(), sight.steps.end(), [&](double step) {
        return falling ? value < step : value >= step;
    }));
}

std::vector<int> describe(const Look& look, const furnace::Condition& condition) {
    std::vector<int> bands;
    for (const Sight& sight : look.sights)
        bands.push_back(band_of(sight, furnace::condition_value(condition, sight.field)));
    return bands;
}

void turn(const Service& service, double turns, furnace::Condition& condition) {
    if (service.per_turn == 0.0)
        return;
    const double now = furnace::condition_value(condition, service.adjusts);
    furnace::set_condition_field(condition, service.adjusts, now + turns * service.per_turn);
}

} // namespace lightoff::faults
