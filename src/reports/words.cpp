#include "cropful/reports/words.hpp"

namespace cropful::reports {

std::string plural(int count, std::string_view noun) {
    std::string const number = std::to_string(count) + " ";
    if (count == 1) return number + std::string(noun);
    bool const hisses = noun.ends_with("s") || noun.ends_with("x") || noun.ends_with("ch");
    return number + std::string(noun) + (hisses ? "es" : "s");
}

std::string numbers_words(std::vector<int> const& numbers) {
    std::vector<std::string> parts;
    for (std::size_t i = 0; i < numbers.size();) {
        std::size_t last = i;
        while (last + 1 < numbers.size() && numbers[last + 1] == numbers[last] + 1) ++last;
        parts.push_back(std::to_string(numbers[i]) + (last > i ? "-" + std::to_string(numbers[last]) : ""));
        i = last + 1;
    }
    return join(parts);
}

}  // namespace cropful::reports
