// SPDX-License-Identifier: MIT
#include "gui/paper/faults_list.hpp"

#include "gui/paper/rulings.hpp"

namespace lightoff::paper {

std::vector<sheet::Entry> faults_list(const view::Known& known, int chosen) {
    std::vector<sheet::Entry> entries;
    const auto& faults = known.site->catalogue.faults;
    for (int group = 0; group < faults::kGroups; ++group)
        for (std::size_t i = 0; i < faults.size(); ++i)
            if (static_cast<int>(faults[i].group) == group)
                entries.push_back({faults[i].title,
                                   faults[i].id,
                                   {},
                                   for_people(faults::name_of(faults[i].group)),
                                   static_cast<int>(i) == chosen,
                                   static_cast<int>(i)});
    return entries;
}

} // namespace lightoff::paper
