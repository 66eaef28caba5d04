// SPDX-License-Identifier: MIT
#include "report/pictures.hpp"

#include "report/words.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace lightoff::report {
namespace {

constexpr double kWidth = 700.0;
constexpr double kLetter = 12.0;
constexpr double kWide = 0.56; ///< of a letter, at the most, of its size: to keep words apart

double words_width(const std::string& text, double size) {
    std::size_t letters = 0;
    for (const char c : text)
        letters += (static_cast<unsigned char>(c) & 0xC0U) != 0x80U ? 1U : 0U;
    return static_cast<double>(letters) * size * kWide;
}

/// A line of time from arrival to the end of the attempt, or a little longer.
struct TimeAxis {
    double left = 0.0;
    double right = 0.0;
    double minutes = 1.0;
    std::uint64_t arrived = 0;

    [[nodiscard]] double at_minutes(double m) const { return left + (right - left) * m / minutes; }
    [[nodiscard]] double at(std::uint64_t tick) const {
        const auto since = static_cast<double>(tick - std::min(tick, arrived));
        return at_minutes(since * units::seconds_per_tick / 60.0);
    }
};

/// Until everything that decides has happened; the long tail of a run as left shows nothing.
double decided_minutes(const lesson::Debrief& debrief) {
    const lesson::Story& story = debrief.story;
    std::uint64_t tick = debrief.knew ? debrief.knew->tick : story.last_tick;
    if (!story.changes.empty())
        tick = std::max(tick, story.changes.front().tick);
    double minutes = static_cast<double>(tick - story.arrived_tick) * units::seconds_per_tick / 60.0;
    if (!debrief.coach.empty())
        minutes = std::max(minutes, debrief.coach.back().minutes);
    const double all =
        static_cast<double>(story.last_tick - story.arrived_tick) * units::seconds_per_tick / 60.0;
    return std::min(all, 1.15 * minutes);
}

TimeAxis axis_of(const lesson::Story& story, double left, double right) {
    const double minutes =
        static_cast<double>(story.last_tick - story.arrived_tick) * units::seconds_per_tick / 60.0;
    return {left, right, std::max(1.0, minutes), story.arrived_tick};
}

void rule(Drawing& d, Point a, Point b, Ink ink = Ink::rule, double width = 0.4) {
    d.shapes.emplace_back(Path{{a, b}, ink, width, false, false});
}

void say(Drawing& d, Point at, std::string text, Anchor anchor = Anchor::start, Ink ink = Ink::ink,
         bool bold = false, double size = kLetter) {
    d.shapes.emplace_back(Words{at, std::move(text), ink, size, anchor, bold});
}

void draw_minutes(Drawing& d, const TimeAxis& axis, double top, double bottom) {
    const double step = minute_step(axis.minutes, 10);
    for (double m = 0.0; m <= axis.minutes + 1e-9; m += step) {
        const double x = axis.at_minutes(m);
        rule(d, {x, top}, {x, bottom + 4.0});
        say(d, {x, bottom + 18.0}, decimal(m, 0), Anchor::middle, Ink::pencil);
    }
    say(d, {axis.right, bottom + 34.0}, "minutes since arrival", Anchor::end, Ink::pencil);
}

// ---- the staircase

struct Stairs {
    std::vector<Point> points;
    double x = 0.0;
    double y = 0.0;
    void start(double at_x, double at_y) {
        x = at_x;
        y = at_y;
        points.push_back({x, y});
    }
    void step(double at_x, double at_y) {
        points.push_back({at_x, y});
        points.push_back({at_x, at_y});
        x = at_x;
        y = at_y;
    }
};

/// Halving counts, so equal halvings look equal.
struct CauseAxis {
    double top = 0.0;
    double bottom = 0.0;
    std::size_t most = 1;
    [[nodiscard]] double at(std::size_t causes) const {
        const double most_log = std::log2(static_cast<double>(std::max<std::size_t>(2, most)));
        return bottom -
               (bottom - top) * std::log2(static_cast<double>(std::max<std::size_t>(1, causes))) / most_log;
    }
};

void draw_causes(Drawing& d, const CauseAxis& causes, double left, double right) {
    double last = 1e9;
    for (const std::size_t n : {1U, 2U, 5U, 10U, 20U, 50U, 100U}) {
        if (n > causes.most)
            break;
        const double y = causes.at(n);
        rule(d, {left, y}, {right, y});
        if (last - y >= kLetter)
            say(d, {left - 8.0, y + 4.0}, std::to_string(n), Anchor::end, Ink::pencil);
        last = y;
    }
}

} // namespace

double round_step(double span, int most) {
    double power = 1e-6;
    while (true) {
        for (const double k : {1.0, 2.0, 5.0})
            if (span / (k * power) <= most)
                return k * power;
        power *= 10.0;
    }
}

double minute_step(double minutes, int most) {
    for (const double step : {1.0, 2.0, 5.0, 10.0, 15.0, 30.0, 60.0, 120.0, 240.0})
        if (minutes / step <= most)
            return step;
    return 60.0 * round_step(minutes / 60.0, most);
}

Drawing staircase_picture(const bench::Site& site, const lesson::Debrief& debrief) {
    Drawing d{kWidth, 300.0, "Causes still fitting", knew_text(site, debrief), {}};
    const lesson::Story& story = debrief.story;
    const TimeAxis axis{46.0, kWidth - 16.0, std::max(1.0, decided_minutes(debrief)), story.arrived_tick};
    const CauseAxis causes{52.0, 250.0, std::max<std::size_t>(2, debrief.fitting_on_arrival)};
    draw_minutes(d, axis, causes.top, causes.bottom);
    draw_causes(d, causes, axis.left, axis.right);

    Stairs coach;
    coach.start(axis.left, causes.at(debrief.fitting_on_arrival));
    for (const lesson::CoachStep& step : debrief.coach)
        coach.step(axis.at_minutes(std::min(step.minutes, axis.minutes)), causes.at(step.still_fitting));
    coach.step(axis.right, coach.y);
    if (!debrief.coach.empty())
        d.shapes.emplace_back(Path{coach.points, Ink::pencil, 1.8, true, false});

    Stairs theirs;
    theirs.start(axis.left, causes.at(debrief.fitting_on_arrival));
    for (const evidence::Step& step : debrief.grade.staircase)
        if (axis.at(step.tick) <= axis.right)
            theirs.step(axis.at(step.tick), causes.at(step.still_fitting));
    theirs.step(axis.right, theirs.y);
    d.shapes.emplace_back(Path{theirs.points, Ink::ink, 2.4, false, false});

    if (debrief.knew) {
        const double x = axis.at(debrief.knew->tick);
        const auto step = std::find_if(debrief.grade.staircase.rbegin(), debrief.grade.staircase.rend(),
                                       [&](const evidence::Step& s) { return s.tick <= debrief.knew->tick; });
        const std::size_t left =
            step == debrief.grade.staircase.rend() ? debrief.fitting_on_arrival : step->still_fitting;
        d.shapes.emplace_back(Dot{{x, causes.at(left)}, 5.0, Ink::ink, false});
    }
    for (const lesson::ChangeMade& change : story.changes) {
        const double x = axis.at(change.tick);
        if (x > axis.right)
            break;
        d.shapes.emplace_back(
            Path{{{x - 5.0, causes.bottom + 1.0}, {x + 5.0, causes.bottom + 1.0}, {x, causes.bottom - 9.0}},
                 Ink::ink,
                 0.0,
                 false,
                 true});
    }
    // What the lines and marks are.
    double x = axis.left;
    const auto key = [&](const std::string& words, auto mark) {
        mark(x);
        say(d, {x + 28.0, 22.0}, words);
        x += 28.0 + words_width(words, kLetter) + 22.0;
    };
    key("yours", [&](double at) { rule(d, {at, 18.0}, {at + 22.0, 18.0}, Ink::ink, 2.4); });
    if (!debrief.coach.empty())
        key("the coach's", [&](double at) {
            d.shapes.emplace_back(Path{{{at, 18.0}, {at + 22.0, 18.0}}, Ink::pencil, 1.8, true, false});
        });
    if (debrief.knew)
        key("only the cause left", [&](double at) {
            d.shapes.emplace_back(Dot{{at + 12.0, 18.0}, 5.0, Ink::ink, false});
        });
    if (!story.changes.empty())
        key("something changed", [&](double at) {
            d.shapes.emplace_back(
                Path{{{at + 7.0, 23.0}, {at + 17.0, 23.0}, {at + 12.0, 13.0}}, Ink::ink, 0.0, false, true});
        });
    return d;
}

// ---- the timeline

namespace {

struct ShownLane {
    std::string_view readout;
    Ink ink;
};
/// The readouts that tell most of a call, from the thermostat's wire to the registers.
constexpr std::array<ShownLane, 8> kShown{{{"control, R-C", Ink::volts24},
                                           {"call, W-C", Ink::volts24},
                                           {"inducer speed", Ink::volts120},
                                           {"suction at the pressure switch", Ink::air},
                                           {"manifold pressure", Ink::gas},
                                           {"flame current", Ink::heat},
                                           {"supply air", Ink::heat},
                                           {"blower speed", Ink::volts120}}};
constexpr double kNames = 178.0;
constexpr double kRow = 24.0;
constexpr double kLaneRow = 40.0;

void draw_row(Drawing& d, double y, const std::string& name) {
    say(d, {0.0, y + kRow / 2 + 4.0}, name);
    rule(d, {0.0, y + kRow}, {kWidth, y + kRow});
}

/// Numbers of readings, where one has room beside the last.
void draw_readings(Drawing& d, const lesson::Story& story, const TimeAxis& axis, double y) {
    double free_from = 0.0;
    for (std::size_t i = 0; i < story.readings.size(); ++i) {
        const double x = axis.at(story.readings[i].tick);
        const std::string number = std::to_string(i + 1);
        const double half = words_width(number, kLetter) / 2;
        rule(d, {x, y + kRow - 6.0}, {x, y + kRow}, Ink::ink, 1.4);
        if (x - half < free_from)
            continue;
        say(d, {x, y + kRow - 8.0}, number, Anchor::middle);
        free_from = x + half + 2.0;
    }
}

void draw_lane(Drawing& d, const lesson::Tracks& tracks, std::size_t lane, Ink ink, const TimeAxis& axis,
               double y) {
    float low = 0.0F;
    float high = 0.0F;
    for (std::size_t i = 0; i < tracks.ticks.size(); ++i) {
        low = std::min(low, tracks.value(i, lane));
        high = std::max(high, tracks.value(i, lane));
    }
    const double span = std::max(1e-6, static_cast<double>(high) - static_cast<double>(low));
    const auto y_at = [&](float value) {
        return y + kLaneRow - 5.0 - (static_cast<double>(value - low)) / span * (kLaneRow - 10.0);
    };
    const std::string most = decimal(static_cast<double>(high), high < 10.0F ? 2 : high < 100.0F ? 1 : 0);
    say(d, {0.0, y + 16.0}, tracks.lanes[lane].name);
    say(d, {0.0, y + 31.0}, "up to " + most + " " + unit_text(tracks.lanes[lane].unit), Anchor::start,
        Ink::pencil, false, 11.0);
    Path path;
    path.ink = ink;
    path.width = 1.3;
    // At most three points for each pixel: the first, the lowest and the highest in it.
    double column = -1.0;
    float least = 0.0F;
    float greatest = 0.0F;
    const auto flush = [&] {
        if (column < 0.0)
            return;
        path.points.push_back({column, y_at(greatest)});
        if (least < greatest)
            path.points.push_back({column, y_at(least)});
    };
    for (std::size_t i = 0; i < tracks.ticks.size(); ++i) {
        const double x = std::round(axis.at(tracks.ticks[i]));
        const float value = tracks.value(i, lane);
        if (x != column) {
            flush();
            column = x;
            least = greatest = value;
            path.points.push_back({x, y_at(value)});
        }
        least = std::min(least, value);
        greatest = std::max(greatest, value);
    }
    flush();
    d.shapes.emplace_back(std::move(path));
    rule(d, {0.0, y + kLaneRow}, {kWidth, y + kLaneRow});
}

} // namespace

Drawing timeline_picture(const bench::Site&, const lesson::Debrief& debrief) {
    Drawing d{kWidth,
              0.0,
              "The attempt from arrival to its end",
              "What was done, read, noticed and risked, and eight readouts of the furnace, over time.",
              {}};
    const lesson::Story& story = debrief.story;
    const TimeAxis axis = axis_of(story, kNames, kWidth - 10.0);
    const lesson::Tracks& tracks = story.tracks;
    std::vector<std::pair<std::size_t, Ink>> lanes;
    for (const ShownLane& shown : kShown)
        for (std::size_t i = 0; i < tracks.lanes.size(); ++i)
            if (tracks.lanes[i].name == shown.readout)
                lanes.emplace_back(i, shown.ink);
    const double bottom = 4.0 * kRow + kLaneRow * static_cast<double>(lanes.size());
    d.height = bottom + 42.0;
    draw_minutes(d, axis, 0.0, bottom);

    double y = 0.0;
    draw_row(d, y, "did");
    for (const lesson::Log::Entry& entry : story.film.entries())
        if (entry.action.verb != bench::Verb::wait)
            rule(d, {axis.at(entry.tick), y + 5.0}, {axis.at(entry.tick), y + kRow - 3.0}, Ink::ink, 1.2);
    y += kRow;
    draw_row(d, y, "read");
    draw_readings(d, story, axis, y);
    y += kRow;
    draw_row(d, y, "noticed");
    for (const bench::Caption& caption : story.captions)
        if (caption.about != bench::About::hands && caption.about != bench::About::window)
            rule(d, {axis.at(caption.tick), y + 8.0}, {axis.at(caption.tick), y + kRow - 5.0}, Ink::pencil,
                 1.0);
    y += kRow;
    draw_row(d, y, "hazards");
    for (const bench::HazardEvent& event : story.hazards) {
        const double x = axis.at(event.tick);
        d.shapes.emplace_back(Path{{{x - 6.0, y + kRow - 4.0}, {x + 6.0, y + kRow - 4.0}, {x, y + 5.0}},
                                   Ink::alarm,
                                   0.0,
                                   false,
                                   true});
    }
    y += kRow;
    for (const auto& [lane, ink] : lanes) {
        draw_lane(d, tracks, lane, ink, axis, y);
        y += kLaneRow;
    }
    return d;
}

} // namespace lightoff::report
