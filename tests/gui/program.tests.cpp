// SPDX-License-Identifier: MIT
#include "gui/desk/program.hpp"

#include "files/attempt.hpp"
#include "files/temporary_folder.hpp"
#include "gui/headless.hpp"
#include "gui/model_script.hpp"

#include <catch2/catch.hpp>
#include <chrono>
#include <filesystem>
#include <fstream>
#include <thread>

using namespace lightoff;

namespace {

files::Settings read_before() {
    files::Settings settings;
    settings.cautions_read = true;
    return settings;
}

/// The whole program with hands that use it, but no window.
struct Visitor {
    explicit Visitor(const std::string& folder, ImVec2 size = {1280, 720},
                     const std::string& settings_file = {})
        : at(size), screen(size),
          program(desk::Own{folder, settings_file,
                            settings_file.empty() ? read_before() : files::read_settings(settings_file)}) {
        look();
    }
    void frame(double wall_s) {
        screen.frame([&](const canvas::Canvas& canvas) { program.draw(canvas, {{0, 0}, at}, wall_s); });
    }
    /// Until input is taken and what was begun is done.
    void look() {
        screen.settle([&](const canvas::Canvas& canvas) { program.draw(canvas, {{0, 0}, at}, 0.0); });
        for (int i = 0; i < 2000 && program.call() != nullptr && !program.call()->hands_free(); ++i)
            frame(0.05);
        frame(0.0);
        frame(0.0);
    }
    [[nodiscard]] bool shows(std::string_view words) const {
        const auto& texts = screen.probe.texts();
        return std::any_of(texts.begin(), texts.end(), [&](const auto& text) { return text.words == words; });
    }
    /// Of what says exactly this, else of what ends so (a number may stand before it).
    ImVec2 place_of(std::string_view words) const {
        for (const auto& text : screen.probe.texts())
            if (text.words == words)
                return text.ink.centre();
        for (const auto& text : screen.probe.texts())
            if (text.words.size() > words.size() &&
                text.words.compare(text.words.size() - words.size(), words.size(), words) == 0)
                return text.ink.centre();
        std::string all;
        for (const auto& text : screen.probe.texts())
            all += text.words + "\n";
        FAIL("nothing says " << words << " among\n" << all);
        return {};
    }
    void press(std::string_view words) {
        screen.click(place_of(words));
        look();
    }
    /// The state at the right of a name on the strip.
    void press_state_of(std::string_view name) {
        const ImVec2 label = place_of(name);
        for (const auto& text : screen.probe.texts())
            if (text.ink.min.x > label.x && text.ink.max.x < 200 &&
                std::abs(text.ink.centre().y - label.y) < 12 && text.words != name) {
                screen.click(text.ink.centre());
                look();
                return;
            }
        FAIL("no state beside " << name);
    }
    void tap(platform::Key key) {
        screen.tap(key);
        look();
    }
    void type(std::string_view line) {
        tap(platform::Key::Slash);
        for (const char letter : line)
            screen.queue.push(platform::TextEvent{static_cast<char32_t>(letter)});
        tap(platform::Key::Enter);
    }
    std::string last_done() {
        const visit::Visit& visit = program.call()->visit();
        return visit.done().empty() ? std::string()
                                    : bench::format_action(visit.site(), visit.done().back().action);
    }

    ImVec2 at;
    test::Headless screen;
    desk::Program program;
};

const debrief::Model& wait_for_debrief(Visitor& visitor) {
    for (int i = 0; i < 6000 && visitor.program.debriefed() == nullptr; ++i) {
        std::this_thread::sleep_for(std::chrono::milliseconds(100));
        visitor.frame(0.1);
        REQUIRE(visitor.program.is_debriefing());
    }
    REQUIRE(visitor.program.debriefed() != nullptr);
    return *visitor.program.debriefed();
}

} // namespace

TEST_CASE("by keyboard alone: from the front desk through a plugged hose to a debrief with full marks",
          "[program][slow]") {
    const TemporaryFolder folder;
    Visitor visitor(folder.path().string());
    REQUIRE(visitor.program.at_the_desk());
    visitor.program.desk().choose("plugged-hose");
    visitor.look();
    visitor.tap(platform::Key::Enter);
    REQUIRE(visitor.program.call() != nullptr);
    for (const std::string& line : test::script("plugged-hose"))
        visitor.type(line);
    REQUIRE(visitor.program.is_debriefing());
    const debrief::Model& model = wait_for_debrief(visitor);
    CHECK(model.debrief.grade.mark == Approx(100.0));
    CHECK(model.debrief.grade.safety == Approx(100.0));
    visitor.look();
    visitor.tap(platform::Key::Escape);
    CHECK(visitor.program.desk().calls()[visitor.program.desk().chosen()].best() == Approx(100.0));
}

TEST_CASE("by mouse: a plugged hose is found, measured, cleared and signed for", "[program]") {
    const TemporaryFolder folder;
    Visitor visitor(folder.path().string(), {1920, 1080});
    visitor.press("No heat at 14 Quarry Lane");
    visitor.press("Take the call");
    REQUIRE(visitor.program.call() != nullptr);
    visitor.press("Wait");
    visitor.press_state_of("Disconnect");
    CHECK(visitor.last_done() == "disconnect off");
    visitor.press_state_of("Burner door");
    CHECK(visitor.last_done() == "burner-door off");
    visitor.press("Hose"); // its words beside the drawing
    visitor.press("Measure");
    visitor.press("manometer-a: tee in the hose, pressure switch side");
    CHECK(visitor.last_done() == "manometer-a hose-tee-switch");
    visitor.press_state_of("Disconnect");
    visitor.press("Noticed");
    visitor.press("inducer");
    visitor.press("inducer");
    visitor.press("Bag");
    CHECK(visitor.shows("pressure difference"));
    visitor.press("Suspects");
    visitor.press("After: Call seen");
    CHECK(visitor.last_done() == "stops-at 1");
    visitor.press_state_of("Disconnect");
    visitor.press("Undo");
    CHECK(visitor.last_done() == "take-off pressure_hose");
    visitor.press("Clean");
    visitor.press("Put back");
    visitor.press("put-back");
    CHECK(visitor.last_done() == "put-back pressure_hose");
    visitor.press_state_of("Disconnect");
    visitor.press("Noticed");
    visitor.press("burners");
    CHECK(visitor.program.call()->known().percept.heard.ignition +
              visitor.program.call()->known().percept.heard.roar >
          0);
}

TEST_CASE("a process that is killed in mid-attempt loses nothing", "[program]") {
    const TemporaryFolder folder;
    std::string path;
    {
        Visitor visitor(folder.path().string());
        visitor.program.take_call("plugged-hose");
        visitor.look();
        visitor.type("disconnect off");
        visitor.type("burner-door off");
        path = visitor.program.call()->place().path;
        // No leave(): the file is as a kill would leave it, but for a line cut in two.
        std::filesystem::copy_file(path, folder.file("killed.jsonl"));
    }
    std::ofstream(folder.file("killed.jsonl"), std::ios::app) << R"({"entry":{"n":3,"ti)";
    Visitor visitor(folder.path().string());
    visitor.program.go_on(folder.file("killed.jsonl"));
    visitor.look();
    REQUIRE(visitor.program.call() != nullptr);
    CHECK(visitor.program.call()->visit().done().size() == 2);
    CHECK_FALSE(visitor.program.call()->known().percept.left_as.burner_door_on);
    visitor.type("burner-door on");
    CHECK(visitor.program.call()->visit().done().size() == 3);
}

TEST_CASE("a folder that can't be written to: the call is worked, and says that nothing is kept",
          "[program]") {
    Visitor visitor("/proc/nowhere");
    visitor.program.take_call("plugged-hose");
    visitor.look();
    REQUIRE(visitor.program.call() != nullptr);
    CHECK(visitor.program.call()->refusal().find("can't be kept") != std::string::npos);
    visitor.type("disconnect off");
    CHECK(visitor.last_done() == "disconnect off");
}

TEST_CASE("a damaged attempt is refused at the front desk, in words", "[program]") {
    const TemporaryFolder folder;
    std::ofstream(folder.file("bad.jsonl")) << "no attempt\n";
    Visitor visitor(folder.path().string());
    visitor.program.go_on(folder.file("bad.jsonl"));
    visitor.look();
    CHECK(visitor.program.at_the_desk());
    CHECK(visitor.program.desk().said().find("bad.jsonl") != std::string::npos);
}

TEST_CASE("a file that lies elsewhere is opened by its path, typed", "[program]") {
    const TemporaryFolder folder;
    {
        Visitor visitor(folder.path().string());
        visitor.program.take_call("plugged-hose");
        visitor.type("disconnect off");
        visitor.program.close_asked();
    }
    const std::string attempt = std::filesystem::directory_iterator(folder.path())->path().string();
    const TemporaryFolder other;
    const auto type_path = [](Visitor& visitor, const std::string& path) {
        visitor.press("Open a file");
        for (const char letter : path)
            visitor.screen.queue.push(platform::TextEvent{static_cast<char32_t>(letter)});
        visitor.tap(platform::Key::Enter);
    };
    SECTION("an attempt that has no end goes on") {
        Visitor visitor(other.path().string());
        type_path(visitor, attempt);
        REQUIRE(visitor.program.call() != nullptr);
        CHECK(visitor.last_done() == "disconnect off");
    }
    SECTION("a call begins") {
        Visitor visitor(other.path().string());
        type_path(visitor, std::string(LIGHTOFF_SOURCE_DIR) + "/scenarios/calls/coated-rod.json");
        CHECK(visitor.program.call() != nullptr);
    }
    SECTION("what is not there is named") {
        Visitor visitor(other.path().string());
        type_path(visitor, "/no/such/attempt.jsonl");
        CHECK(visitor.program.at_the_desk());
        CHECK(visitor.program.desk().said().find("/no/such/attempt.jsonl") != std::string::npos);
    }
}

TEST_CASE("at the very first start the cautions hang on the gas cock; they are lifted once", "[program]") {
    const TemporaryFolder folder;
    for (const ImVec2 size : {ImVec2{800, 600}, ImVec2{1280, 720}, ImVec2{1920, 1080}}) {
        test::Headless screen(size);
        desk::Program program(desk::Own{folder.path().string(), folder.file("settings.json"), {}});
        const auto look = [&] {
            screen.settle([&](const canvas::Canvas& canvas) { program.draw(canvas, {{0, 0}, size}, 0.0); });
        };
        look();
        CHECK(screen.probe.problems() == std::vector<std::string>{});
        screen.tap(platform::Key::Enter);
        look();
        look();
        CHECK(program.call() == nullptr); // the same Enter does not take a call
        CHECK(files::read_settings(folder.file("settings.json")).cautions_read);
        std::filesystem::remove(folder.file("settings.json"));
    }
}

TEST_CASE("front desk and settings: nothing cut off at any size", "[program]") {
    const TemporaryFolder folder;
    for (const ImVec2 size : {ImVec2{1280, 720}, ImVec2{1920, 1080}, ImVec2{2560, 1440}, ImVec2{800, 1000}}) {
        Visitor visitor(folder.path().string(), size);
        INFO(size.x << " x " << size.y);
        CHECK(visitor.screen.probe.problems() == std::vector<std::string>{});
        visitor.press("Settings");
        CHECK(visitor.screen.probe.problems() == std::vector<std::string>{});
    }
}

TEST_CASE("keys: a command gets another key, a clash is refused with its reason, and all is kept",
          "[program]") {
    const TemporaryFolder folder;
    const std::string file = folder.file("settings.json");
    files::write_settings(file, read_before());
    const auto key_beside = [](Visitor& visitor, std::string_view command) {
        const ImVec2 label = visitor.place_of(command);
        for (const auto& text : visitor.screen.probe.texts())
            if (text.ink.min.x > label.x && std::abs(text.ink.centre().y - label.y) < 8 &&
                text.words != command)
                return text;
        FAIL("no key beside " << command);
        return visitor.screen.probe.texts().front();
    };
    {
        Visitor visitor(folder.path().string(), {1280, 720}, file);
        visitor.press("Settings");
        visitor.press("Keys");
        CHECK(visitor.screen.probe.problems() == std::vector<std::string>{});
        CHECK(key_beside(visitor, "Bag of instruments").words == "F2");
        visitor.screen.click(key_beside(visitor, "Bag of instruments").ink.centre());
        visitor.look();
        CHECK(visitor.shows("press a key"));
        visitor.tap(platform::Key::F3);
        CHECK(visitor.shows("F3 is the key of \"Notes\"; give that another key first."));
        CHECK(key_beside(visitor, "Bag of instruments").words == "F2");
        visitor.screen.click(key_beside(visitor, "Bag of instruments").ink.centre());
        visitor.look();
        visitor.tap(platform::Key::B);
        CHECK(key_beside(visitor, "Bag of instruments").words == "B");
        visitor.tap(platform::Key::Escape);
        CHECK(visitor.program.at_the_desk());
    }
    Visitor visitor(folder.path().string(), {1280, 720}, file); // started anew
    visitor.program.take_call("plugged-hose");
    visitor.look();
    visitor.tap(platform::Key::F2);
    CHECK_FALSE(visitor.shows("CO alarm"));
    visitor.tap(platform::Key::B);
    CHECK(visitor.shows("CO alarm"));
}

TEST_CASE("keys: by keyboard alone", "[program]") {
    const TemporaryFolder folder;
    Visitor visitor(folder.path().string());
    visitor.press("Settings");
    visitor.press("Keys");
    bool waits = false;
    for (int i = 0; i < 30 && !waits; ++i) { // walk until Enter lands on a command's key
        visitor.tap(platform::Key::Tab);
        visitor.tap(platform::Key::Enter);
        waits = visitor.shows("press a key");
        if (visitor.program.at_the_desk()) // that was "Back"
            visitor.press("Settings");
    }
    REQUIRE(waits);
    visitor.tap(platform::Key::Tab);
    CHECK(visitor.shows("Tab walks from thing to thing; choose another key."));
}
