// SPDX-License-Identifier: MIT
#include "gui/trace/strip_chart.hpp"

#include "gui/canvas/lettering.hpp"
#include "gui/headless.hpp"
#include "gui/trace/chart_layout.hpp"
#include "gui/trace/flags.hpp"
#include "gui/trace/ticks.hpp"

#include <array>
#include <catch2/catch.hpp>
#include <cmath>

using namespace lightoff;
using namespace lightoff::canvas;
using namespace lightoff::trace;
using platform::PointerEvent;
using platform::WheelEvent;
using test::Headless;

namespace {

const Rect kArea{{20, 20}, {780, 420}};

std::vector<Lane> two_lanes() {
    return {{"Vent pressure", "inwc", -1, 0, 2, false, {}, Energy::Air},
            {"Gas valve", "", 0, 1, 0, true, {"shut", "open"}, Energy::Gas}};
}

Recording made(int samples) {
    Recording recording(2);
    for (int i = 0; i < samples; ++i) {
        const auto x = static_cast<float>(i);
        recording.append(i * 0.05, std::array<float, 2>{-0.5F + 0.4F * std::sin(x * 0.01F),
                                                        i > samples / 2 ? 1.0F : 0.0F});
    }
    return recording;
}

} // namespace

TEST_CASE("time marks stand at round times") {
    CHECK(time_step(60, 6) == 10);
    CHECK(time_step(300, 6) == 60);
    CHECK(time_step(3600, 6) == 600);
    CHECK(time_step(3600 * 24, 6) == 21600);
    const std::vector<double> found = marks(12, 61, 15);
    REQUIRE(found.size() == 4);
    CHECK(found.front() == 15);
    CHECK(found.back() == 60);
    CHECK(time_label(5) == "0:05");
    CHECK(time_label(3750) == "62:30");
    CHECK(time_label(59.96, 0.1) == "1:00.0");
    CHECK(time_label(-5) == "−0:05");
}

TEST_CASE("limits of a scale are as short as they can be") {
    Lane lane;
    lane.decimals = 3;
    CHECK(limit_words(lane, 200) == "200");
    CHECK(limit_words(lane, 0) == "0");
    CHECK(limit_words(lane, -1) == "−1");
    CHECK(limit_words(lane, 0.25F) == "0.25");
    lane.decimals = 0;
    CHECK(limit_words(lane, 1500) == "1500");
}

TEST_CASE("a view follows the newest sample until one looks back") {
    ChartView view{0, 60, true};
    follow_newest(view, 100);
    CHECK(view.end_s == 100);
    pan(view, -30, 100);
    CHECK_FALSE(view.follow);
    follow_newest(view, 200);
    CHECK(view.end_s == 70);
    zoom(view, 40, 2);
    CHECK(view.span_s == 30);
    CHECK(view.end_s == Approx(55)); // 40 stays where it was: in the middle
    pan(view, 1000, 200);
    CHECK(view.follow);
    CHECK(view.end_s == 200);
    zoom(view, 200, 1e9);
    CHECK(view.span_s == 5);
}

TEST_CASE("a recording shorter than the view starts at its left edge") {
    ChartView view{0, 60, true};
    follow_newest(view, 12);
    CHECK(view.from_s() == 0);
    pan(view, -100, 12);
    CHECK(view.from_s() == 0);
}

TEST_CASE("flags stand clear of each other's names") {
    // 10 and 20 are close: the earlier name must rise above the later flag's stem.
    const std::array<Flag, 4> flags{Flag{10, 50}, Flag{20, 50}, Flag{200, 50}, Flag{280, 50}};
    const std::vector<FlagPlace> places = place_flags(flags, 0, 300, 2);
    CHECK(places[0].row == 1);
    CHECK(places[1].row == 0);
    CHECK(places[2].row == 1); // the last one's name, turned left, ends under this one's
    CHECK(places[3].leftwards);
    CHECK(places[3].row == 0);
    const std::array<Flag, 3> crowd{Flag{10, 50}, Flag{20, 50}, Flag{30, 50}};
    const std::vector<FlagPlace> two_rows = place_flags(crowd, 0, 300, 2);
    CHECK_FALSE(two_rows[0].row.has_value());
    CHECK(two_rows[1].row == 1);
    CHECK(place_flags({}, 0, 300, 2).empty());
}

TEST_CASE(
    "where not all lanes have room, the count says which are shown; Page Down or pressing it brings the "
    "others") {
    Headless ui;
    StripChart chart;
    ChartView view{0, 60, true};
    Recording recording(9);
    recording.append(0, std::array<float, 9>{});
    const std::vector<Lane> lanes(9, Lane{"Lane", "V", 0, 1, 1, false, {}, {}});
    const Rect small{{20, 20}, {780, 240}};
    const auto page = [&](const Canvas& canvas) { chart.draw(canvas, small, recording, lanes, {}, view); };
    const auto count = [&] {
        for (const auto& text : ui.probe.texts())
            if (text.words.find("lane") == 0 && text.words.find(" of 9") != std::string::npos)
                return text;
        FAIL("no count of lanes");
        return ui.probe.texts().front();
    };
    ui.settle(page);
    CHECK(count().words.find("lanes 1–") == 0);
    for (const std::string& problem : ui.probe.problems()) {
        FAIL_CHECK(problem);
    }
    SECTION("Page Down") {
        ui.click({400, 150});
        ui.settle(page);
        ui.tap(platform::Key::PageDown);
        ui.settle(page);
        CHECK(view.first_lane > 0);
        CHECK(count().words.find("lanes 1–") != 0);
    }
    SECTION("pressing comes to the last of them, then to the first again") {
        for (int presses = 0; count().words.find("–9 of") == std::string::npos; ++presses) {
            REQUIRE(presses < 9);
            ui.click(count().ink.centre());
            ui.settle(page);
            ui.settle(page);
        }
        ui.click(count().ink.centre());
        ui.settle(page);
        ui.settle(page);
        CHECK(view.first_lane == 0);
    }
}

TEST_CASE("a lane is never lower than its words: names of events and stretches give way, then lanes") {
    Headless ui;
    ChartView view{0, 60, true};
    view.flag_rows = 3;
    const std::vector<Lane> lanes(5, Lane{"A lane with a name in two lines", "V", 0, 1, 1, false, {}, {}});
    Beside beside;
    beside.stretches = {{0, 60, "all of it"}};
    ui.frame([&](const Canvas& canvas) {
        const auto laid_out = [&](float height) {
            return lay_out_chart(canvas, {{0, 0}, {500, height}}, lanes, beside, view);
        };
        CHECK(laid_out(300).count > 2);
        CHECK(laid_out(300).flag_rows == 3);
        ChartLayout lowest_of_two;
        for (float height = 300; height > 0; height -= 1) {
            const ChartLayout layout = laid_out(height);
            CAPTURE(height, layout.count, layout.row, layout.flag_rows);
            const float name = text_size(canvas, lanes[0].name, Type::Secondary, layout.names.width() + 1).y;
            REQUIRE(name > 1.5F * line_height(canvas, Type::Secondary));
            CHECK((layout.count == 0 || layout.row > name));
            CHECK((layout.count <= 2 || layout.flag_rows == 3));
            if (layout.count == 2)
                lowest_of_two = layout;
        }
        CHECK(lowest_of_two.flag_rows == 0);
        CHECK(lowest_of_two.stretches.height() == 0);
        CHECK(lowest_of_two.headings_below());
    });
}

TEST_CASE("a chart names its lanes and shows the newest values in words and figures") {
    Headless ui;
    StripChart chart;
    ChartView view{0, 60, true};
    const Recording recording = made(1201);
    const std::vector<Lane> lanes = two_lanes();
    ui.settle([&](const Canvas& canvas) {
        chart.draw(canvas, kArea, recording, lanes, {{30, "valve opens"}}, view);
    });
    std::vector<std::string> words;
    for (const auto& text : ui.probe.texts()) {
        words.push_back(text.words);
    }
    const auto shows = [&](const std::string& word) {
        return std::count(words.begin(), words.end(), word) > 0;
    };
    CHECK(shows("Vent pressure"));
    CHECK(shows("inwc"));
    CHECK(shows("−0.71")); // −0.5 + 0.4 sin 12
    CHECK(shows("open"));
    CHECK(shows("valve opens"));
    CHECK(shows("0:30"));
    CHECK(shows("now"));
    for (const std::string& problem : ui.probe.problems()) {
        FAIL_CHECK(problem);
    }
}

TEST_CASE("the pointer reads values off the paper, the wheel zooms about it") {
    Headless ui;
    StripChart chart;
    ChartView view{0, 60, true};
    const Recording recording = made(1201);
    const std::vector<Lane> lanes = two_lanes();
    const auto page = [&](const Canvas& canvas) { chart.draw(canvas, kArea, recording, lanes, {}, view); };
    ui.settle(page);
    CHECK_FALSE(chart.cursor_s().has_value());
    ui.queue.push(PointerEvent{400, 200});
    ui.settle(page);
    REQUIRE(chart.cursor_s().has_value());
    const double there_s = *chart.cursor_s();
    CHECK(there_s > 0);
    CHECK(there_s < 60);
    view.follow = false;
    ui.queue.push(WheelEvent{2, 0});
    ui.settle(page);
    CHECK(view.span_s == Approx(60 / 1.5625));
    CHECK(*chart.cursor_s() == Approx(there_s).margin(0.05));
}

TEST_CASE("an hour of many wild lanes stays within the library's 65,535 vertices a list") {
    Headless ui({2560, 1440});
    constexpr std::size_t kLanes = 16;
    Recording recording(kLanes);
    std::array<float, kLanes> values{};
    unsigned bits = 1;
    for (int i = 0; i < 72000; ++i) {
        for (float& value : values) {
            bits = bits * 1664525U + 1013904223U;
            value = static_cast<float>(bits >> 8) / 16777216.0F;
        }
        recording.append(i * 0.05, values);
    }
    const std::vector<Lane> lanes(kLanes, Lane{"Noise", "V", 0, 1, 2, false, {}, {}});
    StripChart chart;
    for (const double span_s : {3600.0, 190.0, 100.0, 10.0}) {
        ChartView view{0, span_s, true};
        ui.frame([&](const Canvas& canvas) {
            chart.draw(canvas, {{0, 0}, {2560, 1440}}, recording, lanes, {}, view);
        });
        const ImDrawData* data = ImGui::GetDrawData();
        for (int i = 0; i < data->CmdListsCount; ++i) {
            CHECK(data->CmdLists[i]->VtxBuffer.Size < 65536);
        }
    }
}

TEST_CASE("an empty recording and a tiny box do no harm") {
    Headless ui;
    StripChart chart;
    ChartView view;
    const Recording recording(2);
    const std::vector<Lane> lanes = two_lanes();
    ui.frame([&](const Canvas& canvas) { chart.draw(canvas, kArea, recording, lanes, {}, view); });
    ui.frame([&](const Canvas& canvas) { chart.draw(canvas, {{5, 5}, {9, 9}}, recording, lanes, {}, view); });
    SUCCEED();
}
