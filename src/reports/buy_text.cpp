#include "cropful/reports/buy_text.hpp"

#include "cropful/quantities/print.hpp"
#include "cropful/reports/learned_text.hpp"
#include "cropful/reports/mix_text.hpp"
#include "cropful/reports/page.hpp"
#include "cropful/reports/words.hpp"
#include "reports/shopping.hpp"

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

/// Why packs cannot be counted.
std::string no_packs_words(domain::Supplement const& supplement) {
    bool const sized = supplement.pack || supplement.pack_volume;
    return sized ? " (state its spoon to count packs)" : " (no pack size stated)";
}

/// By weight where that is known, else by measure.
std::string amount_words(std::optional<Mass> const& weight, std::optional<quantities::Volume> const& volume,
                         Plan const& plan) {
    if (weight) return print_dose(*weight, plan.farm.measures);
    return volume ? print_measured(*volume, plan.farm.measures) : "";
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
    return bought.safe_packs ? plural(*bought.safe_packs, "pack")
                             : amount_words(bought.safe_weight, bought.safe_volume, plan);
}

std::string feed_words(Purchase const& feed, Plan const& plan) {
    auto const measures = plan.farm.measures;
    std::string words = feed.title.empty() ? feed.key : feed.title;
    if (feed.bag) words += ", " + print(*feed.bag, measures);
    words += ": " + print(feed.need, measures) + " to be eaten, " + print(feed.band.p95, measures) + " by hungry birds";
    if (feed.on_hand > kilograms(0)) words += ", " + print(feed.on_hand, measures) + " on hand";
    if (feed.spare > kilograms(0)) words += ", " + print(feed.spare, measures) + " to spare";
    if (!feed.bag) words += " (no bag size stated)";
    Mass const over = bought(feed) + feed.on_hand - feed.need;
    if (feed.bag && feed.safe_bags.p95 == 0) words += "; enough is on hand";
    if (feed.safe_bags.p95 > 0) words += "; usually " + print(over, measures) + " left over";
    if (feed.bags < feed.safe_bags.p95) words += ", and " + plural(feed.bags, "bag") + " would do";
    return words;
}

std::string supplement_words(SupplementPurchase const& bought, Plan const& plan) {
    auto const measures = plan.farm.measures;
    domain::Supplement const& supplement = plan.farm.supplements.at(bought.key);
    std::string words = supplement_title(supplement);
    if (supplement.pack) words += ", " + print_dose(*supplement.pack, measures);
    if (supplement.pack_volume) words += ", " + print_measured(*supplement.pack_volume, measures);
    words += ": " + amount_words(bought.by_weight, bought.by_volume, plan) + " to be stirred in, " +
             amount_words(bought.safe_weight, bought.safe_volume, plan) + " for thirsty birds";
    if (bought.packs && *bought.packs < *bought.safe_packs)
        words += "; usually " + plural(*bought.packs, "pack") + " would do";
    return words + (bought.packs ? "" : no_packs_words(supplement));
}

std::string purchases_text(Plan const& plan) {
    Table table({Align::right, Align::right, Align::left}, 2);
    for (ShoppingRow const& row : shopping_rows(plan)) {
        table.add({row.count, row.price, row.words + when_words(row)});
    }
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
