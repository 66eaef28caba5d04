// SPDX-License-Identifier: MIT
#pragma once
#include "furnace/furnace.hpp"

#include <cstddef>
#include <functional>

namespace lightoff::evidence {

/// Does `work` once for every number below `count`, on all cores of the machine. What it does for one number
/// must neither depend on nor touch what it does for another; then the outcome is the same on any machine.
/// `done` hears in the caller's thread, at first and then now and then, how many are begun. What either
/// throws ends the work once each thread is through with what it is at, and comes out of here.
void on_all_cores(const furnace::Model& model, std::size_t count,
                  const std::function<void(std::size_t, furnace::Workspace&)>& work,
                  const std::function<void(std::size_t)>& done);

} // namespace lightoff::evidence
