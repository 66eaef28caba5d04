// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/debrief/model.hpp"
#include "gui/debrief/now.hpp"
#include "gui/explore/lane_picker.hpp"
#include "gui/trace/strip_chart.hpp"

#include <cstdint>
#include <optional>
#include <string>

/// The debrief of a finished attempt, in the order in which people learn from one: the score comes last.
namespace lightoff::debrief {

enum class Page : std::uint8_t {
    frozen, ///< after a stop-work: what would have happened
    moment, ///< "mark the moment you knew"
    stairs, ///< causes still fitting, theirs against the coach's
    better, ///< one better test
    points, ///< the account
    next    ///< the contrast call
};
const char* name_of(Page page);
/// The pages that this attempt has, in order.
std::vector<Page> pages_of(const Model& model);

/// What whoever looks at it has open.
struct DebriefView {
    explicit DebriefView(const Model& model);

    Page page = Page::moment;
    std::size_t reached = 0;                ///< pages that may be turned to: each in its turn
    std::uint64_t tick = 0;                 ///< the moment looked at
    std::optional<std::uint64_t> knew_tick; ///< as they marked it
    enum class Show : std::uint8_t { page, line, furnace };
    Show show = Show::page;    ///< where not all three have a place
    std::size_t first_row = 0; ///< of a list that is longer than its room
    trace::StripChart chart;
    trace::ChartView chart_view;
    explore::LanePicker picker;
    Now now;
};

/// What is asked of the owner of the page.
struct DebriefWants {
    std::optional<std::uint64_t> try_from; ///< an ungraded branch of the attempt, from this tick on
    std::optional<std::string> take;       ///< a call: the twin
    bool again = false;                    ///< the same call from the start
    bool save_html = false;
    bool save_pdf = false;
    bool leave = false;
};

/// Draws it into the ImGui window now being built and takes keys and pointer. Wants are set, never cleared.
void draw_debrief(const canvas::Canvas& canvas, canvas::Rect area, const Model& model, DebriefView& view,
                  DebriefWants& wants);

/// What is shown meanwhile: what is being done, and a way out.
void draw_waiting(const canvas::Canvas& canvas, canvas::Rect area, const std::string& words,
                  DebriefWants& wants);

} // namespace lightoff::debrief
