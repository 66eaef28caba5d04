// SPDX-License-Identifier: MIT
#include "gui/explore/what_if_page.hpp"

#include "gui/explore/gauge_table.hpp"
#include "gui/explore/parameter_words.hpp"
#include "gui/sheet/column.hpp"
#include "gui/sheet/slider.hpp"
#include "gui/trace/ticks.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace lightoff::explore {
namespace {

using namespace canvas;
using sheet::Column;

/// Design pixels of width from which on two and three columns stand beside each other.
constexpr float kTwoWide = 560, kThreeWide = 880;

/// What the slider's ends stand for, below them.
void draw_ends(Column& column, const faults::Parameter& p) {
    const Rect row = column.take(line_height(column.canvas(), Type::Minimum));
    const Canvas canvas = column.canvas_for(row);
    const std::string left = parameter_text(p, p.apart ? p.healthy : p.low);
    const std::string right = parameter_text(p, p.high);
    text(canvas, row.min, left, Type::Minimum, canvas.theme->pencil);
    text(canvas, {row.max.x, row.min.y}, right, Type::Minimum, canvas.theme->pencil, Align::End);
}

void draw_slider(Column& column, WhatIf& what_if, WhatIfView& view, std::size_t index) {
    const faults::Parameter& p = what_if.parameters()[index];
    const Canvas& canvas = column.canvas();
    const std::string id = std::to_string(index);
    const double value = what_if.value(index);
    column.gap(6);
    column.note(p.part);
    column.words(p.name + ": " + parameter_text(p, value));
    const Rect box = column.take(sheet::slider_height(canvas));
    auto share = static_cast<float>(p.share_of(value));
    const sheet::SliderMarks marks{static_cast<float>(p.share_of(p.healthy)),
                                   static_cast<float>(p.share_of(what_if.value_as_it_is(index)))};
    const float step = p.whole && p.high > p.low ? static_cast<float>(1.0 / (p.high - p.low)) : 0.02F;
    if (sheet::slider(column.canvas_for(box), box, p.name + "##slider" + id, share, marks, step)) {
        const double wanted = p.at(static_cast<double>(share));
        if (wanted != value) {
            view.refusal = what_if.set(index, wanted);
        }
    }
    draw_ends(column, p);
    column.note("as it is " + parameter_text(p, what_if.value_as_it_is(index)) + ", healthy " +
                parameter_text(p, p.healthy));
    column.gap(4);
    const std::array<std::string, 2> words{"Healthy##healthy" + id, "Put away##away" + id};
    const std::optional<std::size_t> pressed = column.buttons(words);
    if (pressed == 0U) {
        view.refusal = what_if.set(index, p.healthy);
    } else if (pressed == 1U) {
        what_if.put_away(index);
    }
}

void draw_sliders(Column& column, RunningFurnace& furnace, WhatIf& what_if, WhatIfView& view) {
    if (what_if.chosen().empty()) {
        column.words("What if?", Type::Heading);
        column.gap(4);
        column.words(
            "Choose a parameter from the list. Its slider turns that number in a second furnace that "
            "runs beside this one from the same moment, with the same hands at work. Readings that "
            "then differ are marked wherever they stand.");
        return;
    }
    if (what_if.exists()) {
        const std::string since = trace::time_label(furnace.seconds(what_if.begins_tick()));
        column.note(what_if.is_there() || furnace.world().tick < what_if.begins_tick()
                        ? "The furnace beside runs since " + since + "."
                        : "The furnace beside is on its way: " +
                              trace::time_label(furnace.seconds(what_if.beside().world().tick)) + ".");
    } else {
        column.note("Turn one, and a second furnace runs beside from this moment on.");
    }
    if (!view.refusal.empty()) {
        column.alarm("Not done: " + view.refusal + ".");
    }
    // A copy: a slider may be put away while they are drawn.
    const std::vector<std::size_t> chosen = what_if.chosen();
    for (const std::size_t index : chosen) {
        draw_slider(column, what_if, view, index);
    }
    column.gap(4);
    if (chosen.size() > 1 && column.button("All healthy")) {
        what_if.all_healthy();
    }
    if (chosen.size() > 1 && column.button("Put all away")) {
        for (const std::size_t index : chosen) {
            what_if.put_away(index);
        }
    }
}

void draw_differences(Column& column, RunningFurnace& furnace, WhatIf& what_if) {
    column.note("What differs by more than a meter can be off, most first");
    column.gap(1);
    column.rule();
    const std::vector<std::size_t> differing = what_if.differing();
    if (differing.empty()) {
        column.gap(4);
        column.words(!what_if.exists()    ? "Nothing runs beside yet."
                     : what_if.is_there() ? "Nothing, so far."
                                          : "Nothing at this moment.");
        return;
    }
    const std::vector<double>& now = furnace.timed().readings();
    std::vector<GaugeRow> rows;
    for (const std::size_t gauge : differing) {
        rows.push_back({gauge, now[gauge], now[gauge], false});
    }
    draw_gauges(column, furnace.gauges(), rows, what_if.beside().readings());
}

void draw_choice(Column& column, WhatIf& what_if, WhatIfView& view) {
    if (view.entries.empty()) {
        view.entries = parameter_entries(what_if.parameters());
    }
    for (sheet::Entry& entry : view.entries) {
        entry.chosen = what_if.is_chosen(static_cast<std::size_t>(entry.value));
    }
    const std::string typed = view.search;
    const std::optional<std::size_t> picked =
        sheet::pick_list(column, "parameters", view.entries, view.search);
    if (!picked) {
        return;
    }
    view.search = typed; // several of one kind are often wanted
    const auto index = static_cast<std::size_t>(view.entries[*picked].value);
    if (what_if.is_chosen(index)) {
        what_if.put_away(index);
    } else {
        what_if.choose(index);
    }
}

} // namespace

void draw_what_if_page(const Canvas& canvas, Rect area, RunningFurnace& furnace, WhatIf& what_if,
                       WhatIfView& view) {
    const float wide = area.width() / canvas.scale;
    const float gap = std::round(canvas.px(14));
    if (wide < kTwoWide) {
        Column column(canvas, area, "what if");
        draw_sliders(column, furnace, what_if, view);
        column.gap(12);
        draw_differences(column, furnace, what_if);
        column.gap(12);
        draw_choice(column, what_if, view);
        return;
    }
    const bool three = wide >= kThreeWide;
    const float share = three ? 0.36F : 0.55F;
    const float whole = area.width();
    {
        Column column(canvas, area.cut_left(std::floor(whole * share)), "sliders");
        draw_sliders(column, furnace, what_if, view);
        if (!three) {
            column.gap(12);
            draw_differences(column, furnace, what_if);
        }
    }
    area.cut_left(gap);
    if (three) {
        Column column(canvas, area.cut_left(std::floor(whole * 0.33F)), "differences");
        draw_differences(column, furnace, what_if);
        area.cut_left(gap);
    }
    Column column(canvas, area, "choice");
    draw_choice(column, what_if, view);
}

} // namespace lightoff::explore
