#include "commands/parse_faults.hpp"

#include <vector>

#include <CLI/CLI.hpp>

#include "cropful/domain/nearest.hpp"
#include "cropful/domain/words.hpp"
#include "cropful/fault.hpp"

namespace cropful::commands {

namespace {

/// "; nearest: plan", or what `otherwise` says when nothing is near.
std::string hint(std::string const& word, std::vector<std::string> const& known, std::string const& otherwise) {
    std::string const near = domain::nearest(word, known);
    return near.empty() ? "; " + otherwise : "; nearest: " + near;
}

std::vector<std::string> flags_of(CLI::App const& app) {
    std::vector<std::string> flags;
    for (CLI::Option const* option : app.get_options()) {
        for (std::string const& name : option->get_lnames()) flags.push_back("--" + name);
    }
    return flags;
}

std::vector<std::string> command_names(CLI::App const& program) {
    std::vector<std::string> names;
    for (CLI::App const* command : program.get_subcommands({})) names.push_back(command->get_name());
    return names;
}

/// "cropful diary add".
std::string command_line(CLI::App const& app) {
    CLI::App const* const parent = app.get_parent();
    return (parent != nullptr ? command_line(*parent) + " " : "") + app.get_name();
}

std::string unknown_flag(std::string const& word, CLI::App const& app) {
    std::string const name = word.substr(0, word.find('='));
    return "unknown flag " + in_quotes(name) +
           hint(name, flags_of(app), "`" + command_line(app) + " --help` lists those there are");
}

std::string unknown_command(std::string const& word, CLI::App const& app) {
    return "unknown command \"" + word + "\"" +
           hint(word, command_names(app), "`" + command_line(app) + " --help` lists those there are");
}

/// The first word left over, flags before others; empty when there is none.
std::string left_over(CLI::App const& app) {
    auto const words = app.remaining();
    for (std::string const& word : words) {
        if (word.starts_with("-") && word != "-") return word;
    }
    return words.empty() ? "" : words.front();
}

/// What is said of a word nobody asked for.
std::string unexpected(std::string const& word, CLI::App const& app) {
    bool const is_file = word.find_first_of("./") != std::string::npos;
    auto const files = app.get_options([](CLI::Option const* option) { return option->get_positional(); });
    std::string const enough = files.size() > 1 ? "two files are enough" : "one file is enough";
    return "unexpected " + in_quotes(word) + "; " +
           (is_file ? enough : "put quotes around a quantity, as in --hopper \"12 L\"");
}

/// What is said where a command of commands stands alone.
std::string missing_command(CLI::App const& app) {
    return "what is to be done? Say `" + command_line(app) + "` and one of: " + domain::join(command_names(app));
}

std::string in_command(CLI::ParseError const& fault, CLI::App const& app) {
    std::string const word = left_over(app);
    if (word.starts_with("-") && word != "-") return unknown_flag(word, app);
    if (!command_names(app).empty()) return word.empty() ? missing_command(app) : unknown_command(word, app);
    if (!word.empty()) return unexpected(word, app);
    std::string const message = fault.what();
    std::string const flag = message.substr(0, message.find(':'));
    if (fault.get_name() == "ArgumentMismatch") {
        bool const repeated = message.find("received") != std::string::npos;
        return repeated ? flag + " is given more than once" : flag + " needs a value after it";
    }
    return message;
}

/// The innermost of the commands that were given: `add` of `cropful diary add`.
CLI::App const& last_chosen(CLI::App const& app) {
    auto const chosen = app.get_subcommands();
    return chosen.empty() ? app : last_chosen(*chosen.front());
}

}  // namespace

std::string explain(CLI::ParseError const& fault, CLI::App const& program) {
    auto const chosen = program.get_subcommands();
    std::string const stray = left_over(program);
    if (!chosen.empty()) return in_command(fault, last_chosen(*chosen.front()));
    if (stray.starts_with("-")) return unknown_flag(stray, program);
    return stray.empty() ? fault.what() : unknown_command(stray, program);
}

}  // namespace cropful::commands
