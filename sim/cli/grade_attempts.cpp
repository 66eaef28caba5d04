// SPDX-License-Identifier: MIT
#include "cli/grade_attempts.hpp"

#include "cli/exit_codes.hpp"
#include "cli/json_output.hpp"
#include "cli/text_layout.hpp"
#include "cli/usage_error.hpp"
#include "files/attempt_log.hpp"
#include "files/bundle_loader.hpp"
#include "files/csv.hpp"
#include "files/disk.hpp"
#include "files/error.hpp"
#include "lesson/begin_of.hpp"
#include "lesson/debrief.hpp"
#include "report/html.hpp"
#include "report/of_attempt.hpp"
#include "report/pdf.hpp"
#include "units/constants.hpp"

#include <cmath>
#include <filesystem>
#include <map>
#include <memory>
#include <optional>

namespace lightoff::cli {
namespace {

using lesson::Grade;

/// Bundles and hypothesis furnaces that several attempts share.
class Shelf {
public:
    const files::LoadedBundle& bundle(const std::string& scenario) {
        auto& place = bundles_[scenario];
        if (!place)
            place = std::make_unique<files::LoadedBundle>(files::load_bundle(scenario));
        return *place;
    }
    evidence::Bank& bank(const std::string& scenario, std::uint64_t seed) {
        auto& place = banks_[{scenario, seed}];
        if (!place) {
            const files::LoadedBundle& of = bundle(scenario);
            place = std::make_unique<evidence::Bank>(of.site, lesson::begin_of(of.site, of.scenario, seed),
                                                     lesson::real_faults(of.site, of.scenario));
        }
        return *place;
    }

private:
    std::map<std::string, std::unique_ptr<files::LoadedBundle>> bundles_;
    std::map<std::pair<std::string, std::uint64_t>, std::unique_ptr<evidence::Bank>> banks_;
};

bool wants_report(const GradeOptions& options) {
    return !options.html.empty() || !options.pdf.empty();
}

struct Graded {
    std::string file;
    std::string scenario;
    bool abandoned = false;
    Grade grade;
    std::optional<report::Document> report; ///< if one is wanted
};

void write_reports(const report::Document& document, const GradeOptions& options) {
    if (!options.html.empty())
        files::replace_file(options.html, report::to_html(document));
    if (!options.pdf.empty())
        files::replace_file(options.pdf, report::to_pdf(document));
}

Graded grade_one(Shelf& shelf, const std::string& file, const GradeOptions& options) {
    const files::Attempt attempt = files::read_attempt(file, furnace::kPhysicsVersion);
    const std::string& scenario = attempt.header.scenario;
    const files::LoadedBundle& bundle = shelf.bundle(scenario);
    files::check_bundle(attempt, file, bundle.site.model.bundle_hash);
    const lesson::Log log = files::log_of(attempt, file, bundle.site);
    evidence::Bank& bank = shelf.bank(scenario, log.seed);
    Graded graded{file, scenario, attempt.abandoned(), {}, {}};
    if (!wants_report(options)) {
        graded.grade = lesson::grade(bundle.site, bundle.scenario, bundle.rubric, log, bank);
        return graded;
    }
    const lesson::Debrief debrief =
        lesson::make_debrief(bundle.site, bundle.scenario, bundle.rubric, log, bank);
    graded.report = report::document_of(bundle, file, debrief);
    graded.grade = debrief.grade;
    return graded;
}

std::string minute_text(std::uint64_t tick, std::uint64_t from) {
    const auto seconds = static_cast<std::uint64_t>(static_cast<double>(tick - std::min(tick, from)) /
                                                    units::ticks_per_second);
    const std::string rest = std::to_string(seconds % 60);
    return std::to_string(seconds / 60) + ":" + (rest.size() < 2 ? "0" : "") + rest;
}

std::string signed_points(double points) {
    return (points > 0.0 ? "+" : "") + fixed(points, 1);
}

void tell(Output& out, const Graded& graded) {
    const Grade& g = graded.grade;
    out.line(out.heading(graded.file) + "  (" + graded.scenario + ")");
    if (graded.abandoned)
        out.line("  abandoned: the attempt has no end");
    out.line("  mark " + out.heading(fixed(g.mark, 1)) + " of 100   safety " +
             out.heading(fixed(g.safety, 0)) + " of 100   " + fixed(g.work_minutes, 0) + " work minutes" +
             (g.par_minutes > 0.0 ? ", par " + fixed(g.par_minutes, 0) : std::string()) + "   " +
             std::to_string(g.readings) + " readings");
    out.line("  what was wrong: " + g.cause);
    Table table({{"points", true}, {"of", true}, {"at", true}, {"for", false}, {"", false}});
    for (const lesson::Line& line : g.lines)
        table.row({signed_points(line.points), line.of > 0.0 ? fixed(line.of, 1) : "",
                   minute_text(line.tick, g.arrived_tick), std::string(name_of(line.section)), line.text});
    table.write(out);
    for (const lesson::Cap& cap : g.caps)
        out.line("  at most " + fixed(cap.most, 0) + "  " + cap.text);
    out.line();
}

OrderedJson json_of(const Graded& graded) {
    const Grade& g = graded.grade;
    OrderedJson lines = OrderedJson::array();
    for (const lesson::Line& line : g.lines)
        lines.push_back({{"section", std::string(name_of(line.section))},
                         {"points", line.points},
                         {"of", line.of},
                         {"tick", line.tick},
                         {"text", line.text}});
    OrderedJson caps = OrderedJson::array();
    for (const lesson::Cap& cap : g.caps)
        caps.push_back({{"most", cap.most}, {"tick", cap.tick}, {"text", cap.text}});
    OrderedJson stairs = OrderedJson::array();
    for (const evidence::Step& step : g.staircase)
        stairs.push_back(
            {{"tick", step.tick}, {"reading", step.reading}, {"still_fitting", step.still_fitting}});
    return {{"attempt", graded.file},
            {"scenario", graded.scenario},
            {"abandoned", graded.abandoned},
            {"mark", g.mark},
            {"safety", g.safety},
            {"stopped", g.stopped},
            {"work_minutes", g.work_minutes},
            {"par_minutes", g.par_minutes},
            {"coach_minutes", g.coach_minutes},
            {"isolated_tick", g.isolated_tick ? OrderedJson(*g.isolated_tick) : OrderedJson()},
            {"readings", g.readings},
            {"cause", g.cause},
            {"lines", lines},
            {"caps", caps},
            {"staircase", stairs}};
}

double to_a_tenth(double x) {
    return std::round(10.0 * x) / 10.0;
}

files::Csv gradebook(const std::vector<Graded>& all) {
    files::Csv csv({{"attempt"},
                    {"scenario"},
                    {"mark"},
                    {"safety"},
                    {"work time", "min"},
                    {"par", "min"},
                    {"readings"},
                    {"abandoned"},
                    {"stopped"},
                    {"cap"}});
    for (const Graded& graded : all) {
        const Grade& g = graded.grade;
        csv.row({graded.file, graded.scenario, to_a_tenth(g.mark), to_a_tenth(g.safety),
                 to_a_tenth(g.work_minutes), to_a_tenth(g.par_minutes), static_cast<std::int64_t>(g.readings),
                 std::string(graded.abandoned ? "yes" : "no"), std::string(g.stopped ? "yes" : "no"),
                 g.caps.empty() ? std::string() : g.caps.front().text});
    }
    return csv;
}

} // namespace

int grade_attempts(Output& out, const GradeOptions& options) {
    if (wants_report(options) && options.attempts.size() != 1)
        throw UsageError("grade: --html and --pdf report one attempt; found " +
                         std::to_string(options.attempts.size()));
    Shelf shelf;
    std::vector<Graded> all;
    OrderedJson list = OrderedJson::array();
    bool some_unusable = false;
    const auto pass_over = [&](const std::string& file, const std::string& why) {
        some_unusable = true;
        if (options.json)
            list.push_back({{"attempt", file}, {"error", why}});
        else
            out.line(out.styled(Style::bad, "not graded") + ": " + why);
    };
    for (const std::string& file : options.attempts) {
        try {
            all.push_back(grade_one(shelf, file, options));
        } catch (const files::Error& error) {
            pass_over(file, error.what());
            continue;
        } catch (const std::invalid_argument& error) {
            pass_over(file, file + ": " + error.what());
            continue;
        }
        if (all.back().report)
            write_reports(*all.back().report, options);
        if (options.json)
            list.push_back(json_of(all.back()));
        else
            tell(out, all.back());
        out.flush();
    }
    if (options.json)
        out.line(json_text(list));
    else if (!all.empty())
        out.line("Replay proves that these actions earn this mark, not who did them.");
    if (!options.csv.empty())
        gradebook(all).save(options.csv);
    return some_unusable ? kUnusable : kDone;
}

} // namespace lightoff::cli
