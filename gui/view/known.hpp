// SPDX-License-Identifier: MIT
#pragma once
#include "bench/bench.hpp"
#include "bench/captions.hpp"
#include "bench/expectation.hpp"
#include "bench/notebook.hpp"
#include "bench/percept.hpp"
#include "lesson/scenario.hpp"
#include "visit/papers.hpp"
#include "visit/visit.hpp"

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <vector>

/// What the panes of a call's window share: what they may show, what can be pointed at, what they ask for.
namespace lightoff::view {

enum class Units { trade, si };

/// All that a pane of an attempt may show: what is perceived, what was read and noticed, what was done and
/// said. No pane gets a World, so none can show what nobody could know; two Worlds with equal percepts give
/// equal pixels.
struct Known {
    const bench::Site* site = nullptr;
    const lesson::Scenario* scenario = nullptr;
    bench::Percept percept;
    std::span<const bench::Reading> readings; ///< numbered from 1 in this order
    std::span<const bench::Caption> captions;
    std::span<const visit::Visit::Done> done;
    visit::Papers papers;
    std::vector<bench::Expectation> expectations; ///< of readings, said beforehand
    std::uint64_t arrived_tick = 0;
    std::optional<std::uint64_t> proved_dead_tick;             ///< when the supply was, if it still counts
    std::function<bench::Verdict(const bench::Action&)> check; ///< the same for equal percepts
    Units units = Units::trade;

    [[nodiscard]] std::uint64_t ticks_here() const { return percept.tick - arrived_tick; }
};

/// `visit` and `scenario` must outlive it; it stands for this moment only.
Known known_of(const visit::Visit& visit, const lesson::Scenario& scenario, Units units = Units::trade);

/// Something to point at: the noun of an action, as the word that it can be in one (part, point, wire, plug,
/// wheel, instrument, a kind of spot). Doors and switches that are no parts: Word::on_off and their verb.
struct Thing {
    bench::Word kind = bench::Word::none;
    std::int32_t value = 0;
    friend bool operator==(const Thing&, const Thing&) = default;
};

/// What a pane asks for; the page that holds the panes does it.
struct Wanted {
    std::vector<std::string> lines; ///< as they would be typed: "look pressure_hose", "wait until lamp"
    std::optional<Thing> focus;     ///< something was pointed at
    std::optional<Thing> hover;     ///< the pointer is over it
    enum class Lead : std::uint8_t { none, red, black };
    Lead lead = Lead::none; ///< this lead was picked up, or is put on `lead_point`
    int lead_point = -1;    ///< node; -1: picked up
    std::string begun;      ///< a line to be finished by typing: "expect multimeter "
};

} // namespace lightoff::view
