#include <algorithm>
#include <cmath>
#include <initializer_list>

#include "cropful/domain/words.hpp"
#include "cropful/quantities/print.hpp"
#include "engine/caution_list.hpp"
#include "engine/instant.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

constexpr Duration longest_vitamins = days(7);  // common practice, no source
constexpr double stock_tolerance = 0.02;        // stock against label rate: the two meanings of 1:128 differ by 0.8 %

/// Of rate and stock once: they are of one product.
void bare_ounces(CautionList& list, domain::Supplement const& supplement) {
    auto const says_it = [](std::optional<Rate> const& rate) { return rate && rate->says_bare_oz; };
    bool const by_rate = says_it(supplement.rate);
    if (!by_rate && !(supplement.stock && says_it(supplement.stock->strength))) return;
    list.add({.id = "bare-ounces",
              .with = {{"supplement", supplement.title},
                       {"rate", by_rate ? supplement.rate->words : supplement.stock->strength->words}},
              .source = "NIST Handbook 44, Appendix C"});
}

void stock_against_label(CautionList& list, domain::Supplement const& supplement) {
    if (!supplement.stock || !supplement.rate) return;
    std::string const source = "arithmetic; " + print(supplement.stock->proportioner);
    auto const label = label_strength(supplement), through = strength(supplement);
    if (label && through) {
        double const apart = std::abs(ratio(*through / *label) - 1);
        if (apart <= stock_tolerance) return;
        return list.add({.id = "stock-off-label",
                         .with = {{"form", "by weight"},
                                  {"supplement", supplement.title},
                                  {"through", *through},
                                  {"label", *label},
                                  {"apart", Share{apart}}},
                         .source = source});
    }
    auto const measure = supplement.rate->by_measure(), drunk = domain::drunk_rate(supplement).by_measure();
    if (!measure || !drunk || std::abs(*drunk / *measure - 1) <= stock_tolerance) return;
    list.add({.id = "stock-off-label",
              .with = {{"form", "by measure"},
                       {"supplement", supplement.title},
                       {"through", 1000 * *drunk},
                       {"label", 1000 * *measure},
                       {"apart", Share{std::abs(*drunk / *measure - 1)}}},
              .source = source});
}

bool titled(domain::Supplement const& supplement, std::initializer_list<char const*> words) {
    std::string const title = domain::lower(supplement.title);
    return std::any_of(words.begin(), words.end(),
                       [&](char const* word) { return title.find(word) != std::string::npos; });
}

void acid(CautionList& list, domain::Supplement const& supplement) {
    if (!titled(supplement, {"vinegar", "acidif", "citric", "acetic", "formic", "propionic", "lactic acid"})) return;
    list.add({.id = "acid-in-metal",
              .with = {{"supplement", supplement.title}},
              .source = "zinc: common practice, no source; chlorine with acid: NJ Poison Center, njpies.org/chlorine"});
}

void vitamins(CautionList& list, domain::Supplement const& supplement, Duration given) {
    if (given <= longest_vitamins + instant || !titled(supplement, {"vitamin"})) return;
    list.add({.id = "vitamins-for-weeks",
              .with = {{"supplement", supplement.title}, {"days", std::round(in_days(given))}},
              .source =
                  "National Research Council (1987), Vitamin Tolerance of Animals, summary (some 10 times the need "
                  "of A or D harms); Regulation (EU) 2017/1492; a week: common practice"});
}

}  // namespace

Caution by_weight_caution(domain::Supplement const& supplement) {
    return {.id = "dose-by-weight",
            .with = {{"supplement", supplement.title}},
            .source = "a product summary of amprolium for drinking water (United Kingdom)"};
}

std::vector<Caution> mix_cautions(domain::Supplement const& supplement, Duration given) {
    CautionList list;
    bare_ounces(list, supplement);
    stock_against_label(list, supplement);
    acid(list, supplement);
    vitamins(list, supplement, given);
    return list.all();
}

}  // namespace cropful::engine
