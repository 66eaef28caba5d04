// SPDX-License-Identifier: MIT
//
// Time of a full solve, of a port solve and of a sense over the sample wiring, and the ratio to
// libngspice in the same process on the same deck with one resistance changed each time.
#include "electrical/network.hpp"
#include "electrical/spice_deck.hpp"
#include "support/sample_wiring.hpp"
#include <algorithm>
#include <cstdio>
#include <ctime>
#include <ngspice/sharedspice.h>
#include <sstream>
#include <vector>

namespace {

using namespace lightoff;
using namespace lightoff::electrical;

/// Time of this process on the processor: other programs on the machine do not count.
double processor_microseconds() {
    timespec t{};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
    return 1e6 * static_cast<double>(t.tv_sec) + 1e-3 * static_cast<double>(t.tv_nsec);
}

template <class Work>
double microseconds_each(int times, Work&& work) {
    double best = 1e9; // the quietest of five rounds
    for (int round = 0; round < 5; ++round) {
        const double start = processor_microseconds();
        for (int i = 0; i < times; ++i)
            work(i);
        best = std::min(best, (processor_microseconds() - start) / times);
    }
    return best;
}

int ignore_text(char*, int, void*) {
    return 0;
}
int ignore_exit(int, NG_BOOL, NG_BOOL, int, void*) {
    return 0;
}

void load(const std::string& deck) {
    std::vector<std::string> lines;
    std::istringstream text(deck);
    bool control = false;
    for (std::string line; std::getline(text, line);) {
        if (line == ".control")
            control = true;
        if (!control)
            lines.push_back(line);
        if (line == ".endc")
            control = false;
    }
    lines.emplace_back(".end");
    std::vector<char*> pointers;
    for (std::string& line : lines)
        pointers.push_back(line.data());
    pointers.push_back(nullptr);
    ngSpice_Circ(pointers.data());
}

double ngspice_microseconds(const std::string& deck) {
    ngSpice_Init(ignore_text, ignore_text, ignore_exit, nullptr, nullptr, nullptr, nullptr);
    load(deck);
    char ac[] = "ac lin 1 60 60";
    char drop[] = "destroy all";
    return microseconds_each(200, [&](int i) {
        std::string alter = "alter Re0 = " + std::to_string(0.05 + 1e-4 * (i % 7));
        ngSpice_Command(alter.data());
        ngSpice_Command(ac);
        ngSpice_Command(drop);
    });
}

} // namespace

int main() {
    const Netlist net = test::SampleWiring().build();
    Condition condition;
    NetworkInputs inputs;
    for (const char* name : {"heat call", "pressure switch", "valve relay", "inducer relay driver",
                             "inducer relay", "blower relay driver", "blower relay"})
        inputs.switches |= std::uint64_t{1} << static_cast<unsigned>(net.switch_bit(name));
    inputs.attachments[0] = {net.node("R"), net.node("cabinet"), 1e7, 0.0, 0.0};
    PortInputs ports;
    ports.rotor_rad_s = {320.0, 112.0};
    ports.igniter_ohm.fill(60.0);
    ports.flame_forward_siemens.fill(1e-7);
    ports.flame_reverse_siemens.fill(1e-9);
    Workspace workspace(net);
    workspace.set(condition, inputs);
    double sink = 0.0;

    const double full = microseconds_each(20000, [&](int i) {
        condition.series_ohm[0] = static_cast<float>(1e-6 * i);
        workspace.set(condition, inputs);
        sink += workspace.solve_ac(ports).port_v[0].re;
    });
    const double port = microseconds_each(200000, [&](int i) {
        ports.rotor_rad_s[1] = 100.0 + 0.1 * (i % 97);
        sink += workspace.solve_ac(ports).port_v[0].re;
    });
    const double unchanged = microseconds_each(200000, [&](int) { workspace.set(condition, inputs); });
    const AcSolution ac = workspace.solve_ac(ports);
    sink += workspace.solve_dc(ports).port_a[0];
    const double dc_port =
        microseconds_each(200000, [&](int) { sink += workspace.solve_dc(ports).port_a[0]; });
    const double sense =
        microseconds_each(200000, [&](int i) { sink += workspace.ac_sense(ac, i % net.sense_count()).re; });
    AcVoltages volts;
    const double nodes = microseconds_each(20000, [&](int) {
        workspace.node_voltages(ac, volts);
        sink += volts[5].re;
    });
    const double replan = microseconds_each(500, [&](int i) {
        inputs.attachments[0].a = 3 + i % 2;
        workspace.set(condition, inputs);
    });
    workspace.set(condition, inputs);
    OperatingPoint point{condition, inputs, ports, {}, {}};
    const double spice = ngspice_microseconds(spice_deck(net, point, Analysis::ac));

    std::printf("nodes %d, elements %d, ports %d, senses %d, branches %d, meshes %zu\n", net.node_count(),
                net.element_count(), net.port_count(), net.sense_count(), workspace.plan().branch_count(),
                workspace.plan().targets.size());
    std::printf("full AC solve    %8.3f us\n", full);
    std::printf("port AC solve    %8.3f us\n", port);
    std::printf("port DC solve    %8.3f us\n", dc_port);
    std::printf("set, no change   %8.3f us\n", unchanged);
    std::printf("one sense        %8.4f us\n", sense);
    std::printf("all node volts   %8.3f us\n", nodes);
    std::printf("new plan         %8.3f us\n", replan);
    std::printf("ngspice          %8.1f us, %.0f times a full solve\n", spice, spice / full);
    return sink == 0.123 ? 1 : 0;
}
