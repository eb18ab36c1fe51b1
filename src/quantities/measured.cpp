#include <array>
#include <cmath>
#include <span>

#include "cropful/quantities/print.hpp"
#include "cropful/quantities/whole.hpp"

namespace cropful::quantities {

namespace {

constexpr double tolerance = 0.004;        // relative: (1 + 0.4 %) / (1 - 0.4 %) is below 1.01
constexpr double spoon_tolerance = 0.005;  // relative, of a figure in spoons: with its water's 0.4 % still below 1 %
constexpr double near_a_spoon = 0.125;     // relative; a spoonful further off is no help
constexpr double most_spooned = 0.12;      // L, about half a cup: above it the product is poured, not spooned

constexpr double teaspoon = litres_per_gallon / 768;

/// A unit amounts are measured out in from `from` of it upwards.
struct Mark {
    double size;  // in the engine's unit
    std::string_view symbol;
    double from;
};

// Largest first; the last takes everything that is left.
constexpr std::array us_scale{Mark{kilograms_per_pound, "lb", 1}, Mark{kilograms_per_ounce, "oz", 0}};
constexpr std::array metric_scale{Mark{1, "kg", 1}, Mark{1e-3, "g", 0.1}, Mark{1e-6, "mg", 0}};
constexpr std::array us_jug{Mark{litres_per_gallon, "gal", 1}, Mark{litres_per_gallon / 4, "qt", 1},
                            Mark{litres_per_gallon / 128, "fl oz", 0.5}, Mark{1e-3, "mL", 0}};
constexpr std::array us_bulk{Mark{litres_per_cubic_inch * 1728, "ft3", 0}};
constexpr std::array metric_jug{Mark{1, "L", 1}, Mark{1e-3, "mL", 0}};

double rounded(double x, int decimals) {
    double const unit = std::pow(10.0, decimals);
    return std::round(x * unit) / unit;
}

std::string figure(double x) {
    std::string text = number(x, measured_decimals(x));
    if (text.find('.') == std::string::npos) return text;
    text.erase(text.find_last_not_of('0') + 1);
    if (text.ends_with('.')) text.pop_back();
    return text;
}

/// In the first unit that suits. What rounds to the first of a larger one belongs there: "1 lb", not "16 oz".
std::string in_units(double amount, std::span<Mark const> units) {
    std::size_t i = 0;
    for (; i + 1 < units.size(); ++i) {
        double const smaller = amount / units[i + 1].size;
        double const as_shown = rounded(smaller, measured_decimals(smaller)) * units[i + 1].size;
        if (as_shown >= units[i].from * units[i].size * (1 - 1e-12)) break;
    }
    return figure(amount / units[i].size) + ' ' + std::string(units[i].symbol);
}

/// "1 1/4" of a count of eighths.
std::string mixed(long eighths) {
    long const full = eighths / 8;
    long over = eighths % 8, under = 8;
    if (over == 0) return std::to_string(full);
    while (over % 2 == 0) {
        over /= 2;
        under /= 2;
    }
    std::string const fraction = std::to_string(over) + '/' + std::to_string(under);
    return full == 0 ? fraction : std::to_string(full) + ' ' + fraction;
}

std::string spoons(long eighths) {
    if (eighths < 24) return mixed(eighths) + " tsp";
    std::string const tablespoons = std::to_string(eighths / 24) + " tbsp";
    return eighths % 24 == 0 ? tablespoons : tablespoons + ' ' + mixed(eighths % 24) + " tsp";
}

}  // namespace

int measured_decimals(double x) {
    int decimals = 0;
    while (decimals < 12 && std::abs(rounded(x, decimals) - x) > tolerance * std::abs(x)) ++decimals;
    return decimals;
}

std::string print_measured(double x) { return number(x, measured_decimals(x)); }

std::string print_measured(Mass mass, Measures measures) {
    if (measures == Measures::us) return in_units(in_kilograms(mass), us_scale);
    return in_units(in_kilograms(mass), metric_scale);
}

std::string print_measured(Volume volume, Measures measures) {
    if (measures == Measures::us) return in_units(in_litres(volume), us_jug);
    return in_units(in_litres(volume), metric_jug);
}

std::string print_bulk(Volume volume, Measures measures) {
    if (measures == Measures::us) return in_units(in_litres(volume), us_bulk);
    return in_units(in_litres(volume), metric_jug);
}

bool spoon_measures(Volume volume) {
    double const exact = 8 * in_litres(volume) / teaspoon;
    double const eighths = std::round(exact);
    return eighths > 0 && std::abs(eighths - exact) <= near_a_spoon * exact;
}

std::string print_dose(Mass mass, Measures measures) {
    std::string const metric = print_measured(mass, Measures::metric);
    if (measures != Measures::us || in_kilograms(mass) < kilograms_per_ounce) return metric;
    return print_measured(mass, measures) + " (" + metric + ')';
}

std::optional<std::string> in_spoons(Volume volume) {
    if (in_litres(volume) > most_spooned || !spoon_measures(volume)) return std::nullopt;
    double const exact = 8 * in_litres(volume) / teaspoon;
    if (std::abs(std::round(exact) - exact) > spoon_tolerance * exact) return std::nullopt;
    return spoons(whole_number<long>(std::round(exact)));
}

std::string print_dose(Volume volume, Measures measures) {
    if (measures != Measures::us || in_litres(volume) > most_spooned) return print_measured(volume, measures);
    std::string const millilitres = figure(in_millilitres(volume)) + " mL";
    if (auto const spooned = in_spoons(volume)) return *spooned + " (" + millilitres + ')';
    if (!spoon_measures(volume)) return millilitres;
    double const exact = 8 * in_litres(volume) / teaspoon, off = std::round(exact) - exact;
    std::string const spooned = spoons(whole_number<long>(std::round(exact)));
    return millilitres + ", just " + (off < 0 ? "over " : "under ") + spooned;
}

}  // namespace cropful::quantities
