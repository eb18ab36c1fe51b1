#include "cropful/domain/diary.hpp"

#include <array>
#include <optional>

#include "cropful/domain/words.hpp"
#include "cropful/fault.hpp"

namespace cropful::domain {

namespace {

struct Named {
    Deed deed;
    std::string_view name;
};

constexpr std::array all{
    Named{Deed::topped_up, "topped up"},
    Named{Deed::part_filled, "part filled"},
    Named{Deed::thrown_out, "thrown out"},
    Named{Deed::found_empty, "found empty"},
    Named{Deed::died, "died"},
    Named{Deed::counted, "counted"},
    Named{Deed::moved_out, "moved out"},
    Named{Deed::moved_in, "moved in"},
};

template <class T>
std::optional<Amount> fits(T (*parse)(std::string_view, quantities::Measures), std::string_view text,
                           quantities::Measures measures) {
    try {
        return parse(text, measures);
    } catch (BadInput const&) {
        return std::nullopt;
    }
}

}  // namespace

std::string name(Deed deed) {
    for (Named const& one : all) {
        if (one.deed == deed) return std::string(one.name);
    }
    return "";
}

Deed parse_deed(std::string_view text) {
    std::vector<std::string> names;
    for (Named const& one : all) {
        if (one.name == text) return one.deed;
        names.emplace_back(one.name);
    }
    throw BadInput(in_quotes(text), "one of: " + join(names));
}

bool counts_birds(Deed deed) {
    return deed == Deed::died || deed == Deed::counted || deed == Deed::moved_out || deed == Deed::moved_in;
}

std::string unit(Amount const& amount) {
    constexpr std::array<std::string_view, 3> units{"kg", "L", "birds"};
    return std::string(units[amount.index()]);
}

double number(Amount const& amount) {
    if (auto const* mass = std::get_if<quantities::Mass>(&amount)) return quantities::in_kilograms(*mass);
    if (auto const* volume = std::get_if<quantities::Volume>(&amount)) return quantities::in_litres(*volume);
    return quantities::in_birds(std::get<quantities::Heads>(amount));
}

Amount amount_in(std::string_view unit, double number) {
    if (unit == "kg") return quantities::kilograms(number);
    if (unit == "L") return quantities::litres(number);
    if (unit == "birds") return quantities::birds(number);
    throw BadInput(in_quotes(unit), "kg, L or birds");
}

Amount parse_feed_or_water(std::string_view text, quantities::Measures measures) {
    if (auto const feed = fits(quantities::parse_mass, text, measures)) return *feed;
    if (auto const water = fits(quantities::parse_volume, text, measures)) return *water;
    bool const uk = measures == quantities::Measures::uk;
    throw BadInput(in_quotes(text), std::string("a weight of feed such as \"2 lb\", or a volume of water such as ") +
                                        (uk ? "\"1 imp gal\" or \"1 US gal\"" : "\"1 gal\""));
}

std::string parse_note(std::string_view text) {
    if (!is_utf8(text)) throw BadInput(in_quotes(text), "a note in letters of UTF-8");
    return std::string(text);
}

}  // namespace cropful::domain
