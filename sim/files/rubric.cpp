// SPDX-License-Identifier: MIT
#include "files/rubric.hpp"

#include "files/data_folder.hpp"
#include "units/fields.hpp"

namespace lightoff::files {

Document read_rubric_file() {
    return read_document(find_data_file("rubric", kSchoolFolder));
}

lesson::Rubric read_rubric(const Document& document) {
    const Object root = document.root();
    root.choice<bool>("format", {{"lightoff-rubric-1", true}});
    lesson::Rubric rubric;
    units::for_each_field(rubric, [&](const std::string& name, std::string_view unit, double& weight) {
        weight = root.number(name, {0.0, 100.0, unit});
    });
    root.finish();
    return rubric;
}

} // namespace lightoff::files
