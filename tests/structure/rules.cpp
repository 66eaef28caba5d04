// SPDX-License-Identifier: MIT
#include "structure/rules.hpp"

#include "structure/rooms.hpp"
#include "structure/source_text.hpp"

namespace structure {
namespace {

/// Where a file stands.
struct Place {
    std::string_view path;
    Room room;
};

bool in_sim(const Place& place) {
    return place.room.name != "gui";
}
bool outside_files(const Place& place) {
    return in_sim(place) && place.room.name != "files" && place.room.name != "cli";
}
bool outside_cli(const Place& place) {
    return in_sim(place) && place.room.name != "cli";
}
bool outside_platform(const Place& place) {
    return place.path.rfind("gui/platform/", 0) != 0;
}
bool in_stepping_room(const Place& place) {
    return place.room.stepping;
}

/// Headers (by the beginning of their name) and names (with all that is inside them) forbidden in some
/// places.
struct Ban {
    bool (*applies)(const Place&);
    std::vector<std::string_view> headers;
    std::vector<std::string_view> names;
    std::string_view reason;
};

const std::vector<Ban>& bans() {
    static const std::vector<Ban> all{
        {outside_platform,
         {"SFML/"},
         {"sf"},
         "only gui/platform knows SFML, so that another platform can be added"},
        {in_sim, {"imgui", "GL/", "X11/"}, {"ImGui"}, "the simulation has no graphics"},
        {in_sim,
         {"chrono", "ctime", "time.h", "sys/time.h"},
         {"std::chrono", "std::time", "std::clock", "clock_gettime", "gettimeofday"},
         "the simulation has no clock: time is counted in ticks"},
        {in_sim,
         {"random", "stdlib.h"},
         {"std::rand", "std::srand", "std::random_device", "std::mt19937", "std::mt19937_64",
          "std::uniform_real_distribution", "std::uniform_int_distribution", "std::normal_distribution"},
         "random numbers come from units/random.hpp, which has the same bits everywhere"},
        {outside_files,
         {"fstream", "filesystem", "cstdio", "stdio.h", "fcntl.h", "unistd.h", "sys/"},
         {"std::fopen", "fopen", "std::ifstream", "std::ofstream", "std::filesystem"},
         "only files and cli touch a disk"},
        {outside_cli, {"iostream"}, {"std::cout", "std::cerr", "std::cin"}, "only cli talks to a terminal"},
        {in_stepping_room,
         {"unordered_map", "unordered_set"},
         {"std::unordered_map", "std::unordered_set", "std::unordered_multimap", "std::unordered_multiset",
          "std::hash"},
         "the order of an unordered container may differ between machines"},
        {in_stepping_room,
         {"math.h", "valarray"},
         {"std::exp",   "std::exp2",   "std::expm1",  "std::log",  "std::log2",      "std::log10",
          "std::log1p", "std::pow",    "std::sin",    "std::cos",  "std::tan",       "std::asin",
          "std::acos",  "std::atan",   "std::atan2",  "std::sinh", "std::cosh",      "std::tanh",
          "std::cbrt",  "std::hypot",  "std::fma",    "std::fmod", "std::remainder", "std::erf",
          "std::erfc",  "std::tgamma", "std::lgamma", "std::polar"},
         "the bits of libm differ between versions and processors: use units/pinned_math.hpp"},
    };
    return all;
}

bool starts_with(std::string_view text, std::string_view start) {
    return text.rfind(start, 0) == 0;
}

bool names_member(std::string_view name, std::string_view banned) {
    if (starts_with(name, "::"))
        name.remove_prefix(2);
    return name == banned || (starts_with(name, banned) && starts_with(name.substr(banned.size()), "::"));
}

/// "sim/draft/path.cpp" -> draft; anything below gui/ -> gui.
std::string_view room_name_of(std::string_view path) {
    if (starts_with(path, "gui/"))
        return "gui";
    if (!starts_with(path, "sim/"))
        return {};
    path.remove_prefix(4);
    return path.substr(0, path.find('/'));
}

std::string sentence(std::string_view path, std::string_view what, std::string_view reason) {
    return std::string(path) + ": " + std::string(what) + ": " + std::string(reason);
}

/// One quoted include, delimiters taken off. Empty when it is right.
std::string fault_of_include(const Place& place, std::string_view header, const Exists& exists) {
    if (header.find("..") != std::string_view::npos)
        return "an include goes by the room's name, never by '..'";
    const std::string target =
        starts_with(header, "gui/") ? std::string(header) : "sim/" + std::string(header);
    const std::optional<Room> room = find_room(room_name_of(target));
    if (!room || header.find('/') == std::string_view::npos)
        return "an include begins with a room's name";
    if (!exists(target))
        return "there is no such header in that room";
    if (room->name != place.room.name && room->rank >= place.room.rank)
        return "'" + std::string(room->name) + "' does not lie below '" + std::string(place.room.name) + "'";
    return {};
}

} // namespace

std::vector<std::string> breaches(std::string_view path, std::string_view text, const Exists& exists) {
    const std::optional<Room> room = find_room(room_name_of(path));
    if (!room)
        return {sentence(path, "unknown room", "add it to tests/structure/rooms.hpp")};
    const Place place{path, *room};
    std::vector<std::string> found;
    for (const std::string& include : includes_of(text)) {
        const std::string header = include.size() < 2 ? include : include.substr(1, include.size() - 2);
        if (include.front() == '"') {
            const std::string fault = fault_of_include(place, header, exists);
            if (!fault.empty())
                found.push_back(sentence(path, include, fault));
        } else if (include.front() != '<') {
            found.push_back(sentence(path, include, "an include names its header, not a macro"));
        }
        for (const Ban& ban : bans())
            for (std::string_view banned : ban.headers)
                if (ban.applies(place) && starts_with(header, banned) &&
                    (header.size() == banned.size() || banned.back() == '/' || banned == "imgui"))
                    found.push_back(sentence(path, include, ban.reason));
    }
    for (const std::string& name : names_in(text))
        for (const Ban& ban : bans())
            for (std::string_view banned : ban.names)
                if (ban.applies(place) && names_member(name, banned))
                    found.push_back(sentence(path, name, ban.reason));
    return found;
}

} // namespace structure
