#pragma once

#include <string>
#include <vector>

#include "cropful/reports/page.hpp"

namespace CLI {
class App;
}

/// What the program says of itself: help, manual page and completions are all written from this.
namespace cropful::commands {

struct Flag {
    std::vector<std::string> names;  // "-o", "--output"; "FILE" for a word without a flag
    std::string value;               // what follows it, such as "DATE"; empty where nothing does
    std::string help;
    std::string group;                 // its heading
    std::vector<std::string> choices;  // every word that may follow it; empty where any may
};

struct Manual {
    std::string line;   // "cropful diary add"
    std::string about;  // one line
    std::vector<Flag> words, flags;
    std::vector<Manual> commands;
    bool alone = false;   // whether it does something without one of its commands
    std::string example;  // a line that runs
};

/// Of a program or one of its commands.
Manual manual_of(CLI::App const& app);

/// Every command below, those of a command after it; without the manual itself.
std::vector<Manual const*> all_commands(Manual const& manual);

/// "--hopper VOLUME".
std::string usage_of(Flag const& flag);
/// "cropful plan [FLAGS] [FILE]".
std::string usage_of(Manual const& manual);
/// Headings in the order of their first flag.
std::vector<std::string> headings_of(Manual const& manual);
std::vector<Flag> flags_under(std::string const& heading, Manual const& manual);

/// The page of --help.
reports::Page help_page(Manual const& manual);
/// A manual page in the man macros of roff.
std::string man_page(Manual const& program);
/// A completion script for `shell`: bash, zsh or fish.
std::string completion(Manual const& program, std::string const& shell);

}  // namespace cropful::commands
