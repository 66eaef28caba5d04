// SPDX-License-Identifier: MIT
#include "cli/world_dump.hpp"

#include "files/disk.hpp"
#include "files/error.hpp"
#include "files/hash.hpp"
#include "files/json_text.hpp"
#include "lesson/log.hpp"
#include "units/field_checks.hpp"

#include <nlohmann/json.hpp>

#include <limits>
#include <type_traits>

namespace lightoff::cli {
namespace {

using files::Json;

constexpr std::size_t kLargestDump = std::size_t{1} << 30U; // some 10 hours of marks

/// A field as a JSON value: what JSON has no number for is a text.
template <class T>
std::string json_value(T value) {
    std::string text = units::text_of(value);
    if constexpr (std::is_floating_point_v<T>) {
        if (!(value - value == 0))
            return '"' + text + '"';
        if (text == "-0")
            text = "-0.0"; // or a reader may take it for the whole number 0
    }
    return text;
}

template <class T>
bool read_value(const Json& json, T& value) {
    if constexpr (std::is_enum_v<T>) {
        std::underlying_type_t<T> number{};
        const bool fine = read_value(json, number);
        value = static_cast<T>(number);
        return fine;
    } else if constexpr (std::is_floating_point_v<T>) {
        if (json.is_number())
            value = static_cast<T>(json.get<double>());
        else if (json == "inf" || json == "-inf")
            value = json == "inf" ? std::numeric_limits<T>::infinity() : -std::numeric_limits<T>::infinity();
        else if (json == "nan" || json == "-nan")
            value = std::numeric_limits<T>::quiet_NaN();
        else
            return false;
        return true;
    } else {
        if (!json.is_number_integer())
            return false;
        if (json.is_number_unsigned() || json.get<std::int64_t>() >= 0) {
            const auto number = json.get<std::uint64_t>();
            value = static_cast<T>(number);
            return number <= static_cast<std::uint64_t>(std::numeric_limits<T>::max());
        }
        value = static_cast<T>(json.get<std::int64_t>());
        return std::is_signed_v<T> && static_cast<std::int64_t>(value) == json.get<std::int64_t>();
    }
}

} // namespace

std::string dump_line(const bench::World& world) {
    std::string line = R"({"tick":)" + std::to_string(world.tick) + R"(,"world_hash":")" +
                       files::hex(lesson::world_hash(world)) + R"(","world":{)";
    bool first = true;
    units::for_each_field(world, [&](const std::string& path, std::string_view, const auto& value) {
        line += (first ? "\"" : ",\"") + path + "\":" + json_value(value);
        first = false;
    });
    return line + "}}\n";
}

DumpReader::DumpReader(const std::string& path) : path_(path), text_(files::read_file(path, kLargestDump)) {}

std::optional<bench::World> DumpReader::next() {
    if (at_ >= text_.size())
        return std::nullopt;
    const std::size_t end = std::min(text_.find('\n', at_), text_.size());
    const std::string_view text = std::string_view(text_).substr(at_, end - at_);
    at_ = end + 1;
    const std::string place = "line " + std::to_string(++line_);
    const auto refuse = [&](const std::string& found, const std::string& allowed) -> files::Error {
        return files::Error({path_, place, found, allowed, "is it a dump of this version of the program?"});
    };

    const Json json = files::parse_json(text, path_ + ": " + place);
    if (!json.is_object() || !json.contains("world") || !json["world"].is_object() ||
        !json.contains("world_hash"))
        throw refuse("a line without \"world\" and \"world_hash\"", "a line as `replay --dump` writes it");
    const Json& fields = json["world"];
    bench::World world;
    std::size_t count = 0;
    units::for_each_field(world, [&](const std::string& path, std::string_view, auto& value) {
        const auto field = fields.find(path);
        if (field == fields.end() || !read_value(*field, value))
            throw refuse(field == fields.end() ? "nothing" : files::describe(*field), "a number for " + path);
        ++count;
    });
    if (count != fields.size())
        throw refuse(std::to_string(fields.size()) + " fields", std::to_string(count) + ", those of a World");
    if (json["world_hash"] != files::hex(lesson::world_hash(world)))
        throw refuse("fields that don't have the hash beside them", "the dump as it was written");
    return world;
}

} // namespace lightoff::cli
