// SPDX-License-Identifier: MIT
#include "gui/instruments/bag.hpp"

#include "bench/offers.hpp"
#include "gui/instruments/faces.hpp"
#include "gui/instruments/places.hpp"
#include "gui/pane.hpp"
#include "gui/platform/platform.hpp"
#include "gui/worked_call.hpp"

#include <array>
#include <catch2/catch.hpp>

using namespace lightoff;
using bench::Verb;
using platform::Key;
using test::Pane;
using test::WorkedCall;
using Lines = std::vector<std::string>;

namespace {

constexpr const char* kMeasuring = "burner-door off\nblower-door off\nleads board.R board.C\n"
                                   "manometer-a manifold-tap\nprobe-1 supply-duct\nprobe-2 return-duct\nread";

const WorkedCall& measuring() {
    static const WorkedCall call = [] {
        WorkedCall worked("plugged-hose");
        worked.play(kMeasuring);
        return worked;
    }();
    return call;
}

/// The rack beside a call.
struct Rack {
    explicit Rack(const WorkedCall& call, ImVec2 size = {560, 900}, view::Units units = view::Units::trade,
                  canvas::ThemeId theme = canvas::ThemeId::Paper, float scale = 1)
        : known(call.known(units)),
          pane(
              size,
              [this](const canvas::Canvas& canvas, canvas::Rect area, view::Wanted& wanted) {
                  faces::draw_bag(canvas, area, known, view, wanted);
              },
              theme, scale) {}

    /// What was asked for since the last call of it.
    Lines asked() {
        Lines lines = pane.wanted.lines;
        pane.wanted = {};
        return lines;
    }
    Lines press(const std::string& words) {
        asked();
        INFO("pressing \"" << words << "\"");
        CHECK(pane.click(words));
        return asked();
    }

    view::Known known;
    faces::BagView view;
    Pane pane;
};

} // namespace

TEST_CASE("every instrument of the bag can be laid out whole, at any size, theme and size of letters") {
    const auto size = GENERATE(ImVec2{380, 500}, ImVec2{560, 900}, ImVec2{900, 1000});
    const auto theme = GENERATE(canvas::ThemeId::Paper, canvas::ThemeId::Projector);
    const auto percent = GENERATE(80.0F, 100.0F, 140.0F, 200.0F);
    const float scale = platform::design_scale(size.y, percent, canvas::theme(theme));
    if (scale > 2.01F)
        return; // the projector's own factor on top: beyond what has to fit
    Rack rack(measuring(), size, view::Units::si, theme, scale);
    rack.view.out.fill(true);
    rack.pane.frame();
    INFO(size.x << " x " << size.y << ", " << percent << " %, " << canvas::theme(theme).name);
    CHECK(rack.pane.problems() == std::set<std::string>{});
    const std::set<std::string> words = rack.pane.words();
    for (std::size_t i = 0; i < faces::kInstruments; ++i)
        CHECK(words.count(std::string(faces::title_of(static_cast<instruments::Instrument>(i)).name)) == 1);
}

TEST_CASE("lists of places can be laid out whole", "[lists]") {
    const auto percent = GENERATE(80.0F, 200.0F);
    const auto open = GENERATE(as<std::string>{}, "red", "manometer-a", "tester", "clamp");
    Rack rack(measuring(), {380, 500}, view::Units::trade, canvas::ThemeId::Basement, percent / 100);
    rack.view.out.fill(true);
    rack.view.open = open;
    rack.pane.frame();
    INFO(open << " at " << percent << " %");
    CHECK(rack.pane.problems() == std::set<std::string>{});
}

TEST_CASE("the multimeter says what it shows, where its leads are and when a number counts") {
    Rack rack(measuring());
    CHECK(rack.pane.shows("red on board.R"));
    CHECK(rack.pane.shows("black on board.C"));
    CHECK(rack.pane.shows("0.000"));
    const auto& readings = rack.known.readings;
    REQUIRE_FALSE(readings.empty());
    std::size_t number = 0;
    for (std::size_t i = 0; i < readings.size(); ++i)
        if (readings[i].window == 0)
            number = i + 1;
    CHECK(rack.pane.shows("steady: reading " + std::to_string(number)));
}

TEST_CASE("a number that has not stood for two seconds is said to be unsteady") {
    WorkedCall call("plugged-hose");
    call.play("burner-door off\nleads valve.hot valve.common\nwait 1s");
    Rack rack(call);
    CHECK(rack.pane.shows("not steady yet"));
}

TEST_CASE("what the multimeter's face offers is asked for as it would be typed") {
    Rack rack(measuring());
    CHECK(rack.press("Leads off") == Lines{"leads-off"});
    CHECK(rack.press("New fuses in the meter") == Lines{"meter-fuses"});
    CHECK(rack.press("Keep the reading") == Lines{"keep multimeter"});
    for (const instruments::FunctionRow& row : instruments::functions())
        CHECK(rack.press(std::string(row.title)).back() == "meter " + std::string(row.id));
}

TEST_CASE("a lead is picked up, and put down by typing where") {
    Rack rack(measuring());
    REQUIRE(rack.pane.click("red on board.R"));
    CHECK(rack.pane.wanted.lead == view::Wanted::Lead::red);
    CHECK(rack.pane.wanted.lead_point == -1);
    CHECK(rack.view.open == "red");
    rack.view.search = "valve HOT";
    REQUIRE(rack.pane.click("valve.hot"));
    CHECK(rack.pane.wanted.lead_point == rack.known.site->model.find_test_point("valve.hot"));
    CHECK(rack.view.open.empty());
}

TEST_CASE("the list of a lead shuts when the lead has been put down elsewhere") {
    Rack rack(measuring());
    REQUIRE(rack.pane.click("red on board.R"));
    rack.view.in_hand = view::Wanted::Lead::red;
    rack.pane.frame();
    CHECK(rack.pane.shows("red in your hand: point at a place, or choose one"));
    CHECK(rack.view.open == "red");
    rack.view.in_hand = view::Wanted::Lead::none;
    rack.view.red_waits = rack.known.site->model.find_test_point("valve.hot");
    rack.pane.frame();
    CHECK(rack.view.open.empty());
    CHECK(rack.pane.shows("red on valve.hot, waits for the other lead"));
}

TEST_CASE("an open circuit on ohms reads OL, and that is a reading, too") {
    WorkedCall call("plugged-hose");
    call.play("burner-door off\nblower-door off\ndisconnect off\nlift rod.lead\nmeter ohms\n"
              "leads rod.lead.lug rod.lead\nwait 5s");
    Rack rack(call);
    CHECK(rack.pane.shows("OL"));
    CHECK(rack.pane.shows("steady: reading " + std::to_string(rack.known.readings.size())));
}

TEST_CASE("hoses, probes and the other instruments go to every place that is offered") {
    Rack rack(measuring());
    rack.view.out.fill(true);
    constexpr std::array<Verb, 10> kVerbs{
        Verb::manometer_a, Verb::manometer_b, Verb::probe_1,    Verb::probe_2, Verb::analyser,
        Verb::sniff,       Verb::bubbles,     Verb::tachometer, Verb::clamp,   Verb::tester};
    for (const Verb verb : kVerbs) {
        const auto places = faces::places_of(rack.known, verb, -2);
        const auto offered = bench::offered(*rack.known.site, verb, 0);
        REQUIRE(places.size() == offered.size());
        const std::string name(bench::spec_of(verb).name);
        rack.view.open = name;
        const sheet::Entry& last = places.back();
        rack.view.search = last.also;
        INFO(name << " " << last.also);
        CHECK(rack.press(last.words) == Lines{name + " " + last.also});
        CHECK(rack.view.open.empty());
    }
}

TEST_CASE("the other verbs of the instruments are on their faces") {
    Rack rack(measuring());
    const auto only = [&](instruments::Instrument instrument) {
        rack.view.out.fill(false);
        rack.view.put_by.fill(true);
        rack.view.out[static_cast<std::size_t>(instrument)] = true;
        rack.pane.frame();
    };
    using instruments::Instrument;
    only(Instrument::clamp);
    CHECK(rack.press("Clamp off") == Lines{"clamp-off"});
    CHECK(rack.press("Keep the reading") == Lines{"keep clamp-ammeter"});
    only(Instrument::wattmeter);
    CHECK(rack.press("Into the supply") == Lines{"wattmeter on"});
    CHECK(rack.press("Out of the supply") == Lines{"wattmeter off"});
    CHECK(rack.press("Keep watts") == Lines{"keep wattmeter-watts"});
    only(Instrument::manometer);
    CHECK(rack.press("Press zero") == Lines{"zero"});
    only(Instrument::thermometer);
    CHECK(rack.press("Keep T1 − T2") == Lines{"keep thermometer-t1-t2"});
    only(Instrument::analyser);
    CHECK(rack.press("Keep CO air-free") == Lines{"keep analyser-co-air-free"});
    only(Instrument::dial_watch);
    CHECK(rack.press("Start at the dial") == Lines{"stopwatch on"});
    CHECK(rack.press("Put it away") == Lines{"stopwatch off"});
    only(Instrument::gas_detector);
    CHECK(rack.press("Keep the ticks") == Lines{"keep gas-detector-ticks"});
    only(Instrument::co_alarm);
    CHECK(rack.press("Keep the reading") == Lines{"keep co-alarm"});
}

TEST_CASE("every line that a face can ask for is one that can be typed") {
    Rack rack(measuring());
    for (const Verb verb : {Verb::manometer_a, Verb::probe_1, Verb::analyser, Verb::sniff, Verb::bubbles,
                            Verb::tachometer, Verb::clamp, Verb::tester, Verb::meter, Verb::keep})
        for (const bench::Choice& choice : bench::offered(*rack.known.site, verb, 0))
            CHECK(bench::parse_action(*rack.known.site, faces::line_for(rack.known, verb, choice.value))
                      .value == choice.value);
}

TEST_CASE("an instrument is taken out of the bag and folded again") {
    Rack rack(measuring());
    REQUIRE(rack.pane.click("Take out: Clamp ammeter"));
    CHECK(rack.view.out[1]);
    CHECK(rack.pane.shows("jaw round nothing"));
    REQUIRE(rack.pane.click("Clamp ammeter"));
    CHECK_FALSE(rack.view.out[1]);
    CHECK(rack.pane.shows("Take out: Clamp ammeter"));
}

TEST_CASE("the rack is worked by the keyboard alone") {
    Rack rack(measuring(), {560, 2000});
    const auto tab_to_line = [&](const std::string& line, int most) {
        for (int i = 0; i < most; ++i) {
            rack.pane.tap(Key::Tab);
            rack.asked();
            rack.pane.tap(Key::Enter);
            const Lines asked = rack.asked();
            if (asked == Lines{line})
                return true;
            if (!rack.view.open.empty())
                rack.pane.tap(Key::Enter); // a list that came open is shut again
            rack.view.out.fill(false);
            rack.view.put_by.fill(false);
            rack.pane.frame();
        }
        return false;
    };
    CHECK(tab_to_line("leads-off", 20));
    CHECK(tab_to_line("keep multimeter", 6));
    rack.pane.tap(Key::Space);
    CHECK(rack.asked() == Lines{"keep multimeter"});
}

TEST_CASE("what is in reach is told under a place, and no place is missing for it") {
    WorkedCall call("plugged-hose");
    Rack rack(call);
    const auto places = faces::places_of(rack.known, Verb::manometer_a, -1);
    const auto tap = std::find_if(places.begin(), places.end(),
                                  [](const sheet::Entry& entry) { return entry.also == "manifold-tap"; });
    REQUIRE(tap != places.end());
    CHECK(tap->note.find("in the burner compartment") != std::string::npos);
}

TEST_CASE("pressures and temperatures stand in SI units beside the instrument's own") {
    Rack rack(measuring(), {560, 900}, view::Units::si);
    const std::set<std::string> words = rack.pane.words();
    CHECK(std::any_of(words.begin(), words.end(), [](const std::string& w) {
        return w.rfind("= ", 0) == 0 && w.find(" Pa") != std::string::npos;
    }));
}

TEST_CASE("the same knowledge gives the same picture") {
    WorkedCall one("plugged-hose");
    WorkedCall other("plugged-hose");
    one.play(kMeasuring);
    other.play(kMeasuring);
    std::vector<ImDrawVert> first;
    {
        Rack rack(one);
        first = rack.pane.vertices();
    }
    Rack rack(other);
    CHECK(test::same(first, rack.pane.vertices()));
    CHECK(first.size() > 1000);
}
