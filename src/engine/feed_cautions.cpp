#include <algorithm>

#include "cropful/rations/limits.hpp"
#include "engine/caution_list.hpp"
#include "engine/check_extras.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

using domain::Content;

constexpr Duration earliest_lay = days(35);   // common practice, no source
constexpr Duration usual_keeping = days(56);  // of feed in its bag

void below_need(CautionList& list, std::string const& title, Check const& check, HatchPlan const& part) {
    if (check.verdict != Verdict::short_of) return;
    Caution caution{.id = "below-need",
                    .with = {{"feed", title},
                             {"label", Content{check.nutrient, *check.label}},
                             {"need", Content{check.nutrient, check.need}},
                             {"kind", part.kind_title},
                             {"phase", check.phase},
                             {"from", Age{check.from}},
                             {"to", Age{check.to}}},
                    .source = check.source.text};
    if (domain::find_nutrient(check.nutrient)->unit == domain::NutrientUnit::percent) {
        caution.with["short_by"] = check.short_by;
        caution.with["of_need"] = Share{check.short_by / check.need};
    }
    list.add(std::move(caution));
}

/// Layer calcium harms the kidneys and bones of birds that do not lay: the highest limit passed.
void calcium_while_growing(CautionList& list, std::string const& title, Check const& check, Limit const& limit,
                           HatchPlan const& part) {
    list.add({.id = "calcium-while-growing",
              .with = {{"feed", title},
                       {"most", Content{check.nutrient, most_stated(check)}},
                       {"kind", part.kind_title},
                       {"from", Age{check.from}},
                       {"to", Age{check.to}},
                       {"limit", words_of(limit)}},
              .source = limit.source.text});
}

/// What a label states above a limit: the highest limit passed.
void over_limit(CautionList& list, std::string const& title, Check const& check, HatchPlan const& part,
                Rations const& rations) {
    if (check.verdict != Verdict::over) return;
    double const most = most_stated(check);
    auto const limits = passed(rations.limits, check.nutrient + "_feed", most);
    if (limits.empty()) return;
    if (check.nutrient == "calcium") return calcium_while_growing(list, title, check, *limits.back(), part);
    list.add({.id = "over-limit",
              .with = {{"feed", title}, {"most", Content{check.nutrient, most}}, {"limit", words_of(*limits.back())}},
              .source = limits.back()->source.text});
}

/// Hens kept as layers before any of them can lay.
void early_lay(CautionList& list, HatchPlan const& part) {
    auto const& lay = part.hatch.laying_from;
    if (!lay || *lay >= earliest_lay || *lay >= part.hatch.until) return;
    list.add({.id = "early-lay",
              .hatches = {part.hatch.name},
              .with = {{"lay", Age{*lay}}},
              .source = "common practice, no source"});
}

double most_on_label(domain::Feed const& feed, std::string const& nutrient) {
    auto const label = feed.label.find(nutrient);
    if (label == feed.label.end()) return 0;
    return label->second.maximum.value_or(label->second.minimum.value_or(0));
}

/// Salt, and sodium that is as much salt as birds die of.
void salt(CautionList& list, domain::Feed const& feed, Rations const& rations) {
    double const stated = most_on_label(feed, "salt"), sodium = most_on_label(feed, "sodium");
    double const as_salt = sodium / rations::sodium_in_salt;
    auto const limits = passed(rations.limits, "salt_feed", stated);
    if (Limit const* stop = deadly(limits)) {
        list.add({.id = "salt-lethal",
                  .with = {{"form", "salt"},
                           {"feed", feed.title},
                           {"salt", Content{"salt", stated}},
                           {"limit", words_of(*stop)}},
                  .source = stop->source.text});
    } else if (Limit const* as_stop = deadly(passed(rations.limits, "salt_feed", as_salt))) {
        list.add({.id = "salt-lethal",
                  .with = {{"form", "sodium"},
                           {"feed", feed.title},
                           {"sodium", Content{"sodium", sodium}},
                           {"as_salt", Share{as_salt / 100}},
                           {"limit", words_of(*as_stop)}},
                  .source = as_stop->source.text});
    } else if (!limits.empty()) {
        list.add(
            {.id = "salt-feed",
             .with = {{"feed", feed.title}, {"salt", Content{"salt", stated}}, {"limit", words_of(*limits.back())}},
             .source = limits.back()->source.text});
    }
}

/// Feeds bought for longer than any keeps, of which nobody said how long they keep.
void unknown_keeping(CautionList& list, Plan const& plan) {
    std::vector<std::string> titles;
    for (Purchase const& purchase : plan.feeds) {
        bool const unstated = !plan.farm.feeds.at(purchase.key).keeps && purchase.need > purchase.on_hand;
        if (unstated && purchase.last_needed - purchase.first_needed > usual_keeping) titles.push_back(purchase.title);
    }
    if (titles.empty()) return;
    list.add({.id = "keeping-unstated",
              .with = {{"feeds", titles}, {"usual", usual_keeping}},
              .source = "8 wk: common practice, and Shim on vitamins; feed within three weeks of its making, sooner in "
                        "heat: NC State, ces.ncsu.edu/depts/poulsci/tech_manuals/feeding_quail.html"});
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
    if (kind.growing.caution.empty()) return;
    list.add({.id = "kind-curve",
              .with = {{"kind", kind.title}, {"says", kind.growing.caution}},
              .source = kind.growing.source.text});
}

void store_cautions(CautionList& list, Plan const& plan) {
    for (Purchase const& purchase : plan.feeds) {
        auto const& keeps = plan.farm.feeds.at(purchase.key).keeps;
        Duration const use = purchase.last_needed - purchase.first_needed;
        if (!keeps || use <= *keeps) continue;
        list.add({.id = "past-keeping",
                  .with = {{"feed", purchase.title}, {"keeps", *keeps}, {"fed_for", use}},
                  .source = "the feed's own `keeps`"});
    }
    unknown_keeping(list, plan);
}

}  // namespace cropful::engine
