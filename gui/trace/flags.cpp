// SPDX-License-Identifier: MIT
#include "gui/trace/flags.hpp"

namespace lightoff::trace {
namespace {

struct Span {
    float from, to;
};

Span name_span(const Flag& flag, bool leftwards) {
    return leftwards ? Span{flag.x - flag.width, flag.x} : Span{flag.x, flag.x + flag.width};
}

bool overlap(Span a, Span b) {
    return a.from < b.to && b.from < a.to;
}

/// Whether a name at that place would meet a flag already placed.
bool meets(const Flag& flag, bool leftwards, int row, const Flag& other, const FlagPlace& place) {
    const Span name = name_span(flag, leftwards);
    const bool under_its_stem = other.x > name.from && other.x < name.to;
    if (!place.row) {
        return false; // a flag without a name stays below all rows
    }
    const Span other_name = name_span(other, place.leftwards);
    const bool over_its_name = flag.x > other_name.from && flag.x < other_name.to;
    return (under_its_stem && row <= *place.row) || (over_its_name && row >= *place.row) ||
           (row == *place.row && overlap(name, other_name));
}

bool has_room(std::span<const Flag> flags, const std::vector<FlagPlace>& places, std::size_t n,
              bool leftwards, int row, float left_end, float right_end) {
    const Span name = name_span(flags[n], leftwards);
    const bool over_earlier = leftwards && n > 0 && flags[n - 1].x > name.from;
    bool room = !over_earlier && name.from >= left_end && name.to <= right_end;
    for (std::size_t k = n + 1; room && k < flags.size(); ++k) {
        room = !meets(flags[n], leftwards, row, flags[k], places[k]);
    }
    return room;
}

} // namespace

std::vector<FlagPlace> place_flags(std::span<const Flag> flags, float left_end, float right_end, int rows) {
    std::vector<FlagPlace> places(flags.size());
    for (std::size_t n = flags.size(); n-- > 0;) { // from the right: earlier names go above later stems
        for (const bool leftwards : {false, true}) {
            for (int row = 0; row < rows && !places[n].row; ++row) {
                if (has_room(flags, places, n, leftwards, row, left_end, right_end)) {
                    places[n] = {row, leftwards};
                }
            }
        }
    }
    return places;
}

} // namespace lightoff::trace
