// SPDX-License-Identifier: MIT
#include "gui/debrief/now.hpp"

#include "gui/canvas/lettering.hpp"
#include "gui/canvas/style.hpp"
#include "gui/cutaway/cutaway.hpp"
#include "report/words.hpp"
#include "visit/words.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace lightoff::debrief {
namespace {

using namespace canvas;

/// The last of some things that have a tick, at or before a tick; nullptr if there is none.
template <class List>
auto last_before(const List& list, std::uint64_t tick) -> decltype(&list.front()) {
    const auto found =
        std::find_if(list.rbegin(), list.rend(), [&](const auto& thing) { return thing.tick <= tick; });
    return found == list.rend() ? nullptr : &*found;
}

std::string done_by(const Model& model, std::uint64_t tick) {
    const auto& entries = model.story().film.entries();
    const auto entry = std::find_if(entries.rbegin(), entries.rend(), [&](const lesson::Log::Entry& e) {
        return e.tick <= tick && e.action.verb != bench::Verb::wait;
    });
    if (entry == entries.rend())
        return "nothing yet";
    return report::clock(model.story(), entry->tick) + "  " +
           bench::format_action(model.site(), entry->action);
}

std::string read_by(const Model& model, std::uint64_t tick) {
    const bench::Reading* reading = last_before(model.story().readings, tick);
    if (reading == nullptr)
        return "nothing yet";
    const auto number = static_cast<std::size_t>(reading - model.story().readings.data()) + 1;
    return report::clock(model.story(), reading->tick) + "  " +
           visit::reading_text(model.site(), *reading, number);
}

std::string noticed_by(const Model& model, std::uint64_t tick) {
    const auto& captions = model.story().captions;
    const auto found = std::find_if(captions.rbegin(), captions.rend(), [&](const bench::Caption& c) {
        return c.tick <= tick && c.about != bench::About::hands && c.about != bench::About::window;
    });
    if (found == captions.rend())
        return "nothing yet";
    return report::clock(model.story(), found->tick) + "  " + std::string(bench::name_of(found->sense)) +
           ": " + found->text;
}

} // namespace

const cutaway::CutawayScene& Now::scene(const Model& model, std::uint64_t tick) {
    if (tick_ == tick)
        return scene_;
    if (!workspace_)
        workspace_.emplace(model.site().model);
    const bench::World world = model.story().film.at(model.site(), tick, *workspace_);
    // Marks of movement stand where simulated time puts them, as if the speed had been like this for long.
    cutaway::Travel travel = cutaway::travel_at_rest(world);
    travel.air_s = travel.flue_s = travel.gas_s = model.seconds(tick);
    scene_ = cutaway::make_scene(model.site().model, world, travel);
    const bench::WornParts worn = bench::all_wear(model.site(), world);
    scene_.wear = cutaway::marks_of(model.site(), worn);
    scene_.traces = cutaway::traces_of(model.site(), worn);
    if (still_)
        cutaway::stand_still(scene_);
    tick_ = tick;
    return scene_;
}

void draw_now(const Canvas& canvas, Rect area, const Model& model, Now& now, std::uint64_t tick) {
    const Theme& theme = *canvas.theme;
    const float line = line_height(canvas, Type::Secondary) + canvas.px(2);
    const std::array<std::pair<const char*, std::string>, 3> rows{{{"did", done_by(model, tick)},
                                                                   {"read", read_by(model, tick)},
                                                                   {"noticed", noticed_by(model, tick)}}};
    const float names = text_size(canvas, "noticed", Type::Secondary).x + canvas.px(12);
    // As many lines as the words need, three at the most for each.
    float height = 0;
    std::array<float, 3> heights{};
    for (std::size_t i = 0; i < rows.size(); ++i) {
        heights[i] = std::max(
            line, text_size(canvas, rows[i].second, Type::Secondary, area.width() - names).y + canvas.px(2));
        height += heights[i];
    }
    Rect words = area.cut_bottom(height);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const Rect row = words.cut_top(heights[i]);
        text(canvas, row.min, rows[i].first, Type::Secondary, theme.pencil);
        paragraph(canvas, {row.min.x + names, row.min.y}, row.width() - names, rows[i].second,
                  Type::Secondary, theme.ink);
    }
    area.cut_bottom(canvas.px(6));
    area = {{std::ceil(area.min.x), std::ceil(area.min.y)}, {std::floor(area.max.x), std::floor(area.max.y)}};
    ImGui::SetCursorScreenPos(area.min);
    ImGui::BeginChild("furnace then", area.size(), false, kLayer);
    cutaway::draw_cutaway(canvas.here(), area, now.scene(model, tick));
    ImGui::EndChild();
}

} // namespace lightoff::debrief
