// SPDX-License-Identifier: MIT
#include "visit/words.hpp"

#include "bench/hand_words.hpp"
#include "bench/old_part.hpp"
#include "instruments/bag.hpp"

namespace lightoff::visit {

std::string place_text(const bench::Reading& reading) {
    if (reading.window < 0)
        return {};
    if (reading.display.quantity == instruments::Quantity::ambient_co)
        return "here";
    const bool multimeter =
        instruments::displays(instruments::Bag{})[static_cast<std::size_t>(reading.window)].name ==
        "multimeter";
    if (multimeter && reading.place_a == reading.place_b)
        return "leads on nothing";
    std::string text = reading.where;
    const std::string room = " against " + std::string(instruments::spot_row(instruments::Spot::room).title);
    if (text.size() > room.size() && text.compare(text.size() - room.size(), room.size(), room) == 0)
        text.replace(text.size() - room.size(), room.size(), " against the room");
    return text;
}

std::string clock_text(std::uint64_t ticks) {
    const std::uint64_t tenths = ticks / 2; // of 50 ms
    const std::uint64_t seconds = tenths / 10 % 60;
    return std::to_string(tenths / 600) + (seconds < 10 ? ":0" : ":") + std::to_string(seconds) + "." +
           std::to_string(tenths % 10);
}

std::string kind_text(lesson::Kind kind) {
    switch (kind) {
    case lesson::Kind::no_heat:
        return "no heat";
    case lesson::Kind::poor_heat:
        return "poor heat";
    case lesson::Kind::noise:
        return "noise";
    case lesson::Kind::smell_or_alarm:
        return "smell or alarm";
    case lesson::Kind::callback:
        return "callback";
    case lesson::Kind::nothing_wrong:
        return "service call";
    case lesson::Kind::tune_up:
        return "tune-up";
    case lesson::Kind::explore:
        return "explore";
    }
    return {};
}

namespace {

constexpr std::string_view kCautions =
    "Cautions. This is for training only. On a real furnace the local codes, the rating plate and the "
    "maker's instructions come first, and the work is for licensed people. If you smell gas where you "
    "arrive: touch no switch, leave, call from outside.";
constexpr std::size_t kShortBegin = kCautions.find("This is");
constexpr std::size_t kShortEnd = kCautions.find(" If you smell");

} // namespace

std::string_view cautions() {
    return kCautions;
}

std::string_view cautions_in_short() {
    return kCautions.substr(kShortBegin, kShortEnd - kShortBegin);
}

std::string window_text(const instruments::Display& display) {
    if (display.quantity == instruments::Quantity::glow)
        return display.mantissa != 0 ? "glows" : "stays dark";
    return instruments::text(display);
}

std::string value_text(const bench::Site& site, const bench::Reading& reading) {
    if (reading.window >= 0)
        return window_text(reading.display);
    if (reading.taken == bench::Taken::old_part)
        return bench::tested_in_words(site, reading.part, reading.bands, reading.values);
    const faults::Part& part = site.catalogue.parts[static_cast<std::size_t>(reading.part)];
    std::string text;
    for (std::size_t i = 0; i < reading.bands.size(); ++i)
        text += (i == 0 ? "" : "; ") +
                part.look.sights[i].bands[static_cast<std::size_t>(reading.bands[i])].words;
    if (text.empty())
        text = "nothing about it catches the eye";
    for (const bench::Trace& trace : site.traces)
        if (trace.part == reading.part)
            text += "; " + trace.words;
    return text;
}

std::string source_text(const bench::Site& site, const bench::Reading& reading) {
    if (reading.window < 0)
        return bench::part_title(site, reading.part) +
               (reading.taken == bench::Taken::old_part ? ", the old one" : "");
    const instruments::Bag bag;
    return std::string(instruments::displays(bag)[static_cast<std::size_t>(reading.window)].name);
}

std::string reading_text(const bench::Site& site, const bench::Reading& reading, std::size_t number) {
    const std::string text = "[" + std::to_string(number) + "] " + source_text(site, reading);
    if (reading.window < 0)
        return text + ": " + value_text(site, reading);
    return text + " " + value_text(site, reading) + ", " + place_text(reading) +
           (reading.taken == bench::Taken::kept ? ", kept" : "");
}

} // namespace lightoff::visit
