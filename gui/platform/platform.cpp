// SPDX-License-Identifier: MIT
#include "gui/platform/platform.hpp"

#include "gui/canvas/style.hpp"
#include "gui/platform/display.hpp"
#include "gui/platform/frame_pacer.hpp"
#include "gui/platform/input_queue.hpp"
#include "gui/platform/sfml_events.hpp"

#include <SFML/Graphics.hpp>
#include <SFML/OpenGL.hpp>
#include <algorithm>
#include <array>
#include <backends/imgui_impl_opengl2.h>
#include <cmath>
#include <stdexcept>
#include <utility>

namespace lightoff::platform {
namespace {

constexpr double kLongestDelta_s = 0.25;
constexpr float kDesignLines = 1080;
const sf::Time kNap =
    sf::milliseconds(8); // SFML 2.5 can't wait for an event with a limit: look again this often

/// From here on colours are added: light on light.
void add_light(const ImDrawList* /*list*/, const ImDrawCmd* /*command*/) {
    glBlendFunc(GL_SRC_ALPHA, GL_ONE);
}

/// From here on they are mixed, as the library's renderer has it.
void mix_light(const ImDrawList* /*list*/, const ImDrawCmd* /*command*/) {
    glBlendFunc(GL_SRC_ALPHA, GL_ONE_MINUS_SRC_ALPHA);
}

/// SFML's cursors, made when first wanted. They have to outlive the window.
class Cursors {
public:
    void show(sf::Window& window, ImGuiMouseCursor wanted) {
        if (wanted == shown_) {
            return;
        }
        shown_ = wanted;
        window.setMouseCursorVisible(wanted != ImGuiMouseCursor_None);
        if (wanted == ImGuiMouseCursor_None) {
            return;
        }
        std::unique_ptr<sf::Cursor>& cursor = made_[static_cast<std::size_t>(wanted)];
        if (!cursor) {
            cursor = std::make_unique<sf::Cursor>();
            if (!cursor->loadFromSystem(type_of(wanted)) && !cursor->loadFromSystem(sf::Cursor::Arrow)) {
                return;
            }
        }
        window.setMouseCursor(*cursor);
    }

private:
    static sf::Cursor::Type type_of(ImGuiMouseCursor cursor) {
        switch (cursor) {
        case ImGuiMouseCursor_TextInput:
            return sf::Cursor::Text;
        case ImGuiMouseCursor_ResizeAll:
            return sf::Cursor::SizeAll;
        case ImGuiMouseCursor_ResizeNS:
            return sf::Cursor::SizeVertical;
        case ImGuiMouseCursor_ResizeEW:
            return sf::Cursor::SizeHorizontal;
        case ImGuiMouseCursor_ResizeNESW:
            return sf::Cursor::SizeBottomLeftTopRight;
        case ImGuiMouseCursor_ResizeNWSE:
            return sf::Cursor::SizeTopLeftBottomRight;
        case ImGuiMouseCursor_Hand:
            return sf::Cursor::Hand;
        case ImGuiMouseCursor_NotAllowed:
            return sf::Cursor::NotAllowed;
        default:
            return sf::Cursor::Arrow;
        }
    }

    std::array<std::unique_ptr<sf::Cursor>, ImGuiMouseCursor_COUNT> made_;
    ImGuiMouseCursor shown_ = ImGuiMouseCursor_Arrow;
};

/// The library's context, ended with the window.
struct Context {
    Context() { ImGui::CreateContext(); }
    ~Context() { ImGui::DestroyContext(); }
    Context(const Context&) = delete;
    Context& operator=(const Context&) = delete;
};

const char* clipboard_text(void* buffer) {
    auto& text = *static_cast<std::string*>(buffer);
    const auto utf8 = sf::Clipboard::getString().toUtf8();
    text.assign(utf8.begin(), utf8.end());
    return text.c_str();
}

void set_clipboard_text(void*, const char* text) {
    const std::string utf8(text);
    sf::Clipboard::setString(sf::String::fromUtf8(utf8.begin(), utf8.end()));
}

/// Keeps SFML from complaining on standard error about what we can do without (vertical sync under software
/// OpenGL).
class QuietSfml {
public:
    QuietSfml() : before_(sf::err().rdbuf(nullptr)) {}
    ~QuietSfml() { sf::err().rdbuf(before_); }
    QuietSfml(const QuietSfml&) = delete;
    QuietSfml& operator=(const QuietSfml&) = delete;

private:
    std::streambuf* before_;
};

/// In the middle of the screen: SFML 2.5 takes the screen's width for its height.
void centre(sf::Window& window) {
    const sf::VideoMode screen = sf::VideoMode::getDesktopMode();
    const sf::Vector2u size = window.getSize();
    const auto middle = [](unsigned whole, unsigned part) {
        return whole > part ? static_cast<int>((whole - part) / 2) : 0;
    };
    window.setPosition({middle(screen.width, size.x), middle(screen.height, size.y)});
}

} // namespace

float design_scale(float window_height, float text_percent, const canvas::Theme& theme) {
    const float lines = std::max(1.0F, std::round(window_height / kDesignLines * 20) / 20);
    return lines * std::clamp(text_percent, 80.0F, 200.0F) / 100 * theme.text_factor;
}

float text_percent_in(ImVec2 window_px, float wanted, const canvas::Theme& theme) {
    constexpr float kLeastText = 80;
    if (window_px.x <= 0 || window_px.y <= 0) // before the first frame
        return wanted;
    const float whole = design_scale(window_px.y, 100, theme);
    const float most = 100 / whole * std::min(window_px.x / kLeastPageWide, window_px.y / kLeastPageHigh);
    return std::clamp(wanted, kLeastText, std::max(kLeastText, most));
}

struct Platform::Window {
    Cursors cursors; // before the window: destroyed after it
    sf::RenderWindow window;
    Context context;
    InputQueue queue;
    FramePacer pacer;
    canvas::FontPaths font_paths;
    canvas::FontBuild fonts;
    const canvas::Theme* theme = nullptr;
    float text_percent = 0, scale = 0;
    sf::Clock frame_clock; // since the last frame began
    double fixed_delta_s = 0, delta_s = 0;
    unsigned draw_every = 1, frames = 0;
    std::string clipboard, screenshot_path;
    bool focused = true, close_asked = false, screenshot_written = false;

    void open(const WindowOptions& options);
    void set_look(const canvas::Theme& wanted, float percent);
    void wait_and_poll(double wanted_in_s);
    void take(const sf::Event& event);
    void write_screenshot();
};

void Platform::Window::open(const WindowOptions& options) {
    const QuietSfml quiet;
    const sf::ContextSettings settings(24, 8, 0, 2, 1); // no multisampling: ImDrawList smooths its own edges
    window.create(sf::VideoMode(options.width, options.height),
                  sf::String::fromUtf8(options.title.begin(), options.title.end()), sf::Style::Default,
                  settings);
    if (!window.isOpen() || !window.setActive(true)) {
        throw std::runtime_error("Cannot open a window: the display gave no OpenGL context.");
    }
    centre(window);
    window.setVerticalSyncEnabled(true);
    window.setKeyRepeatEnabled(true);
    focused = window.hasFocus();
    fixed_delta_s = options.fixed_delta_s;
    draw_every = std::max(1U, options.draw_every);
    font_paths = options.fonts;

    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    io.LogFilename = nullptr;
    io.ConfigFlags |= ImGuiConfigFlags_NavEnableKeyboard;
    io.ConfigWindowsMoveFromTitleBarOnly = true;
    io.BackendFlags |= ImGuiBackendFlags_HasMouseCursors;
    io.GetClipboardTextFn = clipboard_text;
    io.SetClipboardTextFn = set_clipboard_text;
    io.ClipboardUserData = &clipboard;
    InputQueue::set_key_map(io);
    if (!ImGui_ImplOpenGL2_Init()) {
        throw std::runtime_error("Cannot open a window: the renderer did not start.");
    }
    set_look(canvas::theme(options.theme), options.text_percent);
}

void Platform::Window::set_look(const canvas::Theme& wanted, float percent) {
    const float wanted_scale = design_scale(static_cast<float>(window.getSize().y), percent, wanted);
    text_percent = percent;
    if (theme == &wanted && scale == wanted_scale) {
        return;
    }
    theme = &wanted;
    if (scale != wanted_scale) {
        scale = wanted_scale;
        ImGuiIO& io = ImGui::GetIO();
        ImGui_ImplOpenGL2_DestroyFontsTexture();
        fonts = canvas::build_fonts(*io.Fonts, scale, font_paths);
        io.FontDefault = fonts.fonts.of(canvas::Type::Body);
        ImGui_ImplOpenGL2_CreateFontsTexture();
    }
    canvas::apply_style(ImGui::GetStyle(), *theme, scale);
    pacer.wake();
}

void Platform::Window::wait_and_poll(double wanted_in_s) {
    const bool typing = ImGui::GetFrameCount() > 0 && ImGui::GetIO().WantTextInput;
    const bool idle = pacer.idle(wanted_in_s);
    sf::Event event;
    while (true) {
        bool came = false;
        while (window.pollEvent(event)) {
            take(event);
            came = true;
        }
        const double elapsed_s = static_cast<double>(frame_clock.getElapsedTime().asMicroseconds()) * 1e-6;
        const double left_s = pacer.wait_s(elapsed_s, wanted_in_s, typing);
        // What still waits in the queue needs a frame of its own.
        if (left_s <= 0 || (idle && (came || !queue.empty()))) {
            return;
        }
        sf::sleep(std::min(kNap, sf::microseconds(static_cast<sf::Int64>(left_s * 1e6) + 1)));
    }
}

void Platform::Window::take(const sf::Event& event) {
    pacer.wake();
    switch (event.type) {
    case sf::Event::Closed:
        close_asked = true;
        break;
    case sf::Event::Resized:
        window.setView(sf::View(sf::FloatRect(0, 0, static_cast<float>(event.size.width),
                                              static_cast<float>(event.size.height))));
        break;
    case sf::Event::GainedFocus:
        focused = true;
        break;
    case sf::Event::LostFocus:
        focused = false;
        break;
    default:
        break;
    }
    if (const std::optional<InputEvent> ours = translated(event)) {
        queue.push(*ours);
    }
}

void Platform::Window::write_screenshot() {
    sf::Texture texture;
    const sf::Vector2u size = window.getSize();
    screenshot_written = texture.create(size.x, size.y);
    if (screenshot_written) {
        texture.update(window);
        sf::Image image = texture.copyToImage();
        for (unsigned y = 0; y < size.y; ++y) {
            for (unsigned x = 0; x < size.x; ++x) {
                sf::Color pixel = image.getPixel(x, y);
                pixel.a = 255; // what blending left in the alpha channel is no part of the picture
                image.setPixel(x, y, pixel);
            }
        }
        screenshot_written = image.saveToFile(screenshot_path);
    }
    screenshot_path.clear();
}

Platform::Platform(const WindowOptions& options) {
    const DisplayProbe display; // before SFML is touched at all
    if (!display.refusal().empty()) {
        throw std::runtime_error(display.refusal());
    }
    window_ = std::make_unique<Window>();
    window_->open(options);
}

Platform::~Platform() {
    if (window_ && window_->window.setActive(true)) {
        ImGui_ImplOpenGL2_Shutdown();
    }
}

void Platform::begin_frame(double wanted_in_s) {
    Window& w = *window_;
    w.wait_and_poll(wanted_in_s);
    const double real_s = static_cast<double>(w.frame_clock.restart().asMicroseconds()) * 1e-6;
    w.delta_s = w.fixed_delta_s > 0 ? w.fixed_delta_s : std::min(real_s, kLongestDelta_s);
    w.set_look(*w.theme, w.text_percent); // the window's height may have changed

    ImGuiIO& io = ImGui::GetIO();
    io.DisplaySize = size();
    io.DeltaTime = std::max(1e-4F, static_cast<float>(w.delta_s));
    w.queue.feed(io);
    if (!w.queue.empty()) {
        w.pacer.wake();
    }
    ImGui_ImplOpenGL2_NewFrame();
    ImGui::NewFrame();
}

void Platform::end_frame() {
    Window& w = *window_;
    w.cursors.show(w.window, ImGui::GetMouseCursor());
    ImGui::Render();
    w.pacer.drew();
    if (w.frames++ % w.draw_every != 0 && w.screenshot_path.empty()) {
        return;
    }
    w.window.clear(sf::Color(w.theme->ground.r, w.theme->ground.g, w.theme->ground.b));
    w.window.resetGLStates();
    ImGui_ImplOpenGL2_RenderDrawData(ImGui::GetDrawData());
    w.window.resetGLStates();
    if (!w.screenshot_path.empty()) {
        w.write_screenshot();
    }
    w.window.display();
}

double Platform::wall_delta_s() const {
    return window_->delta_s;
}

ImVec2 Platform::size() const {
    const sf::Vector2u size = window_->window.getSize();
    return {static_cast<float>(size.x), static_cast<float>(size.y)};
}

bool Platform::focused() const {
    return window_->focused;
}

bool Platform::take_close_request() {
    return std::exchange(window_->close_asked, false);
}

void Platform::set_look(canvas::ThemeId theme, float text_percent) {
    window_->set_look(canvas::theme(theme), text_percent);
}

canvas::Canvas Platform::canvas() const {
    canvas::Canvas canvas;
    canvas.list = ImGui::GetBackgroundDrawList();
    canvas.theme = window_->theme;
    canvas.fonts = &window_->fonts.fonts;
    canvas.scale = window_->scale;
    canvas.additive = add_light;
    canvas.ordinary = mix_light;
    return canvas;
}

const std::vector<std::string>& Platform::font_messages() const {
    return window_->fonts.missing;
}

void Platform::point(ImVec2 at_px) {
    window_->queue.push(PointerEvent{at_px.x, at_px.y});
}

void Platform::request_screenshot(const std::string& path) {
    window_->screenshot_path = path;
}

bool Platform::screenshot_written() const {
    return window_->screenshot_written;
}

} // namespace lightoff::platform
