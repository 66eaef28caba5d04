// SPDX-License-Identifier: MIT
#include "gui/debrief/debrief.hpp"

#include "gui/canvas/controls.hpp"
#include "gui/canvas/flow.hpp"
#include "gui/canvas/lettering.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/canvas/style.hpp"
#include "gui/debrief/keys.hpp"
#include "gui/debrief/pages.hpp"
#include "gui/debrief/timeline.hpp"
#include "report/words.hpp"

#include <algorithm>
#include <array>

namespace lightoff::debrief {
namespace {

using namespace canvas;
using platform::Key;

/// Design pixels of width from which on the furnace stands beside the page.
constexpr float kFurnaceBeside = 900;
/// Shares of the page.
constexpr float kTimelineShare = 0.44F, kPageShare = 0.56F;
constexpr float kLow = 600, kLowTimelineShare = 0.36F; ///< a page lower than so many design pixels
constexpr float kLeastTimeline = 180;                  ///< design pixels

std::size_t index_of(const Model& model, Page page) {
    const std::vector<Page> pages = pages_of(model);
    return static_cast<std::size_t>(std::find(pages.begin(), pages.end(), page) - pages.begin());
}

/// Pages by number and name: those reached, and the next one, so that each comes in its turn.
void draw_head(const Canvas& canvas, Rect& rest, const Model& model, DebriefView& view, DebriefWants& wants) {
    const std::vector<Page> pages = pages_of(model);
    std::vector<FlowItem> items;
    for (std::size_t i = 0; i < pages.size() && i <= view.reached + 1; ++i)
        items.push_back(
            {std::to_string(i + 1) + "  " + name_of(pages[i]), "", pages[i] == view.page, true, 0, 0});
    items.push_back({"Leave", "Esc", false, true, 1, 0});
    const float buttons = width_of_flow(canvas, items);
    const std::string& title = model.bundle->scenario.title;
    const float title_width = text_size(canvas, title, Type::Heading).x + canvas.px(24);
    const bool beside = title_width + buttons <= rest.width();
    const float height = control_height(canvas);
    if (beside) {
        Rect row = rest.cut_top(height);
        text_in(canvas, row.cut_left(title_width), title, Type::Heading, canvas.theme->ink);
        row.min.x = row.max.x - buttons;
        const int pressed = draw_flow(canvas, lay_out_flow(canvas, row, items), items);
        if (pressed >= 0 && static_cast<std::size_t>(pressed) + 1 < items.size())
            turn_to(model, view, static_cast<std::size_t>(pressed));
        wants.leave = wants.leave || static_cast<std::size_t>(pressed) + 1 == items.size();
    } else {
        const Flow flow = lay_out_flow(canvas, rest, items);
        const int pressed = draw_flow(canvas, flow, items);
        rest.cut_top(flow.height);
        if (pressed >= 0 && static_cast<std::size_t>(pressed) + 1 < items.size())
            turn_to(model, view, static_cast<std::size_t>(pressed));
        wants.leave = wants.leave || static_cast<std::size_t>(pressed) + 1 == items.size();
    }
    rest.cut_top(canvas.px(8));
    segment(canvas, rest.min, {rest.max.x, rest.min.y}, Line::Rule, canvas.theme->pencil);
    rest.cut_top(canvas.px(12));
}

/// Back and on, at the foot of the page. Returns what is left of their row.
Rect draw_turning(const Canvas& canvas, Rect& page, const Model& model, DebriefView& view) {
    const std::size_t here = index_of(model, view.page);
    const std::size_t count = pages_of(model).size();
    Rect row = page.cut_bottom(control_height(canvas));
    page.cut_bottom(canvas.px(8));
    const bool can_go_on = here + 1 < count;
    if (here > 0) {
        if (button(canvas, row.cut_left(button_width(canvas, "Back", "B")), "Back", false, "B") ||
            page_key(Key::B))
            turn_to(model, view, here - 1);
        row.cut_left(canvas.px(8));
    }
    if (can_go_on) {
        const Rect box = row.cut_left(button_width(canvas, "On", "N"));
        if (button(canvas, box, "On", false, "N") || page_key(Key::N))
            turn_to(model, view, here + 1);
    }
    row.cut_left(canvas.px(8));
    if (button(canvas, row.cut_left(button_width(canvas, "Lanes", "T")), "Lanes", view.picker.open, "T") ||
        page_key(Key::T))
        view.picker.open = !view.picker.open;
    row.cut_left(canvas.px(24));
    return row;
}

} // namespace

const char* name_of(Page page) {
    constexpr std::array<const char*, 6> kNames{"Stop work",   "When you knew", "Staircase",
                                                "Better test", "Points",        "Next"};
    return kNames[static_cast<std::size_t>(page)];
}

std::vector<Page> pages_of(const Model& model) {
    std::vector<Page> pages;
    if (report::frozen_moment(model.site(), model.story()) != nullptr)
        pages.push_back(Page::frozen);
    if (model.debrief.has_staircase)
        pages.insert(pages.end(), {Page::moment, Page::stairs, Page::better});
    pages.insert(pages.end(), {Page::points, Page::next});
    return pages;
}

DebriefView::DebriefView(const Model& model)
    : page(pages_of(model).front()), tick(model.story().arrived_tick) {
    chart_view.span_s = model.length_s();
    chart_view.end_s = model.length_s();
    chart_view.follow = false;
    for (std::size_t i = 0; i < std::min(kUsualLanes, model.lanes.size()); ++i)
        picker.chosen.push_back(i);
    if (const bench::HazardEvent* event = report::frozen_moment(model.site(), model.story()))
        tick = event->tick;
}

void draw_debrief(const Canvas& outside, Rect area, const Model& model, DebriefView& view,
                  DebriefWants& wants) {
    ImGui::SetCursorScreenPos(area.min);
    // Arrows scrub here; they don't go from button to button.
    ImGui::BeginChild("debrief", area.size(), false,
                      ImGuiWindowFlags_NoBackground | ImGuiWindowFlags_NoNavInputs |
                          ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    const Canvas canvas = outside.here();
    scrub_by_keys(model, view);
    if (page_key(Key::Escape))
        wants.leave = true;
    Rect rest = area.shrunk(canvas.px(14));
    draw_head(canvas, rest, model, view, wants);
    const bool low = rest.height() / canvas.scale < kLow;
    const float share = low ? kLowTimelineShare : kTimelineShare;
    view.chart_view.flag_rows = low ? 1 : 3;
    const float timeline = std::max(canvas.px(kLeastTimeline), std::round(rest.height() * share));
    draw_timeline(canvas, rest.cut_bottom(timeline), model, view);
    rest.cut_bottom(canvas.px(12));
    if (rest.width() / canvas.scale >= kFurnaceBeside) {
        Rect page = rest.cut_left(std::round(rest.width() * kPageShare));
        rest.cut_left(canvas.px(28));
        draw_now(canvas, rest, model, view.now, view.tick);
        rest = page;
    }
    const Rect foot = draw_turning(canvas, rest, model, view);
    draw_page(canvas, rest, foot, model, view, wants);
    ImGui::EndChild();
}

void draw_waiting(const Canvas& canvas, Rect area, const std::string& words, DebriefWants& wants) {
    Rect rest = area.shrunk(canvas.px(14));
    const float height = line_height(canvas, Type::Title) + line_height(canvas, Type::Body) +
                         control_height(canvas) + canvas.px(40);
    rest.cut_top(std::max(0.0F, (rest.height() - height) * 0.4F));
    rest.cut_left(std::max(0.0F, (rest.width() - canvas.px(640)) / 2));
    const Rect title = paragraph(canvas, rest.min, rest.width(), "Looking back at your work", Type::Title,
                                 canvas.theme->ink);
    rest.cut_top(title.height() + canvas.px(10));
    const Rect told = paragraph(canvas, rest.min, rest.width(), words, Type::Body, canvas.theme->pencil);
    rest.cut_top(told.height() + canvas.px(18));
    if (button(canvas, rect_at(rest.min, {button_width(canvas, "Leave", "Esc"), control_height(canvas)}),
               "Leave", false, "Esc") ||
        page_key(Key::Escape))
        wants.leave = true;
}

} // namespace lightoff::debrief
