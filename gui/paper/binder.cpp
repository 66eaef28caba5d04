// SPDX-License-Identifier: MIT
#include "gui/paper/rulings.hpp"
#include "gui/paper/sheets.hpp"
#include "gui/sheet/tabs.hpp"

#include <array>
#include <vector>

namespace lightoff::paper {
namespace {

struct Tab {
    Sheet sheet;
    const char* words;
};

std::vector<Tab> tabs_of(const view::Known& known) {
    std::vector<Tab> tabs{{Sheet::order, "Order"},
                          {Sheet::chart, "Chart"},
                          {Sheet::notebook, "Notes"},
                          {Sheet::suspects, "Suspects"},
                          {Sheet::diagnosis, "Diagnosis"}};
    if (known.scenario->kind == lesson::Kind::tune_up)
        tabs.push_back({Sheet::report, "Report"});
    tabs.push_back({Sheet::customer, "Customer"});
    return tabs;
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
                 view::Wanted& wanted) {
    const std::vector<Tab> tabs = tabs_of(known);
    std::vector<std::string> words;
    std::size_t chosen = 0;
    for (std::size_t i = 0; i < tabs.size(); ++i) {
        words.emplace_back(tabs[i].words);
        chosen = tabs[i].sheet == view.sheet ? i : chosen;
    }
    const auto [pressed, rest] = sheet::draw_tabs(canvas, area, words, chosen);
    view.sheet = tabs[pressed].sheet;
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
