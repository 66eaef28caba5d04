// SPDX-License-Identifier: MIT
#include "cli/trace.hpp"

#include "bench/readouts.hpp"
#include "cli/board_text.hpp"
#include "cli/readout_text.hpp"
#include "units/fields.hpp"

#include <type_traits>

namespace lightoff::cli {
namespace {

std::vector<files::Csv::Column> columns_of_trace(Playthrough& run) {
    std::vector<files::Csv::Column> columns{{"time", "s"}};
    for (const control::Machine& machine : run.model().board.machines)
        columns.push_back({"board, " + machine.name});
    columns.push_back({"lamp"});
    for (const bench::Readout& r : bench::readouts(run.model(), run.world(), run.workspace()))
        columns.push_back({r.name, std::string(readout_unit(r.unit).printed)});
    units::for_each_field(run.world().state.signals,
                          [&](const std::string& path, std::string_view unit, const auto&) {
                              columns.push_back({path, unit == "1" ? "" : std::string(unit)});
                          });
    return columns;
}

template <class T>
files::Csv::Cell cell_of(T value) {
    if constexpr (std::is_floating_point_v<T>)
        return static_cast<double>(value);
    else
        return static_cast<std::int64_t>(value);
}

} // namespace

Trace::Trace(const std::string& path, Playthrough& run) : file_(path), table_(columns_of_trace(run)) {
    file_.write(table_.take_text());
}

void Trace::row(Playthrough& run) {
    std::vector<files::Csv::Cell> cells{seconds_of(run.world().tick)};
    for (std::string& step : board_steps(run.model(), run.world()))
        cells.emplace_back(std::move(step));
    cells.emplace_back(lamp_text(run.model(), run.world()));
    for (const bench::Readout& r : bench::readouts(run.model(), run.world(), run.workspace()))
        cells.emplace_back(r.value);
    units::for_each_value(run.world().state.signals,
                          [&](const auto& value) { cells.push_back(cell_of(value)); });
    table_.row(cells);
    file_.write(table_.take_text());
}

} // namespace lightoff::cli
