// SPDX-License-Identifier: MIT
#pragma once
#include "files/bundle_loader.hpp"
#include "gui/view/known.hpp"
#include "visit/play_line.hpp"
#include "visit/until.hpp"
#include "visit/visit.hpp"

#include <stdexcept>
#include <string>
#include <string_view>

namespace lightoff::test {

/// A call of the data folder that lines of `play` have been done in.
class WorkedCall {
public:
    explicit WorkedCall(const std::string& name, std::uint64_t seed = 0)
        : bundle_(files::load_bundle(name)), visit_(bundle_, seed) {}

    /// Does one line, or several with newlines between; refusals and mistakes throw.
    void play(std::string_view lines) {
        while (!lines.empty()) {
            const std::size_t end = std::min(lines.find('\n'), lines.size());
            one(lines.substr(0, end));
            lines.remove_prefix(std::min(end + 1, lines.size()));
        }
    }

    [[nodiscard]] view::Known known(view::Units units = view::Units::trade) const {
        return view::known_of(visit_, bundle_.scenario, units);
    }
    [[nodiscard]] const visit::Visit& visit() const { return visit_; }

private:
    void one(std::string_view text) {
        const visit::PlayLine line = visit::parse_play_line(bundle_.site, text);
        bench::Action action = line.action;
        if (line.kind == visit::PlayLine::Kind::wait_until) {
            const auto seconds = visit_.seconds_until(
                [&](const visit::Visit::Ahead& ahead) { return visit::has_come_about(line, ahead); },
                line.limit_s, [] { return false; });
            if (!seconds)
                throw std::runtime_error(std::string(text) + ": does not come about");
            action = {bench::Verb::wait, 0, *seconds};
        } else if (line.kind != visit::PlayLine::Kind::act) {
            return;
        }
        const auto& readings = visit_.notebook().readings();
        for (std::size_t i = 0; line.last_of >= 0 && i < readings.size(); ++i)
            if (readings[i].window == line.last_of)
                action.value = static_cast<std::int32_t>(i) + 1;
        const std::string reason = visit_.act(
            action, "test",
            {[](const bench::Caption&) {}, [](const bench::Reading&, std::size_t) {}, [] { return false; }});
        if (!reason.empty())
            throw std::runtime_error(std::string(text) + ": " + reason);
    }

    files::LoadedBundle bundle_;
    visit::Visit visit_;
};

} // namespace lightoff::test
