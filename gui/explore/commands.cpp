// SPDX-License-Identifier: MIT
#include "gui/canvas/lettering.hpp"
#include "gui/explore/explore.hpp"
#include "gui/platform/input_queue.hpp"
#include "units/convert.hpp"

#include <algorithm>
#include <array>
#include <cmath>

/// What can be done on the page, by button and by key.
namespace lightoff::explore {
namespace {

using namespace canvas;
using platform::Key;
using platform::key_pressed;

constexpr std::array<double, 4> kSpeeds{1, 2, 5, 20};
constexpr std::array<const char*, 4> kSpeedNames{"1×", "2×", "5×", "20×"};
constexpr std::array<const char*, 4> kSpeedKeys{"1", "2", "3", "4"};
constexpr std::array<Key, 4> kSpeedDigits{Key::Digit1, Key::Digit2, Key::Digit3, Key::Digit4};
constexpr float kTextStep = 10; // percent
constexpr double kZoom = 1.5;   // of the paper, by button and key
constexpr double kScrub_s = 1;  // by key
constexpr double kFineScrub_s = 0.05;

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

} // namespace

double Explore::speed() const {
    return kSpeeds[speed_];
}

void Explore::act(const std::string& action) {
    stepping_.reset();
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
    commands.push_back({{"Step back", ",", false, true, 0, 0}, {}, [](Explore& e) { e.step_back(); }});
    commands.push_back({{"Step on", ".", stepping(), true, 0, 0}, {}, [](Explore& e) { e.step_on(); }});
    commands.push_back({{paused_ ? "Run##run" : "Pause##run", "Space", paused_, true, 1, 0},
                        {"Run", "Pause"},
                        [](Explore& e) { e.set_paused(!e.paused_); }});
    for (std::size_t i = 0; i < kSpeeds.size(); ++i) {
        commands.push_back({{kSpeedNames[i], kSpeedKeys[i], i == speed_, true, 1, 0}, {}, [i](Explore& e) {
                                e.speed_ = i;
                            }});
    }
    return commands;
}

std::vector<Explore::Command> Explore::look_commands() const {
    std::vector<Command> commands;
    commands.push_back({{"Theme", "L", false, true, 2, 0}, {}, [](Explore& e) { e.next_theme(); }});
    commands.push_back(
        {{"A−", "Ctrl −", false, true, 2, 0}, {}, [](Explore& e) { e.change_text(-kTextStep); }});
    commands.push_back(
        {{"A+", "Ctrl +", false, true, 2, 0}, {}, [](Explore& e) { e.change_text(kTextStep); }});
    return commands;
}

/// A low page keeps its head low: what is seldom used goes to the page of switches.
std::vector<Explore::Command> Explore::head_commands() const {
    std::vector<Command> commands = running_commands();
    if (!low_) {
        for (const Command& command : look_commands()) {
            commands.push_back(command);
        }
    }
    if (may_leave_) {
        commands.push_back({{"Back", "Esc", false, true, 3, 0}, {}, [](Explore& e) { e.left_ = true; }});
    }
    return commands;
}

std::vector<Explore::Command> Explore::recorder_commands() const {
    std::vector<Command> commands;
    commands.push_back(
        {{"Lanes", "T", picker_.open, true, 0, 0}, {}, [](Explore& e) { e.picker_.open = !e.picker_.open; }});
    const auto zoomed = [](double factor) {
        return [factor](Explore& e) { trace::zoom(e.chart_view_, e.furnace_.now_s(), factor); };
    };
    commands.push_back({{"Zoom in", "+", false, true, 0, 0}, {}, zoomed(kZoom)});
    commands.push_back({{"Zoom out", "−", false, true, 0, 0}, {}, zoomed(1 / kZoom)});
    commands.push_back({{"Newest", "End", false, true, 0, 0}, {}, [](Explore& e) {
                            e.look_at(e.furnace_.timed().newest_tick());
                            e.chart_view_.follow = true;
                        }});
    return commands;
}

std::vector<Explore::Command> Explore::hands_commands() const {
    const furnace::Inputs& in = furnace_.world().inputs;
    const std::string set = figure(std::round(units::k_to_fahrenheit(in.set_point_k)), 0) + " °F";
    const bool heat = in.thermostat_mode == control::ThermostatMode::heat;
    std::vector<Command> commands;
    commands.push_back({{"Thermostat " + set, "", false, false, 0, 0}, {}, [](Explore&) {}});
    commands.push_back({{"−1 °F", "D", false, true, 0, 0}, {}, [](Explore& e) { e.turn_set_point(-1); }});
    commands.push_back({{"+1 °F", "U", false, true, 0, 0}, {}, [](Explore& e) { e.turn_set_point(1); }});
    commands.push_back(
        {{heat ? "Heat##mode" : "Off##mode", "H", false, true, 0, 0}, {"Heat", "Off"}, [heat](Explore& e) {
             e.act(heat ? "thermostat-mode off" : "thermostat-mode heat");
         }});
    const auto toggle = [&](const std::string& thing, const std::string& verb, const std::string& key,
                            bool on, const std::string& on_word, const std::string& off_word) {
        commands.push_back({{thing + " " + (on ? on_word : off_word) + "##" + verb, key, !on, true, 1, 0},
                            {thing + " " + on_word, thing + " " + off_word},
                            [verb, on](Explore& e) { e.act(verb + " " + on_off(!on)); }});
    };
    toggle("Disconnect", "disconnect", "X", in.disconnect_on != 0, "on", "off");
    toggle("Gas cock", "gas-cock", "G", in.gas_cock_open != 0, "open", "shut");
    toggle("Burner door", "burner-door", "B", in.burner_door_on != 0, "on", "off");
    toggle("Blower door", "blower-door", "F", in.blower_door_on != 0, "on", "off");
    if (low_) {
        for (const Command& command : look_commands()) {
            commands.push_back(command);
        }
    }
    return commands;
}

void Explore::handle_keys() {
    const ImGuiIO& io = ImGui::GetIO();
    if (io.WantTextInput) {
        return;
    }
    if (io.KeyCtrl) {
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
    if ((key_pressed(Key::Space) && !io.NavVisible) || key_pressed(Key::P)) {
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
    if (key_pressed(Key::W) && what_if_.exists()) {
        show_what_if_ = !show_what_if_;
    }
    if (key_pressed(Key::V) && !choices_.empty()) {
        const auto at = std::find(choices_.begin(), choices_.end(), view_);
        view_ = at == choices_.end() || at + 1 == choices_.end() ? choices_.front() : *(at + 1);
    }
    handle_step_keys();
    static constexpr std::array<Key, 7> kHandKeys{Key::D, Key::U, Key::H, Key::X, Key::G, Key::B, Key::F};
    for (std::size_t i = 0; i < kHandKeys.size(); ++i) {
        if (key_pressed(kHandKeys[i])) {
            hands_commands()[i + 1].run(*this); // the first is a word, no button
            return;
        }
    }
}

/// Steps, scrubbing and the paper.
void Explore::handle_step_keys() {
    if (key_pressed(Key::Comma, true)) {
        step_back();
    }
    if (key_pressed(Key::Period, true)) {
        step_on();
    }
    const double by_s = ImGui::GetIO().KeyShift ? kFineScrub_s : kScrub_s;
    if (key_pressed(Key::J, true)) {
        look_at(furnace_.tick_at(furnace_.now_s() - by_s));
    }
    if (key_pressed(Key::K, true)) {
        look_at(furnace_.tick_at(furnace_.now_s() + by_s));
    }
    static constexpr std::array<Key, 4> kPaperKeys{Key::T, Key::Equal, Key::Minus, Key::End};
    for (std::size_t i = 0; i < kPaperKeys.size(); ++i) {
        const bool its_own = (i == 1 || i == 2) && chart_.takes_keys(); // then the paper itself zooms
        if (key_pressed(kPaperKeys[i], true) && !its_own) {
            recorder_commands()[i].run(*this);
        }
    }
    if (key_pressed(Key::BracketLeft, true) && !chart_.takes_keys()) {
        trace::pan(chart_view_, -chart_view_.span_s / 4, furnace_.recording().newest_s());
    }
    if (key_pressed(Key::BracketRight, true) && !chart_.takes_keys()) {
        trace::pan(chart_view_, chart_view_.span_s / 4, furnace_.recording().newest_s());
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

/// As they stand in an area: on a small page a line less is worth more than the keys beside the words.
std::vector<FlowItem> Explore::items_in(const Canvas& canvas, Rect area,
                                        const std::vector<Command>& commands) const {
    std::vector<FlowItem> items = items_of(canvas, commands);
    if (!small_) {
        return items;
    }
    std::vector<FlowItem> bare = items;
    for (std::size_t i = 0; i < bare.size(); ++i) {
        bare[i].key.clear();
        bare[i].least_width = room_for(canvas, commands[i].may_show, "");
    }
    return lay_out_flow(canvas, area, bare).height < lay_out_flow(canvas, area, items).height ? bare : items;
}

void Explore::draw_commands(const Canvas& canvas, Rect area, const std::vector<Command>& commands) {
    const std::vector<FlowItem> items = items_in(canvas, area, commands);
    const int pressed = draw_flow(canvas, lay_out_flow(canvas, area, items), items);
    if (pressed >= 0) {
        commands[static_cast<std::size_t>(pressed)].run(*this);
    }
}

float Explore::height_of(const Canvas& canvas, Rect area, const std::vector<Command>& commands) const {
    return lay_out_flow(canvas, area, items_in(canvas, area, commands)).height;
}

} // namespace lightoff::explore
