// SPDX-License-Identifier: MIT
#include "gui/work/noticed.hpp"

#include "gui/canvas/controls.hpp"
#include "gui/canvas/flow.hpp"
#include "gui/canvas/layout_probe.hpp"
#include "gui/canvas/lettering.hpp"
#include "gui/canvas/strokes.hpp"
#include "visit/play_line.hpp"
#include "visit/words.hpp"

#include <algorithm>
#include <string>
#include <vector>

namespace lightoff::work {
namespace {

using namespace canvas;

constexpr std::uint64_t kFreshTicks = 6 * 20;
constexpr float kMostForWaits = 0.45F; ///< of the sheet's height, for what can be waited for

std::string time_of(const view::Known& known, std::uint64_t tick) {
    return tick < known.arrived_tick ? std::string("before") : visit::clock_text(tick - known.arrived_tick);
}

/// One caption in one or more lines; the height that it took.
float draw_caption(const Canvas& canvas, ImVec2 at, float width, const view::Known& known,
                   const bench::Caption& caption) {
    const bool fresh = known.percept.tick - caption.tick <= kFreshTicks;
    const float time = text_size(canvas, "000:00.0", Type::Secondary).x + canvas.px(8);
    const float sense = text_size(canvas, "smelt", Type::Secondary).x + canvas.px(12);
    text(canvas, at, time_of(known, caption.tick), Type::Secondary, canvas.theme->pencil);
    text(canvas, {at.x + time, at.y}, bench::name_of(caption.sense), Type::Secondary, canvas.theme->pencil);
    const Rect used = paragraph(canvas, {at.x + time + sense, at.y}, width - time - sense, caption.text,
                                Type::Secondary, fresh ? canvas.theme->ink : canvas.theme->pencil);
    return used.height() + canvas.px(3);
}

} // namespace

void draw_last_noticed(const Canvas& canvas, Rect area, const view::Known& known) {
    const float gap = canvas.px(3);
    std::vector<std::string> lines; // newest first
    std::vector<float> heights;
    float height = 0;
    for (auto caption = known.captions.rbegin(); caption != known.captions.rend(); ++caption) {
        const std::string words = time_of(known, caption->tick) + "  " +
                                  std::string(bench::name_of(caption->sense)) + "  " + caption->text;
        const float own = text_size(canvas, words, Type::Secondary, area.width()).y + gap;
        if (!lines.empty() && height + own > area.height())
            break;
        lines.push_back(words);
        heights.push_back(own);
        height += own;
    }
    for (std::size_t i = lines.size(); i-- > 0;) {
        const bench::Caption& caption = known.captions[known.captions.size() - 1 - i];
        const bool fresh = known.percept.tick - caption.tick <= kFreshTicks;
        const Rect row = area.cut_top(heights[i]);
        paragraph(canvas, {row.min.x, row.min.y + gap / 2}, row.width(), lines[i], Type::Secondary,
                  fresh ? canvas.theme->ink : canvas.theme->pencil);
    }
}

void draw_noticed(const Canvas& canvas, Rect area, const view::Known& known, view::Wanted& wanted) {
    std::vector<FlowItem> items;
    for (const visit::UntilRow& row : visit::until_rows())
        items.push_back({std::string(row.name), "", false, true, static_cast<int>(items.size()), 0});
    const auto draw_waits = [&](const Canvas& on, Rect& rest, Rect view) {
        const Rect head = rest.cut_top(line_height(canvas, Type::Body));
        text_in(in_view(on, head, view), head, "Wait for …", Type::Body, canvas.theme->ink);
        rest.cut_top(canvas.px(4));
        const Flow flow = lay_out_flow(canvas, rest, items);
        const Rect all = rest.cut_top(flow.height);
        if (const int pressed = draw_flow(in_view(on, all, view), flow, items); pressed >= 0)
            wanted.lines.push_back("wait until " + items[static_cast<std::size_t>(pressed)].words);
        rest.cut_top(canvas.px(10));
        segment(on, rest.min, {rest.max.x, rest.min.y}, Line::Rule, canvas.theme->rule);
        rest.cut_top(canvas.px(6));
    };
    // Where the buttons would leave little room for what was noticed, they scroll with it.
    const bool scroll_too = lay_out_flow(canvas, area, items).height > area.height() * kMostForWaits;
    if (scroll_too)
        for (FlowItem& item : items)
            item.group = 0; // edge to edge
    else
        draw_waits(canvas, area, area);
    ImGui::SetCursorScreenPos(area.min);
    ImGui::BeginChild("noticed", area.size(), false, ImGuiWindowFlags_NoBackground);
    const Canvas inside = canvas.here();
    ImVec2 at = ImGui::GetCursorScreenPos();
    const float width = area.width() - ImGui::GetStyle().ScrollbarSize - canvas.px(4);
    if (scroll_too) {
        Rect rest = rect_at(at, {width, 1e6F});
        draw_waits(inside, rest, area);
        at = rest.min;
    }
    if (known.captions.empty())
        text(inside, at, "Nothing yet.", Type::Secondary, canvas.theme->pencil);
    for (auto caption = known.captions.rbegin(); caption != known.captions.rend(); ++caption)
        at.y +=
            draw_caption(in_view(inside, {at, {at.x, at.y + 3 * line_height(inside, Type::Secondary)}}, area),
                         at, width, known, *caption);
    ImGui::SetCursorScreenPos(at);
    ImGui::Dummy({1, 1});
    ImGui::EndChild();
}

} // namespace lightoff::work
