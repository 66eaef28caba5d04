// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/view/known.hpp"

#include <set>
#include <span>
#include <string>

/// The sheets of paper of a call. What is written on them stands in Known::papers; a sheet writes by asking
/// for the line that would be typed, and remembers only what lies open.
namespace lightoff::paper {

/// How a list of readings is looked through.
struct ReadingList {
    std::string search;
    bool kept_only = false; ///< without what was written down by itself
};

/// The reading that the next strike, tag or value stands on.
struct Evidence {
    int picked = 0; ///< its number; 0: the last one in the notebook
    bool open = false;
    ReadingList list;
};
/// The number of that reading; 0 if nothing has been read.
int number_of(const view::Known& known, const Evidence& evidence);

struct WorkOrderView {};
/// Complaint, customer, house, weather, rating plate, cautions.
void draw_work_order(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known,
                     WorkOrderView& view, view::Wanted& wanted);

struct DoorChartView {};
/// The chart of the lamp inside the door, made from the board's own table.
void draw_door_chart(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known,
                     DoorChartView& view, view::Wanted& wanted);

struct NotebookView {
    Evidence evidence;
    ReadingList list;
};
/// All readings, the newest first; one of them can be picked as evidence.
void draw_notebook(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known,
                   NotebookView& view, view::Wanted& wanted);

struct SuspectsView {
    Evidence evidence;
    std::set<int> open; ///< blocks whose parts are shown
    int refused = -1;   ///< block that could not be struck; faults::kGroups and on: a part
};
/// The step at which it stops, and the eight blocks in the order of the sequence, struck out by readings.
void draw_suspects(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known,
                   SuspectsView& view, view::Wanted& wanted);

struct DiagnosisView {
    Evidence evidence;
    enum class Open : std::uint8_t { none, cause, cause_behind, tag } open = Open::none;
    std::string search;
};
/// Cause, what brought it about, and the tags of parts from the van.
void draw_diagnosis(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known,
                    DiagnosisView& view, view::Wanted& wanted);

struct ReportView {
    Evidence evidence;
    bool open = false; ///< the list of conditions
    std::string search;
    bool refused = false; ///< a value was to be written without a reading
};
/// A tune-up's values as found and as left, and the conditions found.
void draw_report(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known, ReportView& view,
                 view::Wanted& wanted);

struct CustomerView {
    bool asked = false; ///< whether to sign, with what is still open
};
/// The customer's copy: what was found and done, what was told; the signature.
void draw_customer(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known,
                   CustomerView& view, view::Wanted& wanted);

enum class Sheet : std::uint8_t { order, chart, notebook, suspects, diagnosis, report, customer };

/// Several sheets that lie in one place; a reading picked on one is picked on all.
struct BinderView {
    Sheet sheet = Sheet::order; ///< that lies on top
    WorkOrderView order;
    DoorChartView chart;
    NotebookView notebook;
    SuspectsView suspects;
    DiagnosisView diagnosis;
    ReportView report;
    CustomerView customer;
};
/// The sheets of a call behind their tabs, or only some of them: one alone has no tab. The report lies among
/// them at a tune-up only. `sheets` may be empty: all.
void draw_binder(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known, BinderView& view,
                 view::Wanted& wanted, std::span<const Sheet> sheets = {});

} // namespace lightoff::paper
