// SPDX-License-Identifier: MIT
#include "figures/svg.hpp"

#include <array>
#include <cstdio>

namespace lightoff::figures {
namespace {

std::string px(double value) {
    return number(value, 1);
}

std::string escaped(std::string_view words) {
    std::string out;
    for (const char c : words) {
        if (c == '&')
            out += "&amp;";
        else if (c == '<')
            out += "&lt;";
        else if (c == '>')
            out += "&gt;";
        else if (c == '"')
            out += "&quot;";
        else
            out += c;
    }
    return out;
}

std::string attributes(const Stroke& stroke) {
    std::string out =
        " stroke=\"" + std::string(stroke.colour) + "\" stroke-width=\"" + px(stroke.width) + "\"";
    if (!stroke.dash.empty())
        out += " stroke-dasharray=\"" + std::string(stroke.dash) + "\"";
    return out;
}

std::string corners(const std::vector<Point>& points) {
    std::string out;
    for (const Point& p : points)
        out += (out.empty() ? "" : " ") + px(p.x) + "," + px(p.y);
    return out;
}

} // namespace

std::string number(double value, int decimals) {
    std::array<char, 48> buffer{};
    std::snprintf(buffer.data(), buffer.size(), "%.*f", decimals, value);
    std::string text = buffer.data();
    if (text.front() == '-' && text.find_first_of("123456789") == std::string::npos)
        text.erase(0, 1);
    return text;
}

Svg::Svg(double width, double height, std::string_view title, std::string_view description) {
    const std::string size = px(width) + " " + px(height);
    out_ = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + size + "\" width=\"" + px(width) +
           "\" height=\"" + px(height) +
           "\" role=\"img\" font-family=\"Arial, Helvetica, 'Liberation Sans', sans-serif\">\n<title>" +
           escaped(title) + "</title>\n<desc>" + escaped(description) + "</desc>\n";
    rect({0.0, 0.0}, width, height, kGround);
}

void Svg::line(Point a, Point b, const Stroke& stroke) {
    out_ += "<line x1=\"" + px(a.x) + "\" y1=\"" + px(a.y) + "\" x2=\"" + px(b.x) + "\" y2=\"" + px(b.y) +
            "\"" + attributes(stroke) + "/>\n";
}

void Svg::path(const std::vector<Point>& points, const Stroke& stroke) {
    out_ += "<polyline fill=\"none\" stroke-linejoin=\"round\"" + attributes(stroke) + " points=\"" +
            corners(points) + "\"/>\n";
}

void Svg::area(const std::vector<Point>& points, std::string_view fill, double opacity) {
    out_ += "<polygon fill=\"" + std::string(fill) + "\" fill-opacity=\"" + number(opacity, 2) +
            "\" points=\"" + corners(points) + "\"/>\n";
}

void Svg::rect(Point corner, double width, double height, std::string_view fill, double opacity) {
    out_ += "<rect x=\"" + px(corner.x) + "\" y=\"" + px(corner.y) + "\" width=\"" + px(width) +
            "\" height=\"" + px(height) + "\" fill=\"" + std::string(fill) + "\"";
    if (opacity < 1.0)
        out_ += " fill-opacity=\"" + number(opacity, 2) + "\"";
    out_ += "/>\n";
}

void Svg::circle(Point centre, double radius, std::string_view colour) {
    out_ += "<circle cx=\"" + px(centre.x) + "\" cy=\"" + px(centre.y) + "\" r=\"" + px(radius) +
            "\" fill=\"" + std::string(kGround) + "\"" + attributes({colour, 1.8}) + "/>\n";
}

void Svg::dot(Point centre, double radius, std::string_view colour) {
    out_ += "<circle cx=\"" + px(centre.x) + "\" cy=\"" + px(centre.y) + "\" r=\"" + px(radius) +
            "\" fill=\"" + std::string(colour) + "\"/>\n";
}

void Svg::text(Point at, std::string_view words, const Lettering& l) {
    constexpr std::array<const char*, 3> anchors{"start", "middle", "end"};
    out_ += "<text x=\"" + px(at.x) + "\" y=\"" + px(at.y) + "\" font-size=\"" + px(l.size) + "\" fill=\"" +
            std::string(l.colour) + "\" text-anchor=\"" + anchors[static_cast<std::size_t>(l.anchor)] + "\"";
    if (l.bold)
        out_ += " font-weight=\"bold\"";
    if (l.halo)
        out_ += " stroke=\"" + std::string(kGround) + "\" stroke-width=\"5\" paint-order=\"stroke\"";
    if (l.turned_deg != 0.0)
        out_ += " transform=\"rotate(" + px(l.turned_deg) + " " + px(at.x) + " " + px(at.y) + ")\"";
    out_ += ">" + escaped(words) + "</text>\n";
}

std::string Svg::finish() const {
    return out_ + "</svg>\n";
}

} // namespace lightoff::figures
