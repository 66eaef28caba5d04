// SPDX-License-Identifier: MIT
#pragma once
#include <nlohmann/json.hpp>
#include <string>

namespace lightoff::cli {

/// JSON on its way out keeps the order in which it was put together.
using OrderedJson = nlohmann::ordered_json;

/// Indented, UTF-8, numbers as the shortest that read back; bytes that are not UTF-8 become U+FFFD.
inline std::string json_text(const OrderedJson& value) {
    return value.dump(2, ' ', false, OrderedJson::error_handler_t::replace);
}

} // namespace lightoff::cli
