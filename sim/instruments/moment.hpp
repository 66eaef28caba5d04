// SPDX-License-Identifier: MIT
#pragma once
#include "furnace/furnace.hpp"

#include <cstddef>
#include <cstdint>

namespace lightoff::instruments {

/// What instruments look at: the furnace at the end of a tick. The network is solved when the first of them
/// asks, once for all.
class Moment {
public:
    const furnace::Model& model;
    const furnace::State& state;
    const furnace::Condition& condition;
    const furnace::Inputs& inputs; ///< with the meter's leads attached as they were in this tick
    std::uint64_t seed;            ///< of the attempt
    std::uint64_t tick;

    Moment(const furnace::Model& of_model, const furnace::State& of_state,
           const furnace::Condition& of_condition, const furnace::Inputs& of_inputs, std::uint64_t of_seed,
           std::uint64_t of_tick, furnace::Workspace& workspace)
        : model(of_model), state(of_state), condition(of_condition), inputs(of_inputs), seed(of_seed),
          tick(of_tick), workspace_(workspace) {}

    /// Whether a window that is renewed every `ticks` is renewed now.
    [[nodiscard]] bool renews(int ticks) const { return tick % static_cast<std::uint64_t>(ticks) == 0; }

    /// Phasor of node a against node b of an attachment, V r.m.s.
    electrical::Complex ac_v(std::size_t slot) {
        return network().ac_attachment_v(*ac_, static_cast<int>(slot));
    }
    /// Current out of node a through the attachment to b, A r.m.s.
    electrical::Complex ac_a(std::size_t slot) {
        return network().ac_attachment_a(*ac_, static_cast<int>(slot));
    }
    /// Mean values of the same.
    double dc_v(std::size_t slot) {
        electrical::Workspace& net = network();
        return net.dc_attachment_v(dc(), static_cast<int>(slot));
    }
    double dc_a(std::size_t slot) {
        electrical::Workspace& net = network();
        return net.dc_attachment_a(dc(), static_cast<int>(slot));
    }
    /// Phasor of a node against earth.
    electrical::Complex node_v(int node) {
        return network().ac_node_voltages()[static_cast<std::size_t>(node)];
    }
    /// Phasor of the current through an element from its a to its b.
    electrical::Complex element_a(int element) {
        electrical::Workspace& net = network();
        return net.element_current(*ac_, net.ac_node_voltages(), element);
    }

    /// What the attachment of a slot would carry with other inputs.
    struct Trial {
        electrical::Complex volts;
        electrical::Complex amps;
    };
    Trial try_with(const furnace::Inputs& other, std::size_t slot) {
        const electrical::AcSolution& ac = furnace::solve_ac(model, state, condition, other, workspace_);
        const int i = static_cast<int>(slot);
        const Trial trial{workspace_.network.ac_attachment_v(ac, i),
                          workspace_.network.ac_attachment_a(ac, i)};
        ac_ = nullptr; // the workspace now stands for the other inputs
        return trial;
    }

private:
    electrical::Workspace& network() {
        if (ac_ == nullptr)
            ac_ = &furnace::solve_ac(model, state, condition, inputs, workspace_);
        return workspace_.network;
    }
    const electrical::DcSolution& dc() { return network().solve_dc(workspace_.ports); }

    furnace::Workspace& workspace_;
    const electrical::AcSolution* ac_ = nullptr; ///< in the workspace, till the next solve
};

} // namespace lightoff::instruments
