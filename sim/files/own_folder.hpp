// SPDX-License-Identifier: MIT
#pragma once
#include <string>

/// Where a user's own files lie, by the XDG base directory specification (freedesktop.org): under
/// XDG_DATA_HOME and XDG_CONFIG_HOME, else in .local/share and .config of the home folder.
namespace lightoff::files {

/// Folder of attempts: LIGHTOFF_ATTEMPTS if it is set. Empty if there is no home.
std::string attempts_folder();
/// File of the settings. Empty if there is no home.
std::string settings_file();

/// A path as people type it: "~/" stands for their home folder.
std::string typed_path(const std::string& path);

/// Makes a folder with all above it. Throws Error that says why it can't be.
void make_folder(const std::string& folder);

} // namespace lightoff::files
