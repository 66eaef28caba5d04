// SPDX-License-Identifier: MIT
// What a frame of a call's page and of explore costs at 1080p, without the OpenGL driver: processor time of
// our own code and of Dear ImGui, screen by screen; how long the first frame takes; memory. Goals: 4 ms a
// frame, 0.5 s, 200 MB.
#include "files/bundle_loader.hpp"
#include "gui/explore/explore.hpp"
#include "gui/headless.hpp"
#include "gui/work/call_page.hpp"

#include <cstdio>
#include <ctime>
#include <fstream>
#include <string>
#include <utility>

using namespace lightoff;
using work::CallPage;

namespace {

double processor_s() {
    timespec now{};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

/// Most memory that was resident so far, MB.
double peak_mb() {
    std::ifstream status("/proc/self/status");
    for (std::string line; std::getline(status, line);)
        if (line.compare(0, 6, "VmHWM:") == 0)
            return std::stod(line.substr(6)) / 1024;
    return 0;
}

constexpr int kFrames = 200;
const canvas::Rect kPage{{0, 0}, {1920, 1080}};

/// Of what `frame` does, 200 times; it was done once before.
template <class Frame>
void report(const char* name, Frame frame) {
    const double from = processor_s();
    for (int i = 0; i < kFrames; ++i)
        frame();
    std::printf("%-28s %.2f ms a frame (60 frames a second, time running)\n", name,
                1e3 * (processor_s() - from) / kFrames);
}

/// Furnace lit, another furnace beside it, eight lanes on the paper: every view in turn.
void bench_explore() {
    const files::LoadedBundle bundle = files::load_bundle("call-for-heat");
    explore::Explore page(bundle.site, bundle.scenario);
    test::Headless screen({1920, 1080});
    screen.probe.begin_frame();
    while (page.furnace().now_s() < 300)
        page.furnace().tick();
    page.what_if().choose(0);
    page.what_if().set(0, page.what_if().parameters()[0].high);
    const auto frame = [&] {
        page.pass(1.0 / 60);
        screen.frame([&](canvas::Canvas canvas) {
            canvas.probe = nullptr;
            page.draw(canvas, kPage);
        });
    };
    for (int i = 0; i < 2000 && !page.what_if().is_there(); ++i)
        frame();
    using explore::View;
    for (const auto& [name, view] :
         {std::pair{"explore, steps", View::Steps}, std::pair{"explore, readings", View::Readings},
          std::pair{"explore, diagram", View::Diagram}, std::pair{"explore, what if", View::WhatIf}}) {
        page.show(view);
        frame();
        report(name, frame);
    }
}

/// A call's page, in a context of its own: the library has one at a time.
void bench_call() {
    const double begun = processor_s();
    const files::LoadedBundle bundle = files::load_bundle("plugged-hose");
    CallPage page(bundle, {});
    test::Headless screen({1920, 1080});
    screen.probe.begin_frame();
    const auto frame = [&](double wall_s) {
        screen.frame([&](canvas::Canvas canvas) {
            canvas.probe = nullptr; // tests have it, the program has not
            page.frame(canvas, kPage, wall_s);
        });
    };
    frame(0);
    std::printf("first frame, bundle and fonts included: %.2f s of processor time\n", processor_s() - begun);
    for (const char* line :
         {"disconnect off", "burner-door off", "blower-door off", "manometer-a hose-tee-inducer",
          "disconnect on", "door-switch on", "leads board.R board.C", "probe-1 supply-duct"})
        page.take(line);
    page.finish();
    struct Screen {
        const char* name;
        CallPage::Middle middle;
        CallPage::Side side;
    };
    for (const Screen& s :
         {Screen{"furnace and bag", CallPage::Middle::furnace, CallPage::Side::bag},
          Screen{"diagram and bag", CallPage::Middle::diagram, CallPage::Side::bag},
          Screen{"diagram and suspects", CallPage::Middle::diagram, CallPage::Side::suspects},
          Screen{"trace and noticed", CallPage::Middle::trace, CallPage::Side::noticed}}) {
        page.show(s.middle);
        page.show(s.side);
        frame(0);
        report(s.name, [&] { frame(1.0 / 60); });
    }
    // A probe that is carried about writes a line wherever it settles: as many as a tune-up of two hours
    // leaves.
    constexpr std::size_t kLong = 300;
    while (page.visit().notebook().readings().size() < kLong) {
        for (const char* line : {"probe-1 return-duct", "wait 20s", "probe-1 supply-duct", "wait 20s"})
            page.take(line);
        page.finish();
    }
    page.show(CallPage::Middle::furnace);
    page.show(CallPage::Side::notes);
    frame(0);
    report("furnace and 300 readings", [&] { frame(1.0 / 60); });
}

} // namespace

int main() {
    bench_call();
    bench_explore();
    std::printf("memory at its most: %.0f MB\n", peak_mb());
}
