#include "cropful/reports/styled.hpp"

#include <algorithm>

#include "cropful/fault/characters.hpp"

namespace cropful::reports {

Styled::Styled(std::string_view words, Look look) : words_(escaped(words)), looks_(words_.size(), look) {}

Styled Styled::part(std::size_t first, std::size_t count) const {
    Styled some;
    some.words_ = words_.substr(first, count);
    auto const start = looks_.begin() + static_cast<std::ptrdiff_t>(first);
    some.looks_.assign(start, start + static_cast<std::ptrdiff_t>(some.words_.size()));
    return some;
}

Styled& Styled::operator+=(Styled const& more) {
    words_ += more.words_;
    looks_.insert(looks_.end(), more.looks_.begin(), more.looks_.end());
    return *this;
}

std::size_t Styled::width() const { return reports::width(words_); }

Styled strong(std::string_view words) { return {words, Look::strong}; }
Styled alarm(std::string_view words) { return {words, Look::alarm}; }

Styled alarm_capitals(std::string_view words) {
    std::size_t end = 0;
    while (end < words.size() && words[end] >= 'A' && words[end] <= 'Z') ++end;
    return end < 2 ? Styled(words) : alarm(words.substr(0, end)) + words.substr(end);
}

std::size_t width(std::string_view text) {
    auto const starts_character = [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; };
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), starts_character));
}

}  // namespace cropful::reports
