#include "cropful/commands/command_line.hpp"

#include <functional>
#include <memory>

#include <CLI/CLI.hpp>

#include "commands/parse_faults.hpp"
#include "cropful/commands/away.hpp"
#include "cropful/commands/blend.hpp"
#include "cropful/commands/buy.hpp"
#include "cropful/commands/check.hpp"
#include "cropful/commands/diary.hpp"
#include "cropful/commands/last.hpp"
#include "cropful/commands/mix.hpp"
#include "cropful/commands/new.hpp"
#include "cropful/commands/plan.hpp"
#include "cropful/commands/season.hpp"
#include "cropful/commands/sheet.hpp"
#include "cropful/commands/table.hpp"
#include "cropful/version.hpp"

namespace cropful::commands {

namespace {

struct Command {
    CLI::App* app;
    std::function<Reply()> run;
};

Reply as_reply(std::string out) { return {std::move(out), "", Exit::done}; }
Reply as_reply(Reply reply) { return reply; }

template <class Options>
Command command(CLI::App& program) {
    auto const options = std::make_shared<Options>();
    CLI::App* app = add_to(program, *options);
    app->group("Commands");
    app->get_help_ptr()->group("Flags");
    return {app, [options] { return as_reply(commands::run(*options)); }};
}

std::vector<Command> add_all(CLI::App& program) {
    return {command<PlanOptions>(program),   command<BuyOptions>(program),   command<LastOptions>(program),
            command<AwayOptions>(program),   command<DiaryOptions>(program), command<MixOptions>(program),
            command<SeasonOptions>(program), command<CheckOptions>(program), command<BlendOptions>(program),
            command<SheetOptions>(program),  command<TableOptions>(program), command<NewOptions>(program)};
}

void describe(CLI::App& program) {
    program.name("cropful");
    program.option_defaults()->group("Flags");
    program.set_help_flag("-h,--help", "show this help")->group("Flags");
    program.set_version_flag("--version", "cropful " + std::string(version()), "show the version")->group("Flags");
    program.get_formatter()->column_width(28);
    program.get_formatter()->label("OPTIONS", "FLAGS");
    program.get_formatter()->label("SUBCOMMAND", "COMMAND");
    program.require_subcommand(0, 1);  // a later word may be called as a command is
    program.footer("`cropful COMMAND --help` says more about one.\nExample: cropful new farm.toml");
}

/// The help text, with one empty line where the formatter leaves two.
std::string help(CLI::App const& program) {
    std::string text = program.help();
    for (std::size_t at = 0; (at = text.find("\n\n\n", at)) != std::string::npos;) text.erase(at, 1);
    return text;
}

}  // namespace

Reply answer(std::vector<std::string> const& words) {
    CLI::App program("How much feed, water and supplement gamebirds need, and how long it lasts.");
    describe(program);
    auto const commands = add_all(program);
    try {
        program.parse(std::vector<std::string>(words.rbegin(), words.rend()));
    } catch (CLI::CallForHelp const&) {
        return {help(program), "", Exit::done};
    } catch (CLI::CallForVersion const&) {
        return {program.version() + "\n", "", Exit::done};
    } catch (CLI::ParseError const& fault) {
        throw WrongUse(explain(fault, program));
    }
    for (Command const& one : commands) {
        if (one.app->parsed()) return one.run();
    }
    return {"", help(program), Exit::wrong_use};
}

}  // namespace cropful::commands
