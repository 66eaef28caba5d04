// SPDX-License-Identifier: MIT
#include "cli/check_calls.hpp"

#include "cli/exit_codes.hpp"
#include "cli/json_output.hpp"
#include "cli/text_layout.hpp"
#include "files/bundle_loader.hpp"
#include "files/error.hpp"
#include "lesson/call_check.hpp"

namespace lightoff::cli {
namespace {

using lesson::CallCheck;

void tell(Output& out, const std::string& scenario, const CallCheck& found) {
    const auto verdict = [&](bool good, const char* yes, const char* no) {
        return "  " + out.styled(good ? Style::good : Style::bad, good ? yes : no);
    };
    out.line(out.heading(scenario));
    out.line(verdict(found.complaint_occurs, "the complaint occurs", "the complaint does not occur"));
    for (const std::string& line : wrapped(found.lived, kPageWidth - 4))
        out.line("    " + line);
    out.line(verdict(found.solvable, "solvable", "not solvable") + ", cheapest proof " +
             fixed(found.minutes, 1) + " work minutes");
    for (const std::string& test : found.proof)
        out.line("    " + test);
    for (const std::string& look_alike : found.look_alikes)
        out.line("    left as well: " + look_alike);
    if (found.may_come_and_go > 0)
        out.line("    and " + std::to_string(found.may_come_and_go) + " that may come and go");
}

OrderedJson json_of(const std::string& scenario, const CallCheck& found) {
    return {{"scenario", scenario},
            {"complaint_occurs", found.complaint_occurs},
            {"lived", found.lived},
            {"solvable", found.solvable},
            {"proof_minutes", found.minutes},
            {"proof", found.proof},
            {"look_alikes", found.look_alikes},
            {"may_come_and_go", found.may_come_and_go}};
}

} // namespace

int check_calls(Output& out, const CheckOptions& options) {
    int code = kDone;
    OrderedJson list = OrderedJson::array();
    for (const std::string& scenario : options.scenarios) {
        try {
            const files::LoadedBundle bundle = files::load_bundle(scenario);
            const CallCheck found = lesson::check_call(bundle.site, bundle.scenario);
            if (code == kDone && (!found.complaint_occurs || !found.solvable))
                code = kNegative;
            if (options.json)
                list.push_back(json_of(scenario, found));
            else
                tell(out, scenario, found);
        } catch (const files::Error& error) {
            code = kUnusable;
            if (options.json)
                list.push_back({{"scenario", scenario}, {"error", error.what()}});
            else
                out.line(out.styled(Style::bad, "not checked") + ": " + error.what());
        }
        out.flush();
    }
    if (options.json)
        out.line(json_text(list));
    return code;
}

} // namespace lightoff::cli
