#include <algorithm>

#include "cropful/domain/nearest.hpp"
#include "cropful/domain/words.hpp"
#include "engine/caution_list.hpp"
#include "engine/drugs.hpp"
#include "engine/intake.hpp"
#include "engine/refills.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

using domain::lower;

/// One medicated feed of a hatch's whole life, whatever part of it is planned.
struct Medicated {
    std::string feed;
    domain::Medication const& medication;
    HatchPlan const& part;
    Duration from;
    Duration to;
};

void approval(CautionList& list, Medicated const& course, Drug const& drug, Kind const& kind) {
    auto const& birds = drug.birds;
    if (std::find(birds.begin(), birds.end(), kind.key) == birds.end()) {
        list.add({.id = "drug-approval",
                  .with = {{"feed", course.feed}, {"drug", drug.name}, {"kind", kind.title}},
                  .source = drug.source.text});
    } else if (drug.max_age && course.to > *drug.max_age) {
        list.add({.id = "drug-age",
                  .with = {{"feed", course.feed},
                           {"drug", drug.name},
                           {"max_age", Age{*drug.max_age}},
                           {"fed_to", Age{course.to}}},
                  .source = drug.source.text});
    }
}

void level(CautionList& list, Medicated const& course, Drug const& drug) {
    if (!course.medication.per_short_ton || drug.per_short_ton.empty()) return;
    Mass const stated = *course.medication.per_short_ton;
    Mass const least = drug.per_short_ton.front(), most = drug.per_short_ton.back();
    constexpr double tolerance = 1e-3;  // the rule prints rounded grams
    if (stated >= least * (1 - tolerance) && stated <= most * (1 + tolerance)) return;
    Caution caution{.id = "drug-level",
                    .with = {{"feed", course.feed}, {"drug", drug.name}, {"stated", stated}, {"least", least}},
                    .source = drug.source.text};
    if (least < most) caution.with["most"] = most;
    list.add(std::move(caution));
}

/// Eggs for people: fed into lay, or while the first yolks form.
void laying(CautionList& list, Medicated const& course, Drug const* drug, std::string const& source) {
    auto const& lay = course.part.hatch.laying_from;
    domain::Medication const& its = course.medication;
    Duration const clear = course.to + std::max(its.withdrawal, its.eggs_withdrawal.value_or(its.withdrawal));
    if (!lay || clear + yolks_form <= *lay || course.from >= course.part.hatch.until) return;
    bool const growing = drug && (drug->growing_only || drug->max_age);
    std::string const in_law = drug && drug->not_for_layers ? ", not for layers" : growing ? ", for growing birds" : "";
    list.add({.id = "drug-into-lay",
              .hatches = {course.part.hatch.name},
              .with = {{"form", (clear > *lay ? "into lay" : "near lay") + in_law},
                       {"feed", course.feed},
                       {"drug", course.medication.drug}},
              .source = source});
}

bool planned(Medicated const& course) {
    auto const& needs = course.part.feeds;
    return course.from < needs.back().to && needs.front().from < course.to;
}

void unknown_drug(CautionList& list, Medicated const& course, Rations const& rations) {
    std::vector<std::string> names;
    for (Drug const& drug : rations.drugs) names.push_back(drug.name);
    std::string const near = domain::nearest(lower(course.medication.drug), names);
    Drug const* meant = near.empty() ? nullptr : find_drug(near, course.part.hatch.kind, rations);
    Caution caution{.id = "drug-unknown",
                    .with = {{"form", "feed"}, {"feed", course.feed}, {"drug", course.medication.drug}},
                    .source = "the built-in list of feed drugs"};
    if (meant) caution.with["meant"] = near;
    if (meant && !meant->danger.empty()) caution.with["danger"] = meant->danger;
    list.add(std::move(caution));
}

void known_drug(CautionList& list, Medicated const& course, Drug const& drug, Kind const& kind) {
    Caution caution{
        .id = "drug-conditions", .with = {{"feed", course.feed}, {"drug", drug.name}}, .source = drug.source.text};
    if (!drug.danger.empty()) caution.with["danger"] = drug.danger;
    if (!drug.limits.empty()) caution.with["conditions"] = drug.limits;
    list.add(std::move(caution));
    approval(list, course, drug, kind);
    level(list, course, drug);
}

/// Amprolium and a supplement in the water at the same ages.
void thiamine(CautionList& list, Medicated const& course, domain::Supplement const& supplement,
              domain::Course const& given) {
    if (!lower(course.medication.drug).starts_with("amprolium")) return;
    if (given.from >= course.to || course_ends(given) <= course.from) return;
    list.add({.id = "thiamine",
              .with = {{"supplement", supplement.title}},
              .source = "a formulary of drugs for elephants (amprolium and thiamine); 21 CFR 558.55 (sole source of "
                        "amprolium)"});
}

void medicated(CautionList& list, Medicated const& course, Rations const& rations) {
    Drug const* drug = find_drug(course.medication.drug, course.part.hatch.kind, rations);
    if (planned(course)) {
        if (drug) {
            known_drug(list, course, *drug, rations.kinds.at(course.part.hatch.kind));
        } else {
            unknown_drug(list, course, rations);
        }
    }
    laying(list, course, drug, drug ? drug->source.text : "the built-in list of feed drugs");
}

}  // namespace

void drug_cautions(CautionList& list, Plan const& plan, HatchPlan const& part, Rations const& rations) {
    domain::Hatch const& hatch = part.hatch;
    for (std::size_t i = 0; i < hatch.feeding.size(); ++i) {
        domain::Feed const& feed = plan.farm.feeds.at(hatch.feeding[i].feed);
        if (!feed.medicated || hatch.feeding[i].from >= hatch.until) continue;
        Medicated const course{feed.title, *feed.medicated, part, hatch.feeding[i].from, fed_until(hatch, i)};
        medicated(list, course, rations);
        for (domain::Course const& given : domain::courses_of(hatch, plan.farm)) {
            domain::Supplement const& supplement = plan.farm.supplements.at(given.supplement);
            if (!is_medicine(supplement, hatch.kind, rations)) thiamine(list, course, supplement, given);
        }
    }
}

}  // namespace cropful::engine
