// SPDX-License-Identifier: MIT
#include "files/kept_attempts.hpp"

#include "files/attempt.hpp"
#include "files/disk.hpp"
#include "files/error.hpp"
#include "files/json_text.hpp"

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <system_error>

namespace lightoff::files {
namespace {

namespace fs = std::filesystem;

constexpr const char* kExtension = ".jsonl";
constexpr const char* kMarksFormat = "lightoff-marks-1";

std::string marks_path(const std::string& folder) {
    return (fs::path(folder) / "marks.json").string();
}

/// What can be computed again is not worth an error: a damaged file of marks counts as none.
Json read_marks(const std::string& folder) {
    std::error_code none;
    try {
        if (fs::exists(marks_path(folder), none)) {
            Json marks = parse_json(read_file(marks_path(folder)), marks_path(folder));
            if (marks.is_object() && marks.value("format", "") == kMarksFormat && marks["marks"].is_object())
                return marks;
        }
    } catch (const Error&) {
    } catch (const Json::exception&) {
    }
    return {{"format", kMarksFormat}, {"marks", Json::object()}};
}

KeptAttempt describe_attempt(const fs::path& path, std::int64_t physics_version, const Json& marks) {
    KeptAttempt kept;
    kept.path = path.string();
    kept.name = path.stem().string();
    try {
        const Attempt attempt = read_attempt(kept.path, physics_version);
        kept.call = attempt.header.scenario;
        kept.ended = attempt.end.has_value();
        kept.actions = attempt.entries.size();
    } catch (const Error& error) {
        kept.problem = error.what();
    }
    const auto mark = marks["marks"].find(kept.name);
    if (mark != marks["marks"].end() && mark->is_array() && mark->size() == 2 && (*mark)[0].is_number() &&
        (*mark)[1].is_number()) {
        kept.mark = (*mark)[0].get<double>();
        kept.safety = (*mark)[1].get<double>();
    }
    return kept;
}

} // namespace

std::vector<KeptAttempt> kept_attempts(const std::string& folder, std::int64_t physics_version) {
    std::vector<KeptAttempt> all;
    if (folder.empty())
        return all;
    const Json marks = read_marks(folder);
    std::error_code error;
    for (fs::directory_iterator at(folder, error), end; !error && at != end; at.increment(error))
        if (at->path().extension() == kExtension)
            all.push_back(describe_attempt(at->path(), physics_version, marks));
    std::sort(all.begin(), all.end(),
              [](const KeptAttempt& a, const KeptAttempt& b) { return a.name < b.name; });
    return all;
}

std::string new_attempt_path(const std::string& folder, const std::string& call) {
    std::error_code none;
    for (int number = 1;; ++number) {
        const fs::path path = fs::path(folder) / (call + "-" + std::to_string(number) + kExtension);
        if (!fs::exists(path, none))
            return path.string();
    }
}

void keep_mark(const std::string& folder, const std::string& name, double mark, double safety) {
    Json marks = read_marks(folder);
    marks["marks"][name] = {mark, safety};
    replace_file(marks_path(folder), marks.dump(1) + "\n");
}

} // namespace lightoff::files
