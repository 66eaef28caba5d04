// SPDX-License-Identifier: MIT
#include "files/bundle_loader.hpp"
#include "files/error.hpp"
#include "files/own_folder.hpp"
#include "gui/desk/pictures.hpp"
#include "gui/desk/program.hpp"
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
    std::string scenario;
    std::string attempt;
    std::string shots;
    std::string script;
    std::string size = "1280x720";
    std::string theme;
    float text_percent = 0; ///< 0: as in the settings
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
    app.add_option("SCENARIO", typed.scenario,
                   "name of a call, or path of its file; without: the front desk");
    app.add_option("--attempt", typed.attempt, "continue an attempt that has no end")->type_name("FILE");
    app.add_option("--size", typed.size, "of the window, pixels [1280x720]")->type_name("WxH");
    app.add_option("--text", typed.text_percent, "size of the text, 80 to 200 percent")
        ->type_name("PCT")
        ->check(CLI::Range(80.0F, 200.0F));
    app.add_option("--theme", typed.theme, "paper, basement or projector")->type_name("NAME");
    CLI::Option* shots =
        app.add_option("--shots", typed.shots,
                       "save pictures there, and end: of the moments that a script names, else of four of "
                       "a furnace that runs")
            ->type_name("DIR");
    app.add_option("--script", typed.script,
                   "actions to do, as in lightoff-cli play, and pictures to save (docs/window.md)")
        ->type_name("FILE")
        ->needs(shots);
    app.footer("Keys, unless changed in the settings: F1 to F6 turn the pages at the right, F7 the diagram, "
               "F8 holds\n"
               "time, F9 waits; / types an action; Tab and arrows walk, Enter presses; Ctrl + and Ctrl - "
               "text size,\n"
               "Ctrl , settings, Ctrl Q ends.\n"
               "Exit status: 0 done, 1 a picture could not be made, 2 bad usage or scenario, 3 no display.");
}

desk::Own own_of(Typed& typed, platform::WindowOptions& options) {
    desk::Own own{files::attempts_folder(), files::settings_file(), {}};
    try {
        own.settings = files::read_settings(own.settings_file);
    } catch (const files::Error& error) {
        complain(kDone, std::string(error.what()) + "; the usual settings are used");
    }
    if (!typed.theme.empty())
        own.settings.theme = typed.theme;
    if (typed.text_percent > 0)
        own.settings.text_percent = static_cast<double>(typed.text_percent);
    options.theme = theme_called(own.settings.theme);
    options.text_percent = static_cast<float>(own.settings.text_percent);
    return own;
}

int tell_failures(const std::vector<std::string>& failures) {
    for (const std::string& failure : failures)
        complain(kNotAll, failure);
    return failures.empty() ? kDone : kNotAll;
}

int save_pictures(const Typed& typed, const platform::WindowOptions& options) {
    const files::LoadedBundle bundle =
        files::load_bundle(typed.scenario.empty() ? "call-for-heat" : typed.scenario);
    explore::Explore page(bundle.site, bundle.scenario);
    page.set_look(options.theme, options.text_percent);
    return tell_failures(explore::save_shots(options, page, typed.shots));
}

/// What was asked for on the command line is opened; else the front desk.
void open(const Typed& typed, lesson::Kind kind, desk::Program& program) {
    if (!typed.attempt.empty())
        program.go_on(typed.attempt);
    else if (!typed.scenario.empty() && kind == lesson::Kind::explore)
        program.explore(typed.scenario);
    else if (!typed.scenario.empty())
        program.take_call(typed.scenario);
}

int show(Typed& typed, platform::WindowOptions& options) {
    desk::Own own = own_of(typed, options);
    lesson::Kind kind = lesson::Kind::explore;
    if (!typed.scenario.empty()) // to be refused here, not in the window
        kind = files::load_bundle(typed.scenario).scenario.kind;
    // Kept until the window is open; see DisplayProbe.
    const platform::DisplayProbe display;
    if (!display.refusal().empty()) {
        return complain(kNoDisplay,
                        display.refusal() + " Try: lightoff-cli " +
                            (typed.scenario.empty() ? "play plugged-hose" : "run " + typed.scenario));
    }
    if (!typed.shots.empty() && typed.script.empty())
        return save_pictures(typed, options);
    if (!typed.script.empty()) { // nothing of the user's is touched, nothing is in the way
        own.attempts_folder = typed.shots;
        own.settings_file.clear();
        own.settings.sound = false;
        own.settings.cautions_read = true;
    }
    desk::Program program(std::move(own));
    open(typed, kind, program);
    if (!typed.script.empty())
        return tell_failures(desk::save_pictures(options, program, typed.script, typed.shots));
    return platform::run(options, program) == 0 ? kDone : kNoDisplay;
}

} // namespace

int main(int argc, char** argv) {
    CLI::App app{"Lightoff: a computed gas furnace to run, measure and mend without gas.", "lightoff"};
    Typed typed;
    platform::WindowOptions options;
    try {
        add_options(app, typed);
        app.parse(argc, argv);
        if (!typed.theme.empty())
            theme_called(typed.theme);
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
