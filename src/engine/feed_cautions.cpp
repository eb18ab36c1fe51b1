#include <algorithm>

#include "cropful/quantities/print.hpp"
#include "engine/caution_list.hpp"
#include "engine/check_extras.hpp"

namespace cropful::engine {

namespace {

constexpr Duration earliest_lay = days(35);  // common practice, no source

std::string ages(Check const& check) { return print_age(check.from) + " to " + print_age(check.to); }

void below_need(CautionList& list, std::string const& title, Check const& check, HatchPlan const& part) {
    if (check.verdict != Verdict::short_of) return;
    domain::Nutrient const& nutrient = *domain::find_nutrient(check.nutrient);
    std::string text = title + " guarantees " + print_level(nutrient, *check.label) + " " +
                       std::string(nutrient.title) + ", " + print_level(nutrient, check.need) + " is needed by " +
                       part.kind_title + " (" + check.phase + ")";
    if (nutrient.unit == domain::NutrientUnit::percent) {
        text += ": short by " + plain(check.short_by) + (check.short_by == 1 ? " point" : " points") + ", " +
                number(100 * check.short_by / check.need, 1) + " % of the need";
    }
    list.add(text + ". Ask for a richer feed for " + ages(check) + ".", check.source.text);
}

/// Layer calcium harms the kidneys and bones of birds that do not lay: the highest limit passed.
void calcium_while_growing(CautionList& list, std::string const& title, Check const& check, HatchPlan const& part,
                           Rations const& rations) {
    if (check.verdict != Verdict::over || check.nutrient != "calcium") return;
    double const most = most_stated(check);
    Limit const* passed = nullptr;
    for (Limit const& limit : rations.limits) {
        if (limit.key != "calcium_feed" || limit.level * 100 >= most) continue;
        if (passed == nullptr || limit.level > passed->level) passed = &limit;
    }
    if (passed == nullptr) return;
    list.add(title + " may hold " + plain(most) + " % calcium and is fed to " + part.kind_title + " that do not lay (" +
                 ages(check) + "). Above " + passed->words + " (" + passed->applies + "): " + passed->meaning +
                 ". Give layer feed only to birds in lay.",
             passed->source.text);
}

/// Hens kept as layers before any of them can lay.
void early_lay(CautionList& list, HatchPlan const& part) {
    auto const& lay = part.hatch.laying_from;
    if (!lay || *lay >= earliest_lay || *lay >= part.hatch.until) return;
    list.add(
        part.hatch.name + ": laying_from is " + print_age(*lay) +
            ", but no quail lays before about 5 weeks; the laying rate and needs were used from then on all the same.",
        "common practice, no source");
}

void salt(CautionList& list, domain::Feed const& feed, Rations const& rations) {
    auto const label = feed.label.find("salt");
    if (label == feed.label.end()) return;
    double const most = label->second.maximum.value_or(label->second.minimum.value_or(0));
    Limit const* passed = nullptr;
    for (Limit const& limit : rations.limits) {
        if (limit.key == "salt_feed" && most > limit.level * 100) passed = &limit;
    }
    if (passed == nullptr) return;
    list.add(feed.title + " may hold " + plain(most) + " % salt; above " + passed->words + " (" + passed->applies +
                 "): " + passed->meaning + ". Birds must never be without water on it.",
             passed->source.text);
}

}  // namespace

void feed_cautions(CautionList& list, Plan const& plan, HatchPlan const& part, Rations const& rations) {
    Kind const& kind = rations.kinds.at(part.hatch.kind);
    for (Check const& check : part.checks) {
        std::string const& title = plan.farm.feeds.at(check.feed).title;
        below_need(list, title, check, part);
        calcium_while_growing(list, title, check, part, rations);
    }
    early_lay(list, part);
    for (FeedNeed const& need : part.feeds) salt(list, plan.farm.feeds.at(need.feed), rations);
    if (!kind.growing.caution.empty()) list.add(kind.title + ": " + kind.growing.caution, kind.growing.source.text);
}

void store_cautions(CautionList& list, Plan const& plan) {
    for (Purchase const& purchase : plan.feeds) {
        auto const& keeps = plan.farm.feeds.at(purchase.key).keeps;
        Duration const use = purchase.last_needed - purchase.first_needed;
        if (!keeps || use <= *keeps) continue;
        list.add(purchase.title + " keeps " + print(*keeps) + " but is fed for " + print(use) +
                     ": buy it in several goes and use the oldest first.",
                 "the feed's own `keeps`");
    }
}

}  // namespace cropful::engine
