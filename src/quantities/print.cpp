#include "cropful/quantities/print.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

#include "cropful/quantities/decimal.hpp"
#include "cropful/quantities/whole.hpp"

namespace cropful::quantities {

namespace {

/// A unit amounts are printed in from `from` of it upwards.
struct Step {
    double unit;  // in the engine's unit
    std::string_view symbol;
    int decimals;
    double from;
};

constexpr double fluid_ounce = litres_per_gallon / 128;

// Largest first; the last takes everything that is left.
constexpr std::array us_mass{Step{kilograms_per_pound, "lb", 0, 100}, Step{kilograms_per_pound, "lb", 1, 1},
                             Step{kilograms_per_pound / 16, "oz", 1, 0}};
constexpr std::array metric_mass{Step{1, "kg", 0, 100}, Step{1, "kg", 1, 10}, Step{1, "kg", 2, 1},
                                 Step{1e-3, "g", 0, 10}, Step{1e-3, "g", 1, 0}};
constexpr std::array us_volume{Step{litres_per_gallon, "gal", 0, 10}, Step{litres_per_gallon, "gal", 1, 1},
                               Step{litres_per_gallon / 4, "qt", 1, 1}, Step{fluid_ounce, "fl oz", 1, 0}};
constexpr std::array metric_volume{Step{1, "L", 0, 100}, Step{1, "L", 1, 1}, Step{1e-3, "mL", 0, 10},
                                   Step{1e-3, "mL", 1, 0}};

constexpr double guard_days = 1e-9;  // what arithmetic may take from an exact hour

std::string without_trailing_zeros(std::string text) {
    if (text.find('.') == std::string::npos) return text;
    text.erase(text.find_last_not_of('0') + 1);
    if (text.ends_with('.')) text.pop_back();
    return text;
}

/// The first step that suits. What would round up to the next larger step belongs there: "1 lb", not "16 oz".
std::string in_steps(double amount, std::span<Step const> steps) {
    std::size_t i = 0;
    for (; i + 1 < steps.size(); ++i) {
        double const rounding = 0.5 * std::pow(10.0, -steps[i + 1].decimals) * steps[i + 1].unit;
        if (amount + rounding >= steps[i].from * steps[i].unit) break;
    }
    std::string const text = without_trailing_zeros(number(amount / steps[i].unit, steps[i].decimals));
    return text + ' ' + std::string(steps[i].symbol);
}

std::string whole(double x) { return fixed(x, 0); }

bool is_weeks(Duration duration) {
    double const weeks = std::round(in_days(duration) / 7);
    return weeks >= 2 && std::abs(in_days(duration) - weeks * 7) < guard_days;
}

std::string weeks(Duration duration) { return whole(in_days(duration) / 7) + " wk"; }

}  // namespace

std::string number(double x, int decimals) {
    std::string text = fixed(x, decimals);
    std::size_t const first = text.starts_with('-') ? 1 : 0;
    std::size_t end = std::min(text.find('.'), text.size());
    while (std::isfinite(x) && end > first + 3) {
        end -= 3;
        text.insert(end, 1, ',');
    }
    return text;
}

std::string plain(double x) {
    if (x == 0 || !std::isfinite(x)) return fixed(x, 0);
    int const before = whole_number(std::floor(std::log10(std::abs(x)))) + 1;
    return without_trailing_zeros(fixed(x, std::clamp(4 - before, 0, 12)));
}

std::string print(Mass mass, Measures measures) {
    return measures == Measures::us ? in_steps(in_kilograms(mass), us_mass) : in_steps(in_kilograms(mass), metric_mass);
}

std::string print(Volume volume, Measures measures) {
    return measures == Measures::us ? in_steps(in_litres(volume), us_volume)
                                    : in_steps(in_litres(volume), metric_volume);
}

std::string print(Duration duration) {
    if (in_days(duration) < 0) return '-' + print(-duration);
    if (is_weeks(duration)) return weeks(duration);
    double const guarded = in_days(duration) + guard_days;
    double const hours = std::floor(guarded * 24);
    if (hours < 2) return whole(std::floor(guarded * 1440)) + " min";
    if (hours < 48) return whole(hours) + " h";
    double const left = hours - 24 * std::floor(hours / 24);
    return whole(std::floor(hours / 24)) + " d" + (left == 0 ? "" : ' ' + whole(left) + " h");
}

std::string print_age(Duration age) {
    return is_weeks(age) ? weeks(age) : "day " + whole(std::floor(in_days(age) + guard_days));
}

std::string print(Temperature temperature, Measures measures) {
    if (measures == Measures::us) return whole(std::round(temperature.in_fahrenheit())) + " F";
    return whole(std::round(temperature.in_celsius())) + " C";
}

std::string print(Money money, std::string const& currency) { return number(in_money(money), 2) + ' ' + currency; }

std::string print(Heads heads) { return number(in_birds(heads), 0); }

std::string print(Proportioner const& proportioner) {
    std::string const parts = plain(proportioner.parts);
    return proportioner.added ? "1 part of stock added to " + parts + " of water"
                              : "1 part of stock in " + parts + " in all";
}

std::string percent(double fraction) {
    double const x = 100 * fraction;
    return (std::abs(x) < 10 ? plain(x) : without_trailing_zeros(fixed(x, 1))) + " %";
}

}  // namespace cropful::quantities
