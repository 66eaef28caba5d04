// SPDX-License-Identifier: MIT
#pragma once
#include "bench/site.hpp"
#include "bench/world.hpp"
#include "instruments/bag.hpp"

#include <array>
#include <cstdint>
#include <string>
#include <vector>

namespace lightoff::bench {

/// How a reading came to be taken.
enum class Taken : std::uint8_t {
    settled, ///< it stood in the window, settled, for two seconds
    kept,    ///< it was written down
    looked,  ///< a close look at a part
    old_part ///< a test of a part that was taken out for a new one
};

/// Something that was read or seen, and so counts as evidence.
struct Reading {
    std::uint64_t tick = 0;
    Taken taken = Taken::settled;
    int window = -1;  ///< in the order of instruments::displays; -1: a look
    int part = -1;    ///< of the catalogue, that was looked at; -1: a window
    int place_a = -1; ///< of a window: node of the red lead, element in the jaw, or Spot
    int place_b = -1; ///< node of the black lead, or second Spot
    instruments::Display display;
    std::vector<int> bands; ///< of a look or an old part: which words each of its sights gave
    std::vector<instruments::Display> values; ///< of an old part: what the meter showed
    std::string where; ///< "red on board.R, black on board.C"; the part that was looked at
};

/// Writes down what is read, by one rule for window, terminal and script: a number that has stood settled for
/// two seconds, once for each place of the instrument and again when it has moved on; whatever is kept; and
/// every look. Readings are numbered from 1 in the order in which they were taken.
class Notebook {
public:
    explicit Notebook(const Site& site) : site_(&site) {}

    /// To be called after every tick.
    void observe(const World& world);

    [[nodiscard]] const std::vector<Reading>& readings() const { return readings_; }

private:
    struct Window {
        std::uint64_t setting = 0; ///< hash of how the instrument was set
        int last = -1;             ///< place of its last reading under this setting
    };
    void take(const World& world, std::size_t window, const instruments::NamedDisplay& shown, Taken taken);
    void take_old(const World& world, const OldPart& old);
    void observe_window(const World& world, std::size_t window, const instruments::NamedDisplay& shown);

    const Site* site_;
    std::array<Window, instruments::kWindows> windows_;
    std::vector<Reading> readings_;
};

/// Where the instrument of one of the bag's windows is put, in words.
std::string where_is_it(const Site& site, const instruments::Bag& bag,
                        const instruments::NamedDisplay& window);

} // namespace lightoff::bench
