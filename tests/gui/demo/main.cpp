// SPDX-License-Identifier: MIT
// lightoff_demo [paper|basement|projector] [text percent] [width height] [picture.png]
// With a picture's name it draws some frames, writes the picture and ends.
#include "gui/demo/demo.hpp"
#include "gui/platform/shell.hpp"

#include <cstdlib>
#include <iostream>
#include <stdexcept>
#include <vector>

using namespace lightoff;

namespace {

canvas::ThemeId theme_called(const std::string& name) {
    for (const canvas::ThemeId id : canvas::kThemes) {
        if (name == canvas::theme(id).name) {
            return id;
        }
    }
    return canvas::ThemeId::Paper;
}

int write_picture(const platform::WindowOptions& options, demo::Demo& page, const std::string& path) {
    platform::Platform window(options);
    for (int i = 0; i < 4; ++i) {
        if (i == 3) {
            window.request_screenshot(path);
        }
        platform::run_frame(window, page);
    }
    return window.screenshot_written() ? 0 : 1;
}

} // namespace

int main(int argc, char** argv) {
    const std::vector<std::string> words(argv + 1, argv + argc);
    platform::WindowOptions options;
    options.title = "Lightoff drawing sheet";
    options.theme = theme_called(words.empty() ? "paper" : words[0]);
    options.text_percent = words.size() > 1 ? std::strtof(words[1].c_str(), nullptr) : 100;
    if (words.size() > 3) {
        options.width = static_cast<unsigned>(std::strtoul(words[2].c_str(), nullptr, 10));
        options.height = static_cast<unsigned>(std::strtoul(words[3].c_str(), nullptr, 10));
    }
    demo::Demo page;
    page.set_look(options.theme, options.text_percent);
    if (words.size() < 5) {
        return platform::run(options, page);
    }
    try {
        options.fixed_delta_s = 0.05;
        return write_picture(options, page, words[4]);
    } catch (const std::runtime_error& error) {
        std::cerr << error.what() << '\n';
        return 1;
    }
}
