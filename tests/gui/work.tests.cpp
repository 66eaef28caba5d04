// SPDX-License-Identifier: MIT
#include "bench/captions.hpp"
#include "files/attempt.hpp"
#include "files/bundle_loader.hpp"
#include "gui/cutaway/places.hpp"
#include "gui/drawn_corners.hpp"
#include "gui/headless.hpp"
#include "gui/view/things.hpp"
#include "gui/work/call_page.hpp"
#include "gui/work/pace.hpp"
#include "gui/work/strip.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <csignal>
#include <filesystem>
#include <imgui_internal.h>
#include <map>
#include <set>
#include <sys/resource.h>
#include <unistd.h>

using namespace lightoff;
using work::CallPage;

namespace {

const files::LoadedBundle& hose_call() {
    static const files::LoadedBundle bundle = files::load_bundle("plugged-hose");
    return bundle;
}

/// A call's page with hands that use it.
struct Hands {
    explicit Hands(const files::LoadedBundle& bundle = hose_call(), ImVec2 size = {1280, 720},
                   canvas::ThemeId theme = canvas::ThemeId::Paper, float scale = 1)
        : at(size), screen(size, theme, scale), page(bundle, {}) {
        look();
    }
    void look() {
        screen.settle([&](const canvas::Canvas& canvas) { page.draw(canvas, {{0, 0}, at}); });
        page.finish();
        screen.settle([&](const canvas::Canvas& canvas) { page.draw(canvas, {{0, 0}, at}); });
    }
    /// Presses what bears these words.
    void press(std::string_view words) {
        for (const auto& text : screen.probe.texts())
            if (text.words == words) {
                screen.click(text.ink.centre());
                look();
                return;
            }
        FAIL("nothing says " << words);
    }
    void tap(platform::Key key) {
        screen.tap(key);
        look();
    }

    ImVec2 at;
    test::Headless screen;
    CallPage page;
};

} // namespace

TEST_CASE("every part and every spot has a place on drawing or strip", "[gui]") {
    for (const char* call : {"plugged-hose", "natural-draft-call"}) {
        const files::LoadedBundle bundle = files::load_bundle(call);
        for (const faults::Part& part : bundle.site.catalogue.parts) {
            INFO(part.id);
            const bool both = part.id == "disconnect"; // hangs beside the furnace, too
            CHECK((cutaway::find_part_place(part.id) != nullptr) == (both || !work::is_on_strip(part.id)));
        }
    }
    std::set<instruments::Spot> placed;
    for (const cutaway::SpotPlace& place : cutaway::spot_places())
        placed.insert(place.spot);
    for (const instruments::SpotRow& row : instruments::spots()) {
        INFO(row.id);
        // The living room is on the strip: its thermostat hangs there.
        CHECK(placed.count(row.spot) == (row.spot == instruments::Spot::living_room ? 0U : 1U));
    }
}

TEST_CASE("no part is wholly hidden behind others that lie in front of it", "[gui]") {
    const auto places = cutaway::part_places();
    const files::LoadedBundle& bundle = hose_call();
    for (std::size_t i = 0; i < places.size(); ++i) {
        if (bundle.site.catalogue.find_part(places[i].part) < 0)
            continue;
        bool free = false;
        const canvas::Rect& box = places[i].box;
        for (float x = box.min.x + 0.5F; x < box.max.x && !free; x += 1)
            for (float y = box.min.y + 0.5F; y < box.max.y && !free; y += 1) {
                free = true;
                for (std::size_t k = 0; k < i; ++k)
                    if (bundle.site.catalogue.find_part(places[k].part) >= 0 && places[k].box.holds({x, y}))
                        free = false;
            }
        INFO(places[i].part);
        CHECK(free);
    }
}

TEST_CASE("time: nothing is sat through, nothing is skipped", "[gui]") {
    work::Pace pace;
    SECTION("at 1x a second is 20 ticks, whatever the frames") {
        std::uint64_t ticks = 0;
        for (int i = 0; i < 60; ++i)
            ticks += pace.due(1.0 / 60, 0, false);
        CHECK(ticks >= 19);
        CHECK(ticks <= 20);
    }
    SECTION("held or reading, only acts go on") {
        pace.hold(true);
        CHECK(pace.due(1.0, 0, false) == 0);
        CHECK(pace.still(0, false));
        pace.begin(100);
        CHECK(pace.due(1.0, 100, false) > 0);
        pace.hold(false);
        CHECK(pace.due(1.0, 0, true) == 0);
    }
    SECTION("an act of five minutes takes no longer than three seconds, and ends with its last tick") {
        pace.begin(6000);
        std::uint64_t left = 6000;
        int frames = 0;
        while (left > 0) {
            const std::uint64_t due = pace.due(1.0 / 60, left, true);
            REQUIRE(due <= left);
            left -= due;
            REQUIRE(++frames <= 180);
        }
        CHECK(frames >= 60);
    }
    SECTION("an unknown speed is no speed") {
        pace.set_speed(3);
        pace.set_speed(99);
        CHECK(pace.speed() == 3);
    }
}

TEST_CASE("the strip turns switches as a script does", "[gui]") {
    Hands hands;
    hands.press("On"); // the breaker's: the first
    CHECK_FALSE(hands.page.known().percept.left_as.breaker_on);
    CHECK(bench::format_action(hands.page.visit().site(), hands.page.visit().done().back().action) ==
          "breaker off");
}

TEST_CASE("a part's tag: look by one key after focus", "[gui]") {
    Hands hands;
    const int part = hands.page.visit().site().catalogue.find_part("filter");
    hands.page.focus({bench::Word::part, part});
    hands.look();
    hands.tap(platform::Key::L);
    REQUIRE_FALSE(hands.page.known().readings.empty());
    CHECK(hands.page.known().readings.back().part == part);
    hands.tap(platform::Key::Escape);
    CHECK_FALSE(hands.page.focus());
}

TEST_CASE("behind a door: the refusal says so, and one key takes the door off", "[gui]") {
    Hands hands;
    const int hose = hands.page.visit().site().catalogue.find_part("pressure_hose");
    hands.page.focus({bench::Word::part, hose});
    hands.look();
    hands.tap(platform::Key::L);
    CHECK(hands.page.visit().done().empty());
    hands.tap(platform::Key::Enter);
    CHECK_FALSE(hands.page.known().percept.left_as.burner_door_on);
    hands.tap(platform::Key::L);
    CHECK(hands.page.known().readings.back().part == hose);
}

TEST_CASE("what is typed is done; what is refused says why and stops what was to follow", "[gui]") {
    Hands hands;
    hands.page.take("disconnect off");
    hands.page.take("clean igniter_of_gold");
    hands.page.take("disconnect on");
    hands.look();
    CHECK_FALSE(hands.page.known().percept.left_as.disconnect_on);
    CHECK(hands.page.refusal().find("igniter_of_gold") != std::string::npos);
    hands.page.take("undo");
    hands.look();
    CHECK(hands.page.known().percept.left_as.disconnect_on);
}

TEST_CASE("what is typed ahead of the field is not lost", "[gui]") {
    Hands hands;
    hands.screen.tap(platform::Key::Slash);
    hands.screen.queue.push(platform::TextEvent{U'/'});
    for (const char letter : std::string("disconnect off"))
        hands.screen.queue.push(platform::TextEvent{static_cast<char32_t>(letter)});
    hands.tap(platform::Key::Enter);
    CHECK_FALSE(hands.page.known().percept.left_as.disconnect_on);
    CHECK(hands.page.refusal().empty());
}

TEST_CASE("one key says what is expected; the reading answers", "[gui]") {
    Hands hands;
    hands.page.take("blower-door off");
    hands.page.take("door-switch on");
    hands.page.take("leads board.R board.C");
    hands.look();
    hands.screen.tap(platform::Key::E);
    for (const char letter : std::string("e24")) // the key comes through as a letter
        hands.screen.queue.push(platform::TextEvent{static_cast<char32_t>(letter)});
    hands.tap(platform::Key::Enter);
    CHECK(hands.page.refusal().empty());
    REQUIRE(hands.page.known().expectations.size() == 1);
    CHECK(hands.page.known().expectations[0].value == 24000);
    CHECK(hands.page.known().expectations[0].reading == 0);
    hands.page.take("wait until reading");
    hands.look();
    const bench::Expectation answered = hands.page.known().expectations[0];
    CHECK(answered.reading > 0);
    CHECK(answered.came_true);
    hands.page.show(CallPage::Side::notes);
    hands.look();
    const auto& texts = hands.screen.probe.texts();
    CHECK(std::any_of(texts.begin(), texts.end(), [](const auto& text) {
        return text.words.find("expected 24: it came out so") != std::string::npos;
    }));
}

TEST_CASE("the recorder says its units as they are written, in those that were chosen", "[gui]") {
    Hands hands;
    hands.page.show(CallPage::Middle::trace);
    const auto units_shown = [&](std::initializer_list<const char*> lines) {
        for (const char* line : lines) {
            hands.page.take(line);
            hands.look();
        }
        REQUIRE(hands.page.refusal().empty());
        std::set<std::string> shown;
        for (const auto& text : hands.screen.probe.texts())
            for (const char* unit : {"°F", "°C", "in. w.c.", "Pa", "V", "Ω"})
                if (text.words == unit)
                    shown.insert(unit);
        return shown;
    };
    using Units = std::set<std::string>;
    CHECK(units_shown({"probe-1 supply-duct", "manometer-a supply-static", "wait 5s"}) ==
          Units{"°F", "in. w.c."});
    hands.page.set_units(view::Units::si);
    CHECK(units_shown({"wait 5s"}) == Units{"°C", "Pa"});
    CHECK(units_shown({"leads disconnect.line_in disconnect.neutral", "wait 5s"}) == Units{"°C", "Pa", "V"});
    CHECK(units_shown({"leads-off", "disconnect off", "meter ohms",
                       "leads disconnect.line_out disconnect.neutral", "wait 5s"}) == Units{"°C", "Pa", "Ω"});
}

TEST_CASE("waiting stops at what can be noticed", "[gui]") {
    Hands hands;
    hands.page.take("wait until lamp");
    hands.look();
    REQUIRE_FALSE(hands.page.known().captions.empty());
    CHECK(hands.page.known().captions.back().about == bench::About::lamp);
}

namespace {

/// The call's pages one after the other, with another fault or another severity of it.
std::vector<std::vector<std::uint32_t>> pictures_with(const std::string& fault, double severity,
                                                      bench::Percept& percept,
                                                      std::initializer_list<const char*> lines = {}) {
    files::LoadedBundle bundle = files::load_bundle("first-call");
    bundle.scenario.faults[0].id = fault;
    bundle.scenario.faults[0].severity = severity;
    Hands hands(bundle);
    for (const char* line : lines) {
        hands.page.take(line);
        hands.page.finish();
    }
    percept = hands.page.known().percept;
    std::vector<std::vector<std::uint32_t>> all;
    for (const CallPage::Middle middle :
         {CallPage::Middle::furnace, CallPage::Middle::diagram, CallPage::Middle::trace})
        for (std::size_t side = 0; side < CallPage::kSides; ++side) {
            hands.page.show(middle);
            hands.page.show(static_cast<CallPage::Side>(side));
            hands.look();
            all.push_back(test::drawn_corners());
        }
    return all;
}

} // namespace

TEST_CASE("two furnaces that nobody can tell apart give equal pictures; others do not", "[gui]") {
    bench::Percept one;
    bench::Percept other;
    bench::Percept third;
    const auto first = pictures_with("w_terminal_corroded", 1.0, one);
    const auto second = pictures_with("w_wire_open", 1.0, other); // another cause, the same silence
    REQUIRE(one == other);
    CHECK(first == second);
    // With hands in a compartment that nobody has proved dead.
    const auto open = pictures_with("w_terminal_corroded", 1.0, one, {"burner-door off"});
    const auto open_too = pictures_with("w_wire_open", 1.0, other, {"burner-door off"});
    REQUIRE(one == other);
    CHECK(open == open_too);
    CHECK(open != first);
    const auto lit = pictures_with("filter_dirty", 0.5, third);
    REQUIRE_FALSE(one == third);
    CHECK(first != lit);
}

namespace {

/// Corners drawn in the page's margin, the ground's own four apart.
std::size_t in_margin(const Hands& hands) {
    std::size_t count = 0;
    const float margin = 12;
    const ImDrawData& data = *ImGui::GetDrawData();
    for (int i = 0; i < data.CmdListsCount; ++i)
        for (const ImDrawVert& corner : data.CmdLists[i]->VtxBuffer) {
            const ImVec2 p = corner.pos;
            const bool inside =
                p.x > margin && p.x < hands.at.x - margin && p.y > margin && p.y < hands.at.y - margin;
            const bool of_ground = (p.x <= 0 || p.x >= hands.at.x) && (p.y <= 0 || p.y >= hands.at.y);
            count += inside || of_ground ? 0U : 1U;
        }
    return count;
}

bool says(const Hands& hands, std::string_view words) {
    const auto& texts = hands.screen.probe.texts();
    return std::any_of(texts.begin(), texts.end(), [&](const auto& text) { return text.words == words; });
}

} // namespace

TEST_CASE("the page's edge is hatched while a compartment stands open that was not proved dead", "[gui]") {
    Hands hands(hose_call(), {1920, 1080});
    const auto act = [&](std::initializer_list<const char*> lines) {
        for (const char* line : lines) {
            hands.page.take(line);
            hands.page.finish();
        }
        hands.look();
    };
    hands.page.focus({bench::Word::part, 0});
    hands.look();
    const std::size_t plain = in_margin(hands);
    act({"burner-door off"});
    CHECK(says(hands, "Not proved dead: burner compartment"));
    CHECK(in_margin(hands) > plain + 400);
    act({"disconnect off"}); // dead, but who knows?
    CHECK(says(hands, "Not proved dead: burner compartment"));
    act({"disconnect on", "blower-door off", "tape on"});
    CHECK(says(hands, "Not proved dead: both compartments"));
    act({"leads board.line board.neutral", "wait 4s", "disconnect off", "wait 4s", "leads-off"});
    REQUIRE(hands.page.known().proved_dead_tick);
    CHECK(in_margin(hands) == plain);
    act({"burner-door on"});
    CHECK(in_margin(hands) == plain);
    act({"disconnect on"}); // what was proved is over
    CHECK(says(hands, "Not proved dead: blower compartment"));
    CHECK(in_margin(hands) > plain + 400);
    act({"tape off", "blower-door on"});
    CHECK(in_margin(hands) == plain);
}

TEST_CASE("the scale of what is heard holds the tone that stands beside it", "[gui]") {
    Hands hands(hose_call(), {1920, 1080});
    for (const char* line :
         {"thermostat-mode off", "thermostat-mode heat", "wait until inducer", "wait 5s"}) {
        hands.page.take(line);
        hands.page.finish();
    }
    hands.page.show(CallPage::Middle::trace);
    hands.look();
    const int tone_hz = hands.page.known().percept.heard.inducer_hz;
    REQUIRE(tone_hz > 1000); // 24 blades at some 3,200 rpm
    CHECK(says(hands, std::to_string(tone_hz)));
    CHECK(says(hands, "1500"));
    CHECK(tone_hz < 1500);
}

TEST_CASE("the trace says of burners and air what a caption says", "[gui]") {
    Hands hands;
    hands.page.take("wait 1s");
    hands.page.finish();
    hands.page.show(CallPage::Middle::trace);
    hands.look();
    CHECK(says(hands, std::string(bench::roar_words(0))));
    CHECK(says(hands, std::string(bench::air_words(0))));
    CHECK_FALSE(says(hands, "tenths"));
}

TEST_CASE("a page with no room for the furnace is drawn without it", "[gui]") {
    for (const ImVec2 size : {ImVec2{800, 450}, ImVec2{640, 360}, ImVec2{320, 200}, ImVec2{40, 30}}) {
        Hands hands(hose_call(), size);
        hands.page.take("burner-door off");
        hands.page.focus({bench::Word::part, 0});
        hands.look();
        CHECK_FALSE(hands.page.known().percept.left_as.burner_door_on);
    }
}

TEST_CASE("a narrow page says that it is not proved dead in as many words as fit", "[gui]") {
    Hands hands(hose_call(), {1280, 720});
    hands.page.take("burner-door off");
    hands.look();
    CHECK(says(hands, "Not proved dead"));
    CHECK(hands.screen.probe.problems() == std::vector<std::string>{});
}

TEST_CASE("a full disk: the act is not done, the page says so, and nothing crashes", "[gui]") {
    const std::string path =
        (std::filesystem::temp_directory_path() / ("lightoff-full-" + std::to_string(getpid()) + ".jsonl"))
            .string();
    CallPage page(hose_call(), {path, false, 0});
    page.take("burner-door off");
    page.finish();
    rlimit before{};
    getrlimit(RLIMIT_FSIZE, &before);
    std::signal(SIGXFSZ, SIG_IGN);
    const rlimit full{std::filesystem::file_size(path), before.rlim_max}; // no byte more
    setrlimit(RLIMIT_FSIZE, &full);
    page.take("disconnect off");
    page.finish();
    const bool on = page.known().percept.left_as.disconnect_on;
    const std::string why = page.refusal();
    for (int i = 0; i < 500; ++i)
        page.pass(0.05); // marks can't be written either
    setrlimit(RLIMIT_FSIZE, &before);
    CHECK(on);
    CHECK(why.find(path) != std::string::npos);
    CHECK(page.visit().done().size() == 1);
    page.take("disconnect off"); // there is room again
    page.finish();
    CHECK_FALSE(page.known().percept.left_as.disconnect_on);
    page.leave();
    CHECK(files::read_attempt(path, furnace::kPhysicsVersion).entries.size() == 2);
    std::filesystem::remove(path);
}

TEST_CASE("no text is cut off, covered or too small, at any size, theme and scale", "[gui]") {
    struct Look {
        ImVec2 size;
        canvas::ThemeId theme;
        float scale;
    };
    for (const Look& look :
         {Look{{1280, 720}, canvas::ThemeId::Paper, 1}, Look{{1920, 1080}, canvas::ThemeId::Basement, 1},
          Look{{1920, 1080}, canvas::ThemeId::Paper, 1.5F},
          Look{{2560, 1440}, canvas::ThemeId::Projector, 1.4F}}) {
        Hands hands(hose_call(), look.size, look.theme, look.scale);
        for (std::size_t side = 0; side < CallPage::kSides; ++side) {
            hands.page.show(static_cast<CallPage::Side>(side));
            hands.look();
            INFO(look.size.x << "x" << look.size.y << " scale " << look.scale << " side " << side);
            CHECK(hands.screen.probe.problems() == std::vector<std::string>{});
        }
        hands.page.focus({bench::Word::part, 0});
        hands.look();
        CHECK(hands.screen.probe.problems() == std::vector<std::string>{});
    }
}

namespace {

/// The thing on the drawing that the keyboard is on, by its title.
std::string walked_to(const Hands& hands) {
    const ImGuiContext& g = *ImGui::GetCurrentContext();
    if (g.NavId == 0 || g.NavDisableHighlight || g.NavWindow == nullptr)
        return {};
    const ImRect nav = ImGui::WindowRectRelToAbs(g.NavWindow, g.NavWindow->NavRectRel[0]);
    for (const auto& target : hands.screen.probe.targets())
        if (std::abs(target.edge.min.x - nav.Min.x) < 1.5F &&
            std::abs(target.edge.min.y - nav.Min.y) < 1.5F &&
            std::abs(target.edge.max.x - nav.Max.x) < 1.5F && std::abs(target.edge.max.y - nav.Max.y) < 1.5F)
            return target.name;
    return {};
}

} // namespace

TEST_CASE("arrows come to everything on the drawing, and Enter opens its tag") {
    using platform::Key;
    Hands hands;
    std::string now;
    std::set<std::string> parts;
    for (const cutaway::PartPlace& place : cutaway::part_places())
        if (const int part = hands.page.visit().site().catalogue.find_part(place.part); part >= 0)
            parts.insert(hands.page.visit().site().catalogue.parts[static_cast<std::size_t>(part)].title);
    for (int i = 0; i < 60 && parts.count(now) == 0; ++i) {
        hands.tap(Key::Tab);
        now = walked_to(hands);
    }
    REQUIRE(parts.count(now) == 1);
    // From each thing the arrow that was taken from it least, for long enough.
    std::map<std::string, int> tried;
    std::set<std::string> met;
    constexpr std::array<Key, 4> kArrows{Key::Right, Key::Down, Key::Left, Key::Up};
    for (int i = 0; i < 4000 && met.size() < parts.size(); ++i) {
        hands.tap(kArrows[static_cast<std::size_t>(tried[now]++ % 4)]);
        now = walked_to(hands);
        if (parts.count(now) != 0)
            met.insert(now);
    }
    for (const std::string& part : parts) {
        CAPTURE(part);
        CHECK(met.count(part) == 1);
    }
    hands.tap(Key::Enter);
    REQUIRE(hands.page.focus());
    CHECK(view::title_of(hands.page.visit().site(), *hands.page.focus()) == now);
    hands.tap(Key::Escape);
    CHECK_FALSE(hands.page.focus());
    CHECK(walked_to(hands) == now); // the keyboard is where it was
}
