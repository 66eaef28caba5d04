// SPDX-License-Identifier: MIT
#include "gui/canvas/fills.hpp"
#include "gui/paper/rulings.hpp"
#include "gui/paper/sheets.hpp"
#include "gui/sheet/figures.hpp"
#include "units/convert.hpp"
#include "visit/words.hpp"

namespace lightoff::paper {
namespace {

using sheet::Column;

/// "Mrs Odell" and what she says, of "Mrs Odell: It whirs".
struct Said {
    std::string who, what;
};
Said said(const std::string& complaint) {
    constexpr std::size_t kLongestName = 40;
    const std::size_t colon = complaint.find(": ");
    if (colon == std::string::npos || colon > kLongestName)
        return {"The customer", complaint};
    return {complaint.substr(0, colon), complaint.substr(colon + 2)};
}

/// In the customer's words: beside a heavy bar.
void complaint_in(Column& column, const Said& words) {
    const float top = column.y();
    const float left = column.left();
    column.indent(14);
    column.words(words.what);
    column.note(words.who);
    column.indent(-14);
    canvas::fill(column.canvas(), {{left, top}, {left + column.px(4), column.y()}},
                 column.canvas().theme->ink);
}

void rating_plate(Column& column, const view::Known& known) {
    const furnace::RatingPlate& plate = known.site->model.rating;
    const view::Units units = known.units;
    column.gap(14);
    const ImVec2 top{column.left(), column.y()};
    const float right = column.right();
    column.gap(14);
    column.indent(16);
    column.narrow(16);
    column.words("Rating plate", canvas::Type::Heading);
    column.words(known.site->model.title);
    column.gap(6);
    column.field("Gas", plate.gas);
    column.field("Input", sheet::heat_flow(plate.input_w, units));
    column.field("Manifold", sheet::pressure(plate.manifold_pa, 1, units));
    column.field("Temperature rise", sheet::temperature_rise(plate.rise_low_k, plate.rise_high_k, units));
    column.field("External static", "at most " + sheet::pressure(plate.external_static_pa, 2, units));
    column.field("Blower", "at most " + canvas::figure(plate.blower_full_load_a, 1) + " A");
    column.narrow(-16);
    column.indent(-16);
    column.gap(14);
    draw_double_frame(column.canvas(), {top, {right, column.y()}});
    column.gap(16);
}

void cautions(Column& column) {
    const ImVec2 top{column.left(), column.y()};
    column.gap(10);
    column.indent(34);
    column.narrow(12);
    column.words(visit::cautions(), canvas::Type::Secondary);
    column.narrow(-12);
    column.indent(-34);
    column.gap(10);
    draw_tag(column.canvas(), {top, {column.right(), column.y()}});
    column.gap(8);
}

} // namespace

void draw_work_order(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known,
                     WorkOrderView&, view::Wanted&) {
    Column column(canvas, area, "work order");
    const lesson::Scenario& call = *known.scenario;
    const Said words = said(call.complaint);
    column.note("Work order");
    column.title(call.title);
    column.gap(6);
    column.rule();
    column.gap(8);
    complaint_in(column, words);
    column.gap(8);
    column.field("Call", capitalised(visit::kind_text(call.kind)));
    column.field("Outdoors", sheet::temperature(call.inputs.outdoor_k, known.units));
    column.field("Where the furnace is", sheet::temperature(call.inputs.basement_k, known.units));
    column.field("Inside when they called", sheet::temperature(call.house_k, known.units));
    column.field("Time since arrival", visit::clock_text(known.ticks_here() / 20 * 20));
    rating_plate(column, known);
    cautions(column);
}

} // namespace lightoff::paper
