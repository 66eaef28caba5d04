// SPDX-License-Identifier: MIT
#include "gui/platform/shell.hpp"

#include <iostream>
#include <stdexcept>

namespace lightoff::platform {

void greet(const Platform& platform, App& app) {
    for (const std::string& message : platform.font_messages()) {
        std::cerr << "lightoff: " << message << '\n';
    }
    if (!platform.font_messages().empty()) {
        app.told(platform.font_messages());
    }
}

bool run_frame(Platform& platform, App& app) {
    const Wishes before = app.wishes();
    platform.set_look(before.theme, before.text_percent);
    platform.begin_frame(before.next_frame_in_s);
    if (platform.take_close_request()) {
        app.close_asked();
    }
    app.frame({platform.wall_delta_s(), platform.size(), platform.focused(), platform.canvas()});
    platform.end_frame();
    return !app.wishes().close;
}

int run(const WindowOptions& options, App& app) {
    try {
        Platform platform(options);
        greet(platform, app);
        while (run_frame(platform, app)) {
        }
        return 0;
    } catch (const std::runtime_error& error) {
        std::cerr << "lightoff: " << error.what() << '\n';
        return 1;
    }
}

} // namespace lightoff::platform
