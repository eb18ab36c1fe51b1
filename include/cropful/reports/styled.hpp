#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace cropful::reports {

/// In columns: characters of UTF-8.
std::size_t width(std::string_view text);

/// How words look where there is colour: bold; red and bold. It is never the only sign.
enum class Look { plain, strong, alarm };

/// Words of a page and how they look. Where that is said, it is said by the reports, never found by looking for words:
/// what a user has named "SHORT run" is no alarm. Control characters are written out, so that nothing a terminal takes
/// for an order is ever on a page.
class Styled {
  public:
    Styled() = default;
    Styled(std::string_view words, Look look = Look::plain);
    Styled(std::string const& words) : Styled(std::string_view(words)) {}
    Styled(char const* words) : Styled(std::string_view(words)) {}

    [[nodiscard]] std::string const& words() const { return words_; }
    [[nodiscard]] Look look(std::size_t byte) const { return looks_[byte]; }
    [[nodiscard]] bool empty() const { return words_.empty(); }
    [[nodiscard]] std::size_t width() const;  // in columns
    /// `count` bytes from `first` on, or as many as there are.
    [[nodiscard]] Styled part(std::size_t first, std::size_t count = std::string::npos) const;
    Styled& operator+=(Styled const& more);
    friend Styled operator+(Styled words, Styled const& more) { return words += more; }

  private:
    std::string words_;
    std::vector<Look> looks_;  // of each byte
};

Styled strong(std::string_view words);
/// Words that warn.
Styled alarm(std::string_view words);
/// The capitals that the program's own `words` start with as an alarm, "SHORT" of "SHORT by 2 %"; others as they are.
Styled alarm_capitals(std::string_view words);

}  // namespace cropful::reports
