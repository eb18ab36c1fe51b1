#include "cropful/reports/words.hpp"

namespace cropful::reports {

std::string nouns(int count, std::string_view noun) {
    if (count == 1) return std::string(noun);
    bool const hisses = noun.ends_with("s") || noun.ends_with("x") || noun.ends_with("ch");
    return std::string(noun) + (hisses ? "es" : "s");
}

std::string plural(int count, std::string_view noun) { return std::to_string(count) + " " + nouns(count, noun); }

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

std::string houses_words(std::string const& sort, int houses, std::vector<int> const& numbers) {
    if (numbers.empty()) return plural(houses, sort);
    return nouns(static_cast<int>(numbers.size()), sort) + " " + numbers_words(numbers);
}

}  // namespace cropful::reports
