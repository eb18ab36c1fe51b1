#include <algorithm>
#include <cmath>
#include <initializer_list>

#include "cropful/domain/words.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/rations/limits.hpp"
#include "engine/caution_list.hpp"

namespace cropful::engine {

namespace {

constexpr int longest_vitamins = 7;       // days; common practice, no source
constexpr double stock_tolerance = 0.02;  // stock against label rate: the two meanings of 1:128 differ by 0.8 %

void sodium_guides(CautionList& list, domain::Supplement const& supplement, std::vector<Limit> const& limits) {
    auto const sodium_added = sodium(supplement);
    if (!sodium_added) return;
    double const added = in_milligrams_per_litre(*sodium_added);
    auto const over = passed(limits, "sodium_water", added);
    if (over.empty()) return;
    Limit const& lowest = *over.front();
    Limit const& highest = *over.back();
    std::string const adds = supplement.title + " adds " + number(added, 0) + " mg/L sodium to the water";
    if (Limit const* stop = deadly(over)) {
        list.add("sodium-lethal", adds + ". " + rations::do_not_give + " At " + words_of(*stop) + ".",
                 stop->source.text);
        return;
    }
    std::string text = adds + ", above " + lowest.words + " (" + lowest.applies + ", " + lowest.meaning + ")";
    if (over.size() > 1) {
        text += " and above " + highest.words + " (" + highest.applies + ": " + highest.meaning + ")";
    }
    list.add("sodium-water",
             text + ". These are guides for water drunk all the time: keep the course short, then give plain water.",
             lowest.source.text + (over.size() > 1 ? "; " + highest.source.text : ""));
}

void bare_ounces(CautionList& list, domain::Supplement const& supplement, Rate const& rate) {
    if (!rate.says_bare_oz) return;
    list.add("bare-ounces",
             supplement.title + ": \"" + rate.words + "\" was read as ounces by weight (28.35 g). If the " +
                 "product is a liquid its label means fluid ounces (29.57 mL): write fl oz.",
             "NIST Handbook 44, Appendix C");
}

void stock_against_label(CautionList& list, domain::Supplement const& supplement) {
    if (!supplement.stock) return;
    auto const label = label_strength(supplement);
    MassPerVolume const through = *strength(supplement);
    if (!label || std::abs(ratio(through / *label) - 1) <= stock_tolerance) return;
    list.add("stock-off-label",
             supplement.title + ": the stock through the proportioner gives " + number(in_grams_per_litre(through), 3) +
                 " g/L, the label rate " + number(in_grams_per_litre(*label), 3) + " g/L, " +
                 percent(std::abs(ratio(through / *label) - 1)) + " apart. Set one right before dosing.",
             "arithmetic; 1 part of stock ADDED to " + plain(supplement.stock->water_parts) + " parts of water");
}

bool titled(domain::Supplement const& supplement, std::initializer_list<char const*> words) {
    std::string const title = domain::lower(supplement.title);
    return std::any_of(words.begin(), words.end(),
                       [&](char const* word) { return title.find(word) != std::string::npos; });
}

void acid(CautionList& list, domain::Supplement const& supplement) {
    if (!titled(supplement, {"vinegar", "acidif", "citric", "acetic", "formic", "propionic", "lactic acid"})) return;
    list.add("acid-in-metal",
             supplement.title +
                 ": acid takes zinc out of galvanised founts, and zinc poisons birds. Use plastic, glass or stainless "
                 "steel, and never mix it with chlorine: that gives off poisonous gas.",
             "zinc: common practice, no source; chlorine with acid: NJ Poison Center, njpies.org/chlorine");
}

void vitamins(CautionList& list, domain::Supplement const& supplement) {
    if (supplement.days_long <= longest_vitamins || !titled(supplement, {"vitamin"})) return;
    list.add("vitamins-for-weeks",
             supplement.title + " is given for " + std::to_string(supplement.days_long) +
                 " d. Vitamins A and D3 build up beside a complete feed: give it for the few days of its label. The EU "
                 "allows no vitamin D3 in drinking water.",
             "National Research Council (1987), Vitamin Tolerance of Animals, summary (some 10 times the need of A or "
             "D harms); Regulation (EU) 2017/1492; a week: common practice");
}

}  // namespace

std::vector<Caution> mix_cautions(domain::Supplement const& supplement, std::vector<Limit> const& limits) {
    CautionList list;
    sodium_guides(list, supplement, limits);
    if (supplement.rate) bare_ounces(list, supplement, *supplement.rate);
    if (supplement.stock) bare_ounces(list, supplement, supplement.stock->strength);
    stock_against_label(list, supplement);
    acid(list, supplement);
    vitamins(list, supplement);
    return list.all();
}

}  // namespace cropful::engine
