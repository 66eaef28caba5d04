// SPDX-License-Identifier: MIT
#include "gui/work/call_page.hpp"

#include "bench/access.hpp"
#include "files/attempt.hpp"
#include "files/attempt_log.hpp"
#include "files/error.hpp"
#include "files/guide.hpp"
#include "gui/canvas/controls.hpp"
#include "gui/canvas/fills.hpp"
#include "gui/canvas/flow.hpp"
#include "gui/canvas/lettering.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/platform/input_queue.hpp"
#include "gui/sheet/column.hpp"
#include "gui/work/noticed.hpp"
#include "gui/work/strip.hpp"
#include "gui/work/unproved.hpp"
#include "units/constants.hpp"
#include "visit/until.hpp"
#include "visit/words.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <stdexcept>

namespace lightoff::work {
namespace {

using namespace canvas;
constexpr std::uint64_t kShortAct = 20; ///< ticks: no bar for it
constexpr float kForBoth = 300;         ///< design pixels that a guide's words and reason must leave
constexpr std::array<std::string_view, CallPage::kSides> kSideNames{"Order",    "Bag",   "Notes",
                                                                    "Suspects", "Close", "Noticed"};
constexpr std::array<std::string_view, CallPage::kMiddles> kMiddleNames{"Furnace", "Diagram", "Trace",
                                                                        "Switches"};
constexpr std::array<std::string_view, 4> kSpeedNames{"1×", "2×", "5×", "20×"};

} // namespace

CallPage::CallPage(const files::LoadedBundle& bundle, const AttemptPlace& place)
    : bundle_(&bundle), place_(place), visit_(bundle, place.seed),
      ladder_(diagram::lay_out(bundle.site.model)) {
    if (place.branch_from) {
        const files::Attempt attempt = files::read_attempt(place.path, furnace::kPhysicsVersion);
        files::check_bundle(attempt, place.path, bundle.site.model.bundle_hash);
        visit_.follow(files::log_of(attempt, place.path, bundle.site), place.path, *place.branch_from);
        warn("This is a try from a moment of your attempt: nothing of it is kept or marked.");
    } else if (place.resume)
        visit_.resume(place.path);
    else if (!place.path.empty())
        visit_.record(place.path);
    settle_motion();
    if (auto guide = files::find_guide(bundle.name, bundle.site))
        guidance_.emplace(std::move(*guide));
}

view::Known CallPage::known() const {
    return view::known_of(visit_, bundle_->scenario, units_);
}

std::uint64_t CallPage::ticks_busy() const {
    const bench::World& world = visit_.world();
    return world.hands.busy != 0 && world.hands.done_tick >= world.tick
               ? world.hands.done_tick - world.tick + 1
               : 0;
}

/// Reading and writing take no work minutes: time at the furnace is held meanwhile.
bool CallPage::reads_or_writes() const {
    return typed_.open || (sheet_shown() && (side_ == Side::suspects || side_ == Side::close ||
                                             (side_ == Side::order && visit_.actions() == 0)));
}

double CallPage::next_frame_in_s() const {
    if (stopped())
        return 1e9;
    const bool still = pace_.still(ticks_busy(), reads_or_writes()) && waiting_.empty();
    return still && !motion_.moves() ? 1e9 : 0.0;
}

// ---- time ----

void CallPage::pass(double wall_s) {
    if (stopped())
        return;
    next_line();
    const std::uint64_t due = pace_.due(wall_s, ticks_busy(), reads_or_writes());
    for (std::uint64_t i = 0; i < due && !stopped(); ++i) {
        tick();
        next_line();
    }
    const bench::Percept percept = visit_.percept();
    if (due > 0 && moves_)
        cutaway::move(travel_, percept, std::min(wall_s, 0.1));
    motion_.go_on(cutaway::standing_of(visit_.site(), percept), wall_s, moves_);
}

void CallPage::settle_motion() {
    motion_.jump(cutaway::standing_of(visit_.site(), visit_.percept()));
}

void CallPage::tick() {
    try {
        visit_.tick();
    } catch (const files::Error& error) {
        refusal_ = error.what(); // the tick has passed; the next mark may find room
    }
    const bench::Percept percept = visit_.percept();
    trace_.take(percept, static_cast<double>(visit_.ticks_here()) * units::seconds_per_tick, units_);
    const bench::Heard& now = percept.heard;
    heard_.relay_clicks = static_cast<std::uint8_t>(std::min(8, heard_.relay_clicks + now.relay_clicks));
    heard_.valve_click = heard_.valve_click || now.valve_click;
    heard_.ignition = std::max(heard_.ignition, now.ignition);
    if (guidance_)
        guidance_->look(visit_);
}

bench::Heard CallPage::heard_since_last_frame() {
    bench::Heard heard = visit_.percept().heard;
    heard.relay_clicks = heard_.relay_clicks;
    heard.valve_click = heard_.valve_click;
    heard.ignition = heard_.ignition;
    heard_ = {};
    return heard;
}

void CallPage::finish() {
    next_line();
    while (!stopped() && (ticks_busy() > 0 || !waiting_.empty())) {
        tick();
        next_line();
    }
    settle_motion();
}

void CallPage::leave() {
    try {
        visit_.leave();
    } catch (const files::Error& error) {
        refusal_ = error.what();
    }
    left_ = true;
}

// ---- what is to be done ----

void CallPage::take(const std::string& line) {
    waiting_.push_back(line);
}

void CallPage::next_line() {
    while (visit_.world().hands.busy == 0 && !waiting_.empty() && !stopped()) {
        const std::string line = waiting_.front();
        waiting_.pop_front();
        start(line);
    }
}

void CallPage::start(const std::string& text) {
    refusal_.clear();
    try {
        const visit::PlayLine line = visit::parse_play_line(visit_.site(), text);
        switch (line.kind) {
        case visit::PlayLine::Kind::empty:
            return;
        case visit::PlayLine::Kind::act:
            if (const auto action = visit::action_of(line, visit_.notebook().readings()))
                refusal_ = is_warned_of(*action) ? visit_.begin(*action, "student") : refusal_;
            else
                refusal_ = "Nothing has been read from that instrument yet.";
            break;
        case visit::PlayLine::Kind::wait_until:
            start_wait(line);
            break;
        case visit::PlayLine::Kind::ask:
            answer(line);
        }
    } catch (const std::invalid_argument& error) {
        refusal_ = error.what();
    } catch (const files::Error& error) {
        refusal_ = error.what();
    }
    if (!refusal_.empty())
        waiting_.clear(); // what was to follow stood on it
    if (guidance_)
        guidance_->look(visit_); // what is said on paper takes no tick
    if (stopped())
        tick(); // what was done has begun, also for whoever does it again
    act_ticks_ = ticks_busy();
    pace_.begin(act_ticks_);
}

/// False, with the warning in the foot, the first time that an act would end the call; an exam warns of
/// nothing.
bool CallPage::is_warned_of(const bench::Action& action) {
    if (bundle_->scenario.help == lesson::Help::exam)
        return true;
    const std::optional<bench::Hazard> hazard = visit_.would_stop(action);
    if (!hazard || !warned_of_.insert(*hazard).second)
        return true;
    std::string words = visit_.site().hazards[static_cast<std::size_t>(*hazard)].title;
    words[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(words[0])));
    refusal_ =
        "Stop: \u201c" + words + "\u201d would end the call. Not done. Asked for once more it is done.";
    return false;
}

void CallPage::start_wait(const visit::PlayLine& line) {
    if (line.until == visit::Until::quiet && visit::is_quiet(visit_.percept()))
        return;
    const auto seconds = visit_.seconds_until(
        [&](const visit::Visit::Ahead& ahead) { return visit::has_come_about(line, ahead); }, line.limit_s,
        [] { return false; });
    refusal_ = visit_.begin({bench::Verb::wait, 0, seconds.value_or(line.limit_s)}, "student");
}

void CallPage::answer(const visit::PlayLine& line) {
    switch (line.ask) {
    case visit::Ask::order:
    case visit::Ask::chart:
        show(Side::order);
        break;
    case visit::Ask::notes:
        show(Side::notes);
        break;
    case visit::Ask::undo:
        if (const auto& undo = visit_.undo())
            waiting_.push_front(bench::format_action(visit_.site(), undo->inverse));
        else
            refusal_ = "There is nothing to undo.";
        break;
    case visit::Ask::quit:
        leave();
        break;
    case visit::Ask::status:
    case visit::Ask::help:
        show(Side::noticed);
    }
}

void CallPage::put_lead(const view::Wanted& wanted) {
    const auto& meter = visit_.percept().instruments.multimeter;
    const bool red = wanted.lead == view::Wanted::Lead::red;
    (red ? leads_.red_up : leads_.black_up) = wanted.lead_point < 0;
    if (wanted.lead_point < 0)
        return;
    (red ? leads_.red : leads_.black) = wanted.lead_point;
    const bool on = meter.red != meter.black;
    const int red_node = leads_.red ? *leads_.red : on ? meter.red : -1;
    const int black_node = leads_.black ? *leads_.black : on ? meter.black : -1;
    if (red_node < 0 || black_node < 0)
        return;
    const furnace::Model& model = visit_.site().model;
    take("leads " + bench::point_name(model, red_node) + " " + bench::point_name(model, black_node));
    leads_ = {};
}

void CallPage::obey(view::Wanted& wanted) {
    for (const std::string& line : wanted.lines)
        take(line);
    if (wanted.lead != view::Wanted::Lead::none)
        put_lead(wanted);
    if (wanted.focus)
        focus(*wanted.focus);
    if (!wanted.begun.empty())
        typed_.begin(0, wanted.begun);
}

void CallPage::handle_keys(const view::Known& known, view::Wanted& wanted) {
    if (ImGui::GetIO().WantTextInput || typed_.open)
        return;
    if (handle_tag_keys(known, keys_, tag_, wanted))
        return;
    // A slash has another key in every country: its letter counts, too, as long as the key is as built.
    const auto& letters = ImGui::GetIO().InputQueueCharacters;
    const bool slash =
        keys_.letter(Command::type) == '/' && std::find(letters.begin(), letters.end(), '/') != letters.end();
    if (keys_.pressed(Command::type) || slash)
        typed_.begin(keys_.letter(Command::type));
    if (keys_.pressed(Command::expect))
        typed_.begin(keys_.letter(Command::expect), faces::expect_line(known));
    for (std::size_t i = 0; i < kSides; ++i)
        if (keys_.pressed(static_cast<Command>(i)))
            show(static_cast<Side>(i));
    if (keys_.pressed(Command::turn))
        show(next_middle());
    if (keys_.pressed(Command::hold))
        pace_.hold(!pace_.held());
    if (keys_.pressed(Command::wait))
        wanted.lines.push_back("wait until anything");
}

/// The next view of the middle, or the one that a sheet lies over.
CallPage::Middle CallPage::next_middle() const {
    const std::size_t views = folding_.strip_beside ? kMiddles - 1 : kMiddles;
    const bool covered = !folding_.sheets_beside && sheet_up_;
    return covered ? middle_ : static_cast<Middle>((static_cast<std::size_t>(middle_) + 1) % views);
}

// ---- the page ----

void CallPage::frame(const Canvas& canvas, Rect page, double wall_s) {
    pass(wall_s);
    draw(canvas, page);
}

void CallPage::draw(const Canvas& canvas, Rect page) {
    if (const bench::HazardEvent* event = visit_.stopped()) {
        draw_stopped(canvas, page, *event);
        return;
    }
    const view::Known now = known();
    view::Wanted wanted;
    handle_keys(now, wanted);
    fill(canvas, page, canvas.theme->ground);
    const float margin = canvas.px(12);
    const std::string unproved = unproved_words(now);
    if (!unproved.empty())
        draw_unproved_edge(canvas, page, margin);
    Rect rest = page.shrunk(margin);
    folding_ = fold(rest.width() / canvas.scale, rest.height() / canvas.scale);
    if (folding_.strip_beside && middle_ == Middle::strip)
        middle_ = Middle::furnace;
    draw_head(canvas, rest.cut_top(control_height(canvas)),
              folding_.sheets_beside ? unproved : std::string());
    if (!folding_.sheets_beside && !unproved.empty()) { // it has a row of its own
        rest.cut_top(canvas.px(6));
        const Rect row = rest.cut_top(line_height(canvas, Type::Body));
        draw_unproved_caption(canvas, row, row.width(), unproved);
    }
    rest.cut_top(canvas.px(10));
    if (!folding_.sheets_beside)
        draw_rail(canvas, rest);
    draw_foot(canvas, rest, now, wanted);
    if (folding_.strip_beside) {
        draw_strip(canvas, rest.cut_left(canvas.px(kStripWide)), now, wanted);
        rest.cut_left(canvas.px(kBetween));
    }
    if (!folding_.sheets_beside)
        draw_guidance(canvas, rest);
    Rect side = rest;
    if (folding_.sheets_beside) {
        side =
            rest.cut_right(std::clamp(rest.width() * 0.44F, canvas.px(kLeastSheet), canvas.px(kMostSheet)));
        rest.cut_right(canvas.px(kBetween));
    }
    if (folding_.sheets_beside || !sheet_up_)
        draw_middle(canvas, rest, now, wanted);
    if (sheet_shown())
        draw_side(canvas, side, now, wanted);
    obey(wanted);
}

/// Names of all panes, where one is shown at a time, with the key that leads there.
void CallPage::draw_rail(const Canvas& canvas, Rect& rest) {
    std::vector<std::string> names, keys;
    for (const std::string_view name : kMiddleNames) {
        names.emplace_back(name);
        keys.push_back(keys_.name(Command::turn));
    }
    for (std::size_t i = 0; i < kSides; ++i) {
        names.emplace_back(kSideNames[i]);
        keys.push_back(keys_.name(static_cast<Command>(i)));
    }
    float plain = 0, with_keys = 0;
    for (std::size_t i = 0; i < names.size(); ++i) {
        plain = std::max(plain, button_width(canvas, names[i]));
        with_keys = std::max(with_keys, button_width(canvas, names[i], keys[i]));
    }
    const bool keys_too = rest.width() - with_keys >= canvas.px(kLeastMiddle + 2 * kBetween);
    Rect rail = rest.cut_left(std::ceil(keys_too ? with_keys : plain));
    rest.cut_left(canvas.px(kBetween));
    const float edge = std::round(line_width(canvas, Line::Rule));
    const float height =
        std::floor(std::min(control_height(canvas), rail.height() / static_cast<float>(names.size())));
    const std::size_t up =
        sheet_up_ ? kMiddles + static_cast<std::size_t>(side_) : static_cast<std::size_t>(middle_);
    for (std::size_t i = 0; i < names.size(); ++i) {
        const Rect box = rail.cut_top(height);
        rail.min.y -= edge;
        const bool has_key = i >= kMiddles || i == static_cast<std::size_t>(next_middle());
        if (!button(canvas, box, names[i], i == up, keys_too && has_key ? keys[i] : std::string()))
            continue;
        if (i < kMiddles)
            show(static_cast<Middle>(i));
        else
            show(static_cast<Side>(i - kMiddles));
    }
}

/// What was done, why nobody does it, and the way to the debrief. Nothing else can be done any more.
void CallPage::draw_stopped(const Canvas& canvas, Rect page, const bench::HazardEvent& event) {
    const Theme& theme = *canvas.theme;
    const bench::HazardRow& row = visit_.site().hazards[static_cast<std::size_t>(event.hazard)];
    fill(canvas, page, theme.ground);
    struct Said {
        std::string words;
        Type type;
        Colour colour;
    };
    const std::array<Said, 4> lines{
        {{"Stop work at " + visit::clock_text(event.tick - visit_.arrived_tick()) + ". " + row.title + ".",
          Type::Title, theme.alarm},
         {"Where: " + event.about + ".", Type::Body, theme.ink},
         {row.why, Type::Body, theme.ink},
         {"This call ends here. The debrief begins with this moment.", Type::Body, theme.ink}}};
    const float between = canvas.px(12), rule_room = canvas.px(18), least_top = canvas.px(12);
    const float width = std::min(page.width() - canvas.px(60), canvas.px(720));
    float height = control_height(canvas);
    for (const Said& line : lines)
        height += text_size(canvas, line.words, line.type, width).y + between;
    // A little above the middle, or as high as it must be; what has no room even so is scrolled to.
    const float top = std::max(least_top, std::min(page.height() * 0.2F, (page.height() - height) / 2));
    const float margin = std::round(canvas.px(6)); // of a column
    const float left = page.centre().x - width / 2 - rule_room - margin;
    sheet::Column column(
        canvas,
        {{left, page.min.y + top - margin},
         {left + rule_room + width + 2 * margin + std::round(ImGui::GetStyle().ScrollbarSize), page.max.y}},
        "stopped");
    const ImVec2 mark{column.left(), column.y()};
    column.indent(18);
    for (const Said& line : lines) {
        const Rect box = column.take(text_size(canvas, line.words, line.type, width).y);
        paragraph(column.canvas_for(box), box.min, width, line.words, line.type, line.colour);
        column.gap(12);
    }
    segment(column.canvas(), mark, {mark.x, column.y()}, Line::Silhouette, theme.alarm);
    const Rect box = rect_at(column.take(control_height(canvas)).min,
                             {button_width(canvas, "Talk it over", "Enter"), control_height(canvas)});
    if (button(column.canvas_for(box), box, "Talk it over", false, "Enter") ||
        platform::key_pressed(platform::Key::Enter))
        leave();
}

void CallPage::draw_head(const Canvas& canvas, Rect area, const std::string& unproved) {
    std::vector<FlowItem> items;
    items.push_back({pace_.held() ? "Held##held" : "Runs##held", keys_.name(Command::hold), pace_.held(),
                     true, 0, button_width(canvas, "Held", keys_.name(Command::hold))});
    for (std::size_t i = 0; i < kSpeedNames.size(); ++i)
        items.push_back({std::string(kSpeedNames[i]), "", i == pace_.speed(), true, 1, 0});
    items.push_back({"Wait", keys_.name(Command::wait), false, true, 2, 0});
    items.push_back({"Leave", "", false, true, 3, 0});
    const std::string clock = visit::clock_text(visit_.ticks_here());
    const float clock_width = std::max(canvas.px(96), text_size(canvas, clock, Type::Heading).x);
    if (width_of_flow(canvas, items) + canvas.px(16) + clock_width > area.width())
        for (FlowItem& item : items) { // one line is worth more than the keys beside the words
            item.key.clear();
            item.least_width = item.least_width > 0 ? button_width(canvas, "Runs") : 0;
        }
    const float width = width_of_flow(canvas, items);
    const Rect right = area.cut_right(width);
    const int pressed = draw_flow(canvas, lay_out_flow(canvas, right, items), items);
    if (pressed == 0)
        pace_.hold(!pace_.held());
    else if (pressed >= 1 && pressed <= 4)
        pace_.set_speed(static_cast<std::size_t>(pressed - 1));
    else if (pressed == 5)
        take("wait until anything");
    else if (pressed == 6)
        leave();
    area.cut_right(canvas.px(16));
    text_in(canvas, area.cut_right(clock_width), clock, Type::Heading, canvas.theme->ink, Align::End);
    const std::string& title = bundle_->scenario.title;
    area.cut_right(unproved.empty() ? 0 : canvas.px(12));
    if (!unproved.empty())
        area = draw_unproved_caption(canvas, area, text_size(canvas, title, Type::Heading).x + 1, unproved);
    const Type type = largest_type(canvas, title, area.width());
    if (text_size(canvas, title, type).x <= area.width()) // it stands on the work order, too
        text_in(canvas, area, title, type, canvas.theme->ink);
}

/// A hand on the shoulder, as a pencil note: what to do, and why. Where both would leave too little of the
/// page, one of them, and a button for the other.
void CallPage::draw_guidance(const Canvas& canvas, Rect& rest) {
    if (!guidance_ || guidance_->step() == nullptr)
        return;
    const lesson::GuideStep& step = *guidance_->step();
    const std::string count =
        std::to_string(guidance_->number()) + " of " + std::to_string(guidance_->count());
    const float left = text_size(canvas, "00 of 00", Type::Secondary).x + canvas.px(22);
    const float width = rest.width() - left - canvas.px(10);
    const float say = text_size(canvas, step.say, Type::Body, width).y;
    const float why = step.why.empty() ? 0 : text_size(canvas, step.why, Type::Secondary, width).y;
    const bool both = step.why.empty() || rest.height() - say - why - canvas.px(22) >= canvas.px(kForBoth);
    const float turns =
        both ? 0 : control_height(canvas) + line_height(canvas, Type::Secondary) + canvas.px(2);
    const bool reasons = !both && guide_says_why_;
    Rect box = rest.cut_top(std::max(both ? say + why : reasons ? why : say, turns) + canvas.px(14));
    rest.cut_top(canvas.px(8));
    segment(canvas, box.min, {box.min.x, box.max.y}, Line::Silhouette, canvas.theme->ink);
    box.cut_top(canvas.px(6));
    box.cut_left(canvas.px(10));
    text(canvas, box.min, count, Type::Secondary, canvas.theme->pencil);
    const std::string_view other = reasons ? "Do" : "Why";
    if (!both && button(canvas,
                        rect_at({box.min.x, box.min.y + line_height(canvas, Type::Secondary) + canvas.px(2)},
                                {button_width(canvas, "Why"), control_height(canvas)}),
                        std::string(other) + "##guide"))
        guide_says_why_ = !guide_says_why_;
    box.cut_left(left - canvas.px(10));
    if (!reasons)
        paragraph(canvas, box.min, width, step.say, Type::Body, canvas.theme->ink);
    if (!step.why.empty() && (both || reasons))
        paragraph(canvas, {box.min.x, box.min.y + (both ? say : 0)}, width, step.why, Type::Secondary,
                  canvas.theme->pencil);
}

/// The row over the middle: which view of it, and what the furnace shows.
void CallPage::draw_views(const Canvas& canvas, Rect& area) {
    const bool furnace = middle_ == Middle::furnace;
    if (!folding_.sheets_beside && !furnace)
        return;
    Rect head = area.cut_top(control_height(canvas));
    area.cut_top(canvas.px(8));
    if (folding_.sheets_beside) {
        const std::span<const std::string_view> views(kMiddleNames.data(),
                                                      folding_.strip_beside ? kMiddles - 1 : kMiddles);
        middle_ = static_cast<Middle>(choice(canvas, head.cut_left(choice_width(canvas, views)), views,
                                             static_cast<std::size_t>(middle_)));
        head.cut_left(canvas.px(12));
    }
    if (!furnace)
        return;
    const std::string_view words = longest_that_fits(canvas, {"Taps and probes", "Taps"}, Type::Body,
                                                     head.width() - button_width(canvas, ""));
    if (button(canvas, head.cut_left(button_width(canvas, words)), words, furnace_.show_spots))
        furnace_.show_spots = !furnace_.show_spots;
}

void CallPage::draw_middle(const Canvas& canvas, Rect area, const view::Known& known, view::Wanted& wanted) {
    const float height = tag_.thing ? tag_height(canvas, area.width(), known, tag_) : 0;
    const float head = control_height(canvas) + canvas.px(16);
    if (tag_.thing && area.height() - head - height < canvas.px(kLeastDrawing)) {
        draw_tag(canvas, area, known, keys_, tag_, wanted);
        return;
    }
    draw_views(canvas, area);
    if (folding_.sheets_beside)
        draw_guidance(canvas, area);
    if (tag_.thing) {
        const Rect tag = area.cut_bottom(height);
        area.cut_bottom(canvas.px(8));
        draw_tag(canvas, tag, known, keys_, tag_, wanted);
    }
    switch (middle_) {
    case Middle::furnace:
        draw_furnace_pane(canvas, area, known, seen_furnace(known), tag_.thing, furnace_, wanted);
        break;
    case Middle::diagram:
        diagram_.lead_in_hand = lead_in_hand();
        diagram_.focus = tag_.thing;
        diagram::draw_diagram(canvas, area, ladder_, known, diagram_, wanted);
        break;
    case Middle::trace:
        trace_.draw(canvas, area, known);
        break;
    case Middle::strip:
        draw_strip(canvas, area, known, wanted);
    }
}

cutaway::CutawayScene CallPage::seen_furnace(const view::Known& known) const {
    cutaway::CutawayScene scene = cutaway::scene_of(*known.site, known.percept, travel_);
    motion_.show_in(scene);
    if (!moves_)
        cutaway::stand_still(scene);
    return scene;
}

template <class View, class Draw>
void CallPage::draw_with_evidence(View& view, Draw draw) {
    view.evidence = sheets_.evidence;
    draw(view);
    sheets_.evidence = view.evidence;
}

/// Names of the sheets over the sheet that lies on top.
void CallPage::draw_side_tabs(const Canvas& canvas, Rect& area) {
    std::vector<FlowItem> items;
    for (std::size_t i = 0; i < kSides; ++i)
        items.push_back({std::string(kSideNames[i]), keys_.name(static_cast<Command>(i)),
                         i == static_cast<std::size_t>(side_), true, 0, 0});
    const auto without_keys = [&] {
        for (FlowItem& item : items)
            item.key.clear();
    };
    const std::vector<FlowItem> with_keys = items;
    if (width_of_flow(canvas, items) > area.width())
        without_keys(); // one line is worth more than the keys beside the words
    if (width_of_flow(canvas, items) > area.width()) { // two lines of three, in columns
        items = with_keys;
        const float third = std::floor(area.width() / 3);
        if (std::any_of(items.begin(), items.end(), [&](const FlowItem& item) {
                return button_width(canvas, item.words, item.key) > third;
            }))
            without_keys();
        for (FlowItem& item : items)
            item.least_width = third;
    }
    const Flow flow = lay_out_flow(canvas, area, items);
    if (const int pressed = draw_flow(canvas, flow, items); pressed >= 0)
        show(static_cast<Side>(pressed));
    area.cut_top(flow.height + canvas.px(10));
}

void CallPage::draw_side(const Canvas& canvas, Rect area, const view::Known& known, view::Wanted& wanted) {
    if (folding_.sheets_beside)
        draw_side_tabs(canvas, area);
    switch (side_) {
    case Side::order:
        draw_order(canvas, area, known, wanted);
        break;
    case Side::bag:
        bag_.in_hand = lead_in_hand();
        bag_.red_waits = leads_.red.value_or(-1);
        bag_.black_waits = leads_.black.value_or(-1);
        faces::draw_bag(canvas, area, known, bag_, wanted);
        break;
    case Side::notes:
        draw_with_evidence(sheets_.notebook,
                           [&](auto& view) { paper::draw_notebook(canvas, area, known, view, wanted); });
        break;
    case Side::suspects:
        draw_with_evidence(sheets_.suspects,
                           [&](auto& view) { paper::draw_suspects(canvas, area, known, view, wanted); });
        break;
    case Side::close:
        draw_close(canvas, area, known, wanted);
        break;
    case Side::noticed:
        draw_noticed(canvas, area, known, wanted);
    }
}

namespace {

/// Two sheets that share a place: the row that turns them is cut off the top.
std::size_t turn_leaf(const Canvas& canvas, Rect& area, std::string_view first, std::string_view second,
                      std::size_t leaf) {
    const std::array<std::string_view, 2> names{first, second};
    leaf = choice(canvas, area.cut_top(control_height(canvas)), names, leaf);
    area.cut_top(canvas.px(8));
    return leaf;
}

} // namespace

void CallPage::draw_order(const Canvas& canvas, Rect area, const view::Known& known, view::Wanted& wanted) {
    sheets_.order_leaf = turn_leaf(canvas, area, "Work order", "Door chart", sheets_.order_leaf);
    if (sheets_.order_leaf == 0)
        paper::draw_work_order(canvas, area, known, sheets_.order, wanted);
    else
        paper::draw_door_chart(canvas, area, known, sheets_.chart, wanted);
}

void CallPage::draw_close(const Canvas& canvas, Rect area, const view::Known& known, view::Wanted& wanted) {
    const bool tune_up = bundle_->scenario.kind == lesson::Kind::tune_up;
    sheets_.close_leaf =
        turn_leaf(canvas, area, tune_up ? "Report" : "Diagnosis", "Customer's copy", sheets_.close_leaf);
    if (sheets_.close_leaf == 1)
        paper::draw_customer(canvas, area, known, sheets_.customer, wanted);
    else if (tune_up)
        draw_with_evidence(sheets_.report,
                           [&](auto& view) { paper::draw_report(canvas, area, known, view, wanted); });
    else
        draw_with_evidence(sheets_.diagnosis,
                           [&](auto& view) { paper::draw_diagnosis(canvas, area, known, view, wanted); });
}

view::Wanted::Lead CallPage::lead_in_hand() const {
    return leads_.red_up     ? view::Wanted::Lead::red
           : leads_.black_up ? view::Wanted::Lead::black
                             : view::Wanted::Lead::none;
}

/// What the hands are doing, and how far it is.
void CallPage::draw_act(const Canvas& canvas, Rect area, const view::Known& known) const {
    const bench::Hands& hands = known.percept.hands;
    const std::uint64_t left = ticks_busy();
    const auto whole = static_cast<float>(std::max<std::uint64_t>(act_ticks_, 1));
    const float share = 1 - std::min(1.0F, static_cast<float>(left) / whole);
    Rect bar = area.shrunk(canvas.px(2));
    fill(canvas, bar, canvas.theme->panel);
    fill(canvas, {bar.min, {bar.min.x + bar.width() * share, bar.max.y}}, faded(canvas.theme->ink, 0.18F));
    outline(canvas, bar, Line::Rule, canvas.theme->pencil);
    bar.cut_left(canvas.px(8));
    const auto seconds = static_cast<int>(std::lround(static_cast<double>(left) * units::seconds_per_tick));
    const std::string act = bench::format_action(*known.site, hands.action);
    const std::string rest = std::to_string(seconds) + " s left";
    text_in(canvas, bar,
            longest_that_fits(canvas, {act + "  ·  " + rest, act, rest}, Type::Secondary, bar.width()),
            Type::Secondary, canvas.theme->ink);
}

/// What the hands do, why something can't be done, or what was noticed last.
void CallPage::draw_words(const Canvas& canvas, Rect area, const view::Known& known) const {
    if (ticks_busy() > 0 && act_ticks_ > kShortAct)
        draw_act(canvas, area, known);
    else if (const std::string& why = said(); why.empty())
        draw_last_noticed(canvas, area, known);
    else if (text_size(canvas, why, Type::Body).x <= area.width())
        text_in(canvas, area, why, Type::Body, canvas.theme->alarm);
    else
        paragraph(canvas, area.min, area.width(), why, Type::Body, canvas.theme->alarm);
}

/// What the instruments in use show, while their faces have no place beside the drawing. A long refusal may
/// leave no room for it.
void CallPage::draw_numbers(const Canvas& canvas, Rect& rest, const view::Known& known) const {
    const float row = line_height(canvas, Type::Body);
    if (sheet_shown() || rest.height() - row - canvas.px(4) < canvas.px(kLeastDrawing))
        return;
    const std::string numbers = faces::numbers_in_short(known, lead_in_hand(), [&](const std::string& some) {
        return text_size(canvas, some, Type::Body).x <= rest.width();
    });
    if (numbers.empty())
        return;
    text_in(canvas, rest.cut_bottom(row), numbers, Type::Body, canvas.theme->ink);
    rest.cut_bottom(canvas.px(4));
}

/// Words over the line that can be typed; on a low page beside its button. A long refusal takes the lines
/// that it needs.
void CallPage::draw_foot(const Canvas& canvas, Rect& rest, const view::Known& known, view::Wanted& wanted) {
    const std::string key = keys_.name(Command::type);
    const float button_room = typed_width(canvas, key) + canvas.px(12);
    const float width = rest.width() - (folding_.low ? button_room : 0);
    const float least =
        folding_.low ? 2 * (line_height(canvas, Type::Secondary) + canvas.px(3)) : control_height(canvas);
    const float words =
        said().empty() ? least : std::max(least, text_size(canvas, said(), Type::Body, width).y);
    const float typed = control_height(canvas);
    Rect area = rest.cut_bottom(folding_.low ? std::max(words, typed) : words + canvas.px(8) + typed);
    rest.cut_bottom(canvas.px(8));
    draw_numbers(canvas, rest, known);
    if (!folding_.low) {
        draw_words(canvas, area.cut_top(words), known);
        area.cut_top(canvas.px(8));
    } else if (!typed_.open) {
        draw_words(canvas, area.cut_right(width), known);
        area = area.cut_top(typed);
    }
    const std::string line = draw_typed(canvas, area, *known.site, key, typed_);
    if (!line.empty())
        wanted.lines.push_back(line);
}

} // namespace lightoff::work
