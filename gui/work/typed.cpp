// SPDX-License-Identifier: MIT
#include "gui/work/typed.hpp"

#include "gui/canvas/controls.hpp"
#include "gui/canvas/fills.hpp"
#include "gui/canvas/lettering.hpp"
#include "gui/canvas/strokes.hpp"
#include "gui/platform/input_queue.hpp"
#include "visit/play_line.hpp"

#include <algorithm>
#include <cstring>
#include <imgui_internal.h>

namespace lightoff::work {
namespace {

using namespace canvas;
using platform::Key;
using platform::key_pressed;

constexpr std::string_view kOpens = "Type an action";

/// What the callbacks of the library's text field work on.
struct Editing {
    const bench::Site* site;
    Typed* typed;
};

void set_text(ImGuiInputTextCallbackData& data, const std::string& text) {
    data.DeleteChars(0, data.BufTextLen);
    data.InsertChars(0, text.c_str());
}

void complete(ImGuiInputTextCallbackData& data, const bench::Site& site) {
    const std::string line(data.Buf, static_cast<std::size_t>(data.CursorPos));
    const visit::Completion found = visit::complete(site, line);
    if (found.words.empty())
        return;
    std::string more = line.substr(0, found.start) + visit::common_start(found.words);
    if (found.words.size() == 1)
        more += ' ';
    set_text(data, more);
}

/// Up and down walk through what was typed before.
void recall(ImGuiInputTextCallbackData& data, Typed& typed) {
    const auto count = static_cast<int>(typed.before.size());
    if (count == 0)
        return;
    const bool up = data.EventKey == ImGuiKey_UpArrow;
    if (typed.recalled < 0)
        typed.recalled = up ? count - 1 : -1;
    else
        typed.recalled = up ? std::max(0, typed.recalled - 1) : typed.recalled + 1;
    if (typed.recalled >= count)
        typed.recalled = -1;
    set_text(data,
             typed.recalled < 0 ? std::string() : typed.before[static_cast<std::size_t>(typed.recalled)]);
}

int on_edit(ImGuiInputTextCallbackData* data) {
    const Editing& editing = *static_cast<Editing*>(data->UserData);
    if (data->EventFlag == ImGuiInputTextFlags_CallbackAlways) {
        if (editing.typed->ahead) { // go on behind what was typed before the field was there
            data->ClearSelection();
            data->CursorPos = data->BufTextLen;
            editing.typed->ahead = false;
        }
        return 0;
    }
    if (data->EventFlag == ImGuiInputTextFlags_CallbackCompletion)
        complete(*data, *editing.site);
    else
        recall(*data, *editing.typed);
    return 0;
}

/// The library's field takes letters two frames after it was asked for; on a slow machine a quick typist is
/// ahead of it.
void keep_what_is_typed_ahead(Typed& typed) {
    std::size_t length = std::strlen(typed.text.data());
    for (const ImWchar letter : ImGui::GetIO().InputQueueCharacters) {
        const bool own = letter == static_cast<unsigned char>(typed.own_letter);
        typed.own_letter = 0;
        if (!own && letter >= ' ' && letter < 0x7F && length + 1 < typed.text.size())
            typed.text[length++] = static_cast<char>(letter);
    }
}

std::string finish(Typed& typed) {
    std::string line(typed.text.data());
    line.erase(0, line.find_first_not_of('/')); // the key that opened it may come through as a letter
    typed.text.fill('\0');
    typed.open = false;
    typed.recalled = -1;
    if (!line.empty())
        typed.before.push_back(line);
    return line;
}

/// How the word at the end may go on, as far as there is room.
void draw_choices(const Canvas& canvas, Rect area, const bench::Site& site, const Typed& typed) {
    const visit::Completion found = visit::complete(site, typed.text.data());
    std::string words;
    for (const std::string& word : found.words) {
        const std::string more = words.empty() ? word : words + "  " + word;
        if (text_size(canvas, more + "  …", Type::Secondary).x > area.width()) {
            words += "  …";
            break;
        }
        words = more;
    }
    text_in(canvas, area, words, Type::Secondary, canvas.theme->pencil);
}

} // namespace

float typed_width(const Canvas& canvas, const std::string& key) {
    return button_width(canvas, kOpens, key);
}

std::string draw_typed(const Canvas& canvas, Rect area, const bench::Site& site, const std::string& key,
                       Typed& typed) {
    if (!typed.open) {
        if (button(canvas, area.cut_left(typed_width(canvas, key)), kOpens, false, key))
            typed.begin(0);
        return {};
    }
    Rect field = area.cut_left(std::min(canvas.px(420), area.width() * 0.6F));
    area.cut_left(canvas.px(12));
    ImGui::SetCursorScreenPos({field.min.x, field.centre().y - ImGui::GetFrameHeight() / 2});
    ImGui::SetNextItemWidth(field.width());
    if (typed.take_focus)
        ImGui::SetKeyboardFocusHere();
    typed.take_focus = false;
    if (typed.ahead && ImGui::GetActiveID() != ImGui::GetID("##typed"))
        keep_what_is_typed_ahead(typed);
    Editing editing{&site, &typed};
    const bool entered =
        ImGui::InputText("##typed", typed.text.data(), typed.text.size(),
                         ImGuiInputTextFlags_EnterReturnsTrue | ImGuiInputTextFlags_CallbackAlways |
                             ImGuiInputTextFlags_CallbackCompletion | ImGuiInputTextFlags_CallbackHistory,
                         on_edit, &editing);
    draw_choices(canvas, area, site, typed);
    if (key_pressed(Key::Escape)) {
        typed.open = false;
        typed.text.fill('\0');
        return {};
    }
    return entered ? finish(typed) : std::string();
}

} // namespace lightoff::work
