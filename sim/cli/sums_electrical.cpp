// SPDX-License-Identifier: MIT
#include "cli/sums.hpp"
#include "electrical/conductor.hpp"
#include "electrical/formulas.hpp"
#include "units/convert.hpp"

namespace lightoff::cli {
namespace {

std::vector<Result> transformer(const Values& v) {
    const double ohm = electrical::load_ohm(v["rated_secondary"], v["load"]);
    const electrical::TransformerLoad at =
        electrical::transformer_under_load(v["open_secondary"], v["series"], ohm);
    return {
        {"secondary", "V", at.volts},
        {"current", "A", at.amps},
        {"delivered", "VA", at.volt_amperes},
        {"rated_current", "A", v["rating"] / v["rated_secondary"]},
        {"loading", "pct", v["load"] / v["rating"]},
        {"short_circuit_current", "A", electrical::transformer_short_a(v["open_secondary"], v["series"])}};
}

std::vector<Result> conductor(const Values& v) {
    const double per_m =
        electrical::copper_ohm_per_m(static_cast<int>(v["gauge"]), units::k_to_celsius(v["temperature"]));
    const double ohm = per_m * v["length"];
    std::vector<Result> results{{"resistance", "ohm", ohm}, {"resistance_of_length", "mohm_per_m", per_m}};
    if (v.has("current"))
        results.push_back({"drop", "V", ohm * v["current"]});
    return results;
}

} // namespace

std::vector<Sum> electrical_sums() {
    return {
        {"transformer-load",
         "control transformer under its load",
         "R = V^2 / VA of the load; I = E / (r + R)",
         "Ohm's law, all resistive; a Class 2 circuit has at most 30 V and 100 VA (NEC Chapter 9 Table 11)",
         {{"rating", "VA", 1.0, 1000.0, "of the nameplate", 40.0},
          {"rated_secondary", "V", 1.0, 600.0, "at which load and rating are stated", 24.0},
          {"open_secondary", "V", 1.0, 600.0, "without load", 27.0},
          {"series", "ohm", 0.001, 1000.0, "impedance of the windings, seen at the secondary", 1.5},
          {"load", "VA", 0.1, 1000.0, "coils and boards together, at the rated secondary voltage"}},
         transformer},
        {"conductor-resistance",
         "ohms of a copper conductor and the volts dropped along it",
         "R = rho (1 + a (T - 20 C)) L / A",
         "resistivity and coefficient of IEC 60028, diameters of ASTM B258; solid, not stranded",
         {{"gauge", "", -3.0, 40.0, "AWG; 0 is 1/0, -3 is 4/0", {}, false, true},
          {"length", "ft", 0.0, 1e5, "of the conductor, there and back"},
          {"temperature", "C", -60.0, 200.0, "of the copper", 25.0},
          {"current", "A", 0.0, 1000.0, "for the volts dropped", {}, true}},
         conductor},
        {"capacitor",
         "microfarads of a running capacitor from its amps and volts",
         "C = I / (2 pi f V); 2652 A / V at 60 Hz",
         "definition of capacitive reactance",
         {{"current", "A", 0.0, 100.0, "in the capacitor's lead"},
          {"voltage", "V", 1.0, 1000.0, "across the capacitor"},
          {"frequency", "Hz", 1.0, 1000.0, "of the line", 60.0}},
         [](const Values& v) -> std::vector<Result> {
             return {{"capacitance", "uF",
                      electrical::capacitance_farad(v["current"], v["voltage"], v["frequency"])}};
         }},
    };
}

} // namespace lightoff::cli
