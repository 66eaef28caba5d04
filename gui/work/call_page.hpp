// SPDX-License-Identifier: MIT
#pragma once
#include "files/bundle_loader.hpp"
#include "gui/cutaway/motion.hpp"
#include "gui/diagram/diagram.hpp"
#include "gui/instruments/bag.hpp"
#include "gui/paper/sheets.hpp"
#include "gui/view/known.hpp"
#include "gui/work/folding.hpp"
#include "gui/work/furnace_pane.hpp"
#include "gui/work/key_map.hpp"
#include "gui/work/noticed_trace.hpp"
#include "gui/work/pace.hpp"
#include "gui/work/tag.hpp"
#include "gui/work/typed.hpp"
#include "visit/guidance.hpp"
#include "visit/play_line.hpp"
#include "visit/visit.hpp"

#include <array>
#include <cstdint>
#include <deque>
#include <optional>
#include <set>
#include <string>
#include <string_view>

namespace lightoff::work {

/// Where an attempt is kept.
struct AttemptPlace {
    std::string path;    ///< empty: it is not written down
    bool resume = false; ///< the file has been begun
    std::uint64_t seed = 0;
    /// Go on from this tick of that file instead, without writing anything down: "what if?"
    std::optional<std::uint64_t> branch_from = {};
};

/// A call being worked: the furnace or its diagram in the middle, the isolation strip at its left, bag and
/// papers at its right. Knows no window and no clock: whoever owns it says how much time has gone by.
class CallPage {
public:
    enum class Middle : std::uint8_t { furnace, diagram, trace, strip };
    static constexpr std::size_t kMiddles = 4; ///< the strip only where it has no place of its own
    enum class Side : std::uint8_t { order, bag, notes, suspects, close, noticed };
    static constexpr std::size_t kSides = 6;

    /// `bundle` must outlive it. Throws files::Error for an attempt's file that can't be begun or continued.
    CallPage(const files::LoadedBundle& bundle, const AttemptPlace& place);

    /// Lets wall time go by, then draws.
    void frame(const canvas::Canvas& canvas, canvas::Rect page, double wall_s);
    void pass(double wall_s);
    void draw(const canvas::Canvas& canvas, canvas::Rect page);

    /// Does a line as it would be typed, once the hands are free.
    void take(const std::string& line);
    /// Lets time go by until nothing is in hand and nothing waits to be done.
    void finish();

    /// Writes down the time; called when the window closes, and when the page is left.
    void leave();
    [[nodiscard]] bool left() const { return left_; }
    [[nodiscard]] bool signed_off() const { return visit_.signed_off(); }
    /// Something that stops all work was done: no time goes by any more, a card says what and why.
    [[nodiscard]] bool stopped() const { return visit_.stopped() != nullptr; }
    [[nodiscard]] bool hands_free() const { return visit_.world().hands.busy == 0 && waiting_.empty(); }
    /// Seconds until it wants a frame if nobody does anything.
    [[nodiscard]] double next_frame_in_s() const;
    /// Time stands until somebody does something.
    [[nodiscard]] bool still() const { return next_frame_in_s() > 0.0; }
    /// What is heard now, with every click and light-off since it was last asked for.
    bench::Heard heard_since_last_frame();

    void show(Middle middle) {
        middle_ = middle;
        sheet_up_ = false;
    }
    void show(Side side) {
        side_ = side;
        sheet_up_ = true;
    }
    /// A sentence for the foot of the page.
    void warn(std::string words) { refusal_ = std::move(words); }
    /// Whether anything is drawn moving; captions say it either way.
    void set_motion(bool moves) { moves_ = moves; }
    /// Doors and lamp as they are now, without the way there.
    void settle_motion();
    void set_keys(const KeyMap& keys) { keys_ = keys; }
    void set_units(view::Units units) { units_ = units; }
    void hold(bool held) { pace_.hold(held); }
    [[nodiscard]] view::Known known() const;
    [[nodiscard]] const visit::Visit& visit() const { return visit_; }
    [[nodiscard]] const std::optional<view::Thing>& focus() const { return tag_.thing; }
    void focus(const view::Thing& thing) {
        tag_.focus(thing);
        sheet_up_ = false; // the tag lies on the drawing
    }
    /// Middle and sheets take turns: there is no room for both.
    [[nodiscard]] bool one_at_a_time() const { return !folding_.sheets_beside; }
    void close_tag() { tag_.close(); }
    [[nodiscard]] const std::string& refusal() const { return refusal_; }
    [[nodiscard]] const AttemptPlace& place() const { return place_; }

private:
    void handle_keys(const view::Known& known, view::Wanted& wanted);
    void obey(view::Wanted& wanted);
    void put_lead(const view::Wanted& wanted);
    bool is_warned_of(const bench::Action& action);
    void next_line();
    void tick();
    void start(const std::string& line);
    void start_wait(const visit::PlayLine& line);
    void answer(const visit::PlayLine& line);
    std::uint64_t ticks_busy() const;
    bool reads_or_writes() const;
    /// It has a place of its own, or has been turned to.
    bool sheet_shown() const { return folding_.sheets_beside || sheet_up_; }
    Middle next_middle() const;

    void draw_stopped(const canvas::Canvas& canvas, canvas::Rect page, const bench::HazardEvent& event);
    void draw_head(const canvas::Canvas& canvas, canvas::Rect area, const std::string& unproved);
    void draw_rail(const canvas::Canvas& canvas, canvas::Rect& rest);
    void draw_side_tabs(const canvas::Canvas& canvas, canvas::Rect& area);
    void draw_views(const canvas::Canvas& canvas, canvas::Rect& area);
    void draw_guidance(const canvas::Canvas& canvas, canvas::Rect& rest);
    void draw_middle(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known,
                     view::Wanted& wanted);
    void draw_side(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known,
                   view::Wanted& wanted);
    void draw_order(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known,
                    view::Wanted& wanted);
    void draw_close(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known,
                    view::Wanted& wanted);
    [[nodiscard]] cutaway::CutawayScene seen_furnace(const view::Known& known) const;
    template <class View, class Draw>
    void draw_with_evidence(View& view, Draw draw);
    view::Wanted::Lead lead_in_hand() const;
    const std::string& said() const { return tag_.refusal.empty() ? refusal_ : tag_.refusal; }
    void draw_foot(const canvas::Canvas& canvas, canvas::Rect& rest, const view::Known& known,
                   view::Wanted& wanted);
    void draw_numbers(const canvas::Canvas& canvas, canvas::Rect& rest, const view::Known& known) const;
    void draw_words(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known) const;
    void draw_act(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known) const;

    const files::LoadedBundle* bundle_;
    AttemptPlace place_;
    visit::Visit visit_;
    Pace pace_;
    cutaway::Travel travel_;
    cutaway::Motion motion_;
    std::deque<std::string> waiting_;
    std::string refusal_;
    std::set<bench::Hazard> warned_of_; ///< once each, where the call gives help
    bench::Heard heard_;                ///< short sounds since the last frame
    std::uint64_t act_ticks_ = 0;       ///< of the act in hand, whole
    Middle middle_ = Middle::furnace;
    Side side_ = Side::order;
    bool sheet_up_ = true; ///< where middle and sheets take turns
    Folding folding_;
    bool guide_says_why_ = false; ///< where there is no room for both
    view::Units units_ = view::Units::trade;
    bool moves_ = true;
    KeyMap keys_;
    Tag tag_;
    Typed typed_;
    FurnacePane furnace_;
    faces::BagView bag_;
    NoticedTrace trace_;
    diagram::Ladder ladder_;
    diagram::DiagramView diagram_;
    struct Sheets {
        paper::WorkOrderView order;
        paper::DoorChartView chart;
        paper::NotebookView notebook;
        paper::SuspectsView suspects;
        paper::DiagnosisView diagnosis;
        paper::ReportView report;
        paper::CustomerView customer;
        paper::Evidence evidence;                   ///< the reading picked: on one sheet is on all
        std::size_t order_leaf = 0, close_leaf = 0; ///< which of two sheets lies on top
    } sheets_;
    struct LeadsInHand {
        std::optional<int> red, black; ///< nodes of leads that wait for the other one
        bool red_up = false, black_up = false;
    } leads_;
    std::optional<visit::Guidance> guidance_;
    bool left_ = false;
};

} // namespace lightoff::work
