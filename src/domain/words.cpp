#include "cropful/domain/words.hpp"

#include <algorithm>

namespace cropful::domain {

std::string join(std::vector<std::string> const& parts, std::string_view between) {
    std::string all;
    for (std::string const& part : parts) all.append(all.empty() ? "" : between).append(part);
    return all;
}

std::string lower(std::string_view text) {
    std::string word(text);
    std::transform(word.begin(), word.end(), word.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
    return word;
}

}  // namespace cropful::domain
