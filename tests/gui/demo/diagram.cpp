// SPDX-License-Identifier: MIT
// lightoff_diagram_demo CALL [paper|basement|projector] [width height] [picture.png] [ACTION ...]
// The wiring diagram of a call's furnace, after some actions. With a picture's name it draws some frames,
// writes the picture and ends.
#include "gui/diagram/diagram.hpp"
#include "files/bundle_loader.hpp"
#include "gui/canvas/fills.hpp"
#include "gui/canvas/style.hpp"
#include "gui/platform/shell.hpp"

#include <cstdlib>
#include <exception>
#include <iostream>
#include <string>
#include <vector>

using namespace lightoff;

namespace {

class Page : public platform::App {
public:
    Page(const files::LoadedBundle& bundle, canvas::ThemeId theme)
        : bundle_(bundle), visit_(bundle, 1), theme_(theme) {
        ladder_ = diagram::lay_out(bundle.site.model);
    }

    /// "at board.W" puts the keyboard there instead.
    void act(const std::string& line) {
        if (line.rfind("at ", 0) == 0) {
            view_.cursor = ladder_.spot_of_node(bundle_.site.model.find_test_point(line.substr(3)));
            return;
        }
        const visit::Visit::Listener quiet{[](const bench::Caption&) {},
                                           [](const bench::Reading&, std::size_t) {}, [] { return false; }};
        const std::string why = visit_.act(bench::parse_action(bundle_.site, line), "mouse", quiet);
        if (!why.empty())
            std::cerr << line << ": " << why << '\n';
    }

    void frame(const platform::FrameInput& input) override {
        ImGui::SetNextWindowPos({0, 0});
        ImGui::SetNextWindowSize(input.size);
        ImGui::Begin("page", nullptr, canvas::kPage);
        const canvas::Canvas canvas = input.canvas.here();
        const canvas::Rect all{{0, 0}, input.size};
        canvas::fill(canvas, all, canvas.theme->ground);
        view::Wanted wanted;
        const view::Known known = view::known_of(visit_, bundle_.scenario);
        diagram::draw_diagram(canvas, all.shrunk(canvas.px(14)), ladder_, known, view_, wanted);
        ImGui::End();
    }
    platform::Wishes wishes() const override { return {theme_, 100, 0.05, closing_}; }
    void close_asked() override { closing_ = true; }

private:
    const files::LoadedBundle& bundle_;
    visit::Visit visit_;
    diagram::Ladder ladder_;
    diagram::DiagramView view_;
    canvas::ThemeId theme_;
    bool closing_ = false;
};

canvas::ThemeId theme_called(const std::string& name) {
    for (const canvas::ThemeId id : canvas::kThemes)
        if (name == canvas::theme(id).name)
            return id;
    return canvas::ThemeId::Paper;
}

int write_picture(const platform::WindowOptions& options, Page& page, const std::string& path) {
    platform::Platform window(options);
    for (int i = 0; i < 4; ++i) {
        if (i == 3)
            window.request_screenshot(path);
        platform::run_frame(window, page);
    }
    return window.screenshot_written() ? 0 : 1;
}

int show(const std::vector<std::string>& words) {
    const files::LoadedBundle bundle = files::load_bundle(words.empty() ? "call-for-heat" : words[0]);
    platform::WindowOptions options;
    options.title = "Wiring diagram";
    options.theme = theme_called(words.size() > 1 ? words[1] : "paper");
    if (words.size() > 3) {
        options.width = static_cast<unsigned>(std::strtoul(words[2].c_str(), nullptr, 10));
        options.height = static_cast<unsigned>(std::strtoul(words[3].c_str(), nullptr, 10));
    }
    Page page(bundle, options.theme);
    for (std::size_t i = 5; i < words.size(); ++i)
        page.act(words[i]);
    if (words.size() < 5)
        return platform::run(options, page);
    options.fixed_delta_s = 0.05;
    return write_picture(options, page, words[4]);
}

} // namespace

int main(int argc, char** argv) {
    try {
        return show(std::vector<std::string>(argv + 1, argv + argc));
    } catch (const std::exception& error) {
        std::cerr << error.what() << '\n';
        return 1;
    }
}
