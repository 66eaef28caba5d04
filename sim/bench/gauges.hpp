// SPDX-License-Identifier: MIT
#pragma once
#include "bench/world.hpp"
#include "furnace/furnace.hpp"
#include "instruments/quantity.hpp"

#include <cstdint>
#include <string>
#include <vector>

/// What should read what, where: every place that a meter, gauge, probe or eye can be put to, and what is
/// there. True values; for explore, the debrief and tests.
namespace lightoff::bench {

struct Gauge {
    std::string name;  ///< "manifold pressure"
    std::string where; ///< where it is taken; empty: worked out, no meter reads it
    std::string group;
    std::string unit;               ///< as in Readout; empty where `words` speak
    std::vector<std::string> words; ///< of a thing that stands this way or that way: for 0, 1, 2 ...
    instruments::Quantity quantity = instruments::Quantity::none; ///< whose accuracy it is read with

    enum class Kind : std::uint8_t { state, readout, volts, temperature };
    Kind kind = Kind::state;
    int a = 0; ///< row of the states, place in the readouts, node, spot
    int b = 0; ///< node
};

/// All gauges of a furnace in a fixed order, that of its model: things that stand this way or that way first.
class Gauges {
public:
    /// The model must outlive it.
    explicit Gauges(const furnace::Model& model);

    [[nodiscard]] const std::vector<Gauge>& list() const { return list_; }
    /// One value each in the gauge's unit; where words speak, the place of the word.
    void read(const World& world, furnace::Workspace& workspace, std::vector<double>& out) const;
    /// By name; std::invalid_argument if there is none.
    [[nodiscard]] std::size_t find(const std::string& name) const;

private:
    void add_states();
    void add_readouts();
    void add_board_senses();
    void add_temperatures();

    const furnace::Model* model_;
    std::vector<Gauge> list_;
};

/// Within how much the instrument for it reads a value, half a last digit included; for what no instrument
/// reads kWorkedOut of the value (common practice, no source). In the gauge's unit.
double accuracy(const Gauge& gauge, double value);
inline constexpr double kWorkedOut = 0.02;

/// Whether whoever reads both would see that they differ: by more than the accuracy, or by another word.
bool differ(const Gauge& gauge, double one, double other);

/// Digits behind the point with which the trade writes a unit.
int decimals_of(const std::string& unit);

} // namespace lightoff::bench
