// SPDX-License-Identifier: MIT
#include "files/bundle_loader.hpp"
#include "gui/explore/explore.hpp"
#include "gui/explore/shots.hpp"
#include "gui/platform/display.hpp"
#include "gui/platform/shell.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdio>
#include <exception>
#include <string>

namespace {

using namespace lightoff;

/// What the exit status says.
enum ExitCode : int {
    kDone = 0,
    kNotAll = 1,   ///< a picture could not be made
    kUnusable = 2, ///< bad usage, a scenario that can't be used
    kNoDisplay = 3 ///< no window can be opened here
};

struct Typed {
    std::string scenario = "call-for-heat";
    std::string shots;
    std::string size = "1280x720";
    std::string theme = "paper";
    float text_percent = 100;
};

int complain(int code, std::string message) {
    while (!message.empty() && message.back() == '\n') {
        message.pop_back();
    }
    std::replace(message.begin(), message.end(), '\n', ' ');
    std::fprintf(stderr, "lightoff: %s\n", message.c_str());
    return code;
}

canvas::ThemeId theme_called(const std::string& name) {
    for (const canvas::ThemeId id : canvas::kThemes) {
        if (name == canvas::theme(id).name) {
            return id;
        }
    }
    throw CLI::ValidationError("--theme", "found \"" + name + "\"; allowed are paper, basement, projector");
}

/// Throws CLI::ValidationError for a size that no window here can have.
void read_size(const std::string& text, platform::WindowOptions& options) {
    unsigned width = 0;
    unsigned height = 0;
    char rest = 0;
    if (std::sscanf(text.c_str(), "%5ux%5u%c", &width, &height, &rest) != 2 || width < 640 || height < 360 ||
        width > 8192 || height > 8192) {
        throw CLI::ValidationError("--size",
                                   "found \"" + text + "\"; allowed is WIDTHxHEIGHT, 640x360 to 8192x8192");
    }
    options.width = width;
    options.height = height;
}

void add_options(CLI::App& app, Typed& typed) {
    app.set_version_flag("--version", std::string("lightoff ") + LIGHTOFF_VERSION);
    app.add_option("SCENARIO", typed.scenario, "name of a call, or path of its file [call-for-heat]");
    app.add_option("--size", typed.size, "of the window, pixels [1280x720]")->type_name("WxH");
    app.add_option("--text", typed.text_percent, "size of the text, 80 to 200 percent [100]")
        ->type_name("PCT")
        ->check(CLI::Range(80.0F, 200.0F));
    app.add_option("--theme", typed.theme, "paper, basement or projector [paper]")->type_name("NAME");
    app.add_option("--shots", typed.shots, "save pictures of four moments of the call there, and end")
        ->type_name("DIR");
    app.footer(
        "Keys: Space pauses; 1 2 3 4 set the speed; U and D turn the thermostat up and down, H to heat or\n"
        "off; X disconnect, G gas cock, B burner door, F blower door; V other page, M more readings;\n"
        "L theme, Ctrl + and Ctrl - text size; Ctrl Q ends. Arrows walk from button to button, Space "
        "presses.\n"
        "Exit status: 0 done, 1 a picture could not be made, 2 bad usage or scenario, 3 no display.");
}

int show(const Typed& typed, const platform::WindowOptions& options) {
    const files::LoadedBundle bundle = files::load_bundle(typed.scenario);
    // Kept until the window is open; see DisplayProbe.
    const platform::DisplayProbe display;
    if (!display.refusal().empty()) {
        return complain(kNoDisplay, display.refusal() + " Try: lightoff-cli run " + typed.scenario);
    }
    explore::Explore window(bundle.site, bundle.scenario);
    window.set_look(options.theme, options.text_percent);
    if (typed.shots.empty()) {
        return platform::run(options, window) == 0 ? kDone : kNoDisplay;
    }
    const std::vector<std::string> failures = explore::save_shots(options, window, typed.shots);
    for (const std::string& failure : failures) {
        complain(kNotAll, failure);
    }
    return failures.empty() ? kDone : kNotAll;
}

} // namespace

int main(int argc, char** argv) {
    CLI::App app{"Lightoff: a computed gas furnace to run, measure and mend without gas.", "lightoff"};
    Typed typed;
    platform::WindowOptions options;
    try {
        add_options(app, typed);
        app.parse(argc, argv);
        options.theme = theme_called(typed.theme);
        options.text_percent = typed.text_percent;
        read_size(typed.size, options);
    } catch (const CLI::Success& asked) {
        return app.exit(asked);
    } catch (const CLI::ParseError& error) {
        return complain(kUnusable, std::string(error.what()) + " (see lightoff --help)");
    }
    try {
        return show(typed, options);
    } catch (const std::exception& error) {
        return complain(kUnusable, error.what());
    }
}
