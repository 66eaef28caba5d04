// SPDX-License-Identifier: MIT
#pragma once
#include "files/temporary_folder.hpp"
#include "gui/canvas/layout_probe.hpp"
#include "gui/desk/program.hpp"
#include "gui/platform/display.hpp"
#include "gui/platform/shell.hpp"
#include "gui/real/hands.hpp"

#include <chrono>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace lightoff::test {

/// The program as its window has it, looked at from behind: what is drawn where, and what input has come.
class Watched : public platform::App {
public:
    explicit Watched(desk::Program& program) : program_(&program) {}

    void frame(const platform::FrameInput& input) override;
    /// A test waits for conditions, so frames never wait for input.
    platform::Wishes wishes() const override;
    void close_asked() override { program_->close_asked(); }
    void told(const std::vector<std::string>& messages) override { program_->told(messages); }

    canvas::LayoutProbe probe;
    std::string letters;     ///< that have come so far
    std::size_t presses = 0; ///< keys that have gone down so far
    std::size_t keys_down = 0;
    float wheel = 0;

private:
    void look_at_input();

    desk::Program* program_;
    std::vector<bool> down_;
};

/// A part of a call's page.
enum class In { window, strip, middle, side };

/// The program in a real window, and a person at it who finds things by the words on them, moves a real
/// pointer and presses real keys. Each frame is told that a quarter of a second has passed, as on a very slow
/// machine; nothing sleeps for a fixed time.
class Visitor {
public:
    explicit Visitor(desk::Own own, platform::WindowOptions options = {});

    desk::Program& program() { return *program_; }
    work::CallPage& call();
    const canvas::LayoutProbe& probe() const { return watched_->probe; }
    Hands& hands() { return *hands_; }
    platform::Platform& window() { return *platform_; }

    /// Frames until it is so; a failure that says `what` if it never is.
    void until(const std::string& what, const std::function<bool()>& is_so);
    void until(const std::string& what, std::chrono::seconds patience, const std::function<bool()>& is_so);
    void frame();
    /// Until what was begun is done, and is drawn.
    void settle();

    // ---- looking
    [[nodiscard]] bool shows(std::string_view words) const;      ///< exactly
    [[nodiscard]] bool shows_part(std::string_view words) const; ///< in some text
    [[nodiscard]] bool names(std::string_view words) const;      ///< in what hovers at the pointer
    [[nodiscard]] std::optional<canvas::Rect> find(std::string_view words, In in = In::window) const;
    canvas::Rect place_of(std::string_view words, In in = In::window) const;
    canvas::Rect area(In in) const;
    [[nodiscard]] std::string all_words() const;
    [[nodiscard]] bool is_closed() const { return closed_; }
    /// Where a call's page must be named: the part's title.
    std::string title_of(std::string_view part);
    std::string last_done();
    std::size_t readings();

    // ---- the pointer
    void point(ImVec2 at);
    void click(ImVec2 at);
    /// What bears these words: a button, a part, a point of the diagram, else a text.
    void press(std::string_view words, In in = In::window);
    /// The one nearest to other words, at their height or below.
    void press_near(std::string_view words, std::string_view other, In in = In::window);
    /// The state at the right of a name on the isolation strip.
    void press_state_of(std::string_view name);
    /// Turns the wheel until the words are in view.
    void scroll_to(std::string_view words, In in);
    /// Goes on down until the one below other words, which are in view, is in view too.
    void scroll_until(std::string_view words, std::string_view below, In in);
    void scroll_and_press(std::string_view words, In in);
    /// A call in the front desk's list.
    void press_in_list(std::string_view title);

    // ---- keys
    void tap(const std::string& key, const std::string& with = {});
    /// Opens the line and types into it.
    void line(std::string_view words);
    void type(std::string_view letters);
    /// Tab until the keyboard is on it.
    void tab_to(std::string_view words, bool backwards = false);
    /// What the keyboard is on; empty if nothing shows.
    std::string with_keyboard() const;

private:
    void scroll_at(ImVec2 at, std::string_view words, In in);
    void turn_wheel(int up);

    std::unique_ptr<platform::DisplayProbe> display_;
    std::unique_ptr<Hands> hands_;
    std::unique_ptr<platform::Platform> platform_;
    std::unique_ptr<desk::Program> program_;
    std::unique_ptr<Watched> watched_;
    bool closed_ = false;
};

/// What a first start finds: a folder of its own, cautions unread, no sound.
desk::Own at_first_start(const TemporaryFolder& folder);
/// Later: the cautions have been read.
desk::Own later(const TemporaryFolder& folder);

} // namespace lightoff::test
