// SPDX-License-Identifier: MIT
#include "visit/until.hpp"

#include <algorithm>

namespace lightoff::visit {
namespace {

constexpr std::int32_t kWindowWakes = 20; ///< ticks until an instrument just put somewhere shows it

/// Every number that can stand still does.
bool is_settled(const bench::Percept& percept) {
    return std::all_of(percept.instruments.window.begin(), percept.instruments.window.end(),
                       [](const instruments::Display& display) {
                           return !display.has(instruments::kOn) ||
                                  display.ticks_settled >= instruments::kSettledTicks ||
                                  display.quantity == instruments::Quantity::dial ||
                                  display.quantity == instruments::Quantity::stopwatch;
                       });
}

} // namespace

bool is_quiet(const bench::Percept& percept) {
    return percept.heard.inducer_hz == 0 && percept.heard.blower_hz == 0 && percept.heard.roar == 0 &&
           !percept.heard.inducer_hum && !percept.heard.blower_hum;
}

bool has_come_about(const PlayLine& line, const Visit::Ahead& ahead) {
    if (line.until == Until::quiet)
        return is_quiet(ahead.percept);
    if (line.until == Until::settled)
        return ahead.ticks >= kWindowWakes && is_settled(ahead.percept);
    if (line.until == Until::reading)
        return ahead.new_readings > 0;
    for (std::size_t i = ahead.captions_before; i < ahead.captions.size(); ++i) {
        const bench::About about = ahead.captions[i].about;
        const bool fits = line.until == Until::anything
                              ? about != bench::About::click && about != bench::About::hands
                              : about == line.about;
        if (fits)
            return true;
    }
    return false;
}

} // namespace lightoff::visit
