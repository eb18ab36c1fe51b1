#include "cropful/reports/buy_text.hpp"

#include "cropful/quantities/print.hpp"
#include "cropful/reports/learned_text.hpp"
#include "cropful/reports/mix_text.hpp"
#include "cropful/reports/page.hpp"
#include "cropful/reports/words.hpp"
#include "reports/readying_text.hpp"

namespace cropful::reports {

namespace {

using engine::Plan;
using engine::Purchase;
using engine::SupplementPurchase;
using quantities::kilograms;
using quantities::Mass;
using quantities::print;

Mass bought(Purchase const& feed) {
    return feed.bag ? *feed.bag * static_cast<double>(feed.safe_bags.p95) : kilograms(0);
}

void add_feed(Table& table, Purchase const& feed, Plan const& plan) {
    std::string const needed = "; needed from " + feed.first_needed.day() + " to " + feed.last_needed.day();
    table.add({count_words(feed, plan), price_words(feed.safe_cost, plan.farm), feed_words(feed, plan) + needed});
}

/// Why packs cannot be counted.
std::string no_packs_words(domain::Supplement const& supplement) {
    bool const sized = supplement.pack || supplement.pack_volume;
    return sized ? " (state its spoon to count packs)" : " (no pack size stated)";
}

/// By weight where that is known, else by measure.
std::string stirred_in(SupplementPurchase const& bought, Plan const& plan) {
    if (bought.by_weight) return print_small(*bought.by_weight, plan.farm.measures);
    return bought.by_volume ? measure_words(*bought.by_volume, plan.farm.measures) : "";
}

void add_supplement(Table& table, SupplementPurchase const& bought, Plan const& plan) {
    table.add({count_words(bought, plan), price_words(bought.cost, plan.farm), supplement_words(bought, plan)});
}

/// Whether packs of something else stand beside the bags of feed.
bool readies(Plan const& plan) { return !plan.readying.bedding.empty() || !plan.readying.disinfectants.empty(); }

bool nothing_priced(Plan const& plan) { return !plan.cost_is_whole && plan.safe_cost == quantities::money(0); }

}  // namespace

std::string total_count(Plan const& plan) { return readies(plan) ? "" : plural(plan.safe_bags, "bag"); }

std::string total_words(Plan const& plan) {
    std::string const words =
        plan.cost_is_whole || nothing_priced(plan) ? "in all" : "in all, without what has no price";
    if (!readies(plan)) return words;
    int bedding = 0, disinfectant = 0;
    for (engine::BeddingPurchase const& one : plan.readying.bedding) bedding += one.bags;
    for (engine::DisinfectantPurchase const& one : plan.readying.disinfectants) disinfectant += one.packs.value_or(0);
    std::vector<std::string> packs{plural(plan.safe_bags, "bag") + " of feed"};
    if (bedding > 0) packs.push_back(plural(bedding, "bag") + " of bedding");
    if (disinfectant > 0) packs.push_back(plural(disinfectant, "pack") + " of disinfectant");
    return words + ": " + join(packs);
}

std::string count_words(Purchase const& feed, Plan const& plan) {
    if (feed.bag) return plural(feed.safe_bags.p95, "bag");
    auto const more = feed.band.p95 + feed.spare - feed.on_hand;
    return more > kilograms(0) ? print(more, plan.farm.measures) : "none";
}

std::string count_words(SupplementPurchase const& bought, Plan const& plan) {
    return bought.packs ? plural(*bought.packs, "pack") : stirred_in(bought, plan);
}

std::string feed_words(Purchase const& feed, Plan const& plan) {
    auto const measures = plan.farm.measures;
    std::string words = feed.title.empty() ? feed.key : feed.title;
    if (feed.bag) words += ", " + print(*feed.bag, measures);
    words +=
        ": " + print(feed.band.p50, measures) + " to be eaten, " + print(feed.band.p95, measures) + " by hungry birds";
    if (feed.on_hand > kilograms(0)) words += ", " + print(feed.on_hand, measures) + " on hand";
    if (feed.spare > kilograms(0)) words += ", " + print(feed.spare, measures) + " to spare";
    if (!feed.bag) words += " (no bag size stated)";
    Mass const over = bought(feed) + feed.on_hand - feed.band.p50;
    if (feed.bag && feed.safe_bags.p95 == 0) words += "; enough is on hand";
    if (feed.safe_bags.p95 > 0) words += "; usually " + print(over, measures) + " left over";
    if (feed.safe_bags.p50 < feed.safe_bags.p95) words += ", and " + plural(feed.safe_bags.p50, "bag") + " would do";
    return words;
}

std::string supplement_words(SupplementPurchase const& bought, Plan const& plan) {
    auto const measures = plan.farm.measures;
    domain::Supplement const& supplement = plan.farm.supplements.at(bought.key);
    std::string words = supplement_title(supplement);
    if (supplement.pack) words += ", " + print_small(*supplement.pack, measures);
    if (supplement.pack_volume) words += ", " + print(*supplement.pack_volume, measures);
    words += ": " + stirred_in(bought, plan) + " to be stirred in";
    return words + (bought.packs ? "" : no_packs_words(supplement));
}

std::string purchases_text(Plan const& plan) {
    Table table({Align::right, Align::right, Align::left}, 2);
    for (Purchase const& feed : plan.feeds) add_feed(table, feed, plan);
    for (SupplementPurchase const& supplement : plan.supplements) add_supplement(table, supplement, plan);
    add_readying(table, plan.readying, plan.farm);
    std::string const heading = "\nBUY, to be sure 19 times in 20\n";
    if (nothing_priced(plan) && plan.safe_bags == 0) return heading + table.text();
    table.add(
        {total_count(plan), nothing_priced(plan) ? "" : print(plan.safe_cost, plan.farm.currency), total_words(plan)});
    return heading + table.text();
}

std::string buy_text(Plan const& plan, Sources sources) {
    std::string const learned = learned_text(plan.learned, plan.farm.measures);
    std::string text = page_title(plan) + purchases_text(plan) + (learned.empty() ? "" : "\n" + learned) + "\nFOR\n";
    for (engine::HatchPlan const& hatch : plan.hatches) {
        text += wrap(hatch_words(hatch) + "; fed from " + ages_words(first_age(hatch), last_age(hatch)), "  ", "    ");
    }
    return text + notes_text(plan, sources);
}

}  // namespace cropful::reports
