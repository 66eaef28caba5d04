// SPDX-License-Identifier: MIT
#pragma once
#include <string>
#include <variant>
#include <vector>

/// A picture in few kinds of shapes, so that every writer can draw it. Pixels, y downwards.
namespace lightoff::report {

/// What a colour stands for; the writer knows what it looks like on its ground.
enum class Ink { ink, pencil, rule, alarm, panel, ground, volts24, volts120, gas, air, heat };
inline constexpr int kInks = 11;

struct Point {
    double x = 0.0;
    double y = 0.0;
};

struct Path {
    std::vector<Point> points;
    Ink ink = Ink::ink;
    double width = 1.5; ///< 0: not stroked
    bool dashed = false;
    bool filled = false; ///< instead of stroked
};

enum class Anchor { start, middle, end };

struct Words {
    Point at; ///< of the base line
    std::string text;
    Ink ink = Ink::ink;
    double size = 12.0;
    Anchor anchor = Anchor::start;
    bool bold = false;
};

struct Dot {
    Point at;
    double radius = 4.0;
    Ink ink = Ink::ink;
    bool filled = true; ///< else the ground inside
};

struct Drawing {
    double width = 0.0;
    double height = 0.0;
    std::string title;
    std::string description; ///< for whoever does not see it
    std::vector<std::variant<Path, Words, Dot>> shapes;
};

} // namespace lightoff::report
