#include "cropful/commands/command_line.hpp"

#include <functional>
#include <memory>

#include <CLI/CLI.hpp>

#include "commands/manual.hpp"
#include "commands/parse_faults.hpp"
#include "commands/terminal.hpp"
#include "cropful/commands/away.hpp"
#include "cropful/commands/blend.hpp"
#include "cropful/commands/buy.hpp"
#include "cropful/commands/calendar.hpp"
#include "cropful/commands/check.hpp"
#include "cropful/commands/diary.hpp"
#include "cropful/commands/flags.hpp"
#include "cropful/commands/last.hpp"
#include "cropful/commands/mix.hpp"
#include "cropful/commands/new.hpp"
#include "cropful/commands/page.hpp"
#include "cropful/commands/plan.hpp"
#include "cropful/commands/season.hpp"
#include "cropful/commands/sheet.hpp"
#include "cropful/commands/table.hpp"
#include "cropful/commands/today.hpp"
#include "cropful/version.hpp"

namespace cropful::commands {

namespace {

struct Command {
    CLI::App* app;
    std::function<Reply()> run;
};

using Text = std::optional<std::string>;

Reply as_reply(Said out) { return {.out = std::move(out)}; }
Reply as_reply(Reply reply) { return reply; }

/// --help stands with --color, which goes to every command that can be given alone.
void add_color(CLI::App& app, Text& color) {
    for (CLI::App* command : app.get_subcommands({})) add_color(*command, color);
    std::string const heading = app.get_parent() == nullptr ? "Flags" : answer_heading;
    app.get_help_ptr()->group(heading);
    if (app.get_require_subcommand_min() > 0) return;
    app.add_option("--color", color, "bold and red words on a page; auto: on a terminal")
        ->type_name("auto|always|never")
        ->group(heading);
}

template <class Options>
Command command(CLI::App& program) {
    auto const options = std::make_shared<Options>();
    CLI::App* app = add_to(program, *options);
    return {app, [options] { return as_reply(commands::run(*options)); }};
}

Command manual_command(CLI::App& program) {
    CLI::App* app = program.add_subcommand("man", "the manual page, for man");
    app->footer("Example: cropful man");
    return {app, [&program] { return as_reply(man_page(manual_of(program))); }};
}

std::string shell_called(Text const& shell) {
    if (!shell) throw WrongUse("for which shell? Such as: cropful completion bash");
    if (*shell == "bash" || *shell == "zsh" || *shell == "fish") return *shell;
    throw WrongUse("no completion for the shell " + in_quotes(*shell) + "; there is one for bash, zsh and fish");
}

Command completion_command(CLI::App& program) {
    CLI::App* app = program.add_subcommand("completion", "a script that completes commands and flags in a shell");
    auto const shell = std::make_shared<Text>();
    app->add_option("SHELL", *shell, "bash, zsh or fish")->type_name("bash|zsh|fish");
    app->footer("Example: cropful completion bash");
    return {app, [&program, shell] { return as_reply(completion(manual_of(program), shell_called(*shell))); }};
}

std::vector<Command> add_all(CLI::App& program) {
    return {command<TodayOptions>(program), command<PlanOptions>(program),   command<BuyOptions>(program),
            command<LastOptions>(program),  command<AwayOptions>(program),   command<DiaryOptions>(program),
            command<MixOptions>(program),   command<SeasonOptions>(program), command<CheckOptions>(program),
            command<BlendOptions>(program), command<SheetOptions>(program),  command<CalendarOptions>(program),
            command<PageOptions>(program),  command<TableOptions>(program),  command<NewOptions>(program),
            manual_command(program),        completion_command(program)};
}

void describe(CLI::App& program) {
    program.name("cropful");
    program.option_defaults()->group(question_heading);
    program.set_help_flag("-h,--help", "show this help");
    program.set_version_flag("--version", "cropful " + std::string(version()), "show the version")->group("Flags");
    program.require_subcommand(0, 1);  // a later word may be called as a command is
    program.footer("Example: cropful new farm.toml");
}

/// The innermost of the commands that were given.
CLI::App const& chosen_command(CLI::App const& app) {
    auto const given = app.get_subcommands();
    return given.empty() ? app : chosen_command(*given.front());
}

/// What is to be done, not yet done.
std::function<Reply()> deed(CLI::App& program, std::vector<Command> const& commands,
                            std::vector<std::string> const& words) {
    auto const say = [](Reply const& reply) { return [reply] { return reply; }; };
    try {
        program.parse(std::vector<std::string>(words.rbegin(), words.rend()));
    } catch (CLI::CallForHelp const&) {
        return say({.out = help_page(manual_of(chosen_command(program)))});
    } catch (CLI::CallForVersion const&) {
        return say({.out = program.version() + "\n"});
    } catch (CLI::ParseError const& fault) {
        throw WrongUse(explain(fault, program));
    }
    for (Command const& one : commands) {
        if (one.app->parsed()) return one.run;
    }
    if (only_farm_here()) return [] { return as_reply(run(TodayOptions())); };
    return say({.out = help_page(manual_of(program))});
}

/// `look` is told --color before anything is done.
template <class Look>
Reply reply_to(std::vector<std::string> const& words, Look look) {
    CLI::App program("How much feed, water and supplement gamebirds need, and how long it lasts.");
    describe(program);
    auto const commands = add_all(program);
    Text color;
    add_color(program, color);
    auto const asked = deed(program, commands, words);
    look(color);
    return asked();
}

}  // namespace

Reply carry_out(std::vector<std::string> const& words) {
    return reply_to(words, [](Text const&) {});
}

Printed answer(std::vector<std::string> const& words) {
    reports::Setting setting;
    Reply said = reply_to(words, [&](Text const& color) { setting = setting_of_output(color); });
    auto const* page = std::get_if<reports::Page>(&said.out);
    std::string out = page ? reports::set(*page, setting) : std::get<std::string>(std::move(said.out));
    return {std::move(out), std::move(said.err), said.status, std::move(said.done)};
}

}  // namespace cropful::commands
