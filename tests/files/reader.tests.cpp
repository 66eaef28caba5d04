// SPDX-License-Identifier: MIT
#include "files/reader.hpp"
#include "files/bundle.hpp"
#include "files/message_of.hpp"
#include "units/convert.hpp"
#include <catch2/catch.hpp>
#include <functional>
#include <set>

using namespace lightoff;
using namespace lightoff::files;

namespace {

/// The message that comes of reading `text` so.
std::string refusal(std::string_view text, const std::function<void(const Object&)>& load) {
    return message_of([&] {
        const Object root = parse_document(text, "f.json").root();
        load(root);
        root.finish();
    });
}

Object root_of(std::string_view text) {
    return parse_document(text, "f.json").root();
}

enum class Fuel { natural_gas, propane };
Fuel fuel_of(const Object& object) {
    return object.choice<Fuel>("fuel", {{"natural-gas", Fuel::natural_gas}, {"propane", Fuel::propane}});
}

constexpr Range kDiameter{0.01, 0.3, "in"};

} // namespace

TEST_CASE("every unit turns into SI as the conversions of the units room do") {
    const auto si = [](std::string_view suffix, double value) { return to_si(unit_of(suffix), value); };
    CHECK(si("inwc", 3.5) == Approx(units::inwc_to_pa(3.5)).epsilon(1e-15));
    CHECK(si("psi", 2.0) == Approx(units::psi_to_pa(2.0)).epsilon(1e-15));
    CHECK(si("F", 70.0) == Approx(units::fahrenheit_to_k(70.0)).epsilon(1e-15));
    CHECK(si("F", -40.0) == Approx(si("C", -40.0)).epsilon(1e-15)); // the two scales meet there
    CHECK(si("C", 20.0) == Approx(293.15).epsilon(1e-15));
    CHECK(si("F_difference", 18.0) == Approx(10.0).epsilon(1e-15));
    CHECK(si("in", 1.0) == 0.0254);                                 // NIST SP 811, exact
    CHECK(si("ft3", 1.0) == Approx(0.028316846592).epsilon(1e-15)); // NIST SP 811
    CHECK(si("cfm", 1000.0) == Approx(units::cfm_to_m3s(1000.0)).epsilon(1e-15));
    CHECK(si("Btuh", 80000.0) == Approx(units::btuh_to_w(80000.0)).epsilon(1e-15));
    CHECK(si("rpm", 3450.0) == Approx(units::rpm_to_rad_s(3450.0)).epsilon(1e-15));
    CHECK(si("Btu_per_ft3", 1050.0) == Approx(units::btu_per_ft3_to_j_per_m3(1050.0)).epsilon(1e-15));
    CHECK(si("Btu_per_F", 1.0) ==
          Approx(1899.1008).epsilon(1e-6)); // NIST SP 811: 1 Btu(IT)/F = 1.899101 E+03 J/K
    CHECK(si("pF", 100.0) == Approx(1e-10).epsilon(1e-15));
    CHECK(si("ticks", 20.0) == 1.0);
    std::set<std::string_view> suffixes;
    for (const Unit& unit : units_table()) {
        INFO(unit.suffix);
        CHECK(suffixes.insert(unit.suffix).second);
        CHECK(from_si(unit, to_si(unit, 7.25)) == Approx(7.25).epsilon(1e-12));
    }
    CHECK_THROWS_AS(unit_of("furlong"), std::invalid_argument);
}

TEST_CASE("a number is read in any unit of its quantity") {
    for (const char* text :
         {R"({"diameter_in": 0.1})", R"({"diameter_mm": 2.54})", R"({"diameter_m": 0.00254})"})
        CHECK(root_of(text).number("diameter", kDiameter) == Approx(0.00254).epsilon(1e-12));
    CHECK(root_of("{}").number_or("diameter", kDiameter, 0.5) == 0.5);
    CHECK(root_of(R"({"x_F": 70})").number("x", {-60, 200, "F"}) == Approx(294.2611).epsilon(1e-6));
    CHECK_FALSE(std::signbit(root_of(R"({"x": -0.0})").number("x", {-1, 1})));
    CHECK(root_of(R"({"x_s": [0, 0.5]})").numbers("x", {0, 1, "s"}, {1, 3}) == std::vector{0.0, 0.5});
}

TEST_CASE("a number out of range is refused in the unit it was written in") {
    const auto load = [](const Object& o) {
        for (const Object& orifice : o.object("gas").objects("orifices", {1, 8}))
            orifice.number("diameter", kDiameter);
    };
    CHECK(refusal(R"({"gas": {"orifices": [{"diameter_in": -0.08}]}})", load) ==
          "f.json: /gas/orifices/0/diameter_in: found -0.08; allowed 0.01 to 0.3");
    CHECK(refusal(R"({"gas": {"orifices": [{"diameter_in": 0.01}, {"diameter_mm": 7.621}]}})", load) ==
          "f.json: /gas/orifices/1/diameter_mm: found 7.621; allowed 0.254 to 7.62");
    CHECK(refusal(R"({"gas": {"orifices": [{"diameter_in": "0.08"}]}})", load) ==
          "f.json: /gas/orifices/0/diameter_in: found \"0.08\"; allowed a number from 0.01 to 0.3");
    CHECK(refusal(R"({"gas": {"orifices": []}})", load) ==
          "f.json: /gas/orifices: found an array of 0; allowed 1 to 8 elements");
    CHECK(refusal(R"({"gas": {"orifices": {}}})", load) ==
          "f.json: /gas/orifices: found an object; allowed an array of 1 to 8 elements");
    CHECK(refusal(R"({"gas": [1]})", load) == "f.json: /gas: found an array of 1; allowed an object");
    CHECK(refusal("[]", load) == "f.json: found an array of 0; allowed an object");
    CHECK(refusal("7", load) == "f.json: found 7; allowed an object");
    CHECK(refusal(R"({"ohms_ohm": -5})", [](const Object& o) {
              o.number("ohms", {0, 1e9, "ohm"});
          }) == "f.json: /ohms_ohm: found -5; allowed 0 to 1e+09");
}

TEST_CASE("a missing key, a wrong unit and two units at once are told apart") {
    const auto load = [](const Object& o) { o.number("diameter", kDiameter); };
    CHECK(refusal("{}", load) ==
          "f.json: found no key diameter_m, diameter_mm, diameter_cm, diameter_in or diameter_ft; "
          "allowed one of them");
    CHECK(refusal(R"({"diameter_psi": 1})", load) ==
          "f.json: found no key diameter_m, diameter_mm, diameter_cm, diameter_in or diameter_ft; allowed "
          "one of them; "
          "is \"diameter_psi\" meant?");
    CHECK(refusal(R"({"diameter": 1})", load).find("is \"diameter\" meant?") != std::string::npos);
    CHECK(refusal(R"({"diametre_in": 1})", load).find("is \"diametre_in\" meant?") != std::string::npos);
    CHECK(refusal(R"({"diameter_in": 0.1, "diameter_mm": 2.54})", load) ==
          "f.json: /diameter_in: found this key beside /diameter_mm; allowed one of them");
    CHECK(
        refusal(R"({"diameter_in": 0.1, "diameter_mile": 2})", load) ==
        "f.json: /diameter_mile: found a key of unknown unit; allowed diameter_m, diameter_mm, diameter_cm, "
        "diameter_in or diameter_ft");
    CHECK(refusal(R"({"diameter_kg": 0.1})",
                  [](const Object& o) { o.number_or("diameter", kDiameter, 0.0); }) ==
          "f.json: /diameter_kg: found a key of unknown unit; allowed diameter_m, diameter_mm, diameter_cm, "
          "diameter_in "
          "or diameter_ft");
}

TEST_CASE("a key that nobody asked for is refused, however deep it lies") {
    const auto load = [](const Object& o) {
        o.object("gas").text("name");
        for (const auto& [name, part] : o.members("parts", {1, 9}))
            part.number("resistance", {0, 1e6, "ohm"});
        o.raw("extra");
    };
    const std::string good = R"({"gas": {"name": "a", "note": "why"}, "parts": {"k1": {"resistance_ohm": 3}},
                                 "extra": {"free": [{"form": 1}]}, "$schema": "x.json"})";
    CHECK(refusal(good, load) == "no error");
    const auto with = [&](const std::string& from, const std::string& to) {
        std::string text = good;
        return text.replace(text.find(from), from.size(), to);
    };
    CHECK(refusal(with(R"("name": "a",)", R"("name": "a", "nmae": "b",)"), load) ==
          "f.json: /gas/nmae: found an unknown key; did you mean name?");
    CHECK(refusal(with(R"(_ohm": 3)", R"(_ohm": 3, "colour": "red")"), load) ==
          "f.json: /parts/k1/colour: found an unknown key");
    CHECK(refusal(with(R"("note": "why")", R"("note": 7)"), load) ==
          "f.json: /gas/note: found 7; allowed a text of 1 to 4000 characters");
    CHECK(refusal(with(R"("name")", R"("$schema": "x", "name")"), load) ==
          "f.json: /gas/$schema: found an unknown key");
    CHECK(refusal(with(R"("k1")", R"("k 1")"), load) ==
          "f.json: /parts/k 1: found the name \"k 1\"; allowed 1 to 64 letters, digits or any of - _ . :");
    CHECK(refusal(with(R"({"k1": {"resistance_ohm": 3}})", "{}"), load) ==
          "f.json: /parts: found 0 members; allowed 1 to 9 members");
}

TEST_CASE("words, texts, flags and whole numbers are checked") {
    CHECK(fuel_of(root_of(R"({"fuel": "propane"})")) == Fuel::propane);
    CHECK(refusal(R"({"fuel": "propan"})", fuel_of) ==
          "f.json: /fuel: found \"propan\"; allowed natural-gas or propane; did you mean propane?");
    CHECK(refusal(R"({"fuel": 1})", fuel_of) == "f.json: /fuel: found 1; allowed natural-gas or propane");
    CHECK(refusal(R"({"fool": "propane"})", fuel_of) == "f.json: found no key fuel; is \"fool\" meant?");
    CHECK(refusal(R"({"t": ""})", [](const Object& o) { o.text("t"); }) ==
          "f.json: /t: found a text of 0 characters; allowed 1 to 4000 characters");
    CHECK(refusal(R"({"t": "a\u0007b"})", [](const Object& o) { o.text("t"); }) ==
          "f.json: /t: found \"a\\x07b\"; allowed text without control characters");
    CHECK(root_of(R"({"t": "éé"})").text("t", {2, 2}) == "éé");
    CHECK(refusal(R"({"t": ["a", 1]})", [](const Object& o) {
              o.texts("t", {0, 5});
          }) == "f.json: /t/1: found 1; allowed a text of 1 to 4000 characters");
    CHECK(refusal(R"({"on": 1})", [](const Object& o) { o.flag("on"); }) ==
          "f.json: /on: found 1; allowed true or false");
    CHECK(root_of(R"({"on": true})").flag("on"));
    CHECK(root_of("{}").flag_or("on", true));
    const auto count = [](const Object& o) { o.integer("n", 1, 8); };
    CHECK(root_of(R"({"n": 8})").integer("n", 1, 8) == 8);
    for (const char* bad :
         {"0", "9", "2.5", "2.0", "null", "18446744073709551615", "-9223372036854775808", "1e3"})
        CHECK(
            refusal(R"({"n": )" + std::string(bad) + "}", count).find("allowed a whole number from 1 to 8") !=
            std::string::npos);
}

TEST_CASE("a timer is a whole number of ticks") {
    const auto read = [](const char* text) { return root_of(text).ticks("purge", {0, 600, "s"}); };
    CHECK(read(R"({"purge_s": 15})") == 300);
    CHECK(read(R"({"purge_s": 0.15})") == 3);
    CHECK(read(R"({"purge_s": 599.95})") == 11999);
    CHECK(read(R"({"purge_ticks": 7})") == 7);
    CHECK(read(R"({"purge_min": 2})") == 2400);
    const auto load = [](const Object& o) { o.ticks("purge", {0, 600, "s"}); };
    CHECK(refusal(R"({"purge_s": 1.33})", load) ==
          "f.json: /purge_s: found 1.33; allowed a whole number of ticks of 0.05 s");
    CHECK(refusal(R"({"purge_ticks": 1.5})", load) ==
          "f.json: /purge_ticks: found 1.5; allowed a whole number of ticks of 1 ticks");
    CHECK(refusal(R"({"purge_s": -1})", load) == "f.json: /purge_s: found -1; allowed 0 to 600");
}

TEST_CASE("an absurd curve is refused at the point that is wrong") {
    const auto load = [](const Object& o) {
        o.curve("fan", {"flow", {0, 100, "cfm"}}, {"suction", {0, 3, "inwc"}}, Trend::falling);
    };
    const Curve curve =
        root_of(R"({"fan": {"flow_cfm": [0, 30], "suction_Pa": [300, 100]}})")
            .curve("fan", {"flow", {0, 100, "cfm"}}, {"suction", {0, 3, "inwc"}}, Trend::falling);
    CHECK(curve.x[1] == Approx(units::cfm_to_m3s(30)));
    CHECK(curve.y == std::vector{300.0, 100.0});
    CHECK(refusal(R"({"fan": {"flow_cfm": [0, 30, 30], "suction_inwc": [1.2, 1, 0.9]}})", load) ==
          "f.json: /fan/flow_cfm/2: found 30 after 30; allowed values that rise from point to point");
    CHECK(refusal(R"({"fan": {"flow_cfm": [0, 30, 40], "suction_inwc": [1.2, 1.3, 0.9]}})", load) ==
          "f.json: /fan/suction_inwc/1: found 1.3 after 1.2; allowed values that fall from point to point");
    CHECK(refusal(R"({"fan": {"flow_cfm": [0, 30], "suction_inwc": [1.2, 1, 0.9]}})", load) ==
          "f.json: /fan: found 2 and 3 values; allowed lists of equal length");
    CHECK(refusal(R"({"fan": {"flow_cfm": [0], "suction_inwc": [1.2]}})", load) ==
          "f.json: /fan/flow_cfm: found an array of 1; allowed 2 to 64 elements");
    CHECK(refusal(R"({"fan": {"flow_cfm": [0, 3000], "suction_inwc": [1.2, 1]}})", load) ==
          "f.json: /fan/flow_cfm/1: found 3000; allowed 0 to 100");
    CHECK(refusal(R"({"fan": {"flow_cfm": [0, null], "suction_inwc": [1.2, 1]}})", load) ==
          "f.json: /fan/flow_cfm/1: found null; allowed a number from 0 to 100");
}

TEST_CASE("a loader reports what only it can judge in the same form") {
    const Object root = root_of(R"({"wire": {"from": "k9"}})");
    CHECK(
        std::string(root.object("wire").error("from", "a declared node", "declare it under /nodes").what()) ==
        "f.json: /wire/from: found \"k9\"; allowed a declared node; declare it under /nodes");
}

TEST_CASE("a bundle's hash hears every value and no layout") {
    const auto canonical = [](std::string_view text) { return parse_document(text, "").canonical(); };
    const Bundle bundle{canonical(R"({"a": 1, "b": [2]})"), "{}", "{}", "{}", "{}"};
    CHECK(bundle_hash(bundle) == bundle_hash({canonical("{\"b\":[2],\r\n\"a\":1}"), "{}", "{}", "{}", "{}"}));
    CHECK(bundle_hash(bundle) != bundle_hash({canonical(R"({"a": 1, "b": [3]})"), "{}", "{}", "{}", "{}"}));
    CHECK(bundle_hash({"1", "2", "3", "4", "5"}) != bundle_hash({"2", "1", "3", "4", "5"}));
    CHECK(bundle_hash({"12", "", "3", "4", "5"}) != bundle_hash({"1", "2", "3", "4", "5"}));
}
