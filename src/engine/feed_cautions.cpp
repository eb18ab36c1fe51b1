#include <algorithm>

#include "cropful/domain/words.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/rations/limits.hpp"
#include "engine/caution_list.hpp"
#include "engine/check_extras.hpp"

namespace cropful::engine {

namespace {

constexpr Duration earliest_lay = days(35);   // common practice, no source
constexpr Duration usual_keeping = days(56);  // of feed in its bag

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
    list.add("below-need", text + ". Ask for a richer feed for " + ages(check) + ".", check.source.text);
}

/// Layer calcium harms the kidneys and bones of birds that do not lay: the highest limit passed.
void calcium_while_growing(CautionList& list, std::string const& title, Check const& check, Limit const& limit,
                           HatchPlan const& part) {
    list.add("calcium-while-growing",
             title + " may hold " + plain(most_stated(check)) + " % calcium and is fed to " + part.kind_title +
                 " that do not lay (" + ages(check) + "). Above " + words_of(limit) +
                 ". Give layer feed only to birds in lay.",
             limit.source.text);
}

/// What a label states above a limit: the highest limit passed.
void over_limit(CautionList& list, std::string const& title, Check const& check, HatchPlan const& part,
                Rations const& rations) {
    if (check.verdict != Verdict::over) return;
    double const most = most_stated(check);
    auto const limits = passed(rations.limits, check.nutrient + "_feed", most);
    if (limits.empty()) return;
    if (check.nutrient == "calcium") return calcium_while_growing(list, title, check, *limits.back(), part);
    domain::Nutrient const& nutrient = *domain::find_nutrient(check.nutrient);
    list.add("over-limit",
             title + " may hold " + print_level(nutrient, most) + " " + std::string(nutrient.title) + ". Above " +
                 words_of(*limits.back()) + ". Check the unit and the label, and ask its maker before it is fed.",
             limits.back()->source.text);
}

/// Hens kept as layers before any of them can lay.
void early_lay(CautionList& list, HatchPlan const& part) {
    auto const& lay = part.hatch.laying_from;
    if (!lay || *lay >= earliest_lay || *lay >= part.hatch.until) return;
    list.add(
        "early-lay",
        part.hatch.name + ": laying_from is " + print_age(*lay) +
            ", but no quail lays before about 5 weeks; the laying rate and needs were used from then on all the same.",
        "common practice, no source");
}

double most_on_label(domain::Feed const& feed, std::string const& nutrient) {
    auto const label = feed.label.find(nutrient);
    if (label == feed.label.end()) return 0;
    return label->second.maximum.value_or(label->second.minimum.value_or(0));
}

/// Salt, and sodium that is as much salt as birds die of.
void salt(CautionList& list, domain::Feed const& feed, Rations const& rations) {
    double const stated = most_on_label(feed, "salt"), sodium = most_on_label(feed, "sodium");
    auto limits = passed(rations.limits, "salt_feed", stated);
    std::string what = plain(stated) + " % salt";
    auto const as_salt = passed(rations.limits, "salt_feed", sodium / rations::sodium_in_salt);
    if (!deadly(limits) && deadly(as_salt)) {
        limits = as_salt;
        what = plain(sodium) + " % sodium, as " + number(sodium / rations::sodium_in_salt, 1) + " % of salt has";
    }
    if (limits.empty()) return;
    if (Limit const* stop = deadly(limits)) {
        list.add("salt-lethal",
                 feed.title + " may hold " + what + ". " + rations::do_not_give + " At " + words_of(*stop) + ".",
                 stop->source.text);
        return;
    }
    list.add("salt-feed",
             feed.title + " may hold " + what + "; above " + words_of(*limits.back()) +
                 ". Birds must never be without water on it.",
             limits.back()->source.text);
}

/// Feeds bought for longer than any keeps, of which nobody said how long they keep.
void unknown_keeping(CautionList& list, Plan const& plan) {
    std::vector<std::string> titles;
    for (Purchase const& purchase : plan.feeds) {
        bool const unstated = !plan.farm.feeds.at(purchase.key).keeps && purchase.need > purchase.on_hand;
        if (unstated && purchase.last_needed - purchase.first_needed > usual_keeping) titles.push_back(purchase.title);
    }
    if (titles.empty()) return;
    list.add("keeping-unstated",
             domain::join(titles) +
                 ": fed for more than 8 wk, and how long it keeps is not stated. Feed loses vitamins and goes stale: "
                 "buy it in several goes, by its date of making, and say keeps.",
             "8 wk: common practice, and Shim on vitamins; feed within three weeks of its making, sooner in heat: NC "
             "State, ces.ncsu.edu/depts/poulsci/tech_manuals/feeding_quail.html");
}

}  // namespace

void feed_cautions(CautionList& list, Plan const& plan, HatchPlan const& part, Rations const& rations) {
    Kind const& kind = rations.kinds.at(part.hatch.kind);
    for (Check const& check : part.checks) {
        std::string const& title = plan.farm.feeds.at(check.feed).title;
        below_need(list, title, check, part);
        over_limit(list, title, check, part, rations);
    }
    early_lay(list, part);
    for (FeedNeed const& need : part.feeds) salt(list, plan.farm.feeds.at(need.feed), rations);
    if (!kind.growing.caution.empty())
        list.add("kind-curve", kind.title + ": " + kind.growing.caution, kind.growing.source.text);
}

void store_cautions(CautionList& list, Plan const& plan) {
    for (Purchase const& purchase : plan.feeds) {
        auto const& keeps = plan.farm.feeds.at(purchase.key).keeps;
        Duration const use = purchase.last_needed - purchase.first_needed;
        if (!keeps || use <= *keeps) continue;
        list.add("past-keeping",
                 purchase.title + " keeps " + print(*keeps) + " but is fed for " + print(use) +
                     ": buy it in several goes and use the oldest first.",
                 "the feed's own `keeps`");
    }
    unknown_keeping(list, plan);
}

}  // namespace cropful::engine
