#include "cropful/reports/buy_page.hpp"

#include "cropful/quantities/print.hpp"
#include "cropful/reports/learned_part.hpp"
#include "cropful/reports/mix_page.hpp"
#include "cropful/reports/plan_parts.hpp"
#include "cropful/reports/words.hpp"
#include "reports/shopping.hpp"

namespace cropful::reports {

namespace {

using engine::Plan;
using quantities::print;

/// Whether packs of something else stand beside the bags of feed.
bool readies(Plan const& plan) { return !plan.readying.bedding.empty() || !plan.readying.disinfectants.empty(); }

bool nothing_priced(Plan const& plan) { return !plan.cost_is_whole && plan.safe_cost == quantities::money(0); }

/// "3 bags"; "3 bags, 2 lots" where some feed is sold loose.
std::string units_words(Plan const& plan) {
    int lots = 0, loose = 0;
    for (engine::Purchase const& feed : plan.feeds) {
        domain::Feed const& its = plan.farm.feeds.at(feed.key);
        if (its.in_lots) lots += feed.safe_bags.p95;
        loose += its.in_lots || its.by_weight ? 1 : 0;
    }
    int const bags = plan.safe_bags - lots;
    std::vector<std::string> words;
    if (bags > 0 || loose == 0) words.push_back(plural(bags, "bag"));
    if (lots > 0) words.push_back(plural(lots, "lot"));
    return join(words);
}

}  // namespace

std::string total_count(Plan const& plan) { return readies(plan) ? "" : units_words(plan); }

std::string total_words(Plan const& plan) {
    std::string const words =
        plan.cost_is_whole || nothing_priced(plan) ? "in all" : "in all, without what has no price";
    if (!readies(plan)) return words;
    int bedding = 0, disinfectant = 0;
    for (engine::BeddingPurchase const& one : plan.readying.bedding) bedding += one.bags;
    for (engine::DisinfectantPurchase const& one : plan.readying.disinfectants) disinfectant += one.packs.value_or(0);
    std::vector<std::string> packs;
    if (auto const units = units_words(plan); !units.empty()) packs.push_back(units + " of feed");
    if (bedding > 0) packs.push_back(plural(bedding, "bag") + " of bedding");
    if (disinfectant > 0) packs.push_back(plural(disinfectant, "pack") + " of disinfectant");
    return words + ": " + join(packs);
}

Page purchases_part(Plan const& plan, bool why) {
    Table table = shopping_table(engine::shopping_list(plan), plan.farm, why ? Shopping::why : Shopping::what);
    Page const head =
        Blank() + heading("BUY", std::string(", to be sure 19 times in 20") + (why ? "" : " (`cropful buy` says why)"));
    if (nothing_priced(plan) && plan.safe_bags == 0) return head + table;
    table.add(
        {total_count(plan), nothing_priced(plan) ? "" : print(plan.safe_cost, plan.farm.currency), total_words(plan)});
    return head + table;
}

Page buy_page(Plan const& plan, Sources sources) {
    Page page = page_title(plan) + purchases_part(plan) + spaced(learned_part(plan.learned, plan.farm.measures)) +
                spaced(heading("FOR"));
    for (engine::HatchPlan const& hatch : plan.hatches) {
        page += wrap(hatch_words(hatch) + "; fed from " + ages_words(first_age(hatch), last_age(hatch)), "  ", "    ");
    }
    return page + notes_part(plan, sources);
}

}  // namespace cropful::reports
