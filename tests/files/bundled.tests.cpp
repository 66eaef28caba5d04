// SPDX-License-Identifier: MIT
// The files that come with the program, against their loaders and their schemas.
#include "files/bundled_schemas.hpp"
#include "files/message_of.hpp"
#include "files/schema_check.hpp"
#include "files/temporary_folder.hpp"
#include <catch2/catch.hpp>

using namespace lightoff::files;

namespace {

const std::string kScenarios = LIGHTOFF_SOURCE_DIR "/scenarios";

} // namespace

TEST_CASE("the schemas are those that the loaders make") {
    for (const BundledKind& kind : bundled_kinds()) {
        INFO(kind.schema << " is out of date; run bin/write_schemas");
        CHECK((bytes_of(kScenarios + "/schema/" + kind.schema) == recorded_schema(kScenarios, kind)));
    }
}

TEST_CASE("every bundled file passes its schema and its loader") {
    for (const BundledKind& kind : bundled_kinds()) {
        const SchemaCheck schema(bytes_of(kScenarios + "/schema/" + kind.schema), kind.schema);
        for (const std::string& path : bundled_files(kScenarios, kind)) {
            const Document document = read_document(path);
            CHECK(message_of([&] { schema.check(document.value(), path); }) == "no error");
            CHECK(message_of([&] { kind.load(document); }) == "no error");
        }
    }
}
