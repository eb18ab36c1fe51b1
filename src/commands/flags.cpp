#include "cropful/commands/flags.hpp"

#include <charconv>

#include "cropful/quantities/decimal.hpp"

namespace cropful::commands {

namespace {

/// The whole number that makes up all of `text`.
std::optional<int> whole_text(std::string_view text) {
    int value = 0;
    auto const [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc() || end != text.data() + text.size()) return std::nullopt;
    return value;
}

}  // namespace

double parse_share(std::string_view text) {
    double const share = quantities::parse_percent(text);
    if (share >= 1) throw BadInput(in_quotes(text), "less than 100 %");
    return share;
}

quantities::Money parse_price(std::string_view text) {
    auto const price = quantities::read_decimal(text);
    if (!price || !(*price >= 0 && *price <= 1e6)) {
        bool const negative = price && *price < 0;
        throw BadInput(in_quotes(text) + (negative ? " (less than 0)" : ""),
                       "the price of a bag as a plain number, such as 27.50");
    }
    return quantities::money(*price);
}

int parse_count(std::string_view text, int most, int least) {
    auto const count = whole_text(text);
    if (!count || *count < least || *count > most) {
        throw BadInput(in_quotes(text), "a whole number from " + std::to_string(least) + " to " + std::to_string(most));
    }
    return *count;
}

}  // namespace cropful::commands
