// SPDX-License-Identifier: MIT
#include "cli/sums.hpp"
#include "gas/firing_rate.hpp"
#include "gas/orifice.hpp"
#include "units/convert.hpp"

namespace lightoff::cli {
namespace {

const Given kPressure{"pressure", "inwc", 0.0, 30.0, "gauge pressure behind the orifice"};
const Given kGravity{"specific_gravity", "", 0.3, 2.5, "of the gas, air = 1", 0.60};
const Given kDischarge{"discharge_coefficient", "", 0.5, 1.0, "of the hole", 0.90};
const Given kDial{"dial", "ft3", 0.01, 100.0, "volume of one turn of the meter's dial"};

double metres_of_flow(const Values& v) {
    return gas::orifice_flow_m3_s(v["diameter"], v["pressure"], v["specific_gravity"],
                                  v["discharge_coefficient"]);
}

} // namespace

std::vector<Sum> gas_sums() {
    return {
        {"orifice-flow",
         "gas flow of a drilled orifice",
         "Q = 1658.5 K A sqrt(h / SG): ft3/h, in2, in. w.c.",
         "gas engineers' handbooks; K = 0.90 gives the orifice capacity table of BCcampus Plumbing "
         "Apprenticeship, Block E, Appendix 2",
         {{"diameter", "in", 0.001, 2.0, "of the drill"}, kPressure, kGravity, kDischarge},
         [](const Values& v) -> std::vector<Result> {
             return {{"flow", "cfh", metres_of_flow(v)}};
         }},
        {"orifice-size",
         "drill that passes a gas flow",
         "d from Q = 1658.5 K (pi/4) d^2 sqrt(h / SG)",
         "the orifice equation above, solved for the diameter",
         {{"flow", "cfh", 0.01, 5000.0, "of one orifice"},
          {"pressure", "inwc", 0.01, 30.0, "gauge pressure behind the orifice"},
          kGravity,
          kDischarge},
         [](const Values& v) -> std::vector<Result> {
             return {{"diameter", "in",
                      gas::orifice_diameter_m(v["flow"], v["pressure"], v["specific_gravity"],
                                              v["discharge_coefficient"])}};
         }},
        {"meter-clocking",
         "gas flow from the time of a turn of the meter's dial",
         "flow per hour = 3600 x dial / seconds",
         "NFPA 54-1996 Table XIII",
         {kDial, {"turn", "s", 0.1, 36000.0, "time of one turn"}},
         [](const Values& v) -> std::vector<Result> {
             return {{"flow", "cfh", gas::clocked_flow_per_hour(v["dial"], v["turn"]) / 3600.0}};
         }},
        {"dial-time",
         "time of a turn of the meter's dial at a gas flow",
         "seconds = 3600 x dial / flow per hour",
         "NFPA 54-1996 Table XIII, solved for the time",
         {kDial, {"flow", "cfh", 0.1, 5000.0, "of all that burns behind the meter"}},
         [](const Values& v) -> std::vector<Result> {
             return {{"turn", "s", gas::dial_seconds(v["dial"], 3600.0 * v["flow"])}};
         }},
        {"input-rate",
         "firing rate from gas flow and heating value",
         "input = flow x heating value",
         "definition",
         {{"flow", "cfh", 0.0, 5000.0, "of gas"},
          {"heating_value", "Btu_per_ft3", 100.0, 4000.0,
           "higher heating value, as the gas supplier gives it"}},
         [](const Values& v) -> std::vector<Result> {
             return {{"input", "Btuh", gas::input_rate(v["flow"], v["heating_value"])}};
         }},
        {"altitude-derating",
         "input that an appliance may be fired at above sea level",
         "4 % less for each 1000 ft, counted from sea level, applied above 2000 ft",
         "NFPA 54 (the threshold from memory); the rating plate and local code go before it",
         {{"altitude", "ft", -1000.0, 12000.0, "above sea level"},
          {"sea_level_input", "Btuh", 1.0, 1e7, "of the rating plate"}},
         [](const Values& v) -> std::vector<Result> {
             const double share = gas::altitude_derating(units::m_to_foot(v["altitude"]));
             return {{"allowed", "pct", share}, {"input", "Btuh", share * v["sea_level_input"]}};
         }},
    };
}

} // namespace lightoff::cli
