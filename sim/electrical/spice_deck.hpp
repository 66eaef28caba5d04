// SPDX-License-Identifier: MIT
#pragma once
#include "electrical/network_inputs.hpp"
#include <string>

namespace lightoff::electrical {

enum class Analysis { ac, dc };

/// Ports as an independent solver needs them.
struct OperatingPoint {
    const Condition& condition;
    const NetworkInputs& inputs;
    const PortInputs& ports;
    /// Flames, by port: equivalent conductance (60 Hz) and mean current from rod to burner (DC).
    std::array<double, kMaxPorts> flame_siemens{};
    std::array<double, kMaxPorts> flame_dc_a{};
};

/// A complete deck for ngspice in batch mode. It prints `n<index>` (AC: real and imaginary part) for
/// every node but earth, one line "v(n5) = ..." each. Motors are written out as revolving-field
/// circuits, not as the matrix that the solver uses. The text is made here; nothing is written.
std::string spice_deck(const Netlist& netlist, const OperatingPoint& point, Analysis analysis);

} // namespace lightoff::electrical
