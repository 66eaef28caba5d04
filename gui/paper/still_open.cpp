// SPDX-License-Identifier: MIT
#include "gui/paper/still_open.hpp"

#include "bench/access.hpp"
#include "instruments/attachments.hpp"
#include "instruments/spots.hpp"

#include <algorithm>

namespace lightoff::paper {
namespace {

using instruments::Spot;
using std::string;

class List {
public:
    explicit List(const view::Known& known) : known_(known) {}

    std::vector<string> all() {
        switches();
        apart();
        leads();
        papers();
        return std::move(open_);
    }

private:
    void add(bool is_open, string words) {
        if (is_open)
            open_.push_back(std::move(words));
    }

    void switches() {
        const bench::LeftAs& left = known_.percept.left_as;
        const bench::Worked& worked = known_.percept.worked;
        add(!left.burner_door_on, "The burner door is off.");
        add(!left.blower_door_on, "The blower door is off.");
        add(worked.door_switch_taped, "The door switch is taped in.");
        add(left.door_switch_held && !worked.door_switch_taped, "Your hand holds the door switch in.");
        add(!left.filter_in, "The filter is out.");
        add(worked.appliances_off, "The other gas appliances are off.");
        if (worked.tagged) // shut off on purpose, and a tag says so
            return;
        add(!left.breaker_on, "The breaker is off.");
        add(!left.disconnect_on, "The disconnect switch is off.");
        add(!left.gas_cock_open, "The gas cock is shut.");
        add(left.thermostat_mode == control::ThermostatMode::off, "The thermostat is on off.");
    }

    void apart() {
        const bench::Worked& worked = known_.percept.worked;
        const auto& parts = known_.site->catalogue.parts;
        for (std::size_t i = 0; i < parts.size(); ++i)
            add((worked.parts_off[i / 64] >> (i % 64) & 1U) != 0, parts[i].title + ": off its place.");
        string wires;
        for (const furnace::Terminal& terminal : known_.site->model.wiring.terminals)
            if (electrical::has_element(worked.parted, terminal.joint))
                wires += (wires.empty() ? "" : ", ") + terminal.name;
        add(!wires.empty(), "Wires off their terminals: " + wires + ".");
        for (std::size_t slot = instruments::kJumperSlot; slot < worked.joined.size(); ++slot) {
            const auto [a, b] = worked.joined[slot];
            const string what = slot == instruments::kJumperSlot ? "A jumper lead lies from "
                                : slot == instruments::kSmallBreakerSlot
                                    ? "The small breaker's lead lies from "
                                    : "A wire is landed from ";
            if (a != b)
                add(true, what + bench::point_name(known_.site->model, a) + " to " +
                              bench::point_name(known_.site->model, b) + ".");
        }
    }

    void leads() {
        const bench::Instruments& tools = known_.percept.instruments;
        add(tools.multimeter.red != tools.multimeter.black, "The multimeter's leads are on.");
        add(tools.clamp.on != 0, "The clamp ammeter is round a wire.");
        add(tools.wattmeter.on != 0, "The wattmeter is in the supply.");
        for (const Spot port : {tools.manometer.plus, tools.manometer.minus})
            add(tools.manometer.on != 0 && port != Spot::room,
                "A manometer's hose is at " + string(instruments::spot_row(port).title) + ".");
        add(tools.analyser.on != 0 && tools.analyser.probe != Spot::room,
            "The analyser's probe is in the vent connector.");
    }

    void papers() {
        const visit::Papers& papers = known_.papers;
        const lesson::Kind kind = known_.scenario->kind;
        const bool diagnosis = kind != lesson::Kind::tune_up && kind != lesson::Kind::explore;
        add(diagnosis && !papers.stops_at, "Where the sequence stops is not stated.");
        add(diagnosis && !papers.cause, "No cause is named.");
        for (const visit::Visit::Done& done : known_.done)
            if (done.action.verb == bench::Verb::replace && papers.tags.count(done.action.value) == 0)
                add(true, known_.site->catalogue.parts[static_cast<std::size_t>(done.action.value)].title +
                              ": fitted without a tag.");
        add(known_.percept.worked.told == 0, "The customer has been told nothing.");
    }

    const view::Known& known_;
    std::vector<string> open_;
};

} // namespace

std::vector<string> still_open(const view::Known& known) {
    return List(known).all();
}

} // namespace lightoff::paper
