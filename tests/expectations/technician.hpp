// SPDX-License-Identifier: MIT
#pragma once
#include "bench/captions.hpp"
#include "support/rig.hpp"
#include "visit/play_line.hpp"

#include <functional>
#include <map>
#include <string>
#include <string_view>
#include <vector>

/// A person at a furnace who knows nothing of it but what hands, eyes, ears and instruments tell.
namespace lightoff::test {

class Technician {
public:
    /// Arrives at a call as its history has left the furnace. Seed 0: parts as built.
    explicit Technician(const lesson::Scenario& call);

    /// Lines of `play`, parted by ';' or line ends: actions, `wait 30s`, `wait until lamp`, `read`. A
    /// refusal, or a wait that comes to nothing, throws.
    Technician& drive(std::string_view lines);

    /// Text in the window of an instrument as it stands: "24.31 V", "OL".
    [[nodiscard]] std::string window(const std::string& instrument) const;
    /// Its number, in the unit of the window's first range: Ω (not kΩ), µF (not nF). Throws for OL.
    [[nodiscard]] double shows(const std::string& instrument) const;
    /// The same once it has stood settled for 2 s, as a reading must; throws if it does not within a minute.
    double reading(const std::string& instrument = "multimeter");
    /// Waits till the number passes `done`; the seconds. Throws after `limit_s`.
    double await(const std::string& instrument, const std::function<bool(double)>& done,
                 double limit_s = 300.0);
    /// Waits for a caption that has these words in it; the seconds. Throws after `limit_s`.
    double await(const std::string& words, double limit_s = 300.0);

    /// How often such words have been perceived since arrival, or since the last `forget`.
    [[nodiscard]] int noticed(const std::string& words) const;
    void forget() { known_ = watch_.captions().size(); }
    /// What the lamp shows to somebody who looks at it from now on: "3 flashes, then one long glow, and
    /// again".
    std::string lamp();

    [[nodiscard]] double now_s() const { return static_cast<double>(world_.tick) * units::seconds_per_tick; }

private:
    void tick();
    void act(const bench::Action& action, const std::string& line);
    void wait_until(const visit::PlayLine& line);
    [[nodiscard]] const instruments::Display& display(const std::string& instrument) const;
    [[noreturn]] void give_up(const std::string& what) const;

    const bench::Site* site_;
    furnace::Workspace workspace_;
    bench::World world_;
    bench::CaptionWatch watch_;
    std::size_t known_ = 0; ///< captions before the last `forget`
};

inline std::function<bool(double)> above(double limit) {
    return [limit](double x) { return x > limit; };
}
inline std::function<bool(double)> below(double limit) {
    return [limit](double x) { return x < limit; };
}

/// A call of scenarios/calls, by name, as it is found.
Technician found(const std::string& call);

/// A fault of the catalogue, there from the start or setting in by itself.
struct Broken {
    std::string fault;
    double severity = 1.0;
    double at_s = 0.0;
};
/// The call for heat with faults, `minutes` into it; at 0 the furnace stands by and its thermostat is turned
/// down. It calls for as long as anything here runs.
Technician with(const std::vector<Broken>& faults, double minutes = 0.0);
inline Technician sound(double minutes = 0.0) {
    return with({}, minutes);
}

/// What the lamp shows in a lockout.
inline std::string held(int count) {
    return (count == 1 ? "1 flash" : std::to_string(count) + " flashes") + ", then one long glow, and again";
}
/// What it shows on the way.
inline std::string counts(int count) {
    return (count == 1 ? "1 flash" : std::to_string(count) + " flashes") + ", a rest, and again";
}
inline const std::string kWink = "one short wink every 3 seconds";

// What precedes and ends hooking up.
constexpr std::string_view kOff = "thermostat-mode off; disconnect off; burner-door off";
constexpr std::string_view kOffBoth =
    "thermostat-mode off; disconnect off; burner-door off; blower-door off; tape on";
constexpr std::string_view kCall = "disconnect on; thermostat-set 84F; thermostat-mode heat";
constexpr std::string_view kFlameInSeries =
    "lift board.flame; meter dc-microamps; leads board.flame board.flame.lug";

} // namespace lightoff::test
