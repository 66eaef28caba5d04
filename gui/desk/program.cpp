// SPDX-License-Identifier: MIT
#include "gui/desk/program.hpp"

#include "files/attempt.hpp"
#include "files/data_folder.hpp"
#include "files/disk.hpp"
#include "files/error.hpp"
#include "files/own_folder.hpp"
#include "gui/canvas/controls.hpp"
#include "gui/canvas/fills.hpp"
#include "gui/canvas/flow.hpp"
#include "gui/canvas/lettering.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/canvas/style.hpp"
#include "gui/debrief/pages.hpp"
#include "gui/platform/input_queue.hpp"
#include "gui/platform/platform.hpp"
#include "gui/sheet/column.hpp"
#include "report/html.hpp"
#include "report/of_attempt.hpp"
#include "report/pdf.hpp"
#include "visit/words.hpp"

#include <algorithm>
#include <cmath>
#include <filesystem>

namespace lightoff::desk {
namespace {

using namespace canvas;
using platform::Key;
using platform::key_pressed;

constexpr double kTextStep = 10, kLeastText = 80, kMostText = 200; // percent
constexpr float kNamesBeside = 700;  ///< design pixels of width for the names of settings
const ImVec2 kLeastWindow{640, 360}; ///< pixels; below it nothing is drawn but a sentence

ThemeId theme_of(const files::Settings& settings) {
    for (const ThemeId id : kThemes)
        if (settings.theme == theme(id).name)
            return id;
    return ThemeId::Paper;
}

} // namespace

Program::OpenCall::OpenCall(const std::string& scenario, const work::AttemptPlace& place)
    : bundle(files::load_bundle(scenario)), page(bundle, place) {}

Program::OpenExplore::OpenExplore(const std::string& scenario)
    : bundle(files::load_bundle(scenario)), page(bundle.site, bundle.scenario) {}

Program::Program(Own own) : own_(std::move(own)), desk_(own_.attempts_folder) {}

Program::~Program() = default;

work::CallPage* Program::call() {
    return call_ ? &call_->page : nullptr;
}

bool Program::show_debrief(debrief::Page page) {
    if (!debrief_ || !debrief_->view)
        return false;
    const std::vector<debrief::Page> pages = debrief::pages_of(*debrief_->model);
    const auto found = std::find(pages.begin(), pages.end(), page);
    if (found == pages.end())
        return false;
    debrief::turn_to(*debrief_->model, *debrief_->view, static_cast<std::size_t>(found - pages.begin()));
    debrief_->view->reached = pages.size() - 1;
    return true;
}

// ---- going from page to page ----

void Program::begin(const std::string& scenario, const work::AttemptPlace& place) {
    try {
        call_ = std::make_unique<OpenCall>(scenario, place);
        obey_settings();
    } catch (const files::Error& error) {
        call_.reset();
        desk_.say(error.what());
    }
}

void Program::take_call(const std::string& scenario) {
    work::AttemptPlace place;
    std::string problem;
    try {
        if (own_.attempts_folder.empty())
            problem = "there is no home folder";
        else
            files::make_folder(own_.attempts_folder);
    } catch (const files::Error& error) {
        problem = error.what();
    }
    if (problem.empty())
        place.path = files::new_attempt_path(own_.attempts_folder, files::data_name_of(scenario));
    begin(scenario, place);
    if (!call_ && !place.path.empty()) { // the disk may be full: work on, and say that nothing is kept
        problem = desk_.said();
        begin(scenario, {});
    }
    if (call_ && !problem.empty())
        call_->page.warn("This attempt can't be kept: " + problem);
}

void Program::go_on(const std::string& attempt_path) {
    try {
        const files::Attempt attempt = files::read_attempt(attempt_path, furnace::kPhysicsVersion);
        begin(attempt.header.scenario, {attempt_path, true, attempt.header.seed});
    } catch (const files::Error& error) {
        desk_.say(error.what());
    }
}

void Program::explore(const std::string& scenario) {
    try {
        explore_ = std::make_unique<OpenExplore>(scenario);
        explore_->page.set_look(theme_of(own_.settings), static_cast<float>(own_.settings.text_percent));
        explore_->page.set_motion(!own_.settings.reduced_motion);
        explore_->page.let_leave();
    } catch (const files::Error& error) {
        desk_.say(error.what());
    }
}

void Program::debrief(const std::string& attempt_path) {
    debrief_ = std::make_unique<OpenDebrief>(attempt_path);
}

void Program::open_file(const std::string& typed) {
    const std::string path = files::typed_path(typed);
    try {
        if (std::filesystem::path(path).extension() == ".json")
            take_call(path);
        else if (files::read_attempt(path, furnace::kPhysicsVersion).end)
            debrief(path);
        else
            go_on(path);
    } catch (const files::Error& error) {
        desk_.say(error.what());
    }
}

/// The call's page was left, or its work order signed.
void Program::after_call() {
    const std::string path = call_->page.place().branch_from ? std::string() : call_->page.place().path;
    const std::string branch_of = call_->page.place().branch_from ? call_->page.place().path : std::string();
    const bool finished = call_->page.signed_off() || call_->page.stopped();
    call_->page.leave();
    back_to_desk();
    if (finished && !path.empty())
        debrief(path);
    else if (!branch_of.empty())
        debrief(branch_of);
    else if (finished)
        desk_.say("That call is over. Nothing of it could be kept, so there is no debrief.");
}

void Program::back_to_desk() {
    call_.reset();
    debrief_.reset();
    explore_.reset();
    desk_.look_again();
}

void Program::obey(const DeskWants& wants) {
    settings_open_ = settings_open_ || wants.settings;
    close_ = close_ || wants.close;
    if (wants.take)
        take_call(*wants.take);
    else if (wants.go_on)
        go_on(*wants.go_on);
    else if (wants.explore)
        explore(*wants.explore);
    else if (wants.debrief)
        debrief(*wants.debrief);
    else if (wants.open)
        open_file(*wants.open);
}

void Program::obey(const debrief::DebriefWants& wants) {
    const std::string path = debrief_->path;
    const std::string call = debrief_->model ? debrief_->model->bundle->name : std::string();
    if (wants.save_html || wants.save_pdf)
        save_report(wants.save_html);
    if (wants.try_from) {
        const std::uint64_t seed = files::read_attempt(path, furnace::kPhysicsVersion).header.seed;
        begin(call, {path, false, seed, *wants.try_from});
        if (call_)
            debrief_.reset();
    } else if (wants.take || wants.again) {
        back_to_desk();
        take_call(wants.take.value_or(call));
    } else if (wants.leave)
        back_to_desk();
}

/// Beside the attempt, by its name.
void Program::save_report(bool html) {
    const debrief::Model& model = *debrief_->model;
    const std::string path =
        std::filesystem::path(debrief_->path).replace_extension(html ? ".html" : ".pdf").string();
    try {
        const report::Document document = report::document_of(*model.bundle, debrief_->path, model.debrief);
        files::replace_file(path, html ? report::to_html(document) : report::to_pdf(document));
        debrief_->said = "Saved as " + path;
    } catch (const std::runtime_error& error) {
        debrief_->said = error.what();
    }
}

void Program::draw_debrief(const Canvas& canvas, Rect page) {
    OpenDebrief& open = *debrief_;
    fill(canvas, page, canvas.theme->ground);
    debrief::DebriefWants wants;
    if (!open.model) {
        open.model = open.background.take();
        if (open.model) {
            open.view = std::make_unique<debrief::DebriefView>(*open.model);
            open.view->now.stand_still(own_.settings.reduced_motion);
            keep_mark();
        }
    }
    Rect inner = page.shrunk(canvas.px(14));
    if (!open.said.empty()) {
        text_in(canvas, inner.cut_bottom(line_height(canvas, Type::Body)), open.said, Type::Body,
                canvas.theme->ink);
        inner.cut_bottom(canvas.px(6));
    }
    if (const std::string failure = open.background.failure(); !failure.empty()) {
        back_to_desk();
        return desk_.say(failure);
    }
    if (open.model)
        debrief::draw_debrief(canvas, inner, *open.model, *open.view, wants);
    else
        debrief::draw_waiting(canvas, inner, open.background.progress(), wants);
    obey(wants);
}

void Program::keep_mark() {
    const lesson::Grade& grade = debrief_->model->debrief.grade;
    const std::filesystem::path path(debrief_->path);
    try {
        files::keep_mark(path.parent_path().string(), path.stem().string(), grade.mark, grade.safety);
    } catch (const files::Error& error) {
        debrief_->said = error.what();
    }
}

void Program::close_asked() {
    if (call_)
        call_->page.leave();
    close_ = true;
}

// ---- a frame ----

void Program::frame(const platform::FrameInput& input) {
    window_px_ = input.size;
    ImGui::GetIO().ConfigInputTextCursorBlink = !own_.settings.reduced_motion;
    ImGui::SetNextWindowPos({0, 0});
    ImGui::SetNextWindowSize(input.size);
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {0, 0}); // what is drawn may reach the window's edge
    ImGui::Begin("page", nullptr, kPage);
    ImGui::PopStyleVar();
    draw(input.canvas.here(), {{0, 0}, input.size}, input.wall_delta_s);
    ImGui::End();
    listen();
}

/// Gives the ears what is heard in the call; held time is silent.
void Program::listen() {
    const bool on = call_ && own_.settings.sound;
    if (on && !speaker_)
        speaker_ = std::make_unique<platform::Speaker>(
            [this](std::span<std::int16_t> samples) {
                const std::lock_guard lock(ears_.mutex);
                ears_.synth.render(samples);
            },
            sound::kRate_Hz);
    if (!speaker_)
        return;
    speaker_->turn_on(on);
    const std::lock_guard lock(ears_.mutex);
    if (on && !call_->page.still())
        ears_.synth.hear(call_->page.heard_since_last_frame());
    else
        ears_.synth.hush();
}

void Program::draw(const Canvas& canvas, Rect page, double wall_s) {
    handle_keys();
    if (is_too_small())
        return draw_too_small(canvas, page);
    if (!own_.settings.cautions_read)
        return draw_cautions(canvas, page);
    if (settings_open_)
        return draw_settings(canvas, page);
    if (call_) {
        call_->page.frame(canvas, page, wall_s);
        if (call_->page.left() || (call_->page.signed_off() && call_->page.hands_free()))
            after_call();
        return;
    }
    if (debrief_)
        return draw_debrief(canvas, page);
    if (explore_) {
        explore_->page.pass(wall_s);
        explore_->page.draw(canvas, page);
        const platform::Wishes wishes = explore_->page.wishes();
        own_.settings.theme = theme(wishes.theme).name;
        own_.settings.text_percent = static_cast<double>(wishes.text_percent);
        close_ = close_ || wishes.close;
        if (explore_->page.left())
            back_to_desk();
        return;
    }
    obey(desk_.draw(canvas, page));
}

void Program::handle_keys() {
    if (!ImGui::GetIO().KeyCtrl || explore_ || keys_view_.waits)
        return;
    if (key_pressed(Key::Equal))
        change_text(kTextStep);
    if (key_pressed(Key::Minus))
        change_text(-kTextStep);
    if (key_pressed(Key::Comma))
        settings_open_ = !settings_open_;
    if (key_pressed(Key::Q))
        close_asked();
}

platform::Wishes Program::wishes() const {
    platform::Wishes wishes;
    wishes.theme = theme_of(own_.settings);
    wishes.text_percent = text_percent_in(window_px_);
    wishes.close = close_;
    if (debrief_)
        wishes.next_frame_in_s = debrief_->model ? 1e9 : 0.2;
    else if (explore_)
        wishes.next_frame_in_s = explore_->page.wishes().next_frame_in_s;
    else
        wishes.next_frame_in_s = call_ && !settings_open_ ? call_->page.next_frame_in_s() : 1e9;
    if (is_too_small())
        wishes.next_frame_in_s = 1e9;
    return wishes;
}

/// Before the first frame nobody knows.
bool Program::is_too_small() const {
    return window_px_.x > 0 && (window_px_.x < kLeastWindow.x || window_px_.y < kLeastWindow.y);
}

float Program::text_percent_in(ImVec2 window_px) const {
    return platform::text_percent_in(window_px, static_cast<float>(own_.settings.text_percent),
                                     theme(theme_of(own_.settings)));
}

/// Instead of a page that nobody could read. Time at the furnace is held.
void Program::draw_too_small(const Canvas& canvas, Rect page) {
    fill(canvas, page, canvas.theme->ground);
    const auto number = [](float pixels) { return std::to_string(static_cast<int>(pixels)); };
    const std::string words = "This window is too small to work in: " + number(page.width()) + " × " +
                              number(page.height()) + " pixels. Make it " + number(kLeastWindow.x) + " × " +
                              number(kLeastWindow.y) + " or larger. Time is held, nothing is lost.";
    const Rect inner = page.shrunk(canvas.px(12));
    paragraph(canvas, inner.min, std::max(1.0F, inner.width()), words, Type::Body, canvas.theme->ink);
}

/// What the window misses stands at the front desk, and in the foot of a call that was opened at once.
void Program::told(const std::vector<std::string>& messages) {
    std::string all;
    for (const std::string& message : messages)
        all += (all.empty() ? "" : " ") + message;
    desk_.say(all);
    if (call_)
        call_->page.warn(all);
}

/// At the very first start: the tag that hangs on the gas cock. It is lifted once.
void Program::draw_cautions(const Canvas& canvas, Rect page) {
    const Theme& theme = *canvas.theme;
    fill(canvas, page, theme.ground);
    const float width = std::min(page.width() - canvas.px(80), canvas.px(720));
    const float wrap = width - canvas.px(96);
    const std::string_view words = visit::cautions();
    const float least = line_height(canvas, Type::Title) + text_size(canvas, words, Type::Body, wrap).y +
                        control_height(canvas) + canvas.px(84);
    const float least_top = canvas.px(84); // for pipe and cock
    const float height = std::clamp(page.height() - least_top - canvas.px(12), least, least + canvas.px(26));
    const float top = std::max(least_top, (page.height() - height) / 2);
    const Rect card = rect_at({page.centre().x - width / 2, page.min.y + top}, {width, height});
    // Pipe, cock with its lever, and the string that the tag hangs on.
    const float pipe_y = card.min.y - canvas.px(54);
    const ImVec2 cock{card.min.x + canvas.px(48), pipe_y};
    for (const float off : {-canvas.px(7), canvas.px(7)})
        segment(canvas, {page.min.x, pipe_y + off}, {page.max.x, pipe_y + off}, Line::Outline, theme.ink);
    canvas.list->AddCircleFilled(cock, canvas.px(15), packed(theme.ground));
    canvas.list->AddCircle(cock, canvas.px(15), packed(theme.ink), 0, line_width(canvas, Line::Outline));
    segment(canvas, cock - ImVec2{0, canvas.px(24)}, cock + ImVec2{0, canvas.px(24)}, Line::Silhouette,
            theme.ink);
    const ImVec2 eyelet{card.min.x + canvas.px(48), card.min.y + canvas.px(30)};
    segment(canvas, cock, eyelet, Line::Detail, theme.ink);
    const float cut = canvas.px(34);
    const std::array<ImVec2, 6> edge{ImVec2{card.min.x + cut, card.min.y},
                                     ImVec2{card.max.x, card.min.y},
                                     card.max,
                                     ImVec2{card.min.x, card.max.y},
                                     ImVec2{card.min.x, card.min.y + cut},
                                     ImVec2{card.min.x + cut, card.min.y}};
    canvas.list->AddConvexPolyFilled(edge.data(), 5, packed(theme.panel));
    stroke(canvas, edge, Line::Outline, theme.ink);
    canvas.list->AddCircleFilled(eyelet, canvas.px(7), packed(theme.ground));
    canvas.list->AddCircle(eyelet, canvas.px(7), packed(theme.ink), 0, line_width(canvas, Line::Outline));
    Rect inner = card.shrunk(canvas.px(32));
    inner.cut_left(canvas.px(32));
    text(canvas, {inner.min.x + canvas.px(16), inner.min.y - canvas.px(6)}, "Before you touch anything",
         Type::Title, theme.ink);
    inner.cut_top(line_height(canvas, Type::Title) + canvas.px(16));
    const Rect used = paragraph(canvas, inner.min, wrap, words, Type::Body, theme.ink);
    inner.cut_top(used.height() + canvas.px(20));
    const bool lifted = button(
        canvas, rect_at(inner.min, {button_width(canvas, "Lift the tag", "Enter"), control_height(canvas)}),
        "Lift the tag", false, "Enter");
    if (lifted || key_pressed(Key::Enter)) {
        own_.settings.cautions_read = true;
        keep_settings();
    }
}

// ---- settings ----

void Program::change_text(double by_percent) {
    own_.settings.text_percent = std::clamp(own_.settings.text_percent + by_percent, kLeastText, kMostText);
    keep_settings();
}

void Program::obey_settings() {
    call_->page.set_units(own_.settings.si_units ? view::Units::si : view::Units::trade);
    call_->page.set_motion(!own_.settings.reduced_motion);
    call_->page.set_keys(work::KeyMap::with(own_.settings.keys));
}

void Program::keep_settings() {
    try {
        if (!own_.settings_file.empty())
            files::write_settings(own_.settings_file, own_.settings);
    } catch (const files::Error& error) {
        desk_.say("Settings can't be kept: " + std::string(error.what()));
    }
}

void Program::draw_settings(const Canvas& canvas, Rect page) {
    const files::Settings before = own_.settings;
    work::KeyMap keys = work::KeyMap::with(own_.settings.keys);
    const bool key_taken = settings_leaf_ == SettingsLeaf::keys && take_key(keys, keys_view_);
    fill(canvas, page, canvas.theme->ground);
    Rect rest = page.shrunk(canvas.px(18));
    Rect head = rest.cut_top(control_height(canvas));
    if (button(canvas, head.cut_right(button_width(canvas, "Back", "Esc")), "Back", false, "Esc") ||
        (!key_taken && key_pressed(Key::Escape)))
        settings_open_ = false;
    const std::array<std::string_view, 2> leaves{"Looks and sound", "Keys"};
    head.cut_right(canvas.px(16));
    settings_leaf_ = static_cast<SettingsLeaf>(choice(canvas, head.cut_right(choice_width(canvas, leaves)),
                                                      leaves, static_cast<std::size_t>(settings_leaf_)));
    text_in(canvas, head, "Settings", Type::Title, canvas.theme->ink);
    rest.cut_top(canvas.px(20));
    if (settings_leaf_ == SettingsLeaf::looks)
        draw_looks(canvas, rest);
    else
        draw_keys(canvas, rest, keys, keys_view_);
    if (settings_leaf_ == SettingsLeaf::looks || !settings_open_)
        keys_view_ = {};
    own_.settings.keys = keys.changes();
    if (own_.settings != before) {
        keep_settings();
        if (call_)
            obey_settings();
    }
}

void Program::draw_looks(const Canvas& canvas, Rect area) {
    files::Settings& own = own_.settings;
    sheet::Column column(canvas, area, "looks");
    const float names = canvas.px(area.width() < canvas.px(kNamesBeside) ? 84 : 150);
    const auto row = [&](std::string_view name, std::initializer_list<std::string_view> words,
                         std::size_t chosen) {
        std::vector<FlowItem> items;
        for (const std::string_view word : words)
            items.push_back({std::string(word), "", items.size() == chosen, true, 0, 0});
        Rect place = column.take(0);
        place.cut_left(names);
        const float height = lay_out_flow(canvas, place, items).height;
        Rect line = column.take(height);
        column.gap(10);
        const Canvas inside = column.canvas_for(line);
        Rect label = line.cut_left(names);
        text_in(inside, label.cut_top(control_height(canvas)), name, Type::Body, canvas.theme->ink);
        ImGui::PushID(name.data());
        const int pressed = draw_flow(inside, lay_out_flow(canvas, line, items), items);
        ImGui::PopID();
        return pressed < 0 ? chosen : static_cast<std::size_t>(pressed);
    };
    const auto id = static_cast<std::size_t>(theme_of(own));
    own.theme = theme(kThemes[row("Ground", {"Paper", "Basement", "Projector"}, id)]).name;
    constexpr std::array<double, 6> kTexts{80, 100, 125, 150, 175, 200};
    const auto at = static_cast<std::size_t>(
        std::lower_bound(kTexts.begin(), kTexts.end() - 1, own.text_percent) - kTexts.begin());
    const std::size_t text_now = row("Text", {"80 %", "100 %", "125 %", "150 %", "175 %", "200 %"}, at);
    if (text_now != at)
        own.text_percent = kTexts[text_now];
    if (const auto here = static_cast<double>(text_percent_in(window_px_)); here < own.text_percent) {
        column.note("A window of this size has room for " + figure(std::floor(here), 0) + " %.");
        column.gap(10);
    }
    own.si_units = row("Units", {"Trade (°F, in. w.c.)", "SI (°C, Pa)"}, own.si_units ? 1 : 0) == 1;
    own.reduced_motion = row("Motion", {"Moves", "Stands still"}, own.reduced_motion ? 1 : 0) == 1;
    own.sound = row("Sound", {"Off", "On"}, own.sound ? 1 : 0) == 1;
    column.gap(10);
    column.note(
        "This window gives screen readers nothing to read. The terminal program lightoff-cli carries every "
        "sight and sound as a sentence, so that a whole call can be worked there: lightoff-cli play.");
}

} // namespace lightoff::desk
