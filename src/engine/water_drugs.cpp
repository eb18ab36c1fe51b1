#include <algorithm>

#include "engine/caution_list.hpp"
#include "engine/drugs.hpp"
#include "engine/refills.hpp"

namespace cropful::engine {

namespace {

/// What a supplement is a medicine with: as its file says, or as its title lets see. Null without one known here.
Drug const* drug_of(domain::Supplement const& supplement, std::string const& kind, Rations const& rations) {
    return supplement.drug.empty() ? drug_in_title(supplement.title, kind, rations)
                                   : find_drug(supplement.drug, kind, rations);
}

void approval_in_water(CautionList& list, std::string const& title, Drug const& drug, Kind const& kind) {
    bool const approved = std::find(drug.in_water.begin(), drug.in_water.end(), kind.key) != drug.in_water.end();
    Caution caution{.id = approved ? "water-drug-conditions" : "water-drug-approval",
                    .with = {{"supplement", title}, {"drug", drug.name}},
                    .source = drug.source.text};
    if (!approved) {
        caution.with["form"] = drug.banned ? "banned" : "to order";
        caution.with["kind"] = kind.title;
    }
    if (!drug.water_limits.empty()) caution.with["conditions"] = drug.water_limits;
    list.add(std::move(caution));
}

/// The same substance in a feed at the same ages, or another drug beside it.
void feed_and_water(CautionList& list, Plan const& plan, domain::Hatch const& hatch,
                    domain::Supplement const& supplement, Mix const& mix, Drug const& drug, Rations const& rations) {
    for (std::size_t i = 0; i < hatch.feeding.size(); ++i) {
        domain::Feed const& feed = plan.farm.feeds.at(hatch.feeding[i].feed);
        bool const together = mix.from < fed_until(hatch, i) && hatch.feeding[i].from < mix.to;
        if (!feed.medicated || !together) continue;
        Drug const* fed = find_drug(feed.medicated->drug, hatch.kind, rations);
        std::string const& in_feed = fed ? fed->name : feed.medicated->drug;
        bool const same = same_substance(in_feed, drug.name);
        list.add({.id = "drug-in-feed-and-water",
                  .with = {{"form", same ? "same" : "two"},
                           {"feed", feed.title},
                           {"supplement", supplement.title},
                           {"drug", drug.name},
                           {"fed", in_feed}},
                  .source = drug.source.text});
    }
}

void eggs(CautionList& list, domain::Hatch const& hatch, domain::Supplement const& supplement, Mix const& mix,
          std::string const& drug, std::string const& source) {
    auto const& lay = hatch.laying_from;
    if (!lay || *lay >= hatch.until || mix.to + yolks_form <= *lay) return;
    bool const in_lay = mix.to > *lay;
    list.add({.id = "water-drug-eggs",
              .with = {{"form", in_lay ? "in lay" : "near lay"}, {"supplement", supplement.title}, {"drug", drug}},
              .source = source});
}

}  // namespace

bool is_medicine(domain::Supplement const& supplement, std::string const& kind, Rations const& rations) {
    return !supplement.drug.empty() || drug_of(supplement, kind, rations) != nullptr;
}

namespace {

void course_cautions(CautionList& list, Plan const& plan, HatchPlan const& part, Mix const& mix,
                     Rations const& rations) {
    domain::Supplement const& supplement = plan.farm.supplements.at(mix.supplement);
    Kind const& kind = rations.kinds.at(part.hatch.kind);
    Drug const* drug = drug_of(supplement, kind.key, rations);
    constexpr char const* built_in = "the built-in list of drugs";
    if (drug == nullptr && supplement.drug.empty()) return;
    if (drug == nullptr) {
        list.add({.id = "drug-unknown",
                  .with = {{"form", "water"}, {"supplement", supplement.title}, {"drug", supplement.drug}},
                  .source = built_in});
        return eggs(list, part.hatch, supplement, mix, supplement.drug, built_in);
    }
    approval_in_water(list, supplement.title, *drug, kind);
    feed_and_water(list, plan, part.hatch, supplement, mix, *drug, rations);
    eggs(list, part.hatch, supplement, mix, drug->name, drug->source.text);
}

}  // namespace

void water_drug_cautions(CautionList& list, Plan const& plan, HatchPlan const& part, Rations const& rations) {
    for (Mix const& mix : part.mixes) {
        if (!mix.batches.empty()) course_cautions(list, plan, part, mix, rations);
    }
}

}  // namespace cropful::engine
