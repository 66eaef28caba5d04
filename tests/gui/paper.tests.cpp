// SPDX-License-Identifier: MIT
#include "bench/offers.hpp"
#include "control/door_chart.hpp"
#include "gui/pane.hpp"
#include "gui/paper/evidence.hpp"
#include "gui/paper/sheets.hpp"
#include "gui/paper/still_open.hpp"
#include "gui/platform/platform.hpp"
#include "gui/sheet/figures.hpp"
#include "gui/worked_call.hpp"
#include "visit/words.hpp"

#include <algorithm>
#include <array>
#include <catch2/catch.hpp>

using namespace lightoff;
using paper::Sheet;
using platform::Key;
using test::Pane;
using test::WorkedCall;
using Lines = std::vector<std::string>;
using Words = std::set<std::string>;

namespace {

/// A call without heat, in the middle: readings taken, a block struck, a part fitted.
const WorkedCall& hose_call() {
    static const WorkedCall call = [] {
        WorkedCall worked("plugged-hose");
        worked.play("look thermostat\nthermostat-mode off\ndisconnect off\nburner-door off\n"
                    "manometer-a hose-tee-switch\ndisconnect on\nthermostat-mode heat\nwait until inducer\n"
                    "wait until inducer\nkeep manometer\nleads pressure_switch.in pressure_switch.out\nread\n"
                    "stops-at 1\nstrike power 2\nstrike-part board_fuse 2\ndisconnect off\n"
                    "replace pressure_switch\ncause pressure_switch_stuck_open\ntell advice");
        return worked;
    }();
    return call;
}

const WorkedCall& tune_up() {
    static const WorkedCall call = [] {
        WorkedCall worked("tune-up-depot");
        worked.play("look filter\nfound filter_dirty\nkeep co-alarm\nas-found ambient-carbon-monoxide 2\n"
                    "burner-door off\nblower-door off\nleads board.R board.C\ndoor-switch on\nread\n"
                    "as-left control-voltage multimeter");
        return worked;
    }();
    return call;
}

struct Desk {
    explicit Desk(const WorkedCall& call, Sheet sheet = Sheet::order, ImVec2 size = {620, 900},
                  view::Units units = view::Units::trade, canvas::ThemeId theme = canvas::ThemeId::Paper,
                  float scale = 1)
        : known(call.known(units)),
          pane(
              size,
              [this](const canvas::Canvas& canvas, canvas::Rect area, view::Wanted& wanted) {
                  paper::draw_binder(canvas, area, known, view, wanted);
              },
              theme, scale) {
        view.sheet = sheet;
        pane.frame();
    }

    Lines asked() {
        Lines lines = pane.wanted.lines;
        pane.wanted = {};
        return lines;
    }
    Lines press(const std::string& words, std::size_t nth = 0) {
        asked();
        INFO("pressing \"" << words << "\"");
        CHECK(pane.click(words, nth));
        return asked();
    }
    bool says(const std::string& part) {
        const Words words = pane.words();
        return std::any_of(words.begin(), words.end(),
                           [&](const std::string& w) { return w.find(part) != std::string::npos; });
    }

    view::Known known;
    paper::BinderView view;
    Pane pane;
};

constexpr std::array<Sheet, 7> kSheets{Sheet::order,     Sheet::chart,  Sheet::notebook, Sheet::suspects,
                                       Sheet::diagnosis, Sheet::report, Sheet::customer};

void open_all(paper::BinderView& view) {
    view.suspects.open = {0, 1, 2, 3, 4, 5, 6, 7};
    view.suspects.evidence.open = true;
    view.diagnosis.open = paper::DiagnosisView::Open::cause;
    view.report.open = true;
    view.customer.asked = true;
}

/// The number of the last reading that a window gave.
int last_of(const view::Known& known, int window) {
    for (std::size_t i = known.readings.size(); i-- > 0;)
        if (known.readings[i].window == window)
            return static_cast<int>(i) + 1;
    return 0;
}

} // namespace

TEST_CASE("every sheet can be laid out whole, at any size and size of letters") {
    const auto size = GENERATE(ImVec2{380, 500}, ImVec2{620, 900}, ImVec2{900, 1000});
    const auto percent = GENERATE(80.0F, 100.0F, 200.0F);
    for (const Sheet sheet : kSheets) {
        Desk desk(tune_up(), sheet, size, view::Units::si, canvas::ThemeId::Basement, percent / 100);
        INFO("sheet " << static_cast<int>(sheet) << ", " << size.x << " x " << size.y << ", " << percent
                      << " %");
        CHECK(desk.pane.problems() == Words{});
        open_all(desk.view);
        desk.pane.frame();
        CHECK(desk.pane.problems() == Words{});
    }
}

TEST_CASE("the sheets stand whole on a projector and for a call without heat") {
    const float scale = platform::design_scale(900, 100, canvas::theme(canvas::ThemeId::Projector));
    for (const Sheet sheet : kSheets) {
        Desk desk(hose_call(), sheet, {620, 900}, view::Units::trade, canvas::ThemeId::Projector, scale);
        open_all(desk.view);
        desk.pane.frame();
        INFO("sheet " << static_cast<int>(sheet));
        CHECK(desk.pane.problems() == Words{});
    }
}

TEST_CASE("all letters that the sheets use are in the typeface") {
    for (const Sheet sheet : kSheets)
        for (const WorkedCall* call : {&hose_call(), &tune_up()}) {
            Desk desk(*call, sheet);
            open_all(desk.view);
            for (const std::string& words : desk.pane.words()) {
                INFO(words);
                CHECK(desk.pane.has_letters(words));
            }
        }
}

TEST_CASE("the work order tells complaint, house, plate and cautions in the units chosen") {
    Desk trade(hose_call());
    for (const char* words : {"No heat at 14 Quarry Lane", "Mrs Odell", "22 °F", "80,000 Btu/h",
                              "3.5 in. w.c.", "40 to 70 °F", "at most 7.0 A"})
        CHECK(trade.pane.shows(words));
    CHECK(trade.says("whirs again"));
    CHECK(trade.pane.shows(std::string(visit::cautions())));
}

TEST_CASE("in SI units the plate says pascals, kelvin and kilowatts") {
    Desk si(hose_call(), Sheet::order, {620, 900}, view::Units::si);
    for (const char* words :
         {"23.4 kW", "872 Pa", "22 to 39 K", "−5.6 °C"}) // 80,000 x 0.29307 W, 3.5 x 249.09 Pa
        CHECK(si.pane.shows(words));
}

TEST_CASE("the door chart is the one that drives the board") {
    Desk desk(hose_call(), Sheet::chart);
    const control::DoorChart chart = control::door_chart(desk.known.site->model.board);
    REQUIRE_FALSE(chart.steps.empty());
    for (const control::StepRow& step : chart.steps) {
        CHECK(desk.says(step.step));
        for (const std::string& measure : step.measure)
            CHECK(desk.says(measure));
    }
}

TEST_CASE("the notebook lists every reading, and one can be stood on by all sheets") {
    Desk desk(hose_call(), Sheet::notebook);
    for (std::size_t i = 0; i < desk.known.readings.size(); ++i)
        CHECK(desk.says(visit::clock_text(desk.known.readings[i].tick - desk.known.arrived_tick)));
    const Words words = desk.pane.words();
    const auto second = std::find_if(words.begin(), words.end(),
                                     [](const std::string& w) { return w.rfind("2\u2007", 0) == 0; });
    REQUIRE(second != words.end());
    REQUIRE(desk.pane.click(*second));
    CHECK(desk.view.notebook.evidence.picked == 2);
    CHECK(desk.view.suspects.evidence.picked == 2);
    CHECK(desk.view.report.evidence.picked == 2);
    desk.view.sheet = Sheet::suspects;
    CHECK(desk.pane.shows("strike by 2"));
}

TEST_CASE("the notebook can leave out what was written down by itself") {
    Desk desk(hose_call(), Sheet::notebook);
    const auto came_by_itself = [](const bench::Reading& reading) {
        return reading.taken == bench::Taken::settled;
    };
    std::vector<bench::Reading> readings;
    for (int times = 0; times < 3; ++times) // a long list
        readings.insert(readings.end(), desk.known.readings.begin(), desk.known.readings.end());
    desk.known.readings = readings;
    desk.pane.frame();
    const auto by_itself =
        static_cast<std::size_t>(std::count_if(readings.begin(), readings.end(), came_by_itself));
    const auto when = [&](const bench::Reading& reading) {
        return visit::clock_text(reading.tick - desk.known.arrived_tick) + ",";
    };
    REQUIRE(by_itself > 0);
    REQUIRE(by_itself < readings.size());
    desk.press("Kept or looked at " + std::to_string(readings.size() - by_itself));
    for (const bench::Reading& reading : readings)
        CHECK(desk.says(when(reading)) != came_by_itself(reading));
    desk.press("All " + std::to_string(readings.size()));
    for (const bench::Reading& reading : readings)
        CHECK(desk.says(when(reading)));
    SECTION("and offers no choice where the list is short") {
        desk.known.readings = desk.known.readings.first(6);
        desk.pane.frame();
        CHECK_FALSE(desk.says("Kept or looked at"));
    }
}

TEST_CASE("a notebook with nothing in it says how readings come") {
    WorkedCall call("plugged-hose");
    Desk desk(call, Sheet::suspects);
    desk.known.readings = {};
    CHECK(desk.press("strike").empty());
    CHECK(desk.says("Nothing has been read yet: what is struck out needs a reading"));
    desk.view.sheet = Sheet::notebook;
    CHECK(desk.says("A number is written down by itself"));
}

TEST_CASE("blocks and parts are struck out by the reading stood on, and blocks taken back") {
    Desk desk(hose_call(), Sheet::suspects);
    const std::string number = std::to_string(desk.known.readings.size());
    CHECK(desk.press("strike by " + number) == Lines{"strike call " + number}); // power is struck already
    CHECK(desk.press("take back") == Lines{"unstrike power"});
    CHECK(desk.says("by reading 2: "));
    desk.view.suspects.evidence.picked = 1;
    CHECK(desk.press("strike by 1") == Lines{"strike call 1"});
    CHECK(desk.press("parts").empty());
    CHECK(desk.view.suspects.open == std::set<int>{0});
    CHECK(desk.pane.shows("Control fuse, 3 A"));
    CHECK(desk.press("strike by 1").front().rfind("strike-part ", 0) == 0);
}

TEST_CASE("the stopping step is stated in the words of the door chart") {
    Desk desk(hose_call(), Sheet::suspects);
    CHECK(desk.press("0\u2007\u2007Before the first: nothing is passed") == Lines{"stops-at 0"});
    CHECK(desk.press("4\u2007\u2007After: Flame proved") == Lines{"stops-at 4"});
    CHECK(desk.press("6\u2007\u2007Nowhere: it runs through") == Lines{"stops-at 6"});
}

TEST_CASE("the cause is found by typing and written down") {
    Desk desk(hose_call(), Sheet::diagnosis);
    CHECK(desk.says("Pressure switch"));
    REQUIRE(desk.pane.click("write another"));
    REQUIRE(desk.view.diagnosis.open == paper::DiagnosisView::Open::cause);
    for (int i = 0; i < 4 && desk.view.diagnosis.search.empty(); ++i) { // to the field to search in
        desk.pane.tap(Key::Tab);
        desk.pane.write("hose plug");
    }
    CHECK(desk.view.diagnosis.search == "hose plug");
    CHECK(desk.press("Hose of the pressure switch plugged") == Lines{"cause hose_plugged"});
    CHECK(desk.view.diagnosis.open == paper::DiagnosisView::Open::none);
    REQUIRE(desk.pane.click("name it"));
    desk.view.diagnosis.search = "hose_plugged";
    CHECK(desk.press("Hose of the pressure switch plugged") == Lines{"cause-behind hose_plugged"});
}

TEST_CASE("all that can go wrong is on the list, and only that") {
    Desk desk(hose_call(), Sheet::diagnosis, {620, 1000});
    desk.view.diagnosis.open = paper::DiagnosisView::Open::cause;
    const Words words = desk.pane.words();
    for (const faults::Fault& fault : desk.known.site->catalogue.faults)
        CHECK(words.count(fault.title) == 1);
}

TEST_CASE("a part from the van has a tag that asks which reading condemns the old one") {
    Desk desk(hose_call(), Sheet::diagnosis);
    const std::string number = std::to_string(desk.known.readings.size());
    CHECK(desk.pane.shows("Which reading condemns the old one?"));
    CHECK(desk.press("condemned by " + number) == Lines{"tag pressure_switch " + number});
    CHECK(desk.press("by no reading") == Lines{"tag pressure_switch 0"});
    REQUIRE(desk.pane.click("Tag a part before it is fitted"));
    desk.view.diagnosis.search = "pressure_hose";
    CHECK(desk.press("Pressure switch's hose") == Lines{"tag pressure_hose " + number});
}

TEST_CASE("the report takes values as found and as left, and the conditions") {
    Desk desk(tune_up(), Sheet::report, {800, 1000});
    const std::string number = std::to_string(desk.known.readings.size());
    const Words words = desk.pane.words();
    CHECK(words.count("plate: 3.5 in. w.c.") == 1);
    CHECK(words.count("Igniter resistance") == 1);
    CHECK(desk.press("write " + number) == Lines{"as-found line-voltage " + number});
    CHECK(desk.press("write " + number, 1) == Lines{"as-left line-voltage " + number});
    const int volts = last_of(desk.known, 0);
    REQUIRE(volts > 0);
    CHECK(desk.pane.shows(
        sheet::reading_value(desk.known, desk.known.readings[static_cast<std::size_t>(volts - 1)]) + " (" +
        std::to_string(volts) + ")"));
    CHECK(desk.says("Filter"));
    REQUIRE(desk.pane.click("Report a condition"));
    desk.view.report.search = "felted";
    desk.pane.frame();
    const auto& faults = desk.known.site->catalogue.faults;
    const int felted = desk.known.site->catalogue.find_fault("blower_motor_felted");
    REQUIRE(felted >= 0);
    CHECK(desk.press(faults[static_cast<std::size_t>(felted)].title) == Lines{"found blower_motor_felted"});
}

TEST_CASE("some of the sheets lie together, and one alone has no tab") {
    const view::Known known = hose_call().known();
    paper::BinderView view;
    std::vector<Sheet> sheets{Sheet::diagnosis, Sheet::report, Sheet::customer};
    Pane pane({620, 900}, [&](const canvas::Canvas& canvas, canvas::Rect area, view::Wanted& wanted) {
        paper::draw_binder(canvas, area, known, view, wanted, sheets);
    });
    CHECK(view.sheet == Sheet::diagnosis);
    CHECK(pane.shows("Customer"));
    CHECK_FALSE(pane.shows("Report")); // no tune-up
    CHECK_FALSE(pane.shows("Suspects"));
    sheets = {Sheet::notebook};
    pane.frame();
    CHECK(view.sheet == Sheet::notebook);
    CHECK_FALSE(pane.shows("Notes"));
    CHECK(pane.shows("Notebook"));
}

TEST_CASE("a call that is no tune-up has no report") {
    {
        Desk desk(hose_call());
        CHECK_FALSE(desk.pane.shows("Report"));
    }
    Desk desk(tune_up());
    CHECK(desk.pane.shows("Report"));
}

TEST_CASE("the customer is told, and the signature asks once and says what is open") {
    Desk desk(hose_call(), Sheet::customer);
    CHECK(desk.press("It is not safe to run.") == Lines{"tell unsafe"});
    CHECK(desk.press("It is repaired and runs as it should.") == Lines{"tell repaired"});
    CHECK(desk.press("I found nothing wrong with it.") == Lines{"tell nothing-wrong"});
    CHECK(desk.press("Sign the work order").empty());
    for (const char* words : {"– The burner door is off.", "– The multimeter's leads are on.",
                              "– The disconnect switch is off.", "– Pressure switch: fitted without a tag.",
                              "– A manometer's hose is at tee in the hose, pressure switch side."})
        CHECK(desk.pane.shows(words));
    CHECK(desk.press("Not yet").empty());
    CHECK_FALSE(desk.pane.shows("– The burner door is off."));
    CHECK(desk.press("Sign the work order").empty());
    CHECK(desk.press("Sign it and leave") == Lines{"sign-off"});
}

TEST_CASE("what is open depends on nothing but what is known") {
    CHECK(paper::still_open(tune_up().known()).size() ==
          5); // two doors, hand at the switch, leads, nothing told
    WorkedCall call("all-is-well");
    const auto open = paper::still_open(call.known());
    CHECK(std::find(open.begin(), open.end(), "No cause is named.") != open.end());
}

TEST_CASE("every line that the sheets ask for can be typed") {
    const bench::Site& site = *hose_call().known().site;
    for (const bench::Verb verb : {bench::Verb::strike, bench::Verb::strike_part, bench::Verb::as_found,
                                   bench::Verb::as_left, bench::Verb::tag})
        for (const bench::Choice& choice : bench::offered(site, verb, 0)) {
            const bench::Action action{verb, static_cast<std::uint16_t>(choice.value), 4};
            CHECK(bench::parse_action(site, bench::format_action(site, action)) == action);
        }
}

TEST_CASE("a sheet is worked by the keyboard alone") {
    Desk desk(hose_call(), Sheet::customer, {620, 900});
    bool told = false;
    for (int i = 0; i < 20 && !told; ++i) {
        desk.pane.tap(Key::Tab);
        if (desk.view.sheet != Sheet::customer)
            FAIL("a tab was pressed by going over it");
        if (i < 6)
            continue; // the tabs
        desk.pane.tap(Key::Enter);
        told = desk.asked() == Lines{"tell unsafe"};
    }
    CHECK(told);
}

TEST_CASE("the same knowledge gives the same sheets") {
    for (const Sheet sheet : kSheets) {
        std::vector<ImDrawVert> first;
        {
            Desk desk(hose_call(), sheet);
            first = desk.pane.vertices();
        }
        Desk desk(hose_call(), sheet);
        CHECK(test::same(first, desk.pane.vertices()));
    }
}
