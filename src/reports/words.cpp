#include "cropful/reports/words.hpp"

namespace cropful::reports {

std::string plural(int count, std::string_view noun) {
    std::string const number = std::to_string(count) + " ";
    if (count == 1) return number + std::string(noun);
    bool const hisses = noun.ends_with("s") || noun.ends_with("x") || noun.ends_with("ch");
    return number + std::string(noun) + (hisses ? "es" : "s");
}

}  // namespace cropful::reports
