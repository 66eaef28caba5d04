// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "bench/captions.hpp"
#include "bench/inverse.hpp"
#include "bench/offers.hpp"
#include "control/lamp.hpp"
#include "furnace/condition_paths.hpp"
#include "support/random_life.hpp"
#include "support/rig.hpp"

#include <algorithm>
#include <set>

// Captions: that they tell what happens in the order in which the trade has it, and nothing that nobody could
// perceive.

using lightoff::bench::About;
using lightoff::bench::Caption;
using lightoff::bench::CaptionWatch;
using lightoff::test::Rig;
namespace bench = lightoff::bench;
namespace control = lightoff::control;

namespace {

/// A rig that is watched in every tick.
struct Watched {
    Rig rig;
    CaptionWatch watch{rig.site};

    void run(double seconds) {
        for (int i = 0; i < static_cast<int>(seconds * 20.0 + 0.5); ++i) {
            rig.run(0.05);
            watch.observe(rig.world);
        }
    }
    void act(const std::string& text) {
        while (rig.world.hands.busy != 0)
            run(0.05);
        REQUIRE(bench::begin(rig.site, rig.world, bench::parse_action(rig.site, text)).allowed);
        while (rig.world.hands.busy != 0)
            run(0.05);
    }
    /// Tick of the first caption from `from` on that begins so; fails if there is none.
    std::uint64_t find(const std::string& text, std::uint64_t from = 0) {
        for (const Caption& caption : watch.captions())
            if (caption.tick >= from && caption.text.rfind(text, 0) == 0)
                return caption.tick;
        FAIL("no caption begins \"" + text + "\" from tick " + std::to_string(from));
        return 0;
    }
    bool has(const std::string& text) {
        return std::any_of(watch.captions().begin(), watch.captions().end(),
                           [&](const Caption& c) { return c.text.find(text) != std::string::npos; });
    }
};

/// What a reader makes of a pattern of the board's own table, from a moment in its cycle on.
std::string read_pattern(const std::string& name, std::uint8_t count, int skip_ticks) {
    const control::Board& board = lightoff::test::reference_model().board;
    for (std::size_t i = 0; i < board.pattern_names.size(); ++i) {
        if (board.pattern_names[i] != name)
            continue;
        control::LampState lamp;
        bench::LampReader reader;
        std::string said;
        for (int tick = 0; tick < skip_ticks + 600; ++tick) {
            control::step_lamp(lamp, &board.patterns[i], static_cast<std::uint8_t>(i), count, 12);
            if (tick < skip_ticks)
                continue;
            if (const auto words = reader.look(lamp.on != 0)) {
                INFO(name << " " << int(count) << " after " << skip_ticks << ": " << said << ", " << *words);
                CHECK(said.empty()); // it is one pattern: nothing else may be read on the way
                said = *words;
            }
        }
        return said;
    }
    return "no such pattern";
}

} // namespace

// The table itself says what is to be seen.
TEST_CASE("the eye reads every pattern of the board's table, whenever it begins to look") {
    for (const int skip : {0, 7, 23, 41, 58, 77}) {
        for (std::uint8_t count = 1; count <= 5; ++count) {
            const std::string flashes = count == 1 ? "1 flash" : std::to_string(count) + " flashes";
            CHECK(read_pattern("count", count, skip) == flashes + ", a rest, and again");
            CHECK(read_pattern("held", count, skip) == flashes + ", then one long glow, and again");
        }
        CHECK(read_pattern("wink", 0, skip) == "one short wink every 3 seconds");
        CHECK(read_pattern("flutter", 0, skip) == "flickers fast, without a rest");
        CHECK(read_pattern("dark", 0, skip) == "dark");
        CHECK(read_pattern("steady", 0, skip + 20) == "lit, without a break");
    }
}

TEST_CASE("a wheel's note is followed up, along and down") {
    using Change = bench::WheelSound::Change;
    bench::WheelSound sound;
    std::vector<Change> heard;
    const auto hear = [&](double from, double to, int ticks) {
        for (int i = 0; i < ticks; ++i) {
            const double hz = from + (to - from) * i / ticks;
            const Change change =
                sound.hear(static_cast<std::uint16_t>(5 * static_cast<int>(hz / 5.0 + 0.5)));
            if (change != Change::none)
                heard.push_back(change);
        }
    };
    hear(0, 0, 100);
    hear(0, 1200, 80);
    hear(1200, 1200, 200);
    hear(1200, 1000, 2000); // slowly: no run-down, but another note
    hear(1000, 1000, 100);
    hear(1000, 0, 100);
    hear(0, 0, 100);
    REQUIRE(heard.size() >= 5);
    CHECK(heard[0] == Change::rises);
    CHECK(heard[1] == Change::holds);
    for (std::size_t i = 2; i + 2 < heard.size(); ++i)
        CHECK(heard[i] == Change::lower);
    CHECK(heard[heard.size() - 2] == Change::falls);
    CHECK(heard.back() == Change::stops);

    bench::WheelSound running; // somebody comes in while it runs: it does not rise
    CHECK(running.hear(1200) == Change::holds);
    for (int i = 0; i < 200; ++i)
        CHECK(running.hear(1200) == Change::none);
}

// The order is the sequence of operation of an induced-draft furnace (common practice, no source).
TEST_CASE("a healthy call can be followed by captions alone") {
    Watched w;
    w.act("burner-door off");
    w.run(200.0);
    const std::uint64_t rises = w.find("Inducer: a whirr rises");
    const std::uint64_t holds = w.find("Inducer: a steady whirr", rises);
    const std::uint64_t glows = w.find("Igniter: glows", holds);
    const std::uint64_t valve = w.find("The gas valve clicks.", glows);
    const std::uint64_t lights = w.find("The burners light", valve);
    const std::uint64_t flames = w.find("Flames: all burners blue", lights);
    const std::uint64_t blower = w.find("Blower: a whirr rises", lights);
    const std::uint64_t air = w.find("At the registers", blower);
    CHECK(lights - valve <= 100); // a hot surface lights the gas within seconds
    CHECK(flames < blower);
    CHECK(air > blower);
    CHECK(w.has("Lamp: 5 flashes, a rest, and again."));
    CHECK_FALSE(w.has("bang"));

    const std::uint64_t before = w.rig.world.tick;
    w.act("blower-door off"); // its switch cuts the power
    w.run(20.0);
    CHECK(w.find("Inducer: runs down with that.", before) < before + 220);
    CHECK(w.find("The burners' roar stops with that.", before) < before + 220);
    CHECK(w.find("Lamp: dark.", before) > 0);
    CHECK(w.find("The flames are gone.", before) > 0);
}

TEST_CASE("closing the burner door is not the flames going out") {
    Watched w;
    w.act("burner-door off");
    w.run(120.0);
    REQUIRE(w.has("Flames: all burners blue"));
    w.act("burner-door on");
    w.run(10.0);
    CHECK_FALSE(w.has("The flames are gone."));
}

TEST_CASE("a stalled wheel hums, a late light-off is loud, starved flames are yellow") {
    Watched stalled;
    stalled.rig.set("draft.inducer.bearing_drag_added", 10.0);
    stalled.run(30.0);
    CHECK(stalled.has("Inducer: a flat hum, no whirr."));
    CHECK_FALSE(stalled.has("Inducer: a whirr"));

    Watched late; // gas gathers at two burners that the flame reaches late
    late.rig.set("combustion.crossover_blockage[1]", 0.7);
    late.run(120.0);
    const std::uint64_t first = late.find("The burners light softly.");
    CHECK(late.find("More flame lights with a", first + 1) > first);
    Watched on_time;
    on_time.run(120.0);
    CHECK(on_time.has("The burners light with a puff."));
    CHECK_FALSE(on_time.has("More flame lights"));

    Watched lit; // and one that burns when somebody comes
    lit.rig.run(300.0);
    lit.run(60.0);
    CHECK(lit.has("Burners: an even roar."));
    CHECK_FALSE(lit.has("light"));

    Watched starved;
    starved.rig.set("combustion.primary_blockage[1]", 0.9);
    starved.act("burner-door off");
    starved.run(120.0);
    CHECK(starved.has("burner 2 "));
    CHECK(starved.has("yellow"));
}

TEST_CASE("a flame that strikes metal is told apart from those beside it, with the door off alone") {
    Watched w;
    w.rig.world.condition.combustion.misalignment[2] = 0.8;
    w.run(130.0);
    CHECK_FALSE(w.has("striking"));
    w.act("burner-door off");
    w.run(3.0);
    CHECK(w.has("burners 1, 2 and 4 blue"));
    CHECK(w.has("burner 3 blue with yellow tips, striking the edge of its opening"));
}

TEST_CASE("a look tells what it showed, in the catalogue's words") {
    Watched w;
    w.rig.set("draft.sense_line.kink", 1e11);
    w.act("burner-door off");
    w.act("look pressure_hose");
    CHECK(w.has("Pressure switch's hose: on both its ports; folded flat over an edge;"));
}

TEST_CASE("equal percepts give equal captions, whatever else differs") {
    const bench::Site& site = lightoff::test::reference_site();
    const auto paths = lightoff::furnace::condition_paths(site.model);
    std::size_t compared = 0;
    std::size_t said = 0;
    for (std::uint64_t life = 1; life <= 24; ++life) {
        Rig rig(life);
        Rig other = rig;
        lightoff::test::RandomHands hands(life + 1000);
        for (int i = 0; i < 6; ++i) { // numbers of the Condition moved by a little
            const auto& path = paths[hands.random(paths.size())];
            const std::uint64_t field = lightoff::furnace::condition_field(site.model, path.path);
            const double value = lightoff::furnace::condition_value(other.world.condition, field);
            try {
                lightoff::furnace::set_condition_field(other.world.condition, field, value * 1.0001);
            } catch (const std::invalid_argument&) {
                continue; // a whole number
            }
        }
        CaptionWatch mine(site);
        CaptionWatch others(site);
        bool alike = true;
        for (int tick = 0; tick < 4000 && alike; ++tick) {
            if (tick % 40 == 0)
                if (const auto action = hands.choose(site, rig.world)) {
                    bench::begin(site, rig.world, *action);
                    bench::begin(site, other.world, *action);
                }
            rig.run(0.05);
            other.run(0.05);
            alike = bench::perceive(site, rig.world) == bench::perceive(site, other.world);
            if (!alike)
                break;
            mine.observe(rig.world);
            others.observe(other.world);
            ++compared;
        }
        CHECK(mine.captions() == others.captions());
        said += mine.captions().size();
    }
    CHECK(compared > 5000);
    CHECK(said > 100);
}

TEST_CASE("captions name no cause") {
    const bench::Site& site = lightoff::test::reference_site();
    std::set<std::string> texts;
    for (std::uint64_t life = 1; life <= 40; ++life) {
        Rig rig(life);
        lightoff::test::RandomHands hands(life + 2000);
        lightoff::faults::apply(site.catalogue,
                                site.catalogue.faults[hands.random(site.catalogue.faults.size())], 0.8,
                                rig.world.condition, rig.world.inputs);
        CaptionWatch watch(site);
        for (int tick = 0; tick < 6000; ++tick) {
            if (tick % 40 == 0)
                if (const auto action = hands.choose(site, rig.world))
                    bench::begin(site, rig.world, *action);
            rig.run(0.05);
            watch.observe(rig.world);
        }
        for (const Caption& caption : watch.captions())
            if (caption.about != About::hands) // what the hands did goes by its own name: "Gas cock shut."
                texts.insert(caption.text);
    }
    CHECK(texts.size() > 40);
    for (const std::string& text : texts) {
        INFO(text);
        for (const char* verdict : {"fault", "defect", "faulty", "plugged", "stuck", "failed", "seized"})
            CHECK(text.find(verdict) == std::string::npos);
        for (const auto& fault : site.catalogue.faults)
            CHECK(text.find(fault.title) == std::string::npos);
    }
}

TEST_CASE("undoing puts back what hands have put or taken") {
    const bench::Site& site = lightoff::test::reference_site();
    int undone = 0;
    for (std::uint64_t life = 1; life <= 40; ++life) {
        Rig rig(life);
        lightoff::test::RandomHands hands(life + 3000);
        rig.run(10.0); // the scenario's own history is over
        for (int i = 0; i < 40; ++i) {
            while (rig.world.hands.busy != 0)
                rig.run(0.05);
            const auto action = hands.choose(site, rig.world);
            if (!action)
                continue;
            const bench::Percept before = bench::perceive(site, rig.world);
            const auto inverse = bench::inverse_of(*action, before);
            rig.act(bench::format_action(site, *action));
            if (!inverse || !bench::is_known(site, *inverse) ||
                !bench::check(site, rig.world, *inverse).allowed)
                continue;
            rig.act(bench::format_action(site, *inverse));
            bench::Percept after = bench::perceive(site, rig.world);
            CHECK(after.left_as.set_point_k == Approx(before.left_as.set_point_k).margin(0.001));
            after.left_as.set_point_k = before.left_as.set_point_k; // an action has whole millikelvin
            INFO(bench::format_action(site, *action) << " / " << bench::format_action(site, *inverse));
            CHECK(before.left_as == after.left_as);
            CHECK(before.worked.parts_off == after.worked.parts_off);
            CHECK(before.worked.eighths == after.worked.eighths);
            ++undone;
        }
    }
    CHECK(undone > 50);
}

TEST_CASE("every verb stands in one group, and what is offered may be said") {
    const bench::Site& site = lightoff::test::reference_site();
    std::multiset<std::string_view> grouped;
    for (const bench::VerbGroup& group : bench::verb_groups())
        for (const bench::Verb verb : group.verbs)
            grouped.insert(bench::spec_of(verb).name);
    for (const bench::VerbSpec& spec : bench::verbs()) {
        INFO(spec.name);
        CHECK(grouped.count(spec.name) == 1);
        for (std::size_t i = 0; i < spec.word_count(); ++i) {
            const bool from_list = bench::range_of(spec.words[i]).empty();
            const auto names = bench::offered(site, spec.verb, i);
            CHECK(names.empty() != from_list);
            const auto all = bench::choices(site, spec.words[i]);
            for (const bench::Choice& name : names)
                CHECK(
                    std::any_of(all.begin(), all.end(), [&](const auto& c) { return c.name == name.name; }));
        }
    }
}
