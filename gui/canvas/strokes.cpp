// SPDX-License-Identifier: MIT
#include "gui/canvas/strokes.hpp"

#include "gui/canvas/path_walker.hpp"

#include <array>
#include <cmath>

namespace lightoff::canvas {
namespace {

constexpr std::array<float, 6> kWidths{3.5F, 2.8F, 2.0F, 1.4F, 1.0F, 1.0F}; // in the order of Line
constexpr float kHaloRim = 2.5F; // design pixels beyond the lead, each side

void polyline(const Canvas& canvas, Path path, float width, Colour colour, bool closed = false) {
    canvas.list->AddPolyline(path.data(), static_cast<int>(path.size()), packed(colour),
                             closed ? ImDrawFlags_Closed : ImDrawFlags_None, width);
}

/// Largest start at or before 0 of a pattern of the given period.
float first_start(float phase, float period) {
    return phase - std::ceil(phase / period) * period;
}

void double_line(const Canvas& canvas, Path path, float width, Colour colour, Colour beneath) {
    polyline(canvas, path, width * 3, colour);
    polyline(canvas, path, width * 1.1F, beneath);
}

void dots(const Canvas& canvas, const PathWalker& walk, float width, Colour colour, float phase) {
    const float step = width * 3.2F;
    for (float s = first_start(phase, step) + step; s <= walk.length(); s += step) {
        canvas.list->AddCircleFilled(walk.at(s).point, width * 0.95F, packed(colour));
    }
}

void open_arrows(const Canvas& canvas, const PathWalker& walk, float width, Colour colour, float phase) {
    const float step = width * 9;
    const float arm = width * 2.6F;
    for (float s = first_start(phase, step) + step; s <= walk.length(); s += step) {
        if (s < arm * 2.1F) {
            continue; // its tail would lie before the path
        }
        const auto [tip, along] = walk.at(s);
        const ImVec2 across{-along.y, along.x};
        const ImVec2 back = tip - along * arm;
        const std::array<ImVec2, 3> head{back + across * arm, tip, back - across * arm};
        polyline(canvas, head, width * 0.9F, colour);
        canvas.list->AddLine(tip - along * (arm * 2.1F), tip, packed(colour), width * 0.9F);
    }
}

void waves(const Canvas& canvas, const PathWalker& walk, float width, Colour colour, float phase,
           float amount) {
    const float wavelength = width * (14 - 8 * std::clamp(amount, 0.0F, 1.0F));
    const float height = width * 1.9F;
    const float step = wavelength / 10;
    std::vector<ImVec2> points;
    for (float s = 0; s <= walk.length(); s += step) {
        const auto [point, along] = walk.at(s);
        const float swing = height * std::sin((s - phase) * kTurn / wavelength);
        points.push_back(point + ImVec2{-along.y, along.x} * swing);
    }
    polyline(canvas, points, width * 0.9F, colour);
}

} // namespace

float line_width(const Canvas& canvas, Line line) {
    const float base = kWidths[static_cast<std::size_t>(line)] * canvas.theme->line_factor;
    return std::max(1.0F, base * canvas.scale * std::sqrt(canvas.zoom));
}

void stroke(const Canvas& canvas, Path path, Line line, Colour colour, bool closed) {
    const float width = line_width(canvas, line);
    if (line != Line::Hidden) {
        polyline(canvas, path, width, colour, closed);
        return;
    }
    std::vector<ImVec2> loop(path.begin(), path.end());
    if (closed && !path.empty()) {
        loop.push_back(path.front());
    }
    dashed(canvas, loop, width, colour, canvas.px(6), canvas.px(4));
}

void segment(const Canvas& canvas, ImVec2 from, ImVec2 to, Line line, Colour colour) {
    if (line == Line::Rule && (from.x == to.x || from.y == to.y)) {
        // A filled box on whole pixels: an anti-aliased hairline would lie as grey on two rows.
        const float width = std::round(line_width(canvas, line));
        const ImVec2 low{std::floor(std::min(from.x, to.x)), std::floor(std::min(from.y, to.y))};
        const ImVec2 high{std::floor(std::max(from.x, to.x)), std::floor(std::max(from.y, to.y))};
        const ImVec2 thick = from.x == to.x ? ImVec2{width, 0} : ImVec2{0, width};
        canvas.list->AddRectFilled(low, high + thick, packed(colour));
        return;
    }
    const std::array<ImVec2, 2> path{from, to};
    stroke(canvas, path, line, colour);
}

void outline(const Canvas& canvas, Rect box, Line line, Colour colour) {
    const std::array<ImVec2, 4> corners{box.min, ImVec2{box.max.x, box.min.y}, box.max,
                                        ImVec2{box.min.x, box.max.y}};
    if (line != Line::Rule) {
        stroke(canvas, corners, line, colour, true);
        return;
    }
    // Whole pixels inside the box, so that corners close.
    const float width = std::round(line_width(canvas, line));
    const Rect b{{std::floor(box.min.x), std::floor(box.min.y)},
                 {std::floor(box.max.x), std::floor(box.max.y)}};
    const ImU32 ink = packed(colour);
    canvas.list->AddRectFilled(b.min, {b.max.x, b.min.y + width}, ink);
    canvas.list->AddRectFilled({b.min.x, b.max.y - width}, b.max, ink);
    canvas.list->AddRectFilled({b.min.x, b.min.y + width}, {b.min.x + width, b.max.y - width}, ink);
    canvas.list->AddRectFilled({b.max.x - width, b.min.y + width}, {b.max.x, b.max.y - width}, ink);
}

void lead(const Canvas& canvas, Path path, Colour colour, Colour beneath) {
    const float width = line_width(canvas, Line::Lead);
    polyline(canvas, path, width + 2 * canvas.px(kHaloRim), beneath);
    polyline(canvas, path, width, colour);
}

void dashed(const Canvas& canvas, Path path, float width, Colour colour, float on, float off, float phase) {
    const PathWalker walk(path);
    std::vector<ImVec2> piece;
    for (float s = first_start(phase, on + off); s < walk.length(); s += on + off) {
        if (s + on <= 0) {
            continue;
        }
        piece.clear();
        walk.piece(s, s + on, piece);
        polyline(canvas, piece, width, colour);
    }
}

void energy_path(const Canvas& canvas, Path path, Energy kind, Colour beneath, float phase, float amount) {
    if (path.size() < 2) {
        return;
    }
    const float width = line_width(canvas, Line::Outline);
    const Colour colour = canvas.theme->of(kind);
    switch (kind) {
    case Energy::Volts24:
        dashed(canvas, path, width * 1.4F, colour, width * 3.5F, width * 2.5F, phase);
        break;
    case Energy::Volts120:
        double_line(canvas, path, width, colour, beneath);
        break;
    case Energy::Gas:
        dots(canvas, PathWalker(path), width, colour, phase);
        break;
    case Energy::Air:
        open_arrows(canvas, PathWalker(path), width, colour, phase);
        break;
    case Energy::Heat:
        waves(canvas, PathWalker(path), width, colour, phase, amount);
        break;
    }
}

void chevrons(const Canvas& canvas, Path path, Colour colour) {
    if (path.size() < 2)
        return;
    const float width = line_width(canvas, Line::Outline);
    const float step = width * 16;
    const float arm = width * 2.4F;
    const PathWalker walk(path);
    for (float s = step / 2; s <= walk.length(); s += step) {
        const auto [tip, along] = walk.at(s);
        const ImVec2 across{-along.y, along.x};
        const ImVec2 back = tip - along * arm;
        const std::array<ImVec2, 3> head{back + across * arm, tip, back - across * arm};
        polyline(canvas, head, width, colour);
    }
}

} // namespace lightoff::canvas
