// SPDX-License-Identifier: MIT
#include "files/own_folder.hpp"

#include "files/error.hpp"

#include <cstdlib>
#include <filesystem>
#include <system_error>

namespace lightoff::files {
namespace {

namespace fs = std::filesystem;

std::string value_of(const char* name) {
    const char* value = std::getenv(name);
    return value == nullptr ? std::string() : value;
}

std::string base(const char* variable, const char* in_home) {
    std::string named = value_of(variable);
    if (!named.empty() && fs::path(named).is_absolute())
        return named;
    const std::string home = value_of("HOME");
    return home.empty() ? std::string() : (fs::path(home) / in_home).string();
}

std::string under(const std::string& folder, const char* rest) {
    return folder.empty() ? folder : (fs::path(folder) / "lightoff" / rest).string();
}

} // namespace

std::string attempts_folder() {
    const std::string named = value_of("LIGHTOFF_ATTEMPTS");
    return named.empty() ? under(base("XDG_DATA_HOME", ".local/share"), "attempts") : named;
}

std::string settings_file() {
    return under(base("XDG_CONFIG_HOME", ".config"), "settings.json");
}

std::string typed_path(const std::string& path) {
    const std::string home = value_of("HOME");
    return path.rfind("~/", 0) == 0 && !home.empty() ? home + path.substr(1) : path;
}

void make_folder(const std::string& folder) {
    std::error_code error;
    fs::create_directories(folder, error);
    if (!error && fs::is_directory(folder, error))
        return;
    throw Error({folder, "", "no folder, and none can be made: " + error.message(), "a folder to write to",
                 "check your right to write there"});
}

} // namespace lightoff::files
