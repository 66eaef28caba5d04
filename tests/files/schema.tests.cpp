// SPDX-License-Identifier: MIT
#include "files/message_of.hpp"
#include "files/mutations.hpp"
#include "files/sample_loader.hpp"
#include "files/schema_check.hpp"
#include "files/schema_recorder.hpp"
#include <catch2/catch.hpp>

using namespace lightoff::files;

namespace {

std::string recorded_schema() {
    SchemaRecorder recorder;
    const Document document = parse_document(kSampleFile, "sample.json");
    document.record(&recorder);
    load_sample(document);
    return recorder.schema("Sample");
}

const SchemaCheck& schema() {
    static const SchemaCheck check(recorded_schema(), "sample.schema.json");
    return check;
}

std::string by_schema(const Json& value) {
    return message_of([&] { schema().check(value, "f.json"); });
}
std::string by_reader(const Json& value) {
    return message_of([&] { load_sample(parse_document(canonical_text(value), "f.json")); });
}
Json sample_with(const std::string& pointer, Json value) {
    Json sample = parse_json(kSampleFile, "");
    sample[Json::json_pointer(pointer)] = std::move(value);
    return sample;
}

} // namespace

TEST_CASE("reader and recorded schema agree on every small damage to a file") {
    const Json good = parse_json(kSampleFile, "");
    REQUIRE(by_schema(good) == "no error");
    REQUIRE(by_reader(good) == "no error");
    std::size_t refused = 0;
    std::size_t accepted = 0;
    for_each_mutation(good, [&](const Mutation& mutation) {
        const std::string reader = by_reader(mutation.value);
        const std::string schema = by_schema(mutation.value);
        INFO(mutation.pointer << "\n  reader: " << reader << "\n  schema: " << schema);
        CHECK((reader == "no error") == (schema == "no error"));
        CHECK(reader.find('\n') == std::string::npos);
        if (schema != "no error")
            CHECK(schema.rfind("f.json: ", 0) == 0);
        (reader == "no error" ? accepted : refused) += 1;
    });
    CHECK(refused > 150);
    CHECK(accepted < refused / 5); // deleted notes, optional keys and what lies under raw keys
}

TEST_CASE("a schema's refusal reads like the reader's") {
    CHECK(by_schema(sample_with("/gas/orifices/0/diameter_in", -0.08)) ==
          "f.json: /gas/orifices/0/diameter_in: found -0.08; allowed a number from 0.01 to 0.3");
    CHECK(by_schema(sample_with("/fuel", "oil")) ==
          "f.json: /fuel: found \"oil\"; allowed \"natural-gas\" or \"propane\"");
    CHECK(by_schema(sample_with("/gas/trails", 3)) ==
          "f.json: /gas/trails: found an unknown key; did you mean trials?");
    CHECK(by_schema(sample_with("/gas/manifold_pressure_Pa", 800)) ==
          "f.json: /gas: found an object; allowed one of manifold_pressure_Pa, manifold_pressure_kPa, "
          "manifold_pressure_inwc or manifold_pressure_psi");
    CHECK(by_schema(sample_with("/nodes", Json::array())) ==
          "f.json: /nodes: found an array of 0; allowed an array of 1 to 20 elements");
    CHECK(by_schema(sample_with("/title", "")) ==
          "f.json: /title: found \"\"; allowed a text of 1 to 80 characters");
    Json no_fuel = parse_json(kSampleFile, "");
    no_fuel.erase("fuel");
    CHECK(by_schema(no_fuel) == "f.json: found no key fuel");
}

TEST_CASE("what only the reader refuses is known") {
    // JSON Schema has no words for these; all else is refused by both.
    const std::vector<std::pair<std::string, Json>> only_reader{
        {"/timers/prepurge_s", 1.33},                 // no whole tick (multipleOf rounds differently)
        {"/fan_curve/flow_cfm", {0, 40, 20}},         // x does not rise
        {"/fan_curve/flow_cfm", {0, 20}},             // lists of unequal length
        {"/fan_curve/suction_inwc", {0.7, 1.1, 1.3}}, // y does not fall
        {"/title", "a\x01"},                          // a control character
        {"/parts/bad name", {{"resistance_ohm", 3}}}, // a name with a space
    };
    for (const auto& [pointer, value] : only_reader) {
        INFO(pointer);
        CHECK(by_reader(sample_with(pointer, value)) != "no error");
        CHECK(by_schema(sample_with(pointer, value)) == "no error");
    }
    // 2.0 is an integer to draft 7; the reader wants it written as one.
    CHECK(by_reader(sample_with("/gas/trials", 2.0)) != "no error");
}

TEST_CASE("a schema that is none is refused") {
    CHECK(message_of([] { SchemaCheck("{", "s.json"); }).rfind("s.json: 1:2: found the end of the file", 0) ==
          0);
    CHECK(message_of([] {
              SchemaCheck(R"({"type": 7})", "s.json");
          }).rfind("s.json: found a schema that can't be used", 0) == 0);
}
