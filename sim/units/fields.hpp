// SPDX-License-Identifier: MIT
#pragma once
#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <type_traits>

/// One field list for each struct of the World. A struct says what it holds once,
///
///     template <class Self, class Visit>
///     static void fields(Self& self, Visit& visit) {
///         visit("speed", "rad/s", self.speed_rad_s);   // a number: name, unit ("" for none), value
///         visit("lit", "", self.lit);                  // bool and integers too, and std::array of them
///         visit("rotor", self.rotor);                  // a struct that has a field list of its own
///     }
///
/// and the same list serves hash, comparison, the check for NaN and the trace. Every member
/// must stand in it: a test compares the bytes visited with sizeof.
namespace lightoff::units {

/// Calls `leaf(path, unit, value)` for every scalar below `root`, depth first in declaration order.
/// Paths look like "draft.inducer.speed" and "gas.lit[2]".
template <class Root, class Leaf>
void for_each_field(Root& root, Leaf&& leaf, const std::string& path = {});

namespace detail {

template <class Leaf>
struct Walker {
    Leaf& leaf;
    const std::string& prefix;

    [[nodiscard]] std::string join(std::string_view name) const {
        return prefix.empty() ? std::string(name) : prefix + "." + std::string(name);
    }
    template <class T>
    void operator()(std::string_view name, T& nested) {
        each(join(name), "", nested);
    }
    template <class T>
    void operator()(std::string_view name, std::string_view unit, T& value) {
        each(join(name), unit, value);
    }
    template <class T>
    void each(const std::string& path, std::string_view unit, T& value) {
        if constexpr (requires {
                          value.size();
                          value[0];
                      })
            for (std::size_t i = 0; i < value.size(); ++i)
                each(path + "[" + std::to_string(i) + "]", unit, value[i]);
        else if constexpr (std::is_arithmetic_v<std::remove_const_t<T>> ||
                           std::is_enum_v<std::remove_const_t<T>>)
            leaf(path, unit, value);
        else
            for_each_field(value, leaf, path);
    }
};

/// The same walk without building any names, for the hash.
template <class Leaf>
struct BareWalker {
    Leaf& leaf;
    template <class T>
    void operator()(std::string_view, T& nested) {
        each(nested);
    }
    template <class T>
    void operator()(std::string_view, std::string_view, T& value) {
        each(value);
    }
    template <class T>
    void each(T& value) {
        if constexpr (requires {
                          value.size();
                          value[0];
                      })
            for (auto& element : value)
                each(element);
        else if constexpr (std::is_arithmetic_v<std::remove_const_t<T>> ||
                           std::is_enum_v<std::remove_const_t<T>>)
            leaf(value);
        else
            std::remove_const_t<T>::fields(value, *this);
    }
};

} // namespace detail

template <class Root, class Leaf>
void for_each_field(Root& root, Leaf&& leaf, const std::string& path) {
    detail::Walker<std::remove_reference_t<Leaf>> walker{leaf, path};
    std::remove_const_t<Root>::fields(root, walker);
}

/// Calls `leaf(value)` for every scalar below `root`, in the same order, building no names.
template <class Root, class Leaf>
void for_each_value(Root& root, Leaf&& leaf) {
    detail::BareWalker<std::remove_reference_t<Leaf>> walker{leaf};
    std::remove_const_t<Root>::fields(root, walker);
}

/// The bits of a scalar, widened to 64.
template <class T>
constexpr std::uint64_t bits_of(T value) {
    if constexpr (std::is_same_v<T, double>)
        return std::bit_cast<std::uint64_t>(value);
    else if constexpr (std::is_same_v<T, float>)
        return std::bit_cast<std::uint32_t>(value);
    else
        return static_cast<std::uint64_t>(value);
}

/// Order-dependent mixing of one 64-bit word into a hash (multiply and xor-shift).
constexpr std::uint64_t mix(std::uint64_t hash, std::uint64_t word) {
    hash = (hash ^ word) * 0x9E3779B97F4A7C15ULL;
    return hash ^ (hash >> 29U);
}

/// Hash of every scalar below `root`, bit by bit (so -0.0 and 0.0 differ).
template <class Root>
std::uint64_t hash_fields(const Root& root) {
    std::uint64_t hash = 0x6C696768746F6666ULL;
    for_each_value(root, [&](const auto& value) { hash = mix(hash, bits_of(value)); });
    return hash;
}

} // namespace lightoff::units
