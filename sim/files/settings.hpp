// SPDX-License-Identifier: MIT
#pragma once
#include <string>
#include <utility>
#include <vector>

namespace lightoff::files {

/// What a user has set for the window.
struct Settings {
    std::string theme = "paper"; ///< paper, basement or projector
    double text_percent = 100.0; ///< 80 to 200
    bool si_units = false;       ///< else trade units
    bool reduced_motion = false;
    bool sound = true;
    bool cautions_read = false;                            ///< the tag has been lifted off the gas cock
    std::vector<std::pair<std::string, std::string>> keys; ///< command and key, by names, where not as usual
    friend bool operator==(const Settings&, const Settings&) = default;
};

/// Those in the file; the usual ones if there is no file. Throws Error for one that can't be used.
Settings read_settings(const std::string& path);
/// Throws Error.
void write_settings(const std::string& path, const Settings& settings);

} // namespace lightoff::files
