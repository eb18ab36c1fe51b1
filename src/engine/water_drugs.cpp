#include <algorithm>

#include "cropful/domain/words.hpp"
#include "cropful/quantities/print.hpp"
#include "engine/caution_list.hpp"
#include "engine/drugs.hpp"
#include "engine/refills.hpp"

namespace cropful::engine {

namespace {

using domain::join;

/// What a supplement is a medicine with: as its file says, or as its title lets see. Null without one known here.
Drug const* drug_of(domain::Supplement const& supplement, std::string const& kind, Rations const& rations) {
    return supplement.drug.empty() ? drug_in_title(supplement.title, kind, rations)
                                   : find_drug(supplement.drug, kind, rations);
}

void approval_in_water(CautionList& list, std::string const& title, Drug const& drug, Kind const& kind) {
    bool const approved = std::find(drug.in_water.begin(), drug.in_water.end(), kind.key) != drug.in_water.end();
    std::string text = title + ": no approval of " + drug.name + " in water for " + kind.title + " is known here" +
                       (drug.banned ? "." : ". A veterinarian must order it.");
    if (approved) text = title + " is a medicine (" + drug.name + ").";
    if (!drug.water_limits.empty()) text += " Conditions: " + join(drug.water_limits) + ".";
    list.add(approved ? "water-drug-conditions" : "water-drug-approval", text + " " + defer, drug.source.text);
}

/// The same substance in a feed at the same ages.
void feed_and_water(CautionList& list, Plan const& plan, domain::Hatch const& hatch,
                    domain::Supplement const& supplement, Drug const& drug, Rations const& rations) {
    for (std::size_t i = 0; i < hatch.feeding.size(); ++i) {
        domain::Feed const& feed = plan.farm.feeds.at(hatch.feeding[i].feed);
        bool const together = supplement.from < fed_until(hatch, i) && hatch.feeding[i].from < course_ends(supplement);
        if (!feed.medicated || !together) continue;
        Drug const* fed = find_drug(feed.medicated->drug, hatch.kind, rations);
        if (!same_substance(fed ? fed->name : feed.medicated->drug, drug.name)) continue;
        list.add("drug-in-feed-and-water",
                 feed.title + " and " + supplement.title + ": " + drug.name +
                     " in feed AND water is a double dose. It must be the only source: stop one of them. " + defer,
                 drug.source.text);
    }
}

void eggs(CautionList& list, domain::Hatch const& hatch, domain::Supplement const& supplement, std::string const& drug,
          std::string const& source) {
    auto const& lay = hatch.laying_from;
    if (!lay || *lay >= hatch.until || course_ends(supplement) + yolks_form <= *lay) return;
    std::string const when = course_ends(supplement) > *lay ? "in lay" : "within two weeks of the first eggs";
    list.add("water-drug-eggs",
             supplement.title + " (" + drug + ") is given " + when + ": not for hens whose eggs are eaten. " + defer,
             source);
}

}  // namespace

bool is_medicine(domain::Supplement const& supplement, std::string const& kind, Rations const& rations) {
    return !supplement.drug.empty() || drug_of(supplement, kind, rations) != nullptr;
}

void water_drug_cautions(CautionList& list, Plan const& plan, HatchPlan const& part, Rations const& rations) {
    if (!part.mix || part.mix->batches.empty()) return;
    domain::Supplement const& supplement = plan.farm.supplements.at(part.mix->supplement);
    Kind const& kind = rations.kinds.at(part.hatch.kind);
    Drug const* drug = drug_of(supplement, kind.key, rations);
    constexpr char const* built_in = "the built-in list of drugs";
    if (drug == nullptr && supplement.drug.empty()) return;
    if (drug == nullptr) {
        list.add("drug-unknown",
                 supplement.title + ": " + supplement.drug +
                     " is not in the built-in list of drugs, so nothing could be checked. " + defer,
                 built_in);
        return eggs(list, part.hatch, supplement, supplement.drug, built_in);
    }
    approval_in_water(list, supplement.title, *drug, kind);
    feed_and_water(list, plan, part.hatch, supplement, *drug, rations);
    eggs(list, part.hatch, supplement, drug->name, drug->source.text);
}

}  // namespace cropful::engine
