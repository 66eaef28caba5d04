// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/canvas/layout_probe.hpp"
#include "gui/canvas/style.hpp"
#include "gui/platform/app.hpp"
#include "gui/platform/input_queue.hpp"

#include <utility>

namespace lightoff::test {

/// Dear ImGui with our fonts and style and our input queue, but no window, display or OpenGL.
class Headless {
public:
    explicit Headless(ImVec2 size = {800, 600}, canvas::ThemeId theme = canvas::ThemeId::Paper,
                      float scale = 1) {
        ImGui::CreateContext();
        ImGuiIO& io = ImGui::GetIO();
        io.IniFilename = nullptr;
        io.DisplaySize = size;
        io.DeltaTime = 1.0F / 60;
        io.ConfigFlags |= ImGuiConfigFlags_NavEnableKeyboard;
        io.MousePos = {-1, -1};
        build_ = canvas::build_fonts(*io.Fonts, scale);
        io.FontDefault = build_.fonts.of(canvas::Type::Body);
        platform::InputQueue::set_key_map(io);
        canvas::apply_style(ImGui::GetStyle(), canvas::theme(theme), scale);
        canvas_.theme = &canvas::theme(theme);
        canvas_.fonts = &build_.fonts;
        canvas_.scale = scale;
        canvas_.probe = &probe;
    }
    ~Headless() { ImGui::DestroyContext(); }
    Headless(const Headless&) = delete;
    Headless& operator=(const Headless&) = delete;

    /// One frame: `page(canvas)` draws inside a plain window that fills the display.
    template <class Page>
    void frame(Page&& page) {
        queue.feed(ImGui::GetIO());
        probe.begin_frame();
        ImGui::NewFrame();
        ImGui::SetNextWindowPos({0, 0});
        ImGui::SetNextWindowSize(ImGui::GetIO().DisplaySize);
        ImGui::Begin("page", nullptr, canvas::kPage);
        std::forward<Page>(page)(canvas_.here());
        ImGui::End();
        ImGui::Render();
    }

    /// One frame of a program that makes its windows itself.
    void frame_of(platform::App& app) {
        queue.feed(ImGui::GetIO());
        probe.begin_frame();
        ImGui::NewFrame();
        canvas_.list = ImGui::GetBackgroundDrawList();
        app.frame({0.0, ImGui::GetIO().DisplaySize, true, canvas_});
        ImGui::Render();
    }

    /// Frames until all input has been taken, and one more.
    template <class Page>
    void settle(Page&& page) {
        while (!queue.empty()) {
            frame(page);
        }
        frame(page);
    }

    void click(ImVec2 at) {
        queue.push(platform::PointerEvent{at.x, at.y});
        queue.push(platform::ButtonEvent{platform::MouseButton::Left, true});
        queue.push(platform::ButtonEvent{platform::MouseButton::Left, false});
    }
    void tap(platform::Key key) {
        queue.push(platform::KeyEvent{key, true});
        queue.push(platform::KeyEvent{key, false});
    }

    const canvas::FontBuild& fonts() const { return build_; }

    platform::InputQueue queue;
    canvas::LayoutProbe probe;

private:
    canvas::FontBuild build_;
    canvas::Canvas canvas_;
};

} // namespace lightoff::test
