// SPDX-License-Identifier: MIT
#include "report/document.hpp"

#include "report/pictures.hpp"
#include "report/words.hpp"
#include "units/convert.hpp"
#include "visit/words.hpp"

#include <cmath>

namespace lightoff::report {
namespace {

using Weight = Paragraph::Weight;

class Writer {
public:
    Writer(const files::LoadedBundle& bundle, const lesson::Debrief& debrief, const Origin& origin)
        : bundle_(bundle), site_(bundle.site), debrief_(debrief), story_(debrief.story), origin_(origin) {}

    Document write() {
        document_.title = bundle_.scenario.title;
        document_.subtitle = "Report of an attempt: " + origin_.file;
        work_order();
        frozen();
        staircase();
        better();
        timeline();
        readings();
        statements();
        points();
        hazards();
        next();
        proof();
        return std::move(document_);
    }

private:
    void heading(std::string words) { document_.blocks.emplace_back(Heading{std::move(words)}); }
    void say(std::string words, Weight weight = Weight::ordinary) {
        document_.blocks.emplace_back(Paragraph{std::move(words), weight});
    }
    void table(Table table) { document_.blocks.emplace_back(std::move(table)); }
    [[nodiscard]] std::string at(std::uint64_t tick) const { return clock(story_, tick); }
    static std::string fahrenheit(double k) {
        return decimal(std::round(units::k_to_fahrenheit(k)), 0) + " °F";
    }

    void work_order() {
        const lesson::Scenario& call = bundle_.scenario;
        heading("Work order");
        Table order{{{"", 1.0, false}, {"", 4.0, false}}, {}};
        order.rows.push_back({"Kind", visit::kind_text(call.kind)});
        if (!call.complaint.empty())
            order.rows.push_back({"Complaint", call.complaint});
        order.rows.push_back({"Equipment", call.equipment});
        order.rows.push_back({"House", fahrenheit(call.house_k) + " inside, basement " +
                                           fahrenheit(call.inputs.basement_k) + ", outdoors " +
                                           fahrenheit(call.inputs.outdoor_k)});
        order.rows.push_back(
            {"Time", at(story_.last_tick) + " at the furnace" +
                         (origin_.end.empty() ? "; the attempt has no end" : "; " + origin_.end)});
        table(std::move(order));
    }

    void frozen() {
        const bench::HazardEvent* event = frozen_moment(site_, story_);
        if (event == nullptr)
            return;
        const bench::HazardRow& row = site_.hazards[static_cast<std::size_t>(event->hazard)];
        heading("Stop work at " + at(event->tick));
        say(row.title + ": " + event->about + ".", Weight::alarm);
        say(row.why);
    }

    void staircase() {
        if (!debrief_.has_staircase)
            return;
        heading("What could be known, and when");
        say(knew_text(site_, debrief_), Weight::strong);
        document_.blocks.emplace_back(
            Figure{staircase_picture(site_, debrief_),
                   "Causes that still fitted what had been read, on a scale of halvings."});
        Table steps{{{"at", 0.5, true}, {"by", 3.0, false}, {"ruled out", 1.0, true}, {"left", 0.7, true}},
                    {}};
        for (const evidence::Step& step : debrief_.grade.staircase)
            steps.rows.push_back({at(step.tick), step_text(site_, debrief_, step),
                                  std::to_string(step.ruled_out.size()), std::to_string(step.still_fitting)});
        if (!steps.rows.empty())
            table(std::move(steps));
        if (debrief_.coach.empty())
            return;
        say("The coach's way from arrival, the test that tells most in a minute of work first:");
        Table coach{{{"min", 0.5, true}, {"test", 4.0, false}, {"left", 0.7, true}}, {}};
        for (const lesson::CoachStep& step : debrief_.coach)
            coach.rows.push_back(
                {decimal(step.minutes, 1), test_text(step.test), std::to_string(step.still_fitting)});
        table(std::move(coach));
    }
    void better() {
        if (!debrief_.has_staircase)
            return;
        heading("One better test");
        if (!debrief_.better) {
            say(std::string(kNoBetter));
            return;
        }
        say(choice_text(site_, debrief_));
        say(offer_text(*debrief_.better), Weight::strong);
        Table answers{{{"if it shows", 1.4, false}, {"causes", 0.6, true}, {"then it is one of", 4.0, false}},
                      {}};
        const std::vector<std::string> shows = answers_of(debrief_.better->offer);
        for (std::size_t i = 0; i < shows.size(); ++i) {
            const evidence::Meaning& meaning = debrief_.better->offer.meanings[i];
            answers.rows.push_back(
                {shows[i], std::to_string(meaning.causes.size()), causes_text(site_, meaning.causes, 4)});
        }
        table(std::move(answers));
    }

    void timeline() {
        heading("The attempt over time");
        document_.blocks.emplace_back(Figure{timeline_picture(site_, debrief_),
                                             "True values of the furnace, seen from outside the call."});
    }

    void readings() {
        heading("Readings");
        if (story_.readings.empty()) {
            say("None.");
            return;
        }
        Table list{{{"no.", 0.5, true},
                    {"at", 0.7, true},
                    {"with", 1.8, false},
                    {"shows", 1.9, false},
                    {"where", 3.0, false}},
                   {}};
        if (debrief_.has_staircase)
            list.columns.push_back({"worth", 1.0, false});
        for (std::size_t i = 0; i < story_.readings.size(); ++i) {
            const bench::Reading& r = story_.readings[i];
            list.rows.push_back({std::to_string(i + 1), at(r.tick), visit::source_text(site_, r),
                                 visit::value_text(site_, r), visit::place_text(r)});
            if (debrief_.has_staircase)
                list.rows.back().push_back(worth_text(debrief_, i));
        }
        table(std::move(list));
    }

    void statements() {
        heading("Statements");
        if (story_.statements.empty()) {
            say("None.");
            return;
        }
        Table list{{{"at", 0.5, true}, {"", 6.0, false}}, {}};
        for (const lesson::Statement& s : story_.statements)
            list.rows.push_back({at(s.tick), statement_text(site_, story_, s.action)});
        table(std::move(list));
    }

    void points() {
        const lesson::Grade& grade = debrief_.grade;
        heading("Points");
        say("Mark " + decimal(grade.mark, 1) + " of 100. Safety " + decimal(grade.safety, 0) +
                " of 100, which stands apart.",
            Weight::strong);
        Table list{{{"points", 0.7, true},
                    {"of", 0.6, true},
                    {"at", 0.7, true},
                    {"for", 0.9, false},
                    {"", 5.0, false}},
                   {}};
        for (const lesson::Line& line : grade.lines)
            list.rows.push_back({points_text(line.points), line.of > 0.0 ? decimal(line.of, 1) : "",
                                 at(line.tick), std::string(name_of(line.section)), line.text});
        table(std::move(list));
        for (const lesson::Cap& cap : grade.caps)
            say("At most " + decimal(cap.most, 0) + ": " + cap.text + " (" + at(cap.tick) + ")",
                Weight::alarm);
        say("What was wrong: " + grade.cause + ".");
    }

    void hazards() {
        heading("Hazards");
        if (story_.hazards.empty()) {
            say("None.");
            return;
        }
        Table list{
            {{"at", 0.5, true}, {"", 0.9, false}, {"what", 2.4, false}, {"why it matters", 3.6, false}}, {}};
        for (const bench::HazardEvent& event : story_.hazards) {
            const bench::HazardRow& row = site_.hazards[static_cast<std::size_t>(event.hazard)];
            list.rows.push_back({at(event.tick), std::string(gravity_text(row.gravity)),
                                 row.title + ": " + event.about, row.why});
        }
        table(std::move(list));
    }

    void next() {
        if (debrief_.twin.empty())
            return;
        heading("Next");
        say("The same symptom with another cause: " +
            (origin_.twin_title.empty() ? debrief_.twin : origin_.twin_title + " (" + debrief_.twin + ")") +
            ".");
    }

    void proof() {
        heading("What this report rests on");
        say(std::string(kProof));
        say("Attempt " + origin_.file + ", scenario " + origin_.header.scenario + ", seed " +
                std::to_string(origin_.header.seed) + ", physics version " +
                std::to_string(origin_.header.physics_version) + ", chain " + files::hex(origin_.chain) + ".",
            Weight::small);
        say(std::string(visit::cautions_in_short()), Weight::small);
    }

    const files::LoadedBundle& bundle_;
    const bench::Site& site_;
    const lesson::Debrief& debrief_;
    const lesson::Story& story_;
    const Origin& origin_;
    Document document_;
};

} // namespace

Document make_document(const files::LoadedBundle& bundle, const lesson::Debrief& debrief,
                       const Origin& origin) {
    return Writer(bundle, debrief, origin).write();
}

} // namespace lightoff::report
