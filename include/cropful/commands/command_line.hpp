#pragma once

#include <string>
#include <vector>

#include "cropful/commands/reply.hpp"

namespace cropful::commands {

/// What the program says and how it ends.
struct Printed {
    std::string out;  // for standard output
    std::string err;  // for standard error
    Exit status = Exit::done;
    std::string done = {};  // what is written and must not be written again, even if `out` cannot be printed
};

/// Carries out a command line, without the program's name. Throws Fault. Both do the same; a page is laid out for the
/// terminal by `answer`, and left as it is by `carry_out`.
Reply carry_out(std::vector<std::string> const& words);
Printed answer(std::vector<std::string> const& words);

}  // namespace cropful::commands
