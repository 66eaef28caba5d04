// SPDX-License-Identifier: MIT
#include "files/data_folder.hpp"
#include "files/error.hpp"
#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <system_error>

namespace lightoff::files {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view kExtension = ".json";

bool ends_in_json(std::string_view name) {
    return name.size() >= kExtension.size() && name.substr(name.size() - kExtension.size()) == kExtension;
}

std::string join(std::string_view subfolder, std::string_view name) {
    return (fs::path(data_folder()) / subfolder / (std::string(name) + std::string(kExtension))).string();
}

} // namespace

std::string data_folder() {
    const char* named = std::getenv("LIGHTOFF_DATA");
    return named != nullptr && *named != '\0' ? named : LIGHTOFF_DATA_DIR;
}

std::string data_name_of(const std::string& path) {
    return fs::path(path).stem().string();
}

std::vector<std::string> data_names(std::string_view subfolder) {
    std::vector<std::string> names;
    std::error_code error;
    for (fs::directory_iterator at(fs::path(data_folder()) / subfolder, error), end; !error && at != end;
         at.increment(error))
        if (at->path().extension() == kExtension)
            names.push_back(at->path().stem().string());
    std::sort(names.begin(), names.end());
    return names;
}

std::string find_data_file(const std::string& name_or_path, std::string_view subfolder) {
    if (name_or_path.find('/') != std::string::npos || ends_in_json(name_or_path))
        return name_or_path;
    std::string path = join(subfolder, name_or_path);
    std::error_code ignored;
    if (!name_or_path.empty() && fs::exists(path, ignored))
        return path;
    const std::vector<std::string> names = data_names(subfolder);
    const std::string near = nearest(name_or_path, names);
    throw Error({(fs::path(data_folder()) / subfolder).string(), "",
                 "nothing named " + in_quotes(name_or_path),
                 names.empty() ? "the path of a file, with a '/' or \".json\" in it" : listed(names),
                 near.empty() ? "" : "did you mean " + near + "?"});
}

} // namespace lightoff::files
