// SPDX-License-Identifier: MIT
#include "electrical/fuse.hpp"
#include "electrical/relay.hpp"
#include "random_network.hpp"
#include "support/sample_wiring.hpp"
#include "units/fields.hpp"
#include <catch2/catch.hpp>
#include <cstring>

using namespace lightoff::electrical;
using namespace lightoff::test;

namespace {

bool same_bits(const AcVoltages& a, const AcVoltages& b) {
    return std::memcmp(&a, &b, sizeof a) == 0;
}

AcVoltages solve(Workspace& w, const Condition& condition, const NetworkInputs& inputs,
                 const PortInputs& ports) {
    w.set(condition, inputs);
    AcVoltages v;
    w.node_voltages(w.solve_ac(ports), v);
    return v;
}

PortInputs running(const Netlist& net) {
    PortInputs ports;
    for (std::size_t i = 0; i < net.motors.size(); ++i)
        ports.rotor_rad_s[i] = 0.9 * net.motors[i].synchronous_rad_s;
    ports.igniter_ohm.fill(60.0);
    ports.flame_forward_siemens.fill(1e-7);
    ports.flame_reverse_siemens.fill(1e-9);
    return ports;
}

template <class T>
std::size_t bytes_in_fields(const T& value) {
    std::size_t bytes = 0;
    lightoff::units::for_each_value(value, [&](const auto& x) { bytes += sizeof x; });
    return bytes;
}

} // namespace

TEST_CASE("a warm workspace gives the bits of a cold one") {
    Case c = RandomNetwork(7).make();
    Workspace warm(c.netlist);
    std::mt19937 random(3);
    for (int i = 0; i < 200; ++i) {
        const auto pick = random() % 7;
        const auto element = random() % static_cast<unsigned>(c.netlist.element_count());
        if (pick == 0)
            c.inputs.switches ^= std::uint64_t{1} << random() % 6;
        if (pick == 1)
            c.condition.series_ohm[element] = static_cast<float>(random() % 100);
        if (pick == 2)
            c.condition.bridges[3].b = static_cast<std::int16_t>(1 + random() % 10);
        if (pick == 3)
            c.inputs.attachments[2].a = static_cast<std::int32_t>(1 + random() % 10);
        if (pick == 4)
            c.inputs.group_temperature_k[0] = 280.0 + static_cast<double>(random() % 100);
        if (pick == 5)
            c.ports.rotor_rad_s[0] = static_cast<double>(random() % 130);
        if (pick == 6)
            set_element(c.inputs.parted, static_cast<int>(element), random() % 2 == 0);
        Workspace cold(c.netlist);
        REQUIRE(same_bits(solve(warm, c.condition, c.inputs, c.ports),
                          solve(cold, c.condition, c.inputs, c.ports)));
        if (random() % 2 == 0) // what is not asked for every time must not be left over from another time
            continue;
        DcVoltages warm_dc;
        DcVoltages cold_dc;
        warm.node_voltages(warm.solve_dc(c.ports), warm_dc);
        cold.node_voltages(cold.solve_dc(c.ports), cold_dc);
        REQUIRE(warm_dc == cold_dc);
    }
}

TEST_CASE("states of the wiring that come back, soon or late, give the bits that they gave") {
    constexpr int kStates = 80; // more than are kept
    std::vector<Case> states;
    std::vector<AcVoltages> ac(kStates);
    std::vector<DcVoltages> dc(kStates);
    std::mt19937 random(5);
    Case c = RandomNetwork(7).make();
    for (std::size_t i = 0; i < kStates; ++i) {
        const auto element = random() % static_cast<unsigned>(c.netlist.element_count());
        c.condition.series_ohm[element] = static_cast<float>(1 + random() % 100);
        c.inputs.attachments[i % 3].a = static_cast<std::int32_t>(1 + random() % 10);
        Workspace cold(c.netlist);
        ac[i] = solve(cold, c.condition, c.inputs, c.ports);
        cold.node_voltages(cold.solve_dc(c.ports), dc[i]);
        states.push_back(c);
    }
    Workspace warm(c.netlist);
    Workspace copy = warm;
    for (int turn = 0; turn < 2000; ++turn) {
        // Now among a few, now among all.
        const std::size_t i = turn / 100 % 2 == 0 ? random() % 10 : random() % kStates;
        Workspace& w = turn % 7 == 0 ? copy : warm;
        REQUIRE(same_bits(solve(w, states[i].condition, states[i].inputs, states[i].ports), ac[i]));
        if (turn == 700)
            copy = warm;
        if (random() % 2 == 0)
            continue;
        DcVoltages again;
        w.node_voltages(w.solve_dc(states[i].ports), again);
        REQUIRE(again == dc[i]);
    }
}

TEST_CASE("a parted element is as open as a cut one, and whole again when it is joined") {
    Case c = RandomNetwork(11).make();
    c.condition.series_ohm.fill(0.5F); // what is joined again must be as bad as it was before
    Workspace w(c.netlist);
    const AcVoltages whole = solve(w, c.condition, c.inputs, c.ports);
    const auto dc_of = [&](const Condition& condition, const NetworkInputs& inputs) {
        w.set(condition, inputs);
        DcVoltages v;
        w.node_voltages(w.solve_dc(c.ports), v);
        return v;
    };
    int moved = 0;
    for (int i = 0; i < c.netlist.element_count(); ++i) {
        INFO(c.netlist.element_names[static_cast<std::size_t>(i)]);
        Condition cut = c.condition;
        cut.series_ohm[static_cast<std::size_t>(i)] = kOpenOhm;
        NetworkInputs apart = c.inputs;
        set_element(apart.parted, i, true);
        const AcVoltages parted = solve(w, c.condition, apart, c.ports);
        CHECK(same_bits(parted, solve(w, cut, c.inputs, c.ports)));
        CHECK(dc_of(c.condition, apart) == dc_of(cut, c.inputs));
        moved += same_bits(parted, whole) ? 0 : 1;
        set_element(apart.parted, i, false);
        CHECK(same_bits(solve(w, c.condition, apart, c.ports), whole));
    }
    CHECK(moved > c.netlist.element_count() / 2);
}

TEST_CASE("senses and attachments read what the nodes say") {
    const Netlist net = SampleWiring().build();
    Workspace w(net);
    NetworkInputs in;
    in.switches = ~std::uint64_t{0} & ~(std::uint64_t{1} << static_cast<unsigned>(net.switch_bit("breaker")));
    for (const char* closed : {"door", "rollout", "limit"})
        in.switches &= ~(std::uint64_t{1} << static_cast<unsigned>(net.switch_bit(closed)));
    in.attachments[0] = {net.node("R"), net.node("rod tip"), 10e6, 0.0, 0.0};
    w.set({}, in);
    const PortInputs ports = running(net);
    const AcSolution ac = w.solve_ac(ports);
    const DcSolution dc = w.solve_dc(ports);
    AcVoltages v;
    DcVoltages u;
    w.node_voltages(ac, v);
    w.node_voltages(dc, u);
    for (int i = 0; i < net.sense_count(); ++i) {
        const Sense& s = net.senses[static_cast<std::size_t>(i)];
        const auto a = static_cast<std::size_t>(s.a);
        const auto b = static_cast<std::size_t>(s.b);
        const Complex all = s.element < 0 ? v[a] - v[b] : w.element_current(ac, v, s.element);
        const double mean = s.element < 0 ? u[a] - u[b] : w.element_current(dc, u, s.element);
        INFO(net.sense_names[static_cast<std::size_t>(i)]);
        CHECK(abs(w.ac_sense(ac, i) - all) < 1e-7);
        CHECK(std::abs(w.dc_sense(dc, i) - mean) < 1e-9);
    }
    CHECK(abs(w.ac_sense(ac, net.sense("R"))) > 24.0);
    CHECK(abs(w.ac_sense(ac, net.sense("gas valve"))) > 23.0);
    CHECK(w.dc_sense(dc, net.sense("flame current")) > 2e-6);
    const auto a = static_cast<std::size_t>(in.attachments[0].a);
    const auto b = static_cast<std::size_t>(in.attachments[0].b);
    CHECK(abs(w.ac_attachment_v(ac, 0) - (v[a] - v[b])) < 1e-7);
    CHECK(abs(w.ac_attachment_a(ac, 0)) == Approx(abs(v[a] - v[b]) / 10e6).epsilon(1e-6));
}

namespace {

/// A switch moves every third time, a rotor slows down every fourth.
void change(Case& c, int i) {
    if (i % 3 == 0)
        c.inputs.switches ^= std::uint64_t{1} << static_cast<unsigned>(i % 5);
    if (i % 4 == 0)
        c.ports.rotor_rad_s[0] -= 3.0;
}

} // namespace

TEST_CASE("r.m.s. values of the senses are those of the last solution, whatever was asked before") {
    Case c{SampleWiring().build(), {}, {}, running(SampleWiring().build())};
    Workspace w(c.netlist);
    const int senses = c.netlist.sense_count();
    REQUIRE(senses > 4);
    for (int i = 0; i < 24; ++i) {
        change(c, i);
        w.set(c.condition, c.inputs);
        const AcSolution& s = w.solve_ac(c.ports);
        w.ac_sense_rms(2);
        if (i % 2 == 0)
            continue;
        const Workspace::SenseValues& rms = w.ac_sense_rms(senses);
        for (int k = 0; k < senses; ++k)
            CHECK(rms[static_cast<std::size_t>(k)] == Approx(abs(w.ac_sense(s, k))).epsilon(1e-12));
    }
}

TEST_CASE("voltages of all nodes that are asked for again are those of the last solution") {
    Case c{SampleWiring().build(), {}, {}, running(SampleWiring().build())};
    Workspace w(c.netlist);
    AcVoltages before{};
    for (int i = 0; i < 24; ++i) {
        change(c, i);
        w.set(c.condition, c.inputs);
        AcVoltages now{};
        w.node_voltages(w.solve_ac(c.ports), now);
        CHECK(same_bits(w.ac_node_voltages(), now));
        CHECK(same_bits(w.ac_node_voltages(), now));
        CHECK(same_bits(before, now) == (i % 3 != 0 && i % 4 != 0));
        before = now;
    }
}

TEST_CASE("currents into every touchable node sum to nothing") { // Kirchhoff
    for (unsigned seed = 50; seed < 60; ++seed) {
        const Case c = RandomNetwork(seed).make();
        Workspace w(c.netlist);
        w.set(c.condition, c.inputs);
        const AcSolution s = w.solve_ac(c.ports);
        AcVoltages v;
        w.node_voltages(s, v);
        std::vector<Complex> sum(c.netlist.node_names.size());
        std::vector<double> scale(sum.size(), 1e-9);
        const auto flow = [&](int a, int b, Complex i) {
            sum[static_cast<std::size_t>(a)] -= i;
            sum[static_cast<std::size_t>(b)] += i;
            scale[static_cast<std::size_t>(a)] += abs(i);
            scale[static_cast<std::size_t>(b)] += abs(i);
        };
        for (int i = 0; i < c.netlist.element_count(); ++i) {
            const Element& e = c.netlist.elements[static_cast<std::size_t>(i)];
            flow(e.a, e.b, w.element_current(s, v, i));
        }
        for (const Bridge& b : c.condition.bridges)
            if (b.a != b.b)
                flow(b.a, b.b,
                     (1.0 / static_cast<double>(b.ohm)) *
                         (v[static_cast<std::size_t>(b.a)] - v[static_cast<std::size_t>(b.b)]));
        for (int i = 0; i < kMaxAttachments; ++i)
            flow(c.inputs.attachments[static_cast<std::size_t>(i)].a,
                 c.inputs.attachments[static_cast<std::size_t>(i)].b, w.ac_attachment_a(s, i));
        for (std::size_t i = 1; i < sum.size(); ++i) {
            if (c.netlist.is_field[i] != 0)
                continue;
            const Stray& stray = c.netlist.strays[i];
            sum[i] -= Complex{1.0 / stray.ohm, 376.99111843 * stray.farad} * v[i];
            INFO("seed " << seed << " node " << i);
            CHECK(abs(sum[i]) < 1e-7 * scale[i] + 1e-10);
        }
    }
}

TEST_CASE("every single open conductor and many adjacent shorts agree with ngspice, AC and DC") {
    // Source: ngspice 39 on the exported deck; 0.1 % or 1 mV on every node.
    Case c{SampleWiring().build(), {}, {}, {}};
    for (const char* name : {"heat call", "pressure switch", "valve relay", "inducer relay driver",
                             "inducer relay", "blower relay driver", "blower relay", "igniter relay"})
        c.inputs.switches |= std::uint64_t{1} << static_cast<unsigned>(c.netlist.switch_bit(name));
    c.ports = running(c.netlist);
    const auto check = [&](const std::string& what) {
        const auto [ac, dc] = compare_with_ngspice(c);
        INFO(what << ": AC node " << c.netlist.node_names[static_cast<std::size_t>(ac.node)] << " ours "
                  << ac.ours << " ngspice " << ac.ngspice << "; DC ours " << dc.ours << " ngspice "
                  << dc.ngspice);
        CHECK(ac.units <= 1.0);
        CHECK(dc.units <= 1.0);
    };
    check("healthy");
    for (int i = 0; i < c.netlist.element_count(); ++i) {
        c.condition.series_ohm[static_cast<std::size_t>(i)] = kOpenOhm;
        check("open " + c.netlist.element_names[static_cast<std::size_t>(i)]);
        c.condition.series_ohm[static_cast<std::size_t>(i)] = 0.0F;
    }
    for (int a = 1; a + 3 < c.netlist.node_count(); a += 7) {
        if (c.netlist.is_field[static_cast<std::size_t>(a)] != 0 ||
            c.netlist.is_field[static_cast<std::size_t>(a + 3)] != 0)
            continue;
        c.condition.bridges[0] = {static_cast<std::int16_t>(a), static_cast<std::int16_t>(a + 3), 0.05F};
        check("short at " + c.netlist.node_names[static_cast<std::size_t>(a)]);
    }
}

TEST_CASE("a builder says what is wrong with a netlist") {
    NetlistBuilder b;
    const int p = b.node("p");
    const int q = b.node("q");
    using Catch::Contains;
    CHECK_THROWS_WITH(b.node("p"), Contains("\"p\""));
    CHECK_THROWS_WITH(b.resistor("wire", p, p, 1.0), Contains("\"wire\"") && Contains("both ends"));
    CHECK_THROWS_WITH(b.resistor("wire", p, 17, 1.0), Contains("17"));
    CHECK_THROWS_WITH(b.resistor("wire", p, q, 0.0), Contains("resistance in ohm"));
    CHECK_THROWS_WITH(b.contact("door", p, q, 3, Rest::open), Contains("switch"));
    CHECK_THROWS_WITH(b.winding("coil", p, q, 0, Axis::main, 1.0, 1.0, 1.0), Contains("core"));
    const int core = b.transformer_core("iron", 2000.0, 5000.0);
    CHECK_THROWS_WITH(b.winding("coil", p, q, core, Axis::start, 1.0, 1.0, 1.0), Contains("one axis"));
    b.resistor("wire", p, q, 1.0);
    const Netlist net = b.build();
    CHECK_THROWS_WITH(require_no_islands(net), Contains("\"p\""));
    CHECK_THROWS_WITH(net.node("x"), Contains("\"x\""));
    CHECK_NOTHROW(require_no_islands(SampleWiring().build()));
    for (int i = 1; i < kMaxNodes; ++i)
        b.node("n" + std::to_string(i));
    CHECK_THROWS_WITH(b.node("one too many"), Contains("192"));
}

TEST_CASE("every byte of what goes into the World stands in a field list") {
    CHECK(bytes_in_fields(Condition{}) == sizeof(Condition));
    CHECK(bytes_in_fields(NetworkInputs{}) == sizeof(NetworkInputs));
    CHECK(bytes_in_fields(RelayState{}) == sizeof(RelayState));
    CHECK(bytes_in_fields(RelayCondition{}) == sizeof(RelayCondition));
    CHECK(bytes_in_fields(FuseState{}) == sizeof(FuseState));
    CHECK(std::is_trivially_copyable_v<Condition>);
    CHECK(std::is_trivially_copyable_v<NetworkInputs>);
}
