// SPDX-License-Identifier: MIT
#pragma once
#include <string>
#include <string_view>
#include <vector>

/// Just enough SVG for a figure: lines, areas, marks, text. Coordinates are pixels, rounded to tenths, so
/// that the same drawing is the same text on every compiler.
namespace lightoff::figures {

inline constexpr std::string_view kGround = "#F5F0E3";
inline constexpr std::string_view kPanel = "#EAE3D2";
inline constexpr std::string_view kInk = "#1B2730";
inline constexpr std::string_view kPencil = "#4E5861";
inline constexpr std::string_view kRule = "#8A8778";
inline constexpr std::string_view kAlarm = "#8C1D18";
inline constexpr std::string_view kVolts24 = "#1332A7";
inline constexpr std::string_view kVolts120 = "#6F0E4F";
inline constexpr std::string_view kGas = "#A57700";
inline constexpr std::string_view kAir = "#148D96";
inline constexpr std::string_view kHeat = "#8C2401";

struct Point {
    double x = 0.0;
    double y = 0.0;
};

struct Stroke {
    std::string_view colour = kInk;
    double width = 2.0;
    std::string_view dash = ""; ///< as in stroke-dasharray; empty: solid
};

enum class Anchor { start, middle, end };

struct Lettering {
    Anchor anchor = Anchor::start;
    double size = 14.0;
    std::string_view colour = kInk;
    bool bold = false;
    bool halo = false;       ///< ground colour round the letters, where they stand on lines
    double turned_deg = 0.0; ///< clockwise
};

/// A number with a fixed count of decimals, never "-0".
std::string number(double value, int decimals);

class Svg {
public:
    Svg(double width, double height, std::string_view title, std::string_view description);

    void line(Point a, Point b, const Stroke& stroke);
    void path(const std::vector<Point>& points, const Stroke& stroke);
    void area(const std::vector<Point>& points, std::string_view fill, double opacity);
    void rect(Point corner, double width, double height, std::string_view fill, double opacity = 1.0);
    /// An open circle with the ground inside.
    void circle(Point centre, double radius, std::string_view colour);
    void dot(Point centre, double radius, std::string_view colour);
    void text(Point at, std::string_view words, const Lettering& lettering = {});

    [[nodiscard]] std::string finish() const;

private:
    std::string out_;
};

} // namespace lightoff::figures
