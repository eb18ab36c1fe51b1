#pragma once

#include <sys/wait.h>
#include <unistd.h>

#include <catch2/catch.hpp>

namespace cropful::sample {

/// How another process that does `act` ends, as waitpid tells it. It closes nothing at its end, as if it was killed.
template <class Act>
int ended(Act const& act) {
    pid_t const child = fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        act();
        _exit(0);
    }
    int status = 0;
    waitpid(child, &status, 0);
    return status;
}

}  // namespace cropful::sample
