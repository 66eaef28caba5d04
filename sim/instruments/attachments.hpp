// SPDX-License-Identifier: MIT
#pragma once
#include <cstddef>

/// Who uses which slot of furnace::Inputs::attachments.
namespace lightoff::instruments {

inline constexpr std::size_t kMultimeterSlot = 0;
inline constexpr std::size_t kJumperSlot = 1;       ///< jumper lead
inline constexpr std::size_t kSmallBreakerSlot = 2; ///< bridges a fuse's place to hunt a short
inline constexpr std::size_t kFirstWireSlot = 3;    ///< and on: wires landed elsewhere by hand

} // namespace lightoff::instruments
