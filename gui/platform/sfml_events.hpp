// SPDX-License-Identifier: MIT
#pragma once
#include "gui/platform/input_events.hpp"

#include <SFML/Window/Event.hpp>
#include <optional>

namespace lightoff::platform {

/// The same event in our terms; none for those that aren't input (closing, resizing, joysticks).
std::optional<InputEvent> translated(const sf::Event& event);

} // namespace lightoff::platform
