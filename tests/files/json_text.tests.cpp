// SPDX-License-Identifier: MIT
#include "files/json_text.hpp"
#include "files/disk.hpp"
#include "files/message_of.hpp"
#include "files/reader.hpp"
#include "files/utf8.hpp"
#include <array>
#include <catch2/catch.hpp>
#include <clocale>
#include <nlohmann/json.hpp>

using namespace lightoff::files;

namespace {

const std::string kSample = R"({
  "title": "Kalter Flur, 20 °C — 冷",
  "gas": {"orifices": [{"diameter_in": 0.082}, {"diameter_in": 8.2e-2}], "propane": false},
  "seed": 18446744073709551615,
  "nothing": null
}
)";

std::string refusal(std::string_view text) {
    return message_of([&] { static_cast<void>(parse_json(text, "f.json")); });
}

std::string nested(std::size_t levels) {
    return std::string(levels, '[') + std::string(levels, ']');
}

} // namespace

TEST_CASE("a well-formed text comes through whole") {
    const Json value = parse_json(kSample, "f.json");
    CHECK(value["gas"]["orifices"][1]["diameter_in"].get<double>() == 0.082);
    CHECK(value["seed"].get<std::uint64_t>() == 18446744073709551615ULL);
    CHECK(canonical_text(parse_json(canonical_text(value), "again")) == canonical_text(value));
}

TEST_CASE("a text cut at any byte is refused with line and column") {
    const std::string text = kSample.substr(0, kSample.size() - 1); // the line feed at the end is no loss
    for (std::size_t length = 0; length < text.size(); ++length) {
        const std::string message = refusal(text.substr(0, length));
        INFO("cut after byte " << length << ": " << message);
        CHECK(message.rfind("f.json: ", 0) == 0);
        CHECK(message.find("found ") != std::string::npos);
        CHECK(message.find('\n') == std::string::npos);
        CHECK(find_bad_utf8(message) == std::string::npos);
    }
    CHECK(
        refusal(R"({"a": [1,)") ==
        "f.json: 1:10: found the end of the file; allowed the rest of the JSON text; the file looks cut off");
}

TEST_CASE("what is wrong with a text is said with its place") {
    CHECK(refusal("{\"a\": 1,\n \"b\": 2,\n \"a\": 3}") ==
          "f.json: /a: found this key twice; allowed each key once in an object");
    CHECK(refusal(R"({"x": [0, {"a/b": {"k": 1, "k": 1}}]})") ==
          "f.json: /x/1/a~1b/k: found this key twice; allowed each key once in an object");
    CHECK(refusal("{\"a\": 1,\n  \"b\" 2}").rfind("f.json: 2:7: found ", 0) == 0);
    CHECK(refusal("{} {}").rfind("f.json: 1:4: found ", 0) == 0);
    CHECK(refusal("{\"a\": .5}").rfind("f.json: 1:7: found ", 0) == 0);
    CHECK(refusal("{\"a\": nan}").rfind("f.json: 1:8: found ", 0) == 0);
    CHECK(refusal("{\"a\": Infinity}").rfind("f.json: 1:7: found ", 0) == 0);
    CHECK(refusal("{\"a\": 1,}").rfind("f.json: 1:9: found ", 0) == 0);
    CHECK(refusal("{\"a\": \"\\ud800\"}").rfind("f.json: 1:", 0) == 0); // half of a surrogate pair
}

TEST_CASE("bytes that are not UTF-8 are refused with their place") {
    CHECK(refusal("{\"a\":\n \"\xE9t\xE9\"}") == "f.json: 2:3: found byte E9 (hexadecimal), which is not "
                                                 "UTF-8; allowed UTF-8 text; save the file as UTF-8");
    // The Unicode Standard, table 3-7: overlong, surrogate, above U+10FFFF, lone continuation, cut short
    for (const char* bad : {"\xC0\x80", "\xC1\xBF", "\xE0\x9F\xBF", "\xED\xA0\x80", "\xF0\x8F\xBF\xBF",
                            "\xF4\x90\x80\x80", "\xF5\x80\x80\x80", "\x80", "\xE2\x82", "\xFF"})
        CHECK(find_bad_utf8(bad) == 0);
    for (const char* good : {"\x7F", "\xC2\x80", "\xDF\xBF", "\xE0\xA0\x80", "\xED\x9F\xBF", "\xEE\x80\x80",
                             "\xF0\x90\x80\x80", "\xF4\x8F\xBF\xBF"})
        CHECK(find_bad_utf8(good) == std::string::npos);
    // a number broken off by half a character's first byte: the library's own message would hold it
    const std::string message = refusal("{\"a\": 1e\xC3\xA9}");
    CHECK(message.rfind("f.json: 1:9: found ", 0) == 0);
    CHECK(find_bad_utf8(message) == std::string::npos);
    // UTF-16 from an editor
    using namespace std::string_literals;
    CHECK(refusal("\xFF\xFE{\0}\0"s).rfind("f.json: 1:1: found byte FF", 0) == 0);
}

TEST_CASE("a zero byte does not end the text") {
    using namespace std::string_literals;
    CHECK(refusal("{}\0{\"a\":1}"s) ==
          "f.json: 1:3: found control character 00 (hexadecimal); allowed text, tabs and line ends");
}

TEST_CASE("nesting has a limit") {
    CHECK_NOTHROW(parse_json(nested(kDeepestNesting), "f.json"));
    const std::string message = refusal(nested(kDeepestNesting + 1));
    CHECK(message.find("found objects and arrays nested deeper than that; allowed 64 levels") !=
          std::string::npos);
    CHECK(refusal(std::string(1U << 20U, '[')).find("allowed 64 levels") != std::string::npos);
    CHECK(refusal(std::string(1U << 20U, '{')).find("f.json: 1:2: found ") == 0);
}

TEST_CASE("numbers that a double can't hold are refused") {
    for (const char* number : {"1e999", "-1e999", "1e-999", "123456789e400"}) {
        const std::string message = refusal(R"({"a": [0, )" + std::string(number) + "]}");
        CHECK(message ==
              "f.json: /a/1: found " + std::string(number) + "; allowed a number that a double can hold");
    }
    CHECK(parse_json("1e308", "").get<double>() == 1e308);
    CHECK(parse_json("-0.0", "").get<double>() == 0.0);
    CHECK(parse_json("-0", "").is_number());
    CHECK(parse_json("123456789012345678901234567890", "").get<double>() == 123456789012345678901234567890.0);
}

TEST_CASE("numbers read the same in a locale with a decimal comma") {
    const std::array names{"de_DE.UTF-8", "de_DE.utf8", "fr_FR.UTF-8"};
    const bool found = std::any_of(names.begin(), names.end(),
                                   [](const char* name) { return std::setlocale(LC_ALL, name) != nullptr; });
    const double read = parse_json("0.082", "").get<double>();
    const std::string written = canonical_text(parse_json("0.082", ""));
    const std::string shown = number_text(0.082);
    std::setlocale(LC_ALL, "C");
    if (!found)
        WARN("no locale with a decimal comma on this machine; only the C locale was tried");
    CHECK(read == 0.082);
    CHECK(written == "0.082");
    CHECK(shown == "0.082");
}
