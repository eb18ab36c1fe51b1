#pragma once

#include <cstdlib>
#include <ctime>
#include <string>

namespace cropful::sample {

/// The machine's time zone while it lives.
struct InZone {
    std::string before = std::getenv("TZ") != nullptr ? std::getenv("TZ") : "";
    explicit InZone(std::string const& zone) { set(zone); }
    InZone(InZone const&) = delete;
    InZone& operator=(InZone const&) = delete;
    ~InZone() { set(before); }
    static void set(std::string const& zone) {
        zone.empty() ? unsetenv("TZ") : setenv("TZ", zone.c_str(), 1);
        tzset();
    }
};

}  // namespace cropful::sample
