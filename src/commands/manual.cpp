#include "commands/manual.hpp"

#include <algorithm>

#include <CLI/CLI.hpp>

#include "cropful/commands/flags.hpp"
#include "cropful/domain/words.hpp"
#include "cropful/readers/rations.hpp"
#include "cropful/reports/page.hpp"

namespace cropful::commands {

namespace {

std::vector<std::string> split(std::string const& text, char mark) {
    std::vector<std::string> parts(1);
    for (char const c : text) {
        if (c == mark) {
            parts.emplace_back();
        } else {
            parts.back() += c;
        }
    }
    return parts;
}

/// Of "us|metric|uk" the three; KIND stands for every kind of bird that is built in.
std::vector<std::string> choices_of(std::string const& value) {
    std::vector<std::string> choices;
    auto const words = split(value, '|');
    for (std::string const& word : words) {
        if (word != "KIND" && words.size() > 1) choices.push_back(word);
        if (word != "KIND") continue;
        for (std::string const& kind : readers::RationsReader().kinds()) choices.push_back(kind);
    }
    return choices;
}

Flag flag_of(CLI::Option const& option) {
    Flag flag;
    for (std::string const& name : option.get_snames()) flag.names.push_back("-" + name);
    for (std::string const& name : option.get_lnames()) flag.names.push_back("--" + name);
    if (option.get_positional()) flag.names = {option.get_name()};
    std::string const value = option.get_type_size() != 0 ? option.get_type_name() : "";
    if (!option.get_positional()) flag.value = value;
    flag.help = option.get_description();
    flag.group = option.get_group();
    flag.choices = choices_of(value);
    return flag;
}

std::string line_of(CLI::App const& app) {
    return (app.get_parent() != nullptr ? line_of(*app.get_parent()) + " " : "") + app.get_name();
}

/// A heading and its flags; names in a column as wide for all headings.
reports::Page section(std::string const& heading, std::vector<Flag> const& flags, std::size_t wide) {
    reports::Table table({reports::Align::left, reports::Align::left}, 2);
    for (Flag const& flag : flags) {
        std::string name = usage_of(flag);
        name.resize(std::max(wide, name.size()), ' ');
        table.add({name, flag.help});
    }
    if (table.empty()) return {};
    return reports::spaced(reports::heading(heading + ":") + table);
}

reports::Page commands_part(Manual const& manual) {
    reports::Table table({reports::Align::left, reports::Align::left}, 2);
    for (Manual const& one : manual.commands) table.add({one.line.substr(one.line.rfind(' ') + 1), one.about});
    if (table.empty()) return reports::Blank();
    return reports::spaced(reports::heading("Commands:") + table) +
           reports::spaced(reports::wrap("`" + manual.line + " COMMAND --help` says more about one."));
}

}  // namespace

Manual manual_of(CLI::App const& app) {
    constexpr std::string_view before = "Example: ";
    Manual manual;
    manual.line = line_of(app);
    manual.about = app.get_description();
    for (CLI::Option const* option : app.get_options()) {
        (option->get_positional() ? manual.words : manual.flags).push_back(flag_of(*option));
    }
    for (CLI::App const* command : app.get_subcommands({})) manual.commands.push_back(manual_of(*command));
    manual.alone = app.get_require_subcommand_min() == 0;
    if (app.get_footer().starts_with(before)) manual.example = app.get_footer().substr(before.size());
    return manual;
}

std::vector<Manual const*> all_commands(Manual const& manual) {
    std::vector<Manual const*> all;
    for (Manual const& command : manual.commands) {
        all.push_back(&command);
        for (Manual const* below : all_commands(command)) all.push_back(below);
    }
    return all;
}

std::string usage_of(Flag const& flag) {
    return domain::join(flag.names, ",") + (flag.value.empty() ? "" : " " + flag.value);
}

std::string usage_of(Manual const& manual) {
    std::string usage = manual.line + " [FLAGS]";
    for (Flag const& word : manual.words) usage += " [" + word.names.front() + "]";
    if (manual.commands.empty()) return usage;
    return usage + (manual.alone ? " [COMMAND]" : " COMMAND");
}

std::vector<std::string> headings_of(Manual const& manual) {
    std::vector<std::string> headings;
    for (Flag const& flag : manual.flags) {
        if (std::find(headings.begin(), headings.end(), flag.group) == headings.end()) headings.push_back(flag.group);
    }
    // what every command has comes last
    std::stable_partition(headings.begin(), headings.end(), [](auto const& one) { return one != answer_heading; });
    return headings;
}

std::vector<Flag> flags_under(std::string const& heading, Manual const& manual) {
    std::vector<Flag> flags;
    for (Flag const& flag : manual.flags) {
        if (flag.group == heading) flags.push_back(flag);
    }
    return flags;
}

reports::Page help_page(Manual const& manual) {
    std::size_t wide = 0;
    for (auto const* list : {&manual.words, &manual.flags}) {
        for (Flag const& flag : *list) wide = std::max(wide, usage_of(flag).size());
    }
    reports::Page page = reports::wrap(manual.about) + reports::wrap(usage_of(manual), "Usage: ", "  ");
    page += section("Words", manual.words, wide);
    for (std::string const& heading : headings_of(manual)) page += section(heading, flags_under(heading, manual), wide);
    return page + commands_part(manual) + reports::wrap("Example: " + manual.example, "", "  ");
}

}  // namespace cropful::commands
