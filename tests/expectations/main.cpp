// SPDX-License-Identifier: MIT
#define CATCH_CONFIG_RUNNER
#include <catch2/catch.hpp>

#include "expectations/page.hpp"

#include <iostream>

// `test_expectations page` prints docs/expectations.md as it should be.
int main(int argc, char** argv) {
    if (argc == 2 && std::string_view(argv[1]) == "page") {
        std::cout << lightoff::test::page();
        return 0;
    }
    return Catch::Session().run(argc, argv);
}
