#include "reports/shopping.hpp"

#include "cropful/quantities/print.hpp"
#include "cropful/reports/plan_parts.hpp"
#include "cropful/reports/words.hpp"

namespace cropful::reports {

namespace {

using engine::BeddingPurchase;
using engine::DisinfectantPurchase;
using engine::Purchase;
using engine::ShoppingItem;
using engine::SortCleaning;
using engine::SupplementPurchase;
using quantities::kilograms;
using quantities::Mass;
using quantities::Measures;
using quantities::print;
using quantities::print_bulk;

Mass bought(Purchase const& feed) {
    return feed.bag ? *feed.bag * static_cast<double>(feed.safe_bags.p95) : kilograms(0);
}

/// Why packs cannot be counted.
std::string no_packs_words(domain::Supplement const& supplement) {
    bool const sized = supplement.pack || supplement.pack_volume;
    return sized ? " (state its spoon to count packs)" : " (no pack size stated)";
}

/// By weight where that is known, else by measure.
std::string amount_words(std::optional<Mass> const& weight, std::optional<quantities::Volume> const& volume,
                         domain::Farm const& farm) {
    if (weight) return print_dose(*weight, farm.measures);
    return volume ? print_measured(*volume, farm.measures) : "";
}

std::string count_of(Purchase const& feed, domain::Farm const& farm) {
    if (feed.bag) return plural(feed.safe_bags.p95, bag_noun(farm.feeds.at(feed.key)));
    return feed.short_by() > kilograms(0) ? print(feed.short_by(), farm.measures) : "none";
}

std::string count_of(SupplementPurchase const& bought, domain::Farm const& farm) {
    return bought.packs ? plural(*bought.packs, "pack") : amount_words(bought.by_weight, bought.by_volume, farm);
}

std::string count_of(BeddingPurchase const& one, domain::Farm const& /*farm*/) { return plural(one.bags, "bag"); }

std::string count_of(DisinfectantPurchase const& one, domain::Farm const& farm) {
    return one.packs ? plural(*one.packs, "pack") : print_measured(one.product, farm.measures);
}

/// What it is, with the size it is sold in.
std::string name_of(Purchase const& feed, domain::Farm const& farm) {
    return (feed.title.empty() ? feed.key : feed.title) + (feed.bag ? ", " + print(*feed.bag, farm.measures) : "");
}

std::string name_of(SupplementPurchase const& bought, domain::Farm const& farm) {
    domain::Supplement const& supplement = farm.supplements.at(bought.key);
    std::string words = supplement_title(supplement);
    if (supplement.pack) words += ", " + print_dose(*supplement.pack, farm.measures);
    if (supplement.pack_volume) words += ", " + print_measured(*supplement.pack_volume, farm.measures);
    return words;
}

std::string name_of(BeddingPurchase const& one, domain::Farm const& farm) {
    return "bedding for " + one.brooder + ", " + print_bulk(one.bag, farm.measures);
}

std::string name_of(DisinfectantPurchase const& one, domain::Farm const& farm) {
    auto const& pack = farm.disinfectants.at(one.key).pack;
    return one.title + (pack ? ", " + print_measured(*pack, farm.measures) : "");
}

std::string why_of(Purchase const& feed, domain::Farm const& farm) {
    auto const measures = farm.measures;
    std::string words =
        print(feed.need, measures) + " to be eaten, " + print(feed.band.p95, measures) + " by hungry birds";
    if (feed.stays_behind > kilograms(0)) words += ", " + print(feed.stays_behind, measures) + " stays in hoppers";
    if (feed.in_hoppers > kilograms(0)) words += ", " + print(feed.in_hoppers, measures) + " is in them now";
    if (feed.on_hand > kilograms(0)) words += ", " + print(feed.on_hand, measures) + " on hand";
    if (feed.spare > kilograms(0)) words += ", " + print(feed.spare, measures) + " to spare";
    domain::Feed const& its = farm.feeds.at(feed.key);
    if (!feed.bag && !its.by_weight) words += " (no bag size stated)";
    Mass const over = bought(feed) + feed.on_hand + feed.in_hoppers - feed.stays_behind - feed.need;
    if (feed.bag && feed.safe_bags.p95 == 0) words += "; enough is on hand";
    if (feed.safe_bags.p95 > 0) words += "; usually " + print(over, measures) + " left over";
    if (feed.bags < feed.safe_bags.p95) words += ", and " + plural(feed.bags, bag_noun(its)) + " would do";
    return words;
}

std::string why_of(SupplementPurchase const& bought, domain::Farm const& farm) {
    return amount_words(bought.by_weight, bought.by_volume, farm) + " to be stirred in" +
           (bought.packs ? "" : no_packs_words(farm.supplements.at(bought.key)));
}

std::string why_of(BeddingPurchase const& one, domain::Farm const& farm) {
    auto const measures = farm.measures;
    return print_bulk(one.each, measures) + " each time, " + plural(one.times, "time") + ", " +
           print_bulk(one.total, measures) + " in all";
}

std::string cleaning_words(SortCleaning const& one, Measures measures) {
    std::string const words =
        plural(one.times, "cleaning") + " of " + one.brooder + ", each " + print_dose(one.product, measures);
    bool const undiluted = one.water < one.product * 1e-9;
    return undiluted ? words : words + " into " + print_measured(one.water, measures) + " of water";
}

std::string why_of(DisinfectantPurchase const& one, domain::Farm const& farm) {
    auto const measures = farm.measures;
    std::vector<std::string> cleanings;
    for (SortCleaning const& cleaning : one.cleanings) cleanings.push_back(cleaning_words(cleaning, measures));
    std::string const parts =
        one.water_parts < 1e-9 ? "undiluted" : "1 part to " + quantities::plain(one.water_parts) + " parts of water";
    return parts + "; " + join(cleanings, "; ") + "; " + print_measured(one.product, measures) + " in all" +
           (farm.disinfectants.at(one.key).pack ? "" : " (no pack size stated)");
}

}  // namespace

std::string count_words(ShoppingItem const& item, domain::Farm const& farm) {
    return std::visit([&](auto const* one) { return count_of(*one, farm); }, item.what);
}

std::string name_words(ShoppingItem const& item, domain::Farm const& farm) {
    return std::visit([&](auto const* one) { return name_of(*one, farm); }, item.what);
}

std::string what_words(ShoppingItem const& item, domain::Farm const& farm) {
    return std::visit([&](auto const* one) { return name_of(*one, farm) + ": " + why_of(*one, farm); }, item.what);
}

std::string when_words(ShoppingItem const& item) {
    if (item.last) return "; needed from " + item.first.day() + " to " + item.last->day();
    return "; needed by " + item.first.day();
}

std::string price_words(std::optional<quantities::Money> const& cost, domain::Farm const& farm) {
    return cost ? print(*cost, farm.currency) : "no price";
}

Table shopping_table(std::vector<ShoppingItem> const& items, domain::Farm const& farm, Shopping told) {
    Table table({Align::right, Align::right, Align::left}, 2);
    for (ShoppingItem const& item : items) {
        std::string const words = what_words(item, farm), what = words.substr(0, words.find(": "));
        bool const known = told == Shopping::what && item.packs;
        std::string const when = item.none ? "; enough is on hand" : "; by " + item.first.day();
        table.add(
            {count_words(item, farm), price_words(item.cost, farm), known ? what + when : words + when_words(item)});
    }
    return table;
}

}  // namespace cropful::reports
