// SPDX-License-Identifier: MIT
#pragma once
#include "faults/catalogue.hpp"
#include "furnace/condition.hpp"
#include "furnace/model.hpp"

#include <cstdint>
#include <string>
#include <vector>

/// Every number of the Condition that this furnace has, as something to turn: what it is called, whose it is,
/// how it is healthy, how far it can go. What it does, the physics says.
namespace lightoff::faults {

struct Parameter {
    std::string name; ///< "water slug"
    std::string part; ///< title of the part that it belongs to, or its room
    std::string path; ///< furnace::condition_field; "short/A/B" for two nodes that touch
    std::string unit; ///< as in the field list
    double healthy = 0.0;
    double low = 0.0;  ///< left end of its slider
    double high = 1.0; ///< right end; may lie below `low` where less is worse
    bool logarithmic = false;
    bool whole = false;              ///< takes whole numbers only
    bool apart = false;              ///< healthy is a value of its own, left of `low`
    std::vector<std::string> words;  ///< of a whole number, for 0, 1, 2 ...
    std::vector<std::string> faults; ///< titles of those that move it
    std::uint64_t field = 0;
    int bridge = -1; ///< place in Catalogue::bridges: the number is the ohms of that short

    /// The value at a place 0..1 of its slider; near its healthy place it is that, exactly.
    [[nodiscard]] double at(double share) const;
    [[nodiscard]] double share_of(double value) const;
};

/// In the order of the Condition's field list, shorts last. `healthy` is furnace::as_built of the World's
/// seed.
std::vector<Parameter> parameters_of(const furnace::Model& model, const Catalogue& catalogue,
                                     const furnace::Condition& healthy);

double value_of(const Catalogue& catalogue, const Parameter& parameter, const furnace::Condition& condition);
/// std::invalid_argument for a short when no bridge of the wiring is free.
void set(const Catalogue& catalogue, const Parameter& parameter, double value, furnace::Condition& condition);

} // namespace lightoff::faults
