// SPDX-License-Identifier: MIT
#pragma once
#include "gui/platform/app.hpp"
#include "gui/trace/strip_chart.hpp"

#include <string_view>

namespace lightoff::demo {

/// One page that shows everything the canvas can do, with a recorder fed by made-up curves.
class Demo : public platform::App {
public:
    explicit Demo(double history_s = 240);

    void frame(const platform::FrameInput& input) override;
    platform::Wishes wishes() const override { return wishes_; }
    void close_asked() override { wishes_.close = true; }

    void set_look(canvas::ThemeId theme, float text_percent);
    /// Draws the page into the ImGui window now being built.
    void draw(const canvas::Canvas& canvas, canvas::Rect page);

private:
    void sample(double t_s);
    void draw_header(const canvas::Canvas& canvas, canvas::Rect box);
    void draw_recorder(const canvas::Canvas& canvas, canvas::Rect box);

    platform::Wishes wishes_;
    trace::Recording recording_;
    trace::StripChart chart_;
    trace::ChartView view_;
    double now_s_ = 0;
    bool paused_ = false;
    std::size_t speed_ = 0;
};

} // namespace lightoff::demo
