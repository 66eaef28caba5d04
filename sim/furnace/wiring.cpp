// SPDX-License-Identifier: MIT
#include "furnace/wiring.hpp"

#include "electrical/conductor.hpp"
#include "electrical/netlist_builder.hpp"
#include "units/constants.hpp"

#include <array>
#include <cmath>
#include <utility>

namespace lightoff::furnace {
namespace {

using electrical::Axis;
using electrical::NetlistBuilder;
using electrical::Rest;

constexpr std::array<std::pair<std::string_view, Driver>, kDriverCount> kDrivers{
    {{"breaker", Driver::breaker},
     {"disconnect", Driver::disconnect},
     {"door_switch", Driver::door_switch},
     {"thermostat_heat", Driver::thermostat_heat},
     {"thermostat_fan", Driver::thermostat_fan},
     {"limit", Driver::limit},
     {"rollout", Driver::rollout},
     {"pressure_switch", Driver::pressure_switch},
     {"blower_overload", Driver::blower_overload},
     {"inducer_overload", Driver::inducer_overload},
     {"board", Driver::board},
     {"relay", Driver::relay}}};

constexpr std::array<std::string_view, 3> kThermalGroups{"blower_motor", "inducer_motor", "transformer"};

std::string at(std::string_view list, std::size_t index, std::string_view key = "") {
    std::string pointer = "/" + std::string(list) + "/" + std::to_string(index);
    if (!key.empty())
        pointer += "/" + std::string(key);
    return pointer;
}

/// Builds a Wiring, step by step; every step turns the builder's complaint into one that says where.
class WiringBuilder {
public:
    WiringBuilder(const WiringDescription& description, const control::Board& board)
        : description_(description), board_(board) {
        stray_ = {description.stray_farad, description.stray_ohm};
        wiring_.aliases["earth"] = electrical::kEarth;
    }

    Wiring build() {
        add_nodes();
        add_terminals();
        add_switches();
        add_wires();
        add_cables();
        add_cores();
        add_parts();
        bind_relays();
        bind_senses();
        wiring_.tick_senses = netlist_.sense_count();
        bind_losses();
        wiring_.netlist = netlist_.build();
        guarded("/terminals", [&] { electrical::require_no_islands(wiring_.netlist); });
        bind_ports();
        return std::move(wiring_);
    }

private:
    template <class Make>
    auto guarded(const std::string& pointer, Make&& make) -> decltype(make()) {
        try {
            return make();
        } catch (const DescriptionError&) {
            throw;
        } catch (const std::invalid_argument& error) {
            throw DescriptionError(pointer, error.what());
        }
    }

    int place(const std::string& name, std::string_view suffix, const std::string& pointer) const {
        if (const auto it = wiring_.aliases.find(name + std::string(suffix)); it != wiring_.aliases.end())
            return it->second;
        if (const auto it = wiring_.aliases.find(name); it != wiring_.aliases.end())
            return it->second;
        throw DescriptionError(pointer, "there is no node or terminal \"" + name +
                                            "\"; declare it in \"nodes\" or \"terminals\"");
    }

    void add_nodes() {
        for (std::size_t i = 0; i < description_.nodes.size(); ++i) {
            const std::string& name = description_.nodes[i];
            wiring_.aliases[name] = guarded(at("nodes", i), [&] { return netlist_.node(name, stray_); });
        }
    }

    void add_terminals() {
        for (std::size_t i = 0; i < description_.terminals.size(); ++i) {
            const TerminalDescription& t = description_.terminals[i];
            const std::string where = "/terminals/" + t.name;
            const int pin = t.pin.empty()
                                ? guarded(where, [&] { return netlist_.node(t.name + ".pin", stray_); })
                                : place(t.pin, "", where + "/pin");
            const int lug = guarded(where, [&] { return netlist_.node(t.name + ".lug", stray_); });
            wiring_.aliases[t.name + ".pin"] = pin;
            wiring_.aliases[t.name + ".lug"] = lug;
            wiring_.aliases.emplace(t.name, pin);
            const int joint = guarded(where, [&] {
                return netlist_.resistor(t.name + ".joint", lug, pin, description_.joint_ohm);
            });
            wiring_.terminals.push_back({t.name, pin, lug, joint});
        }
    }

    void add_switches() {
        for (const SwitchDescription& s : description_.switches) {
            const std::string where = "/switches/" + s.name;
            const int bit = guarded(where, [&] { return netlist_.switch_bit(s.name); });
            switch_bits_[s.name] = bit;
            SwitchBinding binding;
            binding.driver = driver_of(s, where);
            if (binding.driver == Driver::board)
                binding.index =
                    guarded(where + "/output", [&] { return static_cast<int>(board_.output(s.detail)); });
            wiring_.switches.push_back(binding);
        }
    }

    static Driver driver_of(const SwitchDescription& s, const std::string& where) {
        for (const auto& [name, driver] : kDrivers)
            if (name == s.driven_by)
                return driver;
        std::string known;
        for (const auto& [name, driver] : kDrivers)
            known += (known.empty() ? "" : ", ") + std::string(name);
        throw DescriptionError(where + "/driven_by", "found \"" + s.driven_by + "\"; allowed: " + known);
    }

    void add_wires() {
        for (std::size_t i = 0; i < description_.wires.size(); ++i) {
            const WireDescription& w = description_.wires[i];
            const int a = place(w.from, ".lug", at("wires", i, "from"));
            const int b = place(w.to, ".lug", at("wires", i, "to"));
            const double ohm = electrical::copper_ohm_per_m(w.awg) * w.length_m;
            elements_[w.name] = guarded(at("wires", i), [&] { return netlist_.resistor(w.name, a, b, ohm); });
            wiring_.wires.push_back(elements_[w.name]);
            wiring_.wire_colours.push_back(w.colour);
        }
    }

    /// Half of the capacitance at each end of the cable, so that a piece cut off keeps its share.
    void add_cables() {
        for (std::size_t i = 0; i < description_.cables.size(); ++i) {
            const CableDescription& cable = description_.cables[i];
            const double half = 0.5 * cable.farad_per_m * cable.length_m;
            for (std::size_t j = 0; j < cable.wires.size(); ++j)
                for (std::size_t k = j + 1; k < cable.wires.size(); ++k) {
                    const WireDescription& one =
                        wire(cable.wires[j], at("cables", i, "wires/" + std::to_string(j)));
                    const WireDescription& two =
                        wire(cable.wires[k], at("cables", i, "wires/" + std::to_string(k)));
                    const std::string name = cable.name + "." + cable.wires[j] + "~" + cable.wires[k];
                    couple(at("cables", i), name + ".near", one.from, two.from, half);
                    couple(at("cables", i), name + ".far", one.to, two.to, half);
                }
        }
    }

    void couple(const std::string& where, const std::string& name, const std::string& from,
                const std::string& to, double farad) {
        const int a = place(from, ".lug", where);
        const int b = place(to, ".lug", where);
        if (a != b)
            guarded(where, [&] { return netlist_.capacitor(name, a, b, farad); });
    }

    const WireDescription& wire(const std::string& name, const std::string& where) const {
        for (const WireDescription& w : description_.wires)
            if (w.name == name)
                return w;
        throw DescriptionError(where, "there is no wire \"" + name + "\"");
    }

    void add_cores() {
        for (const TransformerCoreDescription& c : description_.transformer_cores)
            cores_[c.name] = guarded("/transformer_cores/" + c.name, [&] {
                return netlist_.transformer_core(c.name, c.magnetising_ohm, c.iron_loss_ohm);
            });
        int motors = 0;
        for (const MotorCoreDescription& c : description_.motor_cores) {
            const electrical::MotorCore core{c.magnetising_ohm, c.rotor_ohm, c.rotor_reactance_ohm,
                                             c.iron_loss_ohm, c.synchronous_rad_s};
            const std::string where = "/motor_cores/" + c.name;
            cores_[c.name] = guarded(where, [&] { return netlist_.motor_core(c.name, core); });
            if (c.name == "blower_motor")
                wiring_.blower_motor = motors;
            else if (c.name == "inducer_motor")
                wiring_.inducer_motor = motors;
            else
                throw DescriptionError(where, "a motor is called blower_motor or inducer_motor");
            ++motors;
        }
    }

    int thermal_group(const PartDescription& part, const std::string& where) {
        if (part.thermal_group.empty())
            return -1;
        for (std::size_t i = 0; i < kThermalGroups.size(); ++i) {
            if (kThermalGroups[i] != part.thermal_group)
                continue;
            if (const auto it = groups_.find(part.thermal_group); it != groups_.end())
                return it->second;
            const int group = guarded(where, [&] { return netlist_.thermal_group(part.thermal_group); });
            wiring_.heat_of_group[static_cast<std::size_t>(group)] = static_cast<int>(i);
            return groups_[part.thermal_group] = group;
        }
        throw DescriptionError(where, "found \"" + part.thermal_group +
                                          "\"; allowed: blower_motor, inducer_motor, transformer");
    }

    void add_parts() {
        for (std::size_t i = 0; i < description_.parts.size(); ++i) {
            const PartDescription& part = description_.parts[i];
            const int a = place(part.from, ".pin", at("parts", i, "from"));
            const int b = place(part.to, ".pin", at("parts", i, "to"));
            const int group = thermal_group(part, at("parts", i, "thermal_group"));
            elements_[part.name] = guarded(at("parts", i), [&] { return add_part(part, a, b, group, i); });
            if (group >= 0)
                warm_parts_.push_back({i, group});
        }
    }

    int add_part(const PartDescription& p, int a, int b, int group, std::size_t i) {
        switch (p.kind) {
        case PartKind::resistor:
            return netlist_.resistor(p.name, a, b, p.ohm, group);
        case PartKind::fuse:
            return add_fuse(p, a, b);
        case PartKind::coil:
            return netlist_.coil(p.name, a, b, p.ohm, p.henry, group);
        case PartKind::capacitor:
            return netlist_.capacitor(p.name, a, b, p.farad);
        case PartKind::contact:
            return netlist_.contact(p.name, a, b,
                                    named(switch_bits_, p.switch_name, at("parts", i, "switch"), "switch"),
                                    p.closed_at_rest ? Rest::closed : Rest::open, p.ohm);
        case PartKind::source:
            return netlist_.source(p.name, a, b, {p.ac_v, 0.0}, p.dc_v, p.ohm);
        case PartKind::winding:
            return netlist_.winding(p.name, a, b, named(cores_, p.core, at("parts", i, "core"), "core"),
                                    p.start_axis ? Axis::start : Axis::main, p.turns, p.ohm, p.leakage_ohm,
                                    group);
        case PartKind::igniter:
            return netlist_.igniter(p.name, a, b);
        case PartKind::flame:
            return netlist_.flame(p.name, a, b);
        }
        return -1;
    }

    int add_fuse(const PartDescription& p, int a, int b) {
        const int element = netlist_.fuse(p.name, a, b, p.ohm);
        FuseBinding fuse;
        fuse.element = element;
        fuse.sense = netlist_.sense_current(p.name + " current", element);
        // The wire's minimum fusing current is 1.25 times what is printed on it.
        fuse.params.minimum_fusing_a = 1.25 * p.rating_a;
        fuse.tick_share = electrical::fuse_step_share(fuse.params, board_.tick_s);
        fuse.substep_share = electrical::fuse_step_share(fuse.params, 0.2 * board_.tick_s);
        wiring_.fuses.push_back(fuse);
        return element;
    }

    static int named(const std::map<std::string, int>& table, const std::string& name,
                     const std::string& where, const std::string& what) {
        if (const auto it = table.find(name); it != table.end())
            return it->second;
        throw DescriptionError(where, "there is no " + what + " \"" + name + "\"");
    }

    void bind_relays() {
        for (std::size_t i = 0; i < description_.parts.size(); ++i) {
            const PartDescription& p = description_.parts[i];
            if (p.kind != PartKind::coil || p.pull_in_v <= 0.0)
                continue;
            RelayBinding relay;
            relay.name = p.name;
            relay.params.pull_in_v = p.pull_in_v;
            relay.params.drop_out_v = p.drop_out_v;
            relay.params.travel_s = p.travel_s;
            relay.coil_sense = guarded(at("parts", i), [&] {
                return netlist_.sense_current(p.name + " current", elements_[p.name]);
            });
            const double reactance_ohm = 2.0 * units::pi * units::line_frequency_hz * p.henry;
            relay.coil_ohm = std::sqrt(p.ohm * p.ohm + reactance_ohm * reactance_ohm);
            wiring_.relays.push_back(std::move(relay));
        }
        for (const SwitchDescription& s : description_.switches) {
            if (s.driven_by != "relay")
                continue;
            const int bit = switch_bits_[s.name];
            const int relay = relay_of(s.detail, "/switches/" + s.name + "/coil");
            wiring_.switches[static_cast<std::size_t>(bit)].index = relay;
            wiring_.relays[static_cast<std::size_t>(relay)].switches |= std::uint64_t{1}
                                                                        << static_cast<unsigned>(bit);
        }
        for (std::size_t bit = 0; bit < wiring_.switches.size(); ++bit) {
            const SwitchBinding& s = wiring_.switches[bit];
            wiring_.switches_of[static_cast<std::size_t>(driven_bit(s.driver, s.index))] |= std::uint64_t{1}
                                                                                            << bit;
        }
        if (!description_.gas_valve_coil.empty())
            wiring_.gas_valve = relay_of(description_.gas_valve_coil, "/gas_valve_coil");
    }

    int relay_of(const std::string& coil, const std::string& where) const {
        for (std::size_t i = 0; i < wiring_.relays.size(); ++i)
            if (wiring_.relays[i].name == coil)
                return static_cast<int>(i);
        throw DescriptionError(where, "there is no coil with a pull-in voltage called \"" + coil + "\"");
    }

    void bind_senses() {
        wiring_.common = place(description_.common, ".pin", "/common");
        wiring_.board_supply = volts_to_common(board_.supply_terminal, "/board/supply/terminal");
        for (std::size_t i = 0; i < board_.input_terminals.size(); ++i)
            bind_board_input(i);
        if (!description_.thermostat_supply.empty())
            wiring_.thermostat_supply = volts_to_common(description_.thermostat_supply, "/thermostat_supply");
        if (!description_.call_wire.empty())
            wiring_.call_current = guarded("/call_wire", [&] {
                return netlist_.sense_current("call current",
                                              named(elements_, description_.call_wire, "/call_wire", "wire"));
            });
    }

    /// Senses that are looked at now and then stand behind those of every tick.
    void bind_losses() {
        for (const auto& [part, group] : warm_parts_) {
            const std::string& name = description_.parts[part].name;
            const int sense = guarded(
                at("parts", part), [&] { return netlist_.sense_current(name + " loss", elements_[name]); });
            wiring_.losses.push_back({sense, group});
        }
        for (const TransformerCoreDescription& c : description_.transformer_cores)
            if (c.iron_loss_ohm > 0.0)
                bind_iron(c);
    }

    void bind_board_input(std::size_t i) {
        if (board_.input_is_flame[i] != 0) {
            wiring_.flame_sense = guarded("/flame_current", [&] {
                return netlist_.sense_current(
                    "flame current", named(elements_, description_.flame_current, "/flame_current", "part"));
            });
            wiring_.board_inputs.push_back(kFlameInput);
        } else {
            wiring_.board_inputs.push_back(volts_to_common(
                board_.input_terminals[i], "/board/inputs/" + std::to_string(i) + "/terminal"));
        }
    }

    int volts_to_common(const std::string& terminal, const std::string& where) {
        const int node = place(terminal, ".pin", where);
        return guarded(
            where, [&] { return netlist_.sense_voltage("board sees " + terminal, node, wiring_.common); });
    }

    /// Iron loss from the volts across the first winding; leaves out that winding's own small drop.
    void bind_iron(const TransformerCoreDescription& core) {
        for (std::size_t i = 0; i < description_.parts.size(); ++i) {
            const PartDescription& p = description_.parts[i];
            if (p.kind != PartKind::winding || p.core != core.name)
                continue;
            const int sense = guarded(at("parts", i), [&] {
                return netlist_.sense_voltage(p.name + " volts", place(p.from, ".pin", ""),
                                              place(p.to, ".pin", ""));
            });
            wiring_.irons.push_back({sense, core.iron_loss_ohm * p.turns * p.turns});
            return;
        }
    }

    void bind_ports() {
        const electrical::Netlist& n = wiring_.netlist;
        for (int i = 0; i < n.port_count(); ++i) {
            const electrical::PortKind kind = n.ports[static_cast<std::size_t>(i)].kind;
            if (kind == electrical::PortKind::igniter)
                wiring_.igniter_port = i;
            if (kind == electrical::PortKind::flame)
                wiring_.flame_port = i;
        }
    }

    const WiringDescription& description_;
    const control::Board& board_;
    electrical::Stray stray_;
    NetlistBuilder netlist_;
    Wiring wiring_;
    std::map<std::string, int> switch_bits_;
    std::map<std::string, int> cores_;
    std::map<std::string, int> groups_;
    std::map<std::string, int> elements_;
    std::vector<std::pair<std::size_t, int>> warm_parts_; ///< part, thermal group
};

} // namespace

int Wiring::find_place(std::string_view name) const {
    const auto it = aliases.find(name);
    return it == aliases.end() ? -1 : it->second;
}

int Wiring::joint_of_terminal(std::string_view terminal) const {
    for (const Terminal& t : terminals)
        if (t.name == terminal)
            return t.joint;
    return -1;
}

Wiring build_wiring(const WiringDescription& description, const control::Board& board) {
    return WiringBuilder(description, board).build();
}

} // namespace lightoff::furnace
