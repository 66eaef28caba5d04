// SPDX-License-Identifier: MIT
#include "bench/old_part.hpp"

#include "bench/access.hpp"

#include <algorithm>

namespace lightoff::bench {
namespace {

constexpr auto kOpen = static_cast<double>(electrical::kOpenOhm);

/// Ohms between two conductors that should not touch.
double between(const electrical::Condition& wiring, const faults::NodePair& pair) {
    double ohm = kOpen;
    for (const electrical::Bridge& bridge : wiring.bridges)
        if (bridge.a != bridge.b && std::min<int>(bridge.a, bridge.b) == pair.a &&
            std::max<int>(bridge.a, bridge.b) == pair.b)
            ohm = std::min(ohm, static_cast<double>(bridge.ohm));
    return ohm;
}

} // namespace

const OldPart* find_old(const OldParts& parts, int part) {
    for (std::size_t i = parts.count; i-- > 0;)
        if (parts.part[i].part == part)
            return &parts.part[i];
    return nullptr;
}

void lay_down(OldParts& parts, const OldPart& old) {
    if (parts.count == kMaxOldParts)
        std::rotate(parts.part.begin(), parts.part.begin() + 1, parts.part.end());
    else
        ++parts.count;
    parts.part[parts.count - 1] = old;
}

double by_itself(const furnace::Model& model, const furnace::Condition& condition, int element) {
    const auto i = static_cast<std::size_t>(element);
    const electrical::Element& e = model.wiring.netlist.elements[i];
    const auto factor = static_cast<double>(condition.wiring.factor[i]);
    const auto series_ohm = static_cast<double>(condition.wiring.series_ohm[i]);
    if (e.farad > 0.0)
        return series_ohm < 1e6 ? e.farad * factor : 0.0;
    if (e.kind == electrical::ElementKind::igniter)
        return series_ohm + model.heat.igniter.cold_ohm * condition.heat.igniter_resistance_factor;
    return series_ohm + e.ohm * factor;
}

instruments::Quantity quantity_by_itself(const furnace::Model& model, int element) {
    return model.wiring.netlist.elements[static_cast<std::size_t>(element)].farad > 0.0
               ? instruments::Quantity::capacitance
               : instruments::Quantity::ohms;
}

OldPart taken_out(const Site& site, int index, const furnace::Condition& condition) {
    const faults::Part& part = site.catalogue.parts[static_cast<std::size_t>(index)];
    OldPart old;
    old.part = index;
    std::vector<int> bands = faults::describe(part.look, condition);
    for (const int band : faults::describe({0, {}, part.bench_test.sights}, condition))
        bands.push_back(band);
    for (std::size_t i = 0; i < std::min(bands.size(), old.band.size()); ++i)
        old.band[i] = static_cast<std::uint8_t>(bands[i]);
    std::size_t n = 0;
    for (const int element : part.bench_test.elements)
        old.value[n++] = by_itself(site.model, condition, element);
    for (const faults::NodePair& pair : part.bench_test.pairs)
        old.value[n++] = between(condition.wiring, pair);
    return old;
}

std::vector<instruments::Display> measured(const Site& site, const OldPart& old) {
    const faults::BenchTest& test = site.catalogue.parts[static_cast<std::size_t>(old.part)].bench_test;
    std::vector<instruments::Display> displays;
    const auto add = [&](instruments::Quantity quantity, double value) {
        instruments::Display display;
        if (value < kOpen)
            instruments::show(display, quantity, value);
        else
            instruments::show_overload(display, quantity);
        displays.push_back(display);
    };
    for (const int element : test.elements)
        add(quantity_by_itself(site.model, element), old.value[displays.size()]);
    for (std::size_t i = 0; i < test.pairs.size(); ++i)
        add(instruments::Quantity::ohms, old.value[displays.size()]);
    return displays;
}

std::string tested_in_words(const Site& site, int index, const std::vector<int>& bands,
                            const std::vector<instruments::Display>& values) {
    const faults::Part& part = site.catalogue.parts[static_cast<std::size_t>(index)];
    const std::size_t looks = part.look.sights.size();
    std::string words;
    const auto add = [&](const std::string& more) { words += (words.empty() ? "" : "; ") + more; };
    for (std::size_t i = 0; i < bands.size(); ++i) {
        const faults::Sight& sight = i < looks ? part.look.sights[i] : part.bench_test.sights[i - looks];
        add(sight.bands[static_cast<std::size_t>(bands[i])].words);
    }
    const auto& elements = part.bench_test.elements;
    for (std::size_t i = 0; i < values.size(); ++i) {
        std::string name;
        if (i < elements.size()) {
            name = site.model.wiring.netlist.element_names[static_cast<std::size_t>(elements[i])];
        } else {
            const faults::NodePair& pair = part.bench_test.pairs[i - elements.size()];
            name = point_name(site.model, pair.a) + " to " + point_name(site.model, pair.b);
        }
        add(name + " " + instruments::text(values[i]));
    }
    return words;
}

} // namespace lightoff::bench
