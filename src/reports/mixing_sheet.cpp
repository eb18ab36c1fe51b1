#include "reports/mixing_sheet.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/domain/farm.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/reports/words.hpp"

namespace cropful::reports {

namespace {

using namespace quantities;
using engine::BlendAnswer;
using engine::BlendPart;

constexpr double small = 0.01;  // share of the batch below which an amount is stirred in first
constexpr double ounces_per_kilogram = 16 / kilograms_per_pound;
constexpr int most_decimals = 3;

/// Decimals that show every multiple of a step.
int decimals_of(double step) {
    int decimals = 0;
    for (double x = step; decimals < most_decimals && std::abs(x - std::round(x)) > 1e-6 * x; x *= 10) ++decimals;
    return decimals;
}

std::string shown(double x, int decimals) {
    std::string text = number(x, decimals);
    if (text.find('.') == std::string::npos) return text;
    text.erase(text.find_last_not_of('0') + 1);
    if (text.ends_with('.')) text.pop_back();
    return text;
}

std::vector<BlendPart> largest_first(std::vector<BlendPart> parts) {
    std::erase_if(parts, [](BlendPart const& part) { return !(part.amount > kilograms(0)); });
    std::stable_sort(parts.begin(), parts.end(), [](auto const& a, auto const& b) { return a.amount > b.amount; });
    return parts;
}

/// "First stir Salt 5 oz and ... into about 2 lb of the Corn"; empty without small amounts.
std::string premix_words(BlendAnswer const& answer, std::vector<BlendPart> const& parts, Measures measures) {
    std::vector<std::string> few;
    Mass all = kilograms(0);
    for (BlendPart const& part : parts) {
        if (part.amount >= answer.batch * small) continue;
        few.push_back(part.title);
        all += part.amount;
    }
    if (few.empty() || parts.front().amount < answer.batch * small) return "";
    Mass const carrier = std::max(answer.batch * small, all * 3.0);
    return "Weigh the small amounts first (" + join(few) + ") and stir them into about " + print(carrier, measures) +
           " taken from the " + parts.front().title + ". Spread that over the rest and mix until the colour is even.";
}

}  // namespace

std::string on_scale(Mass amount, Mass step, Measures measures) {
    if (measures != Measures::us) {
        bool const grams = amount < kilograms(1);
        double const unit = grams ? 1000 : 1;
        return shown(in_kilograms(amount) * unit, decimals_of(in_kilograms(step) * unit)) + (grams ? " g" : " kg");
    }
    int const decimals = decimals_of(in_kilograms(step) * ounces_per_kilogram);
    double const unit = std::pow(10.0, decimals);
    double const ounces = std::round(in_kilograms(amount) * ounces_per_kilogram * unit) / unit;
    double const pounds = std::floor(ounces / 16 + 1e-9);
    double const rest = std::max(0.0, ounces - 16 * pounds);
    if (pounds == 0) return shown(rest, decimals) + " oz";
    std::string const text = number(pounds, 0) + " lb";
    return rest * unit < 0.5 ? text : text + ' ' + shown(rest, decimals) + " oz";
}

PerWeight per_weight(BlendAnswer const& answer, Measures measures) {
    if (measures == Measures::us) return {kilograms(100 * kilograms_per_pound), "100 lb"};
    if (answer.batch >= kilograms(1000)) return {kilograms(1000), "tonne"};
    return {kilograms(100), "100 kg"};
}

std::string mixing_sheet(BlendAnswer const& answer, domain::Farm const& farm) {
    Measures const measures = farm.measures;
    auto const parts = largest_first(answer.parts);
    Table table({Align::right, Align::right, Align::right, Align::right, Align::right, Align::left}, 2);
    bool const priced = answer.batch_cost.has_value();
    table.add({"", "weigh", "in all", "share", priced ? farm.currency : "", "ingredient"});
    Mass total = kilograms(0);
    for (std::size_t i = 0; i < parts.size(); ++i) {
        BlendPart const& part = parts[i];
        total += part.amount;
        std::string const cost = priced ? number(in_money(*part.price * part.amount), 2) : "";
        table.add({std::to_string(i + 1), on_scale(part.amount, answer.scale, measures),
                   on_scale(total, answer.scale, measures), number(100 * ratio(part.amount / answer.batch), 2) + " %",
                   cost, part.title});
    }
    std::string text = "WEIGH IN THIS ORDER\n" + table.text();
    std::string const premix = premix_words(answer, parts, measures);
    return premix.empty() ? text : text + wrap(premix, "  ", "  ");
}

}  // namespace cropful::reports
