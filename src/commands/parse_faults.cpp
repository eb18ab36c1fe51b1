#include "commands/parse_faults.hpp"

#include <vector>

#include <CLI/CLI.hpp>

#include "cropful/domain/nearest.hpp"
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

std::string unknown_flag(std::string const& word, CLI::App const& app) {
    std::string const name = word.substr(0, word.find('='));
    return "unknown flag " + in_quotes(name) +
           hint(name, flags_of(app),
                std::string(app.get_parent() ? "`cropful " : "`") + app.get_name() + " --help` lists those there are");
}

/// The first word left over, flags before others; empty when there is none.
std::string left_over(CLI::App const& app) {
    auto const words = app.remaining();
    for (std::string const& word : words) {
        if (word.starts_with("-") && word != "-") return word;
    }
    return words.empty() ? "" : words.front();
}

std::string in_command(CLI::ParseError const& fault, CLI::App const& app) {
    std::string const word = left_over(app);
    if (word.starts_with("-") && word != "-") return unknown_flag(word, app);
    if (!word.empty()) {
        bool const is_file = word.find_first_of("./") != std::string::npos;
        return "unexpected " + in_quotes(word) + "; " +
               (is_file ? "one file is enough" : "put quotes around a quantity, as in --hopper \"12 L\"");
    }
    std::string const message = fault.what();
    std::string const flag = message.substr(0, message.find(':'));
    if (fault.get_name() == "ArgumentMismatch") {
        bool const repeated = message.find("received") != std::string::npos;
        return repeated ? flag + " is given more than once" : flag + " needs a value after it";
    }
    return message;
}

}  // namespace

std::string explain(CLI::ParseError const& fault, CLI::App const& program) {
    auto const chosen = program.get_subcommands();
    std::string const stray = left_over(program);
    if (!chosen.empty()) return in_command(fault, *chosen.front());
    if (stray.starts_with("-")) return unknown_flag(stray, program);
    if (!stray.empty()) {
        return "unknown command \"" + stray + "\"" +
               hint(stray, command_names(program), "`cropful --help` lists those there are");
    }
    return fault.what();
}

}  // namespace cropful::commands
