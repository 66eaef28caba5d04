// SPDX-License-Identifier: MIT
#pragma once
#include "files/attempt_log.hpp"
#include "files/bundle_loader.hpp"
#include "files/temporary_folder.hpp"
#include "lesson/begin_of.hpp"
#include "lesson/debrief.hpp"
#include "support/program.hpp"

#include <catch2/catch.hpp>

#include <memory>
#include <optional>
#include <string>

/// Calls worked by scripts through the real program, and what a debrief makes of them.
namespace lightoff::test {

inline std::string model_script(const std::string& call) {
    return bytes_of(std::string(LIGHTOFF_SOURCE_DIR) + "/scenarios/scripts/" + call + ".txt");
}

/// Somebody who changes the pressure switch first and measures afterwards, on the call "plugged-hose".
inline const char* const kGuessing = R"(wait until lamp
wait 20s
stops-at 1
thermostat-mode off
disconnect off
burner-door off
replace pressure_switch
disconnect on
thermostat-mode heat
wait 60s
manometer-a hose-tee-switch
wait until inducer
keep manometer
manometer-a hose-tee-inducer
wait until inducer
read
thermostat-mode off
disconnect off
manometer-a off
take-off pressure_hose
clean pressure_hose
put-back pressure_hose
disconnect on
thermostat-mode heat
wait until burners
burner-door on
wait 3min
cause hose_plugged
tell repaired
sign-off
)";

class WorkedCall {
public:
    explicit WorkedCall(std::string name)
        : name_(std::move(name)), bundle_(files::load_bundle(std::string(LIGHTOFF_SOURCE_DIR) +
                                                             "/scenarios/calls/" + name_ + ".json")) {}

    /// The attempt that a script makes.
    [[nodiscard]] lesson::Log log(const std::string& script) const {
        const TemporaryFolder folder;
        put_bytes(folder.file("script.txt"), script);
        const std::string attempt = folder.file("attempt.jsonl");
        const Ran ran =
            run_program({LIGHTOFF_CLI, "play", name_, folder.file("script.txt"), "--attempt", attempt},
                        {{"LIGHTOFF_DATA=" + std::string(LIGHTOFF_SOURCE_DIR) + "/scenarios"}});
        INFO(script << ran.out << ran.err);
        REQUIRE(ran.code == 0);
        return files::log_of(files::read_attempt(attempt, furnace::kPhysicsVersion), attempt, bundle_.site);
    }
    [[nodiscard]] lesson::Debrief debrief(const lesson::Log& log,
                                          const lesson::DebriefProgress& progress = {}) {
        return lesson::make_debrief(site(), bundle_.scenario, bundle_.rubric, log, bank(), progress);
    }

    [[nodiscard]] const files::LoadedBundle& bundle() const { return bundle_; }
    [[nodiscard]] const bench::Site& site() const { return bundle_.site; }
    /// Made once.
    evidence::Bank& bank() {
        if (!bank_)
            bank_.emplace(site(), lesson::begin_of(site(), bundle_.scenario, 0),
                          lesson::real_faults(site(), bundle_.scenario));
        return *bank_;
    }

private:
    std::string name_;
    files::LoadedBundle bundle_;
    std::optional<evidence::Bank> bank_;
};

} // namespace lightoff::test
