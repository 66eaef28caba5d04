// SPDX-License-Identifier: MIT
#include "gui/explore/lanes.hpp"

#include "report/words.hpp"
#include "units/convert.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace lightoff::explore {
namespace {

using canvas::Energy;

struct ShortName {
    std::string_view milestone;
    std::string_view flag; ///< empty: none
};

constexpr std::array kShortNames{
    ShortName{"thermostat closes R-W", "call"},
    ShortName{"thermostat opens R-W", "call ends"},
    ShortName{"board has control power", ""},
    ShortName{"board loses control power", "power lost"},
    ShortName{"inducer turns", ""},
    ShortName{"inducer stands still", ""},
    ShortName{"pressure switch closes", "draft"},
    ShortName{"pressure switch opens", "draft gone"},
    ShortName{"igniter glows bright enough to light gas", "igniter"},
    ShortName{"igniter has cooled below lighting heat", ""},
    ShortName{"gas valve opens", "gas"},
    ShortName{"gas valve closes", "gas shut"},
    ShortName{"first burner lights", "flame"},
    ShortName{"all burners are lit", "all lit"},
    ShortName{"not all burners are lit", ""},
    ShortName{"last burner goes out", "flame out"},
    ShortName{"blower turns", "blower"},
    ShortName{"blower stands still", ""},
};

/// What tells most of a call, in the order in which a call goes.
constexpr std::array<std::string_view, 8> kUsual{
    "control, R-C",    "inducer speed",     "suction at the pressure switch",
    "igniter current", "manifold pressure", "flame current",
    "blower speed",    "supply air"};

} // namespace

std::optional<Energy> energy_of(std::string_view group, std::string_view name) {
    const auto has = [&](std::string_view word) { return name.find(word) != std::string_view::npos; };
    if (group == "electrical") {
        return has("R-C") || has("W-C") || has("valve") || has("limit") || has("pressure switch") ||
                       has("rollout") || has("transformer") || has("board senses")
                   ? Energy::Volts24
                   : Energy::Volts120;
    }
    if (has("speed") || has("power")) {
        return Energy::Volts120;
    }
    if (group == "draft" || has("static") || has("airflow")) {
        return Energy::Air;
    }
    if (has("gas inlet") || has("manifold") || has("gas flow") || has("input") || has("dial")) {
        return Energy::Gas;
    }
    return Energy::Heat;
}

std::vector<trace::Lane> lanes_of(const furnace::Model& model, const bench::Gauges& gauges) {
    std::vector<trace::Lane> lanes;
    for (const bench::Gauge& gauge : gauges.list()) {
        trace::Lane lane;
        lane.name = gauge.name;
        lane.unit = report::unit_text(gauge.unit);
        lane.decimals = std::min(2, bench::decimals_of(gauge.unit));
        lane.words = gauge.words;
        lane.step_like = !gauge.words.empty();
        if (gauge.words.empty()) {
            lane.energy = energy_of(gauge.group, gauge.name);
        }
        if (gauge.name == "suction at the pressure switch") {
            lane.levels = {static_cast<float>(units::pa_to_inwc(model.draft.sense_line.make_pa)),
                           static_cast<float>(units::pa_to_inwc(model.draft.sense_line.break_pa))};
        }
        lane.column = lanes.size();
        lanes.push_back(std::move(lane));
    }
    return lanes;
}

std::vector<std::size_t> usual_lanes(const bench::Gauges& gauges) {
    std::vector<std::size_t> usual;
    for (const std::string_view name : kUsual) {
        for (std::size_t i = 0; i < gauges.list().size(); ++i) {
            if (gauges.list()[i].name == name) {
                usual.push_back(i);
            }
        }
    }
    return usual;
}

std::optional<std::string> flag_of(const bench::Milestone& milestone) {
    for (const ShortName& name : kShortNames) {
        if (milestone.text == name.milestone) {
            return name.flag.empty() ? std::nullopt : std::optional<std::string>(name.flag);
        }
    }
    if (milestone.text.starts_with("board, ")) {
        return std::nullopt;
    }
    return milestone.text;
}

} // namespace lightoff::explore
