// SPDX-License-Identifier: MIT
#pragma once
#include <string>
#include <string_view>
#include <vector>

/// Where the scenarios and furnaces are that come with the program. The only place that knows.
namespace lightoff::files {

/// The folder that holds calls/ and equipment/: the environment's LIGHTOFF_DATA if it is set, else the one
/// that the program was built with.
std::string data_folder();

/// Path of a file that people name. "call-for-heat" is looked up in `subfolder` of the data folder
/// (scenarios/calls/call-for-heat.json); whatever has a '/' in it or ends in ".json" is a path as it
/// stands. Throws Error that names the nearest for a name that isn't there.
std::string find_data_file(const std::string& name_or_path, std::string_view subfolder);

/// Names in `subfolder` of the data folder, sorted; empty if there is no such folder.
std::vector<std::string> data_names(std::string_view subfolder);

inline constexpr std::string_view kCallsFolder = "calls";
inline constexpr std::string_view kEquipmentFolder = "equipment";
inline constexpr std::string_view kFaultsFolder = "faults";
inline constexpr std::string_view kSchoolFolder = "school";

/// "call-for-heat" of "scenarios/calls/call-for-heat.json".
std::string data_name_of(const std::string& path);

} // namespace lightoff::files
