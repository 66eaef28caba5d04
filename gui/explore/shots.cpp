// SPDX-License-Identifier: MIT
#include "gui/explore/shots.hpp"

#include <filesystem>
#include <string_view>
#include <utility>

namespace lightoff::explore {
namespace {

constexpr double kLongestWait_s = 1200;
constexpr float kGlowing_k = 1350; ///< bright orange, hot enough to light gas
constexpr double kSteady_s = 540;  ///< of firing: supply air and exchanger have settled
constexpr int kFramesForPicture = 4;

int lit(const RunningFurnace& furnace) {
    int count = 0;
    for (const cutaway::Flame& flame : furnace.scene().burner) {
        count += flame.strength > 0.5F ? 1 : 0;
    }
    return count;
}

/// Named moments, in their order. Each looks at every tick.
struct Moment {
    const char* name;
    bool (*reached)(const RunningFurnace& furnace, double& firing_s);
};

constexpr std::array kMoments{
    Moment{"cold", [](const RunningFurnace& f, double&) { return f.now_s() >= 3; }},
    Moment{"igniter-glowing",
           [](const RunningFurnace& f, double&) { return f.scene().igniter_k >= kGlowing_k; }},
    Moment{"burners-lighting", [](const RunningFurnace& f,
                                  double&) { return 2 * lit(f) > static_cast<int>(f.scene().burner_count); }},
    Moment{"steady-run",
           [](const RunningFurnace& f, double& firing_s) {
               const bool all = lit(f) == static_cast<int>(f.scene().burner_count);
               firing_s = all ? firing_s + f.model().board.tick_s : 0;
               return firing_s >= kSteady_s;
           }},
};

bool run_to(const Moment& moment, RunningFurnace& furnace) {
    double firing_s = 0;
    const double until_s = furnace.now_s() + kLongestWait_s;
    while (!moment.reached(furnace, firing_s)) {
        if (furnace.now_s() >= until_s) {
            return false;
        }
        furnace.tick();
    }
    return true;
}

bool save(platform::Platform& window, Explore& page, const std::string& path) {
    for (int i = 0; i < kFramesForPicture; ++i) {
        if (i + 1 == kFramesForPicture) {
            window.request_screenshot(path);
        }
        window.begin_frame(0);
        page.frame({window.wall_delta_s(), window.size(), window.focused(), window.canvas()});
        window.end_frame();
    }
    return window.screenshot_written();
}

/// A parameter that every furnace has, and how far it is turned: a regulator that lets through too much.
constexpr std::string_view kTurned = "gas.regulator_drift";
constexpr double kTurnedShare = 0.8;
constexpr double kBeside_s = 120;

/// Goes on from the last moment with a furnace beside.
void turn(Explore& page) {
    WhatIf& what_if = page.what_if();
    for (std::size_t i = 0; i < what_if.parameters().size(); ++i) {
        if (what_if.parameters()[i].path == kTurned) {
            what_if.set(i, what_if.parameters()[i].at(kTurnedShare));
        }
    }
    const double until_s = page.furnace().now_s() + kBeside_s;
    while (page.furnace().now_s() < until_s) {
        page.furnace().tick();
        what_if.follow();
    }
}

} // namespace

std::vector<std::string> save_shots(platform::WindowOptions options, Explore& page,
                                    const std::string& folder) {
    options.fixed_delta_s = 1.0 / 60;
    platform::Platform window(options);
    page.set_look(options.theme, options.text_percent);
    page.set_paused(true);
    std::error_code ignored;
    std::filesystem::create_directories(folder, ignored);
    std::vector<std::string> failures;
    const auto picture = [&](const char* name) {
        page.furnace().settle_motion();
        const std::string path = (std::filesystem::path(folder) / name).string() + ".png";
        if (!save(window, page, path)) {
            failures.push_back("Cannot write " + path + ".");
        }
    };
    for (const Moment& moment : kMoments) {
        if (!run_to(moment, page.furnace())) {
            failures.push_back(std::string("This call never comes to \"") + moment.name + "\".");
            continue;
        }
        picture(moment.name);
    }
    turn(page);
    for (const auto& [view, name] :
         {std::pair{View::WhatIf, "what-if"}, std::pair{View::Readings, "readings"},
          std::pair{View::Diagram, "diagram"}, std::pair{View::Recorder, "recorder"}}) {
        page.show(view);
        picture(name);
    }
    return failures;
}

} // namespace lightoff::explore
