// SPDX-License-Identifier: MIT
#include "furnace/tolerance.hpp"

#include "furnace/condition_paths.hpp"
#include "units/random.hpp"

namespace lightoff::furnace {
namespace {

constexpr std::uint64_t kToleranceStream = 1;

} // namespace

Condition as_built(const Model& model, std::uint64_t seed) {
    Condition condition;
    if (seed == 0)
        return condition;
    for (std::size_t i = 0; i < model.tolerances.size(); ++i) {
        const Tolerance& t = model.tolerances[i];
        const double offset = t.spread * units::random_signed(seed, kToleranceStream, i);
        set_condition_field(condition, t.field, t.nominal + offset);
    }
    return condition;
}

} // namespace lightoff::furnace
