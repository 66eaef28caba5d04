// SPDX-License-Identifier: MIT
#include "gui/explore/explore.hpp"

#include "gui/canvas/controls.hpp"
#include "gui/canvas/flow.hpp"
#include "gui/canvas/lettering.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/canvas/style.hpp"
#include "gui/cutaway/cutaway.hpp"
#include "gui/explore/board_words.hpp"
#include "gui/explore/hands_words.hpp"
#include "gui/explore/lanes.hpp"
#include "gui/platform/input_queue.hpp"
#include "gui/platform/platform.hpp"
#include "gui/trace/ticks.hpp"
#include "units/convert.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

namespace lightoff::explore {
namespace {

using namespace canvas;
using platform::Key;
using platform::key_pressed;

constexpr std::string_view kSafety =
    "Training only. Not instruction for a live appliance; follow local codes, the rating plate and licensed "
    "practice.";
constexpr std::array<double, 4> kSpeeds{1, 2, 5, 20};
constexpr std::array<const char*, 4> kSpeedNames{"1×", "2×", "5×", "20×"};
constexpr std::array<const char*, 4> kSpeedKeys{"1", "2", "3", "4"};
constexpr std::array<Key, 4> kSpeedDigits{Key::Digit1, Key::Digit2, Key::Digit3, Key::Digit4};
constexpr std::array<double, 4> kSpans_s{120, 240, 600, 1200};
constexpr float kTextStep = 10, kLeastText = 80, kMostText = 200; // percent

std::string on_off(bool on) {
    return on ? "on" : "off";
}

/// A button keeps the room of the longest words that it may come to show.
float room_for(const Canvas& canvas, const std::vector<std::string>& words, const std::string& key) {
    float widest = 0;
    for (const std::string& word : words) {
        widest = std::max(widest, button_width(canvas, word, key));
    }
    return widest;
}

/// Width in design pixels from which on cutaway and one more page stand side by side, and from which on all
/// do.
constexpr float kTwoWide = 760, kAllWide = 1140;
constexpr float kTwoHigh = 400, kAllHigh = 500;
/// Design pixels that a page must have for everything to find a place; text grows no further.
const ImVec2 kLeastPage{640, 360};
constexpr float kStepAndMore = 600; ///< for both on one line
constexpr float kLeastRecorder = 290;

const char* name_of(View view) {
    static constexpr std::array<const char*, 4> kNames{"Furnace", "Readings", "Recorder", "Switches"};
    return kNames[static_cast<std::size_t>(view)];
}

/// The largest type in which the words fit on one line.
Type largest_type(const Canvas& canvas, std::string_view words, float width) {
    for (const Type type : {Type::Heading, Type::Body}) {
        if (text_size(canvas, words, type).x <= width) {
            return type;
        }
    }
    return Type::Secondary;
}

bool control_held() {
    return ImGui::GetIO().KeyCtrl;
}

} // namespace

/// Something that can be done, as a button.
struct Explore::Command {
    FlowItem item;
    std::vector<std::string> may_show; ///< all words that the button shows at one time or another
    std::function<void(Explore&)> run;
};

/// Which views have a place on this page, and where.
struct Explore::Places {
    std::array<Rect, 4> of{};
    Rect step; ///< of the board, in words
    std::array<bool, 4> shown{};
    void put(View view, Rect box) {
        of[static_cast<std::size_t>(view)] = box;
        shown[static_cast<std::size_t>(view)] = true;
    }
    bool has(View view) const { return shown[static_cast<std::size_t>(view)]; }
    Rect at(View view) const { return of[static_cast<std::size_t>(view)]; }
};

Explore::Explore(const bench::Site& site, const lesson::Scenario& scenario)
    : site_(&site), title_(scenario.title), furnace_(site, scenario), lanes_(lanes_of(site.model)) {
    chart_view_.span_s = kSpans_s.front();
}

void Explore::set_look(ThemeId theme, float text_percent) {
    wishes_.theme = theme;
    wishes_.text_percent = std::clamp(text_percent, kLeastText, kMostText);
}

void Explore::set_paused(bool paused) {
    paused_ = paused;
    wishes_.next_frame_in_s = paused ? 1e9 : 0;
}

double Explore::speed() const {
    return kSpeeds[speed_];
}

platform::Wishes Explore::wishes() const {
    platform::Wishes wishes = wishes_;
    wishes.text_percent = text_percent_in(window_px_);
    return wishes;
}

float Explore::text_percent_in(ImVec2 window_px) const {
    if (window_px.x <= 0 || window_px.y <= 0) {
        return wishes_.text_percent;
    }
    const float whole = platform::design_scale(window_px.y, 100, theme(wishes_.theme));
    const float most = 100 / whole * std::min(window_px.x / kLeastPage.x, window_px.y / kLeastPage.y);
    return std::clamp(wishes_.text_percent, kLeastText, std::max(kLeastText, most));
}

void Explore::frame(const platform::FrameInput& input) {
    window_px_ = input.size;
    pass(input.wall_delta_s);
    ImGui::SetNextWindowPos({0, 0});
    ImGui::SetNextWindowSize(input.size);
    ImGui::Begin("page", nullptr, kPage);
    draw(input.canvas.here(), {{0, 0}, input.size});
    ImGui::End();
}

void Explore::pass(double wall_s) {
    if (!paused_) {
        furnace_.pass(wall_s, speed());
    }
}

// ---- what can be done ----

void Explore::act(const std::string& action) {
    refusal_ = furnace_.act(action);
}

void Explore::turn_set_point(int degrees_f) {
    const double now_f = units::k_to_fahrenheit(furnace_.world().inputs.set_point_k);
    act("thermostat-set " + figure(std::round(now_f) + degrees_f, 0) + "F");
}

void Explore::change_text(float by_percent) {
    set_look(wishes_.theme, wishes_.text_percent + by_percent);
}

void Explore::next_theme() {
    const auto index = static_cast<std::size_t>(wishes_.theme);
    wishes_.theme = kThemes[(index + 1) % kThemes.size()];
}

std::vector<Explore::Command> Explore::running_commands() const {
    std::vector<Command> commands;
    commands.push_back({{paused_ ? "Run##run" : "Pause##run", "Space", paused_, true, 0, 0},
                        {"Run", "Pause"},
                        [](Explore& d) { d.set_paused(!d.paused_); }});
    for (std::size_t i = 0; i < kSpeeds.size(); ++i) {
        commands.push_back({{kSpeedNames[i], kSpeedKeys[i], i == speed_, true, 1, 0}, {}, [i](Explore& d) {
                                d.speed_ = i;
                            }});
    }
    return commands;
}

std::vector<Explore::Command> Explore::look_commands() const {
    std::vector<Command> commands;
    if (may_leave_) {
        commands.push_back({{"Back", "Esc", false, true, 3, 0}, {}, [](Explore& d) { d.left_ = true; }});
    }
    commands.push_back({{"Theme", "L", false, true, 2, 0}, {}, [](Explore& d) { d.next_theme(); }});
    commands.push_back(
        {{"A−", "Ctrl −", false, true, 2, 0}, {}, [](Explore& d) { d.change_text(-kTextStep); }});
    commands.push_back(
        {{"A+", "Ctrl +", false, true, 2, 0}, {}, [](Explore& d) { d.change_text(kTextStep); }});
    return commands;
}

std::vector<Explore::Command> Explore::hands_commands() const {
    const furnace::Inputs& in = furnace_.world().inputs;
    const std::string set = figure(std::round(units::k_to_fahrenheit(in.set_point_k)), 0) + " °F";
    const bool heat = in.thermostat_mode == control::ThermostatMode::heat;
    std::vector<Command> commands;
    commands.push_back({{"Thermostat " + set, "", false, false, 0, 0}, {}, [](Explore&) {}});
    commands.push_back({{"−1 °F", "D", false, true, 0, 0}, {}, [](Explore& d) { d.turn_set_point(-1); }});
    commands.push_back({{"+1 °F", "U", false, true, 0, 0}, {}, [](Explore& d) { d.turn_set_point(1); }});
    commands.push_back(
        {{heat ? "Heat##mode" : "Off##mode", "H", false, true, 0, 0}, {"Heat", "Off"}, [heat](Explore& d) {
             d.act(heat ? "thermostat-mode off" : "thermostat-mode heat");
         }});
    const auto toggle = [&](const std::string& thing, const std::string& verb, const std::string& key,
                            bool on, const std::string& on_word, const std::string& off_word) {
        commands.push_back({{thing + " " + (on ? on_word : off_word) + "##" + verb, key, !on, true, 1, 0},
                            {thing + " " + on_word, thing + " " + off_word},
                            [verb, on](Explore& d) { d.act(verb + " " + on_off(!on)); }});
    };
    toggle("Disconnect", "disconnect", "X", in.disconnect_on != 0, "on", "off");
    toggle("Gas cock", "gas-cock", "G", in.gas_cock_open != 0, "open", "shut");
    toggle("Burner door", "burner-door", "B", in.burner_door_on != 0, "on", "off");
    toggle("Blower door", "blower-door", "F", in.blower_door_on != 0, "on", "off");
    return commands;
}

/// A small page keeps its head low: what is seldom used goes to the page of switches.
std::vector<Explore::Command> Explore::commands_of(View view) const {
    std::vector<Command> commands = view == View::Hands ? hands_commands() : running_commands();
    if (small_ == (view == View::Hands)) {
        for (const Command& command : look_commands()) {
            commands.push_back(command);
        }
    }
    return commands;
}

void Explore::handle_keys() {
    if (control_held()) {
        if (key_pressed(Key::Equal)) {
            change_text(kTextStep);
        }
        if (key_pressed(Key::Minus)) {
            change_text(-kTextStep);
        }
        if (key_pressed(Key::Q)) {
            wishes_.close = true;
        }
        return;
    }
    // Where the keyboard's cursor shows, Space presses the button that it stands on.
    if ((key_pressed(Key::Space) && !ImGui::GetIO().NavVisible) || key_pressed(Key::P)) {
        set_paused(!paused_);
    }
    for (std::size_t i = 0; i < kSpeedDigits.size(); ++i) {
        if (key_pressed(kSpeedDigits[i])) {
            speed_ = i;
        }
    }
    if (may_leave_ && key_pressed(Key::Escape)) {
        left_ = true;
    }
    if (key_pressed(Key::L)) {
        next_theme();
    }
    if (key_pressed(Key::M)) {
        ++readings_page_;
    }
    if (key_pressed(Key::V) && !choices_.empty()) {
        const auto at = std::find(choices_.begin(), choices_.end(), view_);
        view_ = at == choices_.end() || at + 1 == choices_.end() ? choices_.front() : *(at + 1);
    }
    static constexpr std::array<Key, 7> kHandKeys{Key::D, Key::U, Key::H, Key::X, Key::G, Key::B, Key::F};
    for (std::size_t i = 0; i < kHandKeys.size(); ++i) {
        if (key_pressed(kHandKeys[i])) {
            hands_commands()[i + 1].run(*this); // the first is a word, no button
            return;
        }
    }
}

std::vector<FlowItem> Explore::items_of(const Canvas& canvas, const std::vector<Command>& commands) {
    std::vector<FlowItem> items;
    for (const Command& command : commands) {
        items.push_back(command.item);
        items.back().least_width = room_for(canvas, command.may_show, command.item.key);
    }
    return items;
}

void Explore::draw_commands(const Canvas& canvas, Rect area, const std::vector<Command>& commands) {
    const std::vector<FlowItem> items = items_of(canvas, commands);
    const int pressed = draw_flow(canvas, lay_out_flow(canvas, area, items), items);
    if (pressed >= 0) {
        commands[static_cast<std::size_t>(pressed)].run(*this);
    }
}

// ---- the page ----

void Explore::draw(const Canvas& canvas, Rect page) {
    handle_keys();
    readings_ = readings_of(site_->model, furnace_.world(), furnace_.workspace());
    Rect rest = page.shrunk(canvas.px(14));
    small_ = rest.width() / canvas.scale < kTwoWide || rest.height() / canvas.scale < kTwoHigh;
    draw_footer(canvas, rest);
    draw_head(canvas, rest);
    Places places = lay_out(canvas, rest);
    if (places.has(View::Hands)) {
        draw_commands(canvas, places.at(View::Hands), commands_of(View::Hands));
    }
    if (places.has(View::Furnace)) {
        draw_furnace(canvas, places.at(View::Furnace));
    }
    if (places.has(View::Readings)) {
        draw_readings_page(canvas, places.at(View::Readings), places.step);
    }
    if (!small_) {
        draw_step(canvas, places.step);
    }
    if (places.has(View::Recorder)) {
        draw_recorder(canvas, places.at(View::Recorder));
    }
}

/// What hands are doing or why they are not, then the safety line.
void Explore::draw_footer(const Canvas& canvas, Rect& rest) const {
    const Theme& theme = *canvas.theme;
    const float height = text_size(canvas, kSafety, Type::Minimum, rest.width()).y;
    const Rect safety = rest.cut_bottom(height);
    paragraph(canvas, safety.min, safety.width(), kSafety, Type::Minimum, theme.pencil);
    const float line = line_height(canvas, Type::Secondary);
    const Rect notice = rest.cut_bottom(line + canvas.px(4));
    const bench::World& world = furnace_.world();
    if (!refusal_.empty()) {
        const std::string words = "Not done. " + refusal_;
        text_in(canvas, notice, words, Type::Secondary, theme.alarm);
    } else if (world.hands.busy != 0) {
        const double left_s =
            static_cast<double>(world.hands.done_tick - world.tick) * site_->model.board.tick_s;
        text_in(canvas, notice,
                "Hands: " + hands_words(*site_, world.hands.action) + ", " + figure(left_s, 1) + " s left",
                Type::Secondary, theme.ink);
    } else if (small_) {
        const std::string step = step_words();
        const std::string more = "  ·  " + more_words();
        const bool fits = text_size(canvas, step + more, Type::Secondary).x <= notice.width();
        text_in(canvas, notice, fits ? step + more : step, Type::Secondary, theme.ink);
    }
    rest.cut_bottom(canvas.px(4));
}

void Explore::draw_head(const Canvas& canvas, Rect& rest) {
    const Theme& theme = *canvas.theme;
    const std::vector<FlowItem> items = items_of(canvas, commands_of(View::Furnace));
    const float buttons = width_of_flow(canvas, items);
    const std::string time = trace::time_label(furnace_.now_s());
    const float time_width = text_size(canvas, "0:00:00", Type::Heading).x;
    const float gap = canvas.px(18);
    Rect row = rest.cut_top(control_height(canvas));
    if (row.width() >= time_width + gap + buttons) {
        draw_commands(canvas, row.cut_right(buttons), commands_of(View::Furnace));
        row.cut_right(gap);
    } else {
        const Rect below = Rect{{rest.min.x, rest.min.y + canvas.px(6)}, rest.max};
        const Flow flow = lay_out_flow(canvas, below, items);
        draw_commands(canvas, below, commands_of(View::Furnace));
        rest.cut_top(canvas.px(6) + flow.height);
    }
    text_in(canvas, row.cut_right(time_width), time, Type::Heading, theme.ink, Align::End);
    row.cut_right(gap);
    const Type type = largest_type(canvas, title_, row.width());
    if (text_size(canvas, title_, type).x <= row.width()) {
        text_in(canvas, row, title_, type, theme.ink);
    }
    rest.cut_top(canvas.px(10));
}

std::string Explore::step_words() const {
    return board_step(site_->model, furnace_.world(), 0);
}

/// How long it has been at that step, and what else the board does.
std::string Explore::more_words() const {
    const bench::World& world = furnace_.world();
    std::string more = "for " + trace::time_label(static_cast<double>(world.state.board.ticks_in_state[0]) *
                                                  site_->model.board.tick_s);
    for (std::size_t m = 1; m < site_->model.board.machines.size() && world.state.board.powered != 0; ++m) {
        more += "  ·  " + board_step(site_->model, world, m);
    }
    return more;
}

/// The board's step in words, large; for how long, blower and lamp below.
void Explore::draw_step(const Canvas& canvas, Rect box) const {
    const Theme& theme = *canvas.theme;
    const std::string step = step_words();
    const Rect upper = box.cut_top(line_height(canvas, Type::Heading));
    text_in(canvas, upper, step, largest_type(canvas, step, upper.width()), theme.ink);
    std::string more = more_words();
    if (text_size(canvas, more, Type::Secondary).x > box.width()) {
        more = more.substr(0, more.find("  ·  "));
    }
    const std::string lamp = "  ·  lamp: " + lamp_words(site_->model, furnace_.world());
    if (text_size(canvas, more + lamp, Type::Secondary).x <= box.width()) {
        more += lamp;
    }
    text_in(canvas, box.cut_top(line_height(canvas, Type::Secondary)), more, Type::Secondary, theme.pencil);
}

/// Cuts a row of views to choose from off the top, where views share a place; returns what is left.
Rect Explore::cut_view_choice(const Canvas& canvas, Rect& rest) {
    std::vector<FlowItem> items;
    for (const View view : choices_) {
        items.push_back({name_of(view), view == view_ ? "V" : "", view == view_, true, 0, 0});
    }
    const Flow flow = lay_out_flow(canvas, rest, items);
    const int pressed = draw_flow(canvas, flow, items);
    if (pressed >= 0) {
        view_ = choices_[static_cast<std::size_t>(pressed)];
    }
    rest.cut_top(flow.height + canvas.px(10));
    return rest;
}

Explore::Places Explore::lay_out(const Canvas& canvas, Rect rest) {
    Places places;
    const float step = line_height(canvas, Type::Heading) + line_height(canvas, Type::Secondary);
    const float wide = rest.width() / canvas.scale;
    const float gap = canvas.px(26);
    choices_.clear();
    const float hands = lay_out_flow(canvas, rest, items_of(canvas, hands_commands())).height;
    if (!small_ && wide >= kAllWide && (rest.height() - hands) / canvas.scale >= kAllHigh) {
        places.put(View::Hands, rest.cut_top(hands));
        rest.cut_top(canvas.px(12));
        places.put(View::Furnace, rest.cut_left(std::round(rest.width() * 0.45F)));
        rest.cut_left(gap);
        places.step = rest.cut_top(step);
        rest.cut_top(canvas.px(10));
        const float room = rest.height() - canvas.px(kLeastRecorder);
        const ReadingsLayout layout = lay_out_readings(canvas, {rest.width(), room}, readings_);
        places.put(View::Readings, rest.cut_top(layout.pages() > 1 ? room : layout.height));
        places.put(View::Recorder, rest);
        return places;
    }
    if (!small_) {
        places.put(View::Furnace, rest.cut_left(std::round(rest.width() * 0.55F)));
        rest.cut_left(gap);
    } else {
        choices_.push_back(View::Furnace);
    }
    for (const View view : {View::Readings, View::Recorder, View::Hands}) {
        choices_.push_back(view);
    }
    if (std::find(choices_.begin(), choices_.end(), view_) == choices_.end()) {
        view_ = choices_.front();
    }
    cut_view_choice(canvas, rest);
    if (!small_) {
        places.step = rest.cut_top(step);
        rest.cut_top(canvas.px(8));
    }
    places.put(view_, rest);
    return places;
}

void Explore::draw_furnace(const Canvas& canvas, Rect area) const {
    ImGui::SetCursorScreenPos(area.min);
    ImGui::BeginChild("furnace", area.size(), false, kLayer);
    cutaway::draw_cutaway(canvas.here(), area, furnace_.scene());
    ImGui::EndChild();
}

/// The button that turns to the next page of readings, cut off one end of `row`.
void Explore::draw_more(const Canvas& canvas, Rect& row, std::size_t pages, bool at_right) {
    const std::string words =
        "More, " + std::to_string(readings_page_ % pages + 1) + " of " + std::to_string(pages) + "##more";
    const float width = button_width(canvas, words, "M");
    const Rect box = at_right ? row.cut_right(width) : row.cut_left(width);
    if (button(canvas, rect_at(box.min, {box.width(), control_height(canvas)}), words, false, "M")) {
        ++readings_page_;
    }
    row.cut_right(at_right ? canvas.px(12) : 0);
}

void Explore::draw_readings_page(const Canvas& canvas, Rect area, Rect& beside_step) {
    ReadingsLayout layout = lay_out_readings(canvas, area.size(), readings_);
    if (layout.pages() > 1 && beside_step.width() >= canvas.px(kStepAndMore)) {
        draw_more(canvas, beside_step, layout.pages(), true);
    } else if (layout.pages() > 1) {
        Rect row = area.cut_bottom(control_height(canvas));
        area.cut_bottom(canvas.px(4));
        layout = lay_out_readings(canvas, area.size(), readings_);
        draw_more(canvas, row, layout.pages(), false);
    }
    readings_page_ %= layout.pages();
    draw_readings(canvas, area, layout, readings_page_);
}

void Explore::draw_recorder(const Canvas& canvas, Rect area) {
    // The paper shows the whole call until it is long; whoever zooms has it as he likes.
    const auto own = std::find(kSpans_s.begin(), kSpans_s.end(), chart_view_.span_s);
    if (own != kSpans_s.end() && chart_view_.follow) {
        const auto fitting =
            std::find_if(own, kSpans_s.end(), [&](double s) { return s >= furnace_.now_s(); });
        chart_view_.span_s = fitting != kSpans_s.end() ? *fitting : kSpans_s.back();
    }
    chart_.draw(canvas, area, furnace_.recording(), lanes_, furnace_.events(), chart_view_);
}

} // namespace lightoff::explore
