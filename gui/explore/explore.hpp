// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/flow.hpp"
#include "gui/diagram/diagram.hpp"
#include "gui/explore/lane_picker.hpp"
#include "gui/explore/readings.hpp"
#include "gui/explore/running_furnace.hpp"
#include "gui/explore/step_page.hpp"
#include "gui/explore/what_if.hpp"
#include "gui/explore/what_if_page.hpp"
#include "gui/platform/app.hpp"

#include <functional>
#include <optional>
#include <string>

namespace lightoff::explore {

/// Pages of the window. Where there is room, several are shown at once.
enum class View { Furnace, Steps, Readings, Diagram, WhatIf, Recorder, Hands };
inline constexpr std::size_t kViews = 7;

/// The window of explore: the open furnace, its sequence step by step, its readings, what-if, the recorder,
/// and switches and doors to hand.
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
    void set_motion(bool moves) { furnace_.set_motion(moves); }
    /// Gives it a way back to where it was opened from.
    void let_leave() { may_leave_ = true; }
    bool left() const { return left_; }
    void set_paused(bool paused);
    bool paused() const { return paused_; }
    double speed() const;
    void show(View view) { view_ = view; }

    /// To the end of the step, or of the next one if it is there already: where everything that the step has
    /// brought about is to be seen. What has not been yet is run, at full rate, while frames go by.
    void step_on();
    /// To the end of the step before.
    void step_back();
    bool stepping() const { return stepping_.has_value(); }
    /// Looks at a moment, and holds it.
    void look_at(std::uint64_t tick);

    /// Why the last thing asked for was not done; empty if it was.
    const std::string& refusal() const { return refusal_; }
    RunningFurnace& furnace() { return furnace_; }
    WhatIf& what_if() { return what_if_; }
    LanePicker& lanes() { return picker_; }

private:
    struct Command;
    struct Places;
    struct Stepping {
        std::size_t step = 0;         ///< whose end is looked for
        std::uint64_t until_tick = 0; ///< no longer than that
    };

    // commands.cpp: what can be done
    void handle_keys();
    void handle_step_keys();
    void act(const std::string& action);
    void turn_set_point(int degrees_f);
    void change_text(float by_percent);
    void next_theme();
    std::vector<Command> hands_commands() const;
    std::vector<Command> running_commands() const;
    std::vector<Command> look_commands() const;
    std::vector<Command> head_commands() const;
    std::vector<Command> recorder_commands() const;
    static std::vector<canvas::FlowItem> items_of(const canvas::Canvas& canvas,
                                                  const std::vector<Command>& commands);
    void draw_commands(const canvas::Canvas& canvas, canvas::Rect area, const std::vector<Command>& commands);
    std::vector<canvas::FlowItem> items_in(const canvas::Canvas& canvas, canvas::Rect area,
                                           const std::vector<Command>& commands) const;
    float height_of(const canvas::Canvas& canvas, canvas::Rect area,
                    const std::vector<Command>& commands) const;

    void keep_stepping();
    float width_of_head(const canvas::Canvas& canvas) const; ///< of time and buttons in one row
    void draw_title(const canvas::Canvas& canvas, canvas::Rect row) const;
    void draw_head(const canvas::Canvas& canvas, canvas::Rect& rest);
    void draw_footer(const canvas::Canvas& canvas, canvas::Rect& rest) const;
    std::string notice(const canvas::Canvas& canvas, float width) const;
    std::string step_words() const;
    std::string more_words() const;
    void draw_step(const canvas::Canvas& canvas, canvas::Rect box) const;
    Places lay_out(const canvas::Canvas& canvas, canvas::Rect rest);
    canvas::Rect cut_view_choice(const canvas::Canvas& canvas, canvas::Rect rest);
    void draw_view(const canvas::Canvas& canvas, View view, canvas::Rect area);
    float furnace_width(const canvas::Canvas& canvas, canvas::Rect rest, bool all) const;
    void draw_furnace(const canvas::Canvas& canvas, canvas::Rect area);
    void draw_diagram_page(const canvas::Canvas& canvas, canvas::Rect area);
    void draw_steps(const canvas::Canvas& canvas, canvas::Rect area);
    void draw_more(const canvas::Canvas& canvas, canvas::Rect row, std::size_t pages);
    void draw_readings_page(const canvas::Canvas& canvas, canvas::Rect area);
    void draw_recorder(const canvas::Canvas& canvas, canvas::Rect area);
    void fit_paper();
    trace::Beside beside_paper() const;
    /// Of the furnace beside; empty if there is none at this moment.
    std::vector<double> what_if_readings();

    const bench::Site* site_;
    std::string title_;
    RunningFurnace furnace_;
    WhatIf what_if_;
    diagram::Ladder ladder_;
    diagram::DiagramView diagram_;
    WhatIfView what_if_view_;
    StepPageView step_view_;
    trace::StripChart chart_;
    trace::ChartView chart_view_;
    std::vector<trace::Lane> lanes_;
    std::vector<std::string> lane_groups_;
    LanePicker picker_;
    std::size_t readings_page_ = 0;
    platform::Wishes wishes_;
    View view_ = View::Steps;
    ImVec2 window_px_{0, 0};
    std::optional<Stepping> stepping_;
    bool paused_ = false;
    bool may_leave_ = false;
    bool left_ = false;
    bool small_ = false;        ///< one page at a time
    bool low_ = false;          ///< switches have a page of their own
    bool time_in_foot_ = false; ///< the head is only buttons
    bool show_what_if_ = false; ///< in the cutaway
    std::vector<View> choices_; ///< views that share one place, for want of room
    std::size_t speed_ = 0;
    std::string refusal_;
};

/// Something that can be done, as a button.
struct Explore::Command {
    canvas::FlowItem item;
    std::vector<std::string> may_show; ///< all words that the button shows at one time or another
    std::function<void(Explore&)> run;
};

} // namespace lightoff::explore
