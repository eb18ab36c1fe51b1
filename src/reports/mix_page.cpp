#include "cropful/reports/mix_page.hpp"

#include "cropful/quantities/print.hpp"
#include "cropful/reports/learned_part.hpp"
#include "cropful/reports/plan_parts.hpp"
#include "cropful/reports/water_part.hpp"
#include "cropful/reports/words.hpp"
#include "reports/caution_words.hpp"

namespace cropful::reports {

using engine::Dose;
using engine::Mix;
using quantities::Measures;
using quantities::number;
using quantities::plain;
using quantities::print;

std::string product_words(Dose const& dose, Measures measures) {
    return dose.by_weight ? print_dose(*dose.by_weight, measures) : print_dose(*dose.by_volume, measures);
}

namespace {

std::string strength_words(Mix const& mix) {
    std::vector<std::string> parts;
    if (mix.strength) parts.push_back(plain(quantities::in_grams_per_litre(*mix.strength)) + " g of product per L");
    if (mix.sodium)
        parts.push_back(number(quantities::in_milligrams_per_litre(*mix.sodium), 0) + " mg/L of sodium added");
    if (mix.sum && mix.sum->well) parts.push_back("sodium in all " + sodium_words(*mix.sum));
    return join(parts);
}

/// How a proportioner's ratio is meant, how strong its stock is, and what a full tank takes.
std::string stock_words(domain::Supplement const& supplement, Measures measures) {
    if (!supplement.stock) return "";
    domain::Stock const& stock = *supplement.stock;
    quantities::Rate const rate = domain::stock_rate(supplement);
    std::string words = "stock: ";
    words += rate.by_weight() ? plain(quantities::in_grams_per_litre(*rate.by_weight())) + " g"
                              : plain(1000 * *rate.by_measure()) + " mL";
    words += " of product per L, topped up with water; the proportioner gives " + print(stock.proportioner);
    if (!stock.tank) return words;
    auto const drunk = *stock.tank * (1 / stock.proportioner.share());
    auto const full = engine::dose(supplement, drunk);
    return words + ". A full tank is " + print_measured(*stock.tank, measures) + " holding " +
           product_words(full, measures) + " of product, and serves " + print_measured(drunk, measures) + " of water";
}

Page indented(std::string const& words) { return words.empty() ? Page() : wrap(words, "    ", "    "); }

Table batches_table(Mix const& mix, Measures measures, std::optional<engine::Moment> const& before) {
    bool const line = mix.total.stock.has_value();
    Table table({Align::left, Align::right, Align::left, Align::right}, 4);
    if (line) {
        table.head({"have ready", "water", "through the proportioner", ""});
    } else {
        table.head({"mix", "water", "stir in", "pour into each"});
    }
    bool all = true;
    for (engine::Batch const& batch : mix.batches) {
        all = !before || batch.at < *before;
        if (!all) break;
        table.add({chore_words(batch.at, measures), print_measured(batch.dose.water, measures),
                   dose_words(batch.dose, measures), line ? "" : print_measured(batch.each_drinker, measures)});
    }
    table.add({all ? "in all" : "whole course", print_measured(mix.total.water, measures),
               dose_words(mix.total, measures), ""});
    return table;
}

/// What is mixed so that it can be measured, and not poured.
std::string thrown_away(Mix const& mix, Measures measures) {
    auto thrown = quantities::litres(0);
    for (engine::Batch const& batch : mix.batches) thrown += batch.thrown;
    if (thrown < mix.total.water * 0.01) return "";
    return print(thrown, measures) + " of it is thrown away: the batches are as small as can be measured";
}

}  // namespace

std::string dose_words(Dose const& dose, Measures measures) {
    if (dose.stock) {
        return print_measured(*dose.stock, measures) + " of stock holding " + product_words(dose, measures) +
               " of product";
    }
    if (!dose.by_volume) return print_dose(*dose.by_weight, measures);
    std::string const measure = print_dose(*dose.by_volume, measures);
    if (!dose.by_weight) return measure;
    auto const spoons = measures == Measures::us ? quantities::in_spoons(*dose.by_volume) : std::nullopt;
    return print_dose(*dose.by_weight, measures) + " = " + spoons.value_or(measure);
}

std::string course_words(Mix const& mix, domain::Farm const& farm) {
    std::string const head = supplement_title(farm.supplements.at(mix.supplement)) + ", " + mix.words;
    if (mix.batches.empty()) return head;
    if (mix.total.stock) return head + ", through the proportioner";
    bool const daily = quantities::in_days(mix.batches.front().lasts) > 1 - 1e-9;
    return head + ", mixed fresh " + (daily ? "each day" : "every " + print(mix.batches.front().lasts));
}

std::vector<std::string> course_notes(Mix const& mix, domain::Farm const& farm) {
    bool const line = mix.total.stock.has_value();
    bool const medicine = !farm.supplements.at(mix.supplement).drug.empty();
    std::vector<std::string> notes{
        medicine ? "Reckoned from the rate as stated, no advice to dose. " + std::string(deferring) : "",
        line ? "" : "Put only this in the drinkers; filling them up would take more product.",
        thrown_away(mix, farm.measures), stock_words(farm.supplements.at(mix.supplement), farm.measures),
        strength_words(mix)};
    std::erase(notes, "");
    return notes;
}

namespace {

Page one_course(Mix const& mix, domain::Farm const& farm, std::optional<engine::Moment> before) {
    bool const later = before && mix.batches.front().at >= *before;
    std::string const from = "; from " + mix.batches.front().at.day() + " on";
    if (later) return wrap(course_words(mix, farm) + from, "  " + strong("STIR") + "  ", "        ");
    Page page = wrap(course_words(mix, farm), "  " + strong("STIR") + "  ", "        ");
    page += batches_table(mix, farm.measures, before);
    for (std::string const& note : course_notes(mix, farm)) page += indented(note);
    return page;
}

}  // namespace

Page course_part(engine::HatchPlan const& hatch, domain::Farm const& farm, std::optional<engine::Moment> before) {
    Page page;
    for (Mix const& mix : hatch.mixes) {
        if (!mix.batches.empty()) page += one_course(mix, farm, before);
    }
    return page;
}

Page mix_page(engine::Plan const& plan, Sources sources) {
    std::vector<Page> parts;
    for (engine::HatchPlan const& hatch : plan.hatches) {
        if (hatch.mix() && !hatch.mix()->batches.empty())
            parts.push_back(wrap(hatch_words(hatch), "", "  ") + course_part(hatch, plan.farm));
    }
    if (parts.empty()) parts.push_back(wrap("Nothing is stirred into the water in this time."));
    for (engine::StockLine const& line : plan.stocks) {
        Page const stock = stock_part(plan, line);
        if (!stock.empty()) parts.push_back(stock);
    }
    Page const learned = learned_part(plan.learned, plan.farm.measures);
    if (!learned.empty()) parts.push_back(learned);
    return farm_and_parts(plan.farm, parts) + notes_part(plan, sources);
}

Page plain_mix_page(Mix const& mix, domain::Supplement const& supplement, std::vector<engine::Caution> const& cautions,
                    Measures measures, Sources sources) {
    std::string const water = print_measured(mix.total.water, measures);
    std::string const head =
        mix.total.stock ? water + " of water through the proportioner take " : "Into " + water + " of water stir ";
    return wrap(head + dose_words(mix.total, measures) + ", at " + mix.words) +
           indented(stock_words(supplement, measures)) + indented(strength_words(mix)) +
           cautions_part(cautions, measures, sources);
}

}  // namespace cropful::reports
