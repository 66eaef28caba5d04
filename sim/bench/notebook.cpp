// SPDX-License-Identifier: MIT
#include "bench/notebook.hpp"

#include "bench/access.hpp"
#include "units/fields.hpp"

#include <cmath>

namespace lightoff::bench {
namespace {

using instruments::Bag;
using instruments::Display;
using instruments::Instrument;
using instruments::NamedDisplay;
using instruments::Spot;

/// A number that drifts gives readings no faster than this by itself ...
constexpr std::uint64_t kBetweenTicks = 60 * 20;
/// ... one that has jumped by more than this part of itself, and than so many times its accuracy, does at
/// once.
constexpr double kDrifts = 0.1;
constexpr double kWavers = 3.0;

bool has_jumped(const Display& before, const Display& now) {
    const instruments::Value was = instruments::value_of(before);
    const instruments::Value is = instruments::value_of(now);
    if (!was.known || !is.known)
        return was.known != is.known;
    return std::abs(is.value - was.value) > kDrifts * std::abs(was.value) + kWavers * was.half_width;
}

std::string element_name(const Site& site, int element) {
    return element < 0 ? "nothing"
                       : site.model.wiring.netlist.element_names[static_cast<std::size_t>(element)];
}

/// How an instrument is set and placed, as one number.
std::uint64_t setting_of(const Bag& bag, Instrument instrument) {
    switch (instrument) {
    case Instrument::multimeter:
        return units::hash_fields(bag.multimeter.setting);
    case Instrument::clamp:
        return units::hash_fields(bag.clamp.setting);
    case Instrument::wattmeter:
        return units::hash_fields(bag.wattmeter.setting);
    case Instrument::tachometer:
        return units::hash_fields(bag.tachometer.setting);
    case Instrument::manometer:
        return units::hash_fields(bag.manometer.setting);
    case Instrument::thermometer:
        return units::hash_fields(bag.thermometer.setting);
    case Instrument::analyser:
        return units::hash_fields(bag.analyser.setting);
    case Instrument::gas_detector:
        return units::hash_fields(bag.gas_detector.setting);
    case Instrument::leak_solution:
        return units::hash_fields(bag.leak_solution.setting);
    case Instrument::voltage_tester:
        return units::hash_fields(bag.voltage_tester.setting);
    case Instrument::dial_watch:
        return units::hash_fields(bag.dial_watch.setting);
    case Instrument::co_alarm:
        return 0;
    }
    return 0;
}

struct Places {
    int a = -1;
    int b = -1;
};

Places places_of(const Bag& bag, const NamedDisplay& window) {
    const auto spot = [](Spot s) { return static_cast<int>(s); };
    switch (window.instrument) {
    case Instrument::multimeter:
        return {bag.multimeter.setting.red, bag.multimeter.setting.black};
    case Instrument::clamp:
        return {bag.clamp.setting.element, -1};
    case Instrument::manometer:
        return {spot(bag.manometer.setting.plus), spot(bag.manometer.setting.minus)};
    case Instrument::thermometer:
        if (window.display == &bag.thermometer.t1)
            return {spot(bag.thermometer.setting.probe_1), -1};
        if (window.display == &bag.thermometer.t2)
            return {spot(bag.thermometer.setting.probe_2), -1};
        return {spot(bag.thermometer.setting.probe_1), spot(bag.thermometer.setting.probe_2)};
    case Instrument::analyser:
        return {spot(bag.analyser.setting.probe), -1};
    case Instrument::gas_detector:
        return {spot(bag.gas_detector.setting.tip), -1};
    case Instrument::leak_solution:
        return {spot(bag.leak_solution.setting.joint), -1};
    case Instrument::wattmeter:
    case Instrument::tachometer:
    case Instrument::voltage_tester:
    case Instrument::dial_watch:
    case Instrument::co_alarm:
        break;
    }
    return {};
}

/// Windows that always move, follow from another one or are connected to nothing: read only when kept.
bool only_when_kept(const Bag& bag, const NamedDisplay& window) {
    const auto is = [&](const Display& display) { return window.display == &display; };
    switch (window.instrument) {
    case Instrument::multimeter:
        return bag.multimeter.setting.red == bag.multimeter.setting.black;
    case Instrument::manometer:
        return bag.manometer.setting.plus == bag.manometer.setting.minus;
    case Instrument::analyser:
        return !is(bag.analyser.oxygen) && !is(bag.analyser.carbon_monoxide) && !is(bag.analyser.stack);
    default:
        return is(bag.dial_watch.dial) || is(bag.gas_detector.ticking);
    }
}

} // namespace

std::string where_is_it(const Site& site, const Bag& bag, const NamedDisplay& window) {
    const Places at = places_of(bag, window);
    const auto title = [](int spot) {
        return std::string(instruments::spot_row(static_cast<Spot>(spot)).title);
    };
    switch (window.instrument) {
    case Instrument::multimeter:
        return std::string(instruments::function_row(bag.multimeter.setting.function).title) + ", red on " +
               point_name(site.model, at.a) + ", black on " + point_name(site.model, at.b);
    case Instrument::clamp:
        return "round " + element_name(site, at.a);
    case Instrument::wattmeter:
        return "in the furnace's supply";
    case Instrument::tachometer:
        return title(static_cast<int>(bag.tachometer.setting.target));
    case Instrument::manometer:
        return title(at.a) + " against " + title(at.b);
    case Instrument::thermometer:
        return at.b < 0 ? title(at.a) : title(at.a) + " less " + title(at.b);
    case Instrument::analyser:
    case Instrument::gas_detector:
    case Instrument::leak_solution:
        return title(at.a);
    case Instrument::voltage_tester:
        return point_name(site.model, bag.voltage_tester.setting.node);
    case Instrument::dial_watch:
        return "at the gas meter";
    case Instrument::co_alarm:
        return "where the furnace stands";
    }
    return {};
}

void Notebook::take(const World& world, std::size_t window, const NamedDisplay& shown, Taken taken) {
    Reading reading;
    reading.tick = world.tick;
    reading.taken = taken;
    reading.window = static_cast<int>(window);
    reading.display = *shown.display;
    reading.where = where_is_it(*site_, world.bag, shown);
    const Places places = places_of(world.bag, shown);
    reading.place_a = places.a;
    reading.place_b = places.b;
    windows_[window].last = static_cast<int>(readings_.size());
    readings_.push_back(std::move(reading));
}

void Notebook::observe_window(const World& world, std::size_t window, const NamedDisplay& shown) {
    const Display& display = *shown.display;
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
    take(world, window, shown, Taken::settled);
}

void Notebook::take_old(const World& world, const OldPart& old) {
    const faults::Part& part = site_->catalogue.parts[static_cast<std::size_t>(old.part)];
    const std::size_t sights = part.look.sights.size() + part.bench_test.sights.size();
    Reading reading;
    reading.tick = world.tick;
    reading.taken = Taken::old_part;
    reading.part = old.part;
    reading.bands.assign(old.band.begin(), old.band.begin() + static_cast<std::ptrdiff_t>(sights));
    reading.values = measured(*site_, old);
    reading.where = part.title + ", the old one";
    readings_.push_back(std::move(reading));
}

void Notebook::observe(const World& world) {
    const auto displays = instruments::displays(world.bag);
    const bool just_done = world.hands.last_tick + 1 == world.tick;
    for (std::size_t i = 0; i < displays.size(); ++i) {
        if (!displays[i].display->has(instruments::kOn) || only_when_kept(world.bag, displays[i]))
            continue;
        const std::uint64_t setting = setting_of(world.bag, displays[i].instrument);
        if (setting != windows_[i].setting)
            windows_[i] = {setting, -1};
        observe_window(world, i, displays[i]);
    }
    if (!just_done)
        return;
    const Action& done = world.hands.last;
    if (done.verb == Verb::keep) {
        const auto window = static_cast<std::size_t>(done.value);
        take(world, window, displays[window], Taken::kept);
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
    if (done.verb == Verb::test_old)
        take_old(world, *find_old(world.old_parts, done.value));
}

} // namespace lightoff::bench
