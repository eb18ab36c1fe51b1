#include "cropful/quantities/print.hpp"
#include "cropful/reports/words.hpp"
#include "reports/shopping.hpp"

namespace cropful::reports {

namespace {

using engine::BeddingPurchase;
using engine::DisinfectantPurchase;
using engine::SortCleaning;
using quantities::Measures;
using quantities::print;
using quantities::print_bulk;

std::string bedding_words(BeddingPurchase const& one, Measures measures) {
    return "bedding for " + one.brooder + ", " + print_bulk(one.bag, measures) + ": " + print_bulk(one.each, measures) +
           " each time, " + plural(one.times, "time") + ", " + print_bulk(one.total, measures) + " in all";
}

std::string cleaning_words(SortCleaning const& one, Measures measures) {
    std::string const words =
        plural(one.times, "cleaning") + " of " + one.brooder + ", each " + print_dose(one.product, measures);
    bool const undiluted = one.water < one.product * 1e-9;
    return undiluted ? words : words + " into " + print_measured(one.water, measures) + " of water";
}

std::string disinfectant_words(DisinfectantPurchase const& one, domain::Farm const& farm) {
    auto const measures = farm.measures;
    auto const& pack = farm.disinfectants.at(one.key).pack;
    std::vector<std::string> cleanings;
    for (SortCleaning const& cleaning : one.cleanings) cleanings.push_back(cleaning_words(cleaning, measures));
    std::string const parts =
        one.water_parts < 1e-9 ? "undiluted" : "1 part to " + quantities::plain(one.water_parts) + " parts of water";
    return one.title + (pack ? ", " + print_measured(*pack, measures) : "") + ": " + parts + "; " +
           join(cleanings, "; ") + "; " + print_measured(one.product, measures) + " in all" +
           (pack ? "" : " (no pack size stated)");
}

}  // namespace

std::string price_words(std::optional<quantities::Money> const& cost, domain::Farm const& farm) {
    return cost ? print(*cost, farm.currency) : "no price";
}

std::vector<ShoppingRow> readying_rows(engine::Readying const& readying, domain::Farm const& farm) {
    std::vector<ShoppingRow> rows;
    for (BeddingPurchase const& one : readying.bedding) {
        rows.push_back({"bedding",
                        one.brooder,
                        "bedding for " + one.brooder,
                        plural(one.bags, "bag"),
                        price_words(one.cost, farm),
                        bedding_words(one, farm.measures),
                        one.first,
                        {},
                        one.bags == 0});
    }
    for (DisinfectantPurchase const& one : readying.disinfectants) {
        rows.push_back({"disinfectant",
                        one.key,
                        one.title,
                        one.packs ? plural(*one.packs, "pack") : print_measured(one.product, farm.measures),
                        price_words(one.cost, farm),
                        disinfectant_words(one, farm),
                        one.first,
                        {},
                        false});
    }
    return rows;
}

}  // namespace cropful::reports
