// SPDX-License-Identifier: MIT
#pragma once
#include "gui/diagram/layout/circuits.hpp"

#include <vector>

namespace lightoff::diagram {

/// Least length of a link in drawing units.
float least_length(const furnace::Model& model, const Link& link);

/// Least lengths of all links of a furnace.
class Lengths {
public:
    Lengths(const furnace::Model& model, const Circuits& circuits);

    [[nodiscard]] float of(int link) const;
    /// Of a link in its run: what hangs on a rail stands off it.
    [[nodiscard]] float in(const Run& run, std::size_t i) const;
    [[nodiscard]] float of(const Run& run) const;

private:
    const Circuits& circuits_;
    std::vector<float> least_;
    std::vector<float> at_left_rail_; ///< of a link that hangs on it
};

} // namespace lightoff::diagram
