// SPDX-License-Identifier: MIT
#include "cli/calc.hpp"
#include "cli/exit_codes.hpp"
#include "cli/output.hpp"
#include "cli/usage_error.hpp"
#include "files/error.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <cstdio>
#include <exception>
#include <functional>
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
    add_calc(app, command);
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
