#pragma once

#include <string>
#include <variant>

#include "cropful/fault.hpp"
#include "cropful/reports/page.hpp"

namespace cropful::commands {

/// For standard output: text that stands as it is (JSON, CSV, a calendar), or a page that is still to be laid out.
using Said = std::variant<std::string, reports::Page>;

/// What a command says and how it ends.
struct Reply {
    Said out;
    std::string err = {};  // for standard error
    Exit status = Exit::done;
    std::string done = {};  // what is written and must not be written again, even if `out` cannot be printed
};

}  // namespace cropful::commands
