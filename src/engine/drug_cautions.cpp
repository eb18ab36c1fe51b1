#include <algorithm>

#include "cropful/domain/nearest.hpp"
#include "cropful/domain/words.hpp"
#include "cropful/quantities/print.hpp"
#include "engine/caution_list.hpp"
#include "engine/drugs.hpp"
#include "engine/intake.hpp"
#include "engine/refills.hpp"

namespace cropful::engine {

namespace {

using domain::join;
using domain::lower;

/// One medicated feed of a hatch's whole life, whatever part of it is planned.
struct Course {
    std::string feed;
    domain::Medication const& medication;
    HatchPlan const& part;
    Duration from;
    Duration to;
};

void approval(CautionList& list, Course const& course, Drug const& drug, Kind const& kind) {
    auto const& birds = drug.birds;
    if (std::find(birds.begin(), birds.end(), kind.key) == birds.end()) {
        list.add("drug-approval",
                 course.feed + ": no approval of " + drug.name + " in feed for " + kind.title +
                     " is known here. Feed may not be medicated off label. " + defer,
                 drug.source.text);
    } else if (drug.max_age && course.to > *drug.max_age) {
        list.add("drug-age",
                 course.feed + ": " + drug.name + " is listed for birds up to " + print_age(*drug.max_age) +
                     " only, but is fed to " + print_age(course.to) + ". " + defer,
                 drug.source.text);
    }
}

void level(CautionList& list, Course const& course, Drug const& drug) {
    if (!course.medication.per_short_ton || drug.per_short_ton.empty()) return;
    double const stated = in_grams(*course.medication.per_short_ton);
    double const least = in_grams(drug.per_short_ton.front()), most = in_grams(drug.per_short_ton.back());
    constexpr double tolerance = 1e-3;  // the rule prints rounded grams
    if (stated >= least * (1 - tolerance) && stated <= most * (1 + tolerance)) return;
    std::string const listed = least < most ? plain(least) + " to " + plain(most) : plain(least);
    list.add("drug-level",
             course.feed + ": " + plain(stated) + " g of " + drug.name + " per short ton, but " + listed +
                 " g is the listed level. " + defer,
             drug.source.text);
}

/// Eggs for people: fed into lay, or while the first yolks form.
void laying(CautionList& list, Course const& course, Drug const* drug, std::string const& source) {
    auto const& lay = course.part.hatch.laying_from;
    Duration const clear = course.to + course.medication.withdrawal;
    if (!lay || clear + yolks_form <= *lay || course.from >= course.part.hatch.until) return;
    bool const growing = drug && (drug->growing_only || drug->max_age);
    std::string const in_law = drug && drug->not_for_layers ? ", which is not for birds that lay eggs for people,"
                               : growing                    ? ", approved for growing birds only,"
                                                            : "";
    std::string const when = clear > *lay ? "into lay" : "to within two weeks of the first eggs, when yolks form";
    list.add("drug-into-lay",
             course.part.hatch.name + ": " + course.feed + " holds " + course.medication.drug + in_law +
                 " and is fed " + when + ". Ask before anybody eats the eggs. " + defer,
             source);
}

/// Birds that leave while the drug is fed or within its withdrawal; a label that states none asks for none.
void withdrawal(CautionList& list, Course const& course) {
    if (course.medication.withdrawal <= days(0)) return;
    Duration const clear = course.to + course.medication.withdrawal;
    auto const warn = [&](Duration at, std::string const& what) {
        if (at <= course.from || at >= clear || at < course.part.feeds.front().from) return;
        list.add("drug-withdrawal",
                 course.part.hatch.name + ": " + what + " at " + print_age(at) + " leave within the " +
                     print(course.medication.withdrawal) + " withdrawal of " + course.feed + " (" +
                     course.medication.drug + "). Keep them from slaughter until it is over. " + defer,
                 "the label's withdrawal");
    };
    for (domain::Removal const& removal : course.part.hatch.removed) warn(removal.at, "birds removed");
    warn(course.part.hatch.until, "birds sold");
}

bool planned(Course const& course) {
    auto const& needs = course.part.feeds;
    return course.from < needs.back().to && needs.front().from < course.to;
}

void unknown_drug(CautionList& list, Course const& course, Rations const& rations) {
    std::vector<std::string> names;
    for (Drug const& drug : rations.drugs) names.push_back(drug.name);
    std::string const near = domain::nearest(lower(course.medication.drug), names);
    Drug const* meant = near.empty() ? nullptr : find_drug(near, course.part.hatch.kind, rations);
    std::string text = course.feed + ": " + course.medication.drug +
                       " is not in the built-in list of feed drugs, so nothing could be checked.";
    if (meant) text += " If " + near + " is meant, write it so.";
    if (meant && !meant->danger.empty()) text += " That drug can kill " + join(meant->danger) + ".";
    list.add("drug-unknown", text + " " + defer, "the built-in list of feed drugs");
}

void known_drug(CautionList& list, Course const& course, Drug const& drug, Kind const& kind) {
    std::string text = course.feed + " is medicated with " + drug.name + ".";
    if (!drug.danger.empty()) text += " It can kill " + join(drug.danger) + ": keep them from it.";
    if (!drug.limits.empty()) text += " Conditions: " + join(drug.limits) + ".";
    list.add("drug-conditions", text + " " + defer, drug.source.text);
    approval(list, course, drug, kind);
    level(list, course, drug);
}

/// Amprolium and a supplement in the water at the same ages.
void thiamine(CautionList& list, Course const& course, domain::Supplement const& supplement) {
    if (!lower(course.medication.drug).starts_with("amprolium")) return;
    if (supplement.from >= course.to || course_ends(supplement) <= course.from) return;
    list.add(
        "thiamine",
        "Amprolium works by starving the parasite of thiamine (vitamin B1): a supplement that holds thiamine (does " +
            supplement.title + "?) undoes it. Do not give both without your veterinarian.",
        "a formulary of drugs for elephants (amprolium and thiamine); 21 CFR 558.55 (sole source of amprolium)");
}

void medicated(CautionList& list, Course const& course, Rations const& rations) {
    Drug const* drug = find_drug(course.medication.drug, course.part.hatch.kind, rations);
    if (planned(course)) {
        if (drug) {
            known_drug(list, course, *drug, rations.kinds.at(course.part.hatch.kind));
        } else {
            unknown_drug(list, course, rations);
        }
    }
    laying(list, course, drug, drug ? drug->source.text : "the built-in list of feed drugs");
    withdrawal(list, course);
}

}  // namespace

void drug_cautions(CautionList& list, Plan const& plan, HatchPlan const& part, Rations const& rations) {
    domain::Hatch const& hatch = part.hatch;
    for (std::size_t i = 0; i < hatch.feeding.size(); ++i) {
        domain::Feed const& feed = plan.farm.feeds.at(hatch.feeding[i].feed);
        if (!feed.medicated || hatch.feeding[i].from >= hatch.until) continue;
        Course const course{feed.title, *feed.medicated, part, hatch.feeding[i].from, fed_until(hatch, i)};
        medicated(list, course, rations);
        if (!hatch.supplement) continue;
        domain::Supplement const& supplement = plan.farm.supplements.at(*hatch.supplement);
        if (!is_medicine(supplement, hatch.kind, rations)) thiamine(list, course, supplement);
    }
}

}  // namespace cropful::engine
