// SPDX-License-Identifier: MIT
#include "gui/explore/step_page.hpp"

#include "gui/explore/gauge_table.hpp"
#include "gui/sheet/column.hpp"
#include "gui/trace/ticks.hpp"

#include <cmath>

namespace lightoff::explore {
namespace {

using namespace canvas;
using sheet::Column;

/// Design pixels of width from which on gauges stand beside the facts, and from which on the list does, too.
constexpr float kTwoWide = 600, kThreeWide = 880;
constexpr float kListShare = 0.24F, kFactsShare = 0.34F;

/// `listed`: a list of its own, which keeps the step looked at in view.
std::optional<std::uint64_t> draw_list(Column& column, const RunningFurnace& furnace,
                                       std::size_t* listed = nullptr) {
    std::optional<std::uint64_t> wanted;
    const std::size_t here = furnace.step_at(furnace.world().tick);
    for (std::size_t i = 0; i < furnace.steps().size(); ++i) {
        const bench::SequenceStep& step = furnace.steps()[i];
        const std::string words = trace::time_label(furnace.seconds(step.tick)) + "  " +
                                  bench::title_of(furnace.model(), step) + "##step" + std::to_string(i);
        if (column.row(words, {}, i == here)) {
            wanted = furnace.end_of(i);
        }
        if (listed != nullptr && i == here && *listed != here) {
            ImGui::SetScrollHereY(0.5F);
            *listed = here;
        }
    }
    return wanted;
}

void draw_lines(Column& column, const char* heading, const std::vector<std::string>& lines,
                const char* nothing) {
    column.gap(8);
    column.note(heading);
    column.gap(1);
    column.rule();
    column.gap(4);
    for (const std::string& line : lines) {
        column.words(line);
        column.gap(3);
    }
    if (lines.empty()) {
        column.words(nothing);
    }
}

void draw_facts(Column& column, const RunningFurnace& furnace, const StepFacts& facts) {
    column.words(facts.title, Type::Heading);
    column.gap(2);
    column.note("Step " + std::to_string(facts.step + 1) + " of " + std::to_string(furnace.steps().size()) +
                ", " + facts.when + ".");
    for (const std::string& other : facts.besides) {
        column.note("Meanwhile: " + other + ".");
    }
    draw_lines(column, "What changed since the step before", facts.changed, "Nothing.");
    draw_lines(column, facts.going_on ? "What the board waits for" : "What proved it to the board and led on",
               facts.leads_on, "Nothing: it stays here until its power is cycled.");
}

void draw_rows(Column& column, RunningFurnace& furnace, const StepFacts& facts,
               const std::vector<double>& what_if) {
    column.note(what_if.empty() ? "What should read what where; changed at this step first"
                                : "What should read what where; what-if in reverse");
    column.gap(1);
    column.rule();
    draw_gauges(column, furnace.gauges(), facts.rows, what_if);
}

} // namespace

std::optional<std::uint64_t> draw_step_page(const Canvas& canvas, Rect area, RunningFurnace& furnace,
                                            WhatIf& what_if, StepPageView& view) {
    const StepFacts facts = view.reader.read(furnace);
    const std::vector<double> others =
        what_if.is_there() ? what_if.beside().readings() : std::vector<double>();
    const float wide = area.width() / canvas.scale;
    const float gap = std::round(canvas.px(14));
    std::optional<std::uint64_t> wanted;
    if (wide < kTwoWide) {
        Column column(canvas, area, "step");
        draw_facts(column, furnace, facts);
        column.gap(14);
        draw_rows(column, furnace, facts, others);
        column.gap(14);
        column.note("All steps so far");
        wanted = draw_list(column, furnace);
        return wanted;
    }
    const float whole = area.width();
    if (wide >= kThreeWide) {
        Column list(canvas, area.cut_left(std::floor(whole * kListShare)), "steps");
        wanted = draw_list(list, furnace, &view.listed);
        area.cut_left(gap);
    }
    {
        Column column(canvas, area.cut_left(std::floor(whole * (wide < kThreeWide ? 0.46F : kFactsShare))),
                      "facts");
        draw_facts(column, furnace, facts);
        if (wide < kThreeWide) {
            column.gap(12);
            column.note("All steps so far");
            wanted = draw_list(column, furnace);
        }
    }
    area.cut_left(gap);
    Column column(canvas, area, "gauges");
    draw_rows(column, furnace, facts, others);
    return wanted;
}

} // namespace lightoff::explore
