// SPDX-License-Identifier: MIT
#include "gui/debrief/debrief.hpp"

#include "gui/canvas/controls.hpp"
#include "gui/canvas/flow.hpp"
#include "gui/canvas/lettering.hpp"
#include "gui/canvas/scrolled.hpp"
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
/// Under the head there must be so many design pixels of height for page and timeline together, and a page
/// alone has so many, scrolling.
constexpr float kTogether = 440, kLeastContent = 300;

std::size_t index_of(const Model& model, Page page) {
    const std::vector<Page> pages = pages_of(model);
    return static_cast<std::size_t>(std::find(pages.begin(), pages.end(), page) - pages.begin());
}

std::size_t end_of_turns(const Model& model) {
    return pages_of(model).size();
}

void rule_under_head(const Canvas& canvas, Rect& rest) {
    rest.cut_top(canvas.px(8));
    segment(canvas, rest.min, {rest.max.x, rest.min.y}, Line::Rule, canvas.theme->pencil);
    rest.cut_top(canvas.px(12));
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
    Rect row = rest;
    if (title_width + buttons <= rest.width()) {
        row = rest.cut_top(control_height(canvas));
        text_in(canvas, row.cut_left(title_width), title, Type::Heading, canvas.theme->ink);
        row.min.x = row.max.x - buttons;
    } else
        rest.cut_top(lay_out_flow(canvas, rest, items).height);
    const int pressed = draw_flow(canvas, lay_out_flow(canvas, row, items), items);
    if (pressed >= 0 && static_cast<std::size_t>(pressed) + 1 < items.size())
        turn_to(model, view, static_cast<std::size_t>(pressed));
    wants.leave = wants.leave || static_cast<std::size_t>(pressed) + 1 == items.size();
    rule_under_head(canvas, rest);
}

/// Back, on, and the recorder's lanes, from the left of a row.
void draw_turning(const Canvas& canvas, Rect& row, const Model& model, DebriefView& view, bool lanes) {
    const std::size_t here = index_of(model, view.page);
    const bool can_go_on = here + 1 < end_of_turns(model);
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
    if (!lanes)
        return;
    if (button(canvas, row.cut_left(button_width(canvas, "Lanes", "T")), "Lanes", view.picker.open, "T") ||
        page_key(Key::T))
        view.picker.open = !view.picker.open;
    row.cut_left(canvas.px(24));
}

/// The head of a low page: back and on, where one is, the way out.
void draw_low_head(const Canvas& canvas, Rect& rest, const Model& model, DebriefView& view,
                   DebriefWants& wants) {
    Rect row = rest.cut_top(control_height(canvas));
    const float leave = button_width(canvas, "Leave", "Esc");
    const Rect place = row.cut_right(leave);
    row.cut_right(canvas.px(12));
    draw_turning(canvas, row, model, view, false);
    row.cut_left(canvas.px(4));
    const std::string number =
        std::to_string(index_of(model, view.page) + 1) + " of " + std::to_string(end_of_turns(model));
    const std::string words = number + "  " + name_of(view.page);
    text_in(canvas, row, longest_that_fits(canvas, {words, number}, Type::Body, row.width()), Type::Body,
            canvas.theme->ink);
    wants.leave = wants.leave || button(canvas, place, "Leave", false, "Esc");
    rule_under_head(canvas, rest);
}

/// Which of those that share a place is to be seen: page, line of time, furnace. V goes on to the next.
void draw_shown(const Canvas& canvas, Rect& rest, bool line_too, bool furnace_too, DebriefView& view) {
    using Show = DebriefView::Show;
    std::vector<Show> shown{Show::page};
    std::vector<FlowItem> items{{"Page", "", view.show == Show::page, true, 0, 0}};
    const auto offer = [&](Show show, const char* words) {
        shown.push_back(show);
        items.push_back({words, "", view.show == show, true, 0, 0});
    };
    if (line_too)
        offer(Show::line, "Time line");
    if (furnace_too)
        offer(Show::furnace, "Furnace");
    const auto at = std::find(shown.begin(), shown.end(), view.show);
    if (at == shown.end())
        view.show = Show::page;
    const std::size_t next =
        at == shown.end() || at + 1 == shown.end() ? 0 : static_cast<std::size_t>(at - shown.begin()) + 1;
    items[next].key = "V";
    Rect row = rest.cut_top(control_height(canvas));
    rest.cut_top(canvas.px(8));
    int pressed = draw_flow(canvas, lay_out_flow(canvas, row, items), items);
    if (page_key(Key::V))
        pressed = static_cast<int>(next);
    if (pressed >= 0)
        view.show = shown[static_cast<std::size_t>(pressed)];
    if (line_too && view.show == Show::line) {
        const Rect box = row.cut_right(button_width(canvas, "Lanes", "T"));
        if (button(canvas, box, "Lanes", view.picker.open, "T") || page_key(Key::T))
            view.picker.open = !view.picker.open;
    }
}

/// On a page too low for page and line of time together: one thing at a time.
void draw_in_turns(const Canvas& canvas, Rect rest, const Model& model, DebriefView& view,
                   DebriefWants& wants) {
    draw_shown(canvas, rest, true, true, view);
    view.chart_view.flag_rows = 1;
    switch (view.show) {
    case DebriefView::Show::line:
        draw_timeline(canvas, rest, model, view);
        break;
    case DebriefView::Show::furnace:
        draw_now(canvas, rest, model, view.now, view.tick);
        break;
    case DebriefView::Show::page: {
        const Scrolled page(canvas, rest, "in turns", canvas.px(kLeastContent), true);
        Rect content = page.content();
        const Rect foot = content.cut_bottom(control_height(canvas));
        content.cut_bottom(canvas.px(8));
        draw_page(page.canvas(), content, foot, model, view, wants);
    }
    }
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
    const float head = control_height(canvas) + canvas.px(20);
    if (rest.height() - head < canvas.px(kTogether)) {
        rest = area.shrunk(canvas.px(2)); // its margin is worth a line of the page
        draw_low_head(canvas, rest, model, view, wants);
        draw_in_turns(canvas, rest, model, view, wants);
        ImGui::EndChild();
        return;
    }
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
        view.show = DebriefView::Show::page;
    } else
        draw_shown(canvas, rest, false, true, view);
    if (view.show == DebriefView::Show::furnace)
        draw_now(canvas, rest, model, view.now, view.tick);
    else {
        Rect foot = rest.cut_bottom(control_height(canvas));
        rest.cut_bottom(canvas.px(8));
        draw_turning(canvas, foot, model, view, true);
        draw_page(canvas, rest, foot, model, view, wants);
    }
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
