// SPDX-License-Identifier: MIT
// Every input that the fuzzers found worth keeping, in every build and with every compiler.
#include "files/temporary_folder.hpp"
#include "fuzz/fuzz_one.hpp"
#include <catch2/catch.hpp>

namespace {

template <class Fuzz>
std::size_t replay(const std::string& folder, Fuzz fuzz) {
    std::size_t inputs = 0;
    for (const auto& entry : std::filesystem::directory_iterator(LIGHTOFF_SOURCE_DIR + folder)) {
        INFO(entry.path().string());
        CHECK_NOTHROW(fuzz(bytes_of(entry.path().string())));
        ++inputs;
    }
    return inputs;
}

} // namespace

TEST_CASE("the corpus of JSON files is read or refused cleanly") {
    CHECK(replay("/tests/fuzz/corpus/json", fuzz_json) >= 20);
}
TEST_CASE("the corpus of attempts is read or refused cleanly") {
    CHECK(replay("/tests/fuzz/corpus/attempt", fuzz_attempt) >= 10);
}
TEST_CASE("the bundled files pass what the fuzzers check") {
    CHECK(replay("/scenarios/equipment", fuzz_json) >= 1);
    CHECK(replay("/scenarios/calls", fuzz_json) >= 1);
}
