// SPDX-License-Identifier: MIT
#include "gui/instruments/bag.hpp"

#include "gui/canvas/strokes.hpp"
#include "gui/instruments/draw.hpp"
#include "gui/instruments/faces.hpp"

#include <algorithm>
#include <vector>

namespace lightoff::faces {
namespace {

using instruments::Instrument;

// Edge of a plate to what stands in it, design pixels; in a rack narrower than kNarrow.
constexpr float kInside = 14;
constexpr float kInsideNarrow = 7;
constexpr float kNarrow = 260;

float longest_word(const canvas::Canvas& canvas, std::string_view words, canvas::Type type) {
    float longest = 0;
    for (std::size_t at = 0; at < words.size();) {
        const std::size_t end = std::min(words.find(' ', at), words.size());
        longest = std::max(longest, canvas::text_size(canvas, words.substr(at, end - at), type).x);
        at = end + 1;
    }
    return longest;
}

/// The name of a face; pressing it folds the face. True then.
bool draw_head(sheet::Column& column, std::string_view name) {
    using namespace canvas;
    const Canvas& canvas = column.canvas();
    constexpr std::string_view kFold = "fold";
    const float fold = text_size(canvas, kFold, Type::Secondary).x + canvas.px(12);
    const bool beside = longest_word(canvas, name, Type::Heading) <= column.width() - fold;
    const float wide = column.width() - (beside ? fold : canvas.px(18));
    const float high = text_size(canvas, name, Type::Heading, wide).y;
    const float below = beside ? 0 : line_height(canvas, Type::Secondary);
    const Rect box = column.take(std::max(24.0F, high + below));
    const Canvas here = column.canvas_for(box);
    const sheet::Touch touch = sheet::touch(here, box, name, name);
    if (touch.keyboard)
        outline(here, box.shrunk(-canvas.px(2)), Line::Outline, canvas.theme->ink);
    paragraph(here, box.min, wide, name, Type::Heading, canvas.theme->ink);
    const float on_line = (line_height(canvas, Type::Heading) - line_height(canvas, Type::Secondary)) * 0.78F;
    text(here, {box.max.x - canvas.px(8), box.min.y + (beside ? on_line : high)}, kFold, Type::Secondary,
         touch.hovered ? canvas.theme->ink : canvas.theme->pencil, Align::End);
    return touch.pressed;
}

void draw_large(const Face& face, Instrument instrument, bool& put_by, bool& out) {
    sheet::Column& column = face.column;
    const Title title = title_of(instrument);
    const ImVec2 top{column.left(), column.y()};
    const float right = column.right();
    const float inside = column.width() < column.px(kNarrow) ? kInsideNarrow : kInside;
    column.gap(10);
    column.indent(inside);
    column.narrow(inside);
    if (draw_head(column, title.name)) {
        put_by = true;
        out = false;
    }
    column.note(title.purpose);
    column.gap(8);
    draw_face(face, instrument);
    column.narrow(-inside);
    column.indent(-inside);
    column.gap(8);
    draw_plate(column.canvas(), {top, {right, column.y()}});
    column.gap(14);
}

/// What its windows show, in one line.
std::string in_short(const view::Known& known, Instrument instrument) {
    const auto all = instruments::displays(instruments::Bag{});
    std::string words;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const instruments::Display& display = known.percept.instruments.window[i];
        if (all[i].instrument == instrument && display.has(instruments::kOn) && words.size() < 40)
            words += (words.empty() ? "" : ", ") + sheet::figure_in(display, known.units).text();
    }
    return words;
}

/// A lead that was put down on the drawing needs its list no longer.
void shut_list_of_placed_lead(BagView& view) {
    using Lead = view::Wanted::Lead;
    const Lead was = view.was_in_hand;
    if (was != Lead::none && view.in_hand != was && view.open == (was == Lead::red ? "red" : "black"))
        view.open.clear();
    view.was_in_hand = view.in_hand;
}

} // namespace

std::string numbers_in_short(const view::Known& known, view::Wanted::Lead in_hand,
                             const std::function<bool(const std::string&)>& fits) {
    std::string all;
    for (std::size_t i = 0; i < kInstruments; ++i) {
        const auto instrument = static_cast<Instrument>(i);
        const bool lead = instrument == Instrument::multimeter && in_hand != view::Wanted::Lead::none;
        if (instrument == Instrument::co_alarm || (!lead && !is_in_use(known.percept, instrument)))
            continue;
        const std::string now = in_short(known, instrument);
        if (now.empty() && !lead)
            continue;
        const std::string more = all + (all.empty() ? "" : "  ·  ") + std::string(title_of(instrument).name) +
                                 " " + (now.empty() ? "off" : now);
        if (!all.empty() && !fits(more))
            break;
        all = more;
    }
    return all;
}

std::string expect_line(const view::Known& known, std::size_t window) {
    return std::string(bench::spec_of(bench::Verb::expect).name) + " " +
           bench::choices(*known.site, bench::Word::instrument)[window].name + " ";
}

std::string expect_line(const view::Known& known) {
    const auto& windows = known.percept.instruments.window;
    const auto all = instruments::displays(instruments::Bag{});
    std::size_t youngest = windows.size();
    const auto age = [&](std::size_t i) {
        return windows[i].has(instruments::kOn) ? windows[i].ticks_settled : 0;
    };
    for (std::size_t i = 0; i < windows.size(); ++i)
        if (all[i].instrument != Instrument::co_alarm && is_in_use(known.percept, all[i].instrument) &&
            (youngest == windows.size() || age(i) < age(youngest)))
            youngest = i;
    if (youngest == windows.size())
        return std::string(bench::spec_of(bench::Verb::expect).name) + " ";
    return expect_line(known, youngest);
}

void draw_bag(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known, BagView& view,
              view::Wanted& wanted) {
    sheet::Column column(canvas, area, "bag");
    shut_list_of_placed_lead(view);
    const instruments::Bag bag = bag_seen(known.percept);
    const Face face{column, known, bag, view, wanted};
    std::vector<Instrument> folded;
    for (std::size_t i = 0; i < kInstruments; ++i) {
        const auto instrument = static_cast<Instrument>(i);
        if ((is_in_use(known.percept, instrument) && !view.put_by[i]) || view.out[i])
            draw_large(face, instrument, view.put_by[i], view.out[i]);
        else
            folded.push_back(instrument);
    }
    if (folded.empty())
        return;
    column.heading("In the bag");
    for (const Instrument instrument : folded) {
        const auto i = static_cast<std::size_t>(instrument);
        const std::string now = in_short(known, instrument);
        const std::string note =
            now.empty() ? std::string(title_of(instrument).purpose) : "in use, face folded: " + now;
        if (column.row("Take out: " + std::string(title_of(instrument).name), note)) {
            view.out[i] = true;
            view.put_by[i] = false;
        }
    }
}

} // namespace lightoff::faces
