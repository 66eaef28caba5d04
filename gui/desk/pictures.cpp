// SPDX-License-Identifier: MIT
#include "gui/desk/pictures.hpp"

#include "files/disk.hpp"
#include "files/error.hpp"

#include <algorithm>
#include <array>
#include <filesystem>
#include <sstream>
#include <utility>

namespace lightoff::desk {
namespace {

using work::CallPage;

constexpr int kFramesForPicture = 4;

constexpr std::array<std::pair<std::string_view, CallPage::Middle>, CallPage::kMiddles> kMiddles{
    {{"furnace", CallPage::Middle::furnace},
     {"diagram", CallPage::Middle::diagram},
     {"trace", CallPage::Middle::trace},
     {"switches", CallPage::Middle::strip}}};
constexpr std::array<std::pair<std::string_view, CallPage::Side>, CallPage::kSides> kSides{
    {{"order", CallPage::Side::order},
     {"bag", CallPage::Side::bag},
     {"notes", CallPage::Side::notes},
     {"suspects", CallPage::Side::suspects},
     {"close", CallPage::Side::close},
     {"noticed", CallPage::Side::noticed}}};

constexpr std::array<std::pair<std::string_view, debrief::Page>, 5> kPages{{{"moment", debrief::Page::moment},
                                                                            {"stairs", debrief::Page::stairs},
                                                                            {"better", debrief::Page::better},
                                                                            {"points", debrief::Page::points},
                                                                            {"next", debrief::Page::next}}};

/// A window that runs by itself.
class Studio {
public:
    Studio(platform::Platform& window, Program& program, std::string folder)
        : window_(window), program_(program), folder_(std::move(folder)) {}

    /// Why a line can't be done, else empty.
    std::string take(const std::string& line) {
        std::istringstream in(line);
        std::string verb;
        std::string word;
        in >> verb >> word;
        if (verb.empty() || verb[0] == '#')
            return {};
        if (verb == "picture")
            return picture(word);
        if (verb == "debrief")
            return debrief(word);
        if (verb == "point")
            return point(line.substr(line.find(verb) + verb.size()));
        if (verb == "show" && show_own(word))
            return {};
        CallPage* page = program_.call();
        if (page == nullptr)
            return "no call is open";
        if (verb == "show")
            return show(*page, word);
        if (verb == "focus")
            return focus(*page, word);
        return act(*page, line, verb[0] == '?');
    }

private:
    std::string picture(const std::string& name) {
        const std::string path = (std::filesystem::path(folder_) / name).string() + ".png";
        for (int i = 0; i < kFramesForPicture; ++i) {
            if (i + 1 == kFramesForPicture)
                window_.request_screenshot(path);
            frame();
        }
        return window_.screenshot_written() ? std::string() : "cannot write " + path;
    }
    std::string debrief(const std::string& wanted) {
        const auto* page = std::find_if(kPages.begin(), kPages.end(),
                                        [&](const auto& named) { return named.first == wanted; });
        if (page == kPages.end())
            return "found " + files::in_quotes(wanted) + "; allowed moment, stairs, better, points, next";
        frame(); // the signed call gives way to its debrief
        while (program_.is_debriefing() && program_.debriefed() == nullptr)
            frame();
        if (program_.debriefed() == nullptr)
            return "there is no debrief: no call was signed";
        return program_.show_debrief(page->second)
                   ? std::string()
                   : "found " + files::in_quotes(wanted) + ", which this call's debrief has not";
    }
    /// The pointer to a place of the window, in pixels.
    std::string point(const std::string& words) {
        std::istringstream in(words);
        ImVec2 at;
        if (!(in >> at.x >> at.y))
            return "a place has two numbers";
        window_.point(at);
        return {};
    }
    /// Whether it is a page of the program's own, not of a call.
    bool show_own(const std::string& wanted) {
        program_.close_settings();
        if (wanted == "settings")
            program_.show_settings(SettingsLeaf::looks);
        else if (wanted == "keys")
            program_.show_settings(SettingsLeaf::keys);
        else if (wanted == "file")
            program_.desk().ask_path(true);
        else if (wanted == "cautions")
            program_.show_cautions();
        else
            return false;
        return true;
    }
    /// No time goes by in it: a picture shows the moment that the script came to.
    void frame() {
        const platform::Wishes wishes = program_.wishes();
        window_.set_look(wishes.theme, wishes.text_percent);
        window_.begin_frame(0);
        program_.frame({0.0, window_.size(), window_.focused(), window_.canvas()});
        window_.end_frame();
    }
    static std::string show(CallPage& page, const std::string& wanted) {
        for (const auto& [name, middle] : kMiddles)
            if (name == wanted) {
                page.show(middle);
                return {};
            }
        for (const auto& [name, side] : kSides)
            if (name == wanted) {
                page.show(side);
                return {};
            }
        return "found " + files::in_quotes(wanted) +
               "; allowed furnace, diagram, trace, switches, order, bag, notes, suspects, close, noticed, "
               "settings, keys, file, cautions";
    }
    static std::string focus(CallPage& page, const std::string& part) {
        if (part.empty()) {
            page.close_tag();
            return {};
        }
        const int index = page.visit().site().catalogue.find_part(part);
        if (index < 0)
            return "found " + files::in_quotes(part) + "; allowed is a part of this furnace";
        page.focus({bench::Word::part, index});
        return {};
    }
    static std::string act(CallPage& page, const std::string& line, bool may_be_refused) {
        page.take(line);
        page.finish();
        return may_be_refused ? std::string() : page.refusal();
    }

    platform::Platform& window_;
    Program& program_;
    std::string folder_;
};

} // namespace

std::vector<std::string> save_pictures(platform::WindowOptions options, Program& program,
                                       const std::string& script, const std::string& folder) {
    const std::string text = files::read_file(script);
    options.fixed_delta_s = 1.0 / 60;
    platform::Platform window(options);
    std::error_code ignored;
    std::filesystem::create_directories(folder, ignored);
    Studio studio(window, program, folder);
    std::istringstream lines(text);
    int number = 0;
    for (std::string line; std::getline(lines, line);) {
        ++number;
        const std::string why = studio.take(line);
        if (!why.empty())
            return {script + ": line " + std::to_string(number) + ": " + files::in_quotes(line) + ": " + why};
    }
    return {};
}

} // namespace lightoff::desk
