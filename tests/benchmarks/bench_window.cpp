// SPDX-License-Identifier: MIT
// What a frame of the call's page costs at 1080p, without the OpenGL driver: processor time of our own code
// and of Dear ImGui, screen by screen; how long the first frame takes; memory. Goals: 4 ms a frame, 0.5 s,
// 200 MB.
#include "files/bundle_loader.hpp"
#include "gui/headless.hpp"
#include "gui/work/call_page.hpp"

#include <cstdio>
#include <ctime>
#include <fstream>
#include <string>

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

} // namespace

int main() {
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
        const double from = processor_s();
        for (int i = 0; i < kFrames; ++i)
            frame(1.0 / 60);
        std::printf("%-22s %.2f ms a frame (60 frames a second, time running)\n", s.name,
                    1e3 * (processor_s() - from) / kFrames);
    }
    std::printf("memory at its most: %.0f MB\n", peak_mb());
}
