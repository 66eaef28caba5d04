// SPDX-License-Identifier: MIT
#include "gui/explore/explore.hpp"

#include "gui/canvas/controls.hpp"
#include "gui/canvas/flow.hpp"
#include "gui/canvas/lettering.hpp"
#include "gui/canvas/scrolled.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/canvas/style.hpp"
#include "gui/cutaway/cutaway.hpp"
#include "gui/explore/board_words.hpp"
#include "gui/explore/energised.hpp"
#include "gui/explore/hands_words.hpp"
#include "gui/explore/lanes.hpp"
#include "gui/platform/platform.hpp"
#include "gui/sheet/tabs.hpp"
#include "gui/trace/ticks.hpp"
#include "visit/words.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace lightoff::explore {
namespace {

using namespace canvas;

constexpr std::array<double, 4> kSpans_s{120, 240, 600, 1200};
constexpr float kLeastText = 80, kMostText = 200; // percent

/// Width and height in design pixels from which on cutaway and one more page stand side by side, and from
/// which on the recorder lies under them, too.
constexpr float kTwoWide = 760, kAllWide = 1080;
constexpr float kTwoHigh = 400, kAllHigh = 520;
/// A page lower than so many design pixels gives its switches a page of their own.
constexpr float kLow = 800;
constexpr float kFurnaceShare = 0.36F, kMostFurnaceShare = 0.45F, kPanelShare = 0.53F;
/// What the furnace leaves beside it at the least, if there is so much: what a page 1280 wide has there, and
/// what one 1600 wide has there for three columns. With the gap between.
constexpr float kLeastBeside = 802, kThreeBeside = 1006;
constexpr float kHeadGap = 18; ///< between title, time and buttons
constexpr const char* kLongestTime = "0:00:00";
constexpr float kPickerShare = 0.3F, kLeastPicker = 240, kLeastPaper = 660;
/// So long is a step looked for before whoever asked is told that nothing moves.
constexpr double kLongestStep_s = 1800;

const char* name_of(View view) {
    static constexpr std::array<const char*, kViews> kNames{"Furnace", "Steps",    "Readings", "Diagram",
                                                            "What if", "Recorder", "Switches"};
    return kNames[static_cast<std::size_t>(view)];
}

bool fits(const Canvas& canvas, const std::string& words, Type type, float width) {
    return text_size(canvas, words, type).x <= width;
}

} // namespace

/// Which views have a place on this page, and where.
struct Explore::Places {
    std::array<Rect, kViews> of{};
    std::array<bool, kViews> shown{};
    void put(View view, Rect box) {
        of[static_cast<std::size_t>(view)] = box;
        shown[static_cast<std::size_t>(view)] = true;
    }
};

Explore::Explore(const bench::Site& site, const lesson::Scenario& scenario)
    : site_(&site), title_(scenario.title), furnace_(site, scenario), what_if_(furnace_),
      ladder_(diagram::lay_out(site.model)), lanes_(lanes_of(site.model, furnace_.gauges())) {
    chart_view_.span_s = kSpans_s.front();
    for (const bench::Gauge& gauge : furnace_.gauges().list()) {
        lane_groups_.push_back(gauge.group);
    }
    picker_.chosen = usual_lanes(furnace_.gauges());
}

void Explore::set_look(ThemeId theme, float text_percent) {
    wishes_.theme = theme;
    wishes_.text_percent = std::clamp(text_percent, kLeastText, kMostText);
}

void Explore::set_paused(bool paused) {
    paused_ = paused;
    stepping_.reset();
}

platform::Wishes Explore::wishes() const {
    platform::Wishes wishes = wishes_;
    wishes.text_percent = text_percent_in(window_px_);
    const bool catching_up =
        what_if_.exists() && !what_if_.is_there() && furnace_.world().tick > what_if_.begins_tick();
    wishes.next_frame_in_s = paused_ && !stepping_ && !catching_up && !furnace_.on_the_way() ? 1e9 : 0;
    return wishes;
}

float Explore::text_percent_in(ImVec2 window_px) const {
    return platform::text_percent_in(window_px, wishes_.text_percent, theme(wishes_.theme));
}

void Explore::frame(const platform::FrameInput& input) {
    window_px_ = input.size;
    pass(input.wall_delta_s);
    ImGui::SetNextWindowPos({0, 0});
    ImGui::SetNextWindowSize(input.size);
    ImGui::Begin("page", nullptr, kPage);
    draw(input.canvas.here(), {{0, 0}, input.size});
    ImGui::End();
}

// ---- time ----

void Explore::pass(double wall_s) {
    if (stepping_) {
        keep_stepping();
    } else if (!paused_) {
        furnace_.pass(wall_s, speed());
    }
    what_if_.follow();
    furnace_.pass_wall(wall_s);
}

void Explore::look_at(std::uint64_t tick) {
    set_paused(true);
    furnace_.go_to(tick);
    what_if_.follow();
    const double now_s = furnace_.now_s();
    if (now_s < chart_view_.from_s() || now_s > chart_view_.end_s) {
        trace::pan(chart_view_, now_s - chart_view_.from_s() - chart_view_.span_s / 2,
                   furnace_.recording().newest_s());
    }
}

void Explore::step_on() {
    const std::uint64_t now = furnace_.world().tick;
    std::size_t step = furnace_.step_at(now);
    while (!furnace_.going_on(step) && furnace_.end_of(step) <= now) {
        ++step;
    }
    if (!furnace_.going_on(step)) {
        look_at(furnace_.end_of(step));
        return;
    }
    look_at(furnace_.timed().newest_tick());
    const double tick_s = site_->model.board.tick_s;
    stepping_ = Stepping{step, furnace_.world().tick + static_cast<std::uint64_t>(kLongestStep_s / tick_s)};
    refusal_.clear();
}

/// What has not been yet goes by, a piece in each frame.
void Explore::keep_stepping() {
    for (int i = 0; i < RunningFurnace::kMostTicks; ++i) {
        if (!furnace_.going_on(stepping_->step)) {
            look_at(furnace_.end_of(stepping_->step)); // ends the stepping
            return;
        }
        if (furnace_.world().tick >= stepping_->until_tick) {
            stepping_.reset();
            refusal_ = "Half an hour has gone by, and the board is still at this step.";
            return;
        }
        furnace_.tick(20.0);
    }
}

void Explore::step_back() {
    const std::uint64_t now = furnace_.world().tick;
    for (std::size_t step = furnace_.step_at(now); step > 0; --step) {
        if (furnace_.end_of(step - 1) < now) {
            look_at(furnace_.end_of(step - 1));
            return;
        }
    }
    look_at(furnace_.timed().first_tick());
}

// ---- the page ----

void Explore::draw(const Canvas& canvas, Rect page) {
    Rect rest = page.shrunk(canvas.px(14));
    small_ = rest.width() / canvas.scale < kTwoWide || rest.height() / canvas.scale < kTwoHigh;
    low_ = small_ || rest.height() / canvas.scale < kLow || rest.width() / canvas.scale < kAllWide;
    handle_keys();
    time_in_foot_ = small_ && width_of_head(canvas) > rest.width();
    draw_footer(canvas, rest);
    draw_head(canvas, rest);
    const Places places = lay_out(canvas, rest);
    for (std::size_t v = 0; v < kViews; ++v) {
        if (places.shown[v]) {
            draw_view(canvas, static_cast<View>(v), places.of[v]);
        }
    }
}

void Explore::draw_view(const Canvas& canvas, View view, Rect area) {
    switch (view) {
    case View::Furnace:
        draw_furnace(canvas, area);
        break;
    case View::Steps:
        draw_steps(canvas, area);
        break;
    case View::Readings:
        draw_readings_page(canvas, area);
        break;
    case View::Diagram:
        draw_diagram_page(canvas, area);
        break;
    case View::WhatIf:
        draw_what_if_page(canvas, area, furnace_, what_if_, what_if_view_);
        break;
    case View::Recorder:
        draw_recorder(canvas, area);
        break;
    case View::Hands: {
        if (!low_) {
            draw_commands(canvas, area, hands_commands());
            break;
        }
        const Scrolled page(canvas, area, "switches", height_of(canvas, area, hands_commands()));
        draw_commands(page.canvas(), page.content(), hands_commands());
        break;
    }
    }
}

/// What hands are doing or why they are not, or where in time one is; the longest words that fit.
std::string Explore::notice(const Canvas& canvas, float width) const {
    const bench::World& world = furnace_.world();
    std::vector<std::string> words;
    if (!refusal_.empty()) {
        words = {"Not done. " + refusal_, refusal_};
    } else if (stepping_) {
        words = {"On to the end of this step."};
    } else if (world.hands.busy != 0) {
        const double left_s =
            static_cast<double>(world.hands.done_tick - world.tick) * site_->model.board.tick_s;
        words = {"Hands: " + hands_words(*site_, world.hands.action) + ", " + figure(left_s, 1) + " s left"};
    } else if (furnace_.timed().in_the_past()) {
        const std::string newest = trace::time_label(furnace_.seconds(furnace_.timed().newest_tick()));
        words = {"Looking back; the newest moment is " + newest +
                     ". Run goes on from here; what you do here makes the rest undone.",
                 "Looking back; the newest moment is " + newest + ".", "Looking back."};
    } else if (small_) {
        words = {step_words() + "  ·  " + more_words(), step_words()};
    }
    for (const std::string& one : words) {
        if (fits(canvas, one, Type::Secondary, width)) {
            return one;
        }
    }
    return words.empty() ? std::string() : words.back();
}

void Explore::draw_footer(const Canvas& canvas, Rect& rest) const {
    const Theme& theme = *canvas.theme;
    const std::string_view cautions = visit::cautions_in_short();
    const float height = text_size(canvas, cautions, Type::Minimum, rest.width()).y;
    const Rect safety = rest.cut_bottom(height);
    paragraph(canvas, safety.min, safety.width(), cautions, Type::Minimum, theme.pencil);
    Rect row = rest.cut_bottom(line_height(canvas, Type::Secondary) + canvas.px(4));
    if (time_in_foot_) {
        const std::string time = trace::time_label(furnace_.now_s());
        text_in(canvas, row.cut_right(text_size(canvas, time, Type::Body).x), time, Type::Body, theme.ink,
                Align::End);
        row.cut_right(canvas.px(kHeadGap));
    }
    text_in(canvas, row, notice(canvas, row.width()), Type::Secondary,
            refusal_.empty() ? theme.ink : theme.alarm);
    rest.cut_bottom(canvas.px(4));
}

float Explore::width_of_head(const Canvas& canvas) const {
    return text_size(canvas, kLongestTime, Type::Heading).x + canvas.px(kHeadGap) +
           width_of_flow(canvas, items_of(canvas, head_commands()));
}

/// The name of the call, as large as it fits, and the time.
void Explore::draw_title(const Canvas& canvas, Rect row) const {
    const Theme& theme = *canvas.theme;
    const float time_width = text_size(canvas, kLongestTime, Type::Heading).x;
    text_in(canvas, row.cut_right(time_width), trace::time_label(furnace_.now_s()), Type::Heading, theme.ink,
            Align::End);
    row.cut_right(canvas.px(kHeadGap));
    const Type type = largest_type(canvas, title_, row.width());
    if (fits(canvas, title_, type, row.width())) {
        text_in(canvas, row, title_, type, theme.ink);
    }
}

/// Title, time and buttons in one row or in two; on a small page that would need two, the buttons alone.
void Explore::draw_head(const Canvas& canvas, Rect& rest) {
    const std::vector<Command> commands = head_commands();
    const bool one_row = width_of_head(canvas) <= rest.width();
    if (!time_in_foot_) {
        Rect row = rest.cut_top(control_height(canvas));
        if (one_row) {
            draw_commands(canvas, row.cut_right(width_of_flow(canvas, items_of(canvas, commands))), commands);
            row.cut_right(canvas.px(kHeadGap));
        } else {
            rest.cut_top(canvas.px(6));
        }
        draw_title(canvas, row);
    }
    if (!one_row) {
        const float height = height_of(canvas, rest, commands);
        draw_commands(canvas, rest, commands);
        rest.cut_top(height);
    }
    rest.cut_top(canvas.px(8));
    segment(canvas, rest.min, {rest.max.x, rest.min.y}, Line::Rule, canvas.theme->pencil);
    rest.cut_top(canvas.px(10));
}

std::string Explore::step_words() const {
    return board_step(site_->model, furnace_.world(), 0);
}

/// How long it has been at that step, and what else the board does.
std::string Explore::more_words() const {
    const bench::World& world = furnace_.world();
    std::string more = "for " + trace::time_label(static_cast<double>(world.state.board.ticks_in_state[0]) *
                                                  site_->model.board.tick_s);
    for (std::size_t m = 1; m < site_->model.board.machines.size() && world.state.board.powered != 0; ++m) {
        more += "  ·  " + board_step(site_->model, world, m);
    }
    return more;
}

/// The board's step in words, large; behind it, as far as there is room, for how long, blower and lamp.
void Explore::draw_step(const Canvas& canvas, Rect box) const {
    const Theme& theme = *canvas.theme;
    const std::string step = step_words();
    const Type type = largest_type(canvas, step, box.width());
    text_in(canvas, box.cut_left(std::ceil(text_size(canvas, step, type).x)), step, type, theme.ink);
    box.cut_left(canvas.px(16));
    const std::string more = more_words();
    const std::string lamp = "  ·  lamp: " + lamp_words(site_->model, furnace_.world());
    const std::string shorter = more.substr(0, more.find("  ·  "));
    for (const std::string& words : {more + lamp, more, shorter + lamp, shorter}) {
        if (fits(canvas, words, Type::Secondary, box.width())) {
            text_in(canvas, box, words, Type::Secondary, theme.pencil);
            return;
        }
    }
}

/// Tabs of the views that share a place; returns what is left under them.
Rect Explore::cut_view_choice(const Canvas& canvas, Rect rest) {
    std::vector<std::string> names;
    std::size_t chosen = 0;
    for (std::size_t i = 0; i < choices_.size(); ++i) {
        names.emplace_back(name_of(choices_[i]));
        chosen = choices_[i] == view_ ? i : chosen;
    }
    const sheet::Tabs tabs = sheet::draw_tabs(canvas, rest, names, chosen);
    view_ = choices_[tabs.chosen];
    return tabs.rest;
}

/// A share of the page, and more where the drawing has height to grow into and the rest stands as it did.
float Explore::furnace_width(const Canvas& canvas, Rect rest, bool all) const {
    const float share = std::round(rest.width() * (all ? kFurnaceShare : kMostFurnaceShare));
    const float beside = rest.width() - share;
    const float least = canvas.px(beside >= canvas.px(kThreeBeside) ? kThreeBeside : kLeastBeside);
    const float most = std::min(rest.width() - least, rest.width() * kMostFurnaceShare);
    const float wanted = cutaway::width_for(canvas, rest.height(), furnace_.shown());
    return std::max(share, std::round(std::min(wanted, most)));
}

Explore::Places Explore::lay_out(const Canvas& canvas, Rect rest) {
    Places places;
    const float wide = rest.width() / canvas.scale;
    const float high = rest.height() / canvas.scale;
    const float gap = std::round(canvas.px(22));
    const bool all = !small_ && wide >= kAllWide && high >= kAllHigh;
    if (!low_) {
        const float hands = height_of(canvas, rest, hands_commands());
        places.put(View::Hands, rest.cut_top(hands));
        rest.cut_top(canvas.px(12));
    }
    choices_.clear();
    if (!small_) {
        places.put(View::Furnace, rest.cut_left(furnace_width(canvas, rest, all)));
        rest.cut_left(gap);
        draw_step(canvas, rest.cut_top(line_height(canvas, Type::Heading)));
        rest.cut_top(canvas.px(6));
    } else {
        choices_.push_back(View::Furnace);
    }
    choices_.insert(choices_.end(), {View::Steps, View::Readings, View::Diagram, View::WhatIf});
    if (!all) {
        choices_.push_back(View::Recorder);
    }
    if (low_) {
        choices_.push_back(View::Hands);
    }
    if (std::find(choices_.begin(), choices_.end(), view_) == choices_.end()) {
        view_ = choices_.front();
    }
    if (all && view_ != View::Diagram) { // a ladder has a use for all the room there is
        places.put(View::Recorder, rest.cut_bottom(std::round(rest.height() * (1 - kPanelShare))));
        rest.cut_bottom(canvas.px(12));
    }
    const Rect under = cut_view_choice(canvas, rest);
    places.put(view_, under);
    return places;
}

void Explore::draw_furnace(const Canvas& canvas, Rect area) {
    if (what_if_.is_there()) {
        const std::vector<FlowItem> items{{"As it is", show_what_if_ ? "W" : "", !show_what_if_, true, 0, 0},
                                          {"What if", show_what_if_ ? "" : "W", show_what_if_, true, 0, 0}};
        const Flow flow = lay_out_flow(canvas, area, items);
        if (const int pressed = draw_flow(canvas, flow, items); pressed >= 0) {
            show_what_if_ = pressed == 1;
        }
        area.cut_top(flow.height + canvas.px(8));
    }
    const bool beside = show_what_if_ && what_if_.is_there();
    ImGui::SetCursorScreenPos(area.min);
    ImGui::BeginChild("furnace", area.size(), false, kLayer);
    if (beside) {
        cutaway::CutawayScene scene =
            cutaway::make_scene(site_->model, what_if_.beside().world(), furnace_.travel());
        furnace_.show_still(scene);
        cutaway::draw_cutaway(canvas.here(), area, scene);
    } else {
        cutaway::draw_cutaway(canvas.here(), area, furnace_.shown());
    }
    ImGui::EndChild();
}

/// The ladder with every energised conductor in the colour of its energy, at the moment looked at; of the
/// furnace beside while that one is shown.
void Explore::draw_diagram_page(const Canvas& canvas, Rect area) {
    const bool beside = show_what_if_ && what_if_.is_there();
    const bench::World& world = beside ? what_if_.beside().world() : furnace_.world();
    diagram_.shows_all = true;
    diagram_.carried = energised(ladder_, site_->model, world, furnace_.workspace());
    view::Known known;
    known.site = site_;
    known.percept = bench::perceive(*site_, world);
    known.arrived_tick = furnace_.timed().first_tick();
    view::Wanted nothing;
    diagram::draw_diagram(canvas, area, ladder_, known, diagram_, nothing);
}

void Explore::draw_steps(const Canvas& canvas, Rect area) {
    if (const std::optional<std::uint64_t> wanted =
            draw_step_page(canvas, area, furnace_, what_if_, step_view_)) {
        look_at(*wanted);
    }
}

/// The button that turns to the next page of readings.
void Explore::draw_more(const Canvas& canvas, Rect row, std::size_t pages) {
    const std::string words =
        "More, " + std::to_string(readings_page_ % pages + 1) + " of " + std::to_string(pages) + "##more";
    const float width = button_width(canvas, words, "M");
    if (button(canvas, rect_at(row.min, {width, control_height(canvas)}), words, false, "M")) {
        ++readings_page_;
    }
}

std::vector<double> Explore::what_if_readings() {
    return what_if_.is_there() ? what_if_.beside().readings() : std::vector<double>();
}

void Explore::draw_readings_page(const Canvas& canvas, Rect area) {
    const std::vector<ReadingGroup> readings =
        readings_of(furnace_.gauges(), furnace_.timed().readings(), what_if_readings());
    const bool what_if = what_if_.exists();
    ReadingsLayout layout = lay_out_readings(canvas, area.size(), readings, what_if);
    if (layout.pages() > 1) {
        const Rect row = area.cut_bottom(control_height(canvas));
        area.cut_bottom(canvas.px(4));
        layout = lay_out_readings(canvas, area.size(), readings, what_if);
        draw_more(canvas, row, layout.pages());
    }
    readings_page_ %= layout.pages();
    draw_readings(canvas, area, layout, readings_page_);
}

// ---- the recorder ----

/// The paper shows the whole call until it is long; whoever zooms has it as he likes.
void Explore::fit_paper() {
    const auto own = std::find(kSpans_s.begin(), kSpans_s.end(), chart_view_.span_s);
    if (own != kSpans_s.end() && chart_view_.follow) {
        const double newest_s = furnace_.recording().newest_s();
        const auto fitting = std::find_if(own, kSpans_s.end(), [&](double s) { return s >= newest_s; });
        chart_view_.span_s = fitting != kSpans_s.end() ? *fitting : kSpans_s.back();
    }
}

trace::Beside Explore::beside_paper() const {
    trace::Beside beside;
    const std::vector<bench::SequenceStep>& steps = furnace_.steps();
    for (std::size_t i = 0; i < steps.size(); ++i) {
        const double end_s = furnace_.going_on(i) ? furnace_.recording().newest_s() + 1e-3
                                                  : furnace_.seconds(steps[i + 1].tick);
        beside.stretches.push_back(
            {furnace_.seconds(steps[i].tick), end_s, bench::title_of(site_->model, steps[i])});
    }
    if (what_if_.exists()) {
        beside.other = &what_if_.beside().recording();
        beside.other_name = "what if";
    }
    return beside;
}

void Explore::draw_recorder(const Canvas& canvas, Rect area) {
    fit_paper();
    const std::vector<Command> commands = recorder_commands();
    const float height = height_of(canvas, area, commands);
    draw_commands(canvas, area.cut_top(height), commands);
    area.cut_top(canvas.px(6));
    if (picker_.open) {
        float wide = std::max(canvas.px(kLeastPicker), std::round(area.width() * kPickerShare));
        const bool alone = area.width() - wide < canvas.px(kLeastPaper);
        wide = alone ? area.width() : wide;
        draw_lane_picker(canvas, area.cut_left(wide), lanes_, lane_groups_, picker_);
        if (alone) {
            return;
        }
        area.cut_left(canvas.px(14));
    }
    const trace::Beside beside = beside_paper();
    std::vector<trace::Lane> lanes = chosen_lanes(lanes_, picker_, furnace_.recording(), beside.other);
    for (std::size_t i = 0; i < lanes.size(); ++i) {
        const std::size_t column = *lanes[i].column;
        const double now = furnace_.timed().readings()[column];
        lanes[i].tolerance = static_cast<float>(
            lanes[i].words.empty() ? bench::accuracy(furnace_.gauges().list()[column], now) : 0.5);
    }
    chart_view_.flag_rows = area.height() / canvas.scale < 260 ? 1 : 2;
    chart_view_.marker_s = furnace_.now_s();
    chart_.draw(canvas, area, furnace_.recording(), lanes, furnace_.events(), chart_view_, beside);
    const std::uint64_t marked = furnace_.tick_at(chart_view_.marker_s.value_or(furnace_.now_s()));
    if (marked != furnace_.world().tick) {
        look_at(marked);
    }
}

} // namespace lightoff::explore
