// SPDX-License-Identifier: MIT
#include "gui/trace/recording.hpp"

#include <array>
#include <catch2/catch.hpp>
#include <chrono>
#include <cmath>
#include <random>
#include <vector>

using namespace lightoff::trace;

namespace {

constexpr float kNone = std::numeric_limits<float>::quiet_NaN();

Extremes by_hand(const std::vector<float>& values, std::size_t first, std::size_t last) {
    Extremes all;
    for (std::size_t i = first; i < std::min(last, values.size()); ++i) {
        all.take(values[i]);
    }
    return all;
}

std::vector<float> noise(std::size_t count, unsigned seed) {
    std::mt19937 engine(seed);
    std::uniform_real_distribution<float> flat(-1, 1);
    std::vector<float> values(count);
    for (float& value : values) {
        value = engine() % 50 == 0 ? kNone : flat(engine);
    }
    return values;
}

void feed(Recording& recording, const std::vector<float>& values, double step_s = 0.05) {
    for (std::size_t i = 0; i < values.size(); ++i) {
        REQUIRE(recording.append(static_cast<double>(i) * step_s, std::array<float, 1>{values[i]}));
    }
}

} // namespace

TEST_CASE("extremes of any stretch are exactly those of its samples") {
    const std::vector<float> values = noise(5000, 1);
    Recording recording(1);
    feed(recording, values);
    REQUIRE(recording.samples_per_cell() == 1);
    std::mt19937 engine(2);
    for (int n = 0; n < 3000; ++n) {
        const std::size_t a = engine() % 5001;
        const std::size_t b = engine() % 5001;
        REQUIRE(recording.extremes(0, std::min(a, b), std::max(a, b)) ==
                by_hand(values, std::min(a, b), std::max(a, b)));
    }
}

TEST_CASE("a full recording merges pairs and keeps the exact extremes of every cell") {
    const std::vector<float> values = noise(1000, 3);
    Recording recording(1, 64);
    feed(recording, values);
    REQUIRE(recording.size() <= 64);
    const std::size_t per_cell = recording.samples_per_cell();
    REQUIRE(per_cell == 16); // 1000 samples in at most 64 cells, by doubling
    for (std::size_t first = 0; first < recording.size(); ++first) {
        for (std::size_t last = first; last <= recording.size(); ++last) {
            REQUIRE(recording.extremes(0, first, last) == by_hand(values, first * per_cell, last * per_cell));
        }
        REQUIRE(recording.start_s(first) == static_cast<double>(first * per_cell) * 0.05);
    }
}

TEST_CASE("a spike of one sample in an hour is never lost") {
    for (const std::size_t capacity : {std::size_t{256}, Recording::kCells}) {
        Recording recording(1, capacity);
        for (int i = 0; i < 72000; ++i) {
            recording.append(i * 0.05, std::array<float, 1>{i == 31234 ? 9.0F : 0.0F});
        }
        std::vector<Extremes> columns;
        fill_columns(recording, 0, 0, 3600, 100, columns);
        int with_spike = 0;
        for (const Extremes& column : columns) {
            with_spike += column.high == 9.0F ? 1 : 0;
        }
        CHECK(with_spike == 1);
        CHECK(columns[static_cast<std::size_t>(31234 * 0.05 / 36)].high == 9.0F);
    }
}

TEST_CASE("columns agree with counting by hand") {
    const std::vector<float> values = noise(7200, 4);
    Recording recording(1);
    feed(recording, values, 0.05);
    std::vector<Extremes> columns;
    fill_columns(recording, 0, 0, 360, 90, columns); // 4 s a column, 80 samples
    for (std::size_t c = 0; c < columns.size(); ++c) {
        Extremes all;
        for (std::size_t i = 0; i < values.size(); ++i) {
            const double t_s = static_cast<double>(i) * 0.05;
            if (t_s >= 4.0 * static_cast<double>(c) && t_s < 4.0 * static_cast<double>(c + 1)) {
                all.take(values[i]);
            }
        }
        REQUIRE(columns[c] == all);
    }
}

TEST_CASE(
    "where samples are sparse a column repeats the one that is running; after the newest there is nothing") {
    Recording recording(1);
    recording.append(0, std::array<float, 1>{1});
    recording.append(10, std::array<float, 1>{2});
    std::vector<Extremes> columns;
    fill_columns(recording, 0, 0, 20, 20, columns);
    CHECK(columns[0].high == 1);
    CHECK(columns[5].high == 1);
    CHECK(columns[10].high == 2);
    CHECK(columns[11].empty());
}

TEST_CASE("what was not measured leaves a gap") {
    Recording recording(2);
    recording.append(0, std::array<float, 2>{1, kNone});
    recording.append(1, std::array<float, 2>{2, kNone});
    CHECK(recording.cell(1, 0).empty());
    CHECK(recording.extremes(1, 0, 2).empty());
    CHECK(recording.extremes(0, 0, 2) == Extremes{1, 2});
    CHECK(std::isnan(recording.newest(1)));
    CHECK(recording.newest(0) == 2);
}

TEST_CASE("samples back in time or of another width are refused") {
    Recording recording(1);
    CHECK(recording.append(5, std::array<float, 1>{1}));
    CHECK_FALSE(recording.append(4.9, std::array<float, 1>{1}));
    CHECK(recording.append(5, std::array<float, 1>{1}));
    CHECK_FALSE(recording.append(6, std::array<float, 2>{1, 1}));
    CHECK(recording.size() == 2);
    CHECK_THROWS_AS(Recording(1, 7), std::invalid_argument);
}

TEST_CASE("going back in time forgets what came after, and the pyramid with it") {
    Recording recording(1);
    for (int i = 0; i < 1000; ++i) {
        recording.append(i, std::array<float, 1>{static_cast<float>(i)});
    }
    recording.clear_after(499.5);
    CHECK(recording.size() == 500);
    CHECK(recording.newest_s() == 499);
    CHECK(recording.newest(0) == 499);
    for (int i = 500; i < 1000; ++i) {
        recording.append(i, std::array<float, 1>{-1});
    }
    CHECK(recording.extremes(0, 0, 1000) == Extremes{-1, 499});
    CHECK(recording.extremes(0, 512, 768) == Extremes{-1, -1});
    recording.clear_after(-1);
    CHECK(recording.empty());
    CHECK(std::isnan(recording.newest(0)));
}

TEST_CASE("an hour of twenty lanes is drawn into columns within a frame's time") {
    Recording recording(20);
    std::array<float, 20> values{};
    for (int i = 0; i < 72000; ++i) {
        values.fill(std::sin(static_cast<float>(i) * 0.01F));
        recording.append(i * 0.05, values);
    }
    std::vector<Extremes> columns;
    const auto begin = std::chrono::steady_clock::now();
    for (std::size_t lane = 0; lane < 20; ++lane) {
        fill_columns(recording, lane, 0, 3600, 1600, columns);
    }
    const double ms =
        std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begin).count();
    INFO("20 lanes x 1600 columns: " << ms << " ms");
    CHECK(ms < 200); // some ms when alone; room for a busy machine and a sanitizer
}

TEST_CASE("a lane added later is empty before and exact from then on, like one that was there") {
    const std::vector<float> values = noise(1000, 5);
    const auto capacity = GENERATE(std::size_t{64}, Recording::kCells);
    for (const std::size_t joins : {0U, 1U, 15U, 16U, 17U, 63U, 64U, 65U, 500U}) {
        CAPTURE(capacity, joins);
        Recording from_start(2, capacity);
        Recording later(1, capacity);
        for (std::size_t i = 0; i < values.size(); ++i) {
            const double t_s = static_cast<double>(i) * 0.05;
            const float second = i < joins ? kNone : 2 * values[i];
            if (i == joins)
                later.add_lane();
            REQUIRE(from_start.append(t_s, std::array<float, 2>{values[i], second}));
            if (i < joins)
                REQUIRE(later.append(t_s, std::array<float, 1>{values[i]}));
            else
                REQUIRE(later.append(t_s, std::array<float, 2>{values[i], second}));
        }
        REQUIRE(later.size() == from_start.size());
        for (std::size_t first = 0; first < later.size(); first += 7)
            for (std::size_t last = first; last <= later.size(); last += 5)
                REQUIRE(later.extremes(1, first, last) == from_start.extremes(1, first, last));
    }
}
