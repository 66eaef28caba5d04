// SPDX-License-Identifier: MIT
#include "gui/platform/display.hpp"

#include <X11/Xlib.h>
#include <cstdlib>

namespace lightoff::platform {
namespace {

bool is_set(const char* variable) {
    const char* value = std::getenv(variable);
    return value != nullptr && *value != '\0';
}

constexpr const char* kNoDisplay =
    "Cannot open a window: no display (neither DISPLAY nor WAYLAND_DISPLAY is set). "
    "lightoff-cli runs without one.";
constexpr const char* kWaylandOnly =
    "Cannot open a window: this Wayland session offers no X display (XWayland), and DISPLAY is not set.";

} // namespace

struct DisplayProbe::Connection {
    Display* display = XOpenDisplay(nullptr);

    Connection() = default;
    Connection(const Connection&) = delete;
    Connection& operator=(const Connection&) = delete;
    ~Connection() {
        if (display != nullptr) {
            XCloseDisplay(display);
        }
    }
    bool has_opengl() const {
        int opcode = 0;
        int event = 0;
        int error = 0;
        return XQueryExtension(display, "GLX", &opcode, &event, &error) != False;
    }
};

DisplayProbe::DisplayProbe() {
    if (!is_set("DISPLAY")) {
        refusal_ = is_set("WAYLAND_DISPLAY") ? kWaylandOnly : kNoDisplay;
        return;
    }
    const std::string name = std::getenv("DISPLAY");
    connection_ = std::make_unique<Connection>();
    if (connection_->display == nullptr) {
        refusal_ =
            "Cannot open a window: the display " + name + " does not answer. lightoff-cli runs without one.";
    } else if (!connection_->has_opengl()) {
        refusal_ = "Cannot open a window: the display " + name + " offers no OpenGL (GLX).";
    }
}

DisplayProbe::~DisplayProbe() = default;

} // namespace lightoff::platform
