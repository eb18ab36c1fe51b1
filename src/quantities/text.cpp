#include "cropful/quantities/text.hpp"

#include <cmath>

#include "cropful/fault.hpp"
#include "cropful/quantities/print.hpp"
#include "quantities/number.hpp"
#include "quantities/units.hpp"

namespace cropful::quantities {

namespace {

/// What one parser accepts.
struct Sort {
    std::string_view noun;
    std::string_view example;
    std::string_view top;     // dimension
    std::string_view bottom;  // dimension after "per"; empty when there is none
    double least;             // in the engine's unit, as `most`
    double most;
    std::string_view unit;
};

constexpr Sort mass_sort{"a weight", "2.5 lb", "mass", "", 0, 1e6, "kg"};
constexpr Sort small_mass_sort{"a weight", "50 g", "mass", "", 0, 1e6, "kg"};
constexpr Sort time_sort{"a length of time", "6 wk", "time", "", 0, 3650, "d"};
constexpr Sort volume_sort{"a volume", "3 gal", "volume", "", 0, 1e6, "L"};
constexpr Sort length_sort{"a length", "14 in", "length", "", 0, 100, "m"};
constexpr Sort percent_sort{"a percentage", "24 %", "percent", "", 0, 100, "%"};
constexpr Sort energy_sort{"an energy per weight", "2900 kcal/kg", "energy", "mass", 500, 10000, "kcal/kg"};
constexpr Sort density_sort{"a weight per volume", "38 lb/ft3", "mass", "volume", 1e-7, 25, "kg/L"};
constexpr double dearest = 1e5;  // per kg
constexpr std::string_view price_expected = R"(a price by weight, such as "14.50 per 50 lb" or "310 per tonne")";
constexpr std::string_view rate_expected = R"(a label's rate with its units, such as "1 tsp per gal")";
constexpr std::string_view temperature_expected = R"(a temperature with its unit, such as "95 degF")";

std::string expected(Sort const& sort) {
    std::string const units = sort.bottom.empty() ? " with its unit" : " with its units";
    return std::string(sort.noun) + units + ", such as \"" + std::string(sort.example) + '"';
}

std::string noun(std::string_view dimension) {
    if (dimension == "mass") return "a weight";
    if (dimension == "energy") return "an energy";
    if (dimension == "percent") return "a percentage";
    return "a " + std::string(dimension);
}

std::string wrong_dimension(Unit const& unit, std::string_view dimension) {
    bool const fluid = unit.symbol.ends_with("fl oz");
    if (unit.symbol == "oz" && dimension == "volume") return "oz is a weight; for a volume say fl oz";
    if (fluid && dimension == "mass") return std::string(unit.symbol) + " is a volume; for a weight say oz";
    return std::string(unit.symbol) + " is " + noun(unit.dimension);
}

Unit const& look_up(std::string const& word, Measures measures, Wanted const& wanted) {
    if (word.empty()) wanted.refuse();
    if (is_bare_ton(word)) wanted.refuse("a ton is several weights; say short ton or tonne");
    Unit const* unit = find_unit(word);
    if (unit == nullptr) wanted.refuse("unknown unit \"" + word + '"');
    if (measures == Measures::uk && differs_by_country(*unit)) {
        std::string const symbol(unit->symbol);
        wanted.refuse("a bare " + symbol + " is ambiguous here; say US " + symbol + " or imp " + symbol);
    }
    return *unit;
}

/// The unit, which is of this dimension.
Unit const& unit_of(std::string const& word, std::string_view dimension, Measures measures, Wanted const& wanted) {
    Unit const& unit = look_up(word, measures, wanted);
    if (unit.dimension != dimension) wanted.refuse(wrong_dimension(unit, dimension));
    return unit;
}

double factor(std::string const& word, std::string_view dimension, Measures measures, Wanted const& wanted) {
    return unit_of(word, dimension, measures, wanted).factor;
}

/// Where a second number stands after a unit, as in "lb 8 oz"; the end where there is none.
std::size_t second_number(std::string_view words) {
    for (std::size_t at = words.find(' '); at != std::string_view::npos; at = words.find(' ', at + 1)) {
        if (number_first(words.substr(at + 1))) return at;
    }
    return words.size();
}

/// "7 lb 8 oz", as such amounts are printed: a whole number of each unit but the last, and less than one of it after
/// it. `words` are all that stands after the first number. In the engine's unit.
double amount_in_units(double amount, std::string_view words, std::string_view dimension, Measures measures,
                       Wanted const& wanted) {
    std::size_t const second = second_number(words);
    Unit const& unit = unit_of(std::string(trim(words.substr(0, second))), dimension, measures, wanted);
    if (second == words.size()) return amount * unit.factor;
    auto const [more, rest] = read_number(words.substr(second), wanted);
    double const smaller = amount_in_units(more, rest, dimension, measures, wanted);
    if (amount != std::floor(amount)) wanted.refuse("a whole number before the first of two units");
    if (smaller >= unit.factor) wanted.refuse("less than 1 " + std::string(unit.symbol) + " after it");
    return amount * unit.factor + smaller;
}

/// Where "/" or the word "per" stands in `text`: its first character and the first one after it.
struct Divide {
    std::size_t from = std::string_view::npos;
    std::size_t to = std::string_view::npos;
};

Divide find_divide(std::string_view text) {
    if (std::size_t const per = text.find(" per "); per != std::string_view::npos) return {per, per + 5};
    for (std::size_t at = text.find('/'); at != std::string_view::npos; at = text.find('/', at + 1)) {
        bool const fraction = at > 0 && is_digit(text[at - 1]) && number_first(text.substr(at + 1));
        if (!fraction) return {at, at + 1};  // not the one of "1 cup 1/2 tsp"
    }
    return {};
}

/// Labels say "per gallon of drinking water".
std::string_view without_water(std::string_view unit) {
    for (std::string_view const tail : {" of drinking water", " of water"}) {
        if (unit.ends_with(tail)) return trim(unit.substr(0, unit.size() - tail.size()));
    }
    return unit;
}

Figure read_figure(std::string_view text, Wanted const& wanted) {
    auto const [amount, rest] = read_number(text, wanted);
    Divide const divide = find_divide(rest);
    Figure figure{amount, std::string(trim(rest.substr(0, divide.from))), 1, ""};
    if (divide.from == std::string_view::npos) return figure;
    std::string_view below = trim(rest.substr(divide.to));
    if (number_first(below)) {
        auto const [per_amount, unit] = read_number(below, wanted);
        if (per_amount == 0) wanted.refuse("an amount per 0");
        figure.per_amount = per_amount;
        below = unit;
    }
    if (below.empty()) wanted.refuse("no unit after \"per\"");
    figure.per_unit = std::string(without_water(below));
    return figure;
}

/// The figure in the engine's units (a percentage: in percent), of the dimensions and within the limits of `sort`.
double parse(Sort const& sort, std::string_view text, Measures measures) {
    Wanted const wanted{text, expected(sort)};
    Figure const figure = read_figure(text, wanted);
    double amount = figure.amount;
    if (sort.top == "percent") {
        unit_of(figure.unit, sort.top, measures, wanted);
    } else {
        amount = amount_in_units(amount, figure.unit, sort.top, measures, wanted);
    }
    if (sort.bottom.empty() != figure.per_unit.empty()) {
        wanted.refuse(sort.bottom.empty() ? "nothing may stand after \"per\" here" : "\"per\" what is missing");
    }
    if (!sort.bottom.empty()) {
        amount /= figure.per_amount * factor(figure.per_unit, sort.bottom, measures, wanted);
    }
    if (amount < sort.least || amount > sort.most) {
        throw BadInput('"' + std::string(text) + '"', std::string(sort.noun) + " from " + plain(sort.least) + " to " +
                                                          plain(sort.most) + ' ' + std::string(sort.unit));
    }
    return amount;
}

}  // namespace

Mass parse_mass(std::string_view text, Measures measures) { return kilograms(parse(mass_sort, text, measures)); }

Mass parse_small_mass(std::string_view text, Measures measures) {
    return kilograms(parse(small_mass_sort, text, measures));
}

Duration parse_duration(std::string_view text, Measures measures) { return days(parse(time_sort, text, measures)); }

Volume parse_volume(std::string_view text, Measures measures) { return litres(parse(volume_sort, text, measures)); }

Length parse_length(std::string_view text, Measures measures) { return metres(parse(length_sort, text, measures)); }

EnergyPerMass parse_energy(std::string_view text, Measures measures) {
    return kilocalories_per_kilogram(parse(energy_sort, text, measures));
}

MassPerVolume parse_density(std::string_view text, Measures measures) {
    return kilograms_per_litre(parse(density_sort, text, measures));
}

double parse_percent(std::string_view text, Measures measures) { return parse(percent_sort, text, measures) / 100; }

MoneyPerMass parse_price(std::string_view text, Measures measures) {
    Wanted const wanted{text, std::string(price_expected)};
    // split first, or "10/50 lb" would begin with the fraction 10/50
    bool const has_per = text.find("per ") != std::string_view::npos;
    std::size_t const split = has_per ? text.find("per ") : std::min(text.find('/'), text.size());
    auto const [amount, rest] = read_number(text.substr(0, split), wanted);
    if (!trim(rest).empty()) wanted.refuse("no unit of money is wanted");
    if (split == text.size()) wanted.refuse("per what weight is missing");
    // "1" lends the rest the form of a quantity: "310 per tonne" is read as "1 tonne", "14.50 per 50 lb" as "50 lb"
    std::string_view const below = trim(text.substr(split + (has_per ? 4 : 1)));
    Figure const weight = read_figure(number_first(below) ? std::string(below) : "1 " + std::string(below), wanted);
    double const mass = weight.amount * factor(weight.unit, "mass", measures, wanted);
    if (!weight.per_unit.empty() || mass <= 0) wanted.refuse("one weight more than none stands after \"per\"");
    if (amount / mass > dearest) throw BadInput('"' + std::string(text) + '"', "a price of at most 100000 per kg");
    return money_per_kilogram(amount / mass);
}

Temperature parse_temperature(std::string_view text, Measures measures) {
    Wanted const wanted{text, std::string(temperature_expected)};
    bool const below_zero = trim(text).starts_with('-');
    Figure const figure = read_figure(below_zero ? trim(text).substr(1) : text, wanted);
    Unit const& unit = look_up(figure.unit, measures, wanted);
    if (unit.dimension != "temperature") wanted.refuse(wrong_dimension(unit, "temperature"));
    if (!figure.per_unit.empty()) wanted.refuse("nothing may stand after \"per\" here");
    double const amount = below_zero ? -figure.amount : figure.amount;
    Temperature const point = unit.symbol == "degF" ? Temperature::fahrenheit(amount) : Temperature::celsius(amount);
    if (point < Temperature::celsius(-40) || point > Temperature::celsius(60)) {
        throw BadInput('"' + std::string(text) + '"', "a temperature from -40 to 60 degC, or -40 to 140 degF");
    }
    return point;
}

double parse_proportion(std::string_view text) {
    Wanted const wanted{text, "a proportion, such as \"1:128\", up to 1:100000"};
    std::size_t const colon = text.find(':');
    if (colon == std::string_view::npos || trim(text.substr(0, colon)) != "1") wanted.refuse();
    auto const [parts, rest] = read_number(text.substr(colon + 1), wanted);
    if (!rest.empty() || parts <= 0 || parts > 1e5) wanted.refuse();
    return parts;
}

Proportioner parse_proportioner(std::string_view text) {
    std::string_view const words = trim(text);
    auto const ends_in = [&](std::string_view end) {
        return words.size() > end.size() && words.substr(words.size() - end.size()) == end;
    };
    bool const added = ends_in(" added");
    std::string_view const end = added ? " added" : ends_in(" in all") ? " in all" : "";
    Wanted const wanted{text, "a proportion, such as \"1:128\", \"1:128 in all\" or \"1:128 added\", up to 1:100000"};
    try {
        Proportioner const found{parse_proportion(words.substr(0, words.size() - end.size())), added};
        if (added || found.parts >= 1) return found;
    } catch (BadInput const&) {
        wanted.refuse();
    }
    wanted.refuse();
}

std::optional<MassPerVolume> Rate::by_weight() const {
    auto const* weight = std::get_if<MassPerVolume>(&product);
    return weight ? std::optional(*weight) : std::nullopt;
}

std::optional<double> Rate::by_measure() const {
    auto const* measure = std::get_if<double>(&product);
    return measure ? std::optional(*measure) : std::nullopt;
}

Rate parse_rate(std::string_view text, Measures measures) {
    std::string const words(trim(text));
    Wanted const wanted{text, std::string(rate_expected)};
    Rate rate;
    if (words.find(':') != std::string::npos) {
        rate = {1 / parse_proportion(words), false, words};
    } else {
        Figure const figure = read_figure(text, wanted);
        std::string const first = figure.unit.substr(0, second_number(figure.unit));
        Unit const& product = look_up(first, measures, wanted);
        if (product.dimension != "mass" && product.dimension != "volume") wanted.refuse(wrong_dimension(product, ""));
        if (figure.per_unit.empty()) wanted.refuse("per how much water is missing");
        double const water = figure.per_amount * factor(figure.per_unit, "volume", measures, wanted);
        double const amount = amount_in_units(figure.amount, figure.unit, product.dimension, measures, wanted);
        rate = {amount / water, product.symbol == "oz", words};
        if (product.dimension == "mass") rate.product = kilograms_per_litre(amount / water);
    }
    double const of_water = rate.by_weight() ? in_kilograms_per_litre(*rate.by_weight()) : *rate.by_measure();
    if (of_water <= 0 || of_water > 1) {
        throw BadInput('"' + words + '"', "more than 0, and at most 1 kg or 1 L of product to 1 L of water");
    }
    return rate;
}

Measures parse_measures(std::string_view text) {
    if (text == "us") return Measures::us;
    if (text == "metric") return Measures::metric;
    if (text == "uk") return Measures::uk;
    throw BadInput(in_quotes(text), "us, metric or uk");
}

Figure parse_figure(std::string_view text, std::string const& expected) { return read_figure(text, {text, expected}); }

}  // namespace cropful::quantities
