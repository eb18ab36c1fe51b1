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

bool is_utf8(std::string_view text) {
    while (!text.empty()) {
        auto const byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U; };
        unsigned const first = byte(0), second = byte(1);
        std::size_t const length = first < 0x80 ? 1 : first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
        if ((first >= 0x80 && first < 0xC2) || first > 0xF4) return false;
        if ((first == 0xE0 && second < 0xA0) || (first == 0xED && second > 0x9F)) return false;
        if ((first == 0xF0 && second < 0x90) || (first == 0xF4 && second > 0x8F)) return false;
        for (std::size_t i = 1; i < length; ++i) {
            if ((byte(i) & 0xC0U) != 0x80U) return false;
        }
        text.remove_prefix(length);
    }
    return true;
}

}  // namespace cropful::domain
