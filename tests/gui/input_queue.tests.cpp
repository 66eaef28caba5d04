// SPDX-License-Identifier: MIT
#include "gui/headless.hpp"

#include <catch2/catch.hpp>
#include <string>

using namespace lightoff;
using namespace lightoff::platform;
using test::Headless;

namespace {

constexpr auto nothing = [](const canvas::Canvas&) {};

} // namespace

TEST_CASE("a key pressed and released between two frames is still seen pressed once") {
    Headless ui;
    int pressed = 0;
    const auto count = [&](const canvas::Canvas&) { pressed += key_pressed(Key::F5) ? 1 : 0; };
    ui.tap(Key::F5);
    ui.settle(count);
    CHECK(pressed == 1);
    CHECK_FALSE(ImGui::GetIO().KeysDown[static_cast<int>(Key::F5)]);
}

TEST_CASE("two taps of a key between two frames are two presses") {
    Headless ui;
    int pressed = 0;
    ui.tap(Key::A);
    ui.tap(Key::A);
    ui.settle([&](const canvas::Canvas&) { pressed += key_pressed(Key::A) ? 1 : 0; });
    CHECK(pressed == 2);
}

TEST_CASE("a click lands where the pointer was, not where it went afterwards") {
    Headless ui;
    ui.frame(nothing);
    ImVec2 clicked{0, 0};
    ui.click({100, 50});
    ui.queue.push(PointerEvent{400, 300});
    ui.settle([&](const canvas::Canvas&) {
        if (ImGui::IsMouseClicked(ImGuiMouseButton_Left)) {
            clicked = ImGui::GetMousePos();
        }
    });
    CHECK(clicked.x == 100);
    CHECK(clicked.y == 50);
    CHECK(ImGui::GetIO().MousePos.x == 400);
}

TEST_CASE("pointer moves in a row share one frame") {
    Headless ui;
    for (int i = 0; i < 100; ++i) {
        ui.queue.push(PointerEvent{static_cast<float>(i), 7});
    }
    ui.frame(nothing);
    CHECK(ui.queue.empty());
    CHECK(ImGui::GetIO().MousePos.x == 99);
}

TEST_CASE("the system's repeats of a held key do not hold up the queue") {
    Headless ui;
    for (int i = 0; i < 50; ++i) {
        ui.queue.push(KeyEvent{Key::Left, true});
    }
    ui.frame(nothing);
    CHECK(ui.queue.empty());
}

TEST_CASE("letters and correcting keys keep their order in a text field") {
    Headless ui;
    std::array<char, 64> buffer{};
    bool first = true;
    const auto field = [&](const canvas::Canvas&) {
        if (first) {
            ImGui::SetKeyboardFocusHere();
            first = false;
        }
        ImGui::InputText("##field", buffer.data(), buffer.size());
    };
    ui.frame(field);
    ui.frame(field);
    for (const char32_t letter : std::u32string(U"24 Vx")) {
        ui.queue.push(TextEvent{letter});
    }
    ui.tap(Key::Backspace);
    ui.queue.push(TextEvent{U'Ω'});
    ui.queue.push(TextEvent{U'\r'}); // the window system sends control characters as text as well
    ui.settle(field);
    CHECK(std::string(buffer.data()) == "24 VΩ");
}

TEST_CASE("a shortcut keeps its modifier though both keys came and went between two frames") {
    Headless ui;
    bool with_control = false;
    int presses = 0;
    ui.queue.push(KeyEvent{Key::ControlLeft, true});
    ui.tap(Key::S);
    ui.queue.push(KeyEvent{Key::ControlLeft, false});
    ui.settle([&](const canvas::Canvas&) {
        if (key_pressed(Key::S)) {
            ++presses;
            with_control = ImGui::GetIO().KeyCtrl;
        }
    });
    CHECK(presses == 1);
    CHECK(with_control);
    CHECK_FALSE(ImGui::GetIO().KeyCtrl);
}

TEST_CASE("a modifier that came after a key does not change it") {
    Headless ui;
    bool with_control = true;
    ui.queue.push(KeyEvent{Key::S, true});
    ui.queue.push(KeyEvent{Key::ControlLeft, true});
    ui.settle([&](const canvas::Canvas&) {
        if (key_pressed(Key::S)) {
            with_control = ImGui::GetIO().KeyCtrl;
        }
    });
    CHECK_FALSE(with_control);
}

TEST_CASE("losing focus releases what was held") {
    Headless ui;
    ui.queue.push(KeyEvent{Key::ControlLeft, true});
    ui.queue.push(KeyEvent{Key::Left, true});
    ui.queue.push(ButtonEvent{MouseButton::Left, true});
    ui.settle(nothing);
    CHECK(ImGui::GetIO().KeyCtrl);
    ui.queue.push(FocusEvent{false});
    ui.settle(nothing);
    CHECK_FALSE(ImGui::GetIO().KeyCtrl);
    CHECK_FALSE(ImGui::GetIO().KeysDown[static_cast<int>(Key::Left)]);
    CHECK_FALSE(ImGui::GetIO().MouseDown[0]);
}

TEST_CASE("the wheel turns where the pointer was when it turned") {
    Headless ui;
    ImVec2 turned_at{0, 0};
    float turned = 0;
    ui.queue.push(PointerEvent{10, 10});
    ui.queue.push(WheelEvent{1, 0});
    ui.queue.push(WheelEvent{1, 0});
    ui.queue.push(PointerEvent{90, 90});
    ui.settle([&](const canvas::Canvas&) {
        if (ImGui::GetIO().MouseWheel != 0) {
            turned += ImGui::GetIO().MouseWheel;
            turned_at = ImGui::GetMousePos();
        }
    });
    CHECK(turned == 2);
    CHECK(turned_at.x == 10);
}
