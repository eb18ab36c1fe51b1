#pragma once

#include <string>

namespace CLI {
class App;
class ParseError;
}  // namespace CLI

namespace cropful::commands {

/// A command line that cannot be read, in the program's own words: what was found, and the nearest that is known.
std::string explain(CLI::ParseError const& fault, CLI::App const& program);

}  // namespace cropful::commands
