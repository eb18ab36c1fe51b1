#include "reports/mixing_sheet.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/domain/farm.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/reports/words.hpp"

namespace cropful::reports {

namespace {

using namespace quantities;
using blends::BlendAnswer;
using blends::BlendPart;

constexpr double small = 0.01;  // share of the batch below which an amount is stirred in beforehand
constexpr int most_decimals = 3;

/// Decimals that show every multiple of a step.
int decimals_of(double step) {
    int decimals = 0;
    for (double x = step; decimals < most_decimals && std::abs(x - std::round(x)) > 1e-6 * x; x *= 10) ++decimals;
    return decimals;
}

/// Whether a count is a whole number, but for what arithmetic does to it.
bool is_whole(double x) { return std::round(x) >= 1 && std::abs(x - std::round(x)) < 1e-6 * std::max(1.0, x); }

double pounds_of(Mass mass) { return in_kilograms(mass) / kilograms_per_pound; }

/// What a scale with such a step reads in: the farm's own units where the step is a round number of them.
enum class Scale { pounds_and_ounces, pounds, metric };

Scale scale_for(Mass step, Measures measures) {
    double const ounces = 16 * pounds_of(step);
    bool const in_ounces = is_whole(ounces) || is_whole(1 / ounces);  // 1 oz, 2 oz; 1/4 oz, 0.1 oz
    bool const metric = is_whole(1000 * in_grams(step));
    if (measures != Measures::us && (metric || !in_ounces)) return Scale::metric;
    if (in_ounces) return Scale::pounds_and_ounces;
    if (is_whole(100 * pounds_of(step))) return Scale::pounds;
    return metric ? Scale::metric : Scale::pounds_and_ounces;
}

/// With as many decimals as the scale shows, and never fewer than an amount to be weighed needs.
std::string shown_weight(double x, int decimals) {
    std::string text = number(x, std::max(decimals, measured_decimals(x)));
    if (text.find('.') == std::string::npos) return text;
    text.erase(text.find_last_not_of('0') + 1);
    if (text.ends_with('.')) text.pop_back();
    return text;
}

std::string pounds_and_ounces(Mass amount, int of_scale) {
    int const decimals = std::max(of_scale, measured_decimals(16 * pounds_of(amount)));
    double const unit = std::pow(10.0, decimals);
    double const ounces = std::round(16 * pounds_of(amount) * unit) / unit;
    double const pounds = std::floor(ounces / 16 + 1e-9);
    double const rest = std::max(0.0, ounces - 16 * pounds);
    if (pounds == 0) return shown_weight(rest, decimals) + " oz";
    std::string const text = number(pounds, 0) + " lb";
    return rest * unit < 0.5 ? text : text + ' ' + shown_weight(rest, decimals) + " oz";
}

/// What the scale cannot show stays on the sheet.
std::string weight_words(BlendPart const& part, Mass step, Measures measures) {
    bool const none = !(part.amount > kilograms(0));
    return none ? "< " + on_scale(step, step, measures) : on_scale(part.amount, step, measures);
}

/// The sheet: what is stirred in beforehand, then the powders from the largest on, then what is poured.
struct WeighingOrder {
    std::vector<BlendPart> few, powders, liquids;
};

WeighingOrder in_weighing_order(BlendAnswer const& answer) {
    std::vector<BlendPart> parts = answer.parts;
    std::erase_if(parts, [](BlendPart const& part) { return !(part.share > 0); });
    std::stable_sort(parts.begin(), parts.end(), [](auto const& a, auto const& b) { return a.amount > b.amount; });
    WeighingOrder sheet;
    for (BlendPart const& part : parts) {
        bool const is_small = part.amount < answer.batch * small;
        (part.liquid ? sheet.liquids : is_small ? sheet.few : sheet.powders).push_back(part);
    }
    return sheet;
}

/// "line 1", "lines 1 and 2", "lines 1 to 4".
std::string lines(std::size_t count) {
    if (count == 1) return "line 1";
    return std::string("lines 1 ") + (count == 2 ? "and " : "to ") + std::to_string(count);
}

/// How to mix evenly.
std::string mixing_words(BlendAnswer const& answer, WeighingOrder const& sheet, Measures measures) {
    std::string words;
    std::size_t const few = sheet.few.size();
    if (few > 0 && !sheet.powders.empty()) {
        Mass all = kilograms(0);
        for (BlendPart const& part : sheet.few) all += part.amount;
        Mass const carrier = std::min(std::max(answer.batch * small, all * 3.0), sheet.powders.front().amount);
        Mass const steps = answer.scale * std::max(1.0, std::round(ratio(carrier / answer.scale)));
        words = "Stir " + lines(few) + " into about " + on_scale(steps, answer.scale, measures) + " taken from the " +
                sheet.powders.front().title + ", spread that over the rest, and mix until the colour is even.";
    }
    if (!sheet.liquids.empty()) {
        std::vector<std::string> titles;
        for (BlendPart const& part : sheet.liquids) titles.push_back(part.title);
        words += (words.empty() ? "" : " ") + ("Pour in " + join(titles)) + " last, in a thin stream, while mixing.";
    }
    return words;
}

}  // namespace

std::string on_scale(Mass amount, Mass step, Measures measures) {
    bool const whole_steps = is_whole(ratio(amount / step));
    Mass const finest = whole_steps ? step : amount;
    switch (scale_for(step, measures)) {
        case Scale::pounds:
            return shown_weight(pounds_of(amount), decimals_of(pounds_of(finest))) + " lb";
        case Scale::pounds_and_ounces:
            return pounds_and_ounces(amount, decimals_of(16 * pounds_of(finest)));
        default:
            bool const grams = amount < kilograms(1);
            double const unit = grams ? 1000 : 1;
            return shown_weight(in_kilograms(amount) * unit, decimals_of(in_kilograms(finest) * unit)) +
                   (grams ? " g" : " kg");
    }
}

PerWeight per_weight(BlendAnswer const& answer, Measures measures) {
    if (measures == Measures::us) return {kilograms(100 * kilograms_per_pound), "100 lb"};
    if (answer.batch >= kilograms(1000)) return {kilograms(1000), "tonne"};
    return {kilograms(100), "100 kg"};
}

Page mixing_sheet(BlendAnswer const& answer, domain::Farm const& farm) {
    Measures const measures = farm.measures;
    WeighingOrder const sheet = in_weighing_order(answer);
    std::vector<BlendPart> parts = sheet.few;
    parts.insert(parts.end(), sheet.powders.begin(), sheet.powders.end());
    parts.insert(parts.end(), sheet.liquids.begin(), sheet.liquids.end());
    Table table({Align::right, Align::right, Align::right, Align::right, Align::right, Align::left}, 2);
    bool const priced = answer.batch_cost.has_value();
    table.head({"", "weigh", "in all", "share", priced ? farm.currency : "", "ingredient"});
    Mass total = kilograms(0);
    for (std::size_t i = 0; i < parts.size(); ++i) {
        BlendPart const& part = parts[i];
        total += part.amount;
        std::string const cost = priced ? number(in_money(*part.price * part.amount), 2) : "";
        table.add({std::to_string(i + 1), weight_words(part, answer.scale, measures),
                   on_scale(total, answer.scale, measures), number(100 * ratio(part.amount / answer.batch), 2) + " %",
                   cost, part.title});
    }
    Page const page = heading("WEIGH IN THIS ORDER") + table;
    std::string const words = mixing_words(answer, sheet, measures);
    return words.empty() ? page : page + wrap(words, "  ", "  ");
}

}  // namespace cropful::reports
