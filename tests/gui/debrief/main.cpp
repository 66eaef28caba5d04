// SPDX-License-Identifier: MIT
// lightoff_debrief_pictures ATTEMPT FOLDER [paper|basement|projector] [text percent] [width height]
// Pictures of all pages of an attempt's debrief. Not shipped.
#include "gui/canvas/style.hpp"
#include "gui/debrief/background.hpp"
#include "gui/debrief/debrief.hpp"
#include "gui/debrief/pages.hpp"
#include "gui/platform/shell.hpp"

#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <iostream>
#include <stdexcept>
#include <thread>

using namespace lightoff;

namespace {

canvas::ThemeId theme_called(const std::string& name) {
    for (const canvas::ThemeId id : canvas::kThemes)
        if (name == canvas::theme(id).name)
            return id;
    return canvas::ThemeId::Paper;
}

template <class Draw>
void frame(platform::Platform& window, const Draw& draw) {
    window.begin_frame(0);
    ImGui::SetNextWindowPos({0, 0});
    ImGui::SetNextWindowSize(window.size());
    ImGui::Begin("page", nullptr, canvas::kPage);
    draw(window.canvas().here(), canvas::Rect{{0, 0}, window.size()});
    ImGui::End();
    window.end_frame();
}

bool picture(platform::Platform& window, const std::string& path, const auto& draw) {
    for (int i = 0; i < 3; ++i) {
        if (i == 2)
            window.request_screenshot(path);
        frame(window, draw);
    }
    return window.screenshot_written();
}

int save(const platform::WindowOptions& options, const std::string& attempt, const std::string& folder) {
    platform::Platform window(options);
    debrief::Background background(attempt);
    debrief::DebriefWants wants;
    std::unique_ptr<debrief::Model> model;
    std::string words = background.progress();
    while (!(model = background.take())) {
        if (!background.failure().empty())
            throw std::runtime_error(background.failure());
        if (background.progress() != words) {
            words = background.progress();
            std::cout << words << '\n';
        }
        std::this_thread::sleep_for(std::chrono::milliseconds(50));
    }
    picture(window, folder + "/waiting.png", [&](const canvas::Canvas& canvas, canvas::Rect area) {
        debrief::draw_waiting(canvas, area, words, wants);
    });
    debrief::DebriefView view(*model);
    const auto draw = [&](const canvas::Canvas& canvas, canvas::Rect area) {
        debrief::draw_debrief(canvas, area, *model, view, wants);
    };
    const std::vector<debrief::Page> pages = debrief::pages_of(*model);
    bool all = true;
    for (std::size_t i = 0; i < pages.size(); ++i) {
        if (pages[i] == debrief::Page::moment)
            view.tick = model->tick_at(model->length_s() * 0.3);
        all = picture(window, folder + "/" + std::to_string(i + 1) + ".png", draw) && all;
        if (pages[i] == debrief::Page::moment)
            debrief::mark_moment(*model, view, model->tick_at(model->length_s() * 0.3));
        else
            debrief::turn_to(*model, view, i + 1);
    }
    return all ? 0 : 1;
}

} // namespace

int main(int argc, char** argv) {
    const std::vector<std::string> words(argv + 1, argv + argc);
    if (words.size() < 2)
        return 2;
    platform::WindowOptions options;
    options.theme = theme_called(words.size() > 2 ? words[2] : "paper");
    options.text_percent = words.size() > 3 ? std::strtof(words[3].c_str(), nullptr) : 100;
    if (words.size() > 5) {
        options.width = static_cast<unsigned>(std::strtoul(words[4].c_str(), nullptr, 10));
        options.height = static_cast<unsigned>(std::strtoul(words[5].c_str(), nullptr, 10));
    }
    options.fixed_delta_s = 0.05;
    std::filesystem::create_directories(words[1]);
    try {
        return save(options, words[0], words[1]);
    } catch (const std::exception& error) {
        std::cerr << error.what() << '\n';
        return 1;
    }
}
