// SPDX-License-Identifier: MIT
#pragma once
#include "gui/instruments/bag.hpp"
#include "gui/sheet/column.hpp"

namespace lightoff::faces {

/// What a face is drawn with.
struct Face {
    sheet::Column& column;
    const view::Known& known;
    const instruments::Bag& bag; ///< settings alone
    BagView& view;
    view::Wanted& wanted;
};

/// Its name and, in a few words, what it is for.
struct Title {
    std::string_view name;
    std::string_view purpose;
};
Title title_of(instruments::Instrument instrument);

/// Everything below the name.
void draw_face(const Face& face, instruments::Instrument instrument);

} // namespace lightoff::faces
