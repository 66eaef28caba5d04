// SPDX-License-Identifier: MIT
#pragma once
#include "furnace/model.hpp"
#include "lesson/rubric.hpp"
#include "lesson/scenario.hpp"

#include <string>

namespace lightoff::files {

/// A scenario with the furnace that it is about: all that a World is made of.
struct LoadedBundle {
    std::string name; ///< of the scenario, as an attempt calls it
    std::string scenario_file;
    std::string equipment_file;
    lesson::Scenario scenario;
    lesson::Rubric rubric; ///< the school's, with what the scenario changes of it
    bench::Site site;      ///< its model has the bundle_hash set
};

/// Reads a scenario (a path, or the name of one in the data folder's calls/), the equipment that it names (in
/// equipment/) and judges one by the other. Throws Error.
LoadedBundle load_bundle(const std::string& scenario);

/// The furnace of an equipment file (path or name in equipment/); its bundle_hash is 0. Throws Error.
furnace::Model load_equipment(const std::string& equipment);

} // namespace lightoff::files
