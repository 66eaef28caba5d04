// SPDX-License-Identifier: MIT
#include "gui/canvas/strokes.hpp"

#include "gui/canvas/fills.hpp"
#include "gui/canvas/path_walker.hpp"
#include "gui/headless.hpp"

#include <array>
#include <catch2/catch.hpp>
#include <cmath>

using namespace lightoff;
using namespace lightoff::canvas;
using test::Headless;

namespace {

const std::array<ImVec2, 3> kCorner{ImVec2{0, 0}, ImVec2{30, 0}, ImVec2{30, 40}};

} // namespace

TEST_CASE("a path is walked by distance, round its corners") {
    const PathWalker walk(kCorner);
    CHECK(walk.length() == 70);
    CHECK(walk.at(10).point.x == 10);
    CHECK(walk.at(50).point.y == 20);
    CHECK(walk.at(50).along.y == 1);
    CHECK(walk.at(1e6F).point.y == 40);
    std::vector<ImVec2> piece;
    walk.piece(20, 40, piece);
    REQUIRE(piece.size() == 3);
    CHECK(piece[1].x == 30);
    CHECK(piece[1].y == 0);
    CHECK(piece[2].y == 10);
}

TEST_CASE("line widths follow weight, theme and the square root of zoom") {
    Headless ui;
    ui.frame([](Canvas canvas) {
        // The weights of the design: silhouette 2.8, outline 2.0, detail 1.4, hidden 1.0, leads 3.5.
        CHECK(line_width(canvas, Line::Lead) == 3.5F);
        CHECK(line_width(canvas, Line::Silhouette) == 2.8F);
        CHECK(line_width(canvas, Line::Outline) == 2.0F);
        CHECK(line_width(canvas, Line::Detail) == 1.4F);
        CHECK(line_width(canvas, Line::Hidden) == 1.0F);
        canvas.zoom = 4;
        CHECK(line_width(canvas, Line::Outline) == 4.0F);
        canvas.zoom = 0.01F;
        CHECK(line_width(canvas, Line::Outline) == 1.0F);
        canvas.zoom = 1;
        canvas.theme = &theme(ThemeId::Projector);
        CHECK(line_width(canvas, Line::Outline) == 3.0F);
    });
}

TEST_CASE("every pattern draws something, stays near its path and survives odd paths") {
    for (std::size_t kind = 0; kind < kEnergyCount; ++kind) {
        Headless ui;
        ui.frame([&](const Canvas& canvas) {
            const auto energy = static_cast<Energy>(kind);
            const std::array<ImVec2, 2> path{ImVec2{100, 100}, ImVec2{400, 100}};
            const int before = canvas.list->VtxBuffer.Size;
            energy_path(canvas, path, energy, canvas.theme->ground, 1234.5F, 1);
            CHECK(canvas.list->VtxBuffer.Size > before);
            for (int i = before; i < canvas.list->VtxBuffer.Size; ++i) {
                const ImVec2 at = canvas.list->VtxBuffer[i].pos;
                CHECK(std::abs(at.y - 100) < 12);
                CHECK(at.x > 85);
                CHECK(at.x < 415);
            }
            const std::array<ImVec2, 2> point{ImVec2{5, 5}, ImVec2{5, 5}};
            energy_path(canvas, point, energy, canvas.theme->ground);
            energy_path(canvas, {}, energy, canvas.theme->ground);
        });
    }
}

TEST_CASE("glow asks the renderer to add light, and then to mix again") {
    Headless ui;
    ui.frame([](Canvas canvas) {
        canvas.additive = [](const ImDrawList*, const ImDrawCmd*) {};
        canvas.ordinary = ImDrawCallback_ResetRenderState; // no renderer here: only the order counts
        glow(canvas, {100, 100}, 40, canvas.theme->igniter, 0.5F);
        std::vector<ImDrawCallback> callbacks;
        for (const ImDrawCmd& command : canvas.list->CmdBuffer) {
            if (command.UserCallback != nullptr) {
                callbacks.push_back(command.UserCallback);
            }
        }
        REQUIRE(callbacks.size() == 2);
        CHECK(callbacks[0] == canvas.additive);
        CHECK(callbacks[1] == canvas.ordinary);
    });
}

TEST_CASE("a strip between two edges has two triangles for each step") {
    Headless ui;
    ui.frame([](const Canvas& canvas) {
        const std::array<ImVec2, 3> low{ImVec2{0, 50}, ImVec2{10, 60}, ImVec2{20, 40}};
        const std::array<ImVec2, 3> high{ImVec2{0, 10}, ImVec2{10, 20}, ImVec2{20, 5}};
        const int before = canvas.list->IdxBuffer.Size;
        strip(canvas, low, high, canvas.theme->ink, canvas.theme->ink);
        CHECK(canvas.list->IdxBuffer.Size - before == 12);
    });
}
