// SPDX-License-Identifier: MIT
#include "gui/debrief/debrief.hpp"
#include "gui/debrief/background.hpp"
#include "gui/debrief/pages.hpp"
#include "gui/debriefed.hpp"
#include "gui/headless.hpp"
#include "report/words.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <chrono>
#include <thread>

using namespace lightoff;
using debrief::DebriefView;
using debrief::DebriefWants;
using debrief::Model;
using debrief::Page;
using platform::Key;
using test::guessed;
using test::Headless;
using test::stopped;

namespace {

struct Session {
    explicit Session(const Model& of, ImVec2 window = {1280, 720},
                     canvas::ThemeId theme = canvas::ThemeId::Paper, float scale = 1)
        : model(&of), size(window), ui(window, theme, scale), view(of) {}

    void frame() {
        ui.settle([this](const canvas::Canvas& canvas) {
            debrief::draw_debrief(canvas, {{0, 0}, size}, *model, view, wants);
        });
    }
    void tap(Key key) {
        ui.tap(key);
        frame();
    }
    [[nodiscard]] const canvas::LayoutProbe::Text* find(const std::string& words) const {
        for (const auto& text : ui.probe.texts())
            if (text.words.find(words) != std::string::npos)
                return &text;
        return nullptr;
    }
    bool shows(const std::string& words) {
        frame();
        return find(words) != nullptr;
    }
    void click(const std::string& words) {
        frame();
        const auto* text = find(words);
        INFO(words);
        REQUIRE(text != nullptr);
        ui.click(text->ink.centre());
        frame();
    }

    const Model* model;
    ImVec2 size;
    Headless ui;
    DebriefView view;
    DebriefWants wants;
};

struct Look {
    ImVec2 window;
    canvas::ThemeId theme;
    float scale;
};

void check_layout(const Model& model, const Look& look) {
    Session s(model, look.window, look.theme, look.scale);
    const std::vector<Page> pages = debrief::pages_of(model);
    for (std::size_t i = 0; i < pages.size(); ++i) {
        debrief::turn_to(model, s.view, i);
        for (const double share : {0.0, 0.37, 0.61, 1.0}) {
            s.view.tick = model.tick_at(share * model.length_s());
            s.frame();
            INFO(look.window.x << "x" << look.window.y << " at " << look.scale << ", "
                               << debrief::name_of(pages[i]) << ", " << share);
            CHECK(s.ui.probe.texts().size() > 20);
            if (pages[i] == Page::points)
                CHECK(s.find(model.debrief.grade.lines.front().text) != nullptr);
            if (pages[i] == Page::better)
                CHECK(s.find(report::answers_of(model.debrief.better->offer).front()) != nullptr);
            for (const std::string& problem : s.ui.probe.problems())
                FAIL_CHECK(problem);
        }
        if (pages[i] == Page::moment)
            s.view.knew_tick = model.tick_at(0.4 * model.length_s());
    }
}

} // namespace

TEST_CASE("every page of a debrief has room for its words at every size, theme and text scale") {
    using canvas::ThemeId;
    for (const Look& look :
         {Look{{1280, 720}, ThemeId::Paper, 1.0F}, Look{{1280, 720}, ThemeId::Basement, 1.28F},
          Look{{1000, 560}, ThemeId::Paper, 1.0F}, Look{{1920, 1080}, ThemeId::Basement, 1.0F},
          Look{{1920, 1080}, ThemeId::Paper, 1.5F}, Look{{1920, 1080}, ThemeId::Projector, 1.4F},
          Look{{2560, 1440}, ThemeId::Paper, 1.35F}, Look{{2560, 1440}, ThemeId::Paper, 2.0F},
          Look{{800, 600}, ThemeId::Paper, 1.0F}})
        check_layout(guessed(), look);
    check_layout(stopped(), {{1280, 720}, canvas::ThemeId::Paper, 1.0F});

    Session waiting(guessed());
    waiting.ui.frame([&](const canvas::Canvas& canvas) {
        debrief::draw_waiting(canvas, {{0, 0}, waiting.size}, "Running the attempt again, 40 %",
                              waiting.wants);
    });
    CHECK(waiting.ui.probe.problems().empty());
}

TEST_CASE("a debrief goes page by page, scrubs by keys and pointer, and asks its owner") {
    const Model& model = guessed();
    Session s(model);
    s.frame();

    // No score before its turn.
    CHECK(s.view.page == Page::moment);
    CHECK_FALSE(s.shows("of 100"));
    CHECK_FALSE(s.shows("Points"));

    // Arrows go by seconds, with Shift from thing to thing; Home and End.
    const std::uint64_t arrived = model.story().arrived_tick;
    CHECK(s.view.tick == arrived);
    s.tap(Key::Right);
    CHECK(s.view.tick == arrived + 20);
    s.tap(Key::Left);
    s.tap(Key::Left);
    CHECK(s.view.tick == arrived);
    s.tap(Key::End);
    CHECK(s.view.tick == model.story().last_tick);
    s.tap(Key::Home);
    s.ui.queue.push(platform::KeyEvent{Key::ShiftLeft, true});
    s.ui.tap(Key::Right);
    s.ui.tap(Key::Right);
    s.ui.queue.push(platform::KeyEvent{Key::ShiftLeft, false});
    s.frame();
    const auto& entries = model.story().film.entries();
    const bool at_a_thing =
        std::any_of(entries.begin(), entries.end(), [&](const auto& e) { return e.tick == s.view.tick; }) ||
        std::any_of(model.story().readings.begin(), model.story().readings.end(),
                    [&](const auto& r) { return r.tick == s.view.tick; });
    CHECK(at_a_thing);

    // The pointer on the paper: half-way along is half of the time.
    const canvas::Rect plot = s.view.chart.plot();
    s.ui.click({plot.centre().x, plot.centre().y});
    s.frame();
    CHECK(model.seconds(s.view.tick) == Approx(model.length_s() / 2).margin(2.0));
    s.ui.click({plot.min.x + 0.25F * plot.width(), plot.min.y - 110});
    s.frame();
    CHECK(model.seconds(s.view.tick) == Approx(model.length_s() / 4).margin(2.0));

    // Marking the moment turns the page; what was known then stands there.
    const std::uint64_t marked = s.view.tick;
    s.tap(Key::K);
    CHECK(s.view.knew_tick == marked);
    CHECK(s.view.page == Page::stairs);
    CHECK(s.shows("You knew enough only at"));
    CHECK(s.shows("You marked"));
    CHECK(s.shows("causes still fitting"));
    CHECK(s.view.tick == model.debrief.knew->tick);
    CHECK_FALSE(s.shows("of 100"));

    s.tap(Key::N);
    CHECK(s.view.page == Page::better);
    REQUIRE(model.debrief.better.has_value());
    CHECK(s.view.tick == model.debrief.better->made_tick);
    CHECK_FALSE(s.wants.try_from.has_value());
    s.click("Try it from here");
    CHECK(s.wants.try_from == model.debrief.better->tick);

    s.tap(Key::N);
    CHECK(s.view.page == Page::points);
    CHECK(s.shows("of 100"));
    // A line of the account leads to its moment.
    const auto line =
        std::find_if(model.debrief.grade.lines.begin(), model.debrief.grade.lines.end(),
                     [](const lesson::Line& l) { return l.section == lesson::Section::isolate; });
    REQUIRE(line != model.debrief.grade.lines.end());
    s.click(line->text);
    CHECK(s.view.tick == line->tick);

    s.tap(Key::B);
    CHECK(s.view.page == Page::better);
    s.tap(Key::N);
    s.tap(Key::N);
    CHECK(s.view.page == Page::next);
    CHECK(s.shows("Somebody: It is cold."));
    s.tap(Key::C);
    CHECK(s.wants.take == std::optional<std::string>("deaf-board"));
    s.click("Save as PDF");
    CHECK(s.wants.save_pdf);
    CHECK_FALSE(s.wants.save_html);
    s.tap(Key::R);
    CHECK(s.wants.again);
    CHECK_FALSE(s.wants.leave);
    s.tap(Key::Escape);
    CHECK(s.wants.leave);
}

TEST_CASE("no key of a debrief's page means two things") {
    const Model ended = stopped();
    for (const Model* model : {&guessed(), &ended}) {
        Session s(*model);
        const std::vector<Page> pages = debrief::pages_of(*model);
        for (std::size_t i = 0; i < pages.size(); ++i) {
            debrief::turn_to(*model, s.view, i);
            s.frame();
            for (const std::string key : {"B", "C", "F", "H", "K", "M", "N", "P", "R", "T", "U"}) {
                const auto& texts = s.ui.probe.texts();
                INFO(key << " on " << debrief::name_of(pages[i]));
                CHECK(std::count_if(texts.begin(), texts.end(),
                                    [&](const auto& text) { return text.words == key; }) <= 1);
            }
        }
    }
    Session s(guessed());
    debrief::turn_to(guessed(), s.view, 2);
    REQUIRE(s.view.page == Page::better);
    s.tap(Key::T);
    CHECK(s.view.picker.open);
    CHECK_FALSE(s.wants.try_from.has_value());
    s.tap(Key::T);
    s.tap(Key::F);
    CHECK(s.wants.try_from == guessed().debrief.better->tick);
}

TEST_CASE("a debrief begins with the frozen moment, and a tune-up has no search for one cause") {
    const Model model = stopped();
    Session s(model);
    CHECK(s.view.page == Page::frozen);
    CHECK(s.view.tick == model.story().arrived_tick + 4000);
    CHECK(s.shows("Stopped at 3:20."));
    CHECK(debrief::pages_of(model)[1] == Page::moment);

    Model tune_up = guessed();
    tune_up.debrief.has_staircase = false;
    CHECK(debrief::pages_of(tune_up) == std::vector<Page>{Page::points, Page::next});
}

TEST_CASE("the model is made behind the window's back, and can be left at any time") {
    const TemporaryFolder folder;
    put_bytes(folder.file("broken.jsonl"), "no attempt\n");
    debrief::Background broken(folder.file("broken.jsonl"));
    while (broken.failure().empty())
        std::this_thread::sleep_for(std::chrono::milliseconds(5));
    CHECK_THAT(broken.failure(), Catch::Contains("broken.jsonl"));
    CHECK(broken.take() == nullptr);

    test::WorkedCall call("plugged-hose");
    put_bytes(folder.file("script.txt"), test::kGuessing);
    const std::string attempt = folder.file("attempt.jsonl");
    const test::Ran ran = test::run_program(
        {LIGHTOFF_CLI, "play", "plugged-hose", folder.file("script.txt"), "--attempt", attempt},
        {{"LIGHTOFF_DATA=" + std::string(LIGHTOFF_SOURCE_DIR) + "/scenarios"}});
    REQUIRE(ran.code == 0);
    const auto begun = std::chrono::steady_clock::now();
    {
        debrief::Background background(attempt);
        while (background.progress().find('%') == std::string::npos)
            std::this_thread::sleep_for(std::chrono::milliseconds(5));
        CHECK(background.take() == nullptr);
    } // left: the thread stops at its next word, long before the work is done
    const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - begun;
    CHECK(taken.count() < 10.0);
}
