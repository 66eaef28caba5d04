// SPDX-License-Identifier: MIT
#include "lesson/rubric.hpp"

#include "units/fields.hpp"

namespace lightoff::lesson {

bool set_weight(Rubric& rubric, std::string_view name, double value) {
    bool found = false;
    units::for_each_field(rubric, [&](const std::string& path, std::string_view, double& weight) {
        if (path == name) {
            weight = value;
            found = true;
        }
    });
    return found;
}

} // namespace lightoff::lesson
