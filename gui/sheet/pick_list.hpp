// SPDX-License-Identifier: MIT
#pragma once
#include "gui/sheet/column.hpp"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace lightoff::sheet {

/// A list that is no longer needs no help in finding something.
inline constexpr std::size_t kSeenAtAGlance = 10;

/// Something to choose out of a list.
struct Entry {
    std::string words; ///< for people
    std::string also;  ///< found by it, too: the name as it would be typed
    std::string note;  ///< under the words
    std::string group; ///< heading that it stands under; empty: none
    bool chosen = false;
    int value = 0;
};

/// Whether every word of `wanted` occurs in one of the texts, capitals and small letters alike.
bool matches(const Entry& entry, std::string_view wanted);

/// A list laid open in the column. Long ones get a field to search by typing (`search`). Returns the index of
/// the entry chosen in this frame.
std::optional<std::size_t> pick_list(Column& column, std::string_view id, const std::vector<Entry>& entries,
                                     std::string& search);

} // namespace lightoff::sheet
