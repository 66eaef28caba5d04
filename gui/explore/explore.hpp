// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/flow.hpp"
#include "gui/explore/readings.hpp"
#include "gui/explore/running_furnace.hpp"
#include "gui/platform/app.hpp"

#include <array>
#include <string>

namespace lightoff::explore {

/// Pages of the window. Where there is room, several are shown at once.
enum class View { Furnace, Readings, Recorder, Hands };

/// The window of explore: the open furnace, its readings, the recorder, and switches and doors to hand.
class Explore : public platform::App {
public:
    /// Model and scenario must outlive it.
    Explore(const bench::Site& site, const lesson::Scenario& scenario);

    void frame(const platform::FrameInput& input) override;
    platform::Wishes wishes() const override;
    void close_asked() override { wishes_.close = true; }

    /// Lets wall time go by, unless paused.
    void pass(double wall_s);
    /// Keys, then the page, into the ImGui window now being built.
    void draw(const canvas::Canvas& canvas, canvas::Rect page);

    /// The text size asked for, or the largest that leaves every page room in a window of this size.
    float text_percent_in(ImVec2 window_px) const;

    void set_look(canvas::ThemeId theme, float text_percent);
    /// Gives it a way back to where it was opened from.
    void let_leave() { may_leave_ = true; }
    bool left() const { return left_; }
    void set_paused(bool paused);
    bool paused() const { return paused_; }
    double speed() const;
    /// Why the last thing asked for was not done; empty if it was.
    const std::string& refusal() const { return refusal_; }
    RunningFurnace& furnace() { return furnace_; }

private:
    struct Command;
    struct Places;

    void handle_keys();
    void act(const std::string& action);
    void turn_set_point(int degrees_f);
    void change_text(float by_percent);
    void next_theme();

    std::vector<Command> hands_commands() const;
    std::vector<Command> running_commands() const;
    std::vector<Command> look_commands() const;
    std::vector<Command> commands_of(View view) const;
    static std::vector<canvas::FlowItem> items_of(const canvas::Canvas& canvas,
                                                  const std::vector<Command>& commands);
    void draw_commands(const canvas::Canvas& canvas, canvas::Rect area, const std::vector<Command>& commands);
    void draw_head(const canvas::Canvas& canvas, canvas::Rect& rest);
    void draw_footer(const canvas::Canvas& canvas, canvas::Rect& rest) const;
    std::string step_words() const;
    std::string more_words() const;
    void draw_step(const canvas::Canvas& canvas, canvas::Rect box) const;
    Places lay_out(const canvas::Canvas& canvas, canvas::Rect rest);
    canvas::Rect cut_view_choice(const canvas::Canvas& canvas, canvas::Rect& rest);
    void draw_furnace(const canvas::Canvas& canvas, canvas::Rect area) const;
    void draw_more(const canvas::Canvas& canvas, canvas::Rect& row, std::size_t pages, bool at_right);
    void draw_readings_page(const canvas::Canvas& canvas, canvas::Rect area, canvas::Rect& beside_step);
    void draw_recorder(const canvas::Canvas& canvas, canvas::Rect area);

    const bench::Site* site_;
    std::string title_;
    RunningFurnace furnace_;
    trace::StripChart chart_;
    trace::ChartView chart_view_;
    std::vector<trace::Lane> lanes_;
    std::vector<ReadingGroup> readings_;
    std::size_t readings_page_ = 0;
    platform::Wishes wishes_;
    View view_ = View::Furnace;
    ImVec2 window_px_{0, 0};
    bool paused_ = false;
    bool may_leave_ = false;
    bool left_ = false;
    bool small_ = false;        ///< one page at a time
    std::vector<View> choices_; ///< views that share one place, for want of room
    std::size_t speed_ = 0;
    std::string refusal_;
};

} // namespace lightoff::explore
