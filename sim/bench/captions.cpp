// SPDX-License-Identifier: MIT
#include "bench/captions.hpp"

#include "bench/hand_words.hpp"
#include "instruments/bag.hpp"

#include <algorithm>
#include <utility>

namespace lightoff::bench {
namespace {

// How long a thing stands until a person is sure of it, in ticks of 50 ms, and where one word ends and the
// next begins, in the coarse steps of the percept. Teaching values.
constexpr std::uint32_t kHumTicks = 20;
constexpr std::uint32_t kCatchTicks = 30; ///< a light-off is heard out before it is called soft or loud
constexpr std::uint32_t kOutTicks = 6;
constexpr std::uint32_t kRoarTicks = 100;
constexpr std::uint32_t kFlameTicks = 60;
constexpr std::uint32_t kRolloutTicks = 4;
constexpr std::uint32_t kGlowFirstTicks = 6;
constexpr std::uint32_t kGlowTicks = 80;
constexpr std::uint32_t kTurningTicks = 20;
constexpr std::uint32_t kAirTicks = 80;
constexpr std::uint32_t kSmellTicks = 20;
constexpr std::uint32_t kShakingTicks = 40;
constexpr std::uint32_t kJumpTicks = 60;
constexpr std::uint32_t kSilenceTicks = 20;
constexpr std::uint64_t kChatterTicks = 40;     ///< in which a relay that chatters clicks so many times ...
constexpr std::uint64_t kChatterEndsTicks = 40; ///< ... and that it is quiet for when it has ended
constexpr std::uint64_t kWithThatTicks = 60;    ///< what begins so soon after an act is told together with it

constexpr std::array<std::string_view, 5> kSenses{"seen", "heard", "smelt", "felt", "read"};
constexpr std::array<std::string_view, kAbouts> kNames{"lamp",  "inducer", "blower", "burners", "igniter",
                                                       "click", "valve",   "air",    "smell",   "shaking",
                                                       "beep",  "window",  "hands"};

constexpr std::uint8_t kSoft = 2; ///< a light-off of so many tenths is lost in the roar

/// A sound furnace, warm or cold, comes to 3 to 5 tenths: a puff (teaching value).
std::string_view light_off_words(std::uint8_t loudest) {
    if (loudest <= kSoft)
        return "softly";
    if (loudest <= 5)
        return "with a puff";
    return loudest <= 7 ? "with a thump" : "with a bang";
}

std::string_view colour_of(std::uint8_t glow) {
    constexpr std::array<std::string_view, 6> kColours{"dark",   "dull red", "cherry red",
                                                       "orange", "yellow",   "yellow-white"};
    return kColours[glow];
}

/// Colours of glowing bodies by temperature, as workshop tables have them (from memory).
std::uint8_t glow_class(std::uint16_t kelvin) {
    if (kelvin == 0)
        return 0;
    if (kelvin < 950)
        return 1;
    if (kelvin < 1150)
        return 2;
    if (kelvin < 1350)
        return 3;
    return kelvin < 1550 ? 4 : 5;
}

/// How one flame looks, as one number: 0 there is none, else a word for each of its features.
std::uint8_t look_of(const FlamePercept& flame) {
    if (flame.strength == 0)
        return 0;
    const auto colour = static_cast<unsigned>(flame.yellow <= 2 ? 0 : flame.yellow <= 5 ? 1 : 2);
    const auto size = static_cast<unsigned>(flame.length <= 6 ? 1 : flame.length >= 13 ? 2 : 0);
    const auto seat = static_cast<unsigned>(flame.lift >= 3 ? 1 : 0);
    const auto edge = static_cast<unsigned>(flame.softness >= 4 ? 1 : 0);
    const auto aim = static_cast<unsigned>(flame.touch >= 2 ? 1 : 0);
    return static_cast<std::uint8_t>(1U + colour + 3U * size + 9U * seat + 18U * edge + 36U * aim);
}

std::string words_of(std::uint8_t look) {
    if (look == 0)
        return "no flame";
    const unsigned features = look - 1U;
    constexpr std::array<std::string_view, 3> kColours{"blue", "blue with yellow tips", "yellow"};
    std::string words(kColours[features % 3]);
    if (features / 3 % 3 == 1)
        words += ", short";
    if (features / 3 % 3 == 2)
        words += ", long";
    if (features / 9 % 2 == 1)
        words += ", lifted off the burner";
    if (features / 18 % 2 == 1)
        words += ", soft and wavering";
    if (features / 36 == 1)
        words += ", striking the edge of its opening";
    return words;
}

constexpr std::array<std::string_view, 5> kRoars{"no roar", "a weak murmur", "a gentle roar", "an even roar",
                                                 "a heavy roar"};
constexpr std::array<std::string_view, 4> kAir{"no air moves", "a weak stream", "air", "a strong stream"};

/// "at your ears" levels of the roar.
std::uint8_t roar_class(std::uint8_t roar) {
    if (roar == 0)
        return 0;
    return roar < 4 ? 1 : roar < 8 ? 2 : roar < 13 ? 3 : 4;
}

std::uint8_t air_class(std::uint8_t tenths) {
    if (tenths == 0)
        return 0;
    return tenths < 4 ? 1 : tenths < 8 ? 2 : 3;
}

/// From steps of 5 K over the room's air.
std::uint8_t warmth_class(std::uint8_t steps) {
    if (steps <= 1)
        return 0;
    return steps <= 3 ? 1 : steps <= 8 ? 2 : 3;
}

std::uint8_t shaking_class(std::uint8_t mm_s) {
    if (mm_s < 3)
        return 0;
    return mm_s < 8 ? 1 : 2;
}

std::string_view turning_words(Turning turning) {
    constexpr std::array<std::string_view, 4> kWords{"out of sight", "stands still", "turns slowly",
                                                     "spins too fast to see"};
    return kWords[static_cast<std::size_t>(turning)];
}

/// Acts that a sound may end or begin with.
bool switches(Verb verb) {
    return verb != Verb::none && verb != Verb::wait && verb != Verb::look && verb != Verb::keep &&
           !is_paper(verb);
}

/// "Burners 1 and 2", "Burner 3", "All burners".
std::string burners_in_words(const std::vector<std::size_t>& which, std::size_t count) {
    if (which.size() == count && count > 1)
        return "all burners";
    std::string words = which.size() == 1 ? "burner " : "burners ";
    for (std::size_t i = 0; i < which.size(); ++i)
        words += (i == 0 ? "" : i + 1 == which.size() ? " and " : ", ") + std::to_string(which[i] + 1);
    return words;
}

} // namespace

std::string_view roar_words(std::uint8_t tenths) {
    return kRoars[roar_class(tenths)];
}

std::string_view air_words(std::uint8_t tenths) {
    return kAir[air_class(tenths)];
}

std::string_view name_of(Sense sense) {
    return kSenses[static_cast<std::size_t>(sense)];
}

std::string_view name_of(About about) {
    return kNames[static_cast<std::size_t>(about)];
}

CaptionWatch::CaptionWatch(const Site& site) : site_(&site) {
    const instruments::Bag bag;
    for (const instruments::NamedDisplay& window : instruments::displays(bag))
        window_names_.emplace_back(window.name);
}

void CaptionWatch::say(Sense sense, About about, std::string text) {
    captions_.push_back({tick_, sense, about, std::move(text)});
}

void CaptionWatch::observe(const Percept& percept) {
    tick_ = percept.tick;
    ++ticks_seen_;
    hands(percept);
    lamp(percept);
    wheels(percept);
    hums(percept);
    clicks(percept);
    fire(percept);
    flames(percept);
    igniter(percept);
    turning(percept);
    air(percept);
    nose_and_palm(percept);
    windows(percept);
}

bool CaptionWatch::just_switched(const Percept& p) const {
    return switches(p.hands.last.verb) && p.tick <= p.hands.last_tick + kWithThatTicks;
}

void CaptionWatch::hands(const Percept& p) {
    if (p.hands.last.verb == Verb::none || p.hands.last_tick == hands_tick_)
        return;
    const bool fresh = p.hands.last_tick + 1 == p.tick;
    hands_tick_ = p.hands.last_tick;
    if (!fresh)
        return; // done before anybody watched
    if (std::string words = done_in_words(*site_, p); !words.empty())
        say(Sense::seen, About::hands, std::move(words));
}

void CaptionWatch::lamp(const Percept& p) {
    if (auto words = lamp_.look(p.seen.lamp_on))
        say(Sense::seen, About::lamp, "Lamp: " + *words + ".");
}

void CaptionWatch::wheels(const Percept& p) {
    wheel(p, inducer_, p.heard.inducer_hz, p.heard.inducer_loudness, About::inducer);
    wheel(p, blower_, p.heard.blower_hz, p.heard.blower_loudness, About::blower);
    const bool silent = inducer_.is_silent() && blower_.is_silent() && p.heard.roar == 0 &&
                        !p.heard.inducer_hum && !p.heard.blower_hum;
    if (ticks_seen_ == kSilenceTicks && silent)
        say(Sense::heard, About::hands, "No sound from the furnace.");
}

void CaptionWatch::wheel(const Percept& p, WheelSound& sound, std::uint16_t hz, std::uint8_t loudness,
                         About about) {
    const std::string who = about == About::inducer ? "Inducer: " : "Blower: ";
    const std::string with_that = just_switched(p) ? " with that." : ".";
    const std::string strength(strength_of_sound(loudness));
    switch (sound.hear(hz)) {
    case WheelSound::Change::none:
        return;
    case WheelSound::Change::rises:
        return say(Sense::heard, about, who + "a whirr rises" + with_that);
    case WheelSound::Change::holds:
        return say(Sense::heard, about, who + "a steady whirr, " + strength + ".");
    case WheelSound::Change::falls:
        return say(Sense::heard, about, who + "runs down" + with_that);
    case WheelSound::Change::stops:
        return say(Sense::heard, about, who + "silent.");
    case WheelSound::Change::higher:
        return say(Sense::heard, about, who + "its note is higher than before, " + strength + ".");
    case WheelSound::Change::lower:
        return say(Sense::heard, about, who + "its note is lower than before, " + strength + ".");
    }
}

void CaptionWatch::hums(const Percept& p) {
    if (inducer_hum_.becomes(p.heard.inducer_hum, kHumTicks))
        say(Sense::heard, About::inducer,
            p.heard.inducer_hum ? "Inducer: a flat hum, no whirr." : "Inducer: the hum stops.");
    if (blower_hum_.becomes(p.heard.blower_hum, kHumTicks))
        say(Sense::heard, About::blower,
            p.heard.blower_hum ? "Blower: a flat hum, no whirr." : "Blower: the hum stops.");
}

/// A relay that chatters is told once, not click by click.
void CaptionWatch::relay_clicks(const Percept& p) {
    const bool clicks = p.heard.relay_clicks > 0;
    if (clicks) {
        std::rotate(clicked_.begin(), clicked_.begin() + 1, clicked_.end());
        clicked_.back() = p.tick;
    }
    if (chatters_) {
        if (p.tick - clicked_.back() < kChatterEndsTicks)
            return;
        chatters_ = false;
        say(Sense::heard, About::click, "The chatter ends.");
        return;
    }
    if (!clicks)
        return;
    chatters_ = clicked_.front() != 0 && p.tick - clicked_.front() <= kChatterTicks;
    say(Sense::heard, About::click,
        chatters_                   ? "A relay chatters."
        : p.heard.relay_clicks == 1 ? "A relay clicks."
                                    : "Relays click.");
}

void CaptionWatch::clicks(const Percept& p) {
    relay_clicks(p);
    if (p.heard.valve_click)
        say(Sense::heard, About::valve, "The gas valve clicks.");
    if (small_breaker_.becomes(p.worked.small_breaker_tripped, 1) && p.worked.small_breaker_tripped)
        say(Sense::heard, About::click, "The small breaker snaps out.");
}

void CaptionWatch::fire(const Percept& p) {
    const bool roars = p.heard.roar > 0;
    ++fire_ticks_;
    loudest_ = std::max(loudest_, p.heard.ignition);
    switch (fire_) {
    case Fire::silent:
        if (ticks_seen_ == 1 && roars) { // it burnt before anybody came
            fire_ = Fire::burning;
            return;
        }
        if (roars || p.heard.ignition > kSoft) {
            fire_ = Fire::catching;
            fire_ticks_ = 0;
            loudest_ = p.heard.ignition;
        }
        return;
    case Fire::catching:
        if (fire_ticks_ < kCatchTicks)
            return;
        say(Sense::heard, About::burners,
            roars ? "The burners light " + std::string(light_off_words(loudest_)) + "."
                  : "Something lights in the burners and is gone.");
        fire_ = roars ? Fire::burning : Fire::silent;
        fire_ticks_ = 0;
        loudest_ = 0;
        roar_.forget();
        return;
    case Fire::burning:
        break;
    }
    if (!roars && fire_ticks_ >= kOutTicks) {
        say(Sense::heard, About::burners,
            std::string("The burners' roar stops") + (just_switched(p) ? " with that." : "."));
        fire_ = Fire::silent;
        return;
    }
    if (p.heard.ignition == 0 && loudest_ > kSoft) { // it has rung out
        say(Sense::heard, About::burners,
            "More flame lights " + std::string(light_off_words(loudest_)) + ".");
        loudest_ = 0;
    }
    if (roars && roar_.becomes(roar_class(p.heard.roar), kRoarTicks)) {
        say(Sense::heard, About::burners, "Burners: " + std::string(kRoars[roar_.said()]) + ".");
    }
}

void CaptionWatch::flames(const Percept& p) {
    if (p.left_as.burner_door_on) {
        flames_.forget();
        outside_.forget();
        return;
    }
    if (outside_.becomes(p.seen.flame_outside > 0, kRolloutTicks))
        say(Sense::seen, About::burners,
            outside_.said() ? "Flame comes out of the burner openings into the compartment."
                            : "No more flame outside the burner openings.");
    Hues looks{};
    for (std::size_t i = 0; i < looks.size(); ++i)
        looks[i] = look_of(p.seen.burner[i]);
    const bool none = looks == Hues{};
    if (!flames_.becomes(looks, none ? kOutTicks : kFlameTicks))
        return;
    if (none)
        return say(Sense::seen, About::burners, "The flames are gone.");
    const auto count = static_cast<std::size_t>(site_->model.combustion.burner_count);
    std::string words;
    std::vector<std::uint8_t> told;
    for (std::size_t i = 0; i < count; ++i) {
        if (std::find(told.begin(), told.end(), looks[i]) != told.end())
            continue;
        told.push_back(looks[i]);
        std::vector<std::size_t> alike;
        for (std::size_t j = i; j < count; ++j)
            if (looks[j] == looks[i])
                alike.push_back(j);
        words += (words.empty() ? "" : "; ") + burners_in_words(alike, count) + " " + words_of(looks[i]);
    }
    say(Sense::seen, About::burners, "Flames: " + words + ".");
}

void CaptionWatch::igniter(const Percept& p) {
    if (p.left_as.burner_door_on)
        return glow_.forget();
    const std::uint8_t glow = glow_class(p.seen.igniter_glow_k);
    const bool first = glow == 0 || glow_.said() == 0;
    if (!glow_.becomes(glow, first ? kGlowFirstTicks : kGlowTicks))
        return;
    const std::string colour(colour_of(glow));
    if (glow == 0)
        say(Sense::seen, About::igniter, "Igniter: its glow is gone.");
    else if (glow_.before() == 0)
        say(Sense::seen, About::igniter, "Igniter: glows " + colour + ".");
    else
        say(Sense::seen, About::igniter,
            "Igniter: " + std::string(glow > glow_.before() ? "brighter, " : "fades, ") + colour + ".");
}

void CaptionWatch::turning(const Percept& p) {
    const auto watch = [&](Standing<Turning>& shaft, Turning now, About about, const char* who) {
        if (now == Turning::not_seen)
            return shaft.forget();
        if (shaft.becomes(now, kTurningTicks))
            say(Sense::seen, about, std::string(who) + " " + std::string(turning_words(now)) + ".");
    };
    watch(inducer_shaft_, p.seen.inducer, About::inducer, "The inducer's shaft");
    watch(blower_wheel_, p.seen.blower, About::blower, "The blower wheel");
}

void CaptionWatch::air(const Percept& p) {
    const std::uint8_t moves = air_class(p.felt.register_air);
    const std::uint8_t warm = moves == 0 ? std::uint8_t{0} : warmth_class(p.felt.register_warmth);
    if (!air_.becomes({moves, warm}, kAirTicks))
        return;
    constexpr std::array<std::string_view, 4> kWarmth{"as cool as the room", "lukewarm", "warm", "hot"};
    std::string words = "At the registers: " + std::string(kAir[moves]);
    if (moves > 0)
        words += ", " + std::string(kWarmth[warm]);
    say(Sense::felt, About::air, words + ".");
}

void CaptionWatch::nose_and_palm(const Percept& p) {
    if (gas_.becomes(p.smelt.gas, kSmellTicks)) {
        constexpr std::array<std::string_view, 3> kGas{"No more smell of gas.", "A smell of gas.",
                                                       "A strong smell of gas."};
        say(Sense::smelt, About::smell, std::string(kGas[p.smelt.gas]));
    }
    if (hot_smell_.becomes(p.smelt.hot_winding, kSmellTicks))
        say(Sense::smelt, About::smell,
            p.smelt.hot_winding ? "A sharp smell of hot varnish." : "No more smell of hot varnish.");
    if (shaking_.becomes(shaking_class(p.felt.cabinet_vibration), kShakingTicks)) {
        constexpr std::array<std::string_view, 3> kShaking{"The cabinet is quiet under the hand.",
                                                           "The cabinet trembles.", "The cabinet shakes."};
        say(Sense::felt, About::shaking, std::string(kShaking[shaking_.said()]));
    }
}

void CaptionWatch::windows(const Percept& p) {
    using instruments::Display;
    for (std::size_t i = 0; i < window_names_.size(); ++i) {
        const Display& display = p.instruments.window[i];
        Window& window = windows_[i];
        const std::string& name = window_names_[i];
        if (window.beeps.becomes(display.has(instruments::kBeep), 1))
            say(Sense::heard, About::beep,
                "The " + name + (window.beeps.said() ? " beeps." : " stops beeping."));
        if (window.alarms.becomes(display.has(instruments::kAlarm), 1))
            say(Sense::heard, About::beep,
                "The " + name + (window.alarms.said() ? " sounds its full alarm." : "'s full alarm ends."));
        const bool jumps = display.has(instruments::kOn) && display.has(instruments::kNoisy);
        if (window.jumps.becomes(jumps, kJumpTicks))
            say(Sense::read, About::window,
                "The number of the " + name +
                    (jumps ? " jumps: near " + instruments::text(display) + "." : " stands still again."));
    }
}

} // namespace lightoff::bench
