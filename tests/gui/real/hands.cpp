// SPDX-License-Identifier: MIT
#include "gui/real/hands.hpp"

#include <X11/Xlib.h>
#include <X11/Xutil.h>
#include <X11/extensions/XTest.h>
#include <X11/keysym.h>
#include <array>
#include <stdexcept>
#include <utility>

namespace lightoff::test {
namespace {

constexpr unsigned kWheelUp = 4, kWheelDown = 5;

struct FreeX {
    template <class T>
    void operator()(T* data) const {
        XFree(data);
    }
};

std::string title_of(::Display* display, Window window) {
    char* name = nullptr;
    if (XFetchName(display, window, &name) == 0 || name == nullptr)
        return {};
    const std::unique_ptr<char, FreeX> owned(name);
    return name;
}

bool is_seen(::Display* display, Window window) {
    XWindowAttributes attributes;
    return XGetWindowAttributes(display, window, &attributes) != 0 && attributes.map_state == IsViewable;
}

} // namespace

struct Hands::Display {
    ::Display* x = XOpenDisplay(nullptr);
    Window window = 0;

    Display() = default;
    Display(const Display&) = delete;
    Display& operator=(const Display&) = delete;
    ~Display() {
        if (x != nullptr)
            XCloseDisplay(x);
    }
    /// The server has heard of everything.
    void sync() { XSync(x, False); }

    void press(KeySym symbol, bool down) {
        const KeyCode code = XKeysymToKeycode(x, symbol);
        if (code == 0)
            throw std::invalid_argument("the keyboard has no such key");
        XTestFakeKeyEvent(x, code, down ? True : False, CurrentTime);
    }
    /// Whether a letter stands on its key's second level.
    bool needs_shift(KeySym symbol) {
        const KeyCode code = XKeysymToKeycode(x, symbol);
        int count = 0;
        const std::unique_ptr<KeySym, FreeX> levels(XGetKeyboardMapping(x, code, 1, &count));
        return levels && count > 1 && levels.get()[0] != symbol && levels.get()[1] == symbol;
    }
};

Hands::Hands() : display_(std::make_unique<Display>()) {
    int ignored = 0;
    if (display_->x == nullptr ||
        XTestQueryExtension(display_->x, &ignored, &ignored, &ignored, &ignored) == False)
        throw std::runtime_error("no display whose pointer a test can move");
}

Hands::~Hands() = default;

bool Hands::find(const std::string& title) {
    Window root = 0;
    Window parent = 0;
    Window* children = nullptr;
    unsigned count = 0;
    if (XQueryTree(display_->x, XDefaultRootWindow(display_->x), &root, &parent, &children, &count) == 0 ||
        children == nullptr)
        return false;
    const std::unique_ptr<Window, FreeX> owned(children);
    for (unsigned i = 0; i < count; ++i)
        if (title_of(display_->x, children[i]) == title && is_seen(display_->x, children[i])) {
            display_->window = children[i];
            return true;
        }
    return false;
}

void Hands::give_keyboard() {
    XSetInputFocus(display_->x, display_->window, RevertToPointerRoot, CurrentTime);
    display_->sync();
}

void Hands::point(int x, int y) {
    int root_x = 0;
    int root_y = 0;
    Window child = 0;
    XTranslateCoordinates(display_->x, display_->window, XDefaultRootWindow(display_->x), x, y, &root_x,
                          &root_y, &child);
    XTestFakeMotionEvent(display_->x, -1, root_x, root_y, CurrentTime);
    display_->sync();
}

void Hands::point_away() {
    XTestFakeMotionEvent(display_->x, -1, 0, 0, CurrentTime);
    display_->sync();
}

void Hands::button(bool down) {
    XTestFakeButtonEvent(display_->x, Button1, down ? True : False, CurrentTime);
    display_->sync();
}

void Hands::wheel(int up) {
    const unsigned which = up > 0 ? kWheelUp : kWheelDown;
    for (int i = 0; i < (up > 0 ? up : -up); ++i) {
        XTestFakeButtonEvent(display_->x, which, True, CurrentTime);
        XTestFakeButtonEvent(display_->x, which, False, CurrentTime);
    }
    display_->sync();
}

void Hands::key(const std::string& name, bool down) {
    const KeySym symbol = XStringToKeysym(name.c_str());
    if (symbol == NoSymbol)
        throw std::invalid_argument("no key is called " + name);
    display_->press(symbol, down);
    display_->sync();
}

void Hands::type(std::string_view letters) {
    for (const char letter : letters) {
        const auto symbol = static_cast<KeySym>(static_cast<unsigned char>(letter)); // of Latin 1
        const bool shift = display_->needs_shift(symbol);
        if (shift)
            display_->press(XK_Shift_L, true);
        display_->press(symbol, true);
        display_->press(symbol, false);
        if (shift)
            display_->press(XK_Shift_L, false);
    }
    display_->sync();
}

void Hands::resize(unsigned width, unsigned height) {
    XResizeWindow(display_->x, display_->window, width, height);
    display_->sync();
}

} // namespace lightoff::test
