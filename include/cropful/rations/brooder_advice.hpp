#pragma once

#include <string>
#include <vector>

#include "cropful/domain/standing.hpp"

namespace cropful::rations {

using domain::Source;

/// Something to see in the brooder, and what to do about it.
struct Sign {
    std::string title;  // "Too cold"
    std::string seen;
    std::string act;
    Source source;
};
struct LampRule {
    std::string text;
    Source source;
};
/// What is built in about watching a brooder, for any kind of bird.
struct BrooderAdvice {
    std::vector<Sign> signs;
    std::vector<LampRule> lamp;
};

}  // namespace cropful::rations
