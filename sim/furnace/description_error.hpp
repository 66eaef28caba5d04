// SPDX-License-Identifier: MIT
#pragma once
#include <stdexcept>
#include <string>

namespace lightoff::furnace {

/// Something in a description can't be built. `pointer` says where (a JSON pointer below the
/// description's own root, "/wires/3/to"), `what()` what is wrong and what is allowed.
class DescriptionError : public std::invalid_argument {
public:
    DescriptionError(std::string where, const std::string& what)
        : std::invalid_argument(what), pointer(std::move(where)) {}
    std::string pointer;
};

} // namespace lightoff::furnace
