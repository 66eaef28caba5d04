// SPDX-License-Identifier: MIT
#pragma once
#include "gui/headless.hpp"
#include "gui/scrolling.hpp"
#include "gui/view/known.hpp"

#include <algorithm>
#include <functional>
#include <set>
#include <string>
#include <vector>

namespace lightoff::test {

using canvas::operator+;

/// A pane of a call's window on a display of its own, and hands that use it.
class Pane {
public:
    using Draw = std::function<void(const canvas::Canvas&, canvas::Rect, view::Wanted&)>;

    Pane(ImVec2 size, Draw draw, canvas::ThemeId theme = canvas::ThemeId::Paper, float scale = 1)
        : size_(size), draw_(std::move(draw)), ui_(size + ImVec2{2 * kMargin, 2 * kMargin}, theme, scale) {
        frame();
        frame(); // what can be scrolled is known from the second on
    }

    void frame() {
        ui_.settle([this](const canvas::Canvas& canvas) {
            view::Wanted now;
            draw_(canvas, canvas::rect_at({kMargin, kMargin}, size_), now);
            wanted.lines.insert(wanted.lines.end(), now.lines.begin(), now.lines.end());
            if (now.lead != view::Wanted::Lead::none) {
                wanted.lead = now.lead;
                wanted.lead_point = now.lead_point;
            }
        });
    }
    void tap(platform::Key key) {
        ui_.tap(key);
        frame();
    }
    void write(const std::string& letters) {
        for (const char letter : letters) {
            ui_.queue.push(platform::TextEvent{static_cast<char32_t>(letter)});
            frame();
        }
    }
    /// Scrolls until words stand in view, whole. False if they never do.
    bool find(const std::string& words, ImVec2& where, std::size_t nth = 0) {
        const float step = std::max(20.0F, size_.y / 4);
        for (float y = 0; y <= longest_scroll() + step; y += step) {
            scroll(y);
            std::size_t before = 0;
            for (const canvas::LayoutProbe::Text& text : ui_.probe.texts())
                if (text.words == words && before++ == nth) {
                    where = text.ink.centre();
                    return true;
                }
        }
        return false;
    }
    bool shows(const std::string& words) {
        ImVec2 where;
        return find(words, where);
    }
    /// Clicks these words, or the nth of the same in view; false if they are not there.
    bool click(const std::string& words, std::size_t nth = 0) {
        ImVec2 where;
        if (!find(words, where, nth))
            return false;
        ui_.click(where);
        frame();
        return true;
    }
    /// What the layout probe finds at any place of the scroll; each once.
    std::set<std::string> problems() {
        std::set<std::string> found;
        const float step = std::max(20.0F, size_.y / 3);
        for (float y = 0; y <= longest_scroll() + step; y += step) {
            scroll(y);
            for (std::string& one : ui_.probe.problems())
                found.insert(std::move(one));
        }
        return found;
    }
    /// All words that can be scrolled into view.
    std::set<std::string> words() {
        std::set<std::string> all;
        const float step = std::max(20.0F, size_.y / 3);
        for (float y = 0; y <= longest_scroll() + step; y += step) {
            scroll(y);
            for (const canvas::LayoutProbe::Text& text : ui_.probe.texts())
                all.insert(text.words);
        }
        return all;
    }
    std::vector<ImDrawVert> vertices() {
        frame();
        std::vector<ImDrawVert> all;
        const ImDrawData* data = ImGui::GetDrawData();
        for (int i = 0; i < data->CmdListsCount; ++i)
            all.insert(all.end(), data->CmdLists[i]->VtxBuffer.begin(), data->CmdLists[i]->VtxBuffer.end());
        return all;
    }

    /// Whether every letter is in the typeface of the body.
    [[nodiscard]] bool has_letters(const std::string& words) const {
        const ImFont* font = ui_.fonts().fonts.of(canvas::Type::Body);
        for (const char* at = words.c_str(); *at != 0;) {
            unsigned letter = 0;
            at += ImTextCharFromUtf8(&letter, at, nullptr);
            if (letter != '\n' && font->FindGlyphNoFallback(static_cast<ImWchar>(letter)) == nullptr)
                return false;
        }
        return true;
    }

    view::Wanted wanted; ///< since it was last emptied

private:
    static constexpr float kMargin = 40; // the page clips its children a little inside of its own edge

    void scroll(float y) {
        scroll_children(y);
        frame();
    }

    ImVec2 size_;
    Draw draw_;
    Headless ui_;
};

inline bool same(const std::vector<ImDrawVert>& a, const std::vector<ImDrawVert>& b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const ImDrawVert& x, const ImDrawVert& y) {
        return x.pos.x == y.pos.x && x.pos.y == y.pos.y && x.uv.x == y.uv.x && x.uv.y == y.uv.y &&
               x.col == y.col;
    });
}

} // namespace lightoff::test
