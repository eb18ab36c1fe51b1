#include "cropful/reports/mix_page.hpp"

#include "cropful/quantities/print.hpp"
#include "cropful/reports/learned_part.hpp"
#include "cropful/reports/plan_parts.hpp"
#include "cropful/reports/water_part.hpp"
#include "cropful/reports/words.hpp"

namespace cropful::reports {

namespace {

using engine::Dose;
using engine::Mix;
using quantities::Measures;
using quantities::number;
using quantities::plain;
using quantities::print;

std::string strength_words(Mix const& mix) {
    std::vector<std::string> parts;
    if (mix.strength) parts.push_back(plain(quantities::in_grams_per_litre(*mix.strength)) + " g of product per L");
    if (mix.sodium)
        parts.push_back(number(quantities::in_milligrams_per_litre(*mix.sodium), 0) + " mg/L of sodium added");
    if (mix.sum && mix.sum->well) parts.push_back("sodium in all " + sodium_words(*mix.sum));
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

Table batches_table(Mix const& mix, Measures measures, std::optional<engine::Moment> const& before) {
    Table table({Align::left, Align::right, Align::left, Align::right}, 4);
    table.head({"mix", "water", "stir in", "pour into each"});
    bool all = true;
    for (engine::Batch const& batch : mix.batches) {
        all = !before || batch.at < *before;
        if (!all) break;
        table.add({chore_words(batch.at, measures), print_measured(batch.dose.water, measures),
                   dose_words(batch.dose, measures), print_measured(batch.each_drinker, measures)});
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
        return print_measured(*dose.stock, measures) + " of stock holding " + print_dose(*dose.by_weight, measures) +
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
    bool const daily = quantities::in_days(mix.batches.front().lasts) > 1 - 1e-9;
    return head + ", mixed fresh " + (daily ? "each day" : "every " + print(mix.batches.front().lasts));
}

std::vector<std::string> course_notes(Mix const& mix, domain::Farm const& farm) {
    std::vector<std::string> notes{"Put only this in the drinkers; filling them up would take more product.",
                                   thrown_away(mix, farm.measures), stock_words(farm.supplements.at(mix.supplement)),
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
