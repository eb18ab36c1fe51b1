#pragma once

#include <string>

namespace cropful::domain {

/// How far a figure can be trusted.
enum class Standing { published, derived, common_practice, from_memory, yours, invented };

std::string name(Standing standing);  // "common practice"

/// Where a figure comes from.
struct Source {
    std::string text;
    Standing standing = Standing::yours;
};

/// Something a result rests on, listed under it.
struct Assumption {
    std::string id;  // what it is about, in kebab-case: "hatch-rate"; programs and tests ask for it
    std::string text;
    Source source;
    friend bool operator==(Assumption const& a, Assumption const& b) { return a.text == b.text; }
};

/// Something that can hurt birds or people.
struct Caution {
    std::string id;  // what it is about, in kebab-case: "drug-into-lay"; programs and tests ask for it
    std::string text;
    std::string source;
    friend bool operator==(Caution const& a, Caution const& b) { return a.text == b.text; }
};

}  // namespace cropful::domain
