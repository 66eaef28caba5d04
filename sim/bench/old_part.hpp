// SPDX-License-Identifier: MIT
#pragma once
#include "bench/site.hpp"
#include "instruments/display.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

/// Parts that were taken out for new ones lie on the bench, as they were in that moment.
namespace lightoff::bench {

inline constexpr std::size_t kMaxOldParts = 4;
inline constexpr std::size_t kMaxSights = 12;
inline constexpr std::size_t kMaxBenchValues = 6;

/// What a look and the meter would make of a part by itself; nothing else of it can be asked any more.
struct OldPart {
    std::array<double, kMaxBenchValues>
        value{}; ///< SI, in the order of the part's BenchTest; open: electrical::kOpenOhm
    std::array<std::uint8_t, kMaxSights>
        band{};            ///< of the sights of its look, then of those of its BenchTest
    std::int32_t part = 0; ///< of the catalogue

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("value", "", self.value);
        visit("band", "", self.band);
        visit("part", "", self.part);
    }
    friend bool operator==(const OldPart&, const OldPart&) = default;
};

struct OldParts {
    std::array<OldPart, kMaxOldParts>
        part{}; ///< the newest last; of more than there is room for, the oldest go
    std::uint64_t count = 0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("part", "", self.part);
        visit("count", "", self.count);
    }
    friend bool operator==(const OldParts&, const OldParts&) = default;
};

/// The last one of its kind; nullptr if none lies there.
const OldPart* find_old(const OldParts& parts, int part);
void lay_down(OldParts& parts, const OldPart& old);

/// A part of an appliance as it is now, by itself.
OldPart taken_out(const Site& site, int part, const furnace::Condition& condition);

/// Ohms between the ends of an element by itself, cold; of a capacitor farads.
double by_itself(const furnace::Model& model, const furnace::Condition& condition, int element);
instruments::Quantity quantity_by_itself(const furnace::Model& model, int element);

/// What the meter shows of an old part, in the order of its BenchTest.
std::vector<instruments::Display> measured(const Site& site, const OldPart& old);

/// "the link is gone; board.fuse OL"
std::string tested_in_words(const Site& site, int part, const std::vector<int>& bands,
                            const std::vector<instruments::Display>& values);

} // namespace lightoff::bench
