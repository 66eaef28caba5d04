// SPDX-License-Identifier: MIT
#pragma once
#include "gui/desk/program.hpp"
#include "gui/headless.hpp"
#include "gui/platform/platform.hpp"
#include "gui/scrolling.hpp"

#include <algorithm>
#include <functional>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>

/// Every screen of the program, one after the other, without a window.
namespace lightoff::test {

struct Look {
    ImVec2 size;
    canvas::ThemeId theme = canvas::ThemeId::Paper;
    double text_percent = 100;
};

inline files::Settings settings_of(const Look& look) {
    files::Settings settings;
    settings.theme = canvas::theme(look.theme).name;
    settings.text_percent = look.text_percent;
    settings.cautions_read = true;
    settings.sound = false;
    return settings;
}

/// Of the letters that the program wishes for.
inline float scale_of(const Look& look) {
    const desk::Program program(desk::Own{"", "", settings_of(look)});
    return platform::design_scale(look.size.y, program.text_percent_in(look.size), canvas::theme(look.theme));
}

/// A screen without a window, in the size and with the letters that the program wishes for.
class Stage {
public:
    explicit Stage(const Look& look) : screen(look.size, look.theme, scale_of(look)) {}
    void play(desk::Program& program) {
        program_ = &program;
        settle();
    }
    void settle() {
        for (int i = 0; i < 2 || !screen.queue.empty(); ++i)
            screen.frame_of(*program_);
    }
    /// Presses what bears these words; false if nothing does.
    bool press(std::string_view words) {
        const auto& texts = screen.probe.texts();
        const auto found =
            std::find_if(texts.begin(), texts.end(), [&](const auto& text) { return text.words == words; });
        if (found == texts.end())
            return false;
        screen.click(found->ink.centre());
        settle();
        screen.queue.push(platform::PointerEvent{-1, -1}); // nothing is hovered
        settle();
        return true;
    }
    [[nodiscard]] bool shows_part(std::string_view words) const {
        const auto& texts = screen.probe.texts();
        return std::any_of(texts.begin(), texts.end(),
                           [&](const auto& text) { return text.words.find(words) != std::string::npos; });
    }
    void tap(platform::Key key) {
        screen.tap(key);
        settle();
    }

    Headless screen;

private:
    desk::Program* program_ = nullptr;
};

/// Told of each screen while it stands. All of it: what scrolls is scrolled through.
using Visit = std::function<void(const std::string& name, const canvas::LayoutProbe& probe)>;

inline void show_all_of_it(Stage& stage, const std::string& name, const Visit& visit) {
    scroll_children(0);
    stage.settle();
    const float step = std::max(60.0F, ImGui::GetIO().DisplaySize.y / 3);
    const float longest = longest_scroll();
    visit(name, stage.screen.probe);
    for (float y = step; y < longest + step; y += step) {
        scroll_children(y);
        stage.settle();
        visit(name + ", scrolled", stage.screen.probe);
    }
    scroll_children(0);
    stage.settle();
}

inline constexpr std::initializer_list<const char*> kHalfWorked{
    "wait until lamp",
    "thermostat-mode off",
    "disconnect off",
    "burner-door off",
    "manometer-a hose-tee-switch",
    "disconnect on",
    "thermostat-mode heat",
    "wait until inducer",
    "keep manometer",
    "leads pressure_switch.in pressure_switch.out",
    "read",
    "stops-at 1",
    "strike power 1",
    "blower-door off"};

inline void work(work::CallPage& page, std::initializer_list<const char*> lines) {
    for (const char* line : lines) {
        page.take(line);
        page.finish();
    }
}

/// The pages of a call: every pane in the middle with every sheet at its side, and what opens over them.
inline void visit_call(desk::Program& program, Stage& stage, const std::string& call, const Visit& visit) {
    using work::CallPage;
    static constexpr std::array<const char*, CallPage::kMiddles> kMiddles{"furnace", "diagram", "trace",
                                                                          "switches"};
    static constexpr std::array<const char*, CallPage::kSides> kSides{"order",    "bag",   "notes",
                                                                      "suspects", "close", "noticed"};
    CallPage& page = *program.call();
    for (std::size_t m = 0; m < kMiddles.size(); ++m)
        for (std::size_t s = 0; s < kSides.size(); ++s) {
            page.show(static_cast<CallPage::Middle>(m));
            page.show(static_cast<CallPage::Side>(s));
            show_all_of_it(stage, call + ", " + kMiddles[m] + " and " + kSides[s], visit);
            page.show(static_cast<CallPage::Middle>(m)); // on top, where the two take turns
            if (page.one_at_a_time() && s == 0)
                show_all_of_it(stage, call + ", " + kMiddles[m], visit);
        }
    page.show(CallPage::Middle::furnace);
    for (const char* leaf : {"Door chart", "Customer's copy"}) {
        page.show(std::string_view(leaf) == "Door chart" ? CallPage::Side::order : CallPage::Side::close);
        stage.settle();
        if (stage.press(leaf))
            show_all_of_it(stage, call + ", " + leaf, visit);
    }
    for (const char* part : {"pressure_hose", "blower_wheel", "igniter", "board"}) {
        page.focus({bench::Word::part, page.visit().site().catalogue.find_part(part)});
        show_all_of_it(stage, call + ", tag of " + part, visit);
        stage.tap(platform::Key::M); // its places to measure, spread out
        show_all_of_it(stage, call + ", measuring at " + part, visit);
        stage.tap(platform::Key::U); // may be refused
        show_all_of_it(stage, call + ", undoing " + part, visit);
        page.close_tag();
    }
    const char* taps = stage.press("Taps") ? "Taps" : "Taps and probes";
    if (taps != std::string_view("Taps"))
        stage.press(taps);
    show_all_of_it(stage, call + ", taps and probes", visit);
    stage.press(taps);
    stage.tap(platform::Key::Slash);
    for (const char letter : std::string_view("le"))
        stage.screen.queue.push(platform::TextEvent{static_cast<char32_t>(letter)});
    show_all_of_it(stage, call + ", typing", visit);
    stage.tap(platform::Key::Escape);
}

} // namespace lightoff::test
