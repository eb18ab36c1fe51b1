#include "cropful/domain/standing.hpp"

namespace cropful::domain {

std::string name(Standing standing) {
    switch (standing) {
        case Standing::published:
            return "published";
        case Standing::derived:
            return "derived";
        case Standing::common_practice:
            return "common practice";
        case Standing::from_memory:
            return "from memory";
        case Standing::yours:
            return "yours";
        case Standing::invented:
            return "invented";
    }
    return "";
}

}  // namespace cropful::domain
