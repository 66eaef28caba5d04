// SPDX-License-Identifier: MIT
#include "files/guide.hpp"

#include "files/data_folder.hpp"

#include <algorithm>
#include <stdexcept>

namespace lightoff::files {
namespace {

using Kind = lesson::GuideUntil::Kind;

void read_did(const Object& until, const bench::Site& site, lesson::GuideUntil& out) {
    out.kind = Kind::did;
    const std::string text = until.text("did", {1, 100});
    for (const bench::VerbSpec& spec : bench::verbs())
        if (spec.name == text && spec.word_count() > 0) {
            out.action.verb = spec.verb;
            out.any_words = true;
            return;
        }
    try {
        out.action = bench::parse_action(site, text);
    } catch (const std::invalid_argument& error) {
        throw until.error("did", "an action, or a verb alone", error.what());
    }
}

void read_noticed(const Object& until, lesson::GuideUntil& out) {
    out.kind = Kind::noticed;
    const std::string text = until.text("noticed", {1, 40});
    for (std::size_t i = 0; i < bench::kAbouts; ++i)
        if (bench::name_of(static_cast<bench::About>(i)) == text) {
            out.about = static_cast<bench::About>(i);
            return;
        }
    throw until.error("noticed", "lamp, inducer, blower, burners ... as in `wait until`");
}

void read_points(const Object& until, const bench::Site& site, lesson::GuideUntil& out) {
    out.kind = Kind::read;
    const std::vector<std::string> points = until.texts("read", {2, 2});
    out.red = site.model.find_test_point(points[0]);
    out.black = site.model.find_test_point(points[1]);
    if (out.red < 0 || out.black < 0)
        throw until.error("read", "two test points of this furnace");
}

lesson::GuideUntil read_until(const Object& until, const bench::Site& site) {
    lesson::GuideUntil out;
    if (until.has("did"))
        read_did(until, site, out);
    else if (until.has("noticed"))
        read_noticed(until, out);
    else if (until.has("read"))
        read_points(until, site, out);
    else
        out.kind = until.choice<Kind>(
            "is", {{"struck", Kind::struck}, {"proved-dead", Kind::proved_dead}, {"fire", Kind::fire}});
    return out;
}

} // namespace

lesson::Guide read_guide(const Document& document, const bench::Site& site) {
    const Object root = document.root();
    root.choice<bool>("format", {{"lightoff-guide-1", true}});
    lesson::Guide guide;
    guide.call = data_name_of(document.file());
    for (const Object& step : root.objects("steps", {1, 60}))
        guide.steps.push_back({step.text("say", {1, 240}), step.text_or("why", "", {0, 240}),
                               read_until(step.object("until"), site)});
    root.finish();
    return guide;
}

std::optional<lesson::Guide> find_guide(const std::string& call, const bench::Site& site) {
    const std::vector<std::string> names = data_names(kGuidesFolder);
    if (std::find(names.begin(), names.end(), call) == names.end())
        return std::nullopt;
    return read_guide(read_document(find_data_file(call, kGuidesFolder)), site);
}

} // namespace lightoff::files
