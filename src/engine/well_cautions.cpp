
#include "cropful/domain/ranges.hpp"
#include "engine/refills.hpp"
#include "engine/well.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

std::string title_of(WaterFinding const& finding) {
    return std::string(domain::find_water_item(finding.figure.item)->title);
}

/// All that is as bad as that, in one caution: somebody reads it in the barn.
void unfit(CautionList& list, Plan const& plan) {
    Caution caution{.id = "water-stop"};
    std::vector<std::string> items;
    for (WaterFinding const& finding : plan.water) {
        if (finding.grade != WaterGrade::stop) continue;
        items.push_back(title_of(finding));
        caution.source += (caution.source.empty() ? "" : "; ") + finding.row->source.text;
    }
    if (items.empty()) return;
    caution.with["items"] = items;
    list.add(std::move(caution));
}

void harmful(CautionList& list, Plan const& plan) {
    for (WaterFinding const& finding : plan.water) {
        if (finding.grade != WaterGrade::caution) continue;
        WaterRow const& row = *finding.row;
        list.add({.id = "water-caution",
                  .with = {{"form", row.below ? "below" : "above"},
                           {"item", title_of(finding)},
                           {"value", finding.figure.value},
                           {"unit", row.unit},
                           {"limit", words_of(row)}},
                  .source = row.source.text});
    }
}

void for_people(CautionList& list, Plan const& plan, WaterTable const& table) {
    for (WaterFinding const& finding : plan.water) {
        auto const* row = rations::row_for_people(table, finding.figure.item, finding.figure.value);
        if (row != nullptr) {
            list.add({.id = "water-people",
                      .with = {{"item", title_of(finding)},
                               {"value", finding.figure.value},
                               {"unit", row->unit},
                               {"limit", words_of(*row)}},
                      .source = row->source.text});
        }
    }
}

/// Courses that are over are not planned for; where only labels are judged all count.
bool is_to_come(HatchPlan const& part, SodiumSum const& sum) {
    if (part.mixes.empty()) return true;
    return ranges::any_of(part.mixes, [&](Mix const& mix) {
        return mix.supplement == sum.supplement && !mix.batches.empty() && mix.from <= sum.from && sum.to <= mix.to;
    });
}

/// Feed and water together above the most of a diet.
void salty_diet(CautionList& list, Plan const& plan, HatchPlan const& part) {
    for (Check const& check : part.checks) {
        if (!check.diet || !check.ceiling || *check.diet <= check.ceiling->at_most) continue;
        list.add({.id = "diet-sodium",
                  .with = {{"feed", plan.farm.feeds.at(check.feed).title},
                           {"kind", part.kind_title},
                           {"diet", domain::Content{"sodium", *check.diet}},
                           {"drunk", *check.drunk_sodium},
                           {"ceiling", domain::Content{"sodium", check.ceiling->at_most}}},
                  .source = check.ceiling->source.text});
    }
}

}  // namespace

std::vector<domain::Caution> sodium_cautions(domain::Supplement const& supplement, SodiumSum const& sum) {
    CautionList list;
    if (!sum.product || !(*sum.product > MassPerVolume()) || sum.grade < WaterGrade::guide) return {};
    Caution caution{.id = sum.grade == WaterGrade::stop ? "sodium-lethal" : "sodium-water",
                    .with = {{"supplement", supplement.title}, {"added", *sum.product}, {"limit", words_of(*sum.row)}},
                    .source = sum.row->source.text};
    if (sum.before() > MassPerVolume()) caution.with["sum"] = sum.sum;
    if (sum.grade == WaterGrade::guide) caution.with["form"] = "guide";
    if (sum.grade == WaterGrade::caution) caution.with["form"] = "caution";
    list.add(std::move(caution));
    return list.all();
}

void well_cautions(CautionList& list, Plan const& plan, Rations const& rations) {
    unfit(list, plan);
    harmful(list, plan);
    for_people(list, plan, rations.water);
    if (plan.old_water) {
        list.add({.id = "water-old",
                  .with = {{"sampled", *plan.farm.water->sampled}},
                  .source = "common practice, no source"});
    }
}

void hatch_water_cautions(CautionList& list, Plan const& plan, HatchPlan const& part) {
    for (SodiumSum const& sum : plan.sodium) {
        if (sum.hatch != part.hatch.name || sum.supplement.empty() || !is_to_come(part, sum)) continue;
        for (Caution const& one : sodium_cautions(plan.farm.supplements.at(sum.supplement), sum)) list.add(one);
    }
    salty_diet(list, plan, part);
}

}  // namespace cropful::engine
