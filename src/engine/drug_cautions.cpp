#include <algorithm>
#include <cctype>

#include "cropful/quantities/print.hpp"
#include "engine/caution_list.hpp"

namespace cropful::engine {

namespace {

std::string lower(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return text;
}

Drug const* find_drug(std::string const& name, Rations const& rations) {
    for (Drug const& drug : rations.drugs) {
        if (lower(drug.name) == lower(name)) return &drug;
        for (std::string const& other : drug.also) {
            if (lower(other) == lower(name)) return &drug;
        }
    }
    return nullptr;
}

std::string joined(std::vector<std::string> const& words) {
    std::string text;
    for (std::string const& word : words) text += (text.empty() ? "" : ", ") + word;
    return text;
}

/// One medicated feed, fed to one hatch over one stretch of ages.
struct Course {
    std::string feed;
    domain::Medication const& medication;
    HatchPlan const& part;
    FeedNeed const& need;
};

void approval(CautionList& list, Course const& course, Drug const& drug, Kind const& kind) {
    auto const& birds = drug.birds;
    if (std::find(birds.begin(), birds.end(), kind.key) == birds.end()) {
        list.add(course.feed + ": no approval of " + drug.name + " in feed for " + kind.title +
                     " is known here. Feed may not be medicated off label. " + defer,
                 drug.source.text);
    } else if (drug.max_age && course.need.to > *drug.max_age) {
        list.add(course.feed + ": " + drug.name + " is listed for birds up to " + print_age(*drug.max_age) +
                     " only, but is fed to " + print_age(course.need.to) + ". " + defer,
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
    list.add(course.feed + ": " + plain(stated) + " g of " + drug.name + " per short ton, but " + listed +
                 " g is the listed level. " + defer,
             drug.source.text);
}

void laying(CautionList& list, Course const& course, Drug const& drug) {
    auto const& from = course.part.hatch.laying_from;
    if (!from || course.need.to + course.medication.withdrawal <= *from) return;
    if (!drug.not_for_layers && !drug.growing_only) return;
    list.add(course.part.hatch.name + ": " + course.feed + " holds " + drug.name +
                 ", which is not for birds that lay eggs for people, and is fed into lay. " + defer,
             drug.source.text);
}

/// Birds that leave while the drug is fed or within its withdrawal; a label that states none asks for none.
void withdrawal(CautionList& list, Course const& course) {
    if (course.medication.withdrawal <= days(0)) return;
    Duration const clear = course.need.to + course.medication.withdrawal;
    auto const warn = [&](Duration at, std::string const& what) {
        if (at < course.need.from || at >= clear) return;
        list.add(course.part.hatch.name + ": " + what + " at " + print_age(at) + " leave within the " +
                     print(course.medication.withdrawal) + " withdrawal of " + course.feed + " (" +
                     course.medication.drug + "). Keep them from slaughter until it is over. " + defer,
                 "the label's withdrawal");
    };
    for (domain::Removal const& removal : course.part.hatch.removed) warn(removal.at, "birds removed");
    warn(course.part.hatch.until, "birds sold");
}

void medicated(CautionList& list, Course const& course, Rations const& rations) {
    Drug const* drug = find_drug(course.medication.drug, rations);
    if (drug == nullptr) {
        list.add(course.feed + ": " + course.medication.drug +
                     " is not in the built-in list of feed drugs, so nothing " + "could be checked. " + defer,
                 "none");
        withdrawal(list, course);
        return;
    }
    std::string text = course.feed + " is medicated with " + drug->name + ".";
    if (!drug->danger.empty()) text += " It can kill " + joined(drug->danger) + ": keep them from it.";
    if (!drug->limits.empty()) text += " Conditions: " + joined(drug->limits) + ".";
    list.add(text + " " + defer, drug->source.text);
    Kind const& kind = rations.kinds.at(course.part.hatch.kind);
    approval(list, course, *drug, kind);
    level(list, course, *drug);
    laying(list, course, *drug);
    withdrawal(list, course);
    if (course.part.mix && lower(drug->name).starts_with("amprolium")) {
        list.add(
            "Amprolium works by starving the parasite of thiamine (vitamin B1): a supplement that holds thiamine (" +
                course.part.mix->supplement + "?) undoes it. Do not give both without your veterinarian.",
            "Plumb/Mikota formulary; 21 CFR 558.55 (sole source of amprolium)");
    }
}

}  // namespace

void drug_cautions(CautionList& list, Plan const& plan, HatchPlan const& part, Rations const& rations) {
    for (FeedNeed const& need : part.feeds) {
        domain::Feed const& feed = plan.farm.feeds.at(need.feed);
        if (feed.medicated) medicated(list, {feed.title, *feed.medicated, part, need}, rations);
    }
}

}  // namespace cropful::engine
