// SPDX-License-Identifier: MIT
#pragma once
#include "bench/captions.hpp"
#include "bench/notebook.hpp"
#include "cli/output.hpp"
#include "cli/session.hpp"
#include "files/bundle_loader.hpp"

#include <cstdint>
#include <string>

/// What `play` prints.
namespace lightoff::cli {

/// Minutes, seconds and tenths: "12:40.5".
std::string clock_text(std::uint64_t ticks);

/// The work order: who complains of what, house, weather, rating plate; and the cautions.
void write_work_order(Output& out, const files::LoadedBundle& bundle);

/// "   0:12.4  heard  Inducer: a whirr rises."
void write_event(Output& out, std::uint64_t ticks_here, std::string_view what, const std::string& text);

/// "[3] multimeter 24.31 V, AC volts, red on board.R, black on board.C"; of a look what it showed.
std::string reading_text(const bench::Site& site, const bench::Reading& reading, std::size_t number);

void write_notes(Output& out, const Session& session);

/// Doors, switches, leads, windows, time: what whoever works there knows.
void write_status(Output& out, const Session& session);

/// Help in general, or on one verb or question, with the names that its words may be here.
void write_help(Output& out, const bench::Site& site, const std::string& topic);

} // namespace lightoff::cli
