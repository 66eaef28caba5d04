// SPDX-License-Identifier: MIT
// Writes scenarios/schema/*.schema.json anew, after a change to a loader or to the bundled files.
#include "files/bundled_schemas.hpp"
#include "files/disk.hpp"
#include <cstdio>
#include <exception>

int main() {
    const std::string scenarios = LIGHTOFF_SOURCE_DIR "/scenarios";
    try {
        for (const BundledKind& kind : bundled_kinds())
            lightoff::files::replace_file(scenarios + "/schema/" + kind.schema,
                                          recorded_schema(scenarios, kind));
    } catch (const std::exception& error) {
        std::fprintf(stderr, "%s\n", error.what());
        return 1;
    }
    return 0;
}
