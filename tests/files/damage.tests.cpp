// SPDX-License-Identifier: MIT
// Thousands of damaged copies of the bundled files: whatever the schema refuses, the loader refuses, too.
#include "files/bundled_schemas.hpp"
#include "files/disk.hpp"
#include "files/message_of.hpp"
#include "files/mutations.hpp"
#include "files/schema_check.hpp"
#include <catch2/catch.hpp>

using namespace lightoff::files;

namespace {

const std::string kScenarios = LIGHTOFF_SOURCE_DIR "/scenarios";

std::string reading(const BundledKind& kind, const Json& value) {
    return message_of([&] { kind.load(parse_document(canonical_text(value), "f.json")); });
}

} // namespace

TEST_CASE("loader and schema agree on every small damage to a bundled file") {
    for (const BundledKind& kind : bundled_kinds()) {
        const SchemaCheck schema(read_file(kScenarios + "/schema/" + kind.schema), kind.schema);
        for (const std::string& path : bundled_files(kScenarios, kind)) {
            std::size_t damages = 0;
            std::size_t refused = 0;
            for_each_mutation(read_document(path).value(), [&](const Mutation& mutation) {
                const std::string by_schema = message_of([&] { schema.check(mutation.value, "f.json"); });
                ++damages;
                if (by_schema == "no error")
                    return; // docs/data-formats.md lists what only the loader can tell
                ++refused;
                const std::string by_loader = reading(kind, mutation.value);
                INFO(path << mutation.pointer << "\n  loader: " << by_loader << "\n  schema: " << by_schema);
                CHECK(by_loader.rfind("f.json: ", 0) == 0);
                CHECK(by_loader.find('\n') == std::string::npos);
            });
            CHECK(refused > damages / 2);
        }
    }
}
