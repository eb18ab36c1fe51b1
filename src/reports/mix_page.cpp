#include "cropful/reports/mix_page.hpp"

#include "cropful/quantities/print.hpp"
#include "cropful/reports/learned_part.hpp"
#include "cropful/reports/plan_parts.hpp"
#include "cropful/reports/words.hpp"

namespace cropful::reports {

namespace {

using engine::Dose;
using engine::Mix;
using quantities::Measures;
using quantities::number;
using quantities::plain;
using quantities::print;

/// Said when a batch by measure is too small for a spoon.
std::string too_small_for_spoons(Mix const& mix) {
    for (engine::Batch const& batch : mix.batches) {
        if (batch.dose.by_volume && !batch.dose.stock && !quantities::spoon_measures(*batch.dose.by_volume)) {
            return "A spoon is too coarse for some of these: weigh it or use a syringe, or mix more water at the same "
                   "rate and throw the rest away.";
        }
    }
    return "";
}

std::string strength_words(Mix const& mix) {
    std::vector<std::string> parts;
    if (mix.strength) parts.push_back(plain(quantities::in_grams_per_litre(*mix.strength)) + " g of product per L");
    if (mix.sodium)
        parts.push_back(number(quantities::in_milligrams_per_litre(*mix.sodium), 0) + " mg/L of sodium added");
    return join(parts);
}

/// How a proportioner's ratio is meant, and how strong its stock is.
std::string stock_words(domain::Supplement const& supplement) {
    if (!supplement.stock) return "";
    return "stock: " + plain(quantities::in_grams_per_litre(*supplement.stock->strength.by_weight())) +
           " g of product per L; the proportioner adds 1 part of it to " + plain(supplement.stock->water_parts) +
           " parts of water";
}

Page indented(std::string const& words) { return words.empty() ? Page() : wrap(words, "    ", "    "); }

Table batches_table(Mix const& mix, int drinkers, Measures measures, std::optional<engine::Moment> const& before) {
    Table table({Align::left, Align::left, Align::right, Align::right, Align::left}, 4);
    table.head({"mix", "age", "water", "each drinker", "stir in"});
    bool all = true;
    for (engine::Batch const& batch : mix.batches) {
        all = !before || batch.at < *before;
        if (!all) break;
        table.add({moment_words(batch.at, measures), quantities::print_age(batch.age),
                   print_measured(batch.dose.water, measures),
                   print_measured(batch.dose.water / static_cast<double>(drinkers), measures),
                   dose_words(batch.dose, measures)});
    }
    table.add({all ? "in all" : "whole course", "", print_measured(mix.total.water, measures), "",
               dose_words(mix.total, measures)});
    return table;
}

/// What is mixed beyond what is drunk, said only when there is any.
std::string thrown_away(Mix const& mix, Measures measures) {
    auto drunk = quantities::litres(0);
    for (engine::Batch const& batch : mix.batches) drunk += batch.drunk;
    auto const rest = mix.total.water - drunk;
    if (rest < mix.total.water * 0.01) return "";
    return "the troughs need more than the birds drink: " + print(rest, measures) + " of this is thrown away";
}

}  // namespace

std::string dose_words(Dose const& dose, Measures measures) {
    if (dose.stock) {
        return print_measured(*dose.stock, measures) + " of stock holding " + print_dose(*dose.by_weight, measures) +
               " of product";
    }
    if (!dose.by_volume) return print_dose(*dose.by_weight, measures);
    std::string const measure = print_dose(*dose.by_volume, measures);
    return dose.by_weight ? print_dose(*dose.by_weight, measures) + " = " + measure : measure;
}

std::string course_words(engine::HatchPlan const& hatch, domain::Farm const& farm) {
    Mix const& mix = *hatch.mix;
    domain::Supplement const& supplement = farm.supplements.at(mix.supplement);
    std::string const head = supplement_title(supplement) + ", " + mix.words;
    if (mix.batches.empty()) {
        return head + ": nothing to mix in this time; the course runs from " + quantities::print_age(supplement.from) +
               " for " + plural(supplement.days_long, "day");
    }
    bool const daily = quantities::in_days(mix.batches.front().lasts) > 1 - 1e-9;
    return head + ", mixed fresh " + (daily ? "each day" : "every " + print(mix.batches.front().lasts));
}

std::vector<std::string> course_notes(engine::HatchPlan const& hatch, domain::Farm const& farm) {
    Mix const& mix = *hatch.mix;
    std::vector<std::string> notes{"Put only this in the drinkers; filling them up would take more product.",
                                   too_small_for_spoons(mix), thrown_away(mix, farm.measures),
                                   stock_words(farm.supplements.at(mix.supplement)), strength_words(mix)};
    std::erase(notes, "");
    return notes;
}

Page course_part(engine::HatchPlan const& hatch, domain::Farm const& farm, std::optional<engine::Moment> before) {
    if (!hatch.mix) return {};
    auto const& batches = hatch.mix->batches;
    bool const later = before && !batches.empty() && batches.front().at >= *before;
    std::string const from = later ? "; from " + batches.front().at.day() + " on" : "";
    Page page = wrap(course_words(hatch, farm) + from, "  " + strong("STIR") + "  ", "        ");
    if (batches.empty() || later) return page;
    page += batches_table(*hatch.mix, hatch.hatch.drinkers, farm.measures, before);
    for (std::string const& note : course_notes(hatch, farm)) page += indented(note);
    return page;
}

Page mix_page(engine::Plan const& plan, Sources sources) {
    std::vector<Page> parts;
    for (engine::HatchPlan const& hatch : plan.hatches) {
        if (hatch.mix) parts.push_back(wrap(hatch_words(hatch), "", "  ") + course_part(hatch, plan.farm));
    }
    Page const learned = learned_part(plan.learned, plan.farm.measures);
    if (!learned.empty()) parts.push_back(learned);
    return farm_and_parts(plan.farm, parts) + notes_part(plan, sources);
}

Page plain_mix_page(Mix const& mix, domain::Supplement const& supplement, std::vector<engine::Caution> const& cautions,
                    Measures measures, Sources sources) {
    std::string const head = "Into " + print_measured(mix.total.water, measures) + " of water stir " +
                             dose_words(mix.total, measures) + ", at " + mix.words;
    return wrap(head) + indented(stock_words(supplement)) + indented(strength_words(mix)) +
           cautions_part(cautions, measures, sources);
}

}  // namespace cropful::reports
