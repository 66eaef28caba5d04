// SPDX-License-Identifier: MIT
#pragma once
#include "figures/svg.hpp"

#include <string>
#include <vector>

/// Figures with a heading, one or several charts, and a caption that names the sources.
namespace lightoff::figures {

inline constexpr double kWidth = 700.0;

struct Box {
    double left = 0.0;
    double top = 0.0;
    double width = 0.0;
    double height = 0.0;
};

struct Axis {
    std::string title; ///< with the unit
    double low = 0.0;
    double high = 1.0;
    std::vector<double> ticks;
    int decimals = 0; ///< of the numbers; -1: as many as each needs
    bool logarithmic = false;
    bool numbers = true; ///< written at the ticks
};

/// low, low + step, ... up to high.
std::vector<double> every(double low, double high, double step);

class Figure {
public:
    /// `plot_height` is what is left for charts between heading and caption; the rest is reckoned here.
    Figure(const std::string& heading, double plot_height, const std::string& caption);

    /// Where charts go: full width, from `from` to `to` (fractions of the height), and the same by width.
    [[nodiscard]] Box box(double left, double right, double top, double bottom) const;

    [[nodiscard]] std::string finish() const { return svg.finish(); }
    Svg svg;

private:
    double top_ = 0.0;
    double height_ = 0.0;
};

class Chart {
public:
    /// Draws the axes and light rules at the ticks.
    Chart(Svg& svg, const Box& box, const Axis& x, const Axis& y);

    [[nodiscard]] Point at(double x, double y) const;

    /// A curve; parts that leave the chart are cut off.
    void curve(const std::vector<Point>& points, const Stroke& stroke);
    void circles(const std::vector<Point>& points, std::string_view colour, double radius = 4.0);
    void dot(Point p, std::string_view colour, double radius = 5.0);
    /// Words beside a place of the chart, shifted by pixels.
    void label(Point p, double right, double down, std::string_view words, const Lettering& lettering = {});
    /// A piece of a curve with its name, in place of a legend; pixels from the chart's corner.
    void key(double from_left, double from_top, std::string_view words, const Stroke& stroke);
    void level(double y, const Stroke& stroke);
    void moment(double x, const Stroke& stroke);
    void band_across(double y_low, double y_high, std::string_view fill, double opacity);
    void block(double x_low, double x_high, double y_low, double y_high, std::string_view fill,
               double opacity);

    /// Numbers and a title on the right for what is drawn by another scale: `at(x, y)` of a chart made on the
    /// same box.
    static Chart with_right_axis(Svg& svg, const Box& box, const Axis& x, const Axis& right);

private:
    struct Silent {};
    Chart(Silent, Svg& svg, const Box& box, const Axis& x, const Axis& y);
    Svg* svg_;
    Box box_;
    Axis x_;
    Axis y_;
};

} // namespace lightoff::figures
