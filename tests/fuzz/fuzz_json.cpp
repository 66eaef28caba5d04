// SPDX-License-Identifier: MIT
#include "files/equipment.hpp"
#include "files/sample_loader.hpp"
#include "files/scenario.hpp"
#include "files/utf8.hpp"
#include "fuzz/fuzz_one.hpp"
#include <stdexcept>

using namespace lightoff::files;

namespace {

void check_message(std::string_view message) {
    if (message.find('\n') != std::string_view::npos)
        throw std::logic_error("a message of several lines");
    if (find_bad_utf8(message) != std::string_view::npos)
        throw std::logic_error("a message that is not UTF-8");
    if (message.rfind("input: ", 0) != 0)
        throw std::logic_error("a message that does not name the file");
}

} // namespace

void fuzz_json(std::string_view input) {
    const auto refused = [](const auto& act) {
        try {
            act();
            return false;
        } catch (const Error& error) {
            check_message(error.what());
            return true;
        }
    };
    const auto parse = [](std::string_view text) { return parse_document(text, "input"); };
    if (refused([&] { parse(input); }))
        return;
    const std::string canonical = parse(input).canonical();
    if (parse(canonical).canonical() != canonical)
        throw std::logic_error("canonical text that reads back as another");
    refused([&] { load_sample(parse(input)); });
    refused([&] { read_equipment(parse(input)); });
    refused([&] { read_scenario(parse(input)); });
}
