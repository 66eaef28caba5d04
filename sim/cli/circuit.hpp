// SPDX-License-Identifier: MIT
#pragma once
#include "cli/output.hpp"

#include <string>

namespace lightoff::cli {

struct CircuitOptions {
    std::string scenario;
    std::string at_s;
    std::string seed = "0";
    bool dc = false;
    std::string spice; ///< file; empty: none
    bool json = false;
};

/// Solves the whole network as it is at a moment of a scenario: every node's voltage against earth, every
/// element's current; and writes it as a deck for ngspice.
int circuit(Output& out, const CircuitOptions& options);

} // namespace lightoff::cli
