#include "commands/progress.hpp"

#include <cstdio>

#include <unistd.h>

namespace cropful::commands {

namespace {

constexpr std::size_t many_hatches = 12;  // a second or more of work

void say(std::size_t done, std::size_t of) {
    if (done < of) {
        std::fprintf(stderr, "\rworking it out: %zu %%", 100 * done / of);
    } else {
        std::fprintf(stderr, "\r%24s\r", "");  // over the line
    }
    std::fflush(stderr);
}

}  // namespace

engine::Progress progress_for(domain::Farm const& farm) {
    bool const seen = isatty(STDERR_FILENO) == 1;
    return seen && farm.hatches.size() >= many_hatches ? engine::Progress(say) : engine::Progress();
}

}  // namespace cropful::commands
