// SPDX-License-Identifier: MIT
#pragma once
#include <string_view>

/// What a fuzzer, and the replay of its corpus in every build, do with one input. They throw
/// std::logic_error if something is wrong with the program; files::Error is what bad input deserves.
void fuzz_json(std::string_view input);
void fuzz_attempt(std::string_view input);
