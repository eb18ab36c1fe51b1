#include <functional>
#include <map>
#include <string_view>

#include "commands/manual.hpp"
#include "cropful/domain/words.hpp"

namespace cropful::commands {

namespace {

using domain::join;

/// What may follow a flag: listed words, a file, a folder, or anything at all.
enum class Follows { words, file, folder, anything };

Follows follows(Flag const& flag) {
    if (!flag.choices.empty()) return Follows::words;
    if (flag.value == "DIR") return Follows::folder;
    return flag.value == "FILE" ? Follows::file : Follows::anything;
}

/// Between single quotes, which a ' inside ends and starts again.
std::string in_single_quotes(std::string_view text) {
    std::string done = "'";
    for (char const c : text) done += c == '\'' ? std::string("'\\''") : std::string(1, c);
    return done + "'";
}

std::vector<std::string> names_of_commands(Manual const& manual) {
    std::vector<std::string> names;
    for (Manual const& one : manual.commands) names.push_back(one.line.substr(manual.line.size() + 1));
    return names;
}

std::vector<Manual const*> everything(Manual const& program) {
    auto all = all_commands(program);
    all.insert(all.begin(), &program);
    return all;
}

/// The patterns 'cropful diary', 'cropful diary add', ... of a shell's `case`.
std::string patterns_of_commands(Manual const& program) {
    std::vector<std::string> lines;
    for (Manual const* one : all_commands(program)) lines.push_back(in_single_quotes(one->line));
    return join(lines, "|");
}

/// The patterns 'cropful plan --kind' of flags by what the shell is to do after them.
std::map<std::string, std::vector<std::string>> patterns_of_values(
    Manual const& program, std::function<std::string(Flag const&)> const& deed) {
    std::map<std::string, std::vector<std::string>> patterns;
    for (Manual const* one : everything(program)) {
        for (Flag const& flag : one->flags) {
            if (flag.value.empty()) continue;
            for (std::string const& name : flag.names)
                patterns[deed(flag)].push_back(in_single_quotes(one->line + " " + name));
        }
    }
    return patterns;
}

std::string bash_value(Flag const& flag) {
    switch (follows(flag)) {
        case Follows::words:
            return "mapfile -t COMPREPLY < <(compgen -W " + in_single_quotes(join(flag.choices, " ")) +
                   " -- \"$word\")";
        case Follows::folder:
            return "compopt -o filenames 2>/dev/null; mapfile -t COMPREPLY < <(compgen -d -- \"$word\")";
        case Follows::file:
            return "compopt -o filenames 2>/dev/null; mapfile -t COMPREPLY < <(compgen -f -- \"$word\")";
        case Follows::anything:
            break;
    }
    return ":";
}

/// What a command's words are completed to, where it is not a flag that is typed.
std::vector<std::string> listed_words(Manual const& manual) {
    auto words = names_of_commands(manual);
    for (Flag const& word : manual.words) words.insert(words.end(), word.choices.begin(), word.choices.end());
    return words;
}

bool takes_files(Manual const& manual) { return !manual.words.empty() && manual.words.front().choices.empty(); }

std::string bash(Manual const& program) {
    std::string text = R"(# bash completion for cropful, made by `cropful completion bash`
_cropful() {
    local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]} command=cropful flags= words= files= i
    COMPREPLY=()
    if [[ $word == = ]]; then word=
    elif [[ $before == = ]]; then before=${COMP_WORDS[COMP_CWORD-2]}; fi
    for ((i = 1; i < COMP_CWORD; i++)); do
        case "$command ${COMP_WORDS[i]}" in
            )" + patterns_of_commands(program) +
                       R"() command+=" ${COMP_WORDS[i]}" ;;
        esac
    done
    case "$command $before" in
)";
    for (auto const& [deed, patterns] : patterns_of_values(program, bash_value)) {
        text += "        " + join(patterns, "|") + ") " + deed + "; return ;;\n";
    }
    text += "    esac\n    case $command in\n";
    for (Manual const* one : everything(program)) {
        std::vector<std::string> flags;
        for (Flag const& flag : one->flags) flags.insert(flags.end(), flag.names.begin(), flag.names.end());
        text += "        " + in_single_quotes(one->line) + ") flags=" + in_single_quotes(join(flags, " ")) +
                " words=" + in_single_quotes(join(listed_words(*one), " ")) +
                " files=" + (takes_files(*one) ? "yes" : "") + " ;;\n";
    }
    return text + R"(    esac
    if [[ $word == -* ]]; then mapfile -t COMPREPLY < <(compgen -W "$flags" -- "$word"); return; fi
    if [[ $files ]]; then compopt -o filenames 2>/dev/null; fi
    mapfile -t COMPREPLY < <(compgen -W "$words" ${files:+-f} -- "$word")
}
complete -F _cropful cropful
)";
}

std::string zsh_value(Flag const& flag) {
    switch (follows(flag)) {
        case Follows::words:
            return "compadd -- " + join(flag.choices, " ");
        case Follows::folder:
            return "_files -/";
        case Follows::file:
            return "_files";
        case Follows::anything:
            break;
    }
    return "_message " + in_single_quotes(flag.value);
}

std::string zsh(Manual const& program) {
    std::string text = R"(#compdef cropful
# zsh completion for cropful, made by `cropful completion zsh`
_cropful() {
    local command=cropful before=$words[CURRENT-1] files= i
    local -a flags known
    for ((i = 2; i < CURRENT; i++)); do
        case "$command $words[i]" in
            ()" + patterns_of_commands(program) +
                       R"() command+=" $words[i]" ;;
        esac
    done
    case "$command $before" in
)";
    for (auto const& [deed, patterns] : patterns_of_values(program, zsh_value)) {
        text += "        (" + join(patterns, "|") + ") " + deed + "; return ;;\n";
    }
    text += "    esac\n    case $command in\n";
    for (Manual const* one : everything(program)) {
        std::vector<std::string> flags, known;
        for (Flag const& flag : one->flags) {
            for (std::string const& name : flag.names) flags.push_back(in_single_quotes(name + ":" + flag.help));
        }
        for (Manual const& below : one->commands) {
            known.push_back(in_single_quotes(below.line.substr(one->line.size() + 1) + ":" + below.about));
        }
        for (Flag const& word : one->words) {
            for (std::string const& choice : word.choices) known.push_back(in_single_quotes(choice));
        }
        text += "        (" + in_single_quotes(one->line) + ") flags=(" + join(flags, " ") + ") known=(" +
                join(known, " ") + ") files=" + (takes_files(*one) ? "yes" : "") + " ;;\n";
    }
    return text + R"(    esac
    if [[ $PREFIX == -* ]]; then _describe flag flags; return; fi
    (( $#known )) && _describe word known
    [[ -n $files ]] && _files
}
if [[ $zsh_eval_context[-1] == loadautofunc ]]; then _cropful "$@"; else compdef _cropful cropful; fi
)";
}

/// When a command's flags are offered: its own words are there, and those of a command below it are not.
std::string fish_condition(Manual const& manual) {
    std::vector<std::string> tests;
    std::string words = manual.line;
    while (words.find(' ') != std::string::npos) {
        std::size_t const space = words.rfind(' ');
        tests.insert(tests.begin(), "__fish_seen_subcommand_from " + words.substr(space + 1));
        words.erase(space);
    }
    if (!manual.commands.empty()) {
        tests.push_back("not __fish_seen_subcommand_from " + join(names_of_commands(manual), " "));
    }
    return in_single_quotes(join(tests, "; and "));
}

std::string fish_flag(Flag const& flag) {
    std::string text;
    for (std::string const& name : flag.names)
        text += name.starts_with("--") ? " -l " + name.substr(2) : " -s " + name.substr(1);
    if (flag.value.empty()) return text;
    switch (follows(flag)) {
        case Follows::words:
            return text + " -x -a " + in_single_quotes(join(flag.choices, " "));
        case Follows::folder:
            return text + " -x -a '(__fish_complete_directories)'";
        case Follows::file:
            return text + " -r -F";
        case Follows::anything:
            break;
    }
    return text + " -x";
}

std::string fish(Manual const& program) {
    std::string text = "# fish completion for cropful, made by `cropful completion fish`\n";
    for (Manual const* one : everything(program)) {
        std::string const start = "complete -c cropful -n " + fish_condition(*one);
        if (!takes_files(*one)) text += start + " -f\n";
        for (Manual const& below : one->commands) {
            text += start + " -a " + below.line.substr(one->line.size() + 1) + " -d " + in_single_quotes(below.about) +
                    "\n";
        }
        for (Flag const& word : one->words) {
            if (!word.choices.empty()) text += start + " -a " + in_single_quotes(join(word.choices, " ")) + "\n";
        }
        for (Flag const& flag : one->flags)
            text += start + fish_flag(flag) + " -d " + in_single_quotes(flag.help) + "\n";
    }
    return text;
}

}  // namespace

std::string completion(Manual const& program, std::string const& shell) {
    if (shell == "bash") return bash(program);
    return shell == "zsh" ? zsh(program) : fish(program);
}

}  // namespace cropful::commands
