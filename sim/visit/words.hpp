// SPDX-License-Identifier: MIT
#pragma once
#include "bench/notebook.hpp"
#include "lesson/scenario.hpp"

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

/// What terminal and window say alike.
namespace lightoff::visit {

/// Minutes, seconds and tenths: "12:40.5".
std::string clock_text(std::uint64_t ticks);

/// "no heat"
std::string kind_text(lesson::Kind kind);

/// What has to be read before anything is touched.
std::string_view cautions();
/// Of them, what stands at the foot of a page.
std::string_view cautions_in_short();

/// What stands in an instrument's window: "24.31 V"; of a glow, whether there is one.
std::string window_text(const instruments::Display& display);

/// What a reading says, without where it was taken: "24.31 V"; of a look, what it showed.
std::string value_text(const bench::Site& site, const bench::Reading& reading);

/// What it was taken with or of: "multimeter", "Burners".
std::string source_text(const bench::Site& site, const bench::Reading& reading);

/// Where an instrument was put, short where nothing is to be said: "red on board.R, black on board.C"; empty
/// for a look.
std::string place_text(const bench::Reading& reading);

/// "[3] multimeter 24.31 V, red on board.R, black on board.C"; of a look what it showed.
std::string reading_text(const bench::Site& site, const bench::Reading& reading, std::size_t number);

} // namespace lightoff::visit
