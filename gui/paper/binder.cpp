// SPDX-License-Identifier: MIT
#include "gui/paper/rulings.hpp"
#include "gui/paper/sheets.hpp"
#include "gui/sheet/tabs.hpp"

#include <algorithm>
#include <array>
#include <vector>

namespace lightoff::paper {
namespace {

struct Tab {
    Sheet sheet;
    const char* words;
};
constexpr std::array<Tab, 7> kTabs{{{Sheet::order, "Order"},
                                    {Sheet::chart, "Chart"},
                                    {Sheet::notebook, "Notes"},
                                    {Sheet::suspects, "Suspects"},
                                    {Sheet::diagnosis, "Diagnosis"},
                                    {Sheet::report, "Report"},
                                    {Sheet::customer, "Customer"}}};

std::vector<Tab> tabs_of(const view::Known& known, std::span<const Sheet> sheets) {
    std::vector<Tab> tabs;
    for (const Tab& tab : kTabs) {
        const bool wanted =
            sheets.empty() || std::find(sheets.begin(), sheets.end(), tab.sheet) != sheets.end();
        if (wanted && (tab.sheet != Sheet::report || known.scenario->kind == lesson::Kind::tune_up))
            tabs.push_back(tab);
    }
    return tabs;
}

/// Draws the tabs and sets the sheet on top; the room below.
canvas::Rect choose_sheet(const canvas::Canvas& canvas, canvas::Rect area, const std::vector<Tab>& tabs,
                          Sheet& top) {
    std::vector<std::string> words;
    std::size_t chosen = 0;
    for (std::size_t i = 0; i < tabs.size(); ++i) {
        words.emplace_back(tabs[i].words);
        chosen = tabs[i].sheet == top ? i : chosen;
    }
    if (tabs.size() > 1) {
        const sheet::Tabs drawn = sheet::draw_tabs(canvas, area, words, chosen);
        chosen = drawn.chosen;
        area = drawn.rest;
    }
    top = tabs[chosen].sheet;
    return area;
}

/// A reading picked on the sheet that was just drawn is picked on the others, too.
void share_evidence(BinderView& view) {
    constexpr std::array<Sheet, 4> kStandOnReadings{Sheet::notebook, Sheet::suspects, Sheet::diagnosis,
                                                    Sheet::report};
    const std::array<Evidence*, 4> all{&view.notebook.evidence, &view.suspects.evidence,
                                       &view.diagnosis.evidence, &view.report.evidence};
    for (std::size_t from = 0; from < all.size(); ++from)
        if (kStandOnReadings[from] == view.sheet)
            for (Evidence* const to : all)
                to->picked = all[from]->picked;
}

} // namespace

void draw_binder(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known, BinderView& view,
                 view::Wanted& wanted, std::span<const Sheet> sheets) {
    const std::vector<Tab> tabs = tabs_of(known, sheets);
    if (tabs.empty())
        return;
    const canvas::Rect rest = choose_sheet(canvas, area, tabs, view.sheet);
    switch (view.sheet) {
    case Sheet::order:
        draw_work_order(canvas, rest, known, view.order, wanted);
        break;
    case Sheet::chart:
        draw_door_chart(canvas, rest, known, view.chart, wanted);
        break;
    case Sheet::notebook:
        draw_notebook(canvas, rest, known, view.notebook, wanted);
        break;
    case Sheet::suspects:
        draw_suspects(canvas, rest, known, view.suspects, wanted);
        break;
    case Sheet::diagnosis:
        draw_diagnosis(canvas, rest, known, view.diagnosis, wanted);
        break;
    case Sheet::report:
        draw_report(canvas, rest, known, view.report, wanted);
        break;
    case Sheet::customer:
        draw_customer(canvas, rest, known, view.customer, wanted);
        break;
    }
    share_evidence(view);
}

} // namespace lightoff::paper
