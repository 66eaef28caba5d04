// SPDX-License-Identifier: MIT
#include "files/equipment.hpp"

#include "bench/bench.hpp"
#include "control/board_builder.hpp"
#include "files/equipment_rooms.hpp"
#include "files/equipment_wiring.hpp"

namespace lightoff::files {
namespace {

using furnace::Model;
using furnace::Place;
using furnace::Reading;

/// What `make` finds wrong becomes an Error at `key` of `object`.
template <class Make>
auto judged(const Object& object, std::string_view key, Make&& make) -> decltype(make()) {
    try {
        return make();
    } catch (const std::invalid_argument& error) {
        throw object.error(key, "", error.what());
    }
}

/// The same for the wiring, whose builder says where.
furnace::Wiring wiring_of(const Document& document, const furnace::WiringDescription& wiring,
                          const control::Board& board) {
    try {
        return furnace::build_wiring(wiring, board);
    } catch (const furnace::DescriptionError& error) {
        // What a board's terminal is called stands in the board's section, all else in the wiring's.
        const bool of_board = error.pointer.rfind("/board/", 0) == 0;
        throw document.error_at(of_board ? error.pointer : "/wiring" + error.pointer, error.what());
    }
}

furnace::RatingPlate read_rating(const Object& o) {
    furnace::RatingPlate r;
    r.gas = o.text("gas", {1, 40});
    r.input_w = o.number("input", {1000.0, 1e6, "Btuh"});
    r.manifold_pa = o.number("manifold", {0.5, 14.0, "inwc"});
    r.rise_low_k = o.number("rise_low", {1.0, 200.0, "F_difference"});
    r.rise_high_k = o.number("rise_high", {1.0, 200.0, "F_difference"});
    r.external_static_pa = o.number("external_static", {0.01, 5.0, "inwc"});
    r.blower_full_load_a = o.number("blower_full_load", {0.1, 50.0, "A"});
    if (r.rise_low_k >= r.rise_high_k)
        throw o.error("rise_low_F_difference", "less than the upper end of the range");
    return r;
}

void read_places(const Object& root, Model& model) {
    for (const auto& [part, o] : root.members("places", {1, 64})) {
        Place place;
        place.part = part;
        place.where = o.choice<Place::Where>("in", {{"burner-compartment", Place::Where::burner_compartment},
                                                    {"blower-compartment", Place::Where::blower_compartment},
                                                    {"outside", Place::Where::outside},
                                                    {"living-room", Place::Where::living_room}});
        place.plug = o.flag_or("plug", false);
        model.places.push_back(std::move(place));
    }
}

int place_at(const Object& o, std::string_view key, const Model& model) {
    const std::string name = o.text(key, {1, 64});
    const int node = model.find_test_point(name);
    if (node < 0)
        throw o.error(key, "a node or terminal of the wiring");
    return node;
}

void read_readings(const Object& root, Model& model) {
    for (const Object& o : root.objects("readings", {0, 64})) {
        Reading r;
        r.name = o.text("name", {1, 64});
        if (o.has("through")) {
            r.kind = Reading::Kind::amps;
            const std::string element = o.text("through", {1, 64});
            r.a = judged(o, "through", [&] { return model.wiring.netlist.element(element); });
        } else {
            r.a = place_at(o, "from", model);
            r.b = place_at(o, "to", model);
        }
        model.readings.push_back(std::move(r));
    }
}

void read_tolerances(const Object& root, Model& model) {
    for (const Object& o : root.objects("tolerances", {0, 64})) {
        furnace::Tolerance t;
        t.path = o.text("condition");
        t.nominal = o.number("nominal", {-1e6, 1e6});
        t.spread = o.number("spread", {0.0, 1e6});
        judged(o, "condition", [&] { t.field = furnace::condition_field(model, t.path); });
        model.tolerances.push_back(std::move(t));
    }
}

/// Pins and lugs of terminals, and the bare metal that the file names.
void mark_touchable(const Object& root, const furnace::WiringDescription& wiring, Model& model) {
    model.touchable.assign(static_cast<std::size_t>(model.wiring.netlist.node_count()), 0);
    const auto touch = [&](const std::string& name) {
        model.touchable[static_cast<std::size_t>(model.find_test_point(name))] = 1;
    };
    for (const furnace::TerminalDescription& t : wiring.terminals) {
        touch(t.name + ".pin");
        touch(t.name + ".lug");
    }
    const std::vector<std::string> bare = root.texts("bare_metal", {0, 16});
    for (const std::string& name : bare) {
        if (model.find_test_point(name) < 0)
            throw root.error("bare_metal", "nodes of the wiring");
        touch(name);
    }
}

void read_pilot(const Object& root, const combustion::Fuel& fuel, Model& model) {
    const auto pilot = root.optional_object("standing_pilot");
    if (!pilot)
        return;
    model.standing_pilot = true;
    model.pilot_lowest_pa = pilot->number("lowest_inlet", {0.1, 20.0, "inwc"});
    model.pilot_hhv_w = pilot->number("input", {50.0, 5000.0, "Btuh"});
    const double fuel_mol_s =
        model.pilot_hhv_w / (combustion::hhv_j_m3(fuel) * combustion::standard_molar_volume_m3_mol);
    model.pilot_latent_w = fuel_mol_s * fuel.water * combustion::latent_heat_water_j_mol;
}

} // namespace

Model read_equipment(const Document& document, double tick_s) {
    const Object root = document.root();
    Model model;
    root.choice<bool>("format", {{kEquipmentFormat, true}});
    model.name = root.text("name", {1, 64});
    model.title = root.text("title", {1, 120});
    model.rating = read_rating(root.object("rating_plate"));

    model.air = read_air(root.object("air"));
    judged(root, "air", [&] { air::check(model.air); });
    model.draft = read_draft(root.object("draft"));
    judged(root, "draft", [&] { draft::check(model.draft); });
    const combustion::Fuel fuel = read_fuel(root.object("fuel"));
    model.combustion = read_burners(root.object("burners"), fuel);
    model.gas = read_gas(root.object("gas"), fuel);
    if (model.gas.burner_count != model.combustion.burner_count)
        throw root.object("burners").error("count", "as many burners as the gas section has orifices, " +
                                                        std::to_string(model.gas.burner_count));
    model.gas_kg_m3 = fuel.molar_mass_kg_mol / combustion::standard_molar_volume_m3_mol;
    read_pilot(root, fuel, model);
    model.heat = read_heat(root.object("heat"));

    if (const auto flame = root.optional_object("flame_sensing")) {
        model.flame.forward_siemens = flame->number("forward", {0.0, 10.0, "uS"});
        model.flame.reverse_siemens = flame->number("reverse", {0.0, 10.0, "uS"});
    }

    const control::BoardDescription board = read_board(root.object("board"));
    model.board = judged(root, "board", [&] { return control::build_board(board, tick_s); });
    const control::ThermostatDescription thermostat = read_thermostat(root.object("thermostat"));
    model.thermostat =
        judged(root, "thermostat", [&] { return control::make_thermostat(thermostat, tick_s); });

    const Object section = root.object("wiring");
    const furnace::WiringDescription wiring = read_wiring(section);
    model.wiring = wiring_of(document, wiring, model.board);
    model.nominal_line_v = root.number("nominal_line", {50.0, 260.0, "V"});
    if (model.wiring.inducer_motor >= 0)
        model.inducer_running_rad_s = root.number("inducer_running_speed", {1.0, 4000.0, "rpm"});

    mark_touchable(root, wiring, model);
    read_places(root, model);
    read_readings(root, model);
    read_tolerances(root, model);
    root.finish();
    return model;
}

} // namespace lightoff::files
