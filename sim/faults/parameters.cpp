// SPDX-License-Identifier: MIT
#include "faults/parameters.hpp"

#include "furnace/condition_paths.hpp"
#include "units/fields.hpp"
#include "units/pinned_math.hpp"

#include <algorithm>
#include <array>
#include <stdexcept>
#include <string_view>
#include <type_traits>

namespace lightoff::faults {
namespace {

constexpr double kDetent = 0.006;     ///< of a slider's length, either side of healthy
constexpr double kNoShort_ohm = 1e9;  ///< a short of that many ohms is none
constexpr double kWidest = 1.5;       ///< a factor that no fault raises goes that far up
constexpr double kLeastFactor = 0.25; ///< and one that no fault lowers that far down

std::string spoken(std::string_view text) {
    std::string words(text);
    std::replace_if(
        words.begin(), words.end(), [](char c) { return c == '_' || c == '.'; }, ' ');
    return words;
}

bool ends_with_any(std::string_view text, std::initializer_list<std::string_view> ends) {
    return std::any_of(ends.begin(), ends.end(), [&](std::string_view end) { return text.ends_with(end); });
}

/// "gas.orifice_plugging[2]": 2; -1 without brackets.
int index_in(std::string_view path) {
    const std::size_t open = path.rfind('[');
    if (open == std::string_view::npos || !path.ends_with(']'))
        return -1;
    int index = 0;
    for (const char c : path.substr(open + 1, path.size() - open - 2))
        index = 10 * index + (c - '0');
    return index;
}

/// Room to spare in the Condition: burners and settings that this furnace does not have, and the three
/// numbers of a bridge, which the shorts of the catalogue speak for.
bool is_spare(const furnace::Model& model, std::string_view path) {
    if (path.starts_with("wiring.bridges"))
        return true;
    const int index = index_in(path);
    if (path.starts_with("gas.") || path.starts_with("combustion."))
        return index >= model.gas.burner_count;
    return path.starts_with("board.choice") && index >= static_cast<int>(model.board.settings.size());
}

std::string name_of_path(std::string_view path) {
    if (const std::size_t slash = path.find('/'); slash != std::string_view::npos) {
        const std::size_t last = path.rfind('/');
        return spoken(path.substr(slash + 1, last - slash - 1)) + ": " + spoken(path.substr(last + 1));
    }
    const int index = index_in(path);
    const std::string_view plain = path.substr(0, path.rfind('['));
    std::string name = spoken(plain.substr(plain.rfind('.') + 1));
    if (index < 0)
        return name;
    const bool burner = path.starts_with("gas.") || path.starts_with("combustion.");
    return name + (burner ? ", burner " : ", ") + std::to_string(index + 1);
}

std::vector<std::string> words_of(const furnace::Model& model, std::string_view path) {
    if (path.starts_with("board.choice")) {
        const control::Setting& setting = model.board.settings[static_cast<std::size_t>(index_in(path))];
        std::vector<std::string> words;
        for (std::size_t i = 0; i < setting.choice_count; ++i) {
            const std::uint32_t ticks = setting.choice_ticks[(setting.chosen + i) % setting.choice_count];
            words.push_back(std::to_string(static_cast<int>(model.board.tick_s * ticks + 0.5)) + " s");
        }
        return words;
    }
    if (ends_with_any(path, {"_fault"}))
        return {"works", "stuck open", "stuck closed"};
    if (ends_with_any(path, {"stuck", "_contact"}))
        return {"free", "stuck open", "stuck closed"};
    return {"no", "yes"};
}

/// Whether a part has an element or place of the wiring, given with its end ("rod.lead.joint").
bool has(const Part& part, std::string_view element) {
    return std::any_of(part.has.begin(), part.has.end(), [&](const std::string& of) {
        return element == of || (element.starts_with(of) && element[of.size()] == '.');
    });
}

bool restores(const Part& part, std::uint64_t field) {
    return std::any_of(part.services.begin(), part.services.end(), [&](const Service& service) {
        return std::binary_search(service.restores.begin(), service.restores.end(), field);
    });
}

/// Whose a number is: that of the fault that moves it, else that of the wiring's part, else whose service
/// puts it back, else just its room's.
std::string part_of(const Catalogue& catalogue, const Parameter& parameter, const Fault* fault) {
    if (fault != nullptr)
        return catalogue.parts[static_cast<std::size_t>(fault->part)].title;
    const std::string& path = parameter.path;
    if (const std::size_t slash = path.find('/'); slash != std::string::npos) {
        const std::string element = path.substr(slash + 1, path.rfind('/') - slash - 1);
        for (const Part& part : catalogue.parts)
            if (has(part, element))
                return part.title;
    }
    for (const Part& part : catalogue.parts)
        if (restores(part, parameter.field))
            return part.title;
    std::string room = path.substr(0, path.find_first_of("./"));
    room.front() = static_cast<char>(room.front() - 'a' + 'A');
    return room;
}

/// How far the faults of the catalogue move a number.
struct Reach {
    double low = 0.0, high = 0.0;
    bool any = false, logarithmic = false;
    const Fault* fault = nullptr; ///< the first of them

    void take(double value) {
        low = any ? std::min(low, value) : value;
        high = any ? std::max(high, value) : value;
        any = true;
    }
};

Reach reach_of(const Catalogue& catalogue, Parameter& parameter) {
    Reach reach;
    for (const Fault& fault : catalogue.faults)
        for (const Change& change : fault.changes) {
            if (change.field != parameter.field)
                continue;
            reach.take(change.least);
            reach.take(change.most);
            reach.logarithmic = reach.logarithmic || change.logarithmic;
            reach.fault = reach.fault == nullptr ? &fault : reach.fault;
            if (parameter.faults.empty() || parameter.faults.back() != fault.title)
                parameter.faults.push_back(fault.title);
        }
    return reach;
}

/// Where no fault goes: ranges by the kind of number (our choice, no source).
Reach usual_reach(const Parameter& p) {
    Reach reach;
    reach.any = true;
    if (p.unit == "ohm") {
        reach.low = 0.1;
        reach.high = 1e9;
        reach.logarithmic = true;
    } else if (p.unit == "m2") {
        reach.low = 1e-7;
        reach.high = 1e-3;
        reach.logarithmic = true;
    } else if (p.unit == "K") {
        reach.low = -30.0;
        reach.high = 30.0;
    } else if (p.unit == "Pa") {
        reach.low = -500.0;
        reach.high = 500.0;
    } else if (p.unit == "kg m") {
        reach.high = 1e-3;
    } else if (ends_with_any(p.path, {"factor"})) {
        reach.low = kLeastFactor * p.healthy;
        reach.high = 2.0 * p.healthy;
    } else {
        reach.high = std::max(1.0, p.healthy);
    }
    return reach;
}

void set_range(Parameter& p, Reach reach) {
    if (p.whole) {
        p.high = std::max(static_cast<double>(p.words.size()) - 1.0, reach.any ? reach.high : 1.0);
        return;
    }
    if (!reach.any)
        reach = usual_reach(p);
    p.logarithmic = reach.logarithmic && reach.low > 0.0;
    // Ohms in series begin a hundredth below what a fault does: enough to see where it begins to matter.
    const bool far_off = reach.low < reach.high && p.healthy > 4.0 * reach.high && !p.logarithmic;
    p.apart = (p.logarithmic && p.healthy <= 0.0) || far_off;
    if (p.apart) {
        p.low = far_off ? reach.high : reach.low / 100.0;
        p.high = far_off ? reach.low : reach.high;
        return;
    }
    p.low = std::min(p.healthy, reach.low);
    p.high = std::max(p.healthy, reach.high);
    if (!ends_with_any(p.path, {"factor", "factor]"}) && p.path.find("diameter_factor") == std::string::npos)
        return;
    if (p.low == p.healthy)
        p.low = std::max(kLeastFactor * p.healthy, p.healthy * p.healthy / p.high);
    if (p.high == p.healthy)
        p.high = std::min(kWidest * p.healthy, p.low > 0.0 ? p.healthy * p.healthy / p.low : kWidest);
}

Parameter short_between(const furnace::Model& model, const Catalogue& catalogue, int bridge) {
    const NodePair pair = catalogue.bridges[static_cast<std::size_t>(bridge)];
    const auto node = [&](int n) { return model.wiring.netlist.node_names[static_cast<std::size_t>(n)]; };
    Parameter p;
    p.bridge = bridge;
    p.unit = "ohm";
    p.name = "short from " + spoken(node(pair.a)) + " to " + spoken(node(pair.b));
    p.path = "short/" + node(pair.a) + "/" + node(pair.b);
    p.part = "Wiring";
    p.healthy = kNoShort_ohm;
    p.low = 1e6;
    p.high = 0.1;
    for (const Fault& fault : catalogue.faults)
        for (const BridgeChange& change : fault.bridges)
            if (change.bridge == bridge) {
                p.part = catalogue.parts[static_cast<std::size_t>(fault.part)].title;
                p.faults.push_back(fault.title);
                p.high = std::min({p.high, change.least_ohm, change.most_ohm});
            }
    p.logarithmic = p.apart = true;
    return p;
}

electrical::Bridge* find_bridge(const NodePair& pair, electrical::Condition& wiring) {
    for (electrical::Bridge& bridge : wiring.bridges)
        if (std::min(bridge.a, bridge.b) == pair.a && std::max(bridge.a, bridge.b) == pair.b)
            return &bridge;
    return nullptr;
}

} // namespace

double Parameter::at(double share) const {
    share = std::clamp(share, 0.0, 1.0);
    if (whole)
        return static_cast<double>(static_cast<int>(low + (high - low) * share + 0.5));
    const double home = share_of(healthy);
    if (share > home - kDetent && share < home + kDetent)
        return healthy;
    if (apart)
        share = (share - kDetent) / (1.0 - kDetent);
    if (share >= 1.0)
        return high;
    if (share <= 0.0)
        return low;
    return logarithmic ? low * units::pow(high / low, share) : low + (high - low) * share;
}

double Parameter::share_of(double value) const {
    if (apart && value == healthy)
        return 0.0;
    if (high == low)
        return 0.0;
    const bool beyond = logarithmic && value <= 0.0;
    const double share = logarithmic ? (beyond ? 0.0 : units::log(value / low) / units::log(high / low))
                                     : (value - low) / (high - low);
    const double inside = std::clamp(share, 0.0, 1.0);
    return apart ? kDetent + (1.0 - kDetent) * inside : inside;
}

std::vector<Parameter> parameters_of(const furnace::Model& model, const Catalogue& catalogue,
                                     const furnace::Condition& healthy) {
    const std::vector<furnace::ConditionPath> paths = furnace::condition_paths(model);
    std::vector<Parameter> all;
    std::uint64_t field = 0;
    units::for_each_value(healthy, [&](const auto& value) {
        const furnace::ConditionPath& path = paths[field];
        if (path.in_use && !is_spare(model, path.path)) {
            Parameter p;
            p.field = field;
            p.path = path.path;
            p.unit = path.unit;
            p.name = name_of_path(path.path);
            p.healthy = static_cast<double>(value);
            p.whole = !std::is_floating_point_v<std::remove_cvref_t<decltype(value)>>;
            if (p.whole)
                p.words = words_of(model, p.path);
            const Reach reach = reach_of(catalogue, p);
            set_range(p, reach);
            p.part = part_of(catalogue, p, reach.fault);
            all.push_back(std::move(p));
        }
        ++field;
    });
    for (std::size_t b = 0; b < catalogue.bridges.size(); ++b)
        all.push_back(short_between(model, catalogue, static_cast<int>(b)));
    return all;
}

double value_of(const Catalogue& catalogue, const Parameter& parameter, const furnace::Condition& condition) {
    if (parameter.bridge < 0)
        return furnace::condition_value(condition, parameter.field);
    electrical::Condition wiring = condition.wiring;
    const NodePair& pair = catalogue.bridges[static_cast<std::size_t>(parameter.bridge)];
    const electrical::Bridge* bridge = find_bridge(pair, wiring);
    return bridge == nullptr ? parameter.healthy : static_cast<double>(bridge->ohm);
}

void set(const Catalogue& catalogue, const Parameter& parameter, double value,
         furnace::Condition& condition) {
    if (parameter.bridge < 0) {
        furnace::set_condition_field(condition, parameter.field, value);
        return;
    }
    const NodePair& pair = catalogue.bridges[static_cast<std::size_t>(parameter.bridge)];
    electrical::Bridge* bridge = find_bridge(pair, condition.wiring);
    if (value >= parameter.healthy) {
        if (bridge != nullptr)
            *bridge = {};
        return;
    }
    if (bridge == nullptr) {
        const int free = free_bridge(condition.wiring);
        if (free < 0)
            throw std::invalid_argument("no more shorts at a time than there are now");
        bridge = &condition.wiring.bridges[static_cast<std::size_t>(free)];
    }
    *bridge = {static_cast<std::int16_t>(pair.a), static_cast<std::int16_t>(pair.b),
               static_cast<float>(value)};
}

} // namespace lightoff::faults
