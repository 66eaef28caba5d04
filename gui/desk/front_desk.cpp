// SPDX-License-Identifier: MIT
#include "gui/desk/front_desk.hpp"

#include "gui/canvas/controls.hpp"
#include "gui/canvas/fills.hpp"
#include "gui/canvas/flow.hpp"
#include "gui/canvas/layout_probe.hpp"
#include "gui/canvas/lettering.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/canvas/tab_order.hpp"
#include "gui/platform/input_queue.hpp"
#include "visit/words.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace lightoff::desk {
namespace {

using namespace canvas;
using lesson::Difficulty;
using lesson::Kind;

constexpr std::array kKinds{Kind::no_heat,  Kind::poor_heat,     Kind::noise,   Kind::smell_or_alarm,
                            Kind::callback, Kind::nothing_wrong, Kind::tune_up, Kind::explore};
constexpr std::array kDifficulties{Difficulty::easy, Difficulty::medium, Difficulty::hard};
/// Design pixels from which on the list and the call chosen stand beside each other.
constexpr float kBesideWide = 900, kBesideHigh = 420;
constexpr std::array<const char*, 4> kDone{"any", "new", "left open", "finished"};

std::string facts_of(const Call& call) {
    return visit::kind_text(call.kind) + "  ·  " + difficulty_text(call.difficulty) + "  ·  " +
           call.how_it_went();
}

/// A head, and words to press beside it; the one pressed, or -1.
int draw_chips(const Canvas& canvas, Rect& rest, std::string_view head, const std::vector<FlowItem>& items) {
    Rect beside = rest;
    Rect label = beside.cut_left(canvas.px(84));
    text_in(canvas, label.cut_top(control_height(canvas)), head, Type::Body, canvas.theme->ink);
    const Flow flow = lay_out_flow(canvas, beside, items);
    rest.cut_top(flow.height + canvas.px(6));
    return draw_flow(canvas, flow, items);
}

/// A row of words of which one, or none, is chosen.
template <class Value, class Values, class Words>
void chips(const Canvas& canvas, Rect& rest, std::string_view head, const Values& values,
           std::optional<Value>& chosen, Words words) {
    std::vector<FlowItem> items{{"any##" + std::string(head), "", !chosen, true, 0, 0}};
    for (const Value value : values)
        items.push_back({words(value), "", chosen == value, true, 0, 0});
    const int pressed = draw_chips(canvas, rest, head, items);
    if (pressed == 0)
        chosen.reset();
    else if (pressed > 0)
        chosen = values[static_cast<std::size_t>(pressed - 1)];
}

/// All of them, or in short where they would take much of the page.
std::string_view cautions_for(const Canvas& canvas, Rect page) {
    const std::string_view all = visit::cautions();
    const bool room = text_size(canvas, all, Type::Secondary, page.width()).y <= page.height() / 8;
    return room ? all : visit::cautions_in_short();
}

/// What the customer said, pinned on.
void draw_note(sheet::Column& column, const Call& call) {
    const Canvas& canvas = column.canvas();
    const Theme& theme = *canvas.theme;
    const float wrap = column.width() - canvas.px(48);
    const float title = text_size(canvas, call.title, Type::Heading, wrap).y;
    const float complaint = text_size(canvas, call.complaint, Type::Body, wrap).y;
    const float facts = text_size(canvas, facts_of(call), Type::Secondary, wrap).y;
    const Rect note = column.take(title + complaint + facts + canvas.px(66));
    fill(canvas, note, theme.panel);
    outline(canvas, note, Line::Detail, theme.ink);
    const ImVec2 pin{note.centre().x, note.min.y + canvas.px(14)};
    canvas.list->AddCircleFilled(pin, canvas.px(5), packed(theme.ink));
    Rect inner = note.shrunk(canvas.px(24));
    inner.cut_top(canvas.px(6));
    const auto say = [&](std::string_view words, float height, Type type, Colour colour) {
        const Rect box = inner.cut_top(height);
        paragraph(column.canvas_for(box), box.min, wrap, words, type, colour);
    };
    say(call.title, title, Type::Heading, theme.ink);
    inner.cut_top(canvas.px(6));
    say(call.complaint, complaint, Type::Body, theme.ink);
    inner.cut_top(canvas.px(8));
    say(facts_of(call), facts, Type::Secondary, theme.pencil);
}

} // namespace

void FrontDesk::look_again() {
    const std::string name = calls_.empty() ? std::string() : calls_[chosen_].name;
    problems_.clear();
    calls_ = all_calls(folder_, problems_);
    chosen_ = 0;
    choose(name);
}

void FrontDesk::choose(std::string_view name) {
    for (std::size_t i = 0; i < calls_.size(); ++i)
        if (calls_[i].name == name)
            chosen_ = i;
}

DeskWants FrontDesk::draw(const Canvas& canvas, Rect page) {
    DeskWants wants;
    fill(canvas, page, canvas.theme->ground);
    Rect rest = page.shrunk(canvas.px(18));
    Rect head = rest.cut_top(control_height(canvas));
    const std::vector<FlowItem> items{{"Open a file", "Ctrl O", asks_path_, true, 0, 0},
                                      {"Settings", "Ctrl ,", false, true, 0, 0},
                                      {"End", "Ctrl Q", false, true, 0, 0}};
    const int pressed =
        draw_flow(canvas, lay_out_flow(canvas, head.cut_right(width_of_flow(canvas, items)), items), items);
    if (pressed == 0 || (ImGui::GetIO().KeyCtrl && platform::key_pressed(platform::Key::O)))
        ask_path(!asks_path_);
    wants.settings = pressed == 1;
    wants.close = pressed == 2;
    text_in(canvas, head, "Calls", Type::Title, canvas.theme->ink);
    rest.cut_top(canvas.px(12));
    draw_file(canvas, rest, wants);
    const std::string_view cautions = cautions_for(canvas, rest);
    const float height = text_size(canvas, cautions, Type::Secondary, rest.width()).y;
    paragraph(canvas, rest.cut_bottom(height).min, rest.width(), cautions, Type::Secondary,
              canvas.theme->pencil);
    rest.cut_bottom(canvas.px(12));
    if (rest.width() < canvas.px(kBesideWide) || rest.height() < canvas.px(kBesideHigh)) {
        draw_leaves(canvas, rest, wants);
        return wants;
    }
    Rect right = rest.cut_right(std::round(rest.width() * 0.46F));
    rest.cut_right(canvas.px(26));
    draw_wishes(canvas, rest);
    draw_list(canvas, rest, wants);
    if (!calls_.empty())
        draw_call(canvas, right, wants);
    return wants;
}

/// Where there is no room beside each other: the list, what is looked for in it, and the call, in turns.
void FrontDesk::draw_leaves(const Canvas& canvas, Rect rest, DeskWants& wants) {
    const std::array<std::string_view, 3> names{"All calls", "Find", "This call"};
    leaf_ = static_cast<Leaf>(
        choice(canvas, rest.cut_top(control_height(canvas)), names, static_cast<std::size_t>(leaf_)));
    rest.cut_top(canvas.px(10));
    switch (leaf_) {
    case Leaf::calls:
        draw_said(canvas, rest);
        draw_list(canvas, rest, wants);
        break;
    case Leaf::find:
        draw_wishes(canvas, rest);
        break;
    case Leaf::call:
        if (!calls_.empty())
            draw_call(canvas, rest, wants);
    }
}

void FrontDesk::draw_said(const Canvas& canvas, Rect& rest) const {
    if (said_.empty())
        return;
    const Rect used = paragraph(canvas, rest.min, rest.width(), said_, Type::Body, canvas.theme->alarm);
    rest.cut_top(used.height() + canvas.px(12));
}

/// A call or an attempt that lies elsewhere, by its path.
void FrontDesk::draw_file(const Canvas& canvas, Rect& rest, DeskWants& wants) {
    if (!asks_path_)
        return;
    Rect row = rest.cut_top(control_height(canvas));
    rest.cut_top(canvas.px(12));
    text_in(canvas, row.cut_left(canvas.px(84)), "File", Type::Body, canvas.theme->ink);
    const bool pressed =
        button(canvas, row.cut_right(button_width(canvas, "Open", "Enter")), "Open##file", false, "Enter");
    row.cut_right(canvas.px(10));
    ImGui::SetCursorScreenPos({row.min.x, row.centre().y - ImGui::GetFrameHeight() / 2});
    ImGui::SetNextItemWidth(row.width());
    if (path_takes_focus_)
        ImGui::SetKeyboardFocusHere();
    path_takes_focus_ = false;
    const bool entered =
        ImGui::InputText("##path", path_.data(), path_.size(), ImGuiInputTextFlags_EnterReturnsTrue);
    const Rect field{ImGui::GetItemRectMin(), ImGui::GetItemRectMax()};
    if (canvas.probe != nullptr)
        canvas.probe->add_target(field, "File##field");
    if (path_[0] == '\0') {
        const Rect inner = field.shrunk(canvas.px(10));
        text_in(canvas, {{inner.min.x, field.min.y}, {inner.max.x, field.max.y}},
                longest_that_fits(canvas,
                                  {"path of an attempt (.jsonl) or of a call (.json)",
                                   "path of a .jsonl or .json file", "path of a file"},
                                  Type::Body, inner.width()),
                Type::Body, canvas.theme->pencil);
    }
    if ((entered || pressed) && path_[0] != '\0')
        wants.open = path_.data();
    if (platform::key_pressed(platform::Key::Escape))
        asks_path_ = false;
}

void FrontDesk::draw_wishes(const Canvas& canvas, Rect& rest) {
    Rect row = rest.cut_top(control_height(canvas));
    text_in(canvas, row.cut_left(canvas.px(84)), "Find", Type::Body, canvas.theme->ink);
    ImGui::SetCursorScreenPos({row.min.x, row.centre().y - ImGui::GetFrameHeight() / 2});
    ImGui::SetNextItemWidth(std::min(row.width(), canvas.px(360)));
    ImGui::PushAllowKeyboardFocus(false); // the library's own Tab would come in between
    ImGui::InputText("##find", words_.data(), words_.size());
    ImGui::PopAllowKeyboardFocus();
    tab_stop(true);
    if (canvas.probe != nullptr)
        canvas.probe->add_target({ImGui::GetItemRectMin(), ImGui::GetItemRectMax()}, "Find##field");
    wish_.words = words_.data();
    rest.cut_top(canvas.px(6));
    chips(canvas, rest, "Kind", kKinds, wish_.kind, [](Kind kind) { return visit::kind_text(kind); });
    chips(canvas, rest, "How hard", kDifficulties, wish_.difficulty, difficulty_text);
    std::vector<FlowItem> items;
    for (std::size_t i = 0; i < kDone.size(); ++i)
        items.push_back(
            {std::string(kDone[i]) + "##done", "", static_cast<std::size_t>(wish_.done) == i, true, 0, 0});
    if (const int pressed = draw_chips(canvas, rest, "Done", items); pressed >= 0)
        wish_.done = static_cast<Wish::Done>(pressed);
    rest.cut_top(canvas.px(6));
}

void FrontDesk::draw_list(const Canvas& canvas, Rect area, DeskWants& wants) {
    segment(canvas, area.min, {area.max.x, area.min.y}, Line::Outline, canvas.theme->ink);
    area.cut_top(canvas.px(2));
    ImGui::SetCursorScreenPos(area.min);
    ImGui::BeginChild("calls", area.size(), false, ImGuiWindowFlags_NoBackground);
    const Canvas list = canvas.here();
    const float row = line_height(canvas, Type::Body) + line_height(canvas, Type::Secondary) + canvas.px(14);
    const float width = area.width() - ImGui::GetStyle().ScrollbarSize;
    ImVec2 at = ImGui::GetCursorScreenPos();
    std::size_t shown = 0;
    for (std::size_t i = 0; i < calls_.size(); ++i) {
        const Call& call = calls_[i];
        if (!fits(call, wish_))
            continue;
        ++shown;
        const Rect box = rect_at(at, {width, row});
        const Canvas inside = in_view(list, box, area);
        at.y += row;
        const bool pressed = press_area(call.name.c_str(), box);
        tab_stop();
        const bool keyboard = has_keyboard();
        if (inside.probe != nullptr)
            inside.probe->add_target(box, call.title);
        if (keyboard && enter_pressed())
            (call.kind == Kind::explore ? wants.explore : wants.take) = call.name;
        if (pressed || keyboard) {
            if (chosen_ == i && ImGui::IsMouseDoubleClicked(ImGuiMouseButton_Left))
                (call.kind == Kind::explore ? wants.explore : wants.take) = call.name;
            if (pressed)
                leaf_ = Leaf::call;
            chosen_ = i;
            said_.clear();
        }
        if (i == chosen_ || ImGui::IsItemHovered())
            fill(inside, box, i == chosen_ ? inside.theme->ink : inside.theme->panel);
        if (keyboard)
            outline(inside, box.shrunk(canvas.px(2)), Line::Outline,
                    i == chosen_ ? inside.theme->ground : inside.theme->ink);
        Rect words = box.shrunk(canvas.px(6));
        words.cut_left(canvas.px(4));
        const bool reversed = i == chosen_;
        text_in(inside, words.cut_top(line_height(canvas, Type::Body)), call.title, Type::Body,
                reversed ? inside.theme->ground : inside.theme->ink);
        text_in(inside, words, facts_of(call), Type::Secondary,
                reversed ? inside.theme->panel : inside.theme->pencil);
        if (!reversed)
            segment(inside, {box.min.x, box.max.y}, box.max, Line::Rule, inside.theme->rule);
    }
    if (shown == 0)
        text(list, at + ImVec2{canvas.px(10), canvas.px(10)}, "No call is like that.", Type::Body,
             list.theme->ink);
    for (const std::string& problem : problems_) {
        const Rect used =
            paragraph(in_view(list, {at, at}, {{0, 0}, {0, -1}}), at + ImVec2{canvas.px(10), canvas.px(8)},
                      width - canvas.px(20), problem, Type::Secondary, list.theme->alarm);
        at.y += used.height() + canvas.px(8);
    }
    ImGui::SetCursorScreenPos(at);
    ImGui::Dummy({1, 1});
    ImGui::EndChild();
}

/// The customer's note, and what can be done about it.
void FrontDesk::draw_call(const Canvas& canvas, Rect area, DeskWants& wants) {
    const Call& call = calls_[chosen_];
    const float margin = std::round(canvas.px(6)); // of a column: its bar stands in the page's own margin
    area = area.shrunk(-margin);
    area.max.x += ImGui::GetStyle().ScrollbarSize;
    area.max.y -= margin;
    sheet::Column column(canvas, area, "call");
    draw_note(column, call);
    column.gap(16);

    std::vector<FlowItem> items;
    const files::KeptAttempt* open = call.open_attempt();
    if (open != nullptr)
        items.push_back({"Go on where you left", "", false, true, 0, 0});
    if (call.kind != Kind::explore)
        items.push_back(
            {open != nullptr ? "Begin anew" : "Take the call", "Enter", open == nullptr, true, 1, 0});
    items.push_back({"Look into a furnace like it", "", call.kind == Kind::explore, true, 2, 0});
    const Rect width = column.take(0);
    const Rect buttons = column.take(lay_out_flow(canvas, width, items).height);
    const int pressed = draw_flow(column.canvas_for(buttons), lay_out_flow(canvas, buttons, items), items);
    if (pressed >= 0) {
        const std::string& words = items[static_cast<std::size_t>(pressed)].words;
        if (words == "Go on where you left")
            wants.go_on = open->path;
        else if (words == "Look into a furnace like it")
            wants.explore = call.kind == Kind::explore ? call.name : "call-for-heat";
        else
            wants.take = call.name;
    }
    if (!ImGui::GetIO().WantTextInput && !ImGui::IsAnyItemActive() &&
        platform::key_pressed(platform::Key::Enter) && !ImGui::GetIO().NavVisible)
        (call.kind == Kind::explore ? wants.explore : wants.take) = call.name;
    column.gap(16);
    if (!said_.empty()) {
        column.alarm(said_);
        column.gap(12);
    }
    draw_attempts(column, call, wants);
}

void FrontDesk::draw_attempts(sheet::Column& column, const Call& call, DeskWants& wants) {
    if (call.attempts.empty())
        return;
    column.words("Your attempts");
    column.gap(4);
    for (auto kept = call.attempts.rbegin(); kept != call.attempts.rend(); ++kept) {
        std::array<char, 64> mark{};
        if (kept->mark)
            std::snprintf(mark.data(), mark.size(), "mark %.1f, safety %.0f", *kept->mark, *kept->safety);
        const std::string state = !kept->problem.empty() ? kept->problem
                                  : kept->mark           ? std::string(mark.data())
                                  : kept->ended
                                      ? std::string("finished")
                                      : "left open after " + std::to_string(kept->actions) + " actions";
        const std::string words = kept->name + "  ·  " + state;
        const Canvas& canvas = column.canvas();
        const float verb_width = button_width(canvas, "Debrief") + canvas.px(8);
        const float wrap = column.width() - verb_width;
        const float height = text_size(canvas, words, Type::Secondary, wrap).y;
        Rect row = column.take(std::max(control_height(canvas), height));
        column.gap(4);
        const Canvas inside = column.canvas_for(row);
        const Rect verb = row.cut_right(verb_width);
        if (kept->problem.empty() && button(inside,
                                            rect_at({verb.min.x + canvas.px(8), verb.min.y},
                                                    {verb.width() - canvas.px(8), control_height(canvas)}),
                                            (kept->ended ? "Debrief##" : "Go on##") + kept->name))
            (kept->ended ? wants.debrief : wants.go_on) = kept->path;
        paragraph(inside, {row.min.x, row.centre().y - height / 2}, wrap, words, Type::Secondary,
                  kept->problem.empty() ? inside.theme->ink : inside.theme->alarm);
    }
}

} // namespace lightoff::desk
