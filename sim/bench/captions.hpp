// SPDX-License-Identifier: MIT
#pragma once
#include "bench/lamp_reader.hpp"
#include "bench/percept.hpp"
#include "bench/wheel_sound.hpp"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

/// Sentences for everything that a person at the furnace sees, hears, smells or feels change, so that a whole
/// call can be worked from them. They describe and never diagnose.
namespace lightoff::bench {

/// What an ear calls the burners' roar, what a hand calls the air at the registers; tenths of the ordinary.
std::string_view roar_words(std::uint8_t tenths);
std::string_view air_words(std::uint8_t tenths);

enum class Sense : std::uint8_t { seen, heard, smelt, felt, read };
std::string_view name_of(Sense sense); ///< "heard"

/// What a caption is about: what somebody can wait for.
enum class About : std::uint8_t {
    lamp,
    inducer,
    blower,
    burners,
    igniter,
    click, ///< of relays
    valve, ///< its click
    air,   ///< at the registers
    smell,
    shaking,
    beep,
    window, ///< of an instrument
    hands   ///< what has just been done, and what a look showed
};
inline constexpr std::size_t kAbouts = 13;
std::string_view name_of(About about); ///< "inducer"

struct Caption {
    std::uint64_t tick = 0;
    Sense sense = Sense::seen;
    About about = About::hands;
    std::string text; ///< "Inducer: its note rises."
    friend bool operator==(const Caption&, const Caption&) = default;
};

/// Something that must stand for a while before it is called so.
template <class T>
class Standing {
public:
    explicit Standing(T at_first = {}) : said_(at_first), now_(at_first) {}

    /// One tick; true if `now` has stood for `ticks` and is not what was last called so.
    bool becomes(const T& now, std::uint32_t ticks) {
        ticks_ = now == now_ ? ticks_ + 1 : 1;
        now_ = now;
        if (ticks_ < ticks || now == said_)
            return false;
        before_ = said_;
        said_ = now;
        return true;
    }
    /// It can't be perceived now; the next thing that can is news.
    void forget(T at_first = {}) { *this = Standing(at_first); }

    [[nodiscard]] const T& said() const { return said_; }
    [[nodiscard]] const T& before() const { return before_; }

private:
    T said_;
    T now_;
    T before_{};
    std::uint32_t ticks_ = 0;
};

/// Watches percepts and writes captions. All that it says follows from the percepts that it was shown and
/// from names: two Worlds that nobody could tell apart give the same captions.
class CaptionWatch {
public:
    explicit CaptionWatch(const Site& site);

    /// After every tick: a click lasts no longer.
    void observe(const World& world) { observe(perceive(*site_, world)); }
    void observe(const Percept& percept);

    /// All so far, in the order in which they were noticed.
    [[nodiscard]] const std::vector<Caption>& captions() const { return captions_; }

private:
    enum class Fire : std::uint8_t { silent, catching, burning };
    using Hues = std::array<std::uint8_t, combustion::kMaxBurners>;

    void say(Sense sense, About about, std::string text);
    [[nodiscard]] bool just_switched(const Percept& p) const;
    void hands(const Percept& p);
    void lamp(const Percept& p);
    void wheels(const Percept& p);
    void wheel(const Percept& p, WheelSound& sound, std::uint16_t hz, std::uint8_t loudness, About about);
    void hums(const Percept& p);
    void clicks(const Percept& p);
    void relay_clicks(const Percept& p);
    void fire(const Percept& p);
    void flames(const Percept& p);
    void igniter(const Percept& p);
    void turning(const Percept& p);
    void air(const Percept& p);
    void nose_and_palm(const Percept& p);
    void windows(const Percept& p);

    const Site* site_;
    std::vector<std::string> window_names_;
    std::vector<Caption> captions_;
    std::uint64_t tick_ = 0;
    std::uint64_t ticks_seen_ = 0;
    std::uint64_t hands_tick_ = ~std::uint64_t{0}; ///< last act that was told

    LampReader lamp_;
    WheelSound inducer_;
    WheelSound blower_;
    std::array<std::uint64_t, 5> clicked_{}; ///< ticks in which relays clicked last, the newest last
    bool chatters_ = false;
    Standing<bool> inducer_hum_;
    Standing<bool> blower_hum_;
    Fire fire_ = Fire::silent;
    std::uint32_t fire_ticks_ = 0; ///< since it began to catch, or since something else was heard of it
    std::uint8_t loudest_ = 0;     ///< of the light-off
    Standing<std::uint8_t> roar_;
    Standing<Hues> flames_;
    Standing<bool> outside_;
    Standing<std::uint8_t> glow_;
    Standing<Turning> inducer_shaft_;
    Standing<Turning> blower_wheel_;
    Standing<std::array<std::uint8_t, 2>> air_;
    Standing<std::uint8_t> gas_;
    Standing<bool> hot_smell_;
    Standing<std::uint8_t> shaking_;
    struct Window {
        Standing<bool> beeps;
        Standing<bool> alarms;
        Standing<bool> jumps;
    };
    std::array<Window, instruments::kWindows> windows_;
    Standing<bool> small_breaker_;
};

} // namespace lightoff::bench
