// SPDX-License-Identifier: MIT
#include "files/settings.hpp"

#include "files/disk.hpp"
#include "files/own_folder.hpp"
#include "files/reader.hpp"

#include <filesystem>
#include <nlohmann/json.hpp>
#include <system_error>

namespace lightoff::files {
namespace {

constexpr std::string_view kFormat = "lightoff-settings-1";
constexpr std::size_t kMostKeys = 100;

} // namespace

Settings read_settings(const std::string& path) {
    std::error_code none;
    if (path.empty() || !std::filesystem::exists(path, none))
        return {};
    const Document document = read_document(path);
    const Object root = document.root();
    root.choice<bool>("format", {{kFormat, true}});
    const Settings usual;
    Settings settings;
    settings.theme = root.choice_or<std::string>(
        "theme", {{"paper", "paper"}, {"basement", "basement"}, {"projector", "projector"}}, usual.theme);
    settings.text_percent = static_cast<double>(
        root.integer_or("text_percent", 80, 200, static_cast<std::int64_t>(usual.text_percent)));
    settings.si_units = root.flag_or("si_units", usual.si_units);
    settings.reduced_motion = root.flag_or("reduced_motion", usual.reduced_motion);
    settings.sound = root.flag_or("sound", usual.sound);
    settings.cautions_read = root.flag_or("cautions_read", usual.cautions_read);
    if (root.has("keys"))
        for (const Object& key : root.objects("keys", {1, kMostKeys}))
            settings.keys.emplace_back(key.text("does", {1, 40}), key.text("key", {1, 20}));
    root.finish();
    return settings;
}

void write_settings(const std::string& path, const Settings& settings) {
    make_folder(std::filesystem::path(path).parent_path().string());
    Json json{{"format", kFormat},
              {"theme", settings.theme},
              {"text_percent", static_cast<std::int64_t>(settings.text_percent)},
              {"si_units", settings.si_units},
              {"reduced_motion", settings.reduced_motion},
              {"sound", settings.sound},
              {"cautions_read", settings.cautions_read}};
    for (const auto& [command, key] : settings.keys)
        json["keys"].push_back({{"does", command}, {"key", key}});
    replace_file(path, json.dump(2) + "\n");
}

} // namespace lightoff::files
