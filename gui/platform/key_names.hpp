// SPDX-License-Identifier: MIT
#pragma once
#include "gui/platform/input_events.hpp"

#include <optional>
#include <string_view>

namespace lightoff::platform {

/// "F7", "L", "/", "Page up". Empty for a key that has no name of its own, such as those that shift others.
std::string_view name_of(Key key);
std::optional<Key> key_called(std::string_view name);

} // namespace lightoff::platform
