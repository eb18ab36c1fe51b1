#include <cmath>

#include "cropful/quantities/print.hpp"
#include "engine/caution_list.hpp"

namespace cropful::engine {

namespace {

constexpr double stock_tolerance = 0.02;  // stock against label rate: the two meanings of 1:128 differ by 0.8 %

void sodium_guides(CautionList& list, domain::Supplement const& supplement, std::vector<Limit> const& limits) {
    auto const sodium_added = sodium(supplement);
    if (!sodium_added) return;
    double const added = in_milligrams_per_litre(*sodium_added);
    Limit const* lowest = nullptr;
    Limit const* highest = nullptr;
    for (Limit const& limit : limits) {
        if (limit.key != "sodium_water" || added <= limit.level) continue;
        if (!lowest) lowest = &limit;
        highest = &limit;
    }
    if (!lowest) return;
    std::string text = supplement.title + " adds " + number(added, 0) + " mg/L sodium to the water, above " +
                       lowest->words + " (" + lowest->applies + ", " + lowest->meaning + ")";
    if (highest != lowest) {
        text += " and above " + highest->words + " (" + highest->applies + ": " + highest->meaning + ")";
    }
    list.add(text + ". These are guides for water drunk all the time: keep the course short, then give plain water.",
             lowest->source.text + (highest != lowest ? "; " + highest->source.text : ""));
}

void bare_ounces(CautionList& list, domain::Supplement const& supplement, Rate const& rate) {
    if (!rate.says_bare_oz) return;
    list.add(supplement.title + ": \"" + rate.words + "\" was read as ounces by weight (28.35 g). If the " +
                 "product is a liquid its label means fluid ounces (29.57 mL): write fl oz.",
             "NIST Handbook 44, Appendix C");
}

void stock_against_label(CautionList& list, domain::Supplement const& supplement) {
    if (!supplement.stock) return;
    auto const label = label_strength(supplement);
    MassPerVolume const through = *strength(supplement);
    if (!label || std::abs(ratio(through / *label) - 1) <= stock_tolerance) return;
    list.add(supplement.title + ": the stock through the proportioner gives " + number(in_grams_per_litre(through), 3) +
                 " g/L, the label rate " + number(in_grams_per_litre(*label), 3) + " g/L, " +
                 percent(std::abs(ratio(through / *label) - 1)) + " apart. Set one right before dosing.",
             "arithmetic; 1 part of stock ADDED to " + plain(supplement.stock->water_parts) + " parts of water");
}

}  // namespace

std::vector<Caution> mix_cautions(domain::Supplement const& supplement, std::vector<Limit> const& limits) {
    CautionList list;
    sodium_guides(list, supplement, limits);
    if (supplement.rate) bare_ounces(list, supplement, *supplement.rate);
    if (supplement.stock) bare_ounces(list, supplement, supplement.stock->strength);
    stock_against_label(list, supplement);
    return list.all();
}

}  // namespace cropful::engine
