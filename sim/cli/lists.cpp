// SPDX-License-Identifier: MIT
#include "cli/lists.hpp"

#include "cli/exit_codes.hpp"
#include "cli/json_output.hpp"
#include "cli/text_layout.hpp"
#include "cli/usage_error.hpp"
#include "control/door_chart.hpp"
#include "files/bundle_loader.hpp"
#include "files/data_folder.hpp"
#include "files/equipment.hpp"
#include "files/error.hpp"
#include "units/field_checks.hpp"

#include <algorithm>
#include <vector>

namespace lightoff::cli {
namespace {

OrderedJson number_of(double value) {
    return value;
}
OrderedJson number_of(float value) {
    return std::strtod(units::text_of(value).c_str(), nullptr); // 0.1F as 0.1, not as 0.10000000149
}
template <class T>
OrderedJson number_of(T value) {
    return static_cast<std::int64_t>(value);
}

struct ConditionRow {
    furnace::ConditionPath path;
    std::string text;
    OrderedJson number;
};

std::vector<ConditionRow> condition_rows(const furnace::Model& model, const furnace::Condition& condition) {
    std::vector<ConditionRow> rows;
    for (furnace::ConditionPath& path : furnace::condition_paths(model))
        rows.push_back({std::move(path), {}, {}});
    std::size_t at = 0;
    units::for_each_value(condition, [&](const auto& value) {
        rows[at].text = units::text_of(value);
        rows[at++].number = number_of(value);
    });
    rows.erase(std::remove_if(rows.begin(), rows.end(), [](const ConditionRow& r) { return !r.path.in_use; }),
               rows.end());
    return rows;
}

/// The board of a file that may be an equipment or a scenario.
control::Board board_of(const std::string& name_or_path) {
    const std::vector<std::string> equipment = files::data_names(files::kEquipmentFolder);
    const std::vector<std::string> calls = files::data_names(files::kCallsFolder);
    const auto is_in = [&](const std::vector<std::string>& names) {
        return std::find(names.begin(), names.end(), name_or_path) != names.end();
    };
    if (is_in(equipment))
        return files::load_equipment(name_or_path).board;
    if (is_in(calls))
        return files::load_bundle(name_or_path).site.model.board;
    if (name_or_path == files::find_data_file(name_or_path, files::kCallsFolder)) {
        const files::Document document = files::read_document(name_or_path);
        const files::Json& value = document.value();
        const auto format = value.find("format");
        if (value.is_object() && format != value.end() && *format == files::kEquipmentFormat)
            return files::read_equipment(document).board;
    }
    return files::load_bundle(name_or_path).site.model.board;
}

std::string joined(const std::vector<std::string>& texts, const std::string& between) {
    std::string all;
    for (const std::string& text : texts)
        all += (all.empty() ? "" : between) + text;
    return all;
}

} // namespace

int list_conditions(Output& out, const std::string& scenario, const std::string& seed_text, bool as_json) {
    const std::uint64_t seed = whole_number_in("--seed", seed_text);
    const files::LoadedBundle bundle = files::load_bundle(scenario);
    furnace::Workspace workspace(bundle.site.model);
    const bench::World world = lesson::arrive(bundle.site, bundle.scenario, seed, workspace);
    const std::vector<ConditionRow> rows = condition_rows(bundle.site.model, world.condition);
    if (as_json) {
        OrderedJson list = OrderedJson::array();
        for (const ConditionRow& row : rows)
            list.push_back({{"condition", row.path.path}, {"unit", row.path.unit}, {"value", row.number}});
        out.line(json_text(list));
        return kDone;
    }
    Table table({{"value", true}, {"unit", false}, {"condition", false}});
    for (const ConditionRow& row : rows)
        table.row({row.text, row.path.unit == "1" ? "" : row.path.unit, row.path.path});
    table.write(out, 0);
    return kDone;
}

int print_chart(Output& out, const std::string& name_or_path) {
    write_chart(out, board_of(name_or_path));
    return kDone;
}

void write_chart(Output& out, const control::Board& board) {
    const control::DoorChart chart = control::door_chart(board);
    out.line(out.heading(chart.board));
    out.line();
    out.line(out.heading("What the lamp shows"));
    for (const control::SignalRow& row : chart.signals) {
        write_wrapped(out, row.meaning, 2);
        for (const std::string& line : wrapped(row.signal, kPageWidth - 6))
            out.line("      " + out.styled(Style::quiet, line));
    }
    out.line();
    out.line(out.heading("What the count says, and what to measure when the lamp stops there"));
    for (const control::StepRow& row : chart.steps) {
        out.line();
        out.line("  " + out.heading(std::to_string(row.count) + "  " + row.step) + "  (" + row.known_by +
                 (row.inputs.empty() ? "" : ": " + joined(row.inputs, ", ")) + ")");
        for (const std::string& measure : row.measure)
            write_labelled(out, "     -", 7, measure);
    }
}

} // namespace lightoff::cli
