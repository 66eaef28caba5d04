// SPDX-License-Identifier: MIT
#include "instruments/wattmeter.hpp"

#include "instruments/timing.hpp"

#include <algorithm>

namespace lightoff::instruments {
namespace {

constexpr double kLeastVa = 1.0; ///< below it a power factor says nothing: the window stays empty

void show_each(const Moment& now, Wattmeter& meter) {
    const auto put = [&](Display& display, Quantity quantity, double value) {
        show(display, quantity, with_error(quantity, value, calibration(now.seed, quantity)));
    };
    const WattmeterState& s = meter.state;
    put(meter.volts, Quantity::supply_volts, s.volts);
    put(meter.amps, Quantity::supply_amps, s.amps);
    put(meter.watts, Quantity::supply_watts, s.watts);
    const double volt_amperes = s.volts * s.amps;
    if (volt_amperes < kLeastVa) {
        blank(meter.power_factor);
        return;
    }
    const double factor = with_error(Quantity::power_factor, s.watts / volt_amperes,
                                     calibration(now.seed, Quantity::power_factor));
    show(meter.power_factor, Quantity::power_factor, std::clamp(factor, -1.0, 1.0));
}

} // namespace

WattmeterSetting at_furnace_supply(const furnace::Model& model) {
    const electrical::Netlist& net = model.wiring.netlist;
    WattmeterSetting setting;
    for (const furnace::Reading& reading : model.readings)
        if (reading.name == "furnace current")
            setting.element = reading.a;
    if (setting.element >= 0)
        setting.line = net.elements[static_cast<std::size_t>(setting.element)].b;
    for (const electrical::Element& element : net.elements)
        if (element.kind == electrical::ElementKind::source)
            setting.neutral = element.b;
    setting.on = 1;
    return setting;
}

void step(Moment& now, Wattmeter& meter) {
    WattmeterState& s = meter.state;
    if (meter.setting.on == 0 && s.seen.on == 0)
        return;
    for (Display* window : {&meter.volts, &meter.amps, &meter.watts, &meter.power_factor})
        age(*window);
    if (has_changed(s.seen, meter.setting))
        for (Display* window : {&meter.volts, &meter.amps, &meter.watts, &meter.power_factor})
            window->ticks_settled = 0;
    if (meter.setting.on == 0) {
        s = {0.0, 0.0, 0.0, s.seen};
        for (Display* window : {&meter.volts, &meter.amps, &meter.watts, &meter.power_factor})
            blank(*window);
        return;
    }
    if (!now.renews(kWattmeterTiming.update_ticks))
        return;
    const units::Complex volts = now.node_v(meter.setting.line) - now.node_v(meter.setting.neutral);
    const units::Complex amps =
        meter.setting.element < 0 ? units::Complex{} : now.element_a(meter.setting.element);
    const double share = kWattmeterTiming.share();
    s.volts += (units::abs(volts) - s.volts) * share;
    s.amps += (units::abs(amps) - s.amps) * share;
    s.watts += ((volts * units::conj(amps)).re - s.watts) * share;
    show_each(now, meter);
}

} // namespace lightoff::instruments
