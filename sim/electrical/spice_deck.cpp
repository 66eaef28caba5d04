// SPDX-License-Identifier: MIT
#include "electrical/spice_deck.hpp"
#include "units/constants.hpp"
#include "units/convert.hpp"
#include <charconv>
#include <string>

namespace lightoff::electrical {
namespace {

constexpr double kOmega = 2.0 * units::pi * units::line_frequency_hz;
constexpr double kNever = 1e18; ///< ohms of a branch that carries nothing

constexpr std::size_t at(int i) {
    return static_cast<std::size_t>(i);
}

std::string number(double x) {
    std::array<char, 32> text{}; // shortest form that reads back as the same bits, in any locale
    const auto end =
        std::to_chars(text.data(), text.data() + text.size(), x, std::chars_format::scientific).ptr;
    return {text.data(), end};
}

std::string node(int i) {
    return i == kEarth ? "0" : "n" + std::to_string(i);
}

class DeckWriter {
public:
    DeckWriter(const Netlist& netlist, const OperatingPoint& point, Analysis analysis)
        : net_(netlist), point_(point), ac_(analysis == Analysis::ac) {}

    std::string write() {
        line("* wiring as " + std::string(ac_ ? "60 Hz phasors" : "mean values"));
        for (int i = 1; i < net_.node_count(); ++i)
            stray(i);
        for (int i = 0; i < net_.element_count(); ++i)
            element(i);
        if (ac_)
            for (std::size_t i = 0; i < net_.cores.size(); ++i)
                core(static_cast<int>(i));
        for (int i = 0; i < kMaxBridges; ++i) {
            const Bridge& b = point_.condition.bridges[at(i)];
            if (b.a != b.b)
                resistor("bridge" + std::to_string(i), node(b.a), node(b.b), static_cast<double>(b.ohm));
        }
        for (int i = 0; i < kMaxAttachments; ++i)
            attachment(i);
        control();
        return deck_;
    }

private:
    void line(const std::string& text) { deck_ += text + "\n"; }
    void resistor(const std::string& id, const std::string& a, const std::string& b, double ohm) {
        line("R" + id + " " + a + " " + b + " " + number(ohm));
    }
    void inductor(const std::string& id, const std::string& a, const std::string& b, double reactance_ohm) {
        line("L" + id + " " + a + " " + b + " " + number(reactance_ohm / kOmega));
    }
    void capacitor(const std::string& id, const std::string& a, const std::string& b, double farad) {
        line("C" + id + " " + a + " " + b + " " + number(farad));
    }
    /// EMF with its plus at a.
    void emf(const std::string& id, const std::string& a, const std::string& b, double dc_v, double ac_v,
             double ac_im_v) {
        if (!ac_) {
            line("V" + id + " " + a + " " + b + " DC " + number(dc_v));
            return;
        }
        const std::string middle = id + "_q"; // real and imaginary part in series
        line("V" + id + "r " + a + " " + middle + " DC 0 AC " + number(ac_v) + " 0");
        line("V" + id + "i " + middle + " " + b + " DC 0 AC " + number(ac_im_v) + " 90");
    }

    void stray(int i) {
        const std::string id = "stray" + std::to_string(i);
        resistor(id, node(i), "0", net_.strays[at(i)].ohm);
        if (ac_ && net_.strays[at(i)].farad > 0.0)
            capacitor(id, node(i), "0", net_.strays[at(i)].farad);
    }

    void attachment(int i) {
        const Attachment& a = point_.inputs.attachments[at(i)];
        if (a.a == a.b)
            return;
        const std::string id = "att" + std::to_string(i);
        resistor(id, node(a.a), id + "_m", a.ohm);
        emf(id, id + "_m", node(a.b), a.dc_v, a.ac_v, 0.0);
    }

    /// R and L in series from a to b (L only for AC).
    void impedance(const std::string& id, const std::string& a, const std::string& b, double ohm,
                   double reactance_ohm) {
        if (!ac_ || reactance_ohm == 0.0) {
            resistor(id, a, b, ohm);
            return;
        }
        resistor(id, a, id + "_l", ohm);
        inductor(id, id + "_l", b, reactance_ohm);
    }

    void element(int i) {
        const Element& e = net_.elements[at(i)];
        const std::string id = "e" + std::to_string(i);
        const std::string a = node(e.a);
        const std::string b = node(e.b);
        const double series = series_ohm(point_.condition, point_.inputs.parted, i);
        const double factor = static_cast<double>(point_.condition.factor[at(i)]);
        double ohm = e.ohm * factor;
        if (e.thermal_group >= 0) { // resistance of copper, by whole steps of 2 K, 0.393 % per kelvin at 20 C
            const double above = point_.inputs.group_temperature_k[at(e.thermal_group)] - 293.15;
            double stepped = 0.0;
            while (above - stepped >= 1.0)
                stepped += 2.0;
            while (stepped - above > 1.0)
                stepped -= 2.0;
            ohm *= 1.0 + 0.00393 * stepped;
        }
        switch (e.kind) {
        case ElementKind::resistor:
        case ElementKind::fuse:
            resistor(id, a, b, ohm + series);
            break;
        case ElementKind::coil:
            impedance(id, a, b, ohm + series, e.reactance_ohm * factor);
            break;
        case ElementKind::contact: {
            const bool bit = (point_.inputs.switches >> static_cast<unsigned>(e.switch_bit) & 1U) != 0;
            resistor(id, a, b, (bit != e.normally_closed ? ohm : e.open_ohm) + series);
            break;
        }
        case ElementKind::capacitor: {
            const bool bad = series > 0.0;
            const std::string plate = bad ? id + "_p" : a;
            if (bad)
                resistor(id + "s", a, plate, series);
            resistor(id + "leak", plate, b, e.open_ohm);
            if (ac_ && e.farad * factor > 0.0)
                capacitor(id, plate, b, e.farad * factor);
            break;
        }
        case ElementKind::source: {
            const double k = point_.inputs.source_factor[at(e.source)];
            impedance(id, a, id + "_v", ohm + series, e.reactance_ohm * factor);
            emf(id, id + "_v", b, e.dc_v * k, e.ac_v * k, e.ac_quadrature_v * k);
            break;
        }
        case ElementKind::winding:
            if (!ac_) {
                resistor(id, a, b, ohm + series);
                break;
            }
            impedance(id, a, id + "_w", ohm + series, e.reactance_ohm);
            line("E" + id + " " + id + "_w " + id + "_i " + node(e.field) + " 0 " + number(e.turns));
            line("V" + id + " " + id + "_i " + b + " DC 0"); // meters the current
            line("F" + id + " 0 " + node(e.field) + " V" + id + " " + number(e.turns));
            break;
        case ElementKind::igniter:
            resistor(id, a, b, point_.ports.igniter_ohm[at(e.port)] * factor + series);
            break;
        case ElementKind::flame:
            if (!ac_)
                line("I" + id + " " + a + " " + b + " DC " + number(point_.flame_dc_a[at(e.port)]));
            else if (point_.flame_siemens[at(e.port)] > 0.0)
                resistor(id, a, b, 1.0 / point_.flame_siemens[at(e.port)]);
            break;
        }
    }

    void core(int i) {
        const Core& c = net_.cores[at(i)];
        const std::string id = "k" + std::to_string(i);
        const std::string m = node(c.field_m);
        resistor(id + "fem", m, "0", c.iron_loss_ohm);
        if (c.motor < 0) {
            inductor(id + "mag", m, "0", c.magnetising_ohm);
            return;
        }
        resistor(id + "fea", node(c.field_a), "0", c.iron_loss_ohm);
        const MotorCore& motor = net_.motors[at(c.motor)];
        const double slip = 1.0 - point_.ports.rotor_rad_s[at(c.motor)] / motor.synchronous_rad_s;
        revolving_fields(id, m, node(c.field_a), motor, slip);
    }

    /// E+- = (Em -+ j Ea)/2 drive the rotor circuits at slips s and 2 - s; Mm = (M+ + M-)/2 and
    /// Ma = j (M+ - M-)/2 load the axes. An inductor of 1 ohm fed with a current gives j times it.
    void revolving_fields(const std::string& id, const std::string& m, const std::string& a,
                          const MotorCore& motor, double slip) {
        line("G" + id + "ja 0 " + id + "_ja " + a + " 0 1");
        inductor(id + "ja", id + "_ja", "0", 1.0);
        field(id + "f", m, id + "_ja", -0.5, motor, slip);
        field(id + "b", m, id + "_ja", 0.5, motor, 2.0 - slip);
        line("F" + id + "m1 " + m + " 0 V" + id + "f 0.5");
        line("F" + id + "m2 " + m + " 0 V" + id + "b 0.5");
        line("F" + id + "j1 0 " + id + "_jm V" + id + "f 0.5");
        line("F" + id + "j2 0 " + id + "_jm V" + id + "b -0.5");
        inductor(id + "jm", id + "_jm", "0", 1.0);
        line("G" + id + "a " + a + " 0 " + id + "_jm 0 1");
    }

    void field(const std::string& id, const std::string& m, const std::string& ja, double share,
               const MotorCore& motor, double slip) {
        line("E" + id + "m " + id + "_e " + id + "_h " + m + " 0 0.5");
        line("E" + id + "a " + id + "_h 0 " + ja + " 0 " + number(share));
        line("V" + id + " " + id + "_e " + id + "_r DC 0");
        inductor(id + "x", id + "_r", "0", 0.5 * motor.magnetising_ohm);
        resistor(id + "r", id + "_r", id + "_s", slip == 0.0 ? kNever : 0.5 * motor.rotor_ohm / slip);
        inductor(id + "s", id + "_s", "0", 0.5 * motor.rotor_reactance_ohm);
    }

    void control() {
        // noopac: no operating point before the AC analysis (the circuit is linear, and inductors
        // would short the EMFs at DC). Tolerances matter for the DC solution only.
        line(".options noopac gmin=1e-18 reltol=1e-9 abstol=1e-18 vntol=1e-12");
        line(".control");
        line("set numdgt=12");
        line(ac_ ? "ac lin 1 60 60" : "op");
        for (int i = 1; i < net_.node_count(); ++i)
            line("print v(" + node(i) + ")");
        line("quit 0");
        line(".endc");
        line(".end");
    }

    const Netlist& net_;
    const OperatingPoint& point_;
    bool ac_;
    std::string deck_;
};

} // namespace

std::string spice_deck(const Netlist& netlist, const OperatingPoint& point, Analysis analysis) {
    return DeckWriter(netlist, point, analysis).write();
}

} // namespace lightoff::electrical
