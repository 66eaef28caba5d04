// SPDX-License-Identifier: MIT
#pragma once
#include "files/bundle_loader.hpp"
#include "files/settings.hpp"
#include "gui/debrief/background.hpp"
#include "gui/debrief/debrief.hpp"
#include "gui/desk/front_desk.hpp"
#include "gui/desk/keys_page.hpp"
#include "gui/explore/explore.hpp"
#include "gui/platform/app.hpp"
#include "gui/platform/speaker.hpp"
#include "gui/sound/synth.hpp"
#include "gui/work/call_page.hpp"

#include <cstdint>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

namespace lightoff::desk {

/// Where the program keeps what is the user's.
struct Own {
    std::string attempts_folder; ///< empty: nothing is kept
    std::string settings_file;   ///< empty: nothing is kept
    files::Settings settings;
};

enum class SettingsLeaf : std::uint8_t { looks, keys };

/// The whole program in a window: front desk, a call being worked, a furnace looked into, settings.
class Program : public platform::App {
public:
    explicit Program(Own own);
    ~Program() override;

    void frame(const platform::FrameInput& input) override;
    platform::Wishes wishes() const override;
    void close_asked() override;
    void told(const std::vector<std::string>& messages) override;

    /// Begins a call; a problem is told at the front desk.
    void take_call(const std::string& scenario);
    void go_on(const std::string& attempt_path);
    void explore(const std::string& scenario);
    /// Talks a finished attempt over.
    void debrief(const std::string& attempt_path);
    /// Opens the settings, or another of their leaves.
    void show_settings(SettingsLeaf leaf) {
        settings_open_ = true;
        settings_leaf_ = leaf;
    }
    void close_settings() { settings_open_ = false; }
    /// As at the very first start.
    void show_cautions() { own_.settings.cautions_read = false; }

    /// A call's file (.json) is begun, an attempt with an end talked over, any other attempt gone on with.
    void open_file(const std::string& typed);

    /// For tests and pictures: what is open now.
    [[nodiscard]] work::CallPage* call();
    [[nodiscard]] FrontDesk& desk() { return desk_; }
    [[nodiscard]] bool at_the_desk() const { return !call_ && !explore_ && !debrief_ && !settings_open_; }
    /// Null while there is none, or while it is still being made.
    [[nodiscard]] const debrief::Model* debriefed() const {
        return debrief_ ? debrief_->model.get() : nullptr;
    }
    /// Turns to one of its pages, and lets every other be turned to; false if it has no such page or is not
    /// made yet.
    bool show_debrief(debrief::Page page);
    [[nodiscard]] bool is_debriefing() const { return debrief_ != nullptr; }
    void draw(const canvas::Canvas& canvas, canvas::Rect page, double wall_s);
    /// The text size asked for, or the largest that leaves every pane room in a window of this size.
    [[nodiscard]] float text_percent_in(ImVec2 window_px) const;

private:
    struct OpenCall {
        OpenCall(const std::string& scenario, const work::AttemptPlace& place);
        files::LoadedBundle bundle;
        work::CallPage page;
    };
    struct OpenExplore {
        explicit OpenExplore(const std::string& scenario);
        files::LoadedBundle bundle;
        explore::Explore page;
    };

    struct OpenDebrief {
        explicit OpenDebrief(const std::string& its_path) : path(its_path), background(its_path) {}
        std::string path;
        debrief::Background background;
        std::unique_ptr<debrief::Model> model;
        std::unique_ptr<debrief::DebriefView> view;
        std::string said;
    };

    void obey(const DeskWants& wants);
    void obey(const debrief::DebriefWants& wants);
    void draw_debrief(const canvas::Canvas& canvas, canvas::Rect page);
    void save_report(bool html);
    void after_call();
    void handle_keys();
    void begin(const std::string& scenario, const work::AttemptPlace& place);
    void back_to_desk();
    void draw_too_small(const canvas::Canvas& canvas, canvas::Rect page);
    bool is_too_small() const;
    void draw_cautions(const canvas::Canvas& canvas, canvas::Rect page);
    void draw_settings(const canvas::Canvas& canvas, canvas::Rect page);
    void draw_looks(const canvas::Canvas& canvas, canvas::Rect rest);
    void keep_settings();
    void obey_settings();
    void keep_mark();
    void listen();
    void change_text(double by_percent);

    Own own_;
    FrontDesk desk_;
    std::unique_ptr<OpenCall> call_;
    std::unique_ptr<OpenExplore> explore_;
    std::unique_ptr<OpenDebrief> debrief_;
    bool settings_open_ = false;
    SettingsLeaf settings_leaf_ = SettingsLeaf::looks;
    KeysView keys_view_;
    bool close_ = false;
    ImVec2 window_px_{0, 0};

    /// The synth is asked for samples by a thread of the sound device.
    struct Ears {
        std::mutex mutex;
        sound::Synth synth;
    };
    Ears ears_;
    std::unique_ptr<platform::Speaker> speaker_; ///< made when first something can be heard
};

} // namespace lightoff::desk
