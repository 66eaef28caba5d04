// SPDX-License-Identifier: MIT
#include "figures/chart.hpp"

#include "units/pinned_math.hpp"

#include <algorithm>
#include <cmath>
#include <sstream>

namespace lightoff::figures {
namespace {

constexpr double kMargin = 24.0;
constexpr double kHeadingHeight = 46.0;
constexpr double kCaptionLine = 19.0;
constexpr std::size_t kCaptionLetters = 97; ///< of 14 px in the width between the margins

/// Letters of UTF-8 text: bytes that do not go on with a letter.
std::size_t letters(const std::string& words) {
    return static_cast<std::size_t>(std::count_if(
        words.begin(), words.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

std::vector<std::string> wrapped(const std::string& words) {
    std::vector<std::string> lines;
    std::istringstream in(words);
    std::string word;
    while (in >> word) {
        if (lines.empty() || letters(lines.back()) + letters(word) + 1 > kCaptionLetters)
            lines.push_back(word);
        else
            lines.back() += " " + word;
    }
    return lines;
}

/// Fewer than 0 decimals: as many as the number needs, up to two.
std::string tick_text(double value, int decimals) {
    if (decimals >= 0)
        return number(value, decimals);
    int needed = 0;
    while (needed < 2 && std::fabs(value - std::stod(number(value, needed))) > 1e-9)
        ++needed;
    return number(value, needed);
}

double caption_height(const std::string& caption) {
    return kCaptionLine * static_cast<double>(wrapped(caption).size()) + 14.0;
}

/// 0 at the axis' low end, 1 at its high end.
double share(const Axis& axis, double value) {
    if (!axis.logarithmic)
        return (value - axis.low) / (axis.high - axis.low);
    return units::log(value / axis.low) / units::log(axis.high / axis.low);
}

Point between(Point a, Point b, double part) {
    return {a.x + part * (b.x - a.x), a.y + part * (b.y - a.y)};
}

/// The part of a straight piece that lies within the box; false if none does (Liang and Barsky's way).
bool clip(Point& a, Point& b, const Box& box) {
    double from = 0.0;
    double to = 1.0;
    const auto cut = [&](double step, double room) {
        if (step == 0.0)
            return room >= 0.0;
        const double part = room / step;
        if (step < 0.0)
            from = std::max(from, part);
        else
            to = std::min(to, part);
        return from <= to;
    };
    const double dx = b.x - a.x;
    const double dy = b.y - a.y;
    if (!cut(-dx, a.x - box.left) || !cut(dx, box.left + box.width - a.x) || !cut(-dy, a.y - box.top) ||
        !cut(dy, box.top + box.height - a.y))
        return false;
    const Point start = a;
    const Point end = b;
    a = between(start, end, from);
    b = between(start, end, to);
    return true;
}

bool same(Point a, Point b) {
    return a.x == b.x && a.y == b.y;
}

} // namespace

std::vector<double> every(double low, double high, double step) {
    std::vector<double> out;
    const int count = static_cast<int>((high - low) / step + 1.0001);
    for (int i = 0; i < count; ++i)
        out.push_back(low + step * static_cast<double>(i));
    return out;
}

Figure::Figure(const std::string& heading, double plot_height, const std::string& caption)
    : svg(kWidth, kHeadingHeight + plot_height + caption_height(caption), heading, caption),
      top_(kHeadingHeight), height_(plot_height) {
    svg.text({kMargin, 30.0}, heading, {.size = 18.0, .bold = true});
    double y = kHeadingHeight + plot_height + 16.0;
    for (const std::string& line : wrapped(caption)) {
        svg.text({kMargin, y}, line, {.size = 14.0, .colour = kPencil});
        y += kCaptionLine;
    }
}

Box Figure::box(double left, double right, double top, double bottom) const {
    return {left, top_ + top, kWidth - left - right, height_ - top - bottom};
}

Chart::Chart(Silent, Svg& svg, const Box& box, const Axis& x, const Axis& y)
    : svg_(&svg), box_(box), x_(x), y_(y) {}

Chart::Chart(Svg& svg, const Box& box, const Axis& x, const Axis& y) : Chart(Silent{}, svg, box, x, y) {
    const double right = box.left + box.width;
    const double bottom = box.top + box.height;
    const Stroke rule{kRule, 0.5};
    for (const double t : x.ticks) {
        const double px = at(t, y.low).x;
        svg.line({px, box.top}, {px, bottom}, rule);
        svg.line({px, bottom}, {px, bottom + 5.0}, {kInk, 1.2});
        if (x.numbers)
            svg.text({px, bottom + 19.0}, tick_text(t, x.decimals), {Anchor::middle});
    }
    for (const double t : y.ticks) {
        const double py = at(x.low, t).y;
        svg.line({box.left, py}, {right, py}, rule);
        svg.line({box.left - 5.0, py}, {box.left, py}, {kInk, 1.2});
        if (y.numbers)
            svg.text({box.left - 9.0, py + 5.0}, tick_text(t, y.decimals), {Anchor::end});
    }
    svg.line({box.left, box.top}, {box.left, bottom}, {kInk, 1.4});
    svg.line({box.left, bottom}, {right, bottom}, {kInk, 1.4});
    if (!x.title.empty())
        svg.text({box.left + 0.5 * box.width, bottom + (x.numbers ? 40.0 : 20.0)}, x.title,
                 {Anchor::middle, 15.0});
    if (!y.title.empty())
        svg.text({box.left - 50.0, box.top + 0.5 * box.height}, y.title,
                 {.anchor = Anchor::middle, .size = 15.0, .turned_deg = -90.0});
}

Chart Chart::with_right_axis(Svg& svg, const Box& box, const Axis& x, const Axis& right) {
    Chart chart(Silent{}, svg, box, x, right);
    const double edge = box.left + box.width;
    svg.line({edge, box.top}, {edge, box.top + box.height}, {kInk, 1.4});
    for (const double t : right.ticks) {
        const double py = chart.at(x.low, t).y;
        svg.line({edge, py}, {edge + 5.0, py}, {kInk, 1.2});
        svg.text({edge + 9.0, py + 5.0}, number(t, right.decimals));
    }
    svg.text({edge + 42.0, box.top + 0.5 * box.height}, right.title,
             {.anchor = Anchor::middle, .size = 15.0, .turned_deg = 90.0});
    return chart;
}

Point Chart::at(double x, double y) const {
    return {box_.left + box_.width * share(x_, x), box_.top + box_.height * (1.0 - share(y_, y))};
}

void Chart::curve(const std::vector<Point>& points, const Stroke& stroke) {
    std::vector<Point> run;
    const auto put_down = [&] {
        if (run.size() > 1)
            svg_->path(run, stroke);
        run.clear();
    };
    for (std::size_t i = 1; i < points.size(); ++i) {
        Point a = at(points[i - 1].x, points[i - 1].y);
        Point b = at(points[i].x, points[i].y);
        if (!clip(a, b, box_)) {
            put_down();
            continue;
        }
        if (run.empty() || !same(run.back(), a)) {
            put_down();
            run.push_back(a);
        }
        run.push_back(b);
    }
    put_down();
}

void Chart::circles(const std::vector<Point>& points, std::string_view colour, double radius) {
    for (const Point& p : points)
        svg_->circle(at(p.x, p.y), radius, colour);
}

void Chart::dot(Point p, std::string_view colour, double radius) {
    svg_->dot(at(p.x, p.y), radius, colour);
}

void Chart::label(Point p, double right, double down, std::string_view words, const Lettering& lettering) {
    const Point place = at(p.x, p.y);
    svg_->text({place.x + right, place.y + down}, words, lettering);
}

void Chart::key(double from_left, double from_top, std::string_view words, const Stroke& stroke) {
    const Point at{box_.left + from_left, box_.top + from_top};
    svg_->rect({at.x - 4.0, at.y - 14.0}, 40.0, 19.0, kGround);
    svg_->line({at.x, at.y - 5.0}, {at.x + 30.0, at.y - 5.0}, stroke);
    svg_->text({at.x + 38.0, at.y}, words, {.colour = stroke.colour, .halo = true});
}

void Chart::level(double y, const Stroke& stroke) {
    svg_->line(at(x_.low, y), at(x_.high, y), stroke);
}

void Chart::moment(double x, const Stroke& stroke) {
    svg_->line(at(x, y_.low), at(x, y_.high), stroke);
}

void Chart::band_across(double y_low, double y_high, std::string_view fill, double opacity) {
    block(x_.low, x_.high, y_low, y_high, fill, opacity);
}

void Chart::block(double x_low, double x_high, double y_low, double y_high, std::string_view fill,
                  double opacity) {
    const Point corner = at(x_low, y_high);
    const Point opposite = at(x_high, y_low);
    svg_->rect(corner, opposite.x - corner.x, opposite.y - corner.y, fill, opacity);
}

} // namespace lightoff::figures
