// SPDX-License-Identifier: MIT
#include "gui/screens.hpp"
#include "files/temporary_folder.hpp"
#include "gui/canvas/fills.hpp"
#include "gui/canvas/lettering.hpp"
#include "gui/debrief/debrief.hpp"
#include "gui/debriefed.hpp"
#include "gui/diagram/diagram.hpp"
#include "gui/diagram/sheet.hpp"
#include "gui/drawn_ground.hpp"

#include <catch2/catch.hpp>
#include <map>
#include <set>

using namespace lightoff;
using test::Look;
using test::Stage;

namespace {

struct Sheet {
    ImVec2 size;
    double text_percent;
    double least_percent; ///< that the letters must have: as many, but in windows smaller than 1280x720
};
const std::array<Sheet, 11> kSheets{{{{1280, 720}, 100, 100},
                                     {{1280, 720}, 150, 150},
                                     {{1280, 720}, 200, 200},
                                     {{1920, 1080}, 100, 100},
                                     {{1920, 1080}, 150, 150},
                                     {{1920, 1080}, 200, 200},
                                     {{2560, 1440}, 100, 100},
                                     {{2560, 1440}, 150, 150},
                                     {{640, 360}, 200, 100},
                                     {{800, 450}, 150, 100},
                                     {{944, 528}, 150, 150}}};

/// WCAG 2.2, 1.4.3 Contrast (Minimum), level AA: https://www.w3.org/TR/WCAG22/#contrast-minimum. It lets
/// large letters have 3:1; that is not made use of. The formula stands in gui/canvas/colour.cpp.
constexpr double kLeastContrast = 4.5;

/// Finds what is wrong on screens, each thing once.
class Inspector {
public:
    Inspector(const Look& look, bool contrast_too) : look_(look), contrast_too_(contrast_too) {}

    void operator()(const std::string& screen, const canvas::LayoutProbe& probe) {
        ++screens_;
        if (probe.texts().size() < 4)
            faults_.insert(screen + ": hardly a word on it");
        for (const std::string& problem : probe.problems())
            faults_.insert(screen + ": " + problem);
        // Farther down a sheet come more of the same colours.
        if (contrast_too_ && screen.find(", scrolled") == std::string::npos)
            contrast(screen, probe);
    }
    void report() const {
        CAPTURE(look_.size.x, look_.size.y, canvas::theme(look_.theme).name, look_.text_percent);
        for (const std::string& fault : faults_)
            FAIL_CHECK(fault);
        CHECK(screens_ > 0);
    }
    [[nodiscard]] std::size_t screens() const { return screens_; }
    [[nodiscard]] const std::map<std::pair<ImU32, ImU32>, test::Pair>& pairs() const { return pairs_; }

private:
    void contrast(const std::string& screen, const canvas::LayoutProbe& probe) {
        const test::Drawn drawn = test::last_frame(canvas::theme(look_.theme).ground);
        const bool one_layer = std::all_of(probe.texts().begin(), probe.texts().end(),
                                           [](const auto& text) { return text.layer == 0; });
        for (const auto& text : probe.texts()) {
            if (text.words.find_first_not_of(" ") == std::string::npos)
                continue;
            if (!one_layer && text.layer == 0)
                continue; // what lies over it covers some: it is looked at on a screen of its own
            const std::vector<test::Pair> pairs = test::pairs_of(drawn, text);
            if (pairs.empty())
                faults_.insert(screen + ": \"" + text.words + "\" is painted over");
            for (const test::Pair& pair : pairs) {
                pairs_.emplace(std::pair{canvas::packed(pair.ink), canvas::packed(pair.ground)}, pair);
                if (pair.contrast < kLeastContrast)
                    faults_.insert(screen + ": \"" + text.words + "\" has " + std::to_string(pair.contrast) +
                                   ":1");
            }
        }
    }

    Look look_;
    bool contrast_too_;
    std::size_t screens_ = 0;
    std::set<std::string> faults_;
    std::map<std::pair<ImU32, ImU32>, test::Pair> pairs_;
};

/// Front desk, cautions, settings, and the pages of three calls: one just begun, one half worked, a tune-up.
void visit_program(const Look& look, Stage& stage, const test::Visit& visit) {
    const TemporaryFolder folder;
    {
        files::Settings first = test::settings_of(look);
        first.cautions_read = false;
        desk::Program program(desk::Own{folder.path().string(), "", first});
        stage.play(program);
        test::show_all_of_it(stage, "cautions", visit);
    }
    desk::Program program(desk::Own{folder.path().string(), "", test::settings_of(look)});
    {
        stage.play(program);
        test::show_all_of_it(stage, "front desk", visit);
        REQUIRE(stage.press("Settings"));
        test::show_all_of_it(stage, "settings", visit);
        stage.tap(platform::Key::Escape);
    }
    program.take_call("first-call");
    {
        stage.play(program);
        test::show_all_of_it(stage, "a guided call", visit);
        test::work(*program.call(), {"thermostat-mode heat"});
        test::show_all_of_it(stage, "a guided call, further on", visit);
        program.call()->leave();
        stage.settle();
    }
    program.take_call("plugged-hose");
    test::work(*program.call(), test::kHalfWorked);
    {
        stage.play(program);
        test::visit_call(program, stage, "half worked", visit);
        program.call()->leave();
        stage.settle();
        test::show_all_of_it(stage, "front desk with attempts", visit);
    }
}

void visit_tune_up(const Look& look, Stage& stage, const test::Visit& visit) {
    const TemporaryFolder folder;
    desk::Program program(desk::Own{folder.path().string(), "", test::settings_of(look)});
    program.take_call("tune-up-maple");
    REQUIRE(program.call() != nullptr);
    test::work(*program.call(), {"probe-1 supply-duct", "probe-2 return-duct", "thermostat-mode heat",
                                 "wait 4min", "analyser vent-connector", "clamp harness.blower_line"});
    stage.play(program);
    for (const auto side : {work::CallPage::Side::order, work::CallPage::Side::bag,
                            work::CallPage::Side::close, work::CallPage::Side::noticed}) {
        program.call()->show(side);
        test::show_all_of_it(stage, "tune-up, side " + std::to_string(static_cast<int>(side)), visit);
    }
}

/// The diagram with its loupe open: the pointer on two points that lie close.
void visit_loupe(const Look& look, float scale, const test::Visit& visit) {
    desk::Program program(desk::Own{"", "", test::settings_of(look)});
    program.take_call("plugged-hose");
    const view::Known known = program.call()->known();
    const diagram::Ladder ladder = diagram::lay_out(known.site->model);
    test::Headless ui(look.size, look.theme, scale);
    diagram::DiagramView view;
    const float edge = 20 * scale; // the test's own page clips a little inside of its border
    // As much as a call's page has for it at the least.
    const bool beside = work::fold(look.size.x / scale, look.size.y / scale).sheets_beside;
    const ImVec2 corner{beside ? look.size.x * 0.5F : look.size.x - 120 * scale,
                        look.size.y * (beside ? 0.8F : 0.66F)};
    const auto frame = [&] {
        ui.settle([&](const canvas::Canvas& canvas) {
            view::Wanted wanted;
            diagram::draw_diagram(canvas, {{edge, edge}, corner}, ladder, known, view, wanted);
        });
    };
    frame();
    frame();
    const std::vector<ImVec2> places = diagram::spot_places(ladder, view.place, known);
    int opened = 0;
    for (std::size_t i = 0; i < places.size() && opened < 6; ++i) {
        ui.queue.push(platform::PointerEvent{places[i].x, places[i].y});
        frame();
        const auto& texts = ui.probe.texts();
        if (std::none_of(texts.begin(), texts.end(), [](const auto& text) { return text.layer == 1; }))
            continue;
        ++opened;
        visit("diagram, the tag at the pointer", ui.probe);
    }
    CHECK(opened > 0);
}

void visit_debrief(const Look& look, float scale, const test::Visit& visit) {
    const debrief::Model& model = test::guessed();
    test::Headless ui(look.size, look.theme, scale);
    debrief::DebriefView view(model);
    view.reached = debrief::pages_of(model).size() - 1;
    view.knew_tick = model.tick_at(0.4 * model.length_s());
    debrief::DebriefWants wants;
    const float edge = 14 * scale;
    const auto draw = [&](const canvas::Canvas& canvas) {
        debrief::draw_debrief(canvas, canvas::Rect{{0, 0}, look.size}.shrunk(edge), model, view, wants);
    };
    for (const debrief::Page page : debrief::pages_of(model)) {
        view.page = page;
        view.tick = model.tick_at(0.6 * model.length_s());
        ui.settle(draw);
        ui.settle(draw);
        const std::string name = std::string("debrief, ") + debrief::name_of(page);
        visit(name, ui.probe);
        test::scroll_children(1e4F);
        ui.settle(draw);
        ui.settle(draw);
        visit(name + ", scrolled", ui.probe);
        test::scroll_children(0);
    }
    for (const auto show : {debrief::DebriefView::Show::line, debrief::DebriefView::Show::furnace}) {
        view.show = show; // where they have no place of their own
        ui.settle(draw);
        ui.settle(draw);
        visit("debrief, shown in turns", ui.probe);
    }
    ui.settle([&](const canvas::Canvas& canvas) {
        debrief::draw_waiting(canvas, canvas::Rect{{0, 0}, look.size}.shrunk(edge),
                              "Running the attempt again, 40 %", wants);
    });
    visit("debrief, waiting", ui.probe);
}

/// Of explore: cold, lighting, hot; its pages in turn where there is no room for all of them.
void visit_explore(const Look& look, const test::Visit& visit) {
    static const files::LoadedBundle bundle = files::load_bundle("call-for-heat");
    explore::Explore window(bundle.site, bundle.scenario);
    window.set_paused(true);
    window.set_look(look.theme, static_cast<float>(look.text_percent));
    test::Headless ui(
        look.size, look.theme,
        platform::design_scale(look.size.y, window.text_percent_in(look.size), canvas::theme(look.theme)));
    for (const double moment_s : {3.0, 46.8, 300.0}) {
        while (window.furnace().now_s() < moment_s)
            window.furnace().tick();
        for (int page = 0; page < static_cast<int>(explore::kViews); ++page) {
            ui.frame_of(window);
            ui.frame_of(window);
            visit("explore at " + std::to_string(moment_s) + " s", ui.probe);
            ui.tap(platform::Key::V);
            ui.tap(platform::Key::M);
            while (!ui.queue.empty())
                ui.frame_of(window);
        }
    }
}

/// What is to be seen now and then: the row for a file's path, the page of keys while it waits and refuses,
/// instruments' numbers while a lead is in the hand, the warning of an unsafe act, and the card that ends a
/// call.
void visit_rare(const Look& look, Stage& stage, const test::Visit& visit) {
    using platform::Key;
    const TemporaryFolder folder;
    desk::Program program(desk::Own{folder.path().string(), "", test::settings_of(look)});
    stage.play(program);
    REQUIRE(stage.press("Open a file"));
    test::show_all_of_it(stage, "front desk, a file asked for", visit);
    for (const char letter : std::string_view("/no/such/attempt.jsonl"))
        stage.screen.queue.push(platform::TextEvent{static_cast<char32_t>(letter)});
    stage.tap(Key::Enter);
    CHECK(program.desk().said().find("/no/such/attempt.jsonl") != std::string::npos);
    test::show_all_of_it(stage, "front desk, no such file", visit);
    stage.tap(Key::Escape);
    REQUIRE(stage.press("Settings"));
    REQUIRE(stage.press("Keys"));
    test::show_all_of_it(stage, "settings, keys", visit);
    REQUIRE(stage.press("F1"));
    test::show_all_of_it(stage, "settings, a key waited for", visit);
    stage.tap(Key::F2);
    test::scroll_children(1e4F);
    stage.settle();
    CHECK(stage.shows_part("is the key of"));
    test::show_all_of_it(stage, "settings, a key refused", visit);
    stage.tap(Key::Escape);
    program.take_call("plugged-hose");
    REQUIRE(program.call() != nullptr);
    stage.settle();
    test::work(*program.call(), {"burner-door off", "manometer-a hose-tee-switch",
                                 "leads pressure_switch.in pressure_switch.out", "wait 3s"});
    for (const auto middle : {work::CallPage::Middle::diagram, work::CallPage::Middle::furnace}) {
        program.call()->show(middle);
        stage.settle();
        if (look.size.x > 700) // a smaller window may have no room for it
            CHECK(stage.shows_part("Multimeter ") == program.call()->one_at_a_time());
        test::show_all_of_it(stage, "numbers under a drawing", visit);
    }
    test::work(*program.call(), {"replace gas_valve"});
    stage.settle();
    CHECK(stage.shows_part("would end the call"));
    test::show_all_of_it(stage, "a warning", visit);
    program.call()->focus(
        {bench::Word::part, program.call()->visit().site().catalogue.find_part("gas_valve")});
    test::show_all_of_it(stage, "a warning under a tag", visit);
    test::work(*program.call(), {"replace gas_valve"});
    REQUIRE(program.call()->stopped());
    stage.settle();
    CHECK(stage.shows_part("Stop work at "));
    test::show_all_of_it(stage, "stop work", visit);
}

/// The least and the largest letters, where every page has the least room.
bool has_rare(const Look& look) {
    return look.size.x < 700 || (look.size.x == 1280 && look.text_percent != 150);
}

void inspect_all(Inspector& inspector, const Look& look) {
    const test::Visit visit = [&](const std::string& name, const canvas::LayoutProbe& probe) {
        inspector(name, probe);
    };
    {
        Stage stage(look);
        visit_program(look, stage, visit);
        visit_tune_up(look, stage, visit);
        if (has_rare(look))
            visit_rare(look, stage, visit);
    }
    const float scale = test::scale_of(look);
    visit_loupe(look, scale, visit);
    visit_debrief(look, scale, visit);
    visit_explore(look, visit);
}

/// Of the letters, beside those of 100 % on paper.
double letters_percent(const Look& look) {
    return static_cast<double>(
               test::scale_of(look) /
               platform::design_scale(look.size.y, 100, canvas::theme(canvas::ThemeId::Paper))) *
           100;
}

std::string name_of(const Look& look) {
    return std::to_string(static_cast<int>(look.size.x)) + "x" +
           std::to_string(static_cast<int>(look.size.y)) + " at " +
           std::to_string(static_cast<int>(look.text_percent)) + " % in " + canvas::theme(look.theme).name;
}

} // namespace

TEST_CASE("every screen has room for its words at every size, text scale and theme", "[screens]") {
    for (const canvas::ThemeId theme : canvas::kThemes)
        for (const Sheet& sheet : kSheets) {
            const Look look{sheet.size, theme, sheet.text_percent};
            DYNAMIC_SECTION(name_of(look)) {
                CHECK(letters_percent(look) >= sheet.least_percent - 0.01);
                Inspector inspector(look, false);
                inspect_all(inspector, look);
                inspector.report();
                CHECK(inspector.screens() > 60);
            }
        }
}

TEST_CASE("text is as large as was asked for from 1280x720 on", "[screens]") {
    for (const canvas::ThemeId theme : canvas::kThemes)
        for (double percent = 80; percent <= 200; percent += 10)
            for (const ImVec2 size : {ImVec2{1280, 720}, ImVec2{1366, 768}, ImVec2{1920, 1080}}) {
                // The projector's letters are 1.4 times as large by themselves, and end at 224 %.
                const bool ends = theme == canvas::ThemeId::Projector && percent > 160 && size.y < 900;
                const Look look{size, theme, percent};
                CAPTURE(name_of(look));
                const double factor = static_cast<double>(canvas::theme(theme).text_factor);
                if (!ends)
                    CHECK(letters_percent(look) == Approx(percent * factor).margin(0.01));
                else
                    CHECK(letters_percent(look) > 223);
            }
}

TEST_CASE("where panes take turns, each is reached by mouse and by keyboard", "[screens]") {
    const Look look{{1280, 720}, canvas::ThemeId::Paper, 200};
    Stage stage(look);
    desk::Program program(desk::Own{"", "", test::settings_of(look)});
    program.take_call("plugged-hose");
    REQUIRE(program.call() != nullptr);
    stage.play(program);
    const auto shows = [&](std::string_view words) {
        const auto& texts = stage.screen.probe.texts();
        return std::any_of(texts.begin(), texts.end(), [&](const auto& text) { return text.words == words; });
    };
    struct Pane {
        const char* name;
        const char* on_it; ///< and on no other
        platform::Key key;
    };
    using platform::Key;
    const std::array<Pane, 10> panes{{{"Furnace", "Heat exchanger", Key::F7},
                                      {"Diagram", "Fit", Key::F7},
                                      {"Trace", "Lamp", Key::F7},
                                      {"Switches", "Breaker", Key::F7},
                                      {"Order", "Work order", Key::F1},
                                      {"Bag", "fold", Key::F2},
                                      {"Notes", "Notebook", Key::F3},
                                      {"Suspects", "Where does the sequence stop?", Key::F4},
                                      {"Close", "Diagnosis", Key::F5},
                                      {"Noticed", "Wait for …", Key::F6}}};
    const auto only = [&](const Pane& up) {
        for (const Pane& pane : panes) {
            CAPTURE(up.name, pane.name);
            CHECK(shows(pane.on_it) == (&pane == &up));
        }
    };
    for (const Pane& pane : panes) {
        REQUIRE(stage.press(pane.name));
        only(pane);
    }
    stage.tap(Key::F7); // back to what the sheet lies on
    only(panes[3]);
    for (const Pane& pane : panes) {
        stage.tap(pane.key);
        only(pane);
    }
    SECTION("a thing in focus shows its tag, and Escape puts it away") {
        stage.press("Switches");
        REQUIRE(stage.press("Breaker"));
        CHECK(shows("Put back"));
        stage.tap(Key::Escape);
        only(panes[3]);
    }
    SECTION("a sheet that is read holds time only while it is to be seen") {
        stage.press("Suspects");
        CHECK(program.call()->still());
        stage.press("Furnace");
        CHECK_FALSE(program.call()->still());
    }
}

TEST_CASE("every word on every screen stands out from what is drawn beneath it: 4.5:1 (WCAG 2.2 AA)",
          "[contrast]") {
    for (const canvas::ThemeId theme : canvas::kThemes)
        for (const double text_percent : {100, 200}) {
            const Look look{{1280, 720}, theme, text_percent};
            Inspector inspector(look, true);
            inspect_all(inspector, look);
            inspector.report();
            CHECK(inspector.pairs().size() > 5);
            double least = 21;
            for (const auto& [colours, pair] : inspector.pairs())
                least = std::min(least, pair.contrast);
            WARN(name_of(look) << ": " << inspector.pairs().size() << " pairs, least contrast " << least);
        }
}

TEST_CASE("what lies beneath words is found from what was drawn", "[contrast]") {
    using canvas::hex;
    test::Headless ui({400, 200});
    const auto pairs_in = [&](auto draw) {
        ui.frame(draw);
        const test::Drawn drawn = test::last_frame(hex(0xFFFFFF));
        REQUIRE(ui.probe.texts().size() == 1);
        return test::pairs_of(drawn, ui.probe.texts().front());
    };
    SECTION("a box under half of them is a pair of its own, and fails") {
        const auto pairs = pairs_in([](const canvas::Canvas& canvas) {
            canvas::fill(canvas, {{0, 0}, {400, 200}}, hex(0xFFFFFF));
            canvas::fill(canvas, {{100, 50}, {140, 90}}, hex(0x808080));
            canvas::text(canvas, {60, 60}, "WWWWWWWWWW", canvas::Type::Body, hex(0x767676));
        });
        REQUIRE(pairs.size() == 2);
        CHECK(std::max(pairs[0].contrast, pairs[1].contrast) >= 4.5);
        CHECK(std::min(pairs[0].contrast, pairs[1].contrast) < 1.2);
    }
    SECTION("faded letters are as faint as they look") {
        const auto pairs = pairs_in([](const canvas::Canvas& canvas) {
            canvas::fill(canvas, {{0, 0}, {400, 200}}, hex(0xFFFFFF));
            canvas::text(canvas, {60, 60}, "WWWWW", canvas::Type::Body, canvas::faded(hex(0x000000), 0.45F));
        });
        REQUIRE(pairs.size() == 1);
        CHECK(pairs[0].contrast == Approx(canvas::contrast(hex(0x8C8C8C), hex(0xFFFFFF))).margin(0.05));
    }
    SECTION("letters that something was painted over have no pair") {
        CHECK(pairs_in([](const canvas::Canvas& canvas) {
                  canvas::text(canvas, {60, 60}, "WWWWW", canvas::Type::Body, hex(0x000000));
                  canvas::fill(canvas, {{0, 0}, {400, 200}}, canvas::faded(hex(0xFFFFFF), 0.7F));
              }).empty());
    }
    SECTION("a halo is the ground of its letters") {
        const auto pairs = pairs_in([](const canvas::Canvas& canvas) {
            canvas::fill(canvas, {{0, 0}, {400, 200}}, hex(0x000000));
            canvas::haloed_text(canvas, {60, 60}, "WWWWW", canvas::Type::Body, hex(0x000000), hex(0xFFFFFF));
        });
        REQUIRE(pairs.size() == 1);
        CHECK(pairs[0].contrast == Approx(21));
    }
}
