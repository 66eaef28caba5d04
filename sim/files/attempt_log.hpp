// SPDX-License-Identifier: MIT
#pragma once
#include "files/attempt.hpp"
#include "lesson/log.hpp"

#include <string>

/// An attempt's file as a log that can be replayed: its actions are text, {"do":"thermostat-set 72F"}.
namespace lightoff::files {

/// The action of an entry, as the file holds it.
std::string action_json(const bench::Site& site, const bench::Action& action);

/// Throws Error, naming the entry, for an action that this furnace does not have. `file` is only named in
/// errors.
lesson::Log log_of(const Attempt& attempt, const std::string& file, const bench::Site& site);

} // namespace lightoff::files
