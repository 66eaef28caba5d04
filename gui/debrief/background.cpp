// SPDX-License-Identifier: MIT
#include "gui/debrief/background.hpp"

#include "files/attempt_log.hpp"
#include "files/error.hpp"
#include "lesson/begin_of.hpp"

#include <array>
#include <exception>

namespace lightoff::debrief {
namespace {

struct BrokenOff {};

Twin twin_of(const std::string& name) {
    Twin twin;
    if (name.empty())
        return twin;
    try {
        const files::LoadedBundle bundle = files::load_bundle(name);
        twin = {name, bundle.scenario.title, bundle.scenario.complaint};
    } catch (const files::Error&) {
        // A call that can't be read is not offered.
    }
    return twin;
}

std::string words_of(lesson::DebriefStage stage, double share) {
    constexpr std::array<const char*, 3> kWords{"Building a furnace for every cause",
                                                "Running the attempt again",
                                                "Asking each furnace what it would have shown"};
    std::string words = kWords[static_cast<std::size_t>(stage)];
    if (stage != lesson::DebriefStage::judging) // nobody knows beforehand how many will be asked
        words += ", " + std::to_string(static_cast<int>(100.0 * share)) + " %";
    return words;
}

} // namespace

Background::Background(std::string attempt_path)
    : progress_("Reading the attempt"),
      thread_([this, path = std::move(attempt_path)](const std::stop_token& stop) { work(stop, path); }) {}

std::unique_ptr<Model> Background::take() {
    const std::lock_guard lock(mutex_);
    return std::move(model_);
}

std::string Background::failure() const {
    const std::lock_guard lock(mutex_);
    return failure_;
}

std::string Background::progress() const {
    const std::lock_guard lock(mutex_);
    return progress_;
}

void Background::tell(const std::stop_token& stop, lesson::DebriefStage stage, double share) {
    if (stop.stop_requested())
        throw BrokenOff{};
    const std::lock_guard lock(mutex_);
    progress_ = words_of(stage, share);
}

void Background::work(const std::stop_token& stop, const std::string& path) {
    std::string failure;
    try {
        const files::Attempt attempt = files::read_attempt(path, furnace::kPhysicsVersion);
        const auto bundle =
            std::make_shared<const files::LoadedBundle>(files::load_bundle(attempt.header.scenario));
        files::check_bundle(attempt, path, bundle->site.model.bundle_hash);
        const lesson::Log log = files::log_of(attempt, path, bundle->site);
        const auto progress = [&](lesson::DebriefStage stage, double share) { tell(stop, stage, share); };
        evidence::Bank bank(bundle->site, lesson::begin_of(bundle->site, bundle->scenario, log.seed),
                            lesson::real_faults(bundle->site, bundle->scenario),
                            [&](double share) { progress(lesson::DebriefStage::furnaces, share); });
        lesson::Debrief debrief =
            lesson::make_debrief(bundle->site, bundle->scenario, bundle->rubric, log, bank, progress);
        Twin twin = twin_of(debrief.twin);
        auto model = std::make_unique<Model>(make_model(bundle, std::move(debrief), std::move(twin)));
        const std::lock_guard lock(mutex_);
        model_ = std::move(model);
        return;
    } catch (const BrokenOff&) {
        failure = "broken off";
    } catch (const std::exception& error) {
        failure = error.what();
    }
    const std::lock_guard lock(mutex_);
    failure_ = failure;
}

} // namespace lightoff::debrief
