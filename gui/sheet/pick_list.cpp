// SPDX-License-Identifier: MIT
#include "gui/sheet/pick_list.hpp"

#include <algorithm>
#include <cctype>

namespace lightoff::sheet {
namespace {

std::string lower(std::string_view text) {
    std::string result(text);
    for (char& c : result) {
        c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c == '_' ? ' ' : c;
    }
    return result;
}

} // namespace

bool matches(const Entry& entry, std::string_view wanted) {
    const std::string all = lower(entry.words + " " + entry.also + " " + entry.group);
    const std::string words = lower(wanted);
    for (std::size_t at = 0; at < words.size();) {
        const std::size_t start = words.find_first_not_of(' ', at);
        if (start == std::string::npos) {
            break;
        }
        at = std::min(words.find(' ', start), words.size());
        if (all.find(words.substr(start, at - start)) == std::string::npos) {
            return false;
        }
    }
    return true;
}

std::optional<std::size_t> pick_list(Column& column, std::string_view id, const std::vector<Entry>& entries,
                                     std::string& search) {
    const bool is_long = entries.size() > kSeenAtAGlance;
    if (is_long) {
        column.text_field("Search by typing##" + std::string(id), search);
    }
    std::optional<std::size_t> picked;
    std::string_view group;
    bool any = false;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        const Entry& entry = entries[i];
        if (is_long && !matches(entry, search)) {
            continue;
        }
        any = true;
        if (!entry.group.empty() && entry.group != group) {
            group = entry.group;
            column.gap(6);
            column.note(group);
        }
        if (column.row(entry.words + "##" + std::string(id) + std::to_string(i), entry.note, entry.chosen)) {
            picked = i;
        }
    }
    if (!any) {
        column.note(entries.empty() ? "Nothing to choose from." : "Nothing goes by these words.");
    }
    if (picked) {
        search.clear();
    }
    return picked;
}

} // namespace lightoff::sheet
