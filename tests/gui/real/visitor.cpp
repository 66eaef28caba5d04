// SPDX-License-Identifier: MIT
#include "gui/real/visitor.hpp"

#include "bench/action.hpp"
#include "gui/platform/input_events.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <chrono>
#include <cmath>
#include <imgui_internal.h>

namespace lightoff::test {
namespace {

using canvas::Rect;
using Clock = std::chrono::steady_clock;

/// Longer than anything takes on a machine with others at work.
constexpr std::chrono::seconds kPatience{60};
constexpr double kFrame_s = 0.25;
/// Software OpenGL is most of what a frame costs; what is laid out and pressed is the same without.
constexpr unsigned kDrawEvery = 10;

bool ends_with(std::string_view text, std::string_view end) {
    return text.size() >= end.size() && text.substr(text.size() - end.size()) == end;
}

bool starts_with(std::string_view text, std::string_view start) {
    return text.substr(0, start.size()) == start;
}

} // namespace

// ---- what is watched

void Watched::look_at_input() {
    const ImGuiIO& io = ImGui::GetIO();
    for (const ImWchar letter : io.InputQueueCharacters)
        letters += letter < 0x7F ? static_cast<char>(letter) : '?';
    wheel += io.MouseWheel;
    down_.resize(platform::kKeyCount);
    keys_down = 0;
    for (std::size_t i = 0; i < platform::kKeyCount; ++i) {
        presses += io.KeysDown[i] && !down_[i] ? 1U : 0U;
        keys_down += io.KeysDown[i] ? 1U : 0U;
        down_[i] = io.KeysDown[i];
    }
}

void Watched::frame(const platform::FrameInput& input) {
    look_at_input();
    probe.begin_frame();
    platform::FrameInput copy = input;
    copy.canvas.probe = &probe;
    program_->frame(copy);
}

platform::Wishes Watched::wishes() const {
    platform::Wishes wishes = program_->wishes();
    if (program_->is_debriefing() && program_->debriefed() == nullptr)
        wishes.next_frame_in_s = 0.2; // a thread works; leave it the processor
    else
        wishes.next_frame_in_s = 0;
    return wishes;
}

// ---- the visitor

Visitor::Visitor(desk::Own own, platform::WindowOptions options)
    : display_(std::make_unique<platform::DisplayProbe>()), hands_(std::make_unique<Hands>()) {
    options.fixed_delta_s = kFrame_s;
    options.draw_every = kDrawEvery;
    program_ = std::make_unique<desk::Program>(std::move(own));
    watched_ = std::make_unique<Watched>(*program_);
    platform_ = std::make_unique<platform::Platform>(options);
    platform::greet(*platform_, *watched_);
    until("a window", [&] { return hands_->find(options.title); });
    hands_->point_away();
    hands_->give_keyboard();
    until("the keyboard", [&] { return platform_->focused(); });
    frame();
}

work::CallPage& Visitor::call() {
    REQUIRE(program_->call() != nullptr);
    return *program_->call();
}

void Visitor::frame() {
    closed_ = !platform::run_frame(*platform_, *watched_) || closed_;
}

void Visitor::until(const std::string& what, const std::function<bool()>& is_so) {
    until(what, kPatience, is_so);
}

void Visitor::until(const std::string& what, std::chrono::seconds patience,
                    const std::function<bool()>& is_so) {
    const Clock::time_point end = Clock::now() + patience;
    while (!is_so()) {
        if (Clock::now() > end) {
            platform_->request_screenshot("real_window_failed.png");
            frame();
            FAIL("waited in vain for " << what << ", while the window said:\n" << all_words());
        }
        frame();
    }
}

void Visitor::settle() {
    frame();
    until("the hands to be free", [&] {
        const work::CallPage* call = program_->call();
        return call == nullptr || call->hands_free() || call->stopped();
    });
    frame();
    frame();
}

// ---- looking

std::string Visitor::all_words() const {
    std::string all;
    for (const auto& text : probe().texts())
        all += text.words + "\n";
    all += "-- to press --\n";
    for (const auto& target : probe().targets())
        all += target.name + "\n";
    return all;
}

bool Visitor::shows(std::string_view words) const {
    return std::any_of(probe().texts().begin(), probe().texts().end(),
                       [&](const auto& text) { return text.words == words; });
}

bool Visitor::shows_part(std::string_view words) const {
    return std::any_of(probe().texts().begin(), probe().texts().end(),
                       [&](const auto& text) { return text.words.find(words) != std::string::npos; });
}

bool Visitor::names(std::string_view words) const {
    const std::string with_looks = std::string(words) + ": "; // "Igniter: a crack across it"
    return std::any_of(probe().texts().begin(), probe().texts().end(), [&](const auto& text) {
        return text.layer == 1 && (text.words == words || text.words.rfind(with_looks, 0) == 0);
    });
}

Rect Visitor::area(In in) const {
    const ImVec2 size = platform_->size();
    if (in == In::window)
        return {{0, 0}, size};
    const auto target = [&](std::string_view words) {
        for (const auto& one : probe().targets())
            if (one.name == words)
                return one.edge;
        FAIL("no call's page: " << all_words());
        return Rect{};
    };
    const Rect furnace = target("Furnace");
    const Rect order = target("Order");
    // Two lines of a foot stand below; see CallPage::draw.
    const float bottom = size.y - 3.2F * furnace.height();
    if (in == In::strip)
        return {{0, furnace.min.y - 1}, {furnace.min.x, bottom}};
    if (in == In::middle)
        return {{furnace.min.x, furnace.min.y - 1}, {order.min.x, bottom}};
    return {{order.min.x, order.min.y - 1}, {size.x, bottom}};
}

std::optional<Rect> Visitor::find(std::string_view words, In in) const {
    const Rect where = area(in);
    const auto& targets = probe().targets();
    const auto& texts = probe().texts();
    const auto in_view = [](const auto& text) { return text.clip.holds(text.ink.centre()); };
    for (const auto& target : targets)
        if (target.name == words && where.holds(target.edge.centre()))
            return target.edge;
    for (const auto& text : texts)
        if (text.words == words && where.holds(text.ink.centre()) && in_view(text))
            return text.ink;
    for (const auto& target : targets)
        if ((starts_with(target.name, words) || ends_with(target.name, words)) &&
            where.holds(target.edge.centre()))
            return target.edge;
    for (const auto& text : texts)
        if ((starts_with(text.words, words) || ends_with(text.words, words)) &&
            where.holds(text.ink.centre()) && in_view(text))
            return text.ink;
    return std::nullopt;
}

Rect Visitor::place_of(std::string_view words, In in) const {
    const std::optional<Rect> place = find(words, in);
    if (!place)
        FAIL("nothing says \"" << words << "\" among\n" << all_words());
    return *place;
}

std::string Visitor::title_of(std::string_view part) {
    const auto& catalogue = call().visit().site().catalogue;
    const int index = catalogue.find_part(std::string(part));
    REQUIRE(index >= 0);
    return catalogue.parts[static_cast<std::size_t>(index)].title;
}

std::string Visitor::last_done() {
    const visit::Visit& visit = call().visit();
    return visit.done().empty() ? std::string()
                                : bench::format_action(visit.site(), visit.done().back().action);
}

std::size_t Visitor::readings() {
    return call().visit().notebook().readings().size();
}

// ---- the pointer

void Visitor::point(ImVec2 at) {
    const ImVec2 to{std::round(at.x), std::round(at.y)};
    hands_->point(static_cast<int>(to.x), static_cast<int>(to.y));
    until("the pointer to arrive", [&] {
        const ImVec2 now = ImGui::GetIO().MousePos;
        return now.x == to.x && now.y == to.y;
    });
    frame(); // what is hovered is known a frame later
}

void Visitor::click(ImVec2 at) {
    point(at);
    hands_->button(true);
    hands_->button(false); // the window keeps them apart, however slow it is
    until("the button to go down", [] { return ImGui::GetIO().MouseDown[0]; });
    until("the button to come up", [] { return !ImGui::GetIO().MouseDown[0]; });
    settle();
}

void Visitor::press(std::string_view words, In in) {
    INFO("pressing \"" << words << "\"");
    click(place_of(words, in).centre());
}

void Visitor::press_near(std::string_view words, std::string_view other, In in) {
    INFO("pressing \"" << words << "\" near \"" << other << "\"");
    const Rect anchor = place_of(other, in);
    std::optional<ImVec2> best;
    for (const auto& target : probe().targets()) {
        const ImVec2 at = target.edge.centre();
        if (target.name.find(words) != std::string::npos && at.y > anchor.min.y - 4 && area(in).holds(at) &&
            (!best || at.y < best->y - 1))
            best = at;
    }
    if (!best)
        FAIL("no \"" << words << "\" beside \"" << other << "\" among\n" << all_words());
    click(*best);
}

void Visitor::press_state_of(std::string_view name) {
    INFO("pressing the state of \"" << name << "\"");
    scroll_to(name, In::strip);
    const Rect label = place_of(name, In::strip);
    for (const auto& target : probe().targets())
        if (target.edge.min.x >= label.max.x - 1 && area(In::strip).holds(target.edge.centre()) &&
            std::abs(target.edge.centre().y - label.centre().y) < 4)
            return click(target.edge.centre());
    FAIL("no state beside " << name << " among\n" << all_words());
}

void Visitor::scroll_to(std::string_view words, In in) {
    if (find(words, in))
        return;
    const Rect where = area(in);
    // In the middle a tag with its choices lies at the bottom.
    scroll_at(in == In::middle ? ImVec2{where.centre().x, where.max.y - 40} : where.centre(), words, in);
}

void Visitor::turn_wheel(int up) {
    const float wheel = watched_->wheel;
    hands_->wheel(up);
    until("the wheel to turn", [&] { return watched_->wheel != wheel; });
    frame();
    frame();
}

void Visitor::scroll_until(std::string_view words, std::string_view below, In in) {
    point(area(in).centre());
    for (int i = 0; i < 20; ++i) {
        const std::optional<Rect> upper = find(below, in);
        for (const auto& target : probe().targets())
            if (upper && target.name.find(words) != std::string::npos && target.edge.min.y > upper->min.y &&
                area(in).holds(target.edge.centre()))
                return;
        turn_wheel(-1);
    }
    FAIL("no \"" << words << "\" below \"" << below << "\" among\n" << all_words());
}

void Visitor::press_in_list(std::string_view title) {
    if (!find(title)) {
        const Rect any = place_of("no heat"); // its facts stand in every row of a kind
        scroll_at({any.min.x, platform_->size().y * 0.7F}, title, In::window);
    }
    press(title);
}

void Visitor::scroll_at(ImVec2 at, std::string_view words, In in) {
    point(at);
    const Rect where = area(in);
    // What is to be pressed there, and where it stands: when it stays, the end is reached.
    const auto to_press_in = [&](Rect box) {
        std::string all;
        for (const auto& target : probe().targets())
            if (box.holds(target.edge.centre()))
                all += target.name + " " + std::to_string(static_cast<int>(target.edge.min.y)) + "\n";
        return all;
    };
    for (const int way : {+1, -1}) {
        for (int i = 0; i < 60; ++i) {
            const std::string before = to_press_in(where);
            turn_wheel(way);
            if (find(words, in))
                return;
            if (to_press_in(where) == before)
                break;
        }
    }
    FAIL("\"" << words << "\" can't be scrolled to; at the end stands\n" << all_words());
}

void Visitor::scroll_and_press(std::string_view words, In in) {
    scroll_to(words, in);
    press(words, in);
}

// ---- keys

void Visitor::tap(const std::string& key, const std::string& with) {
    INFO("key " << with << " " << key);
    const std::size_t all = watched_->presses + (with.empty() ? 1 : 2);
    if (!with.empty())
        hands_->key(with, true);
    hands_->key(key, true);
    hands_->key(key, false); // at once, or the server would repeat it on a slow machine
    if (!with.empty())
        hands_->key(with, false);
    until("the key to go down", [&] { return watched_->presses >= all; });
    until("the key to come up", [&] { return closed_ || watched_->keys_down == 0; });
    settle();
}

void Visitor::type(std::string_view letters) {
    const std::size_t before = watched_->letters.size();
    hands_->type(letters);
    until("the letters",
          [&] { return watched_->letters.size() >= before + letters.size() && watched_->keys_down == 0; });
    CHECK(watched_->letters.substr(before) == letters);
    frame();
}

void Visitor::line(std::string_view words) {
    INFO("typing \"" << words << "\"");
    tap("slash");
    type(words);
    tap("Return");
}

std::string Visitor::with_keyboard() const {
    const ImGuiContext& g = *ImGui::GetCurrentContext();
    if (g.NavId == 0 || g.NavDisableHighlight || g.NavWindow == nullptr)
        return {};
    const ImRect nav = ImGui::WindowRectRelToAbs(g.NavWindow, g.NavWindow->NavRectRel[0]);
    for (const auto& target : probe().targets())
        if (std::abs(target.edge.min.x - nav.Min.x) < 1.5F &&
            std::abs(target.edge.min.y - nav.Min.y) < 1.5F &&
            std::abs(target.edge.max.x - nav.Max.x) < 1.5F && std::abs(target.edge.max.y - nav.Max.y) < 1.5F)
            return target.name;
    return {};
}

void Visitor::tab_to(std::string_view words, bool backwards) {
    std::string passed;
    for (int i = 0; i < 200; ++i) {
        const std::string now = with_keyboard();
        if (now == words)
            return;
        passed += now + "\n";
        tap("Tab", backwards ? "Shift_L" : "");
    }
    FAIL("Tab does not come to \"" << words << "\"; it passed\n" << passed);
}

// ---- what it begins with

desk::Own at_first_start(const TemporaryFolder& folder) {
    files::Settings settings;
    settings.sound = false;
    return {folder.file("attempts"), folder.file("settings.json"), settings};
}

desk::Own later(const TemporaryFolder& folder) {
    desk::Own own = at_first_start(folder);
    own.settings.cautions_read = true;
    return own;
}

} // namespace lightoff::test
