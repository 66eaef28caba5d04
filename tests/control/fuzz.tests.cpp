// SPDX-License-Identifier: MIT
// Random inputs: whatever comes in, some things never go out.
#include "control/bench.hpp"
#include "units/fields.hpp"
#include "units/random.hpp"

#include <catch2/catch.hpp>
#include <cstring>
#include <functional>
#include <set>

using namespace lightoff::control;
using control_tests::Bench;
using control_tests::load_board;
using control_tests::reference_board;
using lightoff::units::hash_fields;
using lightoff::units::random_unit;

namespace {

/// Looks at every tick and counts what must not happen.
class Warden {
public:
    explicit Warden(const Board& table) : board(table) {}
    long ticks = 0, gas_ticks = 0, fast_flashes = 0, gas_without_chain = 0, gas_without_flame_too_long = 0;
    long igniter_too_long = 0, igniter_unpurged = 0, gas_without_inducer = 0, two_speeds = 0,
         limit_without_air = 0;
    long alive_without_power = 0;
    std::set<std::string> seen;

    void look(const BoardState& s, const BoardOutputs& out) {
        ++ticks;
        const auto on = [&](std::size_t output) { return out.drives(output); };
        const auto reads = [&](std::size_t input) { return (std::uint32_t{s.sensed} >> input & 1U) != 0; };
        const bool gas = on(gas_valve_out), igniter = on(igniter_out), inducer = on(inducer_out);
        gas_ticks += gas;
        for (std::size_t m = 0; m < board.machines.size(); ++m)
            if (out.powered)
                visited[m] |= std::uint64_t{1} << s.state[m];
        gas_without_chain +=
            gas && !(reads(call_in) && reads(rollout_in) && reads(limit_in) && reads(pressure_switch_in));
        unproved = gas && !reads(flame_in) ? unproved + 1 : 0;
        gas_without_flame_too_long += unproved > 7 * 20; // trial 7 s
        glowing = igniter ? glowing + 1 : 0;
        igniter_too_long += glowing > 24 * 20; // 20 s warm-up and 4 s of the trial
        igniter_unpurged += glowing == 1 && purged < 15 * 20;
        purged = inducer && reads(pressure_switch_in) ? purged + 1 : 0; // proved draft all the while
        gas_without_inducer += gas && !inducer;
        two_speeds += on(blower_heat_out) && on(blower_cool_out);
        awake = out.powered ? awake + 1 : 0;
        limit_off = out.powered && awake > 40 && !reads(limit_in) ? limit_off + 1 : 0;
        limit_without_air += limit_off > 20 && !on(blower_heat_out);
        alive_without_power += !out.powered && (out.drivers != 0 || out.lamp_on);
        since_flash = since_flash < 1000 ? since_flash + 1 : since_flash;
        if (out.lamp_on && !lit) {
            fast_flashes += since_flash * 0.05 < 1.0 / 3.0;
            since_flash = 0;
        }
        lit = out.lamp_on;
    }
    void verdict() const {
        CHECK(fast_flashes == 0);
        CHECK(gas_without_chain == 0);
        CHECK(gas_without_flame_too_long == 0);
        CHECK(igniter_too_long == 0);
        CHECK(igniter_unpurged == 0);
        CHECK(gas_without_inducer == 0);
        CHECK(two_speeds == 0);
        CHECK(limit_without_air == 0);
        CHECK(alive_without_power == 0);
    }
    [[nodiscard]] std::vector<std::string> unvisited() const {
        std::vector<std::string> names;
        for (std::size_t m = 0; m < board.machines.size(); ++m)
            for (std::size_t i = 0; i < board.machines[m].states.size(); ++i)
                if ((visited[m] >> i & 1U) == 0)
                    names.push_back(board.machines[m].state_names[i]);
        return names;
    }

private:
    const Board& board;
    const std::size_t blower_cool_out = board.output("blower_cool");
    const std::size_t blower_heat_out = board.output("blower_heat");
    const std::size_t gas_valve_out = board.output("gas_valve");
    const std::size_t igniter_out = board.output("igniter");
    const std::size_t inducer_out = board.output("inducer");
    const std::size_t call_in = board.input("call");
    const std::size_t flame_in = board.input("flame");
    const std::size_t limit_in = board.input("limit");
    const std::size_t pressure_switch_in = board.input("pressure_switch");
    const std::size_t rollout_in = board.input("rollout");
    std::array<std::uint64_t, kMaxMachines> visited{};
    int unproved = 0, glowing = 0, purged = 0, limit_off = 0, awake = 0, since_flash = 1000;
    bool lit = false;
};

/// A plant in which something changes at random moments, `mean_s` apart.
std::uint64_t live(const Board& board, std::uint64_t seed, double mean_s, double hours, Warden& warden) {
    Bench bench(board);
    std::uint64_t hash = 0;
    const long ticks = static_cast<long>(hours * 72000.0);
    for (long t = 0; t < ticks; ++t) {
        const auto n = static_cast<std::uint64_t>(t);
        if (random_unit(seed, 1, n) < 0.05 / mean_s) {
            auto& p = bench.plant;
            const double what = random_unit(seed, 2, n);
            const bool well = random_unit(seed, 3, n) < 0.7;
            if (what < 0.25)
                p.call = !p.call;
            else if (what < 0.30)
                p.fan = !p.fan;
            else if (what < 0.40)
                p.limit_closed = well;
            else if (what < 0.45)
                p.rollout_closed = well;
            else if (what < 0.50)
                p.rollout_closed = true;
            else if (what < 0.60)
                p.hose_plugged = !well;
            else if (what < 0.65)
                p.switch_stuck_closed = !well;
            else if (what < 0.70)
                p.igniter_good = well;
            else if (what < 0.75)
                p.gas_open = well;
            else if (what < 0.85)
                p.flame_out = !well;
            else if (what < 0.90)
                p.valve_leaks = !well && random_unit(seed, 4, n) < 0.5;
            else if (what < 0.93)
                p.flame_ua = 6.0 * random_unit(seed, 5, n);
            else if (what < 0.97)
                p.supply_v = well ? 26.0 : 26.0 * random_unit(seed, 6, n);
            else if (what < 0.98)
                p.valve_relay_welded = !p.valve_relay_welded;
            else if (what < 0.985)
                bench.condition.bad_memory_cells = bench.condition.bad_memory_cells == 0 ? 1 : 0;
            else { // the serviceman: all is well, power cycled
                p.limit_closed = p.rollout_closed = p.igniter_good = p.gas_open = true;
                p.hose_plugged = p.switch_stuck_closed = p.flame_out = p.valve_leaks = p.valve_relay_welded =
                    false;
                p.flame_ua = 4.0;
                bench.condition.bad_memory_cells = 0;
                p.supply_v = 0.0;
                bench.run(0.5);
                p.supply_v = 26.0;
            }
        }
        bench.tick();
        warden.look(bench.state, bench.out);
        if (t % 200 == 0)
            hash = lightoff::units::mix(hash, hash_fields(bench.state));
    }
    return hash;
}

} // namespace

TEST_CASE("a plant where everything fails at random never gets an unsafe output") {
    Warden warden(reference_board());
    for (std::uint64_t seed = 1; seed <= 2; ++seed)
        for (const double mean_s : {0.3, 3.0, 20.0, 90.0, 300.0, 900.0})
            live(reference_board(), seed, mean_s, mean_s > 200.0 ? 30.0 : (mean_s > 10.0 ? 8.0 : 0.5),
                 warden);
    warden.verdict();
    CHECK(warden.gas_ticks > 100000); // it did burn
    CHECK(warden.unvisited() == std::vector<std::string>{});
}

TEST_CASE("the warden sees a table that would be unsafe") {
    const auto watch = [](const std::function<void(MachineDescription&)>& spoil) {
        auto d = load_board("board.json");
        spoil(d.machines[0]);
        const Board board = build_board(d);
        Warden warden(board);
        live(board, 1, 20.0, 20.0, warden);
        return std::array<long, 4>{warden.gas_without_chain, warden.gas_without_flame_too_long,
                                   warden.igniter_too_long, warden.igniter_unpurged};
    };
    const auto shared = [](const char* input, const std::vector<std::string>& from) {
        return [=](MachineDescription& burner) {
            for (auto& exit : burner.shared_exits)
                if (exit.exit.inputs.count(input) != 0 && exit.exit.go_to != "standby")
                    exit.from = from;
        };
    };
    const auto timed = [](const char* name, double after_s) {
        return [=](MachineDescription& burner) {
            for (auto& state : burner.states)
                if (state.name == name)
                    state.exits.back().after_s = after_s;
        };
    };
    CHECK(watch(shared("pressure_switch", {"prepurge", "warm_up"}))[0] > 0);
    CHECK(watch(shared("call", {"before_gas", "draft_lost", "interpurge"}))[0] > 0);
    CHECK(watch(timed("trial_dark", 3.05))[1] > 0);
    CHECK(watch(timed("warm_up", 20.05))[2] > 0);
    CHECK(watch(timed("prepurge", 14.95))[3] > 0);
}

TEST_CASE("inputs that make no sense at all never get an unsafe output") {
    const Board& board = reference_board();
    const BoardCondition condition;
    Warden warden(board);
    std::array<double, kMaxInputs> live_share{}; // often enough as in a good furnace to come as far as gas
    live_share.fill(0.5);
    for (const char* name : {"call", "rollout", "limit"})
        live_share[board.input(name)] = 0.9;
    for (const char* name : {"valve_feedback", "flame"})
        live_share[board.input(name)] = 0.1;
    for (std::uint64_t seed = 1; seed <= 12; ++seed) {
        BoardState state;
        BoardInputs in;
        const double calm =
            seed % 3 == 0 ? 0.5 : (seed % 3 == 1 ? 0.01 : 0.0008); // chance of a change in a tick
        for (std::uint64_t t = 0; t < 150000; ++t) {
            for (std::size_t i = 0; i < board.inputs.size(); ++i) {
                if (random_unit(seed, i, t) >= calm)
                    continue;
                const bool live = random_unit(seed, 32 + i, t) < live_share[i];
                const double level = (live ? 27.0 : 15.0) * random_unit(seed, 64 + i, t) + (live ? 9.0 : 0.0);
                in.sensed[i] = board.input_is_flame[i] != 0 ? level * 1e-7 : level;
            }
            if (random_unit(seed, 99, t) < calm * 0.3)
                in.supply_v = 27.0 * random_unit(seed, 98, t);
            if (random_unit(seed, 97, t) < calm * 3.0)
                in.supply_v = 26.0;
            const BoardOutputs out = step(board, condition, state, in);
            warden.look(state, out);
        }
    }
    warden.verdict();
    CHECK(warden.gas_ticks > 0);
}

TEST_CASE("same inputs, same bits; a copy goes the same way") {
    Warden warden(reference_board());
    CHECK(live(reference_board(), 7, 5.0, 1.0, warden) == live(reference_board(), 7, 5.0, 1.0, warden));
    CHECK(live(reference_board(), 7, 5.0, 1.0, warden) != live(reference_board(), 8, 5.0, 1.0, warden));

    Bench one(reference_board());
    one.plant.call = true;
    one.run(50.0);
    Bench two = one;
    one.run(200.0);
    two.run(200.0);
    CHECK(std::memcmp(&one.state, &two.state, sizeof one.state) == 0);
}

TEST_CASE("field lists name every byte of state and condition") {
    const auto bytes = [](const auto& root) {
        std::size_t sum = 0;
        lightoff::units::for_each_value(root, [&](const auto& value) { sum += sizeof value; });
        return sum;
    };
    CHECK(bytes(BoardState{}) == sizeof(BoardState));
    CHECK(bytes(BoardCondition{}) == sizeof(BoardCondition));
    CHECK(std::is_trivially_copyable_v<BoardState>);
    CHECK(std::is_trivially_copyable_v<BoardCondition>);
}

TEST_CASE("with half the tick every event falls within 0.1 s") {
    const auto events = [](double tick_s) {
        const Board board = build_board(load_board("board.json"), tick_s);
        const BoardCondition condition;
        BoardState state;
        BoardInputs in;
        in.supply_v = 26.0;
        for (const char* name : {"rollout", "limit"})
            in.sensed[board.input(name)] = 26.0;
        std::vector<double> times;
        BoardOutputs last;
        for (long t = 1; static_cast<double>(t) * tick_s < 600.0; ++t) {
            const double now = static_cast<double>(t) * tick_s;
            in.sensed[board.input("call")] = now > 3.0 && now < 400.0 ? 26.0 : 0.0;
            in.sensed[board.input("pressure_switch")] = now > 8.0 && now < 420.0 ? 26.0 : 0.0;
            in.sensed[board.input("flame")] = now > 46.0 && now < 400.0 ? 4e-6 : 0.0;
            const BoardOutputs out = step(board, condition, state, in);
            if (out.drivers != last.drivers)
                times.push_back(now);
            last = out;
        }
        return times;
    };
    const auto whole = events(0.05), half = events(0.025);
    REQUIRE(whole.size() == half.size());
    REQUIRE(whole.size() >= 7);
    for (std::size_t i = 0; i < whole.size(); ++i)
        CHECK(whole[i] == Approx(half[i]).margin(0.1));
}
