// SPDX-License-Identifier: MIT
#include "instruments/voltmeter.hpp"

#include <array>

namespace lightoff::instruments {
namespace {

constexpr std::int32_t kCounts = 6000;
constexpr std::array<std::int32_t, 3> kResolutions_mv{1, 10, 100};

} // namespace

VoltmeterDisplay voltmeter_display(double volts) {
    VoltmeterDisplay display;
    display.on = 1;
    const double millivolts = 1000.0 * (volts < 0.0 ? -volts : volts);
    for (const std::int32_t resolution : kResolutions_mv) {
        display.resolution_mv = resolution;
        if (millivolts >= (kCounts - 0.5) * resolution)
            continue;
        display.millivolts = resolution * static_cast<std::int32_t>(millivolts / resolution + 0.5);
        return display;
    }
    display.overload = 1;
    return display;
}

VoltmeterDisplay read_voltmeter(const furnace::Model& model, const furnace::State& state,
                                const furnace::Condition& condition, const furnace::Inputs& inputs,
                                std::size_t slot, furnace::Workspace& workspace) {
    const electrical::Attachment& leads = inputs.attachments[slot];
    if (leads.a == leads.b)
        return {};
    const electrical::AcSolution ac = furnace::solve_ac(model, state, condition, inputs, workspace);
    return voltmeter_display(units::abs(workspace.network.ac_attachment_v(ac, static_cast<int>(slot))));
}

} // namespace lightoff::instruments
