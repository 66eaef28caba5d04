// SPDX-License-Identifier: MIT
#include "bench/notebook.hpp"

#include "bench/access.hpp"
#include "units/fields.hpp"

#include <cmath>

namespace lightoff::bench {
namespace {

using instruments::Bag;
using instruments::Display;
using instruments::NamedDisplay;
using instruments::Spot;

/// A number that drifts gives readings no faster than this by itself ...
constexpr std::uint64_t kBetweenTicks = 200;
/// ... one that has jumped by more than this part of itself does at once.
constexpr double kDrifts = 0.1;

bool has_jumped(const Display& before, const Display& now) {
    const instruments::Value was = instruments::value_of(before);
    const instruments::Value is = instruments::value_of(now);
    if (!was.known || !is.known)
        return was.known != is.known;
    return std::abs(is.value - was.value) > kDrifts * std::abs(was.value) + was.half_width;
}

std::string title(Spot spot) {
    return std::string(instruments::spot_row(spot).title);
}

std::string element_name(const Site& site, int element) {
    return element < 0 ? "nothing"
                       : site.model.wiring.netlist.element_names[static_cast<std::size_t>(element)];
}

bool starts_with(std::string_view text, std::string_view with) {
    return text.substr(0, with.size()) == with;
}

/// How the instrument of a window is set and placed, as one number.
std::uint64_t setting_of(const Bag& bag, std::string_view name) {
    if (starts_with(name, "multimeter"))
        return units::hash_fields(bag.multimeter.setting);
    if (starts_with(name, "clamp"))
        return units::hash_fields(bag.clamp.setting);
    if (starts_with(name, "wattmeter"))
        return units::hash_fields(bag.wattmeter.setting);
    if (starts_with(name, "tachometer"))
        return units::hash_fields(bag.tachometer.setting);
    if (starts_with(name, "manometer"))
        return units::hash_fields(bag.manometer.setting);
    if (starts_with(name, "thermometer"))
        return units::hash_fields(bag.thermometer.setting);
    if (starts_with(name, "analyser"))
        return units::hash_fields(bag.analyser.setting);
    if (starts_with(name, "gas detector"))
        return units::hash_fields(bag.gas_detector.setting);
    if (starts_with(name, "leak"))
        return units::hash_fields(bag.leak_solution.setting);
    if (starts_with(name, "voltage tester"))
        return units::hash_fields(bag.voltage_tester.setting);
    if (starts_with(name, "gas meter") || starts_with(name, "stopwatch"))
        return units::hash_fields(bag.dial_watch.setting);
    return 0;
}

struct Places {
    int a = -1;
    int b = -1;
};

Places places_of(const Bag& bag, std::string_view name) {
    const auto spot = [](Spot s) { return static_cast<int>(s); };
    if (starts_with(name, "multimeter"))
        return {bag.multimeter.setting.red, bag.multimeter.setting.black};
    if (starts_with(name, "clamp"))
        return {bag.clamp.setting.element, -1};
    if (starts_with(name, "manometer"))
        return {spot(bag.manometer.setting.plus), spot(bag.manometer.setting.minus)};
    if (name == "thermometer T2")
        return {spot(bag.thermometer.setting.probe_2), -1};
    if (name == "thermometer T1")
        return {spot(bag.thermometer.setting.probe_1), -1};
    if (starts_with(name, "thermometer"))
        return {spot(bag.thermometer.setting.probe_1), spot(bag.thermometer.setting.probe_2)};
    if (starts_with(name, "analyser"))
        return {spot(bag.analyser.setting.probe), -1};
    if (starts_with(name, "gas detector"))
        return {spot(bag.gas_detector.setting.tip), -1};
    if (starts_with(name, "leak"))
        return {spot(bag.leak_solution.setting.joint), -1};
    return {};
}

/// Windows that always move or follow from another one: read only when kept.
bool only_when_kept(std::string_view name) {
    return starts_with(name, "gas meter") || starts_with(name, "gas detector ticks");
}

} // namespace

std::string where_is_it(const Site& site, const World& world, std::size_t window) {
    const Bag& bag = world.bag;
    const std::string_view name = instruments::displays(bag)[window].name;
    if (starts_with(name, "multimeter")) {
        const auto& meter = bag.multimeter.setting;
        return std::string(instruments::function_row(meter.function).title) + ", red on " +
               point_name(site.model, meter.red) + ", black on " + point_name(site.model, meter.black);
    }
    if (starts_with(name, "clamp"))
        return "round " + element_name(site, bag.clamp.setting.element);
    if (starts_with(name, "wattmeter"))
        return "in the furnace's supply";
    if (starts_with(name, "tachometer"))
        return title(bag.tachometer.setting.target);
    if (starts_with(name, "manometer"))
        return title(bag.manometer.setting.plus) + " against " + title(bag.manometer.setting.minus);
    if (name == "thermometer T1")
        return title(bag.thermometer.setting.probe_1);
    if (name == "thermometer T2")
        return title(bag.thermometer.setting.probe_2);
    if (starts_with(name, "thermometer"))
        return title(bag.thermometer.setting.probe_1) + " less " + title(bag.thermometer.setting.probe_2);
    if (starts_with(name, "analyser"))
        return title(bag.analyser.setting.probe);
    if (starts_with(name, "gas detector"))
        return title(bag.gas_detector.setting.tip);
    if (starts_with(name, "leak"))
        return title(bag.leak_solution.setting.joint);
    if (starts_with(name, "voltage tester"))
        return point_name(site.model, bag.voltage_tester.setting.node);
    if (starts_with(name, "gas meter") || starts_with(name, "stopwatch"))
        return "at the gas meter";
    return "where the furnace stands";
}

void Notebook::take(const World& world, std::size_t window, const Display& display, Taken taken) {
    Reading reading;
    reading.tick = world.tick;
    reading.taken = taken;
    reading.window = static_cast<int>(window);
    reading.display = display;
    reading.where = where_is_it(*site_, world, window);
    const Places places = places_of(world.bag, instruments::displays(world.bag)[window].name);
    reading.place_a = places.a;
    reading.place_b = places.b;
    windows_[window].last = static_cast<int>(readings_.size());
    readings_.push_back(std::move(reading));
}

void Notebook::observe_window(const World& world, std::size_t window, const Display& display) {
    if (!display.has(instruments::kOn) || display.ticks_settled < instruments::kSettledTicks)
        return;
    const int last = windows_[window].last;
    if (last >= 0) {
        const Reading& before = readings_[static_cast<std::size_t>(last)];
        const bool same_number = before.display.anchor == display.anchor &&
                                 before.display.anchor_range == display.anchor_range &&
                                 before.display.flags == display.flags;
        const bool drifts = world.tick - before.tick < kBetweenTicks && !has_jumped(before.display, display);
        if (same_number || drifts)
            return;
    }
    take(world, window, display, Taken::settled);
}

void Notebook::observe(const World& world) {
    const std::vector<NamedDisplay> displays = instruments::displays(world.bag);
    windows_.resize(displays.size());
    const bool just_done = world.hands.last_tick + 1 == world.tick;
    for (std::size_t i = 0; i < displays.size(); ++i) {
        if (!displays[i].display->has(instruments::kOn) || only_when_kept(displays[i].name))
            continue;
        const std::uint64_t setting = setting_of(world.bag, displays[i].name);
        if (setting != windows_[i].setting)
            windows_[i] = {setting, -1};
        observe_window(world, i, *displays[i].display);
    }
    if (!just_done)
        return;
    const Action& done = world.hands.last;
    if (done.verb == Verb::keep) {
        const auto window = static_cast<std::size_t>(done.value);
        take(world, window, *displays[window].display, Taken::kept);
    }
    if (done.verb == Verb::look) {
        const faults::Part& part = site_->catalogue.parts[static_cast<std::size_t>(done.value)];
        Reading reading;
        reading.tick = world.tick;
        reading.taken = Taken::looked;
        reading.part = done.value;
        reading.bands = faults::describe(part.look, world.condition);
        reading.where = part.title;
        readings_.push_back(std::move(reading));
    }
}

} // namespace lightoff::bench
