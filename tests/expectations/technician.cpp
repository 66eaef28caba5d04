// SPDX-License-Identifier: MIT
#include "expectations/technician.hpp"

#include "instruments/bag.hpp"

#include <algorithm>
#include <cstdlib>
#include <stdexcept>

namespace lightoff::test {
namespace {

constexpr int kTicksPerSecond = 20;
constexpr int kWindowWakes = 20; ///< ticks until an instrument just put somewhere shows it
constexpr double kSettles_s = 60.0;
constexpr double kLampIsRead_s = 60.0;

/// What a prefix makes of the window's first unit.
double factor_of(std::string_view unit) {
    if (unit == "kΩ")
        return 1e3;
    if (unit == "MΩ")
        return 1e6;
    return unit == "nF" ? 1e-3 : 1.0;
}

std::string trimmed(std::string_view text) {
    const std::size_t first = text.find_first_not_of(" \t");
    return first == std::string_view::npos
               ? std::string()
               : std::string(text.substr(first, text.find_last_not_of(" \t") - first + 1));
}

} // namespace

Technician::Technician(const lesson::Scenario& call)
    : site_(&reference_site()), workspace_(site_->model), world_(lesson::arrive(*site_, call, 0, workspace_)),
      watch_(*site_) {}

void Technician::tick() {
    bench::advance(*site_, world_, workspace_, 1);
    watch_.observe(world_);
}

void Technician::give_up(const std::string& what) const {
    std::string heard;
    const auto& captions = watch_.captions();
    for (std::size_t i = captions.size() < 8 ? 0 : captions.size() - 8; i < captions.size(); ++i)
        heard += "\n  " + captions[i].text;
    throw std::runtime_error(what + "; noticed last:" + heard);
}

void Technician::act(const bench::Action& action, const std::string& line) {
    const bench::Verdict verdict = bench::begin(*site_, world_, action);
    if (!verdict.allowed)
        give_up(line + " is refused: " + verdict.reason);
    while (world_.hands.busy != 0)
        tick();
}

void Technician::wait_until(const visit::PlayLine& line) {
    const std::size_t before = watch_.captions().size();
    const auto has_come = [&](int ticks) {
        if (line.until == visit::Until::settled) {
            for (const instruments::NamedDisplay& window : instruments::displays(world_.bag))
                if (window.display->has(instruments::kOn) && !instruments::is_settled(*window.display))
                    return false;
            return ticks >= kWindowWakes;
        }
        for (std::size_t i = before; i < watch_.captions().size(); ++i)
            if (watch_.captions()[i].about == line.about)
                return true;
        return false;
    };
    for (int ticks = 1; ticks <= line.limit_s * kTicksPerSecond; ++ticks) {
        tick();
        if (has_come(ticks))
            return;
    }
    give_up(line.text + " came to nothing");
}

Technician& Technician::drive(std::string_view lines) {
    for (std::size_t start = 0; start < lines.size();) {
        const std::size_t end = std::min(lines.find_first_of(";\n", start), lines.size());
        const std::string text = trimmed(lines.substr(start, end - start));
        start = end + 1;
        const visit::PlayLine line = visit::parse_play_line(*site_, text);
        if (line.kind == visit::PlayLine::Kind::act)
            act(line.action, text);
        else if (line.kind == visit::PlayLine::Kind::wait_until)
            wait_until(line);
        else if (line.kind != visit::PlayLine::Kind::empty)
            throw std::invalid_argument(text + " is nothing to do at a furnace");
    }
    return *this;
}

const instruments::Display& Technician::display(const std::string& instrument) const {
    for (const instruments::NamedDisplay& window : instruments::displays(world_.bag))
        if (window.name == instrument)
            return *window.display;
    throw std::invalid_argument("there is no window " + instrument);
}

std::string Technician::window(const std::string& instrument) const {
    return instruments::text(display(instrument));
}

double Technician::shows(const std::string& instrument) const {
    const std::string text = window(instrument);
    char* end = nullptr;
    const double number = std::strtod(text.c_str(), &end);
    if (end == text.c_str())
        give_up("no number stands in the window of the " + instrument + " but \"" + text + "\"");
    return number * factor_of(trimmed(end));
}

double Technician::reading(const std::string& instrument) {
    for (int ticks = 0; ticks < static_cast<int>(kSettles_s * kTicksPerSecond); ++ticks) {
        tick();
        if (ticks >= kWindowWakes && instruments::is_settled(display(instrument)))
            return shows(instrument);
    }
    give_up("the " + instrument + " does not settle: " + window(instrument));
}

double Technician::await(const std::string& instrument, const std::function<bool(double)>& done,
                         double limit_s) {
    const double from_s = now_s();
    for (int ticks = 0; ticks < static_cast<int>(limit_s * kTicksPerSecond); ++ticks) {
        tick();
        const instruments::Display& shown = display(instrument);
        const bool number = shown.has(instruments::kOn) && !shown.has(instruments::kOverload);
        if (ticks >= kWindowWakes && number && done(shows(instrument)))
            return now_s() - from_s;
    }
    give_up("the " + instrument + " stays at " + window(instrument));
}

double Technician::await(const std::string& words, double limit_s) {
    const double from_s = now_s();
    std::size_t next = watch_.captions().size();
    for (int ticks = 0; ticks < static_cast<int>(limit_s * kTicksPerSecond); ++ticks) {
        tick();
        for (; next < watch_.captions().size(); ++next)
            if (watch_.captions()[next].text.find(words) != std::string::npos)
                return now_s() - from_s;
    }
    give_up("\"" + words + "\" does not happen");
}

int Technician::noticed(const std::string& words) const {
    int count = 0;
    for (std::size_t i = known_; i < watch_.captions().size(); ++i)
        count += watch_.captions()[i].text.find(words) != std::string::npos ? 1 : 0;
    return count;
}

std::string Technician::lamp() {
    bench::LampReader reader;
    for (int ticks = 0; ticks < static_cast<int>(kLampIsRead_s * kTicksPerSecond); ++ticks) {
        tick();
        if (const auto words = reader.look(bench::perceive(*site_, world_).seen.lamp_on))
            return *words;
    }
    give_up("the lamp can't be read");
}

Technician found(const std::string& call) {
    static std::map<std::string, Technician> all;
    auto at = all.find(call);
    if (at == all.end()) {
        const std::string path = std::string(LIGHTOFF_SOURCE_DIR) + "/scenarios/calls/" + call + ".json";
        at = all.emplace(call, Technician(files::read_scenario(files::read_document(path)))).first;
    }
    return at->second;
}

Technician with(const std::vector<Broken>& faults, double minutes) {
    static std::map<std::string, Technician> all;
    std::string name = std::to_string(minutes);
    lesson::Scenario call = call_for_heat();
    call.history = {{100, "thermostat-set 84F"}};
    call.arrive_after_ticks = static_cast<std::uint64_t>(minutes * 60.0 * kTicksPerSecond + 0.5);
    for (const Broken& fault : faults) {
        const auto onset = fault.at_s > 0.0 ? faults::Trigger::at_tick : faults::Trigger::from_start;
        call.faults.push_back({fault.fault, fault.severity, onset,
                               static_cast<std::uint64_t>(fault.at_s * kTicksPerSecond + 0.5)});
        name += " " + fault.fault + " " + std::to_string(fault.severity) + " " + std::to_string(fault.at_s);
    }
    auto at = all.find(name);
    if (at == all.end())
        at = all.emplace(name, Technician(call)).first;
    return at->second;
}

} // namespace lightoff::test
