// SPDX-License-Identifier: MIT
// lightoff_sheets CALL LINES PANES [theme] [text percent] [width height] [si|trade] [scroll] [picture.png]
// Draws panes of a call's window beside each other after the lines (semicolons between them) have been done.
#include "gui/canvas/style.hpp"
#include "gui/instruments/bag.hpp"
#include "gui/paper/sheets.hpp"
#include "gui/platform/shell.hpp"
#include "gui/scrolling.hpp"
#include "gui/worked_call.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <iostream>
#include <map>
#include <sstream>
#include <vector>

using namespace lightoff;

namespace {

class Sheets : public platform::App {
public:
    Sheets(const test::WorkedCall& call, std::vector<std::string> panes, view::Units units, float scroll)
        : known_(call.known(units)), panes_(std::move(panes)), scroll_(scroll) {}

    void look(canvas::ThemeId theme, float percent) {
        wishes_.theme = theme;
        wishes_.text_percent = percent;
    }
    faces::BagView& bag() { return bag_; }
    void frame(const platform::FrameInput& input) override {
        ImGui::SetNextWindowPos({0, 0});
        ImGui::SetNextWindowSize(input.size);
        ImGui::Begin("page", nullptr, canvas::kPage);
        canvas::Rect rest{{8, 8}, {input.size.x - 8, input.size.y - 8}};
        const float wide = rest.width() / static_cast<float>(panes_.size());
        for (const std::string& pane : panes_) {
            canvas::Rect area = rest.cut_left(wide);
            area.cut_right(12);
            view::Wanted wanted;
            ImGui::PushID(pane.c_str());
            draw(pane, input.canvas.here(), area, wanted);
            ImGui::PopID();
            for (const std::string& line : wanted.lines)
                std::cout << line << '\n';
        }
        ImGui::End();
        if (scroll_ > 0)
            test::scroll_children(scroll_);
    }
    platform::Wishes wishes() const override { return wishes_; }
    void close_asked() override { wishes_.close = true; }

private:
    void draw(const std::string& pane, const canvas::Canvas& canvas, canvas::Rect area,
              view::Wanted& wanted) {
        if (pane.rfind("bag", 0) == 0) {
            if (pane == "bag-all")
                bag_.out.fill(true);
            else if (pane.size() > 4)
                bag_.open = pane.substr(4);
            faces::draw_bag(canvas, area, known_, bag_, wanted);
            return;
        }
        // "suspects", or with its lists laid open "suspects-open"
        paper::BinderView& binder = binders_[pane];
        const std::string name = pane.substr(0, pane.find('-'));
        const std::array<std::string, 7> names{"order",     "chart",  "notebook", "suspects",
                                               "diagnosis", "report", "customer"};
        binder.sheet = static_cast<paper::Sheet>(std::find(names.begin(), names.end(), name) - names.begin());
        if (name != pane) {
            binder.suspects.open = {0, 2};
            binder.diagnosis.open = paper::DiagnosisView::Open::cause;
            binder.customer.asked = true;
        }
        paper::draw_binder(canvas, area, known_, binder, wanted);
    }

    view::Known known_;
    std::vector<std::string> panes_;
    faces::BagView bag_;
    std::map<std::string, paper::BinderView> binders_;
    float scroll_;
    platform::Wishes wishes_;
};

std::vector<std::string> split(const std::string& text, char between) {
    std::vector<std::string> parts;
    std::istringstream in(text);
    for (std::string part; std::getline(in, part, between);)
        parts.push_back(part);
    return parts;
}

} // namespace

int main(int argc, char** argv) {
    std::vector<std::string> words(argv + 1, argv + argc);
    const std::vector<std::string> usual{"plugged-hose", "",    "bag",   "paper", "100",
                                         "1280",         "900", "trade", "0",     ""};
    for (std::size_t i = words.size(); i < usual.size(); ++i)
        words.push_back(usual[i]);
    test::WorkedCall call(words[0]);
    for (const std::string& line : split(words[1], ';'))
        call.play(line);
    platform::WindowOptions options;
    options.theme = words[3] == "basement"    ? canvas::ThemeId::Basement
                    : words[3] == "projector" ? canvas::ThemeId::Projector
                                              : canvas::ThemeId::Paper;
    options.text_percent = std::strtof(words[4].c_str(), nullptr);
    options.width = static_cast<unsigned>(std::strtoul(words[5].c_str(), nullptr, 10));
    options.height = static_cast<unsigned>(std::strtoul(words[6].c_str(), nullptr, 10));
    Sheets page(call, split(words[2], ','), words[7] == "si" ? view::Units::si : view::Units::trade,
                std::strtof(words[8].c_str(), nullptr));
    page.look(options.theme, options.text_percent);
    if (words[9].empty())
        return platform::run(options, page);
    options.fixed_delta_s = 0.05;
    platform::Platform window(options);
    for (int i = 0; i < 5; ++i) {
        if (i == 4)
            window.request_screenshot(words[9]);
        platform::run_frame(window, page);
    }
    return window.screenshot_written() ? 0 : 1;
}
