#pragma once

#include <string>
#include <vector>

#include "cropful/domain/argument.hpp"

namespace cropful::domain {

/// How far a figure can be trusted.
enum class Standing { published, derived, common_practice, from_memory, yours, invented };

std::string name(Standing standing);  // "common practice"

/// Where a figure comes from.
struct Source {
    std::string text;
    Standing standing = Standing::yours;
};

/// Something a result rests on, listed under it. `with["form"]` chooses among several sentences of one id.
struct Assumption {
    std::string id;  // what it is about, in kebab-case: "hatch-rate"; programs and tests ask for it
    Arguments with{};
    Source source{};
    friend bool operator==(Assumption const& a, Assumption const& b) { return a.id == b.id && a.with == b.with; }
};

/// Something that can hurt birds or people. `with["form"]` chooses among several sentences of one id.
struct Caution {
    std::string id;  // what it is about, in kebab-case: "drug-into-lay"; programs and tests ask for it
    std::vector<std::string> hatches{};  // those it names; none where it is about a feed, a vessel or the farm
    Arguments with{};
    std::string source{};
    friend bool operator==(Caution const& a, Caution const& b) {
        return a.id == b.id && a.hatches == b.hatches && a.with == b.with;
    }
};

}  // namespace cropful::domain
