// SPDX-License-Identifier: MIT
#include "gui/canvas/tab_order.hpp"

#include <imgui.h>
#include <imgui_internal.h>

namespace lightoff::canvas {
namespace {

/// What is remembered from item to item and from frame to frame, in the page's own storage, whatever ids have
/// been pushed.
class Memory {
public:
    Memory()
        : storage_(&ImGui::GetCurrentWindow()->RootWindow->StateStorage),
          base_(ImHashStr("tab order", 0, ImGui::GetCurrentWindow()->RootWindow->ID)) {}

    int frame() const { return get(0); }
    ImGuiID before() const { return static_cast<ImGuiID>(get(1)); } // the stop before this one in this frame
    ImGuiID focus() const { return static_cast<ImGuiID>(get(2)); }  // has the keyboard since the frame began
    ImGuiID target() const { return static_cast<ImGuiID>(get(3)); } // gets it when it is drawn next
    int pressed() const { return get(4); } // Tab in this frame: 1 on, -1 back; 0 none, or dealt with
    ImGuiID clicked() const { return static_cast<ImGuiID>(get(5)); } // the stop that was
    void set_clicked(ImGuiID id) { set(5, static_cast<int>(id)); }
    void set_frame(int value) { set(0, value); }
    void set_before(ImGuiID id) { set(1, static_cast<int>(id)); }
    void set_focus(ImGuiID id) { set(2, static_cast<int>(id)); }
    void set_target(ImGuiID id) { set(3, static_cast<int>(id)); }
    void set_pressed(int value) { set(4, value); }

private:
    int get(ImGuiID which) const { return storage_->GetInt(base_ + which, 0); }
    void set(ImGuiID which, int value) { storage_->SetInt(base_ + which, value); }

    ImGuiStorage* storage_;
    ImGuiID base_;
};

void give_keyboard(bool is_text_field) {
    ImGuiContext& g = *ImGui::GetCurrentContext();
    const ImGuiID id = g.LastItemData.ID;
    if (g.ActiveId != id) {
        ImGui::ClearActiveID(); // a text field that was being written in
    }
    ImGui::SetFocusID(id, g.CurrentWindow);
    g.NavDisableHighlight = false;
    g.NavDisableMouseHover = true;
    ImGui::ScrollToItem(ImGuiScrollFlags_KeepVisibleEdgeY);
    if (is_text_field) {
        g.NavNextActivateId = id;
        g.NavNextActivateFlags = ImGuiActivateFlags_PreferInput;
    }
}

/// The first stop of a frame: what the last frame left undone goes round the ends.
void begin_frame(Memory& memory, ImGuiID first) {
    const ImGuiContext& g = *ImGui::GetCurrentContext();
    if (memory.pressed() > 0) {
        memory.set_target(first);
    } else if (memory.pressed() < 0) {
        memory.set_target(memory.before()); // the last stop of the last frame
    }
    const bool tab = ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Tab)) && !g.IO.KeyCtrl;
    memory.set_pressed(!tab ? 0 : g.IO.KeyShift ? -1 : 1);
    memory.set_frame(g.FrameCount);
    memory.set_before(0);
    // Where nothing shows the keyboard's place, it is where the pointer pressed last.
    memory.set_focus(g.ActiveId != 0 ? g.ActiveId : g.NavDisableHighlight ? memory.clicked() : g.NavId);
}

} // namespace

void tab_stop(bool is_text_field) {
    ImGuiContext& g = *ImGui::GetCurrentContext();
    const ImGuiID id = g.LastItemData.ID;
    Memory memory;
    if (memory.frame() != g.FrameCount) {
        begin_frame(memory, id);
    }
    if (memory.pressed() > 0 && memory.before() != 0 && memory.before() == memory.focus()) {
        memory.set_target(id);
        memory.set_pressed(0);
    } else if (memory.pressed() < 0 && memory.before() != 0 && id == memory.focus()) {
        memory.set_target(memory.before());
        memory.set_pressed(0);
    }
    if (memory.target() == id) {
        memory.set_target(0);
        give_keyboard(is_text_field);
    }
    if (g.ActiveId == id && g.ActiveIdSource == ImGuiInputSource_Mouse) {
        memory.set_clicked(id);
    }
    memory.set_before(id);
}

void take_keyboard() {
    give_keyboard(false);
}

bool has_keyboard() {
    return ImGui::IsItemFocused() && ImGui::GetIO().NavVisible;
}

bool enter_pressed() {
    return has_keyboard() && (ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Enter), false) ||
                              ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_KeyPadEnter), false));
}

} // namespace lightoff::canvas
