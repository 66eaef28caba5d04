// SPDX-License-Identifier: MIT
#pragma once
#include "bench/captions.hpp"
#include "bench/notebook.hpp"
#include "cli/output.hpp"
#include "files/bundle_loader.hpp"
#include "visit/visit.hpp"

#include <cstdint>
#include <string>

/// What `play` prints.
namespace lightoff::cli {

/// The work order: who complains of what, house, weather, rating plate; and the cautions.
void write_work_order(Output& out, const files::LoadedBundle& bundle);

/// "   0:12.4  heard  Inducer: a whirr rises."
void write_event(Output& out, std::uint64_t ticks_here, std::string_view what, const std::string& text);

void write_notes(Output& out, const visit::Visit& visit);

/// Doors, switches, leads, windows, time: what whoever works there knows.
void write_status(Output& out, const visit::Visit& visit);

/// Help in general, or on one verb or question, with the names that its words may be here.
void write_help(Output& out, const bench::Site& site, const std::string& topic);

} // namespace lightoff::cli
