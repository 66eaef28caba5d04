// SPDX-License-Identifier: MIT
#pragma once
#include "bench/world.hpp"
#include "cli/output.hpp"
#include "furnace/model.hpp"

#include <cstdint>
#include <string>

namespace lightoff::cli {

/// One status line at the bottom of a terminal, drawn anew while a run goes on: time, step of the board,
/// lamp, suction at the port, flame current, temperature rise. On anything but a terminal it does nothing. It
/// looks at the World only; the run never waits for it.
class LiveView {
public:
    LiveView(Output& out, const furnace::Model& model, std::uint64_t last_tick);
    ~LiveView();
    LiveView(const LiveView&) = delete;
    LiveView& operator=(const LiveView&) = delete;

    /// Draws if enough simulated time has passed since the last drawing.
    void look(const bench::World& world);
    /// Takes the line away, so that something can be written in its place.
    void clear();

private:
    [[nodiscard]] std::string status(const bench::World& world) const;

    Output* out_;
    const furnace::Model* model_;
    std::uint64_t last_tick_;
    std::uint64_t every_ticks_;
    std::uint64_t next_tick_ = 0;
    bool drawn_ = false;
};

} // namespace lightoff::cli
