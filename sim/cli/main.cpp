// SPDX-License-Identifier: MIT
#include "cli/calc.hpp"
#include "cli/check_calls.hpp"
#include "cli/circuit.hpp"
#include "cli/exit_codes.hpp"
#include "cli/fault_lists.hpp"
#include "cli/grade_attempts.hpp"
#include "cli/lists.hpp"
#include "cli/output.hpp"
#include "cli/play.hpp"
#include "cli/replay_attempt.hpp"
#include "cli/run.hpp"
#include "cli/usage_error.hpp"
#include "files/error.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <cstdio>
#include <exception>
#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace {

using namespace lightoff;
using namespace lightoff::cli;

/// What the command that was typed will do, once everything has been parsed.
using Command = std::function<int(Output&)>;

void add_calc(CLI::App& app, Command& command) {
    struct Typed {
        std::string name;
        std::vector<std::string> given;
        bool list = false;
        bool json = false;
    };
    auto typed = std::make_shared<Typed>();
    CLI::App* sub = app.add_subcommand("calc", "do one of the trade's sums");
    sub->add_option("NAME", typed->name, "which sum");
    sub->add_option("KEY=VALUE", typed->given, "numbers with their unit in the key: pressure_inwc=3.5");
    sub->add_flag("--list", typed->list, "name the sums, their keys, limits and sources");
    sub->add_flag("--json", typed->json, "with --list: as JSON (a sum's result always is)");
    sub->callback([typed, &command] {
        command = [typed](Output& out) {
            if (typed->list && !typed->name.empty())
                throw UsageError("calc: --list takes no name");
            if (!typed->list && typed->name.empty())
                throw UsageError("calc: the name of a sum is missing; `lightoff-cli calc --list` names them");
            return typed->list ? list_sums(out, typed->json) : calc(out, typed->name, typed->given);
        };
    });
}

constexpr const char* kScenarioHelp = "name of a call, or path of its file";
constexpr const char* kSeedHelp = "of the parts' tolerances; 0: nominal parts";

void add_run(CLI::App& app, Command& command) {
    auto typed = std::make_shared<RunOptions>();
    CLI::App* sub = app.add_subcommand("run", "run a scenario; the sequence, then the readings");
    sub->add_option("SCENARIO", typed->scenario, kScenarioHelp)->required();
    sub->add_option("--for", typed->for_s, "simulated seconds [900]")->type_name("SECONDS");
    sub->add_option("--trace", typed->trace, "everything, as a table for a spreadsheet")
        ->type_name("FILE.csv");
    sub->add_option("--trace-every", typed->trace_every_s, "between two rows [0.5]")->type_name("SECONDS");
    sub->add_option("--seed", typed->seed, kSeedHelp)->type_name("N");
    sub->add_flag("--json", typed->json, "as JSON");
    sub->callback([typed, &command] { command = [typed](Output& out) { return run(out, *typed); }; });
}

void add_circuit(CLI::App& app, Command& command) {
    auto typed = std::make_shared<CircuitOptions>();
    CLI::App* sub = app.add_subcommand("circuit", "all voltages and currents at one moment");
    sub->add_option("SCENARIO", typed->scenario, kScenarioHelp)->required();
    sub->add_option("--at", typed->at_s, "moment, simulated")->type_name("SECONDS")->required();
    sub->add_flag("--dc", typed->dc, "mean values instead of 60 Hz");
    sub->add_option("--spice", typed->spice, "the same network as an ngspice deck")->type_name("FILE.cir");
    sub->add_option("--seed", typed->seed, kSeedHelp)->type_name("N");
    sub->add_flag("--json", typed->json, "as JSON");
    sub->callback([typed, &command] { command = [typed](Output& out) { return circuit(out, *typed); }; });
}

void add_play(CLI::App& app, Command& command) {
    auto typed = std::make_shared<PlayOptions>();
    CLI::App* sub = app.add_subcommand("play", "work a call, by hand or by a script");
    sub->add_option("SCENARIO", typed->scenario, kScenarioHelp)->required();
    sub->add_option("SCRIPT", typed->script, "file with one action a line; without it you type them");
    sub->add_option("--attempt", typed->attempt, "write it down there; go on with it if it is there")
        ->type_name("FILE");
    sub->add_option("--seed", typed->seed, kSeedHelp)->type_name("N");
    sub->callback([typed, &command] { command = [typed](Output& out) { return play(out, *typed); }; });
}

void add_replay(CLI::App& app, Command& command) {
    auto typed = std::make_shared<ReplayOptions>();
    CLI::App* sub = app.add_subcommand("replay", "run an attempt again and compare every mark");
    sub->add_option("ATTEMPT", typed->attempt, "file of the attempt")->required();
    sub->add_option("--scenario", typed->scenario, "instead of the one that it names")->type_name("SCENARIO");
    sub->add_option("--dump", typed->dump, "write every number at every mark")->type_name("FILE");
    sub->add_option("--compare", typed->compare, "with a dump from another machine")->type_name("FILE");
    sub->callback(
        [typed, &command] { command = [typed](Output& out) { return replay_attempt(out, *typed); }; });
}

void add_grade(CLI::App& app, Command& command) {
    auto typed = std::make_shared<GradeOptions>();
    CLI::App* sub = app.add_subcommand("grade", "mark attempts, line by line");
    sub->add_option("ATTEMPT", typed->attempts, "files of attempts")->required();
    sub->add_option("--csv", typed->csv, "gradebook, one row an attempt")->type_name("FILE");
    sub->add_option("--html", typed->html, "report of one attempt, for a browser")->type_name("FILE");
    sub->add_option("--pdf", typed->pdf, "the same, for print")->type_name("FILE");
    sub->add_flag("--json", typed->json, "as JSON");
    sub->callback(
        [typed, &command] { command = [typed](Output& out) { return grade_attempts(out, *typed); }; });
}

void add_check(CLI::App& app, Command& command) {
    auto typed = std::make_shared<CheckOptions>();
    CLI::App* sub = app.add_subcommand("check", "tell whether calls are fit to be given");
    sub->add_option("SCENARIO", typed->scenarios, "names of calls, or paths of their files")->required();
    sub->add_flag("--json", typed->json, "as JSON");
    sub->callback([typed, &command] { command = [typed](Output& out) { return check_calls(out, *typed); }; });
}

void add_lists(CLI::App& app, Command& command) {
    struct Typed {
        std::string of;
        std::string seed = "0";
        bool json = false;
    };
    auto typed = std::make_shared<Typed>();
    CLI::App* conditions = app.add_subcommand("conditions", "list what overrides and onsets may set");
    conditions->add_option("SCENARIO", typed->of, kScenarioHelp)->required();
    conditions->add_option("--seed", typed->seed, kSeedHelp)->type_name("N");
    conditions->add_flag("--json", typed->json, "as JSON");
    conditions->callback([typed, &command] {
        command = [typed](Output& out) { return list_conditions(out, typed->of, typed->seed, typed->json); };
    });
    CLI::App* actions = app.add_subcommand("actions", "list everything that can be done");
    actions->add_option("SCENARIO", typed->of, "with the names that can be said there");
    actions->add_flag("--json", typed->json, "as JSON");
    actions->callback([typed, &command] {
        command = [typed](Output& out) { return list_actions(out, typed->of, typed->json); };
    });
    CLI::App* chart = app.add_subcommand("chart", "print the chart inside the door");
    chart->add_option("EQUIPMENT|SCENARIO", typed->of, "name or path of either")->required();
    chart->callback(
        [typed, &command] { command = [typed](Output& out) { return print_chart(out, typed->of); }; });
}

void add_fault_lists(CLI::App& app, Command& command) {
    struct Typed {
        std::string scenario = kFaultListScenario;
        bool json = false;
    };
    auto typed = std::make_shared<Typed>();
    const auto add = [&](const char* name, const char* help, auto list) {
        CLI::App* sub = app.add_subcommand(name, help);
        sub->add_option("SCENARIO", typed->scenario, kScenarioHelp);
        sub->add_flag("--json", typed->json, "as JSON");
        sub->callback([typed, list, &command] {
            command = [typed, list](Output& out) { return list(out, typed->scenario, typed->json); };
        });
    };
    add("faults", "list what can break, and what repairs it", list_faults);
    add("look-alikes", "list the faults that no reading tells apart", list_look_alikes);
}

void add_hash(CLI::App& app, Command& command) {
    auto typed = std::make_shared<HashOptions>();
    CLI::App* sub = app.add_subcommand("hash", "print one number that stands for a whole run");
    sub->add_option("SCENARIO", typed->scenario, kScenarioHelp)->required();
    sub->add_option("--for", typed->for_s, "simulated seconds [900]")->type_name("SECONDS");
    sub->add_option("--seed", typed->seed, kSeedHelp)->type_name("N");
    sub->callback([typed, &command] { command = [typed](Output& out) { return hash(out, *typed); }; });
}

std::string one_line(std::string text) {
    while (!text.empty() && text.back() == '\n')
        text.pop_back();
    std::replace(text.begin(), text.end(), '\n', ' ');
    return text;
}

int complain(const std::string& message) {
    std::fprintf(stderr, "lightoff-cli: %s\n", one_line(message).c_str());
    return kUnusable;
}

/// CLI11 calls a mistyped command an unexpected argument; name the nearest instead.
void require_known_command(const CLI::App& app, int argc, char** argv) {
    if (argc < 2 || argv[1][0] == '-' || argv[1][0] == '\0')
        return;
    std::vector<std::string> names;
    for (const CLI::App* sub : app.get_subcommands([](const CLI::App*) { return true; }))
        names.push_back(sub->get_name());
    if (std::find(names.begin(), names.end(), argv[1]) != names.end())
        return;
    const std::string near = files::nearest(argv[1], names);
    throw UsageError("there is no command " + files::in_quotes(argv[1]) + "; " +
                     (near.empty() ? "allowed " + files::listed(names) : "did you mean " + near + "?"));
}

int run_program(int argc, char** argv, Output& out) {
    CLI::App app{"Lightoff in the terminal: a computed gas furnace to run, measure and replay.",
                 "lightoff-cli"};
    app.set_version_flag("--version", std::string("lightoff-cli ") + LIGHTOFF_VERSION);
    app.require_subcommand(0, 1);
    app.get_formatter()->column_width(26);
    Command command;
    for (const auto add : {add_run, add_circuit, add_calc, add_play, add_replay, add_grade, add_check,
                           add_lists, add_fault_lists, add_hash})
        add(app, command);
    try {
        require_known_command(app, argc, argv);
        app.parse(argc, argv);
    } catch (const CLI::CallForHelp&) {
        out.write(app.help());
        return kDone;
    } catch (const CLI::CallForVersion&) {
        out.line(app.version());
        return kDone;
    } catch (const CLI::ParseError& error) {
        throw UsageError(std::string(error.what()) + " (see lightoff-cli --help)");
    }
    if (!command)
        throw UsageError("a command is missing (see lightoff-cli --help)");
    return command(out);
}

} // namespace

int main(int argc, char** argv) {
    secure_standard_streams();
    try {
        Output out;
        const int code = run_program(argc, argv, out);
        out.flush();
        return code;
    } catch (const std::exception& error) {
        return complain(error.what());
    }
}
