// SPDX-License-Identifier: MIT
#include "files/kept_attempts.hpp"
#include "files/settings.hpp"

#include "files/attempt.hpp"
#include "files/disk.hpp"
#include "message_of.hpp"
#include "temporary_folder.hpp"

#include <catch2/catch.hpp>

using namespace lightoff;

TEST_CASE("settings come back as they were written", "[files]") {
    const TemporaryFolder folder;
    const std::string path = folder.file("deep/settings.json");
    CHECK(files::read_settings(path) == files::Settings{});
    files::Settings settings;
    settings.theme = "basement";
    settings.text_percent = 150;
    settings.si_units = true;
    settings.sound = false;
    settings.keys = {{"bag", "F10"}, {"look", "/"}};
    files::write_settings(path, settings);
    CHECK(files::read_settings(path) == settings);
}

TEST_CASE("settings that can't be used are refused with their place", "[files]") {
    const TemporaryFolder folder;
    const std::string path = folder.file("settings.json");
    files::replace_file(path, R"({"format": "lightoff-settings-1", "theme": "pink"})");
    CHECK(message_of([&] { files::read_settings(path); }).find("/theme") != std::string::npos);
    files::replace_file(path, R"({"format": "lightoff-settings-1", "text_percent": 1000})");
    CHECK(message_of([&] { files::read_settings(path); }).find("80 to 200") != std::string::npos);
}

TEST_CASE("attempts are listed with their state and mark; a damaged one with its problem", "[files]") {
    const TemporaryFolder folder;
    const std::string first = files::new_attempt_path(folder.file(""), "plugged-hose");
    {
        files::AttemptWriter writer(first, {"plugged-hose", 7, 1, 0});
        writer.entry(5, "student", R"({"verb":"look"})");
    }
    const std::string second = files::new_attempt_path(folder.file(""), "plugged-hose");
    CHECK(second != first);
    {
        files::AttemptWriter writer(second, {"plugged-hose", 7, 1, 0});
        writer.end("signed off");
    }
    files::replace_file(folder.file("zz.jsonl"), "not an attempt\n");
    files::keep_mark(folder.file(""), "plugged-hose-2", 94.8, 100);
    const auto kept = files::kept_attempts(folder.file(""), 7);
    REQUIRE(kept.size() == 3);
    CHECK(kept[0].name == "plugged-hose-1");
    CHECK_FALSE(kept[0].ended);
    CHECK(kept[0].actions == 1);
    CHECK(kept[1].ended);
    CHECK(kept[1].mark == Approx(94.8));
    CHECK_FALSE(kept[2].problem.empty());
    CHECK(files::kept_attempts(folder.file("none"), 7).empty());
}
