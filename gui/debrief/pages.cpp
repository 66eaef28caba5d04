// SPDX-License-Identifier: MIT
#include "gui/debrief/pages.hpp"

#include "gui/canvas/controls.hpp"
#include "gui/canvas/fills.hpp"
#include "gui/canvas/flow.hpp"
#include "gui/canvas/layout_probe.hpp"
#include "gui/canvas/lettering.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/canvas/tab_order.hpp"
#include "gui/debrief/keys.hpp"
#include "gui/debrief/stairs.hpp"
#include "report/words.hpp"
#include "visit/words.hpp"

#include <algorithm>
#include <array>

namespace lightoff::debrief {
namespace {

using namespace canvas;
using platform::Key;

// ---- words from the top of a page downwards

void say(const Canvas& canvas, Rect& area, std::string_view words, Type type, Colour colour, float gap = 8) {
    const Rect used = paragraph(canvas, area.min, area.width(), words, type, colour);
    area.cut_top(used.height() + canvas.px(gap));
}

/// The largest type in which a sentence takes no more than two lines and a quarter of the page.
Type type_for(const Canvas& canvas, std::string_view words, Rect area) {
    for (const Type type : {Type::Title, Type::Heading}) {
        const float height = text_size(canvas, words, type, area.width()).y;
        if (height <= 2.1F * line_height(canvas, type) && height <= 0.25F * area.height())
            return type;
    }
    return Type::Body;
}

/// A row of buttons with their keys; the index of the one asked for by pointer or key, or -1.
int commands(const Canvas& canvas, Rect& area, const std::vector<std::pair<std::string, Key>>& offered,
             const std::vector<std::string>& names) {
    std::vector<FlowItem> items;
    for (std::size_t i = 0; i < offered.size(); ++i)
        items.push_back({offered[i].first, names[i], false, true, static_cast<int>(i), 0});
    const Flow flow = lay_out_flow(canvas, area, items);
    int pressed = draw_flow(canvas, flow, items);
    for (std::size_t i = 0; i < offered.size(); ++i)
        if (!ImGui::GetIO().KeyCtrl && page_key(offered[i].second))
            pressed = static_cast<int>(i);
    area.cut_top(flow.height + canvas.px(10));
    return pressed;
}

// ---- lists

struct Cell {
    std::string words;
    bool figures = false;
};
struct ListRow {
    std::vector<Cell> cells;
    std::optional<std::uint64_t> tick; ///< pressing it looks at that moment
    bool alarm = false;
};
struct ListColumn {
    float width = 0; ///< pixels; 0: what is left, broken into lines
};

/// A list in its columns.
struct List {
    std::vector<ListColumn> columns;
    std::vector<ListRow> rows;
};

/// Widths of a list's columns where it is drawn, and the gap between them, in pixels.
struct Widths {
    std::vector<float> of;
    float gap;
};

Widths widths_in(const Canvas& canvas, const List& list, float whole) {
    Widths widths{{}, canvas.px(14)};
    float rest = whole - widths.gap * static_cast<float>(list.columns.size() - 1);
    for (const ListColumn& column : list.columns)
        rest -= column.width;
    rest = std::max(rest, canvas.px(120));
    for (const ListColumn& column : list.columns)
        widths.of.push_back(column.width > 0 ? column.width : rest);
    return widths;
}

float row_height(const Canvas& canvas, const ListRow& row, const Widths& widths) {
    float height = line_height(canvas, Type::Secondary);
    for (std::size_t i = 0; i < row.cells.size(); ++i)
        height = std::max(height, text_size(canvas, row.cells[i].words, Type::Secondary, widths.of[i]).y);
    return std::max(row.tick ? 24.0F : 0.0F, height + canvas.px(7));
}

/// The first row shown, after the wheel; the wheel is the page's where the page itself scrolls.
std::size_t wheeled(const Rect& area, std::size_t first, std::size_t rows) {
    const float wheel = ImGui::GetIO().MouseWheel;
    if (!ImGui::IsMouseHoveringRect(area.min, area.max) || ImGui::GetScrollMaxY() > 0)
        return first;
    if (wheel < 0 && first + 1 < rows)
        return first + 1;
    return wheel > 0 && first > 0 ? first - 1 : first;
}

void draw_cells(const Canvas& canvas, Rect box, const ListRow& row, const Widths& widths) {
    const Colour colour = row.alarm ? canvas.theme->alarm : canvas.theme->ink;
    const float y = box.min.y + canvas.px(4);
    float x = box.min.x;
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
        const float width = widths.of[i];
        if (row.cells[i].figures)
            text(canvas, {x + width, y}, row.cells[i].words, Type::Secondary, colour, Align::End);
        else if (!row.cells[i].words.empty())
            paragraph(canvas, {x, y}, width, row.cells[i].words, Type::Secondary, colour);
        x += width + widths.gap;
    }
}

/// A row that leads to a moment can be pressed; whether it was.
bool press_row(const Canvas& canvas, Rect box, std::size_t index, bool here) {
    const Theme& theme = *canvas.theme;
    ImGui::PushID(static_cast<int>(index));
    const bool clicked = press_area("row", box);
    tab_stop();
    const bool pressed = clicked || enter_pressed();
    if (canvas.probe != nullptr)
        canvas.probe->add_target(box, "a row");
    if (ImGui::IsItemHovered() || here)
        fill(canvas, box, theme.panel);
    if (has_keyboard())
        outline(canvas, box, Line::Outline, theme.ink);
    ImGui::PopID();
    return pressed;
}

/// Up and down through a list of which rows first..end-1 are shown.
void draw_paging(const Canvas& canvas, Rect foot, std::size_t& first, std::size_t end, std::size_t rows) {
    const std::size_t shown = std::max(end, first + 1) - first;
    const std::string words =
        std::to_string(first + 1) + "–" + std::to_string(first + shown) + " of " + std::to_string(rows);
    const std::size_t step = std::max<std::size_t>(1, shown - 1);
    if (button(canvas, foot.cut_left(button_width(canvas, "Up")), "Up"))
        first -= std::min(first, step);
    foot.cut_left(canvas.px(8));
    if (button(canvas, foot.cut_left(button_width(canvas, "Down")), "Down") && end < rows)
        first += step;
    foot.cut_left(canvas.px(12));
    text_in(canvas, foot, words, Type::Secondary, canvas.theme->pencil);
}

/// Rows as many as fit whole; wheel and buttons go on to the others. The index of the row pressed, or -1.
int draw_list(const Canvas& canvas, Rect area, Rect foot, const List& list, std::size_t& first,
              std::optional<std::uint64_t> here) {
    const Theme& theme = *canvas.theme;
    const std::vector<ListRow>& rows = list.rows;
    const Widths widths = widths_in(canvas, list, area.width());
    float all = 0;
    for (const ListRow& row : rows)
        all += row_height(canvas, row, widths);
    const bool needs_more = all > area.height();
    first = needs_more ? wheeled(area, std::min(first, rows.size() - 1), rows.size()) : 0;
    int pressed = -1;
    std::size_t end = first;
    for (; end < rows.size(); ++end) {
        const ListRow& row = rows[end];
        const float height = row_height(canvas, row, widths);
        if (area.height() < height)
            break;
        const Rect box = area.cut_top(height);
        if (row.tick && press_row(canvas, box, end, row.tick == here))
            pressed = static_cast<int>(end);
        draw_cells(canvas, box, row, widths);
        segment(canvas, {box.min.x, box.max.y}, box.max, Line::Rule, mix(theme.ground, theme.rule, 0.6F));
    }
    if (needs_more)
        draw_paging(canvas, foot, first, end, rows.size());
    return pressed;
}

float width_of(const Canvas& canvas, std::string_view widest) {
    return text_size(canvas, widest, Type::Secondary).x + canvas.px(2);
}

// ---- the pages

void draw_frozen(const Canvas& canvas, Rect area, const Model& model, DebriefView& view) {
    const Theme& theme = *canvas.theme;
    const bench::HazardEvent& event = *report::frozen_moment(model.site(), model.story());
    const bench::HazardRow& row = model.site().hazards[static_cast<std::size_t>(event.hazard)];
    const std::string title =
        "Stopped at " + report::clock(model.story(), event.tick) + ". " + row.title + ".";
    say(canvas, area, title, type_for(canvas, title, area), theme.alarm, 10);
    say(canvas, area, "Where: " + event.about + ".", Type::Body, theme.ink, 10);
    say(canvas, area, row.why, Type::Body, theme.ink, 14);
    say(canvas, area, "The furnace stands as it was at that moment.", Type::Secondary, theme.pencil, 10);
    if (commands(canvas, area, {{"That moment##frozen", Key::M}}, {"M"}) == 0)
        view.tick = event.tick;
}

void draw_moment(const Canvas& canvas, Rect area, const Model& model, DebriefView& view) {
    const Theme& theme = *canvas.theme;
    say(canvas, area, "When did you know?", Type::Title, theme.ink, 8);
    say(canvas, area,
        "Before any score: go along the time line to the moment at which you were sure what was wrong, and "
        "mark it. "
        "The arrows move by a second, with Shift to the next thing that happened.",
        Type::Body, theme.ink, 14);
    const Rect clock =
        text(canvas, area.min, report::clock(model.story(), view.tick), Type::Display, theme.ink);
    const float beside = clock.max.x + canvas.px(18);
    if (view.knew_tick)
        text_in(canvas, {{beside, clock.min.y}, {area.max.x, clock.max.y}},
                "marked: " + report::clock(model.story(), *view.knew_tick), Type::Body, theme.pencil);
    area.cut_top(clock.height() + canvas.px(10));
    const int pressed =
        commands(canvas, area, {{"I knew here", Key::K}, {"I was never sure", Key::U}}, {"K", "U"});
    if (pressed == 0)
        mark_moment(model, view, view.tick);
    if (pressed == 1)
        mark_moment(model, view, std::nullopt);
}

/// What the last step of the staircase was by the moment looked at.
std::string step_words(const Model& model, std::uint64_t tick) {
    const evidence::Step* last = nullptr;
    for (const evidence::Step& step : model.debrief.grade.staircase)
        if (step.tick <= tick)
            last = &step;
    if (last == nullptr)
        return std::to_string(model.debrief.fitting_on_arrival) + " causes fit.";
    return report::clock(model.story(), last->tick) + "  " +
           report::step_text(model.site(), model.debrief, *last) + ": " +
           std::to_string(last->ruled_out.size()) + " ruled out, " + std::to_string(last->still_fitting) +
           " left.";
}

void draw_staircase(const Canvas& canvas, Rect area, const Model& model, DebriefView& view) {
    const Theme& theme = *canvas.theme;
    std::string words = report::knew_text(model.site(), model.debrief);
    if (view.knew_tick)
        words += " You marked " + report::clock(model.story(), *view.knew_tick) + ".";
    say(canvas, area, words, type_for(canvas, words, area), theme.ink, 10);
    const std::string step = step_words(model, view.tick);
    const float height = text_size(canvas, step, Type::Secondary, area.width()).y;
    const Rect foot = area.cut_bottom(height + canvas.px(4));
    paragraph(canvas, foot.min, foot.width(), step, Type::Secondary, theme.ink);
    draw_stairs(canvas, area, model, view);
}

void draw_better(const Canvas& canvas, Rect area, Rect foot, const Model& model, DebriefView& view,
                 DebriefWants& wants) {
    const Theme& theme = *canvas.theme;
    if (!model.debrief.better) {
        say(canvas, area, "One better test", Type::Title, theme.ink, 8);
        say(canvas, area, report::kNoBetter, Type::Body, theme.ink);
        return;
    }
    const lesson::BetterTest& better = *model.debrief.better;
    const std::string choice = report::choice_text(model.site(), model.debrief);
    const bool low = area.height() < canvas.px(260);
    say(canvas, area, choice, low ? Type::Secondary : Type::Body, theme.ink, low ? 4 : 8);
    const std::string offer = report::offer_text(better);
    say(canvas, area, offer, type_for(canvas, offer, area), theme.ink, 10);
    const int pressed = commands(
        canvas, area, {{"Try it from here, ungraded", Key::F}, {"That moment##better", Key::M}}, {"F", "M"});
    if (pressed == 0)
        wants.try_from = better.tick;
    if (pressed == 1)
        view.tick = better.made_tick;
    const std::vector<std::string> answers = report::answers_of(better.offer);
    List list{{{area.width() * 0.4F}, {width_of(canvas, "100")}, {0}}, {}};
    for (std::size_t i = 0; i < answers.size(); ++i) {
        const auto& causes = better.offer.meanings[i].causes;
        list.rows.push_back({{{answers[i], false},
                              {std::to_string(causes.size()), true},
                              {report::causes_text(model.site(), causes, 3), false}},
                             std::nullopt,
                             false});
    }
    draw_list(canvas, area, foot, list, view.first_row, std::nullopt);
}

void draw_marks(const Canvas& canvas, Rect& area, const lesson::Grade& grade) {
    const Theme& theme = *canvas.theme;
    const float line = line_height(canvas, Type::Display);
    Rect band = area.cut_top(line + canvas.px(8));
    const auto figure_and_words = [&](const std::string& number, const char* words) {
        const Rect used = text(canvas, band.min, number, Type::Display, theme.ink);
        band.cut_left(used.width() + canvas.px(8));
        const float under = used.max.y - canvas.px(7) - line_height(canvas, Type::Body);
        const Rect beside = text(canvas, {band.min.x, under}, words, Type::Body, theme.pencil);
        band.cut_left(beside.width() + canvas.px(32));
    };
    figure_and_words(report::decimal(grade.mark, 1), "of 100");
    segment(canvas, {band.min.x - canvas.px(16), band.min.y + canvas.px(6)},
            {band.min.x - canvas.px(16), band.max.y - canvas.px(8)}, Line::Rule, theme.pencil);
    figure_and_words(report::decimal(grade.safety, 0), "safety, stands apart");
}

void draw_points(const Canvas& canvas, Rect area, Rect foot, const Model& model, DebriefView& view) {
    const Theme& theme = *canvas.theme;
    const lesson::Grade& grade = model.debrief.grade;
    draw_marks(canvas, area, grade);
    say(canvas, area, "What was wrong: " + grade.cause + ".", Type::Secondary, theme.ink, 4);
    List list{
        {{width_of(canvas, "+100.0")}, {width_of(canvas, "of 100.0")}, {width_of(canvas, "100:00")}, {0}},
        {}};
    for (const lesson::Cap& cap : grade.caps)
        list.rows.push_back({{{"≤ " + report::decimal(cap.most, 0), true},
                              {"", true},
                              {report::clock(model.story(), cap.tick), true},
                              {cap.text, false}},
                             cap.tick,
                             true});
    for (const lesson::Line& line : grade.lines)
        list.rows.push_back({{{report::points_text(line.points), true},
                              {line.of > 0.0 ? "of " + report::decimal(line.of, 1) : "", true},
                              {report::clock(model.story(), line.tick), true},
                              {line.text, false}},
                             line.tick,
                             line.points < 0.0});
    const int pressed = draw_list(canvas, area, foot, list, view.first_row, view.tick);
    if (pressed >= 0)
        view.tick = *list.rows[static_cast<std::size_t>(pressed)].tick;
}

void draw_next(const Canvas& canvas, Rect area, const Model& model, DebriefWants& wants) {
    const Theme& theme = *canvas.theme;
    const bool has_twin = !model.twin.name.empty();
    say(canvas, area, has_twin ? "Next: the same symptom, another cause" : "Next", Type::Heading, theme.ink,
        6);
    if (has_twin) {
        say(canvas, area, model.twin.title, Type::Body, theme.ink, 2);
        say(canvas, area, model.twin.complaint, Type::Secondary, theme.ink, 10);
    }
    std::vector<std::pair<std::string, Key>> offered;
    std::vector<std::string> keys;
    const auto offer = [&](const char* words, Key key, const char* name) {
        offered.emplace_back(words, key);
        keys.emplace_back(name);
    };
    if (has_twin)
        offer("Take this call", Key::C, "C");
    offer("The same call again", Key::R, "R");
    offer("Save as a page", Key::H, "H");
    offer("Save as PDF", Key::P, "P");
    const int pressed = commands(canvas, area, offered, keys);
    const Key asked = pressed < 0 ? Key::Count : offered[static_cast<std::size_t>(pressed)].second;
    if (asked == Key::C)
        wants.take = model.twin.name;
    wants.again = wants.again || asked == Key::R;
    wants.save_html = wants.save_html || asked == Key::H;
    wants.save_pdf = wants.save_pdf || asked == Key::P;
    for (const std::string_view words : {report::kProof, visit::cautions_in_short()})
        if (text_size(canvas, words, Type::Minimum, area.width()).y <= area.height())
            say(canvas, area, words, Type::Minimum, theme.pencil, 4);
}

} // namespace

void draw_page(const Canvas& canvas, Rect area, Rect foot, const Model& model, DebriefView& view,
               DebriefWants& wants) {
    switch (view.page) {
    case Page::frozen:
        return draw_frozen(canvas, area, model, view);
    case Page::moment:
        return draw_moment(canvas, area, model, view);
    case Page::stairs:
        return draw_staircase(canvas, area, model, view);
    case Page::better:
        return draw_better(canvas, area, foot, model, view, wants);
    case Page::points:
        return draw_points(canvas, area, foot, model, view);
    case Page::next:
        return draw_next(canvas, area, model, wants);
    }
}

void mark_moment(const Model& model, DebriefView& view, std::optional<std::uint64_t> tick) {
    view.knew_tick = tick;
    const std::vector<Page> pages = pages_of(model);
    const auto here = std::find(pages.begin(), pages.end(), Page::moment);
    turn_to(model, view, static_cast<std::size_t>(here - pages.begin()) + 1);
}

void turn_to(const Model& model, DebriefView& view, std::size_t index) {
    const std::vector<Page> pages = pages_of(model);
    index = std::min(index, pages.size() - 1);
    view.page = pages[index];
    view.show = DebriefView::Show::page;
    view.reached = std::max(view.reached, index);
    view.first_row = 0;
    if (view.page == Page::stairs && model.debrief.knew)
        view.tick = model.debrief.knew->tick;
    if (view.page == Page::better && model.debrief.better)
        view.tick = model.debrief.better->made_tick;
}

} // namespace lightoff::debrief
