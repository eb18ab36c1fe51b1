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
    return words + "; needed from " + feed.first_needed.day() + " to " + feed.last_needed.day();
}

void add_feed(Table& table, Purchase const& feed, Plan const& plan) {
    std::string count = plural(feed.safe_bags.p95, "bag");
    if (!feed.bag) {
        auto const more = feed.band.p95 + feed.spare - feed.on_hand;
        count = more > kilograms(0) ? print(more, plan.farm.measures) : "none";
    }
    table.add({count, price_words(feed.safe_cost, plan.farm), feed_words(feed, plan)});
}

/// Why packs cannot be counted.
std::string no_packs_words(domain::Supplement const& supplement) {
    bool const sized = supplement.pack || supplement.pack_volume;
    return sized ? " (state its spoon to count packs)" : " (no pack size stated)";
}

void add_supplement(Table& table, SupplementPurchase const& bought, Plan const& plan) {
    auto const measures = plan.farm.measures;
    domain::Supplement const& supplement = plan.farm.supplements.at(bought.key);
    std::string words = supplement_title(supplement);
    if (supplement.pack) words += ", " + print_small(*supplement.pack, measures);
    if (supplement.pack_volume) words += ", " + print(*supplement.pack_volume, measures);
    std::string amount;
    if (bought.by_weight) {
        amount = print_small(*bought.by_weight, measures);
    } else if (bought.by_volume) {
        amount = measure_words(*bought.by_volume, measures);
    }
    table.add({bought.packs ? plural(*bought.packs, "pack") : amount, price_words(bought.cost, plan.farm),
               words + ": " + amount + " to be stirred in" + (bought.packs ? "" : no_packs_words(supplement))});
}

/// Whether packs of something else stand beside the bags of feed.
bool readies(Plan const& plan) { return !plan.readying.bedding.empty() || !plan.readying.disinfectants.empty(); }

/// "in all"; where other things stand above, each sort of pack by its name.
std::string total_words(Plan const& plan, bool whole) {
    std::string const words = whole ? "in all" : "in all, without what has no price";
    if (!readies(plan)) return words;
    int bedding = 0, disinfectant = 0;
    for (engine::BeddingPurchase const& one : plan.readying.bedding) bedding += one.bags;
    for (engine::DisinfectantPurchase const& one : plan.readying.disinfectants) disinfectant += one.packs.value_or(0);
    std::vector<std::string> packs{plural(plan.safe_bags, "bag") + " of feed"};
    if (bedding > 0) packs.push_back(plural(bedding, "bag") + " of bedding");
    if (disinfectant > 0) packs.push_back(plural(disinfectant, "pack") + " of disinfectant");
    return words + ": " + join(packs);
}

}  // namespace

std::string purchases_text(Plan const& plan) {
    Table table({Align::right, Align::right, Align::left}, 2);
    for (Purchase const& feed : plan.feeds) add_feed(table, feed, plan);
    for (SupplementPurchase const& supplement : plan.supplements) add_supplement(table, supplement, plan);
    add_readying(table, plan.readying, plan.farm);
    bool const nothing_priced = !plan.cost_is_whole && plan.safe_cost == quantities::money(0);
    std::string const heading = "\nBUY, to be sure 19 times in 20\n";
    if (nothing_priced && plan.safe_bags == 0) return heading + table.text();
    table.add({readies(plan) ? "" : plural(plan.safe_bags, "bag"),
               nothing_priced ? "" : print(plan.safe_cost, plan.farm.currency),
               total_words(plan, plan.cost_is_whole || nothing_priced)});
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
