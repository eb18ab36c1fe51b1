#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>

#include "cropful/domain/moment.hpp"
#include "cropful/fault.hpp"
#include "cropful/fault/characters.hpp"
#include "cropful/quantities/text.hpp"

namespace cropful::commands {

/// Headings in the help: of what one command alone is asked, and of what all commands are told about their answers.
inline constexpr char question_heading[] = "The question";
inline constexpr char answer_heading[] = "The answer";

/// Options as typed, by flag: "--hopper" -> "12 L". A fault in one names its flag.
class Flags {
  public:
    void set(std::string const& flag, std::string const& text) { texts_[flag] = text; }
    [[nodiscard]] bool has(std::string const& flag) const { return texts_.contains(flag); }
    /// The first flag given, in alphabetical order; empty when none is.
    [[nodiscard]] std::string first() const { return texts_.empty() ? "" : texts_.begin()->first; }
    [[nodiscard]] std::map<std::string, std::string> const& all() const { return texts_; }

    /// What `parse` makes of a flag's text, which must be one a user may write; empty when the flag is not given.
    template <class Parse>
    auto read(std::string const& flag, Parse parse) const
        -> std::optional<std::invoke_result_t<Parse, std::string_view>> {
        auto const found = texts_.find(flag);
        if (found == texts_.end()) return std::nullopt;
        try {
            need_writable(found->second);
            return parse(std::string_view(found->second));
        } catch (BadInput const& fault) {
            throw fault.at({.file = "", .line = 0, .key = flag});
        }
    }

    /// The text itself.
    [[nodiscard]] std::optional<std::string> text(std::string const& flag) const {
        return read(flag, [](std::string_view text) { return std::string(text); });
    }

  private:
    std::map<std::string, std::string> texts_;
};

/// A parser that thinks in `measures`.
template <class T>
auto in(T (*parse)(std::string_view, quantities::Measures), quantities::Measures measures) {
    return [=](std::string_view text) { return parse(text, measures); };
}

/// The same, refusing an amount of nothing.
template <class T>
auto some_in(T (*parse)(std::string_view, quantities::Measures), quantities::Measures measures) {
    return [=](std::string_view text) {
        T const amount = parse(text, measures);
        if (!(amount > T{})) throw BadInput("\"" + std::string(text) + "\"", "more than none");
        return amount;
    };
}

double parse_share(std::string_view text);             // "5 %" as 0.05, less than 100 %
quantities::Money parse_price(std::string_view text);  // "27.50"
/// A whole number from `least` to `most`.
int parse_count(std::string_view text, int most, int least = 1);

}  // namespace cropful::commands
