// SPDX-License-Identifier: MIT
#include "files/hazard_table.hpp"

#include "files/data_folder.hpp"

#include <algorithm>

namespace lightoff::files {
namespace {

using bench::Gravity;
using bench::Hazard;

constexpr std::size_t kHazards = static_cast<std::size_t>(Hazard::count);

/// Place of a hazard in the table.
std::size_t place_of(const Object& o) {
    const std::string id = o.text("id", {1, 40});
    std::string known;
    for (std::size_t i = 0; i < kHazards; ++i) {
        const std::string_view name = bench::id_of(static_cast<Hazard>(i));
        if (name == id)
            return i;
        known += (known.empty() ? "" : ", ") + std::string(name);
    }
    throw o.error("id", known);
}

} // namespace

Document read_hazard_file() {
    return read_document(find_data_file("hazards", kSchoolFolder));
}

bench::HazardTable read_hazards(const Document& document) {
    const Object root = document.root();
    root.choice<bool>("format", {{"lightoff-hazards-1", true}});
    bench::HazardTable table;
    std::array<bool, kHazards> seen{};
    for (const Object& o : root.objects("hazards", {kHazards, kHazards})) {
        const std::size_t i = place_of(o);
        if (seen[i])
            throw o.error("id", "each hazard once");
        seen[i] = true;
        table[i].title = o.text("title", {1, 80});
        table[i].why = o.text("why", {1, 400});
        table[i].gravity = o.choice<Gravity>(
            "gravity",
            {{"slip", Gravity::slip}, {"serious", Gravity::serious}, {"stop-work", Gravity::stop_work}});
    }
    root.finish();
    return table;
}

} // namespace lightoff::files
